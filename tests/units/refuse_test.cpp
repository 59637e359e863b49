#include <string>
#include <variant>
#include <vector>

#include "basinwright/units/parse.hpp"
#include "support/catch.hpp"

using namespace basinwright::units;

// What is refused and how it is said are this project's own rules; there is no outside source.

namespace {

template <class T>
ParseError fault(const Parsed<T>& parsed) {
  const auto* error = std::get_if<ParseError>(&parsed);
  REQUIRE(error != nullptr);
  CHECK_FALSE(error->reason.empty());
  return *error;
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("what is no number is refused at its place") {
  for (const std::string text : {"", "-", "+", ".", "e5", "inf", "nan", "-inf", "x", " 5", "--5"}) {
    INFO(text);
    CHECK(fault(parse_number(text)).offset == 0);
  }
  CHECK(fault(parse_number("5 ")).offset == 1);
  CHECK(fault(parse_number("0x10")).offset == 1);
  CHECK(fault(parse_number("1.2.3")).offset == 3);
  CHECK(fault(parse_number("1e")).offset == 1);
  CHECK(says(fault(parse_number("1e999")).reason, "too large"));
  CHECK(says(fault(parse_number("-1e999")).reason, "too large"));
  CHECK(says(fault(parse_number("1e-999")).reason, "too small"));
}

TEST_CASE("a decimal comma is refused with a hint") {
  for (const std::string text : {"9,2 m", "1,200 mm"}) {
    const ParseError error = fault(parse_length(text));
    CHECK(error.offset == 1);
    CHECK(says(error.reason, "comma"));
    CHECK(says(error.hint, "point"));
    CHECK_FALSE(error.wrong_unit);
  }
  CHECK(says(fault(parse_number("9,2")).hint, "point"));
}

TEST_CASE("a number without a unit is refused with the units it could have") {
  const ParseError error = fault(parse_length("9.2"));
  CHECK(error.offset == 3);
  CHECK(error.wrong_unit);
  CHECK(says(error.reason, "unit is missing"));
  for (const std::string unit : {"9.2 m", "mm", "ft or in"}) CHECK(says(error.hint, unit));
  CHECK(says(fault(parse_flow("20")).hint, "L/min"));
  CHECK(says(fault(parse_fraction("0.12")).hint, "12 %"));
  CHECK(says(fault(parse_spreading_rate("6 ")).hint, "m2/L"));
}

TEST_CASE("a bare gallon is refused, for there are two") {
  for (const std::string text : {"5 gal", "5 gallons", "5 Gal"}) {
    const ParseError error = fault(parse_volume(text));
    CHECK(error.offset == 2);
    CHECK(error.wrong_unit);
    CHECK(error.hint == "write US gal or imp gal");
  }
  CHECK(says(fault(parse_flow("5 gal/min")).hint, "US gal"));
  CHECK(says(fault(parse_spreading_rate("300 ft2/gal")).hint, "US gal"));
  CHECK(fault(parse_spreading_rate("300 ft2/gal")).offset == 8);
  CHECK(says(fault(parse_volume("1 qt")).hint, "US qt"));
  CHECK(says(fault(parse_volume("1 fl oz")).hint, "imp fl oz"));
  CHECK(says(fault(parse_temperature("18 degrees")).hint, "C or F"));
  CHECK(says(fault(parse_mass("1 ton")).hint, "t"));
}

TEST_CASE("a unit of another quantity is named as such") {
  struct Row {
    ParseError error;
    std::string has, wants;
  };
  const std::vector<Row> rows{{fault(parse_length("9.2 m2")), "area", "length"},
                              {fault(parse_length("9.2 kg")), "mass", "length"},
                              {fault(parse_length("9 ft2")), "area", "length"},
                              {fault(parse_area("9.2 m")), "length", "area"},
                              {fault(parse_volume("9.2 m\u00B2")), "area", "volume"},
                              {fault(parse_volume("8 oz")), "mass", "volume"},
                              {fault(parse_duration("30 m")), "length", "time"},
                              {fault(parse_length("30 min")), "time", "length"},
                              {fault(parse_mass("18 C")), "temperature", "mass"},
                              {fault(parse_fraction("3 mm")), "length", "share"},
                              {fault(parse_flow("20 L")), "volume", "flow"}};
  for (const Row& row : rows) {
    INFO(row.error.reason);
    CHECK(row.error.wrong_unit);
    CHECK(says(row.error.reason, "a unit of " + row.has + ", not of " + row.wants));
  }
  CHECK(says(fault(parse_length("5 L/m2")).reason, "'L/m2' is no unit of length"));
  CHECK(says(fault(parse_flow("5 m2/h")).reason, "no unit of flow"));
  CHECK(says(fault(parse_spreading_rate("5 L/m2")).reason, "no unit of spreading rate"));
  CHECK(says(fault(parse_volume("5 L/min")).reason, "no unit of volume"));
}

TEST_CASE("an unknown unit below a bar is refused as one above it is") {
  for (const char* text : {"200 ft2/SU gal", "200 ft2 per gallons", "3 m2/hh", "3 L/"}) {
    INFO(text);
    const auto parsed = parse_spreading_rate(text);
    REQUIRE(std::holds_alternative<ParseError>(parsed));
    CHECK_FALSE(std::get<ParseError>(parsed).reason.empty());
  }
  CHECK(std::get<ParseError>(parse_spreading_rate("200 ft2/SU gal")).reason == "unknown unit 'SU'");
}

TEST_CASE("unknown units and wrong capitals are refused") {
  const ParseError error = fault(parse_length("9.2 cubits"));
  CHECK(error.offset == 4);
  CHECK(error.wrong_unit);
  CHECK(error.reason == "unknown unit 'cubits'");
  CHECK(says(error.hint, "ft"));
  CHECK(says(fault(parse_length("9.2 M")).hint, "write m"));
  CHECK(says(fault(parse_length("150 MM")).hint, "write mm"));
  CHECK(says(fault(parse_volume("5 ML")).hint, "write mL"));
  CHECK(says(fault(parse_mass("5 Mg")).hint, "write mg"));
  for (const std::string text : {"9 mx", "9 m^3x", "9 m4m", "9 m\u00B2\u00B3", "9 ftin", "9 m^"}) {
    INFO(text);
    fault(parse_length(text));
  }
  CHECK(fault(parse_area("9 m22")).offset == 2);
  fault(parse_area("9 m2\u00B2"));
  CHECK(fault(parse_length("9 " + std::string(5000, 'x'))).reason.size() < 60);
}

TEST_CASE("text after the unit is refused where it begins") {
  CHECK(fault(parse_length("9.2 m abc")).offset == 6);
  CHECK(fault(parse_length("9.2 m!")).offset == 5);
  CHECK(fault(parse_length("6 ft 6 in x")).offset == 10);
  CHECK(fault(parse_temperature("18 C 3 C")).offset == 5);
  CHECK(fault(parse_fraction("1 % 2 %")).offset == 4);
  CHECK_FALSE(fault(parse_length("9.2 m abc")).wrong_unit);
}

TEST_CASE("parts must shrink, and only the first may carry a sign") {
  CHECK(fault(parse_length("6 in 30 ft")).offset == 5);
  CHECK(says(fault(parse_length("6 in 30 ft")).reason, "larger"));
  CHECK(fault(parse_length("6 ft 6 ft")).offset == 5);
  CHECK(says(fault(parse_length("6 ft -6 in")).hint, "sign"));
  CHECK(says(fault(parse_length("6'-6\"")).hint, "sign"));
  CHECK(fault(parse_length("6 ft 6")).offset == 6);
  CHECK(fault(parse_length("6 ft 6")).wrong_unit);
  CHECK(says(fault(parse_length("6 1/2 in")).hint, "decimals"));
  CHECK(says(fault(parse_length("6 ft 6 in2")).reason, "area"));
}

TEST_CASE("a value that leaves the range of numbers is refused") {
  fault(parse_length("1e308 km"));
  fault(parse_length("1e308 m 1e309 mm"));
  CHECK(says(fault(parse_temperature("-300 C")).reason, "absolute zero"));
  CHECK(says(fault(parse_temperature("-460 F")).reason, "absolute zero"));
  CHECK(says(fault(parse_temperature("\u22125 C")).hint, "minus"));
}
