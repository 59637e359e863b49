// Rules of the job that an entry may break; a broken rule never loses the entry.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "basinwright/sitelog/entry.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::sitelog {

/// Conditions are read at the start, in the middle and at the end of painting, or every 4 h.
inline constexpr sources::Sourced<units::Duration> readings_hold_for{
    units::hours(4), {sources::Kind::common_practice, "site-readings", "every 4 h"}};

/// A recoat window, bounds included.
struct Window {
  units::Duration min, max;
};

/// A step of the route and the hold points that nobody begins it, or goes on from it, before.
struct HoldRule {
  std::string task;
  std::vector<std::string> before, after;
};

/// What the job allows; the caller fills it from data sheet, site and route.
struct Rules {
  units::Temperature air_min, air_max, shell_min, shell_max;
  units::TemperatureDifference dew_margin;
  units::Fraction humidity_max;
  Window recoat, primer;
  units::Duration coat_within;  ///< Of the etch.
  units::Duration pot_life;
  std::optional<double> ph_min, ph_max;              ///< Of what is pumped out.
  std::optional<units::Concentration> chlorine_max;  ///< Of what is pumped out.
  std::vector<HoldRule> route;                       ///< In the order of the work.
};

enum class Broken {
  air,
  shell_temperature,
  dew_margin,
  humidity,
  no_reading,      ///< Painting begun without conditions read.
  part_a_batches,  ///< More than one batch of Part A in the job.
  part_b_kinds,    ///< Both kinds of Part B.
  recoat_early,
  recoat_late,
  etch_expired,
  pot_life,
  outflow_ph,
  outflow_chlorine,
  hold_open  ///< Work went on with a hold point not released.
};

/// A rule that an entry broke.
struct Breach {
  Broken rule = Broken::air;
  std::size_t entry = 0;  ///< Index in the log.
  std::string task, section;
  double measured = 0.0, limit = 0.0;  ///< C, K, share, h, pH or mg/L as the rule says.
  std::string was, now;                ///< Batches, kinds; the hold and its task.
};

/// Every rule broken, in the order of the log.
[[nodiscard]] std::vector<Breach> breaches(const Log& log, const Rules& rules);

/// The conditions of an entry: its dew point margin where air, shell and humidity were read.
[[nodiscard]] std::optional<units::TemperatureDifference> dew_margin(const Readings& read);

}  // namespace basinwright::sitelog
