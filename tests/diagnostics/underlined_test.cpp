#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "support/catch.hpp"

// The form of the headline, file:line:column: kind: message, is that of the GNU Coding Standards,
// "Formatting Error Messages" (from memory, as are the RFC 3629 examples); columns as Unicode
// scalars are this project's own rule.

using namespace basinwright::diagnostics;
using std::string_literals::operator""s;

namespace {

Diagnostic problem(const std::string& code, const Position& at, const std::string& message) {
  Diagnostic out;
  out.code = code;
  out.at = at;
  out.message = message;
  return out;
}

std::string shown(const Position& at, std::string_view text) {
  return underlined(problem("shell-depth", at, "too shallow"), text);
}

std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> out;
  std::size_t from = 0;
  for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', from)) {
    out.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  return out;
}

const std::string head = "job.json:1:";

}  // namespace

TEST_CASE("a diagnostic shows its place, its line, a caret and a hint") {
  Diagnostic d = problem("shell-depth", {"job.json", 2, 12, 7}, "the depth is below zero");
  d.pointer = "/pool/depth";
  d.hint = "write the depth down from the rim";
  CHECK(underlined(d, "{\n  \"depth\": \"-1 m\" ,\n}") ==
        "job.json:2:12: error[shell-depth]: the depth is below zero\n"
        "  \"depth\": \"-1 m\" ,\n"
        "           ^~~~~~~\n"
        "  hint: write the depth down from the rim\n");
}

TEST_CASE("the file as a whole, a missing line and an unread file have no source line") {
  CHECK(shown({"job.json", 0, 0, 1}, "{}") == "job.json: error[shell-depth]: too shallow\n");
  CHECK(shown({"job.json", 3, 1, 1}, "{\n}\n") ==
        "job.json:3:1: error[shell-depth]: too shallow\n");
  CHECK(shown({"job.json", 3, 1, 1}, "") == "job.json:3:1: error[shell-depth]: too shallow\n");
  CHECK(shown({"job.json", 3, 0, 1}, "1\n2\n3") == "job.json:3: error[shell-depth]: too shallow\n");
  CHECK(shown({"", 0, 0, 1}, "") == "error[shell-depth]: too shallow\n");
}

TEST_CASE("warnings, notes and clashing places are named") {
  Diagnostic d = problem("key-repeated", {"a.json", 1, 2, 1}, "twice");
  d.severity = Severity::warning;
  d.also.push_back({"a.json", 9, 4, 1});
  d.also.push_back({"b.json", 0, 0, 1});
  CHECK(underlined(d, "xy") ==
        "a.json:1:2: warning[key-repeated]: twice\nxy\n ^\n"
        "  see also: a.json:9:4\n  see also: b.json\n");
  CHECK(name(Severity::note) == "note");
}

TEST_CASE("a column counts scalars, whatever their bytes") {
  // RFC 3629 section 7: four scalars in seven bytes, three in nine, one in four.
  const std::string text =
      "A\xE2\x89\xA2\xCE\x91. \xED\x95\x9C\xEA\xB5\xAD\xEC\x96\xB4 \xF0\xA3\x8E\xB4!";
  for (const std::size_t column : {1U, 2U, 3U, 4U, 6U, 9U, 10U, 11U}) {
    const auto out = lines(shown({"job.json", 1, column, 1}, text));
    CHECK(out.at(0) == head + std::to_string(column) + ": error[shell-depth]: too shallow");
    CHECK(out.at(1) == text);
    CHECK(out.at(2) == std::string(column - 1, ' ') + "^");
  }
}

TEST_CASE("tabs are copied into the caret line") {
  const auto out = lines(shown({"job.json", 1, 5, 3}, "\t\ta\tbcd"));
  CHECK(out.at(1) == "\t\ta\tbcd");
  CHECK(out.at(2) == "\t\t \t^~~");
}

