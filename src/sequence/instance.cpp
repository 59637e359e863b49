#include "instance.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Kind;
using schedule::Slot;

// The problem's calendars, in this order; without weather only the first two.
enum CalendarIndex : std::size_t { on_work, on_paint, on_dry_work, on_etch, on_dryness_test };

// What is longer than any horizon is not reckoned further: no programme holds it either way.
std::int32_t task_quarters(units::Duration time) {
  return std::clamp(quarters_up(time), 1, schedule::endless);
}

std::int32_t crew_quarters(const Work& work) {
  return task_quarters(work.person_hours / std::max(1, work.people));
}

std::int32_t etch_quarters(const Work& work, int groups) {
  return task_quarters(work.person_hours / std::max(1, work.people) / groups);
}

// What the work of a time costs: labour, and an attendance for each date.
class WorkCost {
 public:
  WorkCost(const OpenSlots& open, const schedule::Problem& problem)
      : open_(open),
        problem_(problem),
        costs_(open.all().size() + 1),
        dates_(open.all().size()),
        begun_(open.all().size()) {
    std::int32_t begun = 0;
    for (std::size_t rank = 0; rank < dates_.size(); ++rank) {
      const auto slot = static_cast<std::size_t>(open.all()[rank]);
      costs_[rank + 1] = costs_[rank] + problem.cost_of[slot];
      dates_[rank] = problem.date_of[slot];
      begun += rank > 0 && dates_[rank] == dates_[rank - 1] ? 0 : 1;
      begun_[rank] = begun;
    }
  }

  /// Of the open slots in [from, to). The date that is attended already becomes that of the last.
  [[nodiscard]] std::int64_t cost(Slot from, Slot to, std::int32_t& attended) const {
    const Slot slots = open_.between(from, to);
    if (slots <= 0) return 0;
    const auto first = static_cast<std::size_t>(open_.between(0, from));
    const std::size_t last = first + static_cast<std::size_t>(slots) - 1;
    const std::int32_t more = begun_[last] - begun_[first] + (dates_[first] == attended ? 0 : 1);
    attended = dates_[last];
    return costs_[last + 1] - costs_[first] + problem_.attendance * more;
  }

 private:
  const OpenSlots& open_;
  const schedule::Problem& problem_;
  std::vector<std::int64_t> costs_;          // of the slots before each rank
  std::vector<std::int32_t> dates_, begun_;  // of each rank: its date, the dates begun up to it
};

}  // namespace

int etch_groups(const ProgrammeQuestion& q) {
  const std::int32_t shift = q.calendar.hours.to - q.calendar.hours.from - quarters_up(q.clean_up);
  const auto fit = [&](int groups) {
    std::int32_t sum = 0;
    for (const Work& work : q.work) {
      if (is_etch(work.task)) sum += etch_quarters(work, groups);
    }
    return sum <= shift;
  };
  constexpr int most_groups = 60;
  int groups = 1;
  while (!fit(groups) && groups < most_groups) ++groups;
  return groups;
}

std::int32_t drain_quarters(const ProgrammeQuestion& question) {
  return task_quarters(question.water / question.drain_pump);
}

Instance::Instance(const ProgrammeQuestion& question, const Setting& setting)
    : q_(question),
      tail_work_(tail_work()),
      setting_(setting),
      timeline_(question.start, setting.days, question.calendar.clock_changes),
      work_slots_(dates::work_slots(timeline_, question.calendar, quarters_up(question.clean_up))),
      open_work_(work_slots_),
      outdoors_(question, timeline_, setting),
      cure_(question, timeline_, setting.conditions) {
  problem_.horizon = timeline_.size();
  problem_.date_of = timeline_.days();
  // With spare hands the later sections of a morning are vacuumed while the first is painted;
  // without, all of them before it.
  for (std::size_t s = 0; s < q_.sections.size(); ++s) {
    ready_ = spare_hands() > 0 ? std::max(ready_, vacuum_quarters(s)) : ready_ + vacuum_quarters(s);
  }
  build_calendars();
  build_chain();
  // Between the chain's last task and a first coat the shell is vacuumed.
  problem_.anchor.dry = ready_;
  problem_.wet = outdoors_.wet();
  if (outdoors_.known()) problem_.anchor.rain_free = quarters_up(q_.waits.dry.value);
  build_units();
  weigh();
  offer_rework();
  build_past();
  build_finish();
  // By the calendar alone two weeks mostly do.
  if (q_.likely.fill_start && outdoors_.known())
    problem_.likely_finish = timeline_.slot(*q_.likely.fill_start);
}

Instance::TailWork Instance::tail_work() const {
  const Work* unmask = find("unmask");
  const Work* refit = find("refit");
  return {unmask,
          refit,
          done("unmask"),
          done("refit"),
          done("fill"),
          unmask == nullptr ? 0 : crew_quarters(*unmask),
          refit == nullptr ? 0 : crew_quarters(*refit)};
}

