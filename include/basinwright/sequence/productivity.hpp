// What one person gets done in an hour, and the hours that do not grow with the area.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::sequence {

using sources::Sourced;

[[nodiscard]] constexpr sources::Source assumed_rate(std::string_view place) {
  return {sources::Kind::assumed, "productivity", place};
}
[[nodiscard]] constexpr sources::Source assumed_hours(std::string_view place) {
  return {sources::Kind::assumed, "fixed-hours", place};
}

/// Rates per person. Published figures for one coat span 1.25 to 9.3 m2 per man-hour over all
/// trades, so every rate is the contractor's to set.
struct Productivity {
  Sourced<units::WorkRate> chlorine_wash{units::square_metres_per_hour(25),
                                         assumed_rate("chlorine wash")};
  Sourced<units::WorkRate> degrease{units::square_metres_per_hour(12),
                                    assumed_rate("degrease and rinse")};
  Sourced<units::WorkRate> loose_paint{units::square_metres_per_hour(10),
                                       assumed_rate("loose paint")};
  Sourced<units::WorkRate> repair{units::square_metres_per_hour(2), assumed_rate("repair")};
  Sourced<units::WorkRate> strip{units::square_metres_per_hour(1.5), assumed_rate("strip")};
  Sourced<units::WorkRate> abrade{units::square_metres_per_hour(3.5), assumed_rate("abrade")};
  Sourced<units::WorkRate> dust_removal{units::square_metres_per_hour(60),
                                        assumed_rate("sweep and rinse")};
  Sourced<units::WorkRate> pressure_clean{
      units::square_metres_per_hour(23),
      {sources::Kind::published, "pressure-cleaning", "one job"}};
  Sourced<units::WorkRate> etch{units::square_metres_per_hour(10), assumed_rate("etch and rinse")};
  Sourced<units::WorkRate> neutralise{units::square_metres_per_hour(15),
                                      assumed_rate("neutralise and rinse")};
  Sourced<units::EdgeRate> mask{units::metres_per_hour(20), assumed_rate("mask, metres of edge")};
  Sourced<units::WorkRate> vacuum{units::square_metres_per_hour(40), assumed_rate("vacuum")};
  Sourced<units::WorkRate> prime{units::square_metres_per_hour(18), assumed_rate("prime")};
  Sourced<units::WorkRate> coat{units::square_metres_per_hour(20),
                                assumed_rate("coat with the cutting in")};
  Sourced<units::WorkRate> unmask{units::square_metres_per_hour(40),
                                  assumed_rate("unmask and clean")};

  Sourced<units::Duration> set_out{units::hours(4), assumed_hours("set out and isolate")};
  Sourced<units::Duration> coating_test{units::hours(1), assumed_hours("coating test")};
  Sourced<units::Duration> dryness_test{units::hours(1), assumed_hours("lay and read the sheets")};
  Sourced<units::Duration> refit{units::hours(3), assumed_hours("refit")};
  Sourced<units::Duration> fill{units::hours(1), assumed_hours("start and stop the fill")};
  Sourced<units::Duration> start_up{units::hours(3), assumed_hours("start-up visits")};
  Sourced<units::Duration> handover{units::hours(1), assumed_hours("handover")};
  Sourced<units::Duration> daily_set_up{units::minutes(30),
                                        assumed_hours("set-up and clean-up a day")};

  Sourced<units::Flow> drain_pump{units::cubic_metres_per_hour(10),
                                  {sources::Kind::assumed, "drain-pump", "submersible pump"}};
};

}  // namespace basinwright::sequence
