// Every programme of a small problem, one after the other, by the rules of problem.hpp read
// literally: no bounds, no dominance, any number of reworks and recleans that time allows.
#pragma once

#include <algorithm>
#include <functional>
#include <optional>
#include <set>
#include <tuple>
#include <utility>
#include <vector>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::schedule::brute {

using What = Booking::What;
using Key = std::tuple<Slot, int, std::size_t, std::size_t, Slot>;

/// For comparing bookings: start first.
inline Key key(const Booking& b) {
  return {b.start, static_cast<int>(b.what), b.index, b.section, b.end};
}
inline std::vector<Key> keys(const std::vector<Booking>& bookings) {
  std::vector<Key> result;
  for (const Booking& b : bookings) {
    result.push_back(key(b));
  }
  return result;
}

class Enumeration {
 public:
  using Visit = std::function<void(const Answer&)>;

  explicit Enumeration(const Problem& problem) : p_(problem) {
    task_.resize(p_.chain.size());
    unit_.assign(p_.units.coats.size(), Spans(p_.units.sections.size()));
    rework_ = unit_;
    if (p_.facts) {
      take(*p_.facts);
    }
  }

  /// Calls `visit` for every programme, with its objective.
  void each(const Visit& visit) {
    visit_ = &visit;
    extend(clock_);
  }

 private:
  struct Span {
    Slot start = 0;
    Slot end = 0;
  };
  using Spans = std::vector<std::optional<Span>>;

  static std::size_t place(Slot slot) { return static_cast<std::size_t>(slot); }
  bool open(std::size_t calendar, Slot slot) const {
    return slot < p_.horizon && place(slot) < p_.calendars[calendar].size() &&
           p_.calendars[calendar][place(slot)] != 0;
  }

  void take(const Facts& facts) {
    clock_ = facts.now;
    for (const DoneTask& done : facts.tasks) {
      task_[done.task] = Span{done.start, done.end};
      past(done.end, p_.chain[done.task].kind != Kind::unattended && done.end > done.start);
    }
    for (const DoneUnit& done : facts.units) {
      unit_[done.coat][done.section] = Span{done.start, done.end};
      past(done.end, true);
    }
    for (const DoneRework& done : facts.reworks) {
      auto& latest = rework_[done.coat][done.section];
      latest = Span{done.start, std::max(done.end, latest ? latest->end : 0)};
      past(done.end, true);
      ++reworks_;
    }
    for (const DoneReclean& done : facts.recleans) {
      reclean_ = std::max(reclean_.value_or(0), done.end);
      past(done.end, true);
      ++reworks_;
    }
  }
  void past(Slot end, bool worked) {
    clock_ = std::max(clock_, end);
    if (worked && end > 0) {
      paid_ = std::max(paid_, p_.date_of[place(end - 1)]);
    }
  }

  // The end of `slots` open slots from `start`, with pauses or without.
  std::optional<Slot> end_of(std::size_t calendar, Slot start, Slot slots, bool pauses) const {
    if (!open(calendar, start)) {
      return std::nullopt;
    }
    Slot end = start;
    for (Slot left = slots; left > 0; ++end) {
      if (end >= p_.horizon || (!open(calendar, end) && !pauses)) {
        return std::nullopt;
      }
      left -= open(calendar, end) ? 1 : 0;
    }
    return end;
  }

  void extend(Slot clock) {
    for (std::size_t task = 0; task < task_.size(); ++task) {
      if (!task_[task]) {
        book_task(task, clock);
        return;
      }
    }
    bool painted = false;
    bool finished = true;
    for (const Spans& coat : unit_) {
      for (const auto& unit : coat) {
        (unit ? painted : finished) = static_cast<bool>(unit);
      }
    }
    if (finished) {
      leaf();
      return;
    }
    for (Slot start = clock; start < p_.horizon; ++start) {
      if (!painted && p_.anchor.reclean && !p_.chain.empty()) {
        book_reclean(start);
      }
      for (std::size_t coat = 0; coat < unit_.size(); ++coat) {
        for (std::size_t section = 0; section < unit_[coat].size(); ++section) {
          book_unit(coat, section, start, painted);
          book_rework(coat, section, start);
        }
      }
    }
  }

