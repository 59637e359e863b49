#include "bookings.hpp"

#include <algorithm>

#include "after_fill.hpp"
#include "causes.hpp"
#include "tasks.hpp"
#include "weather_facts.hpp"
#include "windows.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Slot;
using By = Held::By;

class Teller {
 public:
  Teller(const ProgrammeQuestion& q,
         const Instance& instance,
         const schedule::Answer& answer,
         const UnitStarts& by_calendar)
      : q_(q), in_(instance), answer_(answer), by_calendar_(by_calendar) {}

  Programme tell() {
    programme_.feasible = true;
    programme_.split_coats = answer_.objective.splits;
    // With the vacuuming before the units, and the steps after them, about so many.
    programme_.bookings.reserve(2 * answer_.bookings.size());
    tell_past();
    for (const schedule::Booking& b : answer_.bookings) {
      if (b.what == schedule::Booking::What::task) {
        tell_task(b);
      } else if (b.what == schedule::Booking::What::unit) {
        tell_unit(b);
      } else {
        tell_again(b);
      }
    }
    tell_tail();
    count_days();
    add_weather_facts(q_, in_, programme_);
    return std::move(programme_);
  }

 private:
  [[nodiscard]] dates::Moment at(Slot s) const { return in_.timeline().moment(s); }

  Booking& add(std::string task, std::string section, Slot start, Slot end) {
    programme_.bookings.push_back(
        {std::move(task), std::move(section), at(start), at(end), 0, {}, {}});
    return programme_.bookings.back();
  }

  // Which slots somebody works in, by day.
  void work_in(Booking& booking, Slot from, Slot to, bool only_open) {
    for (Slot s = from; s < to; ++s) {
      if (only_open && in_.open_work().between(s, s + 1) == 0) continue;
      const dates::Date day = at(s).date();
      if (booking.worked.empty() || booking.worked.back().date != day)
        booking.worked.push_back({day, 0});
      ++booking.worked.back().quarters;
    }
  }

  [[nodiscard]] std::vector<Held> causes(const Gated& gated, Span between) const {
    return q_.reasons ? weather_causes(in_, gated, between) : std::vector<Held>();
  }

  // What stood between the earliest moment a task could start and its start.
  void explain(Booking& booking, Slot earliest, Slot start, Held otherwise) {
    if (start <= earliest) {
      booking.held_by.push_back(std::move(otherwise));
      return;
    }
    const weather::Outlook* gate = in_.outdoors().of_task(booking.task);
    bool free = in_.open_work().between(earliest, start) > 0;
    if (gate != nullptr && free) {
      const schedule::Calendar open = in_.outdoors().under(in_.work_calendar(), gate);
      const auto weather = causes({in_.work_calendar(), open, *gate, 1}, {earliest, start});
      booking.held_by.insert(booking.held_by.end(), weather.begin(), weather.end());
      free = OpenSlots(open).between(earliest, start) > 0;
      if (!free && !weather.empty()) return;
    }
    if (free) {
      booking.held_by.push_back({before_emptied_ ? By::less_empty : By::fewer_days});
      return;
    }
    bool closed = false;
    for (Slot s = earliest; s < start; s += 4)
      closed = closed || !q_.calendar.works_on(at(s).date());
    booking.held_by.push_back({closed ? By::closed_day : By::working_hours});
  }

  // What is done stands where it was done; the rest goes on from its end.
  void tell_past() {
    if (!q_.past) return;
    const auto& units = in_.problem().units;
    before_ = in_.now();
    for (const Done& done : q_.past->done) {
      if (is_tail(done.task)) continue;
      const bool paint = is_paint(done.task);
      const Slot start = in_.timeline().slot(done.start);
      const Slot end = in_.expected_end(done, start);
      const bool cut = units.sections.size() > 1 || !paint;
      Booking& booking = add(done.task, cut ? done.section : "", start, end);
      booking.done = true;
      booking.assumed = done.assumed;
      booking.going_on = done.running;
      const Work* work = in_.find(done.task);
      booking.people = work == nullptr || end == start ? 0 : work->people;
      // Made good what was lost: no work of the route, but somebody was there.
      if (done.task == "rework" || done.task == "clean-again") booking.people = q_.rework.people;
      if (done.task == "drain" || done.task == "dryness-test") booking.people = 0;
      if (booking.people > 0) work_in(booking, start, end, true);
      before_ = std::max(before_, end);
      if (end >= ended_) {
        ended_ = end;
        before_task_ = done.task;
      }
      if (!paint) continue;
      last_coat_ = done.task;
      last_end_ = std::max(last_end_, end);
      last_painted_ = std::max(last_painted_, at(start).date());
    }
  }

  [[nodiscard]] static bool is_tail(const std::string& task) {
    return is_outside_chain(task) && !is_paint(task);
  }

