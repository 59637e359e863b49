#include "basinwright/quote/rules.hpp"

#include <cmath>

namespace basinwright::quote {

double Basis::of(Per per) const {
  switch (per) {
    case Per::job:
      return 1.0;
    case Per::day:
      return days;
    case Per::person:
      return people;
    case Per::painter:
      return painters;
    case Per::painted_area:
      return painted;
    case Per::abraded_area:
      return abraded;
    case Per::etched_area:
      return etched;
    case Per::edge:
      return edge;
    case Per::coat_session:
      return coat_sessions;
    case Per::kit:
      return kits;
    case Per::tread_area:
      return treads;
    case Per::step_edge:
      return step_edge;
  }
  return 0.0;
}

std::vector<Counted> count(const std::vector<Rule>& rules, const Basis& basis) {
  // A hair over a whole piece (a take-off's last digit) must not buy another.
  constexpr double slack = 1e-9;
  std::vector<Counted> out;
  out.reserve(rules.size());
  for (const Rule& rule : rules) {
    const auto pieces =
        static_cast<std::int64_t>(std::ceil(rule.rate * basis.of(rule.per) - slack));
    if (pieces > 0) out.push_back({rule, pieces, rule.price * pieces});
  }
  return out;
}

}  // namespace basinwright::quote
