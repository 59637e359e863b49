// A small job for tests of the programme: one shift of etch, the dryness test, coats, the fill.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "basinwright/sequence/programme.hpp"
#include "basinwright/units/unit.hpp"
#include "weather/making.hpp"

namespace small_job {

using namespace basinwright;

inline dates::Date day(const std::string& text) {
  return dates::parse_date(text).value();
}

/// Owns what a question points to.
struct SmallJob {
  materials::CoatingSystem system;
  weather::Record record;
  dates::Date start = day("2027-05-10");  // a Monday
  dates::WorkCalendar calendar;
  std::vector<sequence::Work> work{{"etch-walls", "", units::hours(1), 1, 1},
                                   {"dryness-test", "", units::hours(1), 1, 1},
                                   {"coat-1", "", units::hours(2), 1, 1},
                                   {"coat-2", "", units::hours(2), 1, 1}};
  sequence::Waits waits;
  int most_days = 60;

  SmallJob() {
    // A fixed cure of seven days, whatever the temperature.
    system.cure_cold.value = system.cure_warm.value = units::days(7);
  }

  [[nodiscard]] sequence::ProgrammeQuestion question() const {
    sequence::ProgrammeQuestion q{.start = start,
                                  .calendar = calendar,
                                  .work = work,
                                  .sections = {"1"},
                                  .system = system,
                                  .waits = waits};
    q.water = units::cubic_metres(24);
    q.tap = units::cubic_metres_per_hour(1);
    q.drain_pump = units::cubic_metres_per_hour(10);
    q.weather.record = &record;
    q.most_days = most_days;
    return q;
  }
  [[nodiscard]] sequence::Programme programme() const { return sequence::programme(question()); }

  /// Overwrites what is known of an hour.
  void put(const std::string& moment, const weather::Hour& hour) {
    record.put(weather_making::hour(moment), hour);
  }
};

inline const sequence::Booking& booking(const sequence::Programme& programme,
                                        const std::string& task) {
  const auto it = std::ranges::find(programme.bookings, task, &sequence::Booking::task);
  if (it == programme.bookings.end()) throw std::runtime_error("no booking of " + task);
  return *it;
}

inline std::string start_of(const sequence::Programme& programme, const std::string& task) {
  return programme.feasible ? dates::iso(booking(programme, task).start) : "no dates";
}

/// What the weather held a task by, as rule and hour.
struct Cause {
  weather::Rule rule;
  std::string at;
  bool unknown;
};
inline std::vector<Cause> causes(const sequence::Programme& programme, const std::string& task) {
  std::vector<Cause> out;
  for (const sequence::Held& h : booking(programme, task).held_by) {
    if (!h.weather) continue;
    const auto at = dates::Moment::of_quarters(h.weather->hour * 4);
    out.push_back({*h.weather->closed_by, dates::iso(at), h.weather->unknown});
  }
  return out;
}

}  // namespace small_job
