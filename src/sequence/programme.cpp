#include "basinwright/sequence/programme.hpp"

#include "trial.hpp"
#include "weather_facts.hpp"
#include "why_blocked.hpp"

namespace basinwright::sequence {

Programme programme(const ProgrammeQuestion& question) {
  std::optional<weather::Conditions> conditions;
  if (const weather::Record* record = question.weather.record; record && !record->empty()) {
    conditions.emplace(*record, question.weather.rules.shell_lag);
  }
  const weather::Conditions* known = conditions ? &*conditions : nullptr;
  Trial trial = search(question, known, {});
  Programme result;
  if (trial.programme) {
    result = std::move(*trial.programme);
  } else if (!question.reasons) {
    result.blocked_by = std::move(trial.blocked);
  } else {
    result.blocked_by = why_blocked(question, known, std::move(trial.blocked));
  }
  add_weather_basis(question.weather, result);
  return result;
}

}  // namespace basinwright::sequence