  // Books, goes on, and takes the booking back.
  void with(const Booking& booking, std::optional<Span>& span) {
    const std::optional<Span> before = span;
    span = Span{booking.start, booking.end};
    bookings_.push_back(booking);
    extend(booking.end);
    bookings_.pop_back();
    span = before;
  }

  void book_task(std::size_t index, Slot clock) {
    const Task& task = p_.chain[index];
    for (Slot start = std::max(clock, task.release); start < p_.horizon; ++start) {
      if (index > 0) {
        const Slot before = task_[index - 1]->end;
        if (start < before + task.lag_min || (task.lag_max && start > before + *task.lag_max)) {
          continue;
        }
      }
      std::optional<Slot> end;
      if (task.kind != Kind::unattended) {
        end = end_of(task.calendar, start, task.slots, task.kind == Kind::attended);
      } else if (open(task.calendar, start) && start + task.slots <= p_.horizon) {
        end = start + task.slots;
      }
      if (end) {
        with({What::task, index, 0, start, *end}, task_[index]);
      }
    }
  }

  void book_reclean(Slot start) {
    if (const auto end =
            end_of(p_.anchor.reclean->calendar, start, p_.anchor.reclean->slots, true)) {
      const std::optional<Slot> before = reclean_;
      reclean_ = end;
      bookings_.push_back({What::reclean, 0, 0, start, *end});
      extend(*end);
      bookings_.pop_back();
      reclean_ = before;
    }
  }

  void book_unit(std::size_t coat, std::size_t section, Slot start, bool painted) {
    if (unit_[coat][section] || (section > 0 && !unit_[coat][section - 1]) ||
        (coat > 0 && !unit_[coat - 1][section])) {
      return;
    }
    const Slot slots = p_.units.slots[coat][section];
    const auto end = end_of(p_.units.calendar, start, slots, false);
    if (!end || p_.date_of[place(start)] != p_.date_of[place(*end - 1)] ||
        !(coat == 0 ? first_coat(start) : recoat(coat, section, {start, *end})) ||
        (!painted && !rain_free(start))) {
      return;
    }
    with({What::unit, coat, section, start, *end}, unit_[coat][section]);
  }
  bool rain_free(Slot start) const {
    for (Slot slot = std::max<Slot>(0, start - p_.anchor.rain_free); slot < start; ++slot) {
      if (p_.wet[place(slot)] != 0) {
        return false;
      }
    }
    return true;
  }
  bool first_coat(Slot start) const {
    if (task_.empty()) {
      return !reclean_ || start >= *reclean_ + p_.anchor.dry;
    }
    Slot wet = reclean_.value_or(0);
    for (const auto& task : task_) {
      wet = std::max(wet, task->end);
    }
    const Slot anchor = std::max(reclean_.value_or(0), task_[p_.anchor.task]->end);
    return start >= wet + p_.anchor.dry && (!p_.anchor.limit || start <= anchor + *p_.anchor.limit);
  }
  bool recoat(std::size_t coat, std::size_t section, Span unit) const {
    if (const auto& rework = rework_[coat - 1][section]) {
      return unit.start >= rework->end + p_.units.rework->dry &&
             unit.start <= rework->end + p_.units.rework->max;
    }
    const Span below = *unit_[coat - 1][section];
    const Recoat& window = p_.units.recoat[coat - 1];
    const auto inside = [&](Slot lag) { return window.min <= lag && lag <= window.max; };
    return inside(unit.start - below.start) && inside(unit.end - below.end);
  }

  void book_rework(std::size_t coat, std::size_t section, Slot start) {
    if (!p_.units.rework || coat + 1 == unit_.size() || !unit_[coat][section] ||
        unit_[coat + 1][section] || start < unit_[coat][section]->end + p_.units.recoat[coat].min) {
      return;
    }
    const Rework& rule = *p_.units.rework;
    if (const auto end = end_of(rule.calendar, start, rule.slots[section], true)) {
      with({What::rework, coat, section, start, *end}, rework_[coat][section]);
    }
  }

