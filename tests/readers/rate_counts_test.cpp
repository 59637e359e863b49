// What a rule counts by.
#include "reading.hpp"

using namespace reading;

TEST_CASE("a count by area or length is in the units of its own file") {
  const auto book = [](const std::string& units) {
    Problems problems;
    const auto read = rates(R"({"units": ")" + units +
                                R"(", "currency": "USD", "labour": {"hour": "40"}, "consumables": [
      {"item": "disc", "per": "abraded_area", "rate": 0.9290304},
      {"item": "tape", "per": "edge", "rate": 0.3048},
      {"item": "band", "per": "step_edge", "rate": 0.3048},
      {"item": "tread strip", "per": "tread_area", "rate": 0.9290304},
      {"item": "stirrer", "per": "job", "rate": 2}]})",
                            problems);
    INFO(told(problems));
    REQUIRE(read.has_value());
    return *read;
  };
  // A square foot is 0.09290304 m2 and a foot 0.3048 m, both exactly (NIST SP 811).
  const auto us = book("us").consumables;
  REQUIRE(us.size() == 5);
  CHECK(us[0].rate == Approx(10));
  CHECK(us[1].rate == Approx(1));
  CHECK(us[2].rate == Approx(1));
  CHECK(us[3].rate == Approx(10));
  CHECK(us[4].rate == 2);
  CHECK(book("metric").consumables[0].rate == 0.9290304);
}
