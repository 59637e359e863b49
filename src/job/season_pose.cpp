#include "season_pose.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/schedule/solve.hpp"
#include "basinwright/units/unit.hpp"
#include "question.hpp"

namespace basinwright::job {
namespace {

using schedule::Slot;

std::int32_t quarters(units::Duration time) {
  constexpr double quarters_in_hour = 4.0;
  return static_cast<std::int32_t>(std::ceil(time.in(units::hours)*quarters_in_hour - 1e-6));
}

// The job file's crew and calendar with what the season's crew says instead.
Job on_crew(const SeasonJob& j,
            const SeasonCrew& crew,
            dates::Date start,
            const SeasonChange& change) {
  Job job = *j.job;
  const sources::Source given{sources::Kind::given, "", "crews"};
  if (crew.people) job.crew.people = {static_cast<double>(*crew.people), given};
  if (crew.painters) job.crew.painters = {static_cast<double>(*crew.painters), given};
  job.crew.people.value += change.painters;
  job.crew.painters.value += change.painters;
  job.crew.painters.value = std::min(job.crew.painters.value, job.crew.people.value);
  if (crew.hours) job.calendar.hours = *crew.hours;
  if (crew.working) job.calendar.working = *crew.working;
  constexpr std::size_t saturday = 5;
  if (change.saturdays) job.calendar.working[saturday] = true;
  auto& closed = job.calendar.closed;
  closed.insert(closed.end(), crew.closed.begin(), crew.closed.end());
  const auto close = [&](dates::Date from, dates::Date to) {
    for (; from < to; from += std::chrono::days{1}) closed.push_back(from);
  };
  if (crew.from) close(start, *crew.from);
  if (j.not_before && !change.any_start) close(start, *j.not_before);
  constexpr std::chrono::days longest{500};
  if (crew.until) close(*crew.until + std::chrono::days{1}, start + longest);
  std::ranges::sort(closed);
  closed.erase(std::unique(closed.begin(), closed.end()), closed.end());
  return job;
}

// Never on one day: a crew that works longer than the wait is made to wait for the next.
bool acid_may_meet_chlorine(const sequence::ProgrammeQuestion& q) {
  constexpr double quarters_in_hour = 4.0;
  const auto day = units::hours((q.calendar.hours.to - q.calendar.hours.from) / quarters_in_hour);
  return q.waits.after_chlorine.value < day;
}

// With all that may have to be made good.
std::int64_t worked_slots(const schedule::Problem& problem, const sequence::Lost& lost) {
  std::int64_t slots = 0;
  const schedule::Units& units = problem.units;
  for (std::size_t s = 0; s < units.sections.size(); ++s) {
    if (std::ranges::find(lost.sections, units.sections[s]) != lost.sections.end())
      slots += units.rework->slots[s];
  }
  if (problem.anchor.reclean) slots += problem.anchor.reclean->slots;
  for (const schedule::Task& task : problem.chain) {
    if (task.kind != schedule::Kind::unattended) slots += task.slots;
  }
  for (const auto& coat : problem.units.slots) {
    for (const Slot unit : coat) slots += unit;
  }
  return slots;
}

void close_before(season::Candidate& candidate, Slot until, std::optional<std::size_t> only) {
  auto& calendars = candidate.problem.calendars;
  for (std::size_t c = 0; c < calendars.size(); ++c) {
    if (only && *only != c) continue;
    const auto end =
        std::min(calendars[c].size(), static_cast<std::size_t>(std::max<Slot>(0, until)));
    std::fill_n(calendars[c].begin(), end, char{0});
  }
}

Slot slot_of(const sequence::Posed& posed, dates::Moment moment) {
  Slot low = 0;
  Slot high = posed.problem().horizon;
  while (low < high) {
    const Slot middle = low + (high - low) / 2;
    if (posed.moment(middle) < moment) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

// Of work that goes on as planned.
std::optional<dates::Moment> end_of_facts(const sequence::Posed& posed) {
  const auto& facts = posed.problem().facts;
  if (!facts) return {};
  Slot end = facts->now;
  const auto look_at = [&](const auto& all) {
    for (const auto& done : all) end = std::max(end, done.end);
  };
  look_at(facts->tasks);
  look_at(facts->units);
  look_at(facts->reworks);
  look_at(facts->recleans);
  return posed.moment(std::min(end, posed.problem().horizon));
}

}  // namespace

int season_days(const SeasonQuestion& question, dates::Date start) {
  constexpr std::size_t shorter = 150;
  constexpr std::size_t half = 15;  // days that a job may keep its crew on average
  constexpr std::size_t most = 500;
  const std::size_t crews = std::max<std::size_t>(1, question.crews.size());
  int begun = 0;
  for (const SeasonJob& job : question.jobs)
    begun = std::max(begun, sequence::days_in_hand(start, job.past));
  return begun + static_cast<int>(std::min(most, shorter + half * (question.jobs.size() / crews)));
}

PosedJob::PosedJob(const SeasonQuestion& question,
                   const RateBook& rates,
                   const Circumstances& now,
                   std::size_t job,
                   std::size_t crew,
                   const SeasonChange& change)
    : j_(question.jobs[job]),
      weather_(now.weather),
      change_(change),
      days_(season_days(question, *now.start)) {
  const SeasonCrew& who = question.crews[crew];
  job_ = on_crew(j_, who, *now.start, change);
  Circumstances circumstances = now;
  circumstances.explain = false;
  circumstances.reasons = false;
  circumstances.past = j_.past;
  plan_ = make_plan(job_, rates, circumstances);
  hour_ = who.hour ? who.hour->minor()
                   : rates.labour.hour.minor() * std::llround(job_.crew.people.value);
  if (plan_.stopped()) {
    why_not_ = "stopped";
    return;
  }
  if (plan_.quantities.cut.sections.empty()) {
    why_not_ = "no-dates";
    return;
  }
  question_.emplace(question_of(job_, rates, circumstances, plan_));
  if (question_->past) {
    question_.emplace(sequence::frozen(*question_));
  } else if (acid_may_meet_chlorine(*question_)) {
    question_->waits.after_chlorine.value = units::days(1);
  }
  // As `replan` makes it good where the job alone has no dates without.
  if (question_->past)
    lost_ = change.make_good ? sequence::at_stake(*question_) : plan_.programme.lost;
  const sequence::Posed posed = this->posed();
  busy_until_ = end_of_facts(posed);
  if (posed.after_coats().filled) {
    why_not_ = "filled";
    return;
  }
  made_ = candidate(posed);
}

sequence::Posed PosedJob::posed() const {
  const weather::Record none;
  return {*question_, weather_ == nullptr ? none : *weather_, days_, lost_};
}

// What the plan's weather left is lost in another year's, and is made good there.
sequence::Posed PosedJob::under(const weather::Record& record) const {
  sequence::Posed posed(*question_, record, days_, lost_);
  if (!question_->past || schedule::has_programme(posed.problem())) return posed;
  return {*question_, record, days_, sequence::at_stake(*question_)};
}

std::shared_ptr<const season::Candidate> PosedJob::candidate(const sequence::Posed& posed) const {
  auto made = std::make_shared<season::Candidate>();
  made->problem = posed.problem();
  made->problem.finish = {};  // nobody looks at it
  made->ready = posed.vacuumed_before();
  const sequence::AfterCoats after = posed.after_coats();
  made->after = {0, after.unmask, after.refit, after.cured};
  const dates::Date start = question_->start;
  const Slot horizon = made->problem.horizon;
  made->time_of.reserve(static_cast<std::size_t>(horizon));
  made->full.reserve(static_cast<std::size_t>(horizon));
  for (Slot slot = 0; slot < horizon; ++slot) {
    made->time_of.push_back(posed.moment(slot).quarter());
    made->full.push_back(static_cast<std::int32_t>((posed.full(slot).date() - start).count()));
  }
  if (j_.materials && !change_.any_materials) {
    close_before(
        *made, slot_of(posed, dates::Moment(*j_.materials, 0)), made->problem.units.calendar);
  }
  const std::int64_t slots = worked_slots(made->problem, lost_) + after.unmask + after.refit;
  constexpr std::int64_t slots_in_hour = 4;
  made->cost = (hour_ * slots + slots_in_hour / 2) / slots_in_hour;
  return made;
}

PosedSeason::PosedSeason(const SeasonQuestion& question,
                         const RateBook& rates,
                         const Circumstances& now)
    : q_(question),
      rates_(rates),
      now_(now),
      busy_(question.crews.size()),
      made_good_(question.jobs.size()) {
  pose_all();
  problem_.crews = q_.crews.size();
  for (std::size_t j = 0; j < q_.jobs.size(); ++j) {
    season::Job job;
    job.name = q_.jobs[j].name;
    job.weight = q_.jobs[j].priority;
    if (q_.jobs[j].promised)
      job.promised = static_cast<std::int32_t>((*q_.jobs[j].promised - *now_.start).count());
    std::shared_ptr<const PosedJob> before;
    for (std::size_t c = 0; c < q_.crews.size(); ++c) {
      const auto& posed = posed_[j][c];
      const bool can = posed && posed->why_not().empty();
      const bool same = can && posed == before && !busy_[c] && !busy_[c - 1];
      job.by_crew.push_back(!can ? nullptr : same ? job.by_crew.back() : candidate(c, *posed));
      before = posed;
    }
    problem_.jobs.push_back(std::move(job));
  }
  add_travel();
}

// Crews that say the same share what is posed.
void PosedSeason::pose_all() {
  const auto same = [](const SeasonCrew& a, const SeasonCrew& b) {
    return a.people == b.people && a.painters == b.painters && a.hours == b.hours &&
           a.working == b.working && a.closed == b.closed && a.from == b.from &&
           a.until == b.until && a.hour == b.hour;
  };
  std::vector<std::size_t> like(q_.crews.size());
  for (std::size_t c = 0; c < like.size(); ++c) {
    like[c] = c;
    for (std::size_t earlier = c; earlier-- > 0;) {
      if (same(q_.crews[earlier], q_.crews[c])) like[c] = earlier;
    }
  }
  posed_.resize(q_.jobs.size());
  bool bound = false;
  // With a log the time until now is over for everybody.
  for (const SeasonJob& job : q_.jobs) {
    if (!job.past) continue;
    for (auto& busy : busy_) busy = std::max(busy, std::optional(job.past->now));
  }
  for (std::size_t j = 0; j < q_.jobs.size(); ++j) {
    posed_[j].resize(q_.crews.size());
    for (std::size_t c = 0; c < q_.crews.size(); ++c) {
      if (q_.jobs[j].crew && *q_.jobs[j].crew != c) continue;
      posed_[j][c] = posed_[j][like[c]];
      if (!posed_[j][c]) posed_[j][c] = std::make_shared<const PosedJob>(q_, rates_, now_, j, c);
      if (!q_.jobs[j].past || !posed_[j][c]->why_not().empty()) continue;
      busy_[c] = std::max(busy_[c], posed_[j][c]->busy_until());
    }
    bound = bound || q_.jobs[j].crew;
  }
  if (bound) return;
  for (const std::size_t c : like) problem_.alike.push_back(static_cast<int>(c));
}

bool PosedSeason::make_good(std::size_t j) {
  if (!q_.jobs[j].past || made_good_[j] != 0) return false;
  for (std::size_t c = 0; c < q_.crews.size(); ++c) {
    if (!posed_[j][c] || !posed_[j][c]->why_not().empty()) continue;
    made_good_[j] = 1;
    posed_[j][c] =
        std::make_shared<const PosedJob>(q_, rates_, now_, j, c, SeasonChange{.make_good = true});
    problem_.jobs[j].by_crew[c] = candidate(c, *posed_[j][c]);
  }
  return made_good_[j] != 0;
}

// Work that is going on, and the time until now, are no longer to be had.
std::shared_ptr<const season::Candidate> PosedSeason::candidate(std::size_t crew,
                                                                const PosedJob& posed) const {
  if (!busy_[crew]) return posed.candidate();
  return from_when_free(crew, posed.candidate(), posed.posed());
}

std::shared_ptr<const season::Candidate> PosedSeason::candidate(
    std::size_t crew, const PosedJob& posed, const sequence::Posed& under) const {
  return from_when_free(crew, posed.candidate(under), under);
}

std::shared_ptr<const season::Candidate> PosedSeason::from_when_free(
    std::size_t crew,
    std::shared_ptr<const season::Candidate> made,
    const sequence::Posed& under) const {
  if (!busy_[crew]) return made;
  auto cut = std::make_shared<season::Candidate>(*made);
  close_before(*cut, slot_of(under, *busy_[crew]), std::nullopt);
  return cut;
}

// Leaving a place takes the day's clean-up, coming to the next the way.
void PosedSeason::add_travel() {
  const std::int32_t leaving = quarters(rates_.productivity.daily_set_up.value);
  const std::size_t n = q_.jobs.size();
  problem_.travel.assign(n, std::vector<std::int32_t>(n, leaving + quarters(q_.travel.value)));
  for (const SeasonTravel& way : q_.between)
    problem_.travel[way.from][way.to] = problem_.travel[way.to][way.from] =
        leaving + quarters(way.time);
}

}  // namespace basinwright::job