  // Abrading a section whose window is lost, or cleaning the etched shell again.
  void tell_again(const schedule::Booking& b) {
    const auto [task, section] = in_.named(b);
    Booking& booking = add(task, section, b.start, b.end);
    booking.people = q_.rework.people;
    work_in(booking, b.start, b.end, true);
    explain(booking, before_, b.start, {By::task, before_task_, {}});
    go_on_from(b.end, task);
  }

  void go_on_from(Slot end, const std::string& task) {
    before_ = ended_ = end;
    before_task_ = task;
  }

  // The first task starts with the job unless the weather or a shorter empty pool says otherwise.
  void hold_first(Booking& booking, Slot start, Held otherwise) {
    if (before_emptied_)
      return explain(booking, in_.open_work().next(0), start, std::move(otherwise));
    if (const weather::Outlook* gate = in_.outdoors().of_task(booking.task)) {
      const schedule::Calendar open = in_.outdoors().under(in_.work_calendar(), gate);
      booking.held_by = causes({in_.work_calendar(), open, *gate, 1}, {0, start});
    }
    if (booking.held_by.empty()) booking.held_by.push_back(std::move(otherwise));
  }

  void tell_task(const schedule::Booking& b) {
    const ChainEntry& entry = in_.chain()[b.index];
    Booking& booking = add(entry.task, entry.section, b.start, b.end);
    booking.people = entry.people;
    if (entry.people > 0) work_in(booking, b.start, b.end, true);
    const Slot lag = in_.problem().chain[b.index].lag_min;
    const Slot earliest = std::max({before_, ended_ + lag, in_.problem().chain[b.index].release});
    Held held{By::task, before_task_, {}};
    if (before_task_.empty()) held = {By::start_date, "", {}};
    if (lag > 0) held = {By::wait, before_task_, entry.wait};
    if (entry.cement && in_.problem().chain[b.index].release >= b.start)
      held = {By::new_cement, "", q_.cement_wait};
    before_emptied_ = b.index <= in_.problem().emptied_by.value_or(0) && in_.problem().emptied_by;
    if (before_task_.empty() && lag == 0 && !entry.cement) {
      hold_first(booking, b.start, std::move(held));
    } else {
      explain(booking, earliest, b.start, std::move(held));
    }
    if (lag > 0 && b.start > earliest)
      booking.held_by.insert(booking.held_by.begin(), {By::wait, before_task_, entry.wait});
    before_emptied_ = false;
    go_on_from(b.end, entry.task);
  }

  void tell_unit(const schedule::Booking& b) {
    const auto& units = in_.problem().units;
    const std::string& coat = units.coats[b.index];
    const std::string section = units.sections.size() > 1 ? units.sections[b.section] : "";
    book_vacuum(b, coat, section);
    Booking& booking = add(coat, section, b.start, b.end);
    booking.people = in_.find(coat) == nullptr ? 0 : in_.find(coat)->people;
    work_in(booking, b.start, b.end, false);
    if (in_.outdoors().known()) {
      booking.rests_on = in_.outdoors().coat().rests_on(b.start, b.end);
    }
    hold_unit(booking, b);
    go_on_from(b.end, coat);
    last_coat_ = coat;
    last_end_ = std::max(last_end_, b.end);
  }

  // The first section of a morning is vacuumed by the whole crew before it, and with no spare hands
  // the later ones of that morning with it; otherwise spare hands go ahead of the rollers.
  void book_vacuum(const schedule::Booking& b,
                   const std::string& coat,
                   const std::string& section) {
    const bool first = at(b.start).date() != last_painted_;
    const int spare = in_.spare_hands();
    std::int32_t quarters = first ? in_.vacuum_quarters(b.section) : in_.vacuum_beside(b.section);
    if (first && spare < 1) {
      for (const schedule::Booking& other : answer_.bookings) {
        const bool later = other.what == schedule::Booking::What::unit && other.start > b.start;
        if (later && at(other.start).date() == at(b.start).date()) {
          quarters += in_.vacuum_quarters(other.section);
        }
      }
    }
    last_painted_ = at(b.start).date();
    if (quarters <= 0) return;
    Booking& cleaned = add("vacuum", section, b.start - quarters, b.start);
    cleaned.people = first ? in_.find("vacuum")->people : spare;
    work_in(cleaned, b.start - quarters, b.start, false);
    cleaned.held_by.push_back({By::before, coat, {}});
  }

