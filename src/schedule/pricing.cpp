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

// What bookings leave of the window that they keep most tightly, `most` at most. Without facts.
Slot room_left(const Problem& problem, std::vector<Booking> bookings, Slot most) {
  std::stable_sort(bookings.begin(), bookings.end(), [](const Booking& a, const Booking& b) {
    return a.start < b.start;
  });
  std::vector<SectionStanding> before(problem.units.sections.size());
  Slot anchor = 0;
  Slot least = most;
  const auto leave = [&least](Slot max, Slot room) {
    if (max < endless) least = std::min(least, room);
  };
  for (const Booking& b : bookings) {
    SectionStanding& last = before[b.section];
    switch (b.what) {
      case Booking::What::task:
        if (b.index == problem.anchor.task) anchor = b.end;
        continue;
      case Booking::What::reclean:
        anchor = b.end;
        continue;
      case Booking::What::rework:
        last.rework_end = b.end;
        continue;
      case Booking::What::unit:
        break;
    }
    if (b.index == 0) {
      const bool bound = problem.anchor.limit && !problem.chain.empty();
      if (bound) leave(*problem.anchor.limit, anchor + *problem.anchor.limit - b.start);
    } else if (last.rework_end != no_slot) {
      const Slot max = problem.units.rework->max;
      leave(max, last.rework_end + max - b.start);
    } else {
      const Slot max = problem.units.recoat[b.index - 1].max;
      leave(max, max - std::max(b.start - last.start, b.end - last.end));
    }
    last = {b.index + 1, b.start, b.end, no_slot};
  }
  return least;
}

// The most slack above `kept` that leaves a programme of any price, with what prices it; `kept`
// when none does.
Slot most_possible(const Pricing& any, Slot kept, Slot most, std::unique_ptr<Pricing>& last) {
  Slot step = 1;
  bool refused = false;
  while (kept < most) {
    const Slot slack = refused ? kept + (most - kept + 1) / 2 : std::min(most, kept + step);
    auto pricing = std::make_unique<Pricing>(any, slack);
    if (pricing->possible()) {
      kept = slack;
      last = std::move(pricing);
      step *= 2;
    } else {
      most = slack - 1;
      refused = true;
    }
  }
  return kept;
}

}  // namespace

Pricing::Pricing(Priced& priced) : finish_(priced.finish), look_(std::move(priced.look)) {
  end();
}

Pricing::Pricing(const Pricing& other, Slot slack)
    : finish_(other.finish_), look_(std::make_unique<Look>(*other.look_, slack)) {
  end();
}

void Pricing::end() {
  if (look_->starts.least_finish() > finish_) {
    return;
  }
  look_->starts.limit(finish_);
  endings_.emplace(look_->setting, look_->starts, look_->reach, Question{finish_});
  endings_->run();
}

Tally Pricing::best() {
  if (!possible()) {
    return no_tally;
  }
  if (!chain_) {
    goals_.emplace(look_->setting, endings_->paintings(), look_->reach.earliest_end);
    chain_.emplace(look_->setting, look_->reach, *goals_, finish_);
  }
  return chain_->best();
}

std::vector<Booking> Pricing::bookings() {
  return first_bookings(look_->setting, look_->starts, *goals_, *chain_, *endings_);
}

Slackest slackest(Priced& priced) {
  Pricing any(priced);
  Slackest result{any.best(), any.bookings(), slack_bound(priced.problem, priced.standing)};
  if (!result.slack) {
    return result;
  }
  const Tally price = result.price.without_empty();
  Slot most = *result.slack;
  // The bookings found keep what was asked for, and often more: then there is less to look for. Of
  // all that keep so much they come first too, being the first of more than those.
  const auto kept_by = [&](Slot asked) {
    return priced.problem.facts ? asked
                                : std::max(asked, room_left(priced.problem, result.bookings, most));
  };
  Slot kept = kept_by(0);
  const auto at_price = [&](Pricing& pricing, Slot slack) {
    if (pricing.best().without_empty() != price) {
      return false;
    }
    result.price = pricing.best();
    result.bookings = pricing.bookings();
    kept = kept_by(slack);
    return true;
  };
  // Mostly the most slack that leaves any programme leaves a cheapest one.
  std::unique_ptr<Pricing> last;
  most = most_possible(any, kept, most, last);
  if (last && !at_price(*last, most)) {
    --most;
  }
  Slot step = 1;
  bool refused = false;
  while (kept < most) {
    const Slot slack = refused ? kept + (most - kept + 1) / 2 : std::min(most, kept + step);
    Pricing pricing(any, slack);
    if (at_price(pricing, slack)) {
      step *= 2;
    } else {
      most = slack - 1;
      refused = true;
    }
  }
  result.slack = kept;
  return result;
}

}  // namespace basinwright::schedule
