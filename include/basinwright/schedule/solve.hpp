// The earliest programme under its constraints, exactly; and a check that shares no code with it.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::schedule {

/// Why there is no programme: the first part that no start reaches.
struct Infeasible {
  enum class Part { chain, unit, finish, unsaid };
  Part part = Part::chain;
  std::size_t index = 0;  ///< Task or coat.
  std::size_t section = 0;
  bool rule_conflict = false;  ///< True: no weather would help (a unit longer than any window).
  Slot earliest_anchor = 0;    ///< Where a unit is the reason: the anchor's earliest end.
  std::string why;             ///< In slots and names; the trade's words are the caller's.
};

/// Whether it is found out what is in the way of a programme; else that stays unsaid.
enum class Blame { asked, none };

/// The lexicographic optimum (finish, splits, reworks, cost, slack, empty), proven. Of equals the
/// one in which the tasks of the chain up to `emptied_by` come last, in the chain's order, and then
/// all others first, in the order chain, then units. Label setting over slots; the proof stands in
/// docs/method.md "Programme".
[[nodiscard]] std::variant<Answer, Infeasible> solve(const Problem& problem,
                                                     Blame blame = Blame::asked);

/// Whether there is any programme at all: less work than `solve`, since none is priced and nothing
/// is blamed.
[[nodiscard]] bool has_programme(const Problem& problem);

/// The same, and what is in the way of one.
[[nodiscard]] std::optional<Infeasible> what_prevents(const Problem& problem,
                                                      Blame blame = Blame::asked);

/// Every rule of `problem` that `answer` breaks, in words; empty when it holds.
[[nodiscard]] std::vector<std::string> verify(const Problem& problem, const Answer& answer);

}  // namespace basinwright::schedule
