// A two-part epoxy system as its data sheet describes it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::materials {

using sources::Sourced;

/// Where a data-sheet value comes from when the job names no system of the rate book.
[[nodiscard]] constexpr sources::Source usual_sheet(std::string_view place) {
  return {sources::Kind::assumed, "usual-data-sheet", place};
}

/// Weather and surface limits while painting and through first cure.
struct Limits {
  Sourced<units::Temperature> air_min{units::celsius(10), usual_sheet("air, lower limit")};
  Sourced<units::Temperature> air_max{units::celsius(30), usual_sheet("air, upper limit")};
  Sourced<units::Duration> air_after{units::hours(6), usual_sheet("air, hours after painting")};
  Sourced<units::Temperature> shell_min{units::celsius(10), usual_sheet("shell, lower limit")};
  Sourced<units::Temperature> shell_max{units::celsius(32),
                                        {sources::Kind::published, "mil-hdbk-1110", "7.4.1"}};
  Sourced<units::TemperatureDifference> dew_margin{
      units::kelvins(3), {sources::Kind::from_memory, "iso-8502-4", "3 C above the dew point"}};
  Sourced<units::Fraction> humidity_max{
      units::percent(85), {sources::Kind::from_memory, "iso-8502-4", "85 % relative humidity"}};
  Sourced<units::Duration> rain_free_after{units::hours(12),
                                           {sources::Kind::assumed, "rain-free", "after painting"}};
  Sourced<units::Duration> dry_before{units::hours(3),
                                      {sources::Kind::assumed, "rain-free", "before a coat"}};
  std::optional<Sourced<units::Speed>> wind_max;  ///< Where the sheet has one.
};

/// One line of a sheet's table of pot lives.
struct PotLifeLine {
  units::Temperature at;  ///< Of the mixed paint.
  units::Duration time;   ///< From the start of mixing.
};

/// Stirring a kit twice, scraping it and letting the can drain.
inline constexpr Sourced<units::Duration> usual_mixing{
    units::minutes(5), {sources::Kind::assumed, "mixing", "stirring a kit"}};
/// Paint in trays and rollers must be on the wall before its pot life is over.
inline constexpr Sourced<units::Duration> usual_reserve{
    units::minutes(5), {sources::Kind::assumed, "mixing", "left in tray and roller"}};

/// The primer of the same system.
struct Primer {
  Sourced<units::Volume> kit{units::litres(3.5), usual_sheet("primer kit")};
  Sourced<units::Area> cover{units::square_metres(22.5), usual_sheet("primer cover of a kit")};
  Sourced<units::Duration> window_min{units::hours(4), usual_sheet("primer to first coat, least")};
  Sourced<units::Duration> window_max{units::hours(24), usual_sheet("primer to first coat, most")};
};

/// One coating system. Every value may be given by its data sheet; those that are not are the
/// trade's usual ones, marked assumed.
struct CoatingSystem {
  std::string name;   ///< Empty: the job names none.
  std::string sheet;  ///< Title and revision of the data sheet.
  Sourced<units::Volume> kit{units::litres(3.5), usual_sheet("kit")};
  Sourced<units::Area> cover_low{units::square_metres(20), usual_sheet("cover of a kit, least")};
  Sourced<units::Area> cover_high{units::square_metres(25), usual_sheet("cover of a kit, most")};
  Sourced<units::Duration> recoat_min{units::hours(20), usual_sheet("recoat window, least")};
  Sourced<units::Duration> recoat_max{units::hours(24), usual_sheet("recoat window, most")};
  Sourced<units::Duration> induction_min{units::minutes(5), usual_sheet("induction, least")};
  Sourced<units::Duration> induction_max{units::minutes(10), usual_sheet("induction, most")};
  Sourced<units::Duration> pot_life{units::minutes(60), usual_sheet("pot life")};
  Sourced<units::Temperature> pot_life_at{units::celsius(20), usual_sheet("pot life, temperature")};
  std::vector<PotLifeLine> pot_lives;  ///< Coldest first; where there are any they alone count.
  Sourced<units::Duration> mixing = usual_mixing;
  Sourced<units::Duration> tray_reserve = usual_reserve;
  Sourced<units::Temperature> parts_min{units::celsius(15),
                                        usual_sheet("parts, least temperature")};
  Sourced<units::Volume> thinner_per_kit{units::millilitres(125), usual_sheet("thinner a kit")};
  Sourced<units::Duration> cure_warm{units::days(7), usual_sheet("cure before filling, warm")};
  Sourced<units::Duration> cure_cold{units::days(14), usual_sheet("cure before filling, cold")};
  Sourced<units::Duration> quiet_start{units::days(3), usual_sheet("salt or chlorine only, days")};
  Sourced<double> least_coats{2.0, {sources::Kind::common_practice, "coats", "two at least"}};
  bool strong_etch = false;     ///< The sheet asks for neat or 1 : 1 acid where the table has it.
  bool planned_rework = false;  ///< The sheet allows a recoat window to be missed on purpose.
  Limits limits;
  Primer primer;
  std::vector<std::string> hardeners;
  /// The cool-weather kind of Part B up to here, the standard one from here.
  Sourced<units::Temperature> cool_hardener_to{units::celsius(18),
                                               usual_sheet("hardener, cool weather up to")};

  /// Cover of a kit to plan with: the mean of the range.
  [[nodiscard]] Sourced<units::Area> expected_cover() const;
};

/// Years that a coat may last with good care of the water; no promise.
struct Life {
  int from = 0, to = 0;
};
inline constexpr Sourced<Life> life_of_two_coats{
    {8, 10}, {sources::Kind::common_practice, "coat-life", "two coats"}};
inline constexpr Sourced<Life> life_of_three_coats{
    {12, 15}, {sources::Kind::common_practice, "coat-life", "three coats"}};
/// Of two coats, or of three and more; nothing for one.
[[nodiscard]] std::optional<Life> expected_life(std::size_t coats);

}  // namespace basinwright::materials
