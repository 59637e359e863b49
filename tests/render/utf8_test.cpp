#include "render/utf8.hpp"

#include "outside.hpp"
#include "sample.hpp"

using namespace basinwright::render;

// Unicode 15, section 3.9, table 3-8: one U+FFFD for each maximal subpart (from memory; the
// differential test below asks another decoder).
TEST_CASE("bytes that are not UTF-8 become one replacement a maximal subpart") {
  CHECK(repaired("\x61\xF1\x80\x80\xE1\x80\xC2\x62\x80\x63\x80\xBF\x64") ==
        "a\uFFFD\uFFFD\uFFFDb\uFFFDc\uFFFD\uFFFDd");
  CHECK(repaired("\xC0\xAF\xE0\x80\xBF") == "\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD");
  CHECK(repaired("\xED\xA0\x80") == "\uFFFD\uFFFD\uFFFD");
}

// RFC 3629, section 3: the bounds of each length.
TEST_CASE("the bounds of each length of UTF-8 are read and written") {
  const std::pair<char32_t, const char*> rows[] = {{0x7F, "\x7F"},
                                                   {0x80, "\xC2\x80"},
                                                   {0x7FF, "\xDF\xBF"},
                                                   {0x800, "\xE0\xA0\x80"},
                                                   {0xD7FF, "\xED\x9F\xBF"},
                                                   {0xE000, "\xEE\x80\x80"},
                                                   {0xFFFF, "\xEF\xBF\xBF"},
                                                   {0x10000, "\xF0\x90\x80\x80"},
                                                   {0x10FFFF, "\xF4\x8F\xBF\xBF"}};
  for (const auto& [scalar, bytes] : rows) {
    const Scalar read = scalar_at(bytes, 0);
    CHECK(read.valid);
    CHECK(read.value == scalar);
    CHECK(read.length == std::string_view(bytes).size());
    std::string written;
    append_scalar(written, scalar);
    CHECK(written == bytes);
  }
}

namespace {

/// Two-byte starts with everything that may or may not follow, and the hostile texts.
std::vector<std::string> awkward_bytes() {
  std::vector<std::string> texts = sample::hostile();
  const int second[] = {0x00, 0x41, 0x7F, 0x80, 0x8F, 0x90, 0x9F, 0xA0, 0xBF, 0xC0, 0xFF};
  for (int first = 0x80; first <= 0xFF; ++first) {
    for (const int next : second) {
      for (const char* rest : {"", "\x80", "\x80\x80", "A", "\x80\x80\x80"}) {
        texts.push_back(
            std::string{static_cast<char>(first), static_cast<char>(next)}.append(rest));
      }
    }
  }
  return texts;
}

}  // namespace

// Outside reader: python3's decoder with errors="replace".
TEST_CASE("repaired texts agree with another decoder") {
  std::string question;
  std::string answer;
  for (const std::string& text : awkward_bytes()) {
    question += outside::hex(text) + '\n';
    answer += outside::hex(repaired(text)) + '\n';
  }
  const auto read = outside::read_back("utf8", question);
  if (read) CHECK(outside::lines(*read) == outside::lines(answer));
}
