#include "pricing.hpp"

#include <algorithm>

#include "reconstruct.hpp"

namespace basinwright::schedule {
namespace {

// Between the first and the last moment of a window; `never` when it does not end.
Slot room(Slot from, Slot until) {
  return until < endless ? until - std::min(from, until) : never;
}

// The room of a unit, by whichever way it may be reached.
Slot room(const Problem& problem, std::size_t coat) {
  if (coat == 0) {
    const bool bound = problem.anchor.limit && !problem.chain.empty();
    return bound ? room(problem.anchor.dry, *problem.anchor.limit) : never;
  }
  const Recoat& window = problem.units.recoat[coat - 1];
  const auto& rework = problem.units.rework;
  return std::max(room(window.min, window.max), rework ? room(rework->dry, rework->max) : 0);
}

// No programme keeps more slack; nothing when no window is left to be kept.
std::optional<Slot> slack_bound(const Problem& problem, const Standing& standing) {
  Slot least = never;
  for (const SectionStanding& section : standing.sections) {
    for (std::size_t coat = section.done; coat < problem.units.coats.size(); ++coat) {
      least = std::min(least, room(problem, coat));
    }
  }
  return least < never ? std::optional(least) : std::nullopt;
}

}  // namespace

Pricing::Pricing(const Priced& priced, Slot slack)
    : look_(priced.problem,
            priced.standing,
            last_end(priced.best_finish, priced.finish),
            priced.best_finish,
            slack) {
  if (look_.starts.least_finish() > priced.finish) {
    return;
  }
  look_.starts.limit(priced.finish);
  endings_.emplace(look_.setting, look_.starts, look_.reach, Question{priced.finish});
  endings_->run();
  if (endings_->paintings().empty()) {
    return;
  }
  goals_.emplace(look_.setting, endings_->paintings(), look_.reach.earliest_end);
  chain_.emplace(look_.setting, look_.reach, *goals_, priced.finish);
}

std::vector<Booking> Pricing::bookings() {
  return first_bookings(look_.setting, look_.starts, *goals_, *chain_, *endings_);
}

Slackest slackest(const Priced& priced) {
  Slackest result{std::make_unique<Pricing>(priced, 0),
                  slack_bound(priced.problem, priced.standing)};
  if (!result.slack) {
    return result;
  }
  const Tally price = result.pricing->best().without_empty();
  Slot kept = 0;
  Slot most = *result.slack;
  while (kept < most) {
    const Slot slack = kept + (most - kept + 1) / 2;
    auto pricing = std::make_unique<Pricing>(priced, slack);
    if (pricing->best().without_empty() == price) {
      result.pricing = std::move(pricing);
      kept = slack;
    } else {
      most = slack - 1;
    }
  }
  result.slack = kept;
  return result;
}

}  // namespace basinwright::schedule
