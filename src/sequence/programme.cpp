#include "basinwright/sequence/programme.hpp"

#include <array>
#include <variant>

#include "basinwright/schedule/solve.hpp"
#include "bookings.hpp"
#include "instance.hpp"

namespace basinwright::sequence {
namespace {

Blocked blocked_of(const Instance& instance, const schedule::Infeasible& reason) {
  Blocked blocked;
  const auto& problem = instance.problem();
  if (reason.part == schedule::Infeasible::Part::chain && reason.index < problem.chain.size()) {
    blocked.task = problem.chain[reason.index].name;
    blocked.section = instance.chain()[reason.index].section;
  } else if (reason.part == schedule::Infeasible::Part::unit &&
             reason.index < problem.units.coats.size()) {
    blocked.task = problem.units.coats[reason.index];
    if (problem.units.sections.size() > 1) blocked.section = problem.units.sections[reason.section];
  } else {
    blocked.task = "fill";
  }
  blocked.why =
      reason.rule_conflict ? Blocked::Why::longer_than_any_window : Blocked::Why::no_window_fits;
  return blocked;
}

}  // namespace

Programme programme(const ProgrammeQuestion& question) {
  // Most jobs are over in weeks; one that waits for cement or a long cure is looked at for longer.
  constexpr std::array horizons{120, 240, 500};
  Programme result;
  for (const int days : horizons) {
    const Instance instance(question, days);
    const auto solved = schedule::solve(instance.problem());
    if (const auto* answer = std::get_if<schedule::Answer>(&solved)) {
      return bookings_of(question, instance, *answer);
    }
    result.blocked_by = blocked_of(instance, std::get<schedule::Infeasible>(solved));
    if (std::get<schedule::Infeasible>(solved).rule_conflict) break;
  }
  return result;
}

}  // namespace basinwright::sequence
