// The checker behind `verify`: what it looks up, and one method a rule.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "basinwright/schedule/solve.hpp"

namespace basinwright::schedule::checking {

using What = Booking::What;

inline std::size_t n(Slot slot) {
  return static_cast<std::size_t>(slot);
}

/// Wide enough for any lag.
inline std::int64_t after(Slot slot, std::int64_t lag) {
  return slot + lag;
}

struct Span {
  Slot start = 0;
  Slot end = 0;
};

class Checker {
 public:
  Checker(const Problem& problem, const Answer& answer) : p_(problem), a_(answer) { gather(); }

  std::vector<std::string> complaints() {
    if (!complaints_.empty()) {
      return complaints_;  // indices out of range: nothing else can be looked up
    }
    presence();
    order();
    for (const Booking& booking : a_.bookings) {
      length(booking);
    }
    chain();
    anchor();
    for (std::size_t coat = 0; coat < coats(); ++coat) {
      for (std::size_t section = 0; section < sections(); ++section) {
        unit(coat, section);
      }
    }
    for (const Booking& booking : a_.bookings) {
      if (booking.what == What::rework) {
        rework(booking);
      }
    }
    objective();
    return complaints_;
  }

 private:
  template <class... Args>
  void say(fmt::format_string<Args...> text, Args&&... args) {
    complaints_.push_back(fmt::format(text, std::forward<Args>(args)...));
  }
  template <class... Args>
  void require(bool holds, fmt::format_string<Args...> text, Args&&... args) {
    if (!holds) {
      say(text, std::forward<Args>(args)...);
    }
  }

  std::size_t coats() const { return p_.units.coats.size(); }
  std::size_t sections() const { return p_.units.sections.size(); }
  bool open(std::size_t calendar, Slot slot) const {
    const Calendar& slots = p_.calendars[calendar];
    return slot >= 0 && slot < p_.horizon && n(slot) < slots.size() && slots[n(slot)] != 0;
  }
  std::int32_t date(Slot slot) const { return p_.date_of[n(slot)]; }
  std::string name(const Booking& b) const {
    switch (b.what) {
      case What::task:
        return p_.chain[b.index].name;
      case What::unit:
        return fmt::format("{} on {}", p_.units.coats[b.index], p_.units.sections[b.section]);
      case What::rework:
        return fmt::format(
            "rework after {} on {}", p_.units.coats[b.index], p_.units.sections[b.section]);
      case What::reclean:
        break;
    }
    return "reclean";
  }

  // What is in the answer and in the facts, by task and by unit.
  void gather() {
    tasks_.resize(p_.chain.size());
    units_.assign(coats(), std::vector<std::vector<Span>>(sections()));
    reworks_ = units_;
    const Facts none;
    const Facts& facts = p_.facts ? *p_.facts : none;
    for (const DoneTask& done : facts.tasks) {
      tasks_[done.task].push_back({done.start, done.end});
    }
    for (const DoneUnit& done : facts.units) {
      units_[done.coat][done.section].push_back({done.start, done.end});
    }
    for (const DoneRework& done : facts.reworks) {
      reworks_[done.coat][done.section].push_back({done.start, done.end});
    }
    for (const DoneReclean& done : facts.recleans) {
      recleans_.push_back({done.start, done.end});
    }
    for (const Booking& b : a_.bookings) {
      if (b.start < 0 || b.end > p_.horizon || b.end < b.start) {
        say("a booking [{}, {}) is not within the horizon", b.start, b.end);
      }
      gather(b);
    }
  }
  void gather(const Booking& b) {
    const Span span{b.start, b.end};
    if (b.what == What::reclean) {
      recleans_.push_back(span);
    } else if (b.what == What::task && b.index < p_.chain.size()) {
      tasks_[b.index].push_back(span);
    } else if (b.what != What::task && b.index < coats() && b.section < sections()) {
      (b.what == What::unit ? units_ : reworks_)[b.index][b.section].push_back(span);
    } else {
      say("a booking names task or coat {}, section {}, which the problem does not have",
          b.index,
          b.section);
    }
  }

  void presence() {
    for (std::size_t task = 0; task < tasks_.size(); ++task) {
      require(tasks_[task].size() == 1,
              "{} is booked {} times",
              p_.chain[task].name,
              tasks_[task].size());
    }
    for (std::size_t coat = 0; coat < coats(); ++coat) {
      for (std::size_t section = 0; section < sections(); ++section) {
        require(units_[coat][section].size() == 1,
                "{} on {} is booked {} times",
                p_.units.coats[coat],
                p_.units.sections[section],
                units_[coat][section].size());
      }
    }
  }

