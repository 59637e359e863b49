#include "bodies.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

#include "basinwright/job/sections.hpp"
#include "take_off_notes.hpp"

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
  sum.step_edge += one.step_edge;
  sum.cove_length += one.cove_length;
  sum.cove_area_change += one.cove_area_change;
  sum.cove_true_angle_area_change += one.cove_true_angle_area_change;
  sum.cove_true_angle_volume_change += one.cove_true_angle_volume_change;
  sum.floor_plan_at_toe += one.floor_plan_at_toe;
  sum.painted_area += one.painted_area;
  sum.water_volume_before_cove += one.water_volume_before_cove;
  sum.water_volume += one.water_volume;
}

// A job with one body and nothing adjusted keeps the take-off's own keys; otherwise each body's
// move aside and the job's are their sums.
std::vector<trace::Trace::Renamed> renames_for(const Job& job,
                                               const TakeOffResult& so_far,
                                               std::size_t index) {
  std::vector<trace::Trace::Renamed> rules;
  const Body& body = job.bodies[index];
  const std::string prefix = keys_of_body(job, index);
  if (!body.adjust.empty()) {
    rules.push_back({"takeoff.painted_area_m2", prefix + "measured_area_m2"});
  }
  if (job.bodies.size() > 1) rules.push_back({"takeoff.", prefix});
  const auto checked = std::ranges::count_if(
      so_far.bodies, [](const BodyResult& b) { return b.flotation.has_value(); });
  rules.push_back({"flotation.", fmt::format("takeoff.flotation.{}.", checked)});
  rules.push_back({"/pool", body.pointer});
  return rules;
}

// Where nothing is recorded, what the check of its geometry came to will do.
TakeOff taken_off(const Body& body, trace::Trace& own) {
  if (body.taken_off && !own.on()) return *body.taken_off;
  auto measured = shell::take_off(body.pool, own);
  const auto* ok = std::get_if<shell::Measured>(&measured);
  if (ok == nullptr) throw std::logic_error("a pool whose geometry was not checked");
  return ok->take_off;
}

// What one body comes to, recorded under its own keys.
BodyResult body_of(const Job& job, const Body& body, trace::Trace& own) {
  BodyResult one{body.pool.name, taken_off(body, own), named_areas(body).sum(), {}};
  if (job.site.groundwater) {
    one.flotation = shell::flotation(body.pool, job.site.groundwater->below_rim, own);
  }
  return one;
}

}  // namespace

TakeOffResult take_off_all(const Job& job, trace::Trace& trace) {
  if (job.bodies.empty()) throw std::logic_error("a job without a body of water");
  TakeOffResult result;
  for (const Body& body : job.bodies) {
    trace::Trace own = trace.on() ? trace::Trace::recording() : trace::Trace();
    BodyResult one = body_of(job, body, own);
    trace.absorb(own, renames_for(job, result, result.bodies.size()));
    add(result.total, one.take_off);
    result.adjusted += one.adjusted;
    const bool first = result.bodies.empty();
    result.total.deepest = std::max(result.total.deepest, one.take_off.deepest);
    result.total.shallowest = first ? one.take_off.shallowest
                                    : std::min(result.total.shallowest, one.take_off.shallowest);
    result.bodies.push_back(std::move(one));
  }
  result.painted = result.total.painted_area + result.adjusted;
  if (trace.on()) note_totals(job, result, trace);
  return result;
}

}  // namespace basinwright::job
