#include "basinwright/weather/daily.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace basinwright::weather {
namespace {

using units::Length;
using units::Temperature;

constexpr int hours_in_day = 24;
constexpr double tenths_in_millimetre = 10.0;

// One step of the generator splitmix64, the same on every machine.
std::uint64_t mixed(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15U;
  x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9U;
  x = (x ^ (x >> 27U)) * 0x94d049bb133111ebU;
  return x ^ (x >> 31U);
}

// From one temperature to another, flat at both ends.
Temperature between(Temperature from, Temperature to, double share) {
  return from + (to - from) * ((1.0 - std::cos(std::numbers::pi * share)) / 2.0);
}

class Maker {
 public:
  Maker(const std::vector<Day>& days, Quality quality, const DayShape& shape)
      : days_(days), quality_(quality), shape_(shape) {}

  std::vector<MadeHour> make() {
    std::vector<MadeHour> out;
    for (std::size_t d = 0; d < days_.size(); ++d) {
      const auto rain = shower(days_[d]);
      for (int h = 0; h < hours_in_day; ++h) {
        out.push_back({hour_of(dates::Moment(days_[d].date, 0)) + h, hour(d, h)});
        if (rain) out.back().known.rain = {(*rain)[static_cast<std::size_t>(h)], quality_};
      }
    }
    return out;
  }

 private:
  [[nodiscard]] const Day* beside(std::size_t d, int step) const {
    const auto at = static_cast<std::ptrdiff_t>(d) + step;
    if (at < 0 || at >= static_cast<std::ptrdiff_t>(days_.size())) return nullptr;
    const Day& day = days_[static_cast<std::size_t>(at)];
    return day.date == days_[d].date + std::chrono::days{step} ? &day : nullptr;
  }

  [[nodiscard]] std::optional<Temperature> air(std::size_t d, int h) const {
    const Day& day = days_[d];
    const int cold = shape_.coldest_hour.value;
    const int warm = shape_.warmest_hour.value;
    if (!day.highest || !day.lowest) return {};
    const double night = hours_in_day - warm + cold;
    if (h < cold) {
      const Day* before = beside(d, -1);
      const Temperature from =
          before != nullptr && before->highest ? *before->highest : *day.highest;
      return between(from, *day.lowest, (h + hours_in_day - warm) / night);
    }
    if (h <= warm)
      return between(*day.lowest, *day.highest, (h - cold) / static_cast<double>(warm - cold));
    const Day* after = beside(d, 1);
    const Temperature to = after != nullptr && after->lowest ? *after->lowest : *day.lowest;
    return between(*day.highest, to, (h - warm) / night);
  }

  [[nodiscard]] Hour hour(std::size_t d, int h) const {
    const Day& day = days_[d];
    Hour out;
    const auto warm = air(d, h);
    if (warm) out.air = {*warm, quality_};
    if (day.wind) out.wind = {*day.wind, quality_};
    auto dew = day.dew_point;
    // Without the rain nobody knows how damp the day was.
    if (!dew && day.lowest && day.rain) {
      const bool wet = *day.rain > Length();
      dew = *day.lowest - (wet ? shape_.dew_below_wet.value : shape_.dew_below_dry.value);
    }
    if (dew && warm) out.dew_point = {std::min(*dew, *warm), quality_};
    return out;
  }

  [[nodiscard]] std::optional<std::array<Length, hours_in_day>> shower(const Day& day) const {
    if (!day.rain) return {};
    std::array<Length, hours_in_day> hours{};
    const double mm = day.rain->in(units::millimetres);
    if (!(mm > 0.0)) return hours;
    const double most = std::min<double>(
        shape_.most_rain_hours.value, std::max(1.0, std::floor(mm * tenths_in_millimetre + 1e-9)));
    const auto length = static_cast<std::size_t>(
        std::clamp(std::round(shape_.rain_hours.value * std::sqrt(mm)), 1.0, most));
    const auto date = static_cast<std::uint64_t>(day.date.time_since_epoch().count());
    const std::size_t start = mixed(mixed(shape_.seed) ^ date) % (hours_in_day - length + 1);
    for (std::size_t h = start; h < start + length; ++h)
      hours[h] = *day.rain / static_cast<double>(length);
    return hours;
  }

  const std::vector<Day>& days_;
  Quality quality_;
  const DayShape& shape_;
};

}  // namespace

std::vector<MadeHour> hours_of(const std::vector<Day>& days,
                               Quality quality,
                               const DayShape& shape) {
  return Maker(days, quality, shape).make();
}

}  // namespace basinwright::weather
