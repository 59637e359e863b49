#include "site_weather.hpp"

#include "basinwright/units/unit.hpp"

namespace basinwright::job {

sequence::SiteWeather site_weather(const Job& job,
                                   const RateBook& rates,
                                   const Circumstances& now) {
  sequence::SiteWeather weather;
  weather.rules = rates.weather;
  weather.record = now.weather;
  weather.clock_offset = now.clock_offset;
  if (job.site.utc_offset) weather.clock_offset = units::hours(*job.site.utc_offset);
  if (job.site.latitude && job.site.longitude) {
    weather.position = weather::Position{*job.site.latitude, *job.site.longitude};
  }
  return weather;
}

void use_limits(const materials::CoatingSystem& system,
                const sequence::WeatherRules& rules,
                trace::Trace& trace) {
  const materials::Limits& limits = system.limits;
  trace.use("coating.limits.air_min", limits.air_min);
  trace.use("coating.limits.air_max", limits.air_max);
  trace.use("coating.limits.air_after", limits.air_after);
  trace.use("coating.limits.shell_min", limits.shell_min);
  trace.use("coating.limits.shell_max", limits.shell_max);
  trace.use("coating.limits.dew_margin", limits.dew_margin);
  trace.use("coating.limits.humidity_max", limits.humidity_max);
  trace.use("coating.limits.rain_free_after", limits.rain_free_after);
  trace.use("coating.limits.dry_before", limits.dry_before);
  if (limits.wind_max) trace.use("coating.limits.wind_max", *limits.wind_max);
  if (!system.hardeners.empty()) trace.use("coating.cool_hardener_to", system.cool_hardener_to);
  trace.use("weather.least_rain", rules.least_rain);
  trace.use("weather.shell_lag", rules.shell_lag);
  trace.use("weather.frost", rules.frost);
  trace.use("weather.heavy_rain", rules.heavy_rain);
  trace.use("weather.heavy_rain_within", rules.heavy_rain_within);
}

}  // namespace basinwright::job