  // The weather between the start that the calendar alone would give it and its own comes first;
  // then the window of the coat before it, or what else decided.
  void hold_unit(Booking& booking, const schedule::Booking& b) {
    const auto& units = in_.problem().units;
    hold_by_weather(booking, b);
    if (const auto reworked = rework_before(in_.problem(), answer_, b)) {
      if (b.start <= *reworked + units.rework->dry)
        booking.held_by.push_back({By::wait, "rework", q_.waits.rework_dry.value});
      if (booking.held_by.empty()) booking.held_by.push_back({By::painting_hours});
      return;
    }
    if (b.index > 0) {
      const schedule::Recoat& window = units.recoat[b.index - 1];
      booking.held_by.push_back({By::recoat_window,
                                 units.coats[b.index - 1],
                                 units::hours(window.min / quarters_in_hour)});
      return;
    }
    const auto& paint = in_.problem().calendars[units.calendar];
    bool open = false;
    for (Slot s = before_; s < b.start; ++s) open = open || paint[static_cast<std::size_t>(s)] != 0;
    if (b.start <= before_) {
      booking.held_by.push_back({By::task, before_task_});
    } else if (open) {
      booking.held_by.push_back({By::recoat_window});
    } else if (booking.held_by.empty()) {
      booking.held_by.push_back({By::painting_hours});
    }
  }

  void hold_by_weather(Booking& booking, const schedule::Booking& b) {
    if (!in_.outdoors().known() || by_calendar_.empty()) return;
    const Span between{by_calendar_[b.index][b.section], b.start};
    if (between.from >= between.to) return;
    const Slot length = b.end - b.start;
    const auto& paint = in_.problem().calendars[in_.problem().units.calendar];
    booking.held_by =
        causes({in_.painting_calendar(), paint, in_.outdoors().coat(), length}, between);
    if (!booking.held_by.empty() || b.index > 0) return;
    const auto dry = in_.outdoors().under(paint, &in_.outdoors().dry_shell());
    booking.held_by = causes({paint, dry, in_.outdoors().dry_shell(), length}, between);
  }

  void tell_tail() {
    const auto tail = in_.tail(last_end_);
    if (!tail) return;
    const std::string last = last_coat_;
    if (const Work* unmask = in_.find("unmask")) {
      Booking& b = add("unmask", "", tail->unmask_start, tail->unmask_end);
      b.people = unmask->people;
      work_in(b, tail->unmask_start, tail->unmask_end, true);
      explain(b, last_end_, tail->unmask_start, {By::task, last, {}});
      settle(q_, b);
    }
    const units::Duration cure = units::hours((tail->cure_end - last_end_) / quarters_in_hour);
    programme_.cure = cure;
    programme_.cure_by_temperature = in_.cure().known(last_end_, tail->cure_end);
    programme_.cure_by_weather = in_.cure().by_weather(last_end_, tail->cure_end);
    add("cure", "", last_end_, tail->cure_end).held_by.push_back({By::task, last, {}});
    if (const Work* refit = in_.find("refit")) {
      Booking& b = add("refit", "", tail->refit_start, tail->refit_end);
      b.people = refit->people;
      work_in(b, tail->refit_start, tail->refit_end, true);
      explain(b, tail->cure_end, tail->refit_start, {By::task, "cure", {}});
      settle(q_, b);
    }
    tell_fill(*tail);
  }

  void tell_fill(const Tail& tail) {
    Booking& fill = add("fill", "", tail.fill_start, tail.fill_start);
    explain(fill, tail.refit_end, tail.fill_start, {By::task, "refit", {}});
    add_after_fill(q_, programme_);
  }

  void count_days() {
    put_in_order(programme_);
    for (Booking& b : programme_.bookings) {
      if (b.done) b.rests_on = weather::Quality::observed;
      if (!b.done && !is_paint(b.task)) b.rests_on = in_.outdoors().rests_on(b.start, b.end);
    }
  }

  const ProgrammeQuestion& q_;
  const Instance& in_;
  const schedule::Answer& answer_;
  const UnitStarts& by_calendar_;
  Programme programme_;
  Slot before_ = 0;
  Slot last_end_ = 0;
  bool before_emptied_ = false;  // the task told is the one that empties the pool, or before it
  Slot ended_ = 0;               // end of the task before, which may be long past
  std::string before_task_, last_coat_;
  dates::Date last_painted_;
};

}  // namespace

UnitStarts unit_starts(const schedule::Problem& problem, const schedule::Answer& answer) {
  UnitStarts starts(problem.units.coats.size(), std::vector<Slot>(problem.units.sections.size()));
  for (const schedule::Booking& b : answer.bookings) {
    if (b.what == schedule::Booking::What::unit) starts[b.index][b.section] = b.start;
  }
  return starts;
}

Programme bookings_of(const ProgrammeQuestion& question,
                      const Instance& instance,
                      const schedule::Answer& answer,
                      const UnitStarts& by_calendar) {
  return Teller(question, instance, answer, by_calendar).tell();
}

}  // namespace basinwright::sequence
