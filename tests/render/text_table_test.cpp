#include "render/text_table.hpp"

#include "render/display_width.hpp"
#include "sample.hpp"
#include "support/catch.hpp"

using namespace sample;
using basinwright::render::display_width;
using basinwright::render::Lines;
using basinwright::render::Look;
using basinwright::render::table_lines;

namespace {

Lines printed(const Table& table, std::size_t width) {
  return table_lines(table, Look{width, false, true});
}

/// The first column of some words in a line, and the one after their last.
struct Span {
  std::size_t first = 0;
  std::size_t last = 0;
};

Span find(const Lines& lines, const std::string& words) {
  for (const std::string& line : lines) {
    const std::size_t at = line.find(words);
    if (at != std::string::npos) return {at, at + words.size()};
  }
  FAIL("no line holds " << words);
  return {};
}

Table two_columns(std::vector<std::pair<std::string, std::string>> rows) {
  Table table{"", "", {{"", "Item"}, {"", "Price", Align::right}}, {}, true};
  for (auto& [item, price] : rows) table.rows.push_back({{words(item), amount(price, "")}});
  return table;
}

}  // namespace

TEST_CASE("a table has a rule under its header and over its total") {
  Table table =
      two_columns({{"Acid", "61.40"}, {"Two-part epoxy", "1,284.00"}, {"Total", "1,345.40"}});
  table.rows.back().role = Role::total;
  CHECK(printed(table, 80) == Lines{"Item                Price",
                                    "-------------------------",
                                    "Acid                61.40",
                                    "Two-part epoxy   1,284.00",
                                    "                 --------",
                                    "Total            1,345.40"});
}

TEST_CASE("columns keep their places at every width that holds the table") {
  for (std::size_t width = 58; width <= 118; ++width) {
    const Lines lines = printed(purchases(), width);
    INFO("width " << width);
    const Span price = find(lines, "Price");
    for (const char* number : {"61.40", "1,284.00", "-3.00", "1,342.40"}) {
      CHECK(find(lines, number).last == price.last);
    }
    const Span need = find(lines, "Need");
    for (const char* number : {"24.6 L", "31.0 L", "100.25 L"}) {
      CHECK(find(lines, number).last == need.last);
    }
    CHECK(find(lines, "Trade").first == find(lines, "Coating").first);
    CHECK(find(lines, "Trade").first == find(lines, "Any").first);
    CHECK(find(lines, "4 x 5").first == find(lines, "1 sack").first);
    CHECK(find(lines, "Item").first == 0);
  }
}

TEST_CASE("a table takes the room it needs and no more") {
  const Lines roomy = printed(purchases(), 200);
  // 40, 8, 19, 47 and 8 columns of text and four gaps of three.
  CHECK(display_width(roomy.at(1)) == 40 + 8 + 19 + 47 + 8 + 4 * 3);
  for (const Lines& lines : {printed(purchases(), 100), printed(purchases(), 80)}) {
    CHECK(lines.size() > roomy.size());
  }
}

TEST_CASE("the widest text column gives way first") {
  Table table{"", "", {{"", "Short"}, {"", "Long"}, {"", "Number", Align::right}}, {}, true};
  table.rows.push_back({{words("stays on one line"),
                         words("goes over several lines because it is much longer than all others"),
                         measure("1,234.5", 1234.5)}});
  const Lines lines = printed(table, 60);
  CHECK(find(lines, "stays on one line").first == 0);
  CHECK(find(lines, "1,234.5").last == find(lines, "Number").last);
  CHECK(lines.size() > 3);
}

TEST_CASE("rows of several lines are kept apart") {
  const Table table = two_columns({{"one", "1.00"},
                                   {"a text that goes on to a second line", "2.00"},
                                   {"three", "3.00"},
                                   {"four", "4.00"}});
  CHECK(printed(table, 30) == Lines{"Item                    Price",
                                    "-----------------------------",
                                    "one                      1.00",
                                    "",
                                    "a text that goes on to   2.00",
                                    "a second line",
                                    "",
                                    "three                    3.00",
                                    "four                     4.00"});
}

TEST_CASE("a heading row names those below it across the table") {
  Table table = two_columns(
      {{"Chemicals", ""}, {"Acid", "1.00"}, {"Coating, from the supplier", ""}, {"Kit", "2.00"}});
  table.rows[0].role = Role::heading;
  table.rows[2].role = Role::heading;
  CHECK(printed(table, 80) == Lines{"Item   Price",
                                    "------------",
                                    "Chemicals",
                                    "Acid    1.00",
                                    "",
                                    "Coating, from the supplier",
                                    "Kit     2.00"});
}

TEST_CASE("a page too narrow for the table gets its rows under one another") {
  Table table{"", "", {}, {{{}, Role::plain, true}}, true};
  for (int i = 1; i <= 4; ++i) {
    table.columns.push_back({"", "Column " + std::to_string(i), Align::right});
    table.rows[0].cells.push_back(measure("1,234,567." + std::to_string(i), 0.0));
  }
  CHECK(printed(table, 30) == Lines{"Column 1   1,234,567.1",
                                    "Column 2   1,234,567.2",
                                    "Column 3   1,234,567.3",
                                    "Column 4   1,234,567.4"});
}

TEST_CASE("wide characters take two columns of the table") {
  const Table table = two_columns({{"水槽", "1.00"}, {"abcd", "2.00"}});
  const Lines lines = table_lines(table, Look{40, false, false});
  CHECK(lines.at(2) == "水槽    1.00");
  CHECK(lines.at(3) == "abcd    2.00");
}

TEST_CASE("a long word is cut before the table is given up") {
  const Table table = two_columns({{"Polymethylpentenemethacrylate", "1,234.00"}});
  const Lines lines = printed(table, 30);
  CHECK(lines.at(2) == "Polymethylpentenemet  1,234.00");
  CHECK(lines.at(3) == "hacrylate");
}

TEST_CASE("hidden columns and tables without rows are not printed") {
  Table table = two_columns({{"Acid", "61.40"}});
  table.columns[1].shown = false;
  CHECK(printed(table, 80) == Lines{"Item", "----", "Acid"});
  table.rows.clear();
  CHECK(printed(table, 80).empty());
}
