#include "reasons.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <memory>

namespace basinwright::schedule {
namespace {

// The longest run of open slots, on one date if asked.
Slot longest_run(const Setting& setting, std::size_t calendar, bool one_date) {
  const Openings& openings = setting.calendars[calendar];
  Slot longest = 0;
  Slot run = 0;
  for (Slot slot = 0; slot < setting.length; ++slot) {
    const bool on = slot > 0 && (!one_date || setting.date(slot) == setting.date(slot - 1));
    run = openings.open(slot) ? (on ? run : 0) + 1 : 0;
    longest = std::max(longest, run);
  }
  return longest;
}

Infeasible chain_reason(const Setting& setting, const Link& link) {
  const Task& task = setting.problem.chain[link.task];
  Infeasible result;
  result.part = Infeasible::Part::chain;
  result.index = link.task;
  const Slot longest = longest_run(setting, task.calendar, false);
  result.rule_conflict = true;
  if (link.from > link.until || link.lag_min > link.lag_max) {
    result.why = fmt::format("{} may start only after its latest start has passed", task.name);
  } else if (task.kind == Kind::one_shift && task.slots > longest) {
    result.why = fmt::format("{} takes {} slots in one go; the longest run of open slots is {}",
                             task.name,
                             task.slots,
                             longest);
  } else {
    result.rule_conflict = false;
    result.why = fmt::format("no start for {} is left in {} slots", task.name, setting.length);
  }
  return result;
}

// The fewest slots from the anchor's end to a first coat's start.
Slot least_wait(const Setting& setting) {
  const Problem& problem = setting.problem;
  Slot wait = capped(problem.anchor.dry);
  if (!problem.anchor.reclean && setting.standing.anchor_link != no_link) {
    for (std::size_t task = problem.anchor.task + 1; task < problem.chain.size(); ++task) {
      wait = capped(wait + capped(problem.chain[task].lag_min) + problem.chain[task].slots);
    }
  }
  return wait;
}

// A window that no start can meet, whatever the weather; a rework may be the way round.
bool window_is_empty(const Setting& setting, std::size_t coat, std::size_t section) {
  const SectionStanding at_zero{coat, 0, setting.slots(coat - 1, section), no_slot};
  const Reach window = after_coat(setting, coat, section, at_zero);
  const auto& rework = setting.problem.units.rework;
  return window.from > window.until && (!rework || rework->dry > rework->max);
}

Infeasible unit_reason(const Setting& setting, std::size_t coat, std::size_t section) {
  const Units& units = setting.problem.units;
  const Anchor& anchor = setting.problem.anchor;
  const std::string name = fmt::format("{} on {}", units.coats[coat], units.sections[section]);
  Infeasible result;
  result.part = Infeasible::Part::unit;
  result.index = coat;
  result.section = section;
  result.rule_conflict = true;
  const Slot longest = longest_run(setting, units.calendar, true);
  if (setting.slots(coat, section) > longest) {
    result.why = fmt::format("{} takes {} slots; the longest run of open slots on a date is {}",
                             name,
                             setting.slots(coat, section),
                             longest);
  } else if (coat == 0 && anchor.limit && least_wait(setting) > *anchor.limit) {
    result.why = fmt::format("{} must wait {} slots and start within {} of the anchor",
                             name,
                             least_wait(setting),
                             *anchor.limit);
  } else if (coat > 0 && window_is_empty(setting, coat, section)) {
    result.why = fmt::format("{} has an empty recoat window", name);
  } else {
    result.rule_conflict = false;
    result.why = fmt::format("no start for {} is left in {} slots", name, setting.length);
  }
  return result;
}

Standing up_to(const Standing& standing, std::size_t coat, std::size_t section) {
  Standing part = standing;
  part.sections.resize(section + 1);
  part.dates.resize(coat + 1);
  for (auto& dates : part.dates) {
    dates.resize(section + 1);
  }
  for (SectionStanding& done : part.sections) {
    done.done = std::min(done.done, coat + 1);
  }
  return part;
}

/// Whether a unit can be done: only the coats and sections up to it, which any programme that does
/// the unit does before it, and any end.
class UnitTrials {
 public:
  explicit UnitTrials(const Look& whole)
      : whole_(whole), given_(whole.setting.problem), part_(given_) {
    // By dates there are fewer to ask for.
    part_.finish.assign(at(given_.horizon) + 1, Finish{given_.horizon, 0});
    for (Slot end = given_.horizon - 1; end >= 0; --end) {
      const bool last = given_.date_of[at(end)] != given_.date_of[at(std::max<Slot>(0, end - 1))];
      part_.finish[at(end)]->slot = last ? end : part_.finish[at(end) + 1]->slot;
    }
    best_finish_ = best_finishes(part_);
  }

  [[nodiscard]] bool can_be_done(std::size_t coat, std::size_t section) {
    if (whole_.setting.standing.sections[section].done > coat) {
      return true;
    }
    take_up_to(coat, section);
    const Standing standing = up_to(whole_.setting.standing, coat, section);
    auto look = std::make_unique<Look>(whole_, part_, standing, best_finish_);
    return earliest_finish(part_, standing, best_finish_, std::move(look)).finish.has_value();
  }

 private:
  void take_up_to(std::size_t coat, std::size_t section) {
    part_.units = given_.units;
    part_.units.coats.resize(coat + 1);
    part_.units.slots.resize(coat + 1);
    part_.units.recoat.resize(coat);
    part_.units.sections.resize(section + 1);
    for (auto& slots : part_.units.slots) {
      slots.resize(section + 1);
    }
    if (part_.units.rework) {
      part_.units.rework->slots.resize(section + 1);
    }
  }

  const Look& whole_;
  const Problem& given_;
  Problem part_;
  std::vector<Slot> best_finish_;
};

// The first coat of which some section cannot be done. Whoever does a coat's last section has done
// the others and the coats below, so that halving finds it; with facts that need not hold.
std::size_t first_coat_in_question(const Setting& setting, UnitTrials& trials) {
  if (setting.problem.facts) {
    return 0;
  }
  std::size_t coat = 0;
  for (std::size_t until = setting.coats(); coat < until;) {
    const std::size_t middle = coat + (until - coat) / 2;
    if (trials.can_be_done(middle, setting.sections() - 1)) {
      coat = middle + 1;
    } else {
      until = middle;
    }
  }
  return coat;
}

}  // namespace

Infeasible first_unreachable(const Look& whole) {
  const Setting& setting = whole.setting;
  if (whole.reach.reached < setting.standing.links.size()) {
    return chain_reason(setting, setting.standing.links[whole.reach.reached]);
  }
  UnitTrials trials(whole);
  for (std::size_t coat = first_coat_in_question(setting, trials); coat < setting.coats(); ++coat) {
    for (std::size_t section = 0; section < setting.sections(); ++section) {
      const bool known = !setting.problem.facts && section + 1 == setting.sections();
      if (known || !trials.can_be_done(coat, section)) {
        Infeasible result = unit_reason(setting, coat, section);
        result.earliest_anchor = whole.reach.earliest_anchor;
        return result;
      }
    }
  }
  Infeasible result;
  result.part = Infeasible::Part::finish;
  result.why = "no end of the last unit leads to a finish";
  return result;
}

}  // namespace basinwright::schedule
