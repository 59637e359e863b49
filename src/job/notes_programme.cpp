// Why each date: the end of what goes before, the wait that binds, and what keeps it from the
// hours after that. In which words a gate or window does so, the page says beside it.
#include <fmt/format.h>

#include <numeric>

#include "basinwright/units/unit.hpp"
#include "notes.hpp"

namespace basinwright::job {
namespace {

using dates::Moment;
using sequence::Booking;
using sequence::Held;
using units::Duration;

constexpr double seconds_in_quarter = 900.0;
// Of a task's hours, quarters are worked to the end.
constexpr std::string_view rounded_up = "whole quarter hours";

Duration between(Moment from, Moment to) {
  return units::minutes(15) * static_cast<double>(to.quarters() - from.quarters());
}

class ProgrammeNotes {
 public:
  ProgrammeNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), p_(plan.programme), t_(plan.trace) {}

  void record() {
    for (const Booking& booking : p_.bookings) {
      start(booking);
      end(booking);
    }
  }

 private:
  // What keeps a task from the hours before it.
  [[nodiscard]] sources::Source closed_source(const Booking& booking) const {
    for (const Held& held : booking.held_by) {
      if (held.by == Held::By::weather) return given_at("the weather file");
      if (held.by == Held::By::closed_day) return days_source(job_);
      if (held.by == Held::By::painting_hours) return given_at("/calendar/painting_hours");
      if (held.by == Held::By::fewer_days || held.by == Held::By::less_empty ||
          held.by == Held::By::recoat_window)
        return {sources::Kind::assumed, "programme-choice", "placed later at no loss"};
    }
    return hours_source(job_);
  }

  [[nodiscard]] static const Held* wait_of(const Booking& booking) {
    const auto it = std::ranges::find_if(booking.held_by,
                                         [](const Held& held) { return held.wait > Duration(); });
    return it == booking.held_by.end() ? nullptr : &*it;
  }

  // The wait as a constant of the rate book or the data sheet where it is one.
  [[nodiscard]] sources::Source wait_source(const Held& held) const {
    const sequence::Waits& w = rates_.waits;
    for (const Sourced<Duration>* one : {&w.dry,
                                         &w.dryness_test,
                                         &w.after_chlorine,
                                         &w.filler_cure,
                                         &w.rework_dry,
                                         &rates_.thresholds.cement_age}) {
      if (one->value == held.wait) return one->source;
    }
    return rates_.thresholds.cement_age.source;
  }

  // What it follows: the task that a reason names, else the last one that is over by then.
  [[nodiscard]] const Booking* before(const Booking& booking) const {
    const Held* wait = wait_of(booking);
    std::string named = wait != nullptr ? wait->task : "";
    for (const Held& held : booking.held_by) {
      if (named.empty()) named = held.task;
    }
    const Booking* found = nullptr;
    for (const Booking& other : p_.bookings) {
      if (&other == &booking || other.end > booking.start) continue;
      const bool fits = named.empty() ||
                        (other.task == named && (other.section == booking.section ||
                                                 other.section.empty() || booking.section.empty()));
      if (fits && (found == nullptr || other.end >= found->end)) found = &other;
    }
    if (found == nullptr && !named.empty()) {
      for (const Booking& other : p_.bookings) {
        if (&other == &booking || other.end > booking.start) continue;
        if (found == nullptr || other.end >= found->end) found = &other;
      }
    }
    return found;
  }

  void start(const Booking& booking) {
    const std::string key = booking_key(p_, booking, "start");
    if (booking.done) return note_taken(t_, key, at(booking.start), given_at("the site log"));
    const bool rolled_after =
        !booking.held_by.empty() && booking.held_by.front().by == Held::By::before;
    if (rolled_after) return start_before(booking, key);
    const Booking* other = before(booking);
    if (other == nullptr) return start_of_job(booking, key);
    const std::string from = booking_key(p_, *other, "end");
    const Held* held = wait_of(booking);
    if (held != nullptr && held->by == Held::By::recoat_window)
      return start_in_window(booking, *other, held->wait);
    const Duration wait = held == nullptr ? Duration() : held->wait;
    const Duration later = between(other->end, booking.start) - wait;
    std::vector<trace::Operand> operands{{"after", at(other->end), trace::From{from}}};
    std::string formula = "after";
    if (held != nullptr) {
      formula += " + wait";
      operands.emplace_back("wait", wait, wait_source(*held));
    }
    const Moment opening(booking.start.date(), job_.calendar.hours.from);
    if (later > Duration() && booking.start == opening) {
      formula = fmt::format("max({}, opening)", formula);
      operands.emplace_back("opening", at(opening), closed_source(booking));
    } else if (later != Duration()) {
      formula += " + later";
      operands.emplace_back("later", later, closed_source(booking));
    }
    t_.note_all(key, at(booking.start), formula, operands);
  }

