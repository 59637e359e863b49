// Small random problems in which every rule bites now and then; the same seed, the same problem.
#pragma once

#include <algorithm>
#include <cstdint>
#include <random>
#include <string>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::schedule::random {

/// Whole numbers from the standard's own generator, whose sequence is fixed on every platform.
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  /// A number in [low, high].
  int between(int low, int high) {
    const auto span = static_cast<std::uint32_t>(high - low + 1);
    return low + static_cast<int>(engine_() % span);
  }
  bool chance(int percent) { return between(1, 100) <= percent; }

 private:
  std::mt19937 engine_;
};

struct Size {
  int horizon = 20;
  int tasks = 2;
  int coats = 2;
  int sections = 2;
};

class ProblemMaker {
 public:
  ProblemMaker(std::uint32_t seed, const Size& size) : dice_(seed), size_(size) {}

  Problem make() {
    slots();
    chain();
    units();
    finish();
    if (dice_.chance(35)) {
      facts();
    }
    return problem_;
  }

 private:
  static std::size_t place(int value) { return static_cast<std::size_t>(value); }

  void slots() {
    problem_.horizon = dice_.between(size_.horizon / 2, size_.horizon);
    const int date_length = dice_.between(3, 8);
    const int wet = dice_.between(0, 30);
    const int offset = dice_.between(0, date_length - 1);
    for (Slot slot = 0; slot < problem_.horizon; ++slot) {
      problem_.date_of.push_back((slot + offset) / date_length);
      problem_.cost_of.push_back(dice_.chance(70) ? 2 : dice_.between(0, 4));
      problem_.wet.push_back(dice_.chance(wet) ? 1 : 0);
    }
    problem_.attendance = dice_.chance(70) ? dice_.between(0, 4) : 0;
    for (int count = 0; count < 3; ++count) {
      Calendar calendar;
      const int open = dice_.between(60, 100);
      const Slot length = problem_.horizon - (dice_.chance(10) ? dice_.between(0, 3) : 0);
      for (Slot slot = 0; slot < length; ++slot) {
        calendar.push_back(dice_.chance(open) ? 1 : 0);
      }
      problem_.calendars.push_back(calendar);
    }
  }

  std::size_t calendar() { return place(dice_.between(0, 2)); }

  void chain() {
    const int tasks = dice_.between(0, size_.tasks);
    for (int index = 0; index < tasks; ++index) {
      Task task;
      task.name = "task " + std::to_string(index);
      task.kind = static_cast<Kind>(dice_.between(0, 2));
      task.slots = dice_.between(dice_.chance(20) ? 0 : 1, 3);
      task.calendar = calendar();
      task.lag_min = dice_.chance(30) ? dice_.between(0, 3) : 0;
      if (dice_.chance(35)) {
        task.lag_max = task.lag_min + dice_.between(0, 4);
      }
      task.release = dice_.chance(15) ? dice_.between(0, 4) : 0;
      problem_.chain.push_back(task);
    }
    if (tasks > 0 && dice_.chance(70)) {
      problem_.emptied_by = place(dice_.between(0, tasks - 1));
    }
    Anchor& anchor = problem_.anchor;
    anchor.task = place(tasks > 0 ? dice_.between(0, tasks - 1) : 0);
    if (dice_.chance(60)) {
      anchor.limit = dice_.between(0, dice_.chance(50) ? 4 : 10);
    }
    anchor.dry = dice_.between(0, 3);
    anchor.rain_free = dice_.between(0, 3);
    if (dice_.chance(50)) {
      anchor.reclean = Reclean{dice_.between(1, 2), calendar()};
    }
  }

  void units() {
    Units& units = problem_.units;
    const int coats = dice_.between(1, size_.coats);
    const int sections = dice_.between(1, size_.sections);
    for (int coat = 0; coat < coats; ++coat) {
      units.coats.push_back("coat " + std::to_string(coat));
      units.slots.emplace_back();
      for (int section = 0; section < sections; ++section) {
        units.slots.back().push_back(dice_.chance(70) ? 1 : dice_.between(1, 3));
      }
      if (coat > 0) {
        const Slot min = dice_.between(0, 5);
        units.recoat.push_back({min, std::max(0, min + dice_.between(-1, 6))});
      }
    }
    for (int section = 0; section < sections; ++section) {
      units.sections.push_back("section " + std::to_string(section));
    }
    units.calendar = calendar();
    if (dice_.chance(60)) {
      units.rework = Rework{{}, calendar(), dice_.between(0, 2), dice_.between(1, 6)};
      for (int section = 0; section < sections; ++section) {
        units.rework->slots.push_back(dice_.between(1, 2));
      }
    }
  }

  void finish() {
    const bool jumps = dice_.chance(40);
    const bool steps = dice_.chance(50);
    for (Slot end = 0; end <= problem_.horizon; ++end) {
      const Slot lag = jumps ? dice_.between(0, 5) : 2;
      const Slot slot = steps ? (end + lag + 3) / 4 * 4 : end + lag;
      problem_.finish.push_back(dice_.chance(5)
                                    ? std::optional<Finish>{}
                                    : Finish{slot, dice_.chance(20) ? dice_.between(0, 3) : 0});
    }
  }

  // A past in some order, whether or not the rules would have allowed it.
  void facts() {
    Facts facts;
    Slot clock = dice_.between(0, 3);
    const auto past = [&](Slot slots) {
      const Slot start = clock + (dice_.chance(30) ? dice_.between(0, 2) : 0);
      clock = start + slots;
      return start;
    };
    const int tasks = static_cast<int>(problem_.chain.size());
    const int done = dice_.chance(60) ? tasks : dice_.between(0, tasks);
    for (int task = 0; task < done && clock + 4 < problem_.horizon; ++task) {
      const Slot start = past(problem_.chain[place(task)].slots);
      facts.tasks.push_back({place(task), start, clock});
    }
    if (facts.tasks.size() == problem_.chain.size()) {
      done_units(facts, past, clock);
    }
    facts.now = std::min(problem_.horizon, dice_.between(0, 1) * dice_.between(0, 8) + clock / 2);
    problem_.facts = facts;
  }

  template <class Past>
  void done_units(Facts& facts, Past past, Slot& clock) {
    const Units& units = problem_.units;
    if (problem_.anchor.reclean && !problem_.chain.empty() && dice_.chance(20) &&
        clock + 4 < problem_.horizon) {
      const Slot start = past(problem_.anchor.reclean->slots);
      facts.recleans.push_back({start, clock});
    }
    std::vector<std::size_t> count(units.sections.size(), 0);
    for (int step = dice_.between(0, 3); step > 0; --step) {
      const std::size_t section = place(dice_.between(0, static_cast<int>(count.size()) - 1));
      const std::size_t coat = count[section];
      const bool ordered = section == 0 || count[section - 1] > coat || dice_.chance(10);
      if (coat == units.coats.size() || !ordered || clock + 4 >= problem_.horizon) {
        continue;
      }
      const Slot start = past(units.slots[coat][section]);
      facts.units.push_back({coat, section, start, clock});
      ++count[section];
      if (units.rework && coat + 1 < units.coats.size() && dice_.chance(20) &&
          clock + 4 < problem_.horizon) {
        const Slot again = past(units.rework->slots[section]);
        facts.reworks.push_back({coat, section, again, clock});
      }
    }
  }

  Dice dice_;
  Size size_;
  Problem problem_;
};

inline Problem problem(std::uint32_t seed, const Size& size) {
  return ProblemMaker(seed, size).make();
}

}  // namespace basinwright::schedule::random
