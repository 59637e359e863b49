#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// The weather read, with where the pool is and the book's rules.
[[nodiscard]] sequence::SiteWeather site_weather(const Job& job,
                                                 const RateBook& rates,
                                                 const Circumstances& now);

/// Says which limits the weather was held against.
void use_limits(const materials::CoatingSystem& system,
                const sequence::WeatherRules& rules,
                trace::Trace& trace);

}  // namespace basinwright::job