  void leaf() const {
    Slot last = 0;
    Answer answer{bookings_, {0, 0, reworks_, 0, slack(), 0}};
    Objective& objective = answer.objective;
    for (const Spans& coat : unit_) {
      for (std::size_t section = 0; section < coat.size(); ++section) {
        last = std::max(last, coat[section]->end);
        if (section > 0 && p_.date_of[place(coat[section]->start)] !=
                               p_.date_of[place(coat[section - 1]->start)]) {
          ++objective.splits;
        }
      }
    }
    if (!p_.finish[place(last)]) {
      return;
    }
    objective.finish = p_.finish[place(last)]->slot;
    if (p_.emptied_by && !task_.empty()) {
      objective.empty = objective.finish - task_[*p_.emptied_by]->end;
    }
    objective.cost = p_.finish[place(last)]->cost;
    std::set<std::int32_t> dates;
    for (const Booking& b : bookings_) {
      objective.reworks += b.what == What::rework || b.what == What::reclean ? 1 : 0;
      work(b, objective.cost, dates);
    }
    dates.erase(paid_);
    objective.cost += p_.attendance * static_cast<std::int64_t>(dates.size());
    (*visit_)(answer);
  }
  // How late the nearest of the units booked here could still be, by its own window alone.
  std::optional<Slot> slack() const {
    std::optional<Slot> least;
    const auto spare = [&](Slot max, Slot lag) {
      least = max < endless ? std::min(least.value_or(max - lag), max - lag) : least;
    };
    for (const Booking& b : bookings_) {
      if (b.what != What::unit) {
        continue;
      }
      if (b.index == 0) {
        if (!task_.empty() && p_.anchor.limit) {
          const Slot anchor = std::max(reclean_.value_or(0), task_[p_.anchor.task]->end);
          spare(*p_.anchor.limit, b.start - anchor);
        }
      } else if (const auto& rework = rework_[b.index - 1][b.section]) {
        spare(p_.units.rework->max, b.start - rework->end);
      } else {
        const Span below = *unit_[b.index - 1][b.section];
        const Slot max = p_.units.recoat[b.index - 1].max;
        spare(max, b.start - below.start);
        spare(max, b.end - below.end);
      }
    }
    return least;
  }
  void work(const Booking& b, std::int64_t& cost, std::set<std::int32_t>& dates) const {
    std::size_t calendar = p_.units.calendar;
    if (b.what == What::task) {
      if (p_.chain[b.index].kind == Kind::unattended) {
        return;
      }
      calendar = p_.chain[b.index].calendar;
    } else if (b.what != What::unit) {
      calendar = b.what == What::rework ? p_.units.rework->calendar : p_.anchor.reclean->calendar;
    }
    for (Slot slot = b.start; slot < b.end; ++slot) {
      if (open(calendar, slot)) {
        cost += p_.cost_of[place(slot)];
        dates.insert(p_.date_of[place(slot)]);
      }
    }
  }

  const Problem& p_;
  Slot clock_ = 0;
  std::int32_t paid_ = -1;
  int reworks_ = 0;
  Spans task_;
  std::vector<Spans> unit_, rework_;
  std::optional<Slot> reclean_;
  std::vector<Booking> bookings_;
  const Visit* visit_ = nullptr;
};

/// The fixed order among equals: up to the task that empties the later, of the rest the first.
inline std::vector<Key> order(const Problem& problem, const std::vector<Booking>& bookings) {
  std::vector<Key> result = keys(bookings);
  for (std::size_t index = 0; index < bookings.size(); ++index) {
    const Booking& b = bookings[index];
    if (b.what == What::task && problem.emptied_by && b.index <= *problem.emptied_by) {
      std::get<0>(result[index]) = -b.start;
    }
  }
  return result;
}

/// The best programme; among equals the first in the fixed order.
inline std::optional<Answer> best(const Problem& problem) {
  std::optional<Answer> result;
  Enumeration(problem).each([&](const Answer& answer) {
    if (!result || answer.objective < result->objective ||
        (answer.objective == result->objective &&
         order(problem, answer.bookings) < order(problem, result->bookings))) {
      result = answer;
    }
  });
  return result;
}

}  // namespace basinwright::schedule::brute