TEST_CASE("control bytes, broken UTF-8 and reordering marks show as hex") {
  const auto out = lines(shown({"job.json", 1, 7, 1},
                               "a\x1B"
                               "b\xC0\x80"
                               "\x7F"
                               "!"s));
  CHECK(out.at(1) == "a\\x1Bb\\xC0\\x80\\x7F!");
  CHECK(out.at(2) == std::string(18, ' ') + "^");
  CHECK(lines(shown({"job.json", 1, 1, 1}, "\0x"s)).at(1) == "\\x00x");
  CHECK(lines(shown({"job.json", 1, 1, 1}, "\0x"s)).at(2) == "^~~~");
  // U+202E turns the rest of a line round; U+009B is a terminal's control sequence introducer.
  CHECK(lines(shown({"job.json", 1, 1, 1}, "\xE2\x80\xAE\xC2\x9B")).at(1) ==
        "\\xE2\\x80\\xAE\\xC2\\x9B");
  // RFC 3629 section 3 and 10: surrogates, overlong forms and more than U+10FFFF are no UTF-8.
  for (const std::string bad : {"\xED\xA0\x80", "\xE0\x80\xAF", "\xF4\x90\x80\x80", "\xE2\x82"}) {
    CHECK(lines(shown({"job.json", 1, 1, 1}, bad)).at(1).size() == 4 * bad.size());
  }
}

TEST_CASE("a message cannot break out of its line") {
  Diagnostic d = problem("key-unknown", {"a\nb", 0, 0, 1}, "key \"\x1B[31m\n\"");
  d.severity = Severity::note;
  d.hint = "\t";
  CHECK(underlined(d, "") == "a\\x0Ab: note[key-unknown]: key \"\\x1B[31m\\x0A\"\n  hint: \\x09\n");
}

TEST_CASE("carriage returns before a line end and a byte order mark are not shown") {
  CHECK(lines(shown({"job.json", 2, 1, 1}, "a\r\nbc\r\nd")).at(1) == "bc");
  const auto out = lines(shown({"job.json", 1, 2, 1}, "\xEF\xBB\xBF{1}"));
  CHECK(out.at(1) == "{1}");
  CHECK(out.at(2) == " ^");
}

TEST_CASE("an underline stops at the end of the line and a caret may stand just past it") {
  CHECK(lines(shown({"job.json", 1, 2, 50}, "abc\ndef")).at(2) == " ^~");
  CHECK(lines(shown({"job.json", 1, 4, 1}, "abc")).at(2) == "   ^");
  CHECK(lines(shown({"job.json", 1, 99, 1}, "abc")).at(2) == "   ^");
  CHECK(lines(shown({"job.json", 2, 1, 1}, "abc\n\nd")).at(2) == "^");
  CHECK(lines(shown({"job.json", 1, 2, 0}, "abc")).at(2) == " ^");
}

TEST_CASE("a long line is a window of a hundred columns round the caret") {
  std::mt19937 random(7);
  for (int round = 0; round < 3000; ++round) {
    const std::size_t length = 1 + random() % 700;
    std::string text;
    for (std::size_t i = 0; i < length; ++i) text += static_cast<char>('!' + random() % 90);
    std::ranges::replace(text, '.', '_');
    const std::size_t column = 1 + random() % length;
    const std::size_t width = 1 + random() % 30;
    const auto out = lines(shown({"job.json", 1, column, width}, text));
    REQUIRE(out.size() == 3);
    REQUIRE(out[1].size() <= 100);
    if (length <= 100) REQUIRE(out[1] == text);
    if (length > 100) REQUIRE(out[1].size() >= 97);
    const std::size_t caret = out[2].find('^');
    REQUIRE(out[2].find_first_not_of(' ') == caret);
    const std::string under = out[1].substr(caret, out[2].size() - caret);
    REQUIRE(under == text.substr(column - 1, under.size()));
    const bool cut = out[1].ends_with("...");
    if (!cut) REQUIRE(under.size() == std::min(width, length - column + 1));
    if (!out[1].starts_with("...")) REQUIRE(caret == column - 1);
  }
}

TEST_CASE("a line of a whole file is windowed too") {
  std::string text(4'000'000, 'x');
  text[3'000'000] = '!';
  const auto out = lines(shown({"job.json", 1, 3'000'001, 1}, text));
  CHECK(out.at(1).at(out.at(2).find('^')) == '!');
  CHECK(out.at(1).size() == 100);
}
