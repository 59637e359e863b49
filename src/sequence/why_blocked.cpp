#include "why_blocked.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "instance.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Slot;

constexpr int saturday = 5;
constexpr int quarters_earlier = 4;

Constraint constraint_of(weather::Rule rule) {
  switch (rule) {
    case weather::Rule::air_min:
    case weather::Rule::air_max:
      return Constraint::air;
    case weather::Rule::shell_min:
    case weather::Rule::shell_max:
      return Constraint::shell;
    case weather::Rule::dew_margin:
      return Constraint::dew_margin;
    case weather::Rule::humidity:
      return Constraint::humidity;
    case weather::Rule::rain:
    case weather::Rule::dry_before:
      return Constraint::rain;
    case weather::Rule::wind:
      return Constraint::wind;
  }
  return Constraint::rain;
}

// Those that can stand in the way at all: without weather its gates close nothing.
bool can_matter(const ProgrammeQuestion& q, const weather::Conditions* known, Constraint c) {
  switch (c) {
    case Constraint::painting_hours:
    case Constraint::recoat_window:
    case Constraint::etch_validity:
      return true;
    case Constraint::wind:
      return known != nullptr && q.system.limits.wind_max.has_value();
    default:
      return known != nullptr;
  }
}

// The deletion filter: what can be left out with still no dates is no part of the reason.
std::vector<Constraint> irreducible(const ProgrammeQuestion& q, const weather::Conditions* known) {
  if (!fits(q, known, Dropped::all())) return {};
  Dropped dropped;
  std::vector<Constraint> kept;
  for (const Constraint c : all_constraints) {
    if (!can_matter(q, known, c)) continue;
    if (fits(q, known, dropped.with(c))) {
      kept.push_back(c);
    } else {
      dropped = dropped.with(c);
    }
  }
  return kept;
}

double in_si(const weather::Figure& figure) {
  return std::visit(
      [](const auto& value) {
        using T = std::decay_t<decltype(value)>;
        if constexpr (std::is_same_v<T, std::monostate>) {
          return 0.0;
        } else if constexpr (std::is_same_v<T, units::Fraction>) {
          return value.share();
        } else {
          return value.si();
        }
      },
      figure);
}

// The painting hour that came closest to being open, for each weather rule of the reason.
std::vector<NearMiss> nearest(const ProgrammeQuestion& q,
                              const weather::Conditions& conditions,
                              const std::vector<Constraint>& together) {
  const Instance instance(q, {q.most_days, &conditions});
  const schedule::Calendar& base = instance.painting_calendar();
  const schedule::Calendar& open = instance.problem().calendars[instance.problem().units.calendar];
  std::vector<NearMiss> best(all_constraints.size());
  std::vector<double> miss(all_constraints.size(), std::numeric_limits<double>::infinity());
  for (std::size_t s = 0; s < base.size(); ++s) {
    const bool same_hour = s > 0 && base[s - 1] != 0 &&
                           instance.outdoors().hour(static_cast<Slot>(s)) ==
                               instance.outdoors().hour(static_cast<Slot>(s) - 1);
    if (base[s] == 0 || open[s] != 0 || same_hour) continue;
    const auto failures = instance.outdoors().coat().failures(static_cast<Slot>(s));
    if (failures.size() != 1 || failures.front().unknown) continue;
    const auto c = static_cast<std::size_t>(constraint_of(*failures.front().closed_by));
    const double over = std::abs(in_si(failures.front().measured) - in_si(failures.front().limit));
    if (over >= miss[c]) continue;
    miss[c] = over;
    best[c] = {instance.timeline().moment(static_cast<Slot>(s)), failures.front()};
  }
  std::vector<NearMiss> out;
  for (const Constraint c : together) {
    const auto i = static_cast<std::size_t>(c);
    if (std::isfinite(miss[i])) out.push_back(best[i]);
  }
  return out;
}

void begin_earlier(dates::Hours& hours) {
  hours.from = std::max(0, hours.from - quarters_earlier);
}

// The question with one thing changed; nothing when it is so already.
std::optional<ProgrammeQuestion> changed(const ProgrammeQuestion& q, WayOut::How how) {
  ProgrammeQuestion other = q;
  switch (how) {
    case WayOut::How::saturday_work:
      if (q.calendar.working[saturday]) return {};
      other.calendar.working[saturday] = true;
      return other;
    case WayOut::How::one_more_painter: {
      int painters = 0;
      for (Work& work : other.work) {
        if (is_paint(work.task)) painters = ++work.people;
      }
      for (Work& work : other.work) {
        if (work.task == "vacuum") work.people = std::max(work.people, painters);
      }
      return other;
    }
    case WayOut::How::hour_earlier:
      begin_earlier(other.calendar.hours);
      begin_earlier(other.calendar.painting);
      for (auto& hours : other.calendar.painting_by_month) {
        if (hours) begin_earlier(*hours);
      }
      return other;
    case WayOut::How::first_light:
      if (!q.weather.position || !q.weather.clock_offset) return {};
      other.calendar.from_first_light.fill(true);
      if (other.calendar.from_first_light == q.calendar.from_first_light) return {};
      return other;
  }
  return {};
}

std::vector<WayOut> ways_out(const ProgrammeQuestion& q, const weather::Conditions* conditions) {
  using How = WayOut::How;
  std::vector<WayOut> ways;
  for (const How how :
       {How::saturday_work, How::one_more_painter, How::hour_earlier, How::first_light}) {
    const auto other = changed(q, how);
    if (!other) continue;
    const Trial trial = search(*other, conditions, {});
    if (trial.programme) ways.push_back({how, trial.programme->refill_done});
  }
  std::ranges::stable_sort(ways, {}, &WayOut::refill_done);
  return ways;
}

}  // namespace

Blocked why_blocked(const ProgrammeQuestion& question,
                    const weather::Conditions* conditions,
                    Trial trial) {
  Blocked stuck = std::move(trial.blocked);
  const weather::Conditions* blamed = conditions;
  if (conditions != nullptr) {
    if (!trial.calendar_asked) trial.by_calendar = what_blocks(question, nullptr, {});
    if (trial.by_calendar) {
      // A conflict of the rules themselves comes before the weather.
      stuck = *trial.by_calendar;
      blamed = nullptr;
    } else {
      stuck.why = Blocked::Why::weather;
    }
  }
  if (!question.reasons) {
    // A line names the task, and the weather's part where it is the weather's; a page says the
    // rest.
    if (blamed != nullptr && stuck.why == Blocked::Why::weather)
      stuck.together = irreducible(question, blamed);
    return stuck;
  }
  if (stuck.why != Blocked::Why::longer_than_any_window) {
    stuck.together = irreducible(question, blamed);
    for (const Constraint c : stuck.together) {
      if (fits(question, blamed, Dropped().with(c))) stuck.alone.push_back(c);
    }
    if (blamed != nullptr) stuck.nearest = nearest(question, *blamed, stuck.together);
  }
  stuck.ways_out = ways_out(question, conditions);
  return stuck;
}

}  // namespace basinwright::sequence
