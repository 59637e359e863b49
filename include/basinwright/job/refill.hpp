// The fill as given: the tap, the meter, the water and where it is to go.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::job {

/// A water's figures as far as somebody said them; all but the pH in mg/L.
struct WaterFigures {
  using Figure = std::optional<sources::Sourced<double>>;
  Figure ph, alkalinity, hardness, stabiliser, salt, free_chlorine;
  std::optional<sources::Sourced<units::Temperature>> temperature;
};

/// What a water meter counts.
enum class WaterUnit { cubic_metres, kilolitres, hundred_cubic_feet, thousand_us_gallons };

struct Refill {
  std::optional<units::Flow> flow;
  std::optional<std::string> water_price;  ///< Of one `water_unit`.
  WaterUnit water_unit = WaterUnit::cubic_metres;
  WaterFigures analysis, targets;
  bool analysed = false;
  std::string chlorine_kind;
  std::optional<sources::Sourced<units::Fraction>> chlorine_strength;
  bool salt_pool = false;
  sources::Sourced<units::Fraction> first_share{
      units::percent(50), {sources::Kind::assumed, "start-up-steps", "half of a dose first"}};
};

}  // namespace basinwright::job
