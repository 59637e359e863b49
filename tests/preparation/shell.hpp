// A small shell to ask the route about: 60 m2 of walls, 40 m2 of floor, sound tested epoxy.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/preparation/route.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

namespace shell_of {

namespace prep = basinwright::preparation;
namespace units = basinwright::units;

inline prep::Region part(std::string where, double square_metres) {
  prep::Region region;
  region.where = std::move(where);
  region.area = units::square_metres(square_metres);
  region.is_wall = region.where == "walls";
  region.acetone_test = prep::AcetoneTest::untouched;
  return region;
}

inline prep::Question sound() {
  prep::Question q;
  q.regions = {part("walls", 60), part("floor", 40)};
  q.condition.lead_test = prep::LeadTest::clear;
  q.condition.leak_test = prep::LeakTest::holds;
  q.condition.ground = prep::Ground::clear;
  return q;
}

inline prep::Route route(const prep::Question& q) {
  basinwright::trace::Trace off;
  return prep::route(q, off);
}

inline std::vector<std::string> tasks(const prep::Route& r) {
  std::vector<std::string> out;
  for (const prep::Step& step : r.steps) out.push_back(step.task);
  return out;
}

inline const prep::Step& step(const prep::Route& r, std::string_view task) {
  const auto it = std::ranges::find(r.steps, task, &prep::Step::task);
  if (it == r.steps.end()) throw std::runtime_error("no step " + std::string(task));
  return *it;
}

inline std::vector<std::string> holds(const prep::Route& r, std::string_view task) {
  std::vector<std::string> out;
  for (const prep::HoldPoint& hold : step(r, task).holds) out.push_back(hold.code);
  return out;
}

inline double metres2(units::Area area) {
  return area.in(units::square_metres);
}
inline double litres(units::Volume volume) {
  return volume.in(units::litres);
}

}  // namespace shell_of
