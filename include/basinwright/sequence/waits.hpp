// How long things take that nobody works on.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::sequence {

using sources::Sourced;

/// Waits that belong to no product.
struct Waits {
  Sourced<units::Duration> recoat_reserve{
      units::minutes(30), {sources::Kind::assumed, "recoat-reserve", "at both ends of a window"}};
  Sourced<units::Duration> dry{units::hours(48),
                               {sources::Kind::assumed, "drying", "without rain"}};
  Sourced<units::Duration> dryness_test{units::hours(16),
                                        {sources::Kind::published, "astm-d4263", "least time"}};
  Sourced<units::Duration> coat_within{units::days(7),
                                       {sources::Kind::assumed, "etch-validity", "coat within"}};
  Sourced<units::Duration> after_chlorine{
      units::hours(12), {sources::Kind::common_practice, "chlorine-and-acid", "different days"}};
  Sourced<units::Duration> filler_cure{units::hours(12),
                                       {sources::Kind::common_practice, "filler", "overnight"}};
  Sourced<units::Duration> start_up{units::days(5),
                                    {sources::Kind::common_practice, "start-up", "3 to 5 days"}};
  /// What is abraded and cleaned because its recoat window was lost.
  Sourced<units::Duration> rework_dry{units::hours(2),
                                      {sources::Kind::assumed, "rework", "dry after cleaning"}};
  Sourced<units::Duration> rework_coat_within{
      units::hours(24), {sources::Kind::assumed, "rework", "coat while it is clean"}};
  /// Before its first use, so that labels are read and kits stand indoors overnight.
  Sourced<units::Duration> delivered_before{
      units::days(1), {sources::Kind::assumed, "delivery-reserve", "before first use"}};
  /// Daily means at and above which a day of cure counts as warm, and at and below which as cold.
  Sourced<units::Temperature> cure_warm_at{
      units::celsius(20), {sources::Kind::assumed, "cure-by-temperature", "warm from"}};
  Sourced<units::Temperature> cure_cold_at{
      units::celsius(10), {sources::Kind::assumed, "cure-by-temperature", "cold up to"}};
};

}  // namespace basinwright::sequence
