#include "basinwright/weather/outlook.hpp"

#include <algorithm>
#include <cmath>

#include "judge.hpp"

namespace basinwright::weather {
namespace {

std::int32_t steps_up(units::Duration time, int per_hour) {
  return static_cast<std::int32_t>(std::ceil(time.in(units::hours)*per_hour - 1e-6));
}

// Past the covered span what nobody says cannot close.
bool closes(const Judged& judged, const State& state) {
  return judged.known ? !judged.holds : state.covered;
}

}  // namespace

Outlook::Outlook(const Conditions& conditions, const Gate& gate, Steps steps)
    : conditions_(&conditions), gate_(gate), steps_(steps) {
  const std::int32_t air = steps_up(gate.air_after, steps.per_hour);
  const std::int32_t cure = steps_up(gate.first_cure, steps.per_hour);
  const std::int32_t before = steps_up(gate.dry_before, steps.per_hour);
  if (gate.air_min) ask(Rule::air_min, 0, air);
  if (gate.air_max) ask(Rule::air_max, 0, air);
  if (gate.shell_min) ask(Rule::shell_min, 0, 0);
  if (gate.shell_max) ask(Rule::shell_max, 0, 0);
  if (gate.dew_margin) ask(Rule::dew_margin, 0, cure);
  if (gate.humidity_max) ask(Rule::humidity, 0, cure);
  if (gate.no_rain) ask(Rule::rain, 0, steps_up(gate.rain_free_after, steps.per_hour));
  if (before > 0) ask(Rule::dry_before, -before, -1);
  if (gate.wind_max) ask(Rule::wind, 0, 0);
}

void Outlook::ask(Rule rule, std::int32_t from, std::int32_t to) {
  spans_.push_back({rule, from, to});
}

HourNumber Outlook::hour_at(std::int32_t step) const {
  const auto size = static_cast<std::int32_t>(steps_.hours.size());
  if (step < 0) {
    return steps_.hours.front() - (-step + steps_.per_hour - 1) / steps_.per_hour;
  }
  if (step >= size) return steps_.hours.back() + 1 + (step - size) / steps_.per_hour;
  return steps_.hours[static_cast<std::size_t>(step)];
}

std::vector<char> Outlook::broken(Rule rule, std::int32_t from, std::int32_t to) const {
  std::vector<char> out(static_cast<std::size_t>(to - from), 0);
  std::optional<HourNumber> judged;
  char now = 0;
  for (std::int32_t s = from; s < to; ++s) {
    const HourNumber hour = hour_at(s);
    if (judged != hour) {
      const State& state = conditions_->at(hour);
      now = closes(judge(rule, gate_, state), state) ? 1 : 0;
      judged = hour;
    }
    out[static_cast<std::size_t>(s - from)] = now;
  }
  return out;
}

void Outlook::close(std::vector<char>& open, const Span& span) const {
  const auto size = static_cast<std::int32_t>(open.size());
  const std::vector<char> bad = broken(span.rule, span.from, size + span.to);
  // Steps until the next broken one, from the end back.
  std::int32_t next = static_cast<std::int32_t>(bad.size());
  const std::int32_t length = span.to - span.from;
  for (std::int32_t s = static_cast<std::int32_t>(bad.size()) - 1; s >= 0; --s) {
    if (bad[static_cast<std::size_t>(s)] != 0) next = s;
    if (s < size && next - s <= length && next < static_cast<std::int32_t>(bad.size()))
      open[static_cast<std::size_t>(s)] = 0;
  }
}

std::vector<char> Outlook::calendar() const {
  std::vector<char> open(steps_.hours.size(), 1);
  if (open.empty()) return open;
  for (const Span& span : spans_) close(open, span);
  return open;
}

std::int32_t Outlook::first_broken(const Span& span, std::int32_t step) const {
  for (std::int32_t s = step + span.from; s <= step + span.to; ++s) {
    const State& state = conditions_->at(hour_at(s));
    if (closes(judge(span.rule, gate_, state), state)) return s;
  }
  return step + span.to + 1;
}

Verdict Outlook::failure(Rule rule, HourNumber hour) const {
  const State& state = conditions_->at(hour);
  const Judged judged = judge(rule, gate_, state);
  Verdict v;
  v.closed_by = rule;
  v.unknown = !judged.known;
  v.hour = hour;
  v.measured = judged.measured;
  v.limit = judged.limit;
  v.shell_estimated = state.shell_estimated;
  v.rests_on = judged.quality;
  return v;
}

Quality Outlook::rests_on(std::int32_t from, std::int32_t to) const {
  Quality worst = Quality::observed;
  for (const Span& span : spans_) {
    std::optional<HourNumber> judged;
    for (std::int32_t s = from + span.from; s < to + span.to; ++s) {
      const HourNumber hour = hour_at(s);
      if (judged == hour) continue;
      judged = hour;
      worst = std::min(worst, judge(span.rule, gate_, conditions_->at(hour)).quality);
    }
  }
  return worst;
}

Verdict Outlook::verdict(std::int32_t step) const {
  for (const Span& span : spans_) {
    const std::int32_t s = first_broken(span, step);
    if (s <= step + span.to) return failure(span.rule, hour_at(s));
  }
  Verdict open;
  open.rests_on = rests_on(step, step + 1);
  return open;
}

std::vector<Verdict> Outlook::failures(std::int32_t step) const {
  std::vector<Verdict> out;
  for (const Span& span : spans_) {
    const std::int32_t s = first_broken(span, step);
    if (s <= step + span.to) out.push_back(failure(span.rule, hour_at(s)));
  }
  return out;
}

}  // namespace basinwright::weather
