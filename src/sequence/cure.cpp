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
  const auto slots = static_cast<std::size_t>(timeline.size()) + 1;
  progress_.resize(slots);
  // The last place stands for the end of the last slot.
  for (std::int32_t s = 0; s <= timeline.size();) {
    const std::int32_t day = timeline.day(s);
    const dates::Date today = timeline.date(s);
    const auto measured = conditions != nullptr ? conditions->day_mean(today) : std::nullopt;
    const std::optional<units::Temperature> mean =
        measured ? std::optional(measured->value) : q.temperatures[dates::month(today) - 1];
    const double degrees = mean ? (*mean - low).in(units::kelvins) : 0.0;
    const double step = cold + (warm - cold) * std::clamp(degrees / span, 0.0, 1.0);
    days_.push_back({s, mean.has_value(), measured.has_value()});
    const auto next = std::upper_bound(timeline.days().begin() + s, timeline.days().end(), day);
    const auto stop = static_cast<std::int32_t>(next - timeline.days().begin());
    for (; s < stop; ++s) {
      progress_[static_cast<std::size_t>(s)] = sum;
      sum += step;
    }
    if (s == timeline.size()) progress_[static_cast<std::size_t>(s++)] = sum;
  }
}

double Cure::wanted(std::int32_t end) const {
  // The sum of a thousand small steps may fall a hair short of 1.
  constexpr double slack = 1e-9;
  return progress_[static_cast<std::size_t>(end)] + 1.0 - slack;
}

std::int32_t Cure::done(std::int32_t end) const {
  const auto it = std::lower_bound(progress_.begin(), progress_.end(), wanted(end));
  return it == progress_.end() ? -1 : static_cast<std::int32_t>(it - progress_.begin());
}

std::int32_t Cure::done(std::int32_t end, std::int32_t since) const {
  const double sum = wanted(end);
  auto it = progress_.begin() + since;
  while (it != progress_.end() && *it < sum) ++it;
  return it == progress_.end() ? -1 : static_cast<std::int32_t>(it - progress_.begin());
}

bool Cure::known(std::int32_t end, std::int32_t done) const {
  return std::ranges::all_of(between(end, done), &Day::known);
}

bool Cure::by_weather(std::int32_t end, std::int32_t done) const {
  return std::ranges::any_of(between(end, done), &Day::by_weather);
}

std::span<const Cure::Day> Cure::between(std::int32_t end, std::int32_t done) const {
  const auto first = std::ranges::upper_bound(days_, end, {}, &Day::from);
  const auto last = std::ranges::lower_bound(days_, done, {}, &Day::from);
  // That which holds the end is the one before the first that begins after it.
  return end < done ? std::span(first - 1, last) : std::span<const Day>();
}

}  // namespace basinwright::sequence
