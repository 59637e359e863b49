#include "basinwright/sequence/programme.hpp"

#include "basinwright/sequence/posed.hpp"
#include "basinwright/sequence/read_weather.hpp"
#include "look_ahead.hpp"
#include "lost.hpp"
#include "trial.hpp"
#include "weather_facts.hpp"
#include "why_blocked.hpp"

namespace basinwright::sequence {
namespace {

// With what was lost made good, where there is no programme without it.
Trial search_rest(const ProgrammeQuestion& q, const weather::Conditions* known, Lost& lost) {
  Trial trial = search(q, known, {});
  if (trial.programme || !q.past) return trial;
  Again bare;
  bare.offers.no_reserve = bare.lost.reserve = true;
  for (const Again& again : {bare, what_is_lost(q, known), all_at_stake(q)}) {
    if (!again.lost.anything() && !again.lost.reserve) continue;
    Trial made_good = search(q, known, {}, again.offers);
    if (!made_good.programme) continue;
    lost = again.lost;
    return made_good;
  }
  return trial;
}

Programme programme_of(const ProgrammeQuestion& question) {
  std::optional<weather::Conditions> conditions;
  const weather::Conditions* known = nullptr;
  if (const weather::Record* record = question.weather.record; record && !record->empty()) {
    if (question.weather.read == nullptr)
      conditions.emplace(*record, question.weather.rules.shell_lag);
    known = conditions ? &*conditions : &question.weather.read->conditions();
  }
  Lost lost;
  Trial trial = search_rest(question, known, lost);
  Programme result;
  if (trial.programme) {
    result = std::move(*trial.programme);
  } else {
    result.blocked_by = why_blocked(question, known, std::move(trial));
  }
  result.lost = std::move(lost);
  if (question.past && question.past->look_ahead)
    result.chances = look_ahead(question, known, result);
  add_weather_basis(question.weather, result);
  return result;
}

}  // namespace

Programme programme(const ProgrammeQuestion& question) {
  return question.past ? programme_of(frozen(question)) : programme_of(question);
}

}  // namespace basinwright::sequence
