#include "basinwright/render/text.hpp"

#include <stdexcept>

#include "outside.hpp"
#include "render/visible.hpp"
#include "sample.hpp"

using namespace sample;
using basinwright::render::TextOptions;

namespace {

std::string text(const Document& document, const TextOptions& options = {}) {
  return basinwright::render::text(document, options);
}

Document with_blocks(std::vector<Block> blocks) {
  Document document;
  document.sections.push_back({"", "", std::move(blocks), true});
  return document;
}

/// The line of a page that holds some words.
std::size_t line_of(const std::string& page, std::string_view words) {
  const std::vector<std::string> lines = outside::lines(page);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].find(words) != std::string::npos) return i;
  }
  FAIL("no line holds \"" << words << "\" in\n" << page);
  return 0;
}

bool holds(const std::string& page, std::string_view words) {
  return page.find(words) != std::string::npos;
}

/// Columns of a text without marks or wide characters: bytes that begin a scalar.
std::size_t columns(std::string_view words) {
  std::size_t count = 0;
  for (const char byte : words)
    count += (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U ? 1U : 0U;
  return count;
}

}  // namespace

TEST_CASE("a text page has its parts in order") {
  const std::string seen = text(page());
  const std::vector<std::string> lines = outside::lines(seen);
  CHECK(lines.at(0) == "Job sheet for the pool at Elm Road");
  CHECK(columns(lines.at(1)) == 80);
  CHECK(lines.at(1).substr(0, 3) == "\u2500");
  const std::string_view order[] = {"Number 17",
                                    "No weather file",
                                    "The old coating",
                                    "Take-off",
                                    "Painted area",
                                    "Areas follow",
                                    "Materials",
                                    "What to buy",
                                    "Total",
                                    "Add acid",
                                    "1. Drain",
                                    "First swim"};
  std::size_t before = 0;
  for (const std::string_view words : order) {
    const std::size_t line = line_of(seen, words);
    INFO(words);
    CHECK(line > before);
    before = line;
  }
  CHECK(lines.back() == "First swim on 2 April.");
  CHECK(!holds(seen, "Hidden"));
  CHECK(!holds(seen, "Unseen"));
}

// Outside reader: python3 counts the columns; the sample's wholes are narrower than 20.
TEST_CASE("no line is wider than the page") {
  Document document = page();
  Section names{"", "Names", {List{}}, true};
  for (const std::string& name : hostile())
    std::get<List>(names.blocks[0]).items.push_back(words(name));
  document.sections.push_back(names);
  for (const int width : {20, 25, 30, 40, 60, 61, 67, 72, 80, 99, 120}) {
    const auto widest = outside::read_back("widest", text(document, {width}));
    if (!widest) return;
    INFO("width " << width);
    CHECK(std::stoi(*widest) <= width);
  }
}

TEST_CASE("no line is wider than the page at any width and no number is cut") {
  for (int width = 60; width <= 120; ++width) {
    const std::string seen = text(page(), {width});
    for (const std::string& line : outside::lines(seen)) {
      INFO(line << " at " << width);
      CHECK(columns(line) <= static_cast<std::size_t>(width));
      CHECK((line.empty() || line.back() != ' '));
    }
    for (const char* number : {"24.6 L", "100.25 L", "1,284.00", "1,342.40", "-3.00", "92.0 m²"}) {
      CHECK(holds(seen, number));
    }
  }
}

TEST_CASE("labels, values and hanging lines share their columns") {
  const std::vector<std::string> lines = outside::lines(text(page(), {60}));
  const auto at = [&lines](std::size_t line, std::string_view words) {
    return columns(lines.at(line).substr(0, lines.at(line).find(words)));
  };
  const std::size_t area = line_of(text(page(), {60}), "Painted area");
  CHECK(at(area, "92.0") == at(area + 1, "31.4"));
  CHECK(at(area, "92.0") == at(area + 2, "100 mm"));
  CHECK(at(area, "Painted") == at(area + 1, "Cove"));
  const std::size_t item = line_of(text(page(), {60}), "Rinse twice");
  CHECK(at(item, "Rinse") == lines.at(item + 1).find_first_not_of(' '));
}

TEST_CASE("lists are numbered and marked by role without colour too") {
  List steps{{}, true};
  for (int i = 0; i < 10; ++i) steps.items.push_back(words("step"));
  const std::string seen = text(with_blocks({steps}));
  CHECK(holds(seen, "   1. step\n"));
  CHECK(holds(seen, "  10. step\n"));
  CHECK(holds(text(page()), "  ! Add acid"));
  CHECK(holds(text(page()), "  \u2022 Rinse"));
  CHECK(holds(text(page()), "  \u2715 Stop"));
}

