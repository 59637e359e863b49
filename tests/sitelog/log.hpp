// Short ways to write a log in tests.
#pragma once

#include <string>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/sitelog/rules.hpp"
#include "support/catch.hpp"

namespace log_of {

using namespace basinwright::sitelog;
namespace dates = basinwright::dates;
namespace units = basinwright::units;

/// A time on the Monday of the tests, or days after it: "1T08:05" is Tuesday.
inline dates::Minute at(const std::string& text) {
  const auto monday = dates::parse_minute("2027-05-31T" + text.substr(2)).value();
  return dates::Minute(monday.minutes() + 1440 * std::stoi(text.substr(0, 1)));
}
inline Entry entry(Event event,
                   const std::string& time,
                   std::string task,
                   std::string section = {}) {
  Entry e;
  e.event = event;
  e.at = at(time);
  e.task = std::move(task);
  e.section = std::move(section);
  return e;
}
inline Entry started(const std::string& time, std::string task, std::string section = {}) {
  return entry(Event::started, time, std::move(task), std::move(section));
}
inline Entry finished(const std::string& time, std::string task, std::string section = {}) {
  return entry(Event::finished, time, std::move(task), std::move(section));
}
inline Entry stopped(const std::string& time,
                     double share,
                     std::string task,
                     std::string section = {}) {
  Entry e = entry(Event::stopped, time, std::move(task), std::move(section));
  e.share = share;
  return e;
}
inline Entry conditions(const std::string& time, double air, double shell, double humidity) {
  Entry e = entry(Event::reading, time, "");
  e.read.air = units::celsius(air);
  e.read.shell = units::celsius(shell);
  e.read.humidity = units::percent(humidity);
  return e;
}
inline Entry mix(const std::string& time, std::string a, std::string part_b = {}) {
  Entry e = entry(Event::mix, time, "coat-1");
  e.batch_a = std::move(a);
  e.part_b = std::move(part_b);
  return e;
}
inline Entry released(const std::string& time, std::string hold) {
  Entry e = entry(Event::hold_released, time, "");
  e.hold = std::move(hold);
  e.by = "foreman";
  return e;
}

/// Limits as practice has them: air 10 to 30 C, shell 10 to 32 C, 3 C above the dew point, 85 %,
/// recoat 20 to 24 h, primer 4 to 24 h, 7 days after the etch, an hour of pot life.
inline Rules usual() {
  Rules r;
  r.air_min = r.shell_min = units::celsius(10);
  r.air_max = units::celsius(30);
  r.shell_max = units::celsius(32);
  r.dew_margin = units::kelvins(3);
  r.humidity_max = units::percent(85);
  r.recoat = {units::hours(20), units::hours(24)};
  r.primer = {units::hours(4), units::hours(24)};
  r.coat_within = units::days(7);
  r.pot_life = units::minutes(60);
  r.ph_min = 6.0;
  r.ph_max = 9.0;
  r.chlorine_max = units::milligrams_per_litre(0);
  return r;
}

inline std::vector<Broken> broken(const std::vector<Entry>& entries, const Rules& rules = usual()) {
  std::vector<Broken> out;
  for (const Breach& b : breaches({entries, false}, rules)) out.push_back(b.rule);
  return out;
}

}  // namespace log_of
