// The rules of problem.hpp held against an answer one by one, by plain loops over slots. Shares no
// code with the solver on purpose, so that neither can hide the other's mistakes.
#include <algorithm>
#include <set>

#include "checker.hpp"

namespace basinwright::schedule {
namespace checking {

void Checker::chain() {
  std::optional<Slot> before;  // end of the last booked task
  for (const Booking& b : a_.bookings) {
    if (b.what != What::task) {
      continue;
    }
    const Task& task = p_.chain[b.index];
    require(b.start >= task.release, "{} starts before its release {}", name(b), task.release);
    require(!before || b.start >= *before, "{} overlaps the task before", name(b));
    before = b.end;
    if (b.index == 0 || tasks_[b.index - 1].empty()) {
      continue;
    }
    const Slot end = tasks_[b.index - 1].front().end;
    require(b.start >= after(end, task.lag_min), "{} starts too soon after {}", name(b), end);
    require(!task.lag_max || b.start <= after(end, *task.lag_max),
            "{} starts too late after {}",
            name(b),
            end);
  }
}

Slot Checker::chain_end() const {
  Slot end = 0;
  for (const auto& spans : tasks_) {
    for (const Span& span : spans) end = std::max(end, span.end);
  }
  return end;
}

bool Checker::anything_painted_by(Slot slot) const {
  for (const auto& coat : units_) {
    for (const auto& spans : coat) {
      for (const Span& span : spans) {
        if (span.start < slot) return true;
      }
    }
  }
  return false;
}

void Checker::anchor() {
  for (const Booking& b : a_.bookings) {
    if (b.what == What::reclean) {
      require(b.start >= chain_end(), "a reclean starts before the chain's end");
      require(!anything_painted_by(b.end), "a reclean comes after a unit");
    }
  }
  if (coats() == 0) {
    return;
  }
  bool first = !p_.facts || p_.facts->units.empty();
  for (const Booking& b : a_.bookings) {
    if (b.what == What::unit && b.index == 0) {
      first_coat(b);
    }
    if (b.what == What::unit && first) {
      first = false;
      for (Slot slot = static_cast<Slot>(
               std::max<std::int64_t>(0, after(b.start, -std::int64_t{p_.anchor.rain_free})));
           slot < b.start;
           ++slot) {
        require(n(slot) >= p_.wet.size() || p_.wet[n(slot)] == 0,
                "{} starts too soon after the rain in slot {}",
                name(b),
                slot);
      }
    }
  }
}

void Checker::first_coat(const Booking& b) {
  const bool any = !tasks_.empty() || !recleans_.empty();  // something was wet
  Slot wet = chain_end();
  std::optional<Slot> from;
  if (p_.anchor.task < tasks_.size() && !tasks_[p_.anchor.task].empty()) {
    from = tasks_[p_.anchor.task].front().end;
  }
  for (const Span& span : recleans_) {
    wet = std::max(wet, span.end);
    from = std::max(from.value_or(0), span.end);
  }
  require(!any || b.start >= after(wet, p_.anchor.dry), "{} starts before it is dry", name(b));
  require(tasks_.empty() || !p_.anchor.limit || !from || b.start <= after(*from, *p_.anchor.limit),
          "{} starts after the anchor's limit",
          name(b));
  if (!tasks_.empty() && p_.anchor.limit && from) {
    spare(*p_.anchor.limit, b.start - *from);
  }
}

bool Checker::is_fact(std::size_t coat, std::size_t section) const {
  return p_.facts &&
         std::any_of(p_.facts->units.begin(), p_.facts->units.end(), [&](const DoneUnit& done) {
           return done.coat == coat && done.section == section;
         });
}

void Checker::unit(std::size_t coat, std::size_t section) {
  if (is_fact(coat, section) || units_[coat][section].empty()) {
    return;
  }
  const Span span = units_[coat][section].front();
  const Booking named{What::unit, coat, section, span.start, span.end};
  if (section > 0 && !units_[coat][section - 1].empty()) {
    require(span.start >= units_[coat][section - 1].front().end,
            "{} starts before the section before it is done",
            name(named));
  }
  if (coat == 0 || units_[coat - 1][section].empty()) {
    return;
  }
  const Span before = units_[coat - 1][section].front();
  require(span.start >= before.end, "{} starts before the coat under it", name(named));
  if (!reworks_[coat - 1][section].empty()) {
    after_rework(named);
    return;
  }
  const Recoat& window = p_.units.recoat[coat - 1];
  for (const Slot lag : {span.start - before.start, span.end - before.end}) {
    require(lag >= window.min && lag <= window.max,
            "{} follows its coat by {}, outside [{}, {}]",
            name(named),
            lag,
            window.min,
            window.max);
    spare(window.max, lag);
  }
}

void Checker::after_rework(const Booking& b) {
  Slot end = 0;
  for (const Span& span : reworks_[b.index - 1][b.section]) {
    end = std::max(end, span.end);
  }
  if (!p_.units.rework) {
    return;
  }
  require(
      b.start >= after(end, p_.units.rework->dry), "{} starts before its rework is dry", name(b));
  require(
      b.start <= after(end, p_.units.rework->max), "{} starts too late after its rework", name(b));
  spare(p_.units.rework->max, b.start - end);
}

void Checker::rework(const Booking& b) {
  if (b.index + 1 >= coats()) {
    say("{} has no coat to follow", name(b));
    return;
  }
  if (!units_[b.index][b.section].empty()) {
    require(b.start >= after(units_[b.index][b.section].front().end, p_.units.recoat[b.index].min),
            "{} starts too soon after its coat",
            name(b));
  }
}

void Checker::objective() {
  Objective found{0, 0, static_cast<int>(recleans_.size()), 0};
  Slot last = chain_end();
  if (coats() > 0 && sections() > 0) {
    last = 0;
  }
  for (std::size_t coat = 0; coat < coats(); ++coat) {
    for (std::size_t section = 0; section < sections(); ++section) {
      found.reworks += static_cast<int>(reworks_[coat][section].size());
      if (units_[coat][section].empty()) {
        return;
      }
      const Span span = units_[coat][section].front();
      last = std::max(last, span.end);
      if (section > 0 && date(units_[coat][section - 1].front().start) != date(span.start)) {
        ++found.splits;
      }
    }
  }
  if (n(last) >= p_.finish.size() || !p_.finish[n(last)]) {
    say("there is no finish after {}", last);
    return;
  }
  found.finish = p_.finish[n(last)]->slot;
  found.cost = p_.finish[n(last)]->cost + cost();
  compare("finish", found.finish, a_.objective.finish);
  compare("splits", found.splits, a_.objective.splits);
  compare("reworks", found.reworks, a_.objective.reworks);
  compare("cost", found.cost, a_.objective.cost);
  compare_slack();
  compare("time empty", empty(found.finish), a_.objective.empty);
}

void Checker::compare_slack() {
  require(slack_.has_value() == a_.objective.slack.has_value(),
          "there is {} window to keep",
          slack_ ? "a" : "no");
  if (slack_ && a_.objective.slack) {
    compare("slack", *slack_, *a_.objective.slack);
  }
}

std::int64_t Checker::empty(Slot finish) const {
  if (!p_.emptied_by || *p_.emptied_by >= tasks_.size() || tasks_[*p_.emptied_by].empty()) {
    return 0;
  }
  return finish - tasks_[*p_.emptied_by].front().end;
}

void Checker::compare(const char* key, std::int64_t found, std::int64_t stated) {
  require(found == stated, "the {} is {}, not {}", key, found, stated);
}

std::int64_t Checker::cost() const {
  std::int64_t total = 0;
  std::set<std::int32_t> dates;
  for (const Booking& b : a_.bookings) {
    std::size_t calendar = p_.units.calendar;
    if (b.what == What::task) {
      if (p_.chain[b.index].kind == Kind::unattended) continue;
      calendar = p_.chain[b.index].calendar;
    } else if (b.what == What::rework && p_.units.rework) {
      calendar = p_.units.rework->calendar;
    } else if (b.what == What::reclean && p_.anchor.reclean) {
      calendar = p_.anchor.reclean->calendar;
    }
    for (Slot slot = b.start; slot < b.end; ++slot) {
      if (open(calendar, slot)) {
        total += p_.cost_of[n(slot)];
        dates.insert(date(slot));
      }
    }
  }
  if (const auto free = last_actual_date()) {
    dates.erase(*free);
  }
  return total + p_.attendance * static_cast<std::int64_t>(dates.size());
}

std::optional<std::int32_t> Checker::last_actual_date() const {
  if (!p_.facts) {
    return std::nullopt;
  }
  Slot last = 0;
  for (const DoneTask& done : p_.facts->tasks) {
    if (p_.chain[done.task].kind != Kind::unattended && done.end > done.start) {
      last = std::max(last, done.end);
    }
  }
  for (const DoneUnit& done : p_.facts->units) last = std::max(last, done.end);
  for (const DoneRework& done : p_.facts->reworks) last = std::max(last, done.end);
  for (const DoneReclean& done : p_.facts->recleans) last = std::max(last, done.end);
  return last > 0 ? std::optional(date(last - 1)) : std::nullopt;
}

}  // namespace checking

std::vector<std::string> verify(const Problem& problem, const Answer& answer) {
  return checking::Checker(problem, answer).complaints();
}

}  // namespace basinwright::schedule
