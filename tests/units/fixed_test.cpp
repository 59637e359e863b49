#include <cstdlib>
#include <limits>
#include <sstream>
#include <stdexcept>
#include <string>

#include "basinwright/units/show.hpp"
#include "support/catch.hpp"
#include "units/outside.hpp"

using basinwright::units::fixed;

TEST_CASE("decimals are rounded half away from zero, as decimals") {
  // Rounding rule of the trade (common practice); values worked by hand.
  CHECK(fixed(1.005, 2) == "1.01");
  CHECK(fixed(2.675, 2) == "2.68");
  CHECK(fixed(-1.005, 2) == "-1.01");
  CHECK(fixed(0.5, 0) == "1");
  CHECK(fixed(1.5, 0) == "2");
  CHECK(fixed(2.5, 0) == "3");
  CHECK(fixed(0.49999, 0) == "0");
  CHECK(fixed(9.995, 2) == "10.00");
  CHECK(fixed(0.05, 1) == "0.1");
  CHECK(fixed(0.04, 1) == "0.0");
  CHECK(fixed(99.95, 1) == "100.0");
  CHECK(fixed(1e21, 1) == "1000000000000000000000.0");
  CHECK(fixed(1e-20, 3) == "0.000");
}

TEST_CASE("zero never has a sign") {
  CHECK(fixed(-0.0, 0) == "0");
  CHECK(fixed(-0.0, 2) == "0.00");
  CHECK(fixed(-0.004, 2) == "0.00");
  CHECK(fixed(-0.005, 2) == "-0.01");
}

TEST_CASE("what cannot be shown is our own fault") {
  CHECK_THROWS_AS(fixed(std::numeric_limits<double>::infinity(), 1), std::invalid_argument);
  CHECK_THROWS_AS(fixed(std::numeric_limits<double>::quiet_NaN(), 1), std::invalid_argument);
  CHECK_THROWS_AS(fixed(1.0, -1), std::invalid_argument);
  CHECK_THROWS_AS(fixed(1.0, 31), std::invalid_argument);
}

TEST_CASE("fixed decimals agree with the decimal module of Python") {
  if (!outside::has_python()) return;
  const std::string cases = outside::cases("5000");
  const auto lines = outside::python_lines("units/fixed_oracle.py", cases);
  REQUIRE(lines.has_value());
  REQUIRE(lines->size() == std::stoul(cases));
  for (const std::string& line : *lines) {
    std::istringstream fields(line);
    std::string value;
    std::string expected;
    int decimals = 0;
    fields >> value >> decimals >> expected;
    INFO(line);
    REQUIRE(fixed(std::strtod(value.c_str(), nullptr), decimals) == expected);
  }
}
