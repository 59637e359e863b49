#include "basinwright/job/site_past.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/sitelog/rules.hpp"
#include "basinwright/units/unit.hpp"
#include "rework.hpp"

namespace basinwright::job {
namespace {

using sequence::Booking;

dates::Minute later(dates::Minute at, units::Duration by) {
  return dates::Minute(at.minutes() + std::llround(by.in(units::minutes)));
}

sitelog::Window recoat_window(const Plan& plan, std::string_view below) {
  const auto& sheet = plan.system;
  if (below == "prime") return {sheet.primer.window_min.value, sheet.primer.window_max.value};
  return {sheet.recoat_min.value, sheet.recoat_max.value};
}

units::Duration span_between(dates::Moment from, dates::Moment to) {
  return units::minutes(
      static_cast<double>(dates::Minute(to).minutes() - dates::Minute(from).minutes()));
}

class Windows {
 public:
  Windows(const Plan& plan, const RateBook& rates, const sitelog::Log& log)
      : plan_(plan), rates_(rates), done_(sitelog::progress(log)) {}

  std::vector<Deadline> all() {
    std::vector<std::string> sections;
    for (const Booking& b : plan_.programme.bookings) {
      if (!sitelog::is_coat(b.task)) continue;
      if (std::ranges::find(sections, b.section) == sections.end()) sections.push_back(b.section);
    }
    for (const std::string& section : sections) look(section);
    std::ranges::stable_sort(found_, {}, &Deadline::by);
    return std::move(found_);
  }

 private:
  void look(const std::string& section) {
    const Booking* on = nullptr;
    const Booking* next = nullptr;
    for (const Booking& b : plan_.programme.bookings) {
      if (!sitelog::is_coat(b.task) || b.section != section) continue;
      if (b.done) {
        on = &b;
      } else if (next == nullptr) {
        next = &b;
      }
    }
    if (next == nullptr) return;
    if (on != nullptr) {
      recoat(*on, *next);
    } else {
      etch(*next);
    }
  }

  // To the minute where the log has the whole section's times.
  [[nodiscard]] dates::Minute start_of(const Booking& b) const {
    const sitelog::Progress* p = progress_of(b);
    return p != nullptr && p->start.up() == b.start ? p->start : dates::Minute(b.start);
  }
  [[nodiscard]] dates::Minute end_of(const Booking& b) const {
    const sitelog::Progress* p = progress_of(b);
    return p != nullptr && p->end && p->end->up() == b.end ? *p->end : dates::Minute(b.end);
  }
  [[nodiscard]] const sitelog::Progress* progress_of(const Booking& b) const {
    return sitelog::find(done_, b.task, whole_section(b.section));
  }

  void recoat(const Booking& on, const Booking& next) {
    if (const Booking* again = reworked(on)) {
      const dates::Minute end = end_of(*again);
      add({next.section,
           next.task,
           again->task,
           later(end, rates_.waits.rework_dry.value),
           later(end, rates_.waits.rework_coat_within.value),
           next.start},
          is_lost(on.section));
      return;
    }
    const sitelog::Window window = recoat_window(plan_, on.task);
    const units::Duration length = span_between(next.start, next.end);
    const dates::Minute start = start_of(on);
    const dates::Minute end = end_of(on);
    add({next.section,
         next.task,
         on.task,
         std::max(later(start, window.min), later(end, window.min - length)),
         std::min(later(start, window.max), later(end, window.max - length)),
         next.start},
        is_lost(on.section));
  }

  // Abraded and cleaned since, and done.
  [[nodiscard]] const Booking* reworked(const Booking& on) const {
    const Booking* found = nullptr;
    for (const Booking& b : plan_.programme.bookings) {
      if (b.done && b.task == sitelog::rework_task && b.section == on.section && b.start >= on.end)
        found = &b;
    }
    return found;
  }

  // A shell of one section has no name on the page.
  [[nodiscard]] bool is_lost(const std::string& section) const {
    const auto& lost = plan_.programme.lost.sections;
    return section.empty() ? !lost.empty() : std::ranges::find(lost, section) != lost.end();
  }

  void etch(const Booking& next) {
    const Booking* etched = nullptr;
    for (const Booking& b : plan_.programme.bookings) {
      if (b.done && (b.task == "etch-floor" || b.task == "clean-again")) etched = &b;
    }
    if (etched == nullptr) return;
    const sitelog::Progress* p = sitelog::find(done_, etched->task, "");
    const dates::Minute end = p != nullptr && p->end ? *p->end : dates::Minute(etched->end);
    add({next.section,
         next.task,
         etched->task,
         end,
         later(end, rates_.waits.coat_within.value),
         next.start},
        plan_.programme.lost.etch);
  }

