#include "cure.hpp"

#include <algorithm>

#include "basinwright/units/unit.hpp"
#include "quarters.hpp"

namespace basinwright::sequence {

Cure::Cure(const ProgrammeQuestion& q,
           const dates::Timeline& timeline,
           const weather::Conditions* conditions) {
  const double warm = 1.0 / (q.system.cure_warm.value.in(units::hours)*quarters_in_hour);
  const double cold = 1.0 / (q.system.cure_cold.value.in(units::hours)*quarters_in_hour);
  const units::Temperature low = q.waits.cure_cold_at.value;
  const double span = (q.waits.cure_warm_at.value - low).in(units::kelvins);
  double sum = 0.0;
  std::int32_t unknown = 0;
  std::int32_t by_weather = 0;
  const auto slots = static_cast<std::size_t>(timeline.size()) + 1;
  progress_.resize(slots);
  unknown_.resize(slots);
  weather_.resize(slots);
  // The last place stands for the end of the last slot.
  for (std::int32_t s = 0; s <= timeline.size();) {
    const std::int32_t day = timeline.day(s);
    const dates::Date today = timeline.date(s);
    const auto measured = conditions != nullptr ? conditions->day_mean(today) : std::nullopt;
    const std::optional<units::Temperature> mean =
        measured ? std::optional(measured->value) : q.temperatures[dates::month(today) - 1];
    const double degrees = mean ? (*mean - low).in(units::kelvins) : 0.0;
    const double step = cold + (warm - cold) * std::clamp(degrees / span, 0.0, 1.0);
    for (; s <= timeline.size() && timeline.day(s) == day; ++s) {
      const auto slot = static_cast<std::size_t>(s);
      progress_[slot] = sum;
      unknown_[slot] = unknown;
      weather_[slot] = by_weather;
      unknown += mean ? 0 : 1;
      by_weather += measured ? 1 : 0;
      sum += step;
    }
  }
}

std::int32_t Cure::done(std::int32_t end) const {
  // The sum of a thousand small steps may fall a hair short of 1.
  constexpr double slack = 1e-9;
  const double wanted = progress_[static_cast<std::size_t>(end)] + 1.0 - slack;
  const auto it = std::lower_bound(progress_.begin(), progress_.end(), wanted);
  return it == progress_.end() ? -1 : static_cast<std::int32_t>(it - progress_.begin());
}

bool Cure::known(std::int32_t end, std::int32_t done) const {
  return unknown_[static_cast<std::size_t>(end)] == unknown_[static_cast<std::size_t>(done)];
}

bool Cure::by_weather(std::int32_t end, std::int32_t done) const {
  return weather_[static_cast<std::size_t>(end)] != weather_[static_cast<std::size_t>(done)];
}

}  // namespace basinwright::sequence