  void start_of_job(const Booking& booking, const std::string& key) {
    const Moment day(plan_.first_day, 0);
    const Duration opening = units::minutes(15) * static_cast<double>(job_.calendar.hours.from);
    t_.note(key,
            at(booking.start),
            "day + opening + later",
            {{"day", at(day), given_at("/job/start")},
             {"opening", opening, hours_source(job_)},
             {"later", between(day, booking.start) - opening, closed_source(booking)}},
            "nothing goes before it");
  }

  // Vacuuming right before the rollers.
  void start_before(const Booking& booking, const std::string& key) {
    const auto next = std::ranges::find_if(p_.bookings, [&](const Booking& other) {
      return other.start == booking.end && other.task == booking.held_by.front().task;
    });
    if (next == p_.bookings.end())
      return note_taken(t_, key, at(booking.start), hours_source(job_));
    t_.note(key,
            at(booking.start),
            "next - needed",
            {{"next", at(next->start), trace::From{booking_key(p_, *next, "start")}},
             {"needed", between(booking.start, booking.end), rates_.productivity.vacuum.source}},
            rounded_up);
  }

  // Start to start and end to end: the longer of the two opens the window.
  void start_in_window(const Booking& booking, const Booking& coat, Duration window) {
    const Duration length = between(booking.start, booking.end);
    const double opens = std::max(at(coat.start).seconds + window.si(),
                                  at(coat.end).seconds + window.si() - length.si());
    const std::string key = booking_key(p_, booking, "start");
    const bool primer = coat.task == "prime";
    const auto least = primer ? plan_.system.primer.window_min : plan_.system.recoat_min;
    t_.note(key + ".window",
            window,
            "ceil(least / 900) * 900 + reserve",
            {{"least", least},
             {"reserve", window - quarters_up(least.value), rates_.waits.recoat_reserve.source}},
            "in quarter hours");
    t_.note(
        key,
        at(booking.start),
        "max(start + window, end + window - length) + later",
        {{"start", at(coat.start), trace::From{booking_key(p_, coat, "start")}},
         {"end", at(coat.end), trace::From{booking_key(p_, coat, "end")}},
         {"window", window, trace::From{key + ".window"}},
         {"length", length, (primer ? rates_.productivity.prime : rates_.productivity.coat).source},
         {"later", Duration::from_si(at(booking.start).seconds - opens), closed_source(booking)}},
        "the recoat window opens for both ends of the coat before");
  }

  [[nodiscard]] static Duration quarters_up(Duration time) {
    return units::minutes(15) * std::ceil(time.si() / seconds_in_quarter - 1e-9);
  }

  [[nodiscard]] static double quarters_worked(const Booking& booking) {
    return std::accumulate(
        booking.worked.begin(),
        booking.worked.end(),
        0.0,
        [](double sum, const sequence::Worked& day) { return sum + day.quarters; });
  }

  // A task's own length, in whole quarters, and the hours between in which nobody works.
  void end(const Booking& booking) {
    const std::string key = booking_key(p_, booking, "end");
    if (booking.done && !booking.going_on)
      return note_taken(t_, key, at(booking.end), given_at("the site log"));
    const Duration worked = units::minutes(15) * quarters_worked(booking);
    const Duration all = between(booking.start, booking.end);
    const std::string begun = booking_key(p_, booking, "start");
    const trace::Operand start{"start", at(booking.start), trace::From{begun}};
    if (worked > Duration() && booking.task != "fill" && booking.task != "start-up") {
      const std::string length = key + ".worked";
      length_of_work(length, booking, worked);
      std::vector<trace::Operand> operands{start, {"worked", worked, trace::From{length}}};
      if (all != worked) operands.emplace_back("between", all - worked, hours_source(job_));
      t_.note_all(key,
                  at(booking.end),
                  all == worked ? "start + worked" : "start + worked + between",
                  operands);
      return;
    }
    unattended(key, start, booking, all);
  }

