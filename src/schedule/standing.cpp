#include "standing.hpp"

#include <algorithm>

namespace basinwright::schedule {
namespace {

// Reads the facts one kind after the other.
class Reading {
 public:
  explicit Reading(const Problem& problem) : problem_(problem) {
    const std::size_t sections = problem.units.sections.size();
    standing_.sections.resize(sections);
    standing_.dates.assign(problem.units.coats.size(),
                           std::vector<std::int32_t>(sections, no_date));
    ends_.assign(problem.chain.size(), no_slot);
  }

  Standing take(const Facts& facts) {
    standing_.clock = facts.now;
    for (const DoneTask& done : facts.tasks) {
      task(done);
    }
    for (const DoneUnit& done : facts.units) {
      unit(done);
    }
    for (const DoneRework& done : facts.reworks) {
      rework(done);
    }
    for (const DoneReclean& done : facts.recleans) {
      past(done.end, true);
      standing_.wet = std::max(standing_.wet, done.end);
      standing_.anchor = std::max(standing_.anchor, done.end);
      ++standing_.tally.reworks;
    }
    if (worked_until_ > 0) {
      standing_.free_date = problem_.date_of[at(worked_until_ - 1)];
    }
    splits();
    links();
    return standing_;
  }

 private:
  void past(Slot end, bool worked) {
    standing_.clock = std::max(standing_.clock, end);
    if (worked) {
      worked_until_ = std::max(worked_until_, end);
    }
  }
  void task(const DoneTask& done) {
    past(done.end, problem_.chain[done.task].kind != Kind::unattended && done.end > done.start);
    ends_[done.task] = done.end;
    standing_.wet = std::max(standing_.wet, done.end);
    if (done.task == problem_.emptied_by) {
      standing_.emptied = done.end;
    }
    if (done.task == problem_.anchor.task) {
      standing_.anchor = std::max(standing_.anchor, done.end);
    }
  }
  void unit(const DoneUnit& done) {
    past(done.end, true);
    standing_.bare = false;
    standing_.dates[done.coat][done.section] = problem_.date_of[at(done.start)];
    SectionStanding& section = standing_.sections[done.section];
    if (done.coat + 1 > section.done) {
      section = {done.coat + 1, done.start, done.end, no_slot};
    }
  }
  void rework(const DoneRework& done) {
    past(done.end, true);
    ++standing_.tally.reworks;
    SectionStanding& section = standing_.sections[done.section];
    if (section.done == done.coat + 1) {
      section.rework_end = std::max(section.rework_end, done.end);
    }
  }
  void splits() {
    for (const auto& dates : standing_.dates) {
      for (std::size_t section = 1; section < dates.size(); ++section) {
        if (dates[section] != no_date && dates[section - 1] != no_date &&
            dates[section] != dates[section - 1]) {
          ++standing_.tally.splits;
        }
      }
    }
  }
  void links() {
    for (std::size_t task = 0; task < problem_.chain.size(); ++task) {
      if (ends_[task] != no_slot) {
        continue;
      }
      const Task& rule = problem_.chain[task];
      Link link{task, std::max(rule.release, standing_.clock)};
      if (task > 0 && ends_[task - 1] != no_slot) {
        link.from = std::max(link.from, ends_[task - 1] + capped(rule.lag_min));
        link.until = rule.lag_max ? ends_[task - 1] + capped(*rule.lag_max) : never;
      } else if (task > 0) {
        link.lag_min = capped(rule.lag_min);
        link.lag_max = capped(rule.lag_max.value_or(never));
      }
      if (task == problem_.emptied_by) {
        standing_.emptied_link = standing_.links.size();
      }
      if (task == problem_.anchor.task) {
        standing_.anchor_link = standing_.links.size();
      }
      standing_.links.push_back(link);
    }
  }

  const Problem& problem_;
  Standing standing_;
  std::vector<Slot> ends_;  // of done tasks
  Slot worked_until_ = no_slot;
};

}  // namespace

Standing standing_of(const Problem& problem) {
  return Reading(problem).take(problem.facts ? *problem.facts : Facts{});
}

}  // namespace basinwright::schedule
