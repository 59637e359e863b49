// The weather beside the programme, hour by hour, with the days' light and rest.
#pragma once

#include <optional>
#include <vector>

#include "basinwright/job/plan.hpp"
#include "basinwright/weather/conditions.hpp"
#include "basinwright/weather/sun.hpp"

namespace basinwright::job {

/// One day of the programme.
struct StripDay {
  dates::Date date;
  bool works = true;                   ///< The crew works on it.
  std::optional<weather::SunDay> sun;  ///< Where the place and the clock are known.
  std::vector<weather::State> hours;   ///< Hour by hour; empty without weather.
};

/// The days from the first to the last booking; none without dates.
[[nodiscard]] std::vector<StripDay> weather_strip(const Job& job,
                                                  const RateBook& rates,
                                                  const Plan& plan,
                                                  const Circumstances& now);

/// The days from one to another, both included.
[[nodiscard]] std::vector<StripDay> weather_strip(const Job& job,
                                                  const RateBook& rates,
                                                  const Circumstances& now,
                                                  dates::Date first,
                                                  dates::Date last);

}  // namespace basinwright::job