  void length_of_work(const std::string& key, const Booking& booking, Duration worked) {
    const auto work = std::ranges::find_if(plan_.work, [&](const sequence::Work& w) {
      return w.task == booking.task && (w.section == booking.section || w.of_sections == 1);
    });
    const auto people = static_cast<double>(booking.people);
    if (work != plan_.work.end() && people > 0.0 &&
        quarters_up(work->person_hours / people) == worked) {
      t_.note(key,
              worked,
              "ceil(hours / people / 900 - 0.000000001) * 900",
              {{"hours", work->person_hours, work_source(booking.task)},
               {"people", people, people_source(booking.task)}},
              rounded_up);
      return;
    }
    note_taken(
        t_, key, worked, work_source(booking.task), "quarter hours in which it is worked on");
  }

  [[nodiscard]] sources::Source people_source(std::string_view task) const {
    const bool paint = task == "prime" || task.starts_with("coat-");
    return (paint ? job_.crew.painters : job_.crew.people).source;
  }
  [[nodiscard]] sources::Source work_source(std::string_view task) const {
    if (task == "vacuum") return rates_.productivity.vacuum.source;
    if (task == "prime") return rates_.productivity.prime.source;
    if (task.starts_with("coat-")) return rates_.productivity.coat.source;
    return {sources::Kind::assumed, "productivity", task};
  }

  // What takes its time with nobody at it.
  void unattended(const std::string& key,
                  const trace::Operand& start,
                  const Booking& booking,
                  Duration all) {
    const auto flowing = [&](const Sourced<units::Flow>& flow) {
      t_.note(key,
              at(booking.end),
              "start + max(1, ceil(water / flow / 900 - 0.000001)) * 900",
              {start,
               {"water", plan_.take_off.total.water_volume, trace::From{"takeoff.water_volume_m3"}},
               {"flow", flow}},
              rounded_up);
    };
    const auto waiting = [&](Duration time, const sources::Source& source, const char* words) {
      t_.note(key, at(booking.end), "start + time", {start, {"time", time, source}}, words);
    };
    const double water = plan_.take_off.total.water_volume.si();
    const auto fits = [&](units::Flow flow) {
      const double quarters = std::ceil(water / flow.si() / seconds_in_quarter - 1e-6);
      return std::abs(std::max(1.0, quarters) * seconds_in_quarter - all.si()) < 1.0;
    };
    if (booking.task == "drain" && fits(rates_.productivity.drain_pump.value))
      return flowing(rates_.productivity.drain_pump);
    if (booking.task == "fill" && fits(plan_.tap)) return fill_time(key, start, booking);
    if (booking.task == "cure") return cure(key, start, booking, all);
    if (booking.task == "start-up")
      return waiting(all,
                     rates_.waits.start_up.source,
                     "the longer of quiet time and start-up, and a working day for each addition");
    waiting(all, length_source(booking), "");
  }

  void fill_time(const std::string& key, const trace::Operand& start, const Booking& booking) {
    t_.note(key,
            at(booking.end),
            "start + max(1, ceil(water / tap / 900 - 0.000001)) * 900",
            {start,
             {"water", plan_.take_off.total.water_volume, trace::From{"takeoff.water_volume_m3"}},
             {"tap", plan_.tap, trace::From{"refill.tap_l_min"}}},
            rounded_up);
  }

  void cure(const std::string& key,
            const trace::Operand& start,
            const Booking& booking,
            Duration all) {
    t_.note(key,
            at(booking.end),
            "start + cure",
            {start, {"cure", all, trace::From{"programme.cure_days"}}});
  }

  [[nodiscard]] sources::Source length_source(const Booking& booking) const {
    if (booking.task == "dryness-test") return rates_.waits.dryness_test.source;
    if (booking.task == "drain") return rates_.productivity.drain_pump.source;
    return hours_source(job_);
  }

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  const sequence::Programme& p_;
  trace::Trace& t_;
};

}  // namespace

void note_programme(const Job& job, const RateBook& rates, Plan& plan) {
  if (!plan.stopped() && !plan.programme.bookings.empty())
    ProgrammeNotes(job, rates, plan).record();
}

}  // namespace basinwright::job