  void add(Deadline deadline, bool lost) {
    std::int64_t last = deadline.by.minutes();
    for (const sequence::Chance& c : plan_.programme.chances) {
      if (c.task != deadline.task || c.section != deadline.section || !c.last) continue;
      deadline.last = c.last;
      deadline.again = c.again;
      // Its quarter hours end where the window does, or where hours and weather do.
      if (deadline.by.down() > *c.last) last = dates::Minute(*c.last).minutes();
    }
    const std::int64_t planned = dates::Minute(*deadline.planned).minutes();
    deadline.in_hand =
        units::minutes(static_cast<double>(std::max<std::int64_t>(0, last - planned)));
    deadline.state = deadline.in_hand < rates_.waits.recoat_reserve.value ? Deadline::State::shorter
                                                                          : Deadline::State::clear;
    if (lost || deadline.by.minutes() < planned) {
      const bool on_purpose = plan_.system.planned_rework && sitelog::is_coat(deadline.after);
      deadline.state = on_purpose ? Deadline::State::planned : Deadline::State::lost;
    }
    found_.push_back(std::move(deadline));
  }

  const Plan& plan_;
  const RateBook& rates_;
  std::vector<sitelog::Progress> done_;
  std::vector<Deadline> found_;
};

}  // namespace

sequence::Past past_of(const sitelog::Log& log, dates::Minute now) {
  sequence::Past past;
  past.now = now.up();
  for (const sitelog::Progress& p : sitelog::progress(log)) {
    const dates::Moment start = p.start.up();
    const dates::Moment end = p.end ? std::max(start, p.end->up()) : start;
    if (sitelog::is_coat(p.task) &&
        (dates::Minute(start) != p.start || (p.end && dates::Minute(end) != *p.end)))
      past.rounded = true;
    past.done.push_back({p.task, p.section, start, end, p.share, p.running(), false});
  }
  return past;
}

Promised promised(const sequence::Programme& programme) {
  Promised p;
  for (const Booking& b : programme.bookings) {
    p.tasks.push_back({b.task, b.section, b.start});
    if (b.task == "handover") p.handover = b.start;
  }
  if (!programme.feasible) return p;
  p.refill_done = programme.refill_done;
  p.first_swim = programme.first_swim;
  return p;
}

std::vector<Deadline> deadlines(const Plan& plan, const RateBook& rates, const sitelog::Log& log) {
  return Windows(plan, rates, log).all();
}

std::vector<Tight> without_reserve(const Plan& plan, const RateBook& rates) {
  std::vector<Tight> out;
  const units::Duration reserve = rates.waits.recoat_reserve.value;
  std::map<std::string, const Booking*> below;  // by section; nothing after a rework
  for (const Booking& b : plan.programme.bookings) {
    if (b.task == sitelog::rework_task) below[b.section] = nullptr;
    if (!sitelog::is_coat(b.task)) continue;
    const Booking* on = std::exchange(below[b.section], &b);
    if (on == nullptr || b.done) continue;
    const sitelog::Window window = recoat_window(plan, on->task);
    const auto kept = [&](units::Duration apart) {
      return apart >= window.min + reserve && apart <= window.max - reserve;
    };
    if (!kept(span_between(on->start, b.start)) || !kept(span_between(on->end, b.end)))
      out.push_back({b.section, b.task});
  }
  return out;
}

std::vector<Remedy> remedies(const Plan& plan, const RateBook& rates) {
  std::vector<Remedy> out;
  for (const Booking& b : plan.programme.bookings) {
    if (b.done || (b.task != sitelog::rework_task && b.task != sitelog::clean_again_task)) continue;
    std::int64_t quarters = 0;
    for (const sequence::Worked& w : b.worked) quarters += w.quarters;
    const std::int64_t person_quarters = quarters * b.people;
    constexpr std::int64_t quarters_in_hour = 4;
    out.push_back(
        {b.task,
         b.section,
         b.start,
         b.end,
         units::hours(static_cast<double>(person_quarters) / quarters_in_hour),
         money::scaled(
             rates.labour.hour, person_quarters, quarters_in_hour, money::Rounding::half_away)});
  }
  return out;
}

}  // namespace basinwright::job