  // One crew, after everything that is past.
  void order() {
    Slot free = 0;
    if (p_.facts) {
      free = p_.facts->now;
      for (const DoneTask& done : p_.facts->tasks) free = std::max(free, done.end);
      for (const DoneUnit& done : p_.facts->units) free = std::max(free, done.end);
      for (const DoneRework& done : p_.facts->reworks) free = std::max(free, done.end);
      for (const DoneReclean& done : p_.facts->recleans) free = std::max(free, done.end);
    }
    for (const Booking& b : a_.bookings) {
      require(b.start >= free,
              "{} starts at {}, before the crew is free at {}",
              name(b),
              b.start,
              free);
      free = std::max(free, b.end);
    }
  }

  // A booking's slots on its calendar.
  void length(const Booking& b) {
    switch (b.what) {
      case What::task: {
        const Task& task = p_.chain[b.index];
        if (task.kind == Kind::attended) {
          resumed(b, task.slots, task.calendar);
        } else if (task.kind == Kind::one_shift) {
          unbroken(b, task.slots, task.calendar);
        } else {
          require(open(task.calendar, b.start), "{} starts in a closed slot", name(b));
          require(b.end - b.start == task.slots, "{} does not last {} slots", name(b), task.slots);
        }
        break;
      }
      case What::unit:
        unbroken(b, p_.units.slots[b.index][b.section], p_.units.calendar);
        require(b.end > b.start && date(b.start) == date(b.end - 1),
                "{} is not within one date",
                name(b));
        break;
      case What::rework:
        require(p_.units.rework.has_value(), "no rework is offered");
        if (p_.units.rework) {
          resumed(b, p_.units.rework->slots[b.section], p_.units.rework->calendar);
        }
        break;
      case What::reclean:
        require(p_.anchor.reclean.has_value(), "no reclean is offered");
        if (p_.anchor.reclean) {
          resumed(b, p_.anchor.reclean->slots, p_.anchor.reclean->calendar);
        }
        break;
    }
  }
  void resumed(const Booking& b, Slot slots, std::size_t calendar) {
    require(open(calendar, b.start), "{} starts in a closed slot", name(b));
    require(slots == 0 ? b.end == b.start : open(calendar, b.end - 1),
            "{} does not end with its last worked slot",
            name(b));
    Slot worked = 0;
    for (Slot slot = b.start; slot < b.end; ++slot) {
      worked += open(calendar, slot) ? 1 : 0;
    }
    require(worked == slots, "{} has {} open slots, not {}", name(b), worked, slots);
  }
  void unbroken(const Booking& b, Slot slots, std::size_t calendar) {
    require(open(calendar, b.start), "{} starts in a closed slot", name(b));
    require(b.end - b.start == slots, "{} does not last {} slots", name(b), slots);
    for (Slot slot = b.start; slot < b.end; ++slot) {
      require(open(calendar, slot), "{} runs over the closed slot {}", name(b), slot);
    }
  }

  void chain();
  Slot chain_end() const;
  bool anything_painted_by(Slot slot) const;
  void anchor();
  void first_coat(const Booking& b);
  bool is_fact(std::size_t coat, std::size_t section) const;
  void unit(std::size_t coat, std::size_t section);
  void after_rework(const Booking& b);
  void rework(const Booking& b);
  void objective();
  void compare(const char* key, std::int64_t found, std::int64_t stated);
  void compare_slack();
  std::int64_t empty(Slot finish) const;
  // What a window leaves of itself after a unit that is still to do.
  void spare(Slot max, std::int64_t lag) {
    if (max < endless) {
      slack_ = std::min(slack_.value_or(max - lag), max - lag);
    }
  }
  std::int64_t cost() const;
  std::optional<std::int32_t> last_actual_date() const;

  const Problem& p_;
  const Answer& a_;
  std::vector<std::string> complaints_;
  std::vector<std::vector<Span>> tasks_;
  std::vector<std::vector<std::vector<Span>>> units_, reworks_;
  std::vector<Span> recleans_;
  std::optional<std::int64_t> slack_;
};

}  // namespace basinwright::schedule::checking
