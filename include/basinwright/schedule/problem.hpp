// The general problem: a chain of tasks, then units on sections with recoat windows, then a finish.
//
// It knows slots and dates, nothing of paint or pools. A slot is one step of elapsed time; slot s
// is [s, s+1). All rules are data; every bound holds exactly as written here.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace basinwright::schedule {

using Slot = std::int32_t;

/// A window this long or longer never ends, so that it has no slack: beyond any horizon.
inline constexpr Slot endless = 100'000;

/// A calendar: which slots are open. Shorter than the horizon = closed beyond.
using Calendar = std::vector<char>;

enum class Kind {
  attended,  ///< Takes its next `slots` open slots; pauses over closed ones; starts in an open one.
  one_shift,  ///< Takes `slots` consecutive open slots.
  unattended  ///< Starts in an open slot and lasts `slots` elapsed; no labour.
};

/// A task of the chain. start >= end of the one before + lag_min, and <= it + lag_max when given.
struct Task {
  std::string name;
  Kind kind = Kind::attended;
  Slot slots = 0;
  std::size_t calendar = 0;
  Slot lag_min = 0;
  std::optional<Slot> lag_max;
  Slot release = 0;  ///< Not before this slot.
};

/// Doing the chain's last wash again, any number of times, before any unit is done.
struct Reclean {
  Slot slots = 0;
  std::size_t calendar = 0;
};

/// What the first coat of every section asks of the chain: start >= wet end + dry, start <= anchor
/// end + limit, and no wet slot in [start - rain_free, start). A reclean sets both ends anew.
struct Anchor {
  std::size_t task = 0;  ///< Index of the anchor task in the chain; the wet end is the chain's end.
  std::optional<Slot> limit;
  Slot dry = 0;
  Slot rain_free = 0;  ///< Checked for the first unit done only.
  std::optional<Reclean> reclean;
};

/// The window between a coat and the next on one section: the differences of starts and of ends
/// both lie in [min, max].
struct Recoat {
  Slot min = 0;
  Slot max = 0;
};

/// Abrading a section whose window is past: start >= end of its coat + the window's min; the next
/// coat starts within [rework end + dry, rework end + max].
struct Rework {
  std::vector<Slot> slots;  ///< One a section.
  std::size_t calendar = 0;
  Slot dry = 0;
  Slot max = 0;
};

/// Coats by sections: unit (coat, section) takes `slots[coat][section]` consecutive open slots of
/// the paint calendar on one date. (c, s) starts after (c, s-1) ends; one crew does everything.
struct Units {
  std::vector<std::string> coats;
  std::vector<std::string> sections;
  std::vector<std::vector<Slot>> slots;  ///< [coat][section]
  std::size_t calendar = 0;
  std::vector<Recoat> recoat;  ///< One fewer than coats.
  std::optional<Rework> rework;
};

/// What finishing the last unit at a slot leads to.
struct Finish {
  Slot slot = 0;          ///< The finish (the fill's start).
  std::int64_t cost = 0;  ///< Of the work between.
};

/// Facts that are past (a re-plan): never moved, even where they broke a rule.
struct DoneTask {
  std::size_t task = 0;
  Slot start = 0, end = 0;
};
struct DoneUnit {
  std::size_t coat = 0, section = 0;
  Slot start = 0, end = 0;
};
/// A rework after `coat` on a section.
struct DoneRework {
  std::size_t coat = 0, section = 0;
  Slot start = 0, end = 0;
};
struct DoneReclean {
  Slot start = 0, end = 0;
};
/// All within the horizon. What is left starts at `now` at the earliest, in the chain's order,
/// after everything here has ended.
struct Facts {
  Slot now = 0;
  std::vector<DoneTask> tasks = {};
  std::vector<DoneUnit> units = {};
  std::vector<DoneRework> reworks = {};
  std::vector<DoneReclean> recleans = {};
};

struct Problem {
  Slot horizon = 0;
  std::vector<std::int32_t> date_of;  ///< One a slot: an ascending day number.
  std::vector<Calendar> calendars;
  std::vector<char> wet;  ///< Slots with rain; may be empty.
  std::vector<Task> chain;
  Anchor anchor;
  /// The task of the chain with whose end the time begins that is kept short, if there is one.
  std::optional<std::size_t> emptied_by;
  Units units;
  std::vector<std::int64_t> cost_of;  ///< Labour of one worked slot, one a slot.
  std::int64_t attendance = 0;        ///< For each distinct date with worked slots.
  /// For an end slot e of the last unit: `finish[e]`, nothing when none is in the horizon.
  std::vector<std::optional<Finish>> finish;
  std::optional<Facts> facts;
  /// What like problems came to: as far ahead as this needs is looked first. No answer depends on
  /// it.
  std::optional<Slot> likely_finish = {};
};

/// When a task, unit, rework or reclean takes place.
struct Booking {
  enum class What { task, unit, rework, reclean };
  What what = What::task;
  std::size_t index = 0;  ///< Task in the chain, or coat of the unit (the coat before a rework).
  std::size_t section = 0;
  Slot start = 0;
  Slot end = 0;
};

/// The objective, in order; smaller is better, but of slack the larger. Splits and reworks count
/// the facts too; cost counts the bookings only, and the date of the facts' last work has its
/// attendance free.
struct Objective {
  Slot finish = 0;
  int splits = 0;   ///< Sections of a coat on another date than the section before.
  int reworks = 0;  ///< With recleans.
  std::int64_t cost = 0;
  /// By how much the unit that is nearest to the end of its window (after the anchor, the coat
  /// before or its rework) could still be late; nothing where no window is left to be kept.
  std::optional<Slot> slack = {};
  /// From the end of the task `emptied_by` to the finish; 0 without such a task.
  Slot empty = 0;

  friend bool operator==(const Objective&, const Objective&) = default;
  friend std::strong_ordering operator<=>(const Objective& a, const Objective& b) {
    if (const auto order = a.finish <=> b.finish; order != 0) return order;
    if (const auto order = a.splits <=> b.splits; order != 0) return order;
    if (const auto order = a.reworks <=> b.reworks; order != 0) return order;
    if (const auto order = a.cost <=> b.cost; order != 0) return order;
    if (a.slack != b.slack) {
      return !a.slack || (b.slack && *a.slack > *b.slack) ? std::strong_ordering::less
                                                          : std::strong_ordering::greater;
    }
    return a.empty <=> b.empty;
  }
};

struct Answer {
  std::vector<Booking> bookings;  ///< What is left to do (no facts), in order of start.
  Objective objective;
};

}  // namespace basinwright::schedule
