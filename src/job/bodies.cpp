#include "bodies.hpp"

#include <algorithm>
#include <stdexcept>

namespace basinwright::job {
namespace {

using shell::TakeOff;

void add(TakeOff& sum, const TakeOff& one) {
  sum.plan_area += one.plan_area;
  sum.perimeter += one.perimeter;
  sum.floor_area += one.floor_area;
  sum.wall_area += one.wall_area;
  sum.tread_area += one.tread_area;
  sum.riser_area += one.riser_area;
  sum.cove_length += one.cove_length;
  sum.cove_area_change += one.cove_area_change;
  sum.cove_true_angle_area_change += one.cove_true_angle_area_change;
  sum.cove_true_angle_volume_change += one.cove_true_angle_volume_change;
  sum.floor_plan_at_toe += one.floor_plan_at_toe;
  sum.painted_area += one.painted_area;
  sum.water_volume_before_cove += one.water_volume_before_cove;
  sum.water_volume += one.water_volume;
}

}  // namespace

TakeOffResult take_off_all(const Job& job, trace::Trace& trace) {
  if (job.bodies.empty()) throw std::logic_error("a job without a body of water");
  TakeOffResult result;
  for (const Body& body : job.bodies) {
    auto measured = shell::take_off(body.pool, trace);
    const auto* ok = std::get_if<shell::Measured>(&measured);
    if (ok == nullptr) throw std::logic_error("a pool whose geometry was not checked");
    BodyResult one{body.pool.name, ok->take_off, {}};
    for (const Adjustment& a : body.adjust) one.adjusted += a.area;
    add(result.total, one.take_off);
    result.adjusted += one.adjusted;
    const bool first = result.bodies.empty();
    result.total.deepest = std::max(result.total.deepest, one.take_off.deepest);
    result.total.shallowest = first ? one.take_off.shallowest
                                    : std::min(result.total.shallowest, one.take_off.shallowest);
    result.bodies.push_back(std::move(one));
  }
  result.painted = result.total.painted_area + result.adjusted;
  return result;
}

}  // namespace basinwright::job
