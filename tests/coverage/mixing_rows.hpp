// Rows of reference/mixing.json: a row's input in, its expected object computed. Header only, so
// that a runner outside the test programs can compile it too.
#pragma once

#include <cstdint>
#include <nlohmann/json.hpp>
#include <optional>

#include "basinwright/coverage/mixing.hpp"

namespace mixing_rows {

namespace coverage = basinwright::coverage;
namespace units = basinwright::units;
using nlohmann::json;

/// A row's session: areas in m2, times in minutes but `window_h`; P is the pot life as it is.
inline coverage::MixingSession session(const json& row) {
  const json& in = row.at("input");
  const auto number = [&in](const char* key) { return in.at(key).get<double>(); };
  coverage::MixingSession s;
  s.area = units::square_metres(number("A"));
  s.cover = units::square_metres(number("a"));
  s.rate = units::square_metres_per_hour(number("r"));
  s.painters = in.at("n").get<int>();
  s.mixer = in.at("own_mixer").get<bool>() ? coverage::Mixer::apart : coverage::Mixer::painter;
  s.mixing = units::minutes(number("m"));
  s.induction = units::minutes(number("I"));
  s.reserve = units::minutes(number("s"));
  s.window = units::hours(number("window_h"));
  s.pot_life.life.value = units::minutes(number("P"));
  s.pot_life.at.value = s.temperature = units::celsius(20);
  return s;
}

inline json minutes(const std::optional<units::Duration>& time) {
  return time ? json(time->in(units::minutes)) : json(nullptr);
}
inline json count(const std::optional<std::int64_t>& value) {
  return value ? json(*value) : json(nullptr);
}

/// Every key a row expects, computed.
inline json computed(const json& row) {
  const coverage::MixingTimetable t = coverage::mixing_timetable(session(row));
  json starts = json::array();
  for (const coverage::Mix& mix : t.mixes) starts.push_back(mix.start.in(units::minutes));
  return {{"kits", t.kits},
          {"minutes_per_kit", minutes(t.kit_time)},
          {"lead_min", minutes(t.lead)},
          {"usable_min", minutes(t.usable)},
          {"worst_age_min", minutes(t.worst_age)},
          {"painting_min", minutes(t.mixes.back().empty - t.mixes.front().ready)},
          {"mix_starts_min", starts},
          {"finish_min", minutes(t.finish)},
          {"waste_m2", t.waste.in(units::square_metres)},
          {"kits_in_pipeline", t.kits_in_pipeline},
          {"painters_for_pot_life", count(t.painters_for_pot_life)},
          {"painters_for_window", count(t.painters_for_window)},
          {"pot_life_ok", t.pot_life_ok},
          {"one_mixer_ok", t.one_mixer_ok},
          {"window_ok", t.window_ok},
          {"lazy_wait_min", minutes(t.lazy_wait)}};
}

}  // namespace mixing_rows
