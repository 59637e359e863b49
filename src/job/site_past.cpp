#include "basinwright/job/site_past.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/sitelog/progress.hpp"

namespace basinwright::job {
namespace {

using sequence::Booking;

constexpr std::string_view part_of = ", painted part";

dates::Minute later(dates::Minute at, units::Duration by) {
  return dates::Minute(at.minutes() + std::llround(by.in(units::minutes)));
}

// The section of the log that a section of the programme belongs to.
std::string whole_section(std::string section) {
  if (section == "painted part" || section == "rest") return "";
  for (const std::string_view end : {part_of, std::string_view(", rest")}) {
    if (section.ends_with(end)) section.resize(section.size() - end.size());
  }
  return section;
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

  // To the minute where the log has the whole section's start.
  [[nodiscard]] dates::Minute start_of(const Booking& b) const {
    const sitelog::Progress* p = sitelog::find(done_, b.task, whole_section(b.section));
    return p != nullptr && p->start.up() == b.start ? p->start : dates::Minute(b.start);
  }

  void recoat(const Booking& on, const Booking& next) {
    const bool primer = on.task == "prime";
    const auto& sheet = plan_.system;
    const auto least = primer ? sheet.primer.window_min.value : sheet.recoat_min.value;
    const auto most = primer ? sheet.primer.window_max.value : sheet.recoat_max.value;
    const dates::Minute start = start_of(on);
    add({next.section, next.task, on.task, later(start, least), later(start, most), next.start, {}},
        std::ranges::find(plan_.programme.lost.sections, named(on.section)) !=
            plan_.programme.lost.sections.end());
  }

  // A shell of one section has no name on the page.
  [[nodiscard]] std::string named(const std::string& section) const {
    return section.empty() ? "1" : section;
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
         next.start,
         {}},
        plan_.programme.lost.etch);
  }

  void add(Deadline deadline, bool lost) {
    const std::int64_t in_hand = deadline.by.minutes() - dates::Minute(*deadline.planned).minutes();
    deadline.state = Deadline::State::clear;
    if (static_cast<double>(in_hand) <= short_window.value.in(units::minutes))
      deadline.state = Deadline::State::shorter;
    if (lost || in_hand < 0) deadline.state = Deadline::State::lost;
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