void Instance::build_calendars() {
  painting_ = setting_.dropped.has(Constraint::painting_hours)
                  ? schedule::Calendar(static_cast<std::size_t>(problem_.horizon), 1)
                  : dates::painting_slots(
                        timeline_, q_.calendar, ready_, painting_hours(q_, setting_.days));
  problem_.calendars.reserve(on_dryness_test + 1);
  problem_.calendars.push_back(work_slots_);
  problem_.calendars.push_back(painting_);
  if (!outdoors_.known()) return;
  problem_.calendars[on_paint] = outdoors_.under(painting_, &outdoors_.coat());
  for (const char* task : {"mask", "etch-walls", "dryness-test"}) {
    problem_.calendars.push_back(outdoors_.under(work_slots_, outdoors_.of_task(task)));
  }
}

std::size_t Instance::calendar_of(std::string_view task) const {
  if (!outdoors_.known()) return on_work;
  if (is_etch(task)) return on_etch;
  if (task == "dryness-test") return on_dryness_test;
  return needs_dry_weather(task) ? on_dry_work : on_work;
}

const Work* Instance::find(std::string_view task) const {
  const auto it = std::ranges::find(q_.work, task, &Work::task);
  return it == q_.work.end() ? nullptr : &*it;
}

std::int32_t Instance::vacuum_quarters(std::size_t section) const {
  const std::string name = q_.sections.size() > 1 ? std::to_string(section + 1) : "";
  for (const Work& work : q_.work) {
    if (work.task == "vacuum" && work.section == name) return crew_quarters(work);
  }
  return 0;
}

int Instance::spare_hands() const {
  const Work* vacuum = find("vacuum");
  const Work* coat = find("coat-1");
  return vacuum == nullptr || coat == nullptr ? 0 : vacuum->people - coat->people;
}

std::int32_t Instance::vacuum_beside(std::size_t section) const {
  const Work* vacuum = find("vacuum");
  const int spare = spare_hands();
  if (vacuum == nullptr || spare < 1) return 0;
  return (vacuum_quarters(section) * vacuum->people + spare - 1) / spare;
}

void Instance::add_task(const Work& work, schedule::Task task) {
  // The rest of a task that was broken off waits for nothing between.
  if (!chain_.empty() && chain_.back().task == work.task && chain_.back().section == work.section)
    lag_ = 0;
  task.name = work.task;
  task.calendar = calendar_of(work.task);
  if (!task.lag_max) task.lag_min = lag_;
  chain_.push_back({work.task,
                    work.section,
                    work.people,
                    units::hours(lag_ / quarters_in_hour),
                    task.release > 0});
  problem_.chain.push_back(std::move(task));
  lag_ = 0;
}

void Instance::build_chain() {
  bool etched = false;
  for (const Work& work : q_.work) {
    if (is_outside_chain(work.task)) continue;
    if (is_etch(work.task)) {
      if (!etched) add_etch();
      etched = true;
      continue;
    }
    if (work.task == "drain") {
      add_task(work, {.kind = Kind::unattended, .slots = drain_quarters(q_)});
      chain_.back().people = 0;
      problem_.emptied_by = problem_.chain.size() - 1;
      continue;
    }
    if (work.task == "dryness-test") {
      lag_ = quarters_up(q_.waits.dry.value);
      add_task(work, {.kind = Kind::unattended, .slots = quarters_up(q_.waits.dryness_test.value)});
      chain_.back().people = 0;
      continue;
    }
    add_task(work, {.kind = Kind::attended, .slots = crew_quarters(work)});
    if (work.task == "chlorine-wash") lag_ = quarters_up(q_.waits.after_chlorine.value);
    if (work.task == "repair") {
      lag_ = quarters_up(std::max(q_.waits.filler_cure.value, q_.repair_cement_wait));
    }
  }
}

void Instance::add_etch() {
  std::vector<const Work*> parts;
  for (const Work& work : q_.work) {
    if (is_etch(work.task)) parts.push_back(&work);
  }
  const int groups = etch_groups(q_);
  for (int g = 1; g <= groups; ++g) {
    bool first = true;
    for (const Work* part : parts) {
      Work work = *part;
      if (groups > 1) work.section = std::to_string(g);
      schedule::Task task{.kind = Kind::one_shift, .slots = etch_quarters(work, groups)};
      if (first && g == 1) task.release = quarters_up(q_.cement_wait);
      if (!first) task.lag_max = 0;
      add_task(work, std::move(task));
      if (g == 1 && work.task != "neutralise") problem_.anchor.task = problem_.chain.size() - 1;
      first = false;
    }
  }
  if (!setting_.dropped.has(Constraint::etch_validity))
    problem_.anchor.limit = quarters_down(q_.waits.coat_within.value);
}

