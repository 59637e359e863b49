#include "basinwright/shell/take_off.hpp"

#include "explain.hpp"
#include "plain.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

void measure_upright(const Survey& survey, TakeOff& t) {
  const Model& model = survey.model;
  const Sums sums = sums_of(survey.surfaces, model.water);
  const double radius = model.cove;
  const double true_change = radius == 0.0 ? 0.0 : radius * true_angle_change(survey.surfaces);
  t.floor_area = area(sums.floor);
  t.wall_area = area(sums.wall);
  t.tread_area = area(sums.tread);
  t.riser_area = area(sums.riser);
  t.step_edge = metres(sums.step_edge);
  t.cove_length = metres(sums.cove_length);
  t.cove_area_change = area(sums.cove_change(radius));
  t.cove_true_angle_area_change = area(true_change);
  t.cove_true_angle_volume_change = volume(radius / 2.0 * true_change);
  t.floor_plan_at_toe = t.plan_area;
  t.water_volume_before_cove = volume(sums.volume);
  t.water_volume = volume(sums.volume + sums.cove_volume_change(radius));
  t.mean_depth = metres(sums.depth_volume / model.plan_area);
}

void measure_leaning(const Survey& survey, TakeOff& t) {
  const LeanSums& sums = survey.lean;
  t.floor_area = area(sums.floor);
  t.wall_area = area(sums.wall);
  t.cove_length = t.perimeter;
  t.floor_plan_at_toe = area(sums.toe);
  t.water_volume_before_cove = volume(sums.volume);
  t.water_volume = volume(sums.volume);
  t.mean_depth = metres(sums.depth_volume / survey.model.plan_area);
}

TakeOff measure(const Survey& survey) {
  TakeOff t;
  t.plan_area = area(survey.model.plan_area);
  t.perimeter = metres(geometry::length(survey.model.outline()));
  t.shallowest = metres(survey.shallowest);
  t.deepest = metres(survey.deepest);
  if (survey.model.lean > 0.0) {
    measure_leaning(survey, t);
  } else {
    measure_upright(survey, t);
  }
  t.painted_area = t.floor_area + t.wall_area + t.tread_area + t.riser_area + t.cove_area_change;
  return t;
}

}  // namespace

std::variant<Measured, std::vector<Fault>> take_off(const Pool& pool, trace::Trace& trace) {
  Findings findings;
  const auto surveyed = survey(pool, findings);
  if (!surveyed) return findings.faults();
  const TakeOff t = measure(*surveyed);
  if (trace.on()) explain(*surveyed, t, trace);
  return Measured{t, findings.warnings()};
}

}  // namespace basinwright::shell
