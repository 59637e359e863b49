#include "basinwright/render/csv.hpp"

#include <cmath>
#include <stdexcept>

#include "outside.hpp"
#include "render/csv_cell.hpp"
#include "sample.hpp"

using namespace sample;
using namespace basinwright::render;

namespace {

Document with_table(Table table) {
  Document document;
  document.sections.push_back({"", "", {std::move(table)}, true});
  return document;
}

std::string hex_records(const std::vector<std::vector<std::string>>& records) {
  std::string result;
  for (const auto& record : records) {
    for (std::size_t i = 0; i < record.size(); ++i) {
      result += (i == 0 ? "" : " ") + outside::hex(record[i]);
    }
    result += '\n';
  }
  return result;
}

}  // namespace

// RFC 4180, section 2, rules 5 to 7.
TEST_CASE("a field is quoted when it must be") {
  CHECK(quoted("plain text") == "plain text");
  CHECK(quoted("b,c") == "\"b,c\"");
  CHECK(quoted("b\"bb") == "\"b\"\"bb\"");
  CHECK(quoted("b\r\nbb") == "\"b\r\nbb\"");
  CHECK(quoted("").empty());
}

// Common practice against formulas in spreadsheets: an apostrophe before = + - @ tab and CR.
TEST_CASE("texts that look like formulas are guarded and numbers are not") {
  CHECK(guarded("=1+1") == "'=1+1");
  CHECK(guarded("+49 30") == "'+49 30");
  CHECK(guarded("-2+3") == "'-2+3");
  CHECK(guarded("@SUM(A1)") == "'@SUM(A1)");
  CHECK(guarded("\t=1") == "'\t=1");
  CHECK(guarded("\r=1") == "'\r=1");
  CHECK(guarded("1+1") == "1+1");
  CHECK(guarded("-12.50") == "-12.50");
  CHECK(guarded("-12.") == "'-12.");
  CHECK(guarded("-.5") == "'-.5");
  CHECK(guarded("-1.2.3") == "'-1.2.3");
  CHECK(guarded("-").size() == 2);
}

TEST_CASE("values become fields") {
  CHECK(csv_field(nullptr).empty());
  CHECK(csv_field(true) == "true");
  CHECK(csv_field(-7) == "-7");
  CHECK(csv_field(-0.5) == "-0.5");
  CHECK(csv_field(0.1) == "0.1");
  CHECK(csv_field(3.0) == "3");
  CHECK(csv_field(Array{"rain", 2, ""}) == "rain; 2; ");
  CHECK(csv_field(Array{"", "x"}) == "; x");
  CHECK(csv_field(Array{"=1", "x"}) == "'=1; x");
  CHECK(csv_field(Array{Object{{"size", 5}, {"count", 2}}}) == R"([{"size":5,"count":2}])");
  CHECK_THROWS_AS(csv_field(std::nan("")), std::logic_error);
}

// RFC 4180: CR LF after each record; the cells by hand from the sample.
TEST_CASE("a table is its keys and a record a row for machines") {
  CHECK(csv(page(), "purchases") ==
        "item,need_l,supplier,total\r\n"
        "\"Hydrochloric acid, thirty-three per cent\",24.6,"
        "\"Trade counter, to be ordered by Tuesday 4 March\",61.40\r\n"
        "\"Two-part epoxy finish, mid blue\",31,Coating supplier,1284.00\r\n"
        "Bicarbonate of soda,100.25,Any,-3.00\r\n");
}

TEST_CASE("tables are listed by path and asked for by it") {
  Document document = page();
  Table packs{"packs", "", {{"size", "Size"}}, {{{{"5 L", 5.0, Role::quantity}}}}, false};
  Table empty{"empty", "", {{"size", "Size"}}, {}, true};
  Table people{"people", "", {{"", "Size"}}, {{{words("x")}}}, true};
  document.sections.push_back({"store", "", {packs, empty, people}, false});
  CHECK(csv_tables(document) == std::vector<std::string>{"purchases", "store.packs"});
  CHECK(csv(document, "store.packs") == "size\r\n5\r\n");
  CHECK(csv(document, "store.empty") == "size\r\n");
  CHECK(csv(document) == csv(document, "purchases") + "\r\nsize\r\n5\r\n");
  CHECK_THROWS_AS(csv(document, "store.people"), std::logic_error);
  CHECK_THROWS_AS(csv(document, ""), std::logic_error);
}

TEST_CASE("a lone empty cell is no empty line") {
  const Table table{"t", "", {{"k", ""}}, {{{Cell{}}}, {{words("x")}}}, true};
  CHECK(csv(with_table(table)) == "k\r\n\"\"\r\nx\r\n");
}

// Outside reader: python3's csv module in strict mode.
TEST_CASE("another reader finds the same cells, hostile ones too") {
  Table table{"names", "", {{"name", ""}, {"number", ""}, {"none", ""}}, {}, true};
  std::vector<std::vector<std::string>> expected = {{"name", "number", "none"}};
  for (const std::string& text : hostile()) {
    if (text.find('\xFF') != std::string::npos) continue;  // Not UTF-8: utf8_test.
    table.rows.push_back({{words(text), measure("-1.5 m", -1.5), Cell{}}});
    const bool formula = std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos;
    expected.push_back({(formula ? "'" : "") + text, "-1.5", ""});
  }
  const auto read = outside::read_back("csv", csv(with_table(table)));
  if (read) CHECK(outside::lines(*read) == outside::lines(hex_records(expected)));
}
