#include "conflict.hpp"

#include <algorithm>

namespace basinwright::season {
namespace {

/// One order of the two: `a` is left, then `b` is come to.
std::array<Concession, 2> ways_of(const Problem& problem,
                                  std::size_t a,
                                  const Presence& at_a,
                                  std::size_t b,
                                  const Presence& at_b) {
  const std::int32_t travel = problem.travel[a][b];
  // From the least time that moves b to the last that moves a, in the middle.
  const std::int32_t least = std::max(at_b.from - travel, at_a.from);
  const std::int32_t most = at_a.to - 1;
  const std::int32_t m = least + (most - least) / 2;
  return {{{a, {at_a.date, -all_day, m}}, {b, {at_b.date, m + 1 + travel, all_day}}}};
}

// The earliest date on which both are there and do not fit.
std::optional<std::pair<Presence, Presence>> clash(const Problem& problem,
                                                   std::size_t a,
                                                   const Booked& first,
                                                   std::size_t b,
                                                   const Booked& second) {
  auto x = first.at.begin();
  auto y = second.at.begin();
  while (x != first.at.end() && y != second.at.end()) {
    if (x->date < y->date) {
      ++x;
    } else if (y->date < x->date) {
      ++y;
    } else if (!fits(problem, a, *x, b, *y)) {
      return std::pair{*x, *y};
    } else {
      ++x;
      ++y;
    }
  }
  return {};
}

}  // namespace

bool fits(const Problem& problem,
          std::size_t first,
          const Presence& at_first,
          std::size_t second,
          const Presence& at_second) {
  return at_first.to + problem.travel[first][second] <= at_second.from ||
         at_second.to + problem.travel[second][first] <= at_first.from;
}

std::optional<Conflict> first_conflict(const Problem& problem,
                                       const std::vector<SinglePtr>& singles) {
  std::optional<Conflict> found;
  std::int32_t date = 0;
  for (std::size_t a = 0; a < singles.size(); ++a) {
    for (std::size_t b = a + 1; b < singles.size(); ++b) {
      const auto& first = singles[a]->booked;
      const auto& second = singles[b]->booked;
      if (!first || !second || first->crew != second->crew) continue;
      const auto at = clash(problem, a, *first, b, *second);
      if (!at || (found && date <= at->first.date)) continue;
      date = at->first.date;
      const auto forward = ways_of(problem, a, at->first, b, at->second);
      const auto backward = ways_of(problem, b, at->second, a, at->first);
      found = Conflict{first->crew, {a, b}, {forward[0], forward[1], backward[0], backward[1]}};
    }
  }
  return found;
}

}  // namespace basinwright::season