void Instance::build_units() {
  schedule::Units& units = problem_.units;
  units.calendar = on_paint;
  units.sections = q_.sections;
  for (const Work& work : q_.work) {
    if (!is_paint(work.task)) continue;
    if (units.coats.empty() || units.coats.back() != work.task) {
      units.coats.push_back(work.task);
      units.slots.emplace_back();
    }
    units.slots.back().push_back(crew_quarters(work));
  }
  const bool bare_window = setting_.offers.no_reserve;
  const std::int32_t reserve = bare_window ? 0 : quarters_up(q_.waits.recoat_reserve.value);
  // Starts that were rounded up would end their windows up to a quarter too late.
  const std::int32_t rounding = q_.past && q_.past->rounded && reserve == 0 ? 1 : 0;
  for (std::size_t c = 0; c + 1 < units.coats.size(); ++c) {
    const bool primer = units.coats[c] == "prime";
    const auto least = primer ? q_.system.primer.window_min.value : q_.system.recoat_min.value;
    const auto most = primer ? q_.system.primer.window_max.value : q_.system.recoat_max.value;
    const std::int32_t latest = setting_.dropped.has(Constraint::recoat_window)
                                    ? schedule::endless
                                    : quarters_down(most) - reserve - rounding;
    units.recoat.push_back({quarters_up(least) + reserve, latest});
  }
}

void Instance::weigh() {
  const unsigned first = dates::weekday(q_.start);
  problem_.cost_of.resize(static_cast<std::size_t>(problem_.horizon));
  for (std::size_t s = 0; s < problem_.cost_of.size();) {
    const std::int32_t day = problem_.date_of[s];
    // A clock set back over the first midnight shows the day before: -1.
    const std::size_t week = q_.weight_of_quarter.size();
    const std::size_t weekday = (first + week + static_cast<std::size_t>(day)) % week;
    const std::int64_t cost = q_.weight_of_quarter[weekday];
    const auto from = problem_.date_of.begin() + static_cast<std::ptrdiff_t>(s);
    const auto next = std::upper_bound(from, problem_.date_of.end(), day);
    std::fill_n(problem_.cost_of.begin() + static_cast<std::ptrdiff_t>(s), next - from, cost);
    s += static_cast<std::size_t>(next - from);
  }
  problem_.attendance = q_.weight_of_attendance;
}

std::optional<Tail> Instance::tail(std::int32_t end) const {
  return tail(end, cure_.done(end));
}

std::optional<Tail> Instance::tail(std::int32_t end, std::int32_t cure_end) const {
  Tail t;
  const Work* unmask = tail_work_.unmask;
  const Work* refit = tail_work_.refit;
  const std::int32_t from = std::max(end, now_);
  t.unmask_start = unmask == nullptr ? end : open_work_.next(from);
  t.unmask_end = unmask == nullptr ? end : open_work_.end_of(from, tail_work_.unmask_quarters);
  if (const Done* d = tail_work_.unmask_done) {
    t.unmask_start = timeline_.slot(d->start);
    t.unmask_end = expected_end(*d, t.unmask_start);
  }
  t.cure_end = cure_end;
  if (t.unmask_start < 0 || t.unmask_end < 0 || t.cure_end < 0) return {};
  const std::int32_t cured = std::max(t.cure_end, now_);
  t.refit_start = open_work_.next(cured);
  t.refit_end =
      refit == nullptr ? t.refit_start : open_work_.end_of(cured, tail_work_.refit_quarters);
  if (const Done* d = tail_work_.refit_done) {
    t.refit_start = timeline_.slot(d->start);
    t.refit_end = expected_end(*d, t.refit_start);
  }
  if (t.refit_start < 0 || t.refit_end < 0) return {};
  t.fill_start = open_work_.next(std::max(t.refit_end, now_));
  if (const Done* d = tail_work_.fill_done) t.fill_start = timeline_.slot(d->start);
  if (t.fill_start < 0) return {};
  return t;
}

void Instance::build_finish() {
  problem_.finish.resize(static_cast<std::size_t>(problem_.horizon) + 1);
  const auto& paint = problem_.calendars[on_paint];
  const WorkCost work(open_work_, problem_);
  Slot cured = 0;
  for (Slot e = 1; e <= problem_.horizon; ++e) {
    if (paint[static_cast<std::size_t>(e) - 1] == 0 && e != painted_until_) continue;
    if (cured >= 0) cured = cure_.done(e, cured);
    const auto after = tail(e, cured);
    if (!after) continue;
    std::int64_t cost = 0;
    std::int32_t day = timeline_.day(e - 1);
    for (const auto& [from, to] : {std::pair(after->unmask_start, after->unmask_end),
                                   std::pair(after->refit_start, after->refit_end)}) {
      cost += work.cost(from, to, day);
    }
    problem_.finish[static_cast<std::size_t>(e)] = schedule::Finish{after->fill_start, cost};
  }
}

}  // namespace basinwright::sequence
