// What is done, as facts of the general problem; and what is offered to be done again.
#include <algorithm>

#include "add_fact.hpp"
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
  return std::min(std::max({start, end, now_}), problem_.horizon);
}

void Instance::build_past() {
  if (!q_.past) return;
  now_ = timeline_.slot(q_.past->now);
  problem_.facts = schedule::Facts{now_};
  // Washing wets the shell as rain does.
  if (setting_.offers.clean_again || done("clean-again") != nullptr)
    problem_.anchor.dry = std::max(problem_.anchor.dry, quarters_up(q_.waits.dry.value));
  offer_again();
  for (const Done& done : q_.past->done) take_fact(done);
  forgive_waits();
}

// Too late for a task that had to follow at once: it follows as soon as it can.
void Instance::forgive_waits() {
  for (const schedule::DoneTask& before : problem_.facts->tasks) {
    const std::size_t next = before.task + 1;
    if (next >= problem_.chain.size()) continue;
    schedule::Task& task = problem_.chain[next];
    if (task.lag_max && before.end + *task.lag_max < now_) task.lag_max.reset();
  }
}

void Instance::take_fact(const Done& done) {
  // What lies past all that is looked at is at its end: nothing follows it there.
  const Slot start = std::min(timeline_.slot(done.start), problem_.horizon - 1);
  add_fact(problem_, {done.task, done.section, start, expected_end(done, start)});
  if (is_paint(done.task))
    painted_until_ = std::max({painted_until_, start + 1, problem_.facts->units.back().end});
}

std::size_t Instance::dry_work() const {
  return problem_.calendars.size() > 2 ? 2 : 0;
}

// Where the data sheet allows it for all sections; else for those whose window is lost.
void Instance::offer_rework() {
  const std::vector<char>& lost = setting_.offers.rework;
  if (!q_.rework.on_purpose && lost.empty() && done("rework") == nullptr) return;
  schedule::Rework rework;
  rework.calendar = dry_work();
  rework.dry = quarters_up(q_.waits.rework_dry.value);
  rework.max = quarters_down(q_.waits.rework_coat_within.value);
  for (std::size_t s = 0; s < problem_.units.sections.size(); ++s) {
    const bool offered = q_.rework.on_purpose || (s < lost.size() && lost[s] != 0);
    const units::Duration hours =
        s < q_.rework.person_hours.size() ? q_.rework.person_hours[s] : units::Duration();
    const Slot slots = std::max(1, quarters_up(hours / std::max(1, q_.rework.people)));
    rework.slots.push_back(offered ? slots : never_done);
  }
  problem_.units.rework = std::move(rework);
}

void Instance::offer_again() {
  if (setting_.offers.clean_again) {
    const Slot slots =
        std::max(1, quarters_up(q_.rework.clean_again / std::max(1, q_.rework.people)));
    const bool painted =
        std::ranges::any_of(q_.past->done, [](const Done& d) { return is_paint(d.task); });
    if (!painted) {
      problem_.anchor.reclean = schedule::Reclean{slots, dry_work()};
      return;
    }
    problem_.chain.push_back({.name = "clean-again",
                              .kind = schedule::Kind::attended,
                              .slots = slots,
                              .calendar = dry_work()});
    chain_.push_back({"clean-again", "", q_.rework.people, {}, false});
    problem_.anchor.task = problem_.chain.size() - 1;
  }
}

}  // namespace basinwright::sequence
