#include "basinwright/weather/record.hpp"

#include <algorithm>
#include <stdexcept>

namespace basinwright::weather {
namespace {

constexpr std::int64_t quarters_in_hour = 4;
// Two centuries: a file that says more is wrong, and memory is not ours to waste.
constexpr HourNumber most_hours = HourNumber{200} * 366 * 24;

template <class T>
void take(std::optional<Reading<T>>& kept, const std::optional<Reading<T>>& known) {
  if (known && (!kept || known->quality >= kept->quality)) kept = known;
}

template <class T>
bool is_covered(const std::optional<Reading<T>>& reading) {
  return reading && reading->quality > Quality::climatology;
}

bool covers(const Hour& h) {
  return is_covered(h.air) || is_covered(h.dew_point) || is_covered(h.shell) ||
         is_covered(h.humidity) || is_covered(h.rain) || is_covered(h.wind) || is_covered(h.cloud);
}

}  // namespace

HourNumber hour_of(dates::Moment moment) {
  const std::int64_t q = moment.quarters();
  return q >= 0 ? q / quarters_in_hour : (q - (quarters_in_hour - 1)) / quarters_in_hour;
}

void Record::put(HourNumber hour, const Hour& known) {
  if (hours_.empty()) from_ = hour;
  if (std::max(hour + 1, until()) - std::min(hour, from_) > most_hours)
    throw std::logic_error("weather: a record of more than two centuries");
  if (hour < from_) {
    hours_.insert(hours_.begin(), static_cast<std::size_t>(from_ - hour), Hour{});
    from_ = hour;
  }
  if (hour >= until()) hours_.resize(static_cast<std::size_t>(hour - from_) + 1);
  Hour& kept = hours_[static_cast<std::size_t>(hour - from_)];
  take(kept.air, known.air);
  take(kept.dew_point, known.dew_point);
  take(kept.shell, known.shell);
  take(kept.humidity, known.humidity);
  take(kept.rain, known.rain);
  take(kept.wind, known.wind);
  take(kept.cloud, known.cloud);
  if (!covers(known)) return;
  const bool first = covered_from_ == covered_until_;
  covered_from_ = first ? hour : std::min(covered_from_, hour);
  covered_until_ = first ? hour + 1 : std::max(covered_until_, hour + 1);
}

const Hour& Record::at(HourNumber hour) const {
  static const Hour nothing;
  if (hour < from_ || hour >= until()) return nothing;
  return hours_[static_cast<std::size_t>(hour - from_)];
}

}  // namespace basinwright::weather