TEST_CASE("amounts among facts stand right with a rule over their total") {
  const auto line = [](std::string label, std::string value, Role role) {
    return Fact{"", std::move(label), {std::move(value), {}, role}, true};
  };
  const Facts facts{{line("Net", "1,000.00", Role::money),
                     line("Tax", "90.00", Role::money),
                     line("To pay", "1,090.00", Role::total)}};
  CHECK(text(with_blocks({facts}), {80, false, true}) ==
        "  Net      1,000.00\n"
        "  Tax         90.00\n"
        "  -----------------\n"
        "  To pay   1,090.00\n");
  const Facts run{{line("In all", "9.00", Role::total),
                   line("Less", "1.00", Role::money),
                   line("Due", "8.00", Role::total),
                   line("Later", "0.00", Role::total)}};
  CHECK(text(with_blocks({run}), {80, false, true}) ==
        "  In all   9.00\n"
        "  Less     1.00\n"
        "  -------------\n"
        "  Due      8.00\n"
        "  Later    0.00\n");
}

// ECMA-48, select graphic rendition: 1 bold, 2 faint, 31 red, 32 green, 33 yellow, 0 none.
TEST_CASE("colour says what a text means and nothing else") {
  const std::pair<Role, const char*> rows[] = {{Role::stop, "\x1b[1;31mwords\x1b[0m"},
                                               {Role::caution, "\x1b[33mwords\x1b[0m"},
                                               {Role::good, "\x1b[32mwords\x1b[0m"},
                                               {Role::assumed, "\x1b[2mwords\x1b[0m"},
                                               {Role::muted, "\x1b[2mwords\x1b[0m"},
                                               {Role::total, "\x1b[1mwords\x1b[0m"}};
  for (const auto& [role, expected] : rows) {
    const Document document = with_blocks({said("words", role)});
    CHECK(holds(text(document, {80, true}), expected));
    CHECK(!holds(text(document, {80, false}), "\x1b"));
  }
  for (const Role role : {Role::plain, Role::heading, Role::quantity, Role::money}) {
    CHECK(text(with_blocks({said("words", role)}), {80, true}) == "  words\n");
  }
}

TEST_CASE("colours move nothing") {
  for (const int width : {40, 60, 100}) {
    std::string seen = text(page(), {width, true});
    for (const char* code :
         {"\x1b[1;31m", "\x1b[33m", "\x1b[32m", "\x1b[2m", "\x1b[1m", "\x1b[0m"}) {
      for (std::size_t at = 0; (at = seen.find(code)) != std::string::npos;) {
        seen.erase(at, std::string_view(code).size());
      }
    }
    CHECK(seen == text(page(), {width}));
  }
}

TEST_CASE("a plain page holds nothing beyond ASCII") {
  Document document = page();
  for (const std::string& name : hostile()) document.notices.push_back(name);
  document.notices.emplace_back("5\u00A0L of 18 °C – 20 °C water");
  const std::string seen = text(document, {80, false, true});
  for (const char byte : seen) REQUIRE(static_cast<unsigned char>(byte) < 0x7F);
  CHECK(holds(seen, "92.0 m2"));
  CHECK(holds(seen, "4 x 5 L"));
  CHECK(holds(seen, "| 5 L of 18 C - 20 C water"));
  CHECK(holds(seen, std::string(80, '-')));
}

TEST_CASE("hostile texts come out whole or shown, never obeyed") {
  const auto squeezed = [](std::string all) {
    std::erase_if(all, [](char byte) { return byte == ' ' || byte == '\n'; });
    return all;
  };
  for (const std::string& name : hostile()) {
    Document document = with_blocks({said(name)});
    document.title = name;
    const std::string seen = text(document, {78});
    INFO(seen);
    const std::string shown = squeezed(basinwright::render::visible(name));
    const std::string all = squeezed(seen);
    CHECK(all.find(shown) != std::string::npos);
    CHECK(all.rfind(shown) != all.find(shown));
    for (const char byte : seen) {
      CHECK((static_cast<unsigned char>(byte) >= 0x20 || byte == '\n'));
      CHECK(byte != '\x7F');
    }
  }
}

TEST_CASE("an empty page is empty and a broken table our fault") {
  CHECK(text(Document{}).empty());
  const Table short_row{"t", "", {{"k", "K"}, {"l", "L"}}, {{{words("x")}}}, true};
  CHECK_THROWS_AS(text(with_blocks({short_row})), std::logic_error);
}
