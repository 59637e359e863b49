// What is done, as facts of the general problem; and what is offered to be done again.
#include <algorithm>

#include "instance.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Slot;

// Longer than any horizon: offered to nobody.
constexpr Slot never_done = 100'000;

}  // namespace

std::pair<std::string, std::string> Instance::named(const schedule::Booking& b) const {
  using What = schedule::Booking::What;
  const schedule::Units& units = problem_.units;
  const std::string section = units.sections.size() > 1 ? units.sections[b.section] : "";
  switch (b.what) {
    case What::task:
      return {chain_[b.index].task, chain_[b.index].section};
    case What::unit:
      return {units.coats[b.index], section};
    case What::rework:
      return {"rework", section};
    case What::reclean:
      break;
  }
  return {"clean-again", ""};
}

const Done* Instance::done(std::string_view task) const {
  if (!q_.past) return nullptr;
  const auto it = std::ranges::find(q_.past->done, task, &Done::task);
  return it == q_.past->done.end() ? nullptr : &*it;
}

// Work going on ends as planned, but not before now.
std::int32_t Instance::expected_end(const Done& done, std::int32_t start) const {
  if (!done.running) return std::max(start, timeline_.slot(done.end));
  Slot end = start;
  for (std::size_t i = 0; i < chain_.size(); ++i) {
    if (chain_[i].task != done.task || chain_[i].section != done.section) continue;
    const schedule::Task& task = problem_.chain[i];
    const bool attended = task.kind == schedule::Kind::attended;
    end = attended ? open_work_.end_of(start, task.slots) : start + task.slots;
  }
  const Work* work = find(done.task);
  if (end == start && work != nullptr && work->people > 0)
    end = open_work_.end_of(start, std::max(1, quarters_up(work->person_hours / work->people)));
  return std::max(end, now_);
}

void Instance::build_past() {
  if (!q_.past) return;
  now_ = timeline_.slot(q_.past->now);
  problem_.facts = schedule::Facts{now_};
  offer_again();
  for (const Done& done : q_.past->done) take_fact(done);
}

void Instance::take_fact(const Done& done) {
  schedule::Facts& facts = *problem_.facts;
  const schedule::Units& units = problem_.units;
  const Slot start = timeline_.slot(done.start);
  const auto section_it = std::ranges::find(units.sections, done.section);
  const std::size_t section = section_it == units.sections.end()
                                  ? 0
                                  : static_cast<std::size_t>(section_it - units.sections.begin());
  if (done.task == "clean-again") {
    const Slot end = expected_end(done, start);
    facts.recleans.push_back({start, end});
    return;
  }
  const auto coat = std::ranges::find(units.coats, done.task);
  if (coat != units.coats.end()) {
    const auto c = static_cast<std::size_t>(coat - units.coats.begin());
    Slot end =
        done.running ? std::max(now_, start + units.slots[c][section]) : timeline_.slot(done.end);
    end = std::max(end, start + 1);
    facts.units.push_back({c, section, start, end});
    painted_until_ = std::max(painted_until_, end);
    return;
  }
  if (done.task == "rework") {
    // After the last coat that was on when it began.
    std::size_t below = 0;
    for (const schedule::DoneUnit& unit : facts.units) {
      if (unit.section == section && unit.start <= start) below = std::max(below, unit.coat);
    }
    if (units.rework && below + 1 < units.coats.size())
      facts.reworks.push_back({below, section, start, std::max(start, expected_end(done, start))});
    return;
  }
  for (std::size_t i = 0; i < chain_.size(); ++i) {
    const bool taken =
        std::ranges::any_of(facts.tasks, [&](const schedule::DoneTask& t) { return t.task == i; });
    if (taken || chain_[i].task != done.task || chain_[i].section != done.section) continue;
    facts.tasks.push_back({i, start, expected_end(done, start)});
    return;
  }
}

void Instance::offer_again() {
  const Offers& offers = setting_.offers;
  const std::size_t dry_work = problem_.calendars.size() > 2 ? 2 : 0;
  const bool reworked = done("rework") != nullptr;
  if (!offers.rework.empty() || reworked) {
    schedule::Rework rework;
    rework.calendar = dry_work;
    rework.dry = quarters_up(q_.rework.dry.value);
    rework.max = quarters_down(q_.rework.coat_within.value);
    for (std::size_t s = 0; s < problem_.units.sections.size(); ++s) {
      const bool offered = s < offers.rework.size() && offers.rework[s] != 0;
      const units::Duration hours =
          s < q_.rework.person_hours.size() ? q_.rework.person_hours[s] : units::Duration();
      const Slot slots = std::max(1, quarters_up(hours / std::max(1, q_.rework.people)));
      rework.slots.push_back(offered ? slots : never_done);
    }
    problem_.units.rework = std::move(rework);
  }
  if (offers.clean_again) {
    const Slot slots =
        std::max(1, quarters_up(q_.rework.clean_again / std::max(1, q_.rework.people)));
    // Washing wets the shell as rain does.
    problem_.anchor.dry = std::max(problem_.anchor.dry, quarters_up(q_.waits.dry.value));
    const bool painted =
        std::ranges::any_of(q_.past->done, [](const Done& d) { return is_paint(d.task); });
    if (!painted) {
      problem_.anchor.reclean = schedule::Reclean{slots, dry_work};
      return;
    }
    problem_.chain.push_back({.name = "clean-again",
                              .kind = schedule::Kind::attended,
                              .slots = slots,
                              .calendar = dry_work});
    chain_.push_back({"clean-again", "", q_.rework.people, {}, false});
    problem_.anchor.task = problem_.chain.size() - 1;
  }
}

}  // namespace basinwright::sequence
