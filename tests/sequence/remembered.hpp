// Programmes told in words, to be held against each other, and jobs to ask a memory about.
#pragma once

#include <fmt/format.h>
#include <functional>
#include <string>

#include "basinwright/sequence/memory.hpp"
#include "small_job.hpp"

namespace remembered {

using namespace basinwright;
using namespace small_job;
using namespace weather_making;
using Question = sequence::ProgrammeQuestion;
using Change = std::function<void(SmallJob&, Question&)>;

inline std::string told(const sequence::Programme& p) {
  std::string out = fmt::format("{} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {}\n",
                                p.feasible,
                                dates::iso(p.start),
                                dates::iso(p.refill_done),
                                dates::iso(p.quiet_until),
                                dates::iso(p.first_swim),
                                p.split_coats,
                                p.days_on_site,
                                p.cure.si(),
                                p.cure_by_temperature,
                                p.cure_by_weather,
                                static_cast<int>(p.weather),
                                p.hardener ? static_cast<int>(p.hardener->kind) : -1,
                                p.rain_before_drain ? p.rain_before_drain->si() : -1.0,
                                p.blocked_by ? p.blocked_by->task : "",
                                dates::iso(p.fill_start),
                                dates::iso(p.weather_until),
                                p.climatology_beyond,
                                p.rain_after_test ? dates::iso(*p.rain_after_test) : "",
                                p.hardener ? p.hardener->low.si() - p.hardener->high.si() : 0.0);
  if (p.blocked_by) {
    out += fmt::format("{} {}", p.blocked_by->section, static_cast<int>(p.blocked_by->why));
    for (const sequence::Constraint c : p.blocked_by->together)
      out += fmt::format(" {}", static_cast<int>(c));
    out += '\n';
  }
  for (const sequence::Booking& b : p.bookings) {
    out += fmt::format("{} {} {} {} {} {}",
                       b.task,
                       b.section,
                       dates::iso(b.start),
                       dates::iso(b.end),
                       b.people,
                       static_cast<int>(b.rests_on));
    for (const sequence::Worked& w : b.worked)
      out += fmt::format(" {}={}", dates::iso(w.date), w.quarters);
    for (const sequence::Held& h : b.held_by)
      out += fmt::format(" {}{}{}", static_cast<int>(h.by), h.task, h.wait.si());
    out += '\n';
  }
  return out;
}

/// Showers in the first days, fine afterwards.
inline SmallJob showery_job() {
  SmallJob job;
  for (int h = 0; h < 40 * 24; ++h) {
    weather::Hour now = fine();
    if (h < 6 * 24 && h % 67 < 3) now.rain->value = units::millimetres(h % 5);
    now.air->value = units::celsius(14 + h % 24 / 3);
    job.record.put(hour("2027-05-09T00:00") + h, now);
  }
  return job;
}

// Only what a line needs: not why, nor what it rests on.
inline std::string told_briefly(sequence::Programme programme) {
  for (sequence::Booking& b : programme.bookings) {
    b.held_by.clear();
    b.rests_on = {};
  }
  return told(programme);
}

inline sequence::Programme brief_of(sequence::Memory& memory, Question question) {
  question.reasons = false;
  return memory.brief(question, question.weather.record == nullptr ? 0 : 1);
}

inline std::string briefly_anew(Question question) {
  question.reasons = false;
  return told_briefly(sequence::programme(question));
}

// A pool that is drained before it is washed and etched.
inline SmallJob drained_job() {
  SmallJob job = showery_job();
  job.work.insert(job.work.begin(),
                  {{"set-out", "", units::hours(1.5), 1, 1},
                   {"drain", "", {}, 0, 1},
                   {"degrease", "", units::hours(3), 1, 1}});
  return job;
}

}  // namespace remembered
