// RFC 4180, section 2, rule by rule; python3's csv module is asked in weather_outside_test.cpp.
#include "readers/csv_rows.hpp"

#include "reading.hpp"

using namespace reading;

namespace {

using Table = std::vector<std::vector<std::string>>;

Table table(const std::string& text) {
  readers::CsvRows rows(text, 0);
  Table out;
  while (rows.next()) {
    CHECK_FALSE(rows.bad_quote());
    out.emplace_back();
    for (const auto& cell : rows.cells()) out.back().emplace_back(cell.text);
  }
  return out;
}

/// Where the first stray quotation mark stands; -1 when there is none.
int bad_quote(const std::string& text) {
  readers::CsvRows rows(text, 0);
  while (rows.next()) {
    if (rows.bad_quote()) return static_cast<int>(rows.bad_quote()->begin);
  }
  return -1;
}

}  // namespace

TEST_CASE("lines end with CRLF, LF or the file, rules 1 and 2") {
  const Table two{{"a", "b"}, {"c", "d"}};
  CHECK(table("a,b\r\nc,d\r\n") == two);
  CHECK(table("a,b\r\nc,d") == two);
  CHECK(table("a,b\nc,d\n") == two);
  CHECK(table("a,b\nc,d\r") == two);
  CHECK(table("\r\n\na,b\n\n\nc,d\n\n") == two);
  CHECK(table("").empty());
  CHECK(table("\n\r\n").empty());
}

TEST_CASE("cells may be empty, rule 4") {
  CHECK(table(",") == Table{{"", ""}});
  CHECK(table("a,,c\n,,\n") == Table{{"a", "", "c"}, {"", "", ""}});
  CHECK(table(" a ,\tb\n") == Table{{"a", "b"}});
}

TEST_CASE("quoted cells hold commas, line breaks and doubled quotes, rules 5 to 7") {
  CHECK(table("\"a\",\"b\"\n") == Table{{"a", "b"}});
  CHECK(table("\"a,b\",c\n") == Table{{"a,b", "c"}});
  CHECK(table("\"a\r\nb\",c\n") == Table{{"a\r\nb", "c"}});
  CHECK(table("\"a\"\"b\",\"\"\"\"\n\"\",x") == Table{{"a\"b", "\""}, {"", "x"}});
  CHECK(table("\" a \"") == Table{{" a "}});
}

TEST_CASE("stray quotation marks are found where they stand") {
  CHECK(bad_quote("a,b\"c\"\n") == 3);
  CHECK(bad_quote("a,\"bc\n") == 2);
  CHECK(bad_quote("a,\"b\"c\n") == 5);
  CHECK(bad_quote("\"") == 0);
  CHECK(bad_quote("\"\"\"") == 0);
  CHECK(bad_quote("a,\"b\" \n") == -1);
}

TEST_CASE("each cell knows its place") {
  const std::string text = "ab, \"c\"\"d\" ,,e\r\nf";
  readers::CsvRows rows(text, 0);
  REQUIRE(rows.next());
  const auto& cells = rows.cells();
  REQUIRE(cells.size() == 4);
  CHECK(text.substr(cells[1].at.begin, cells[1].at.end - cells[1].at.begin) == "\"c\"\"d\"");
  // The comma after an empty cell stands for it.
  CHECK(cells[2].at.begin == 12);
  CHECK(cells[3].at.begin == 13);
  CHECK(rows.row().begin == 0);
  CHECK(rows.row().end == 14);
  REQUIRE(rows.next());
  CHECK(rows.cells()[0].at.begin == 16);
}

TEST_CASE("a line of nothing but commas takes no memory of its size") {
  const std::string text = std::string(1'000'000, ',') + "\na,b\n";
  readers::CsvRows rows(text, 0);
  REQUIRE(rows.next());
  CHECK(rows.cells().size() == readers::most_cells + 1);
  REQUIRE(rows.next());
  CHECK(rows.cells().size() == 2);
}
