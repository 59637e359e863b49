// Small random seasons in which jobs get into one another's way; the same seed, the same season.
#pragma once

#include <memory>
#include <string>

#include "basinwright/season/problem.hpp"
#include "schedule/random_problem.hpp"

namespace basinwright::season::random {

using schedule::random::Dice;

struct Size {
  int jobs = 2, crews = 2, dates = 4, day = 4, tasks = 2, coats = 2;
};

class SeasonMaker {
 public:
  SeasonMaker(std::uint32_t seed, const Size& size) : dice_(seed), size_(size) {}

  Problem make() {
    Problem season;
    season.crews = static_cast<std::size_t>(dice_.between(1, size_.crews));
    const int jobs = dice_.between(2, size_.jobs);
    const bool alike = season.crews > 1 && dice_.chance(40);
    if (alike) season.alike.assign(season.crews, 0);
    for (int j = 0; j < jobs; ++j) season.jobs.push_back(job(j, season.crews, alike));
    season.travel.assign(season.jobs.size(), std::vector<std::int32_t>(season.jobs.size(), 0));
    for (std::size_t a = 0; a < season.jobs.size(); ++a) {
      for (std::size_t b = 0; b < a; ++b)
        season.travel[a][b] = season.travel[b][a] = dice_.between(0, 2);
    }
    return season;
  }

 private:
  using Kind = schedule::Kind;

  Job job(int number, std::size_t crews, bool alike) {
    Job made;
    made.name = "job " + std::to_string(number);
    if (dice_.chance(80)) made.promised = dice_.between(0, size_.dates);
    made.weight = dice_.chance(50) ? 1 : dice_.between(1, 3);
    const Candidate first = candidate();
    for (std::size_t c = 0; c < crews; ++c) {
      if (!alike && dice_.chance(15) && c > 0) {
        made.by_crew.push_back(nullptr);
        continue;
      }
      made.by_crew.push_back(
          std::make_shared<const Candidate>(alike || c == 0 ? first : varied(first)));
    }
    return made;
  }

  // Another crew: other hours, other speed, other price.
  Candidate varied(Candidate candidate) {
    candidate.cost = dice_.between(0, 9);
    for (auto& calendar : candidate.problem.calendars) calendar = open_slots();
    for (schedule::Task& task : candidate.problem.chain) {
      if (task.kind == Kind::attended) task.slots = dice_.between(1, 3);
    }
    return candidate;
  }

  schedule::Calendar open_slots() {
    schedule::Calendar calendar;
    const int open = dice_.between(70, 100);
    for (int slot = 0; slot < size_.dates * size_.day; ++slot)
      calendar.push_back(dice_.chance(open) ? 1 : 0);
    return calendar;
  }

  Candidate candidate() {
    Candidate made;
    schedule::Problem& p = made.problem;
    p.horizon = size_.dates * size_.day;
    for (Slot slot = 0; slot < p.horizon; ++slot) {
      p.date_of.push_back(slot / size_.day);
      made.time_of.push_back(slot % size_.day);
      p.cost_of.push_back(1);
      made.full.push_back(slot / size_.day + (slot % size_.day > 1 ? 1 : 0));
    }
    p.calendars = {open_slots(), open_slots(), open_slots()};
    chain(p);
    p.units.sections = {"all"};
    const int coats = dice_.between(1, size_.coats);
    for (int c = 0; c < coats; ++c) {
      p.units.coats.push_back("coat " + std::to_string(c));
      p.units.slots.push_back({dice_.between(1, 2)});
      const Slot min = dice_.between(0, 3);
      if (c > 0) p.units.recoat.push_back({min, min + dice_.between(1, 5)});
    }
    p.units.calendar = 2;
    made.ready = dice_.chance(30) ? 1 : 0;
    made.after.unmask = dice_.between(0, 1);
    made.after.refit = dice_.between(0, 1);
    const Slot cure = dice_.between(0, 4);
    for (Slot end = 0; end <= p.horizon; ++end) made.after.cured.emplace_back(end + cure);
    made.cost = dice_.between(0, 9);
    return made;
  }

  void chain(schedule::Problem& p) {
    const int tasks = dice_.between(0, size_.tasks);
    for (int t = 0; t < tasks; ++t) {
      schedule::Task task;
      task.name = "task " + std::to_string(t);
      task.kind = static_cast<Kind>(dice_.between(0, 2));
      task.slots = dice_.between(1, 3);
      task.calendar = static_cast<std::size_t>(dice_.between(0, 1));
      task.lag_min = dice_.chance(30) ? dice_.between(0, 2) : 0;
      if (t > 0 && task.kind != Kind::attended && dice_.chance(40))
        task.lag_max = task.lag_min + dice_.between(0, 2);
      p.chain.push_back(task);
    }
    if (tasks > 0) p.anchor.task = static_cast<std::size_t>(dice_.between(0, tasks - 1));
    if (dice_.chance(50)) p.anchor.limit = dice_.between(2, 8);
    p.anchor.dry = dice_.between(0, 1);
  }

  Dice dice_;
  Size size_;
};

inline Problem season(std::uint32_t seed, const Size& size) {
  return SeasonMaker(seed, size).make();
}

}  // namespace basinwright::season::random
