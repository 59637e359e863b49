#include "bodies.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

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

// A job with one body and nothing adjusted keeps the take-off's own keys; otherwise each body's
// move aside and the job's are their sums.
std::vector<trace::Trace::Renamed> renames_for(const Job& job, std::size_t index) {
  std::vector<trace::Trace::Renamed> rules;
  const Body& body = job.bodies[index];
  if (job.bodies.size() > 1)
    rules.push_back({"takeoff.", fmt::format("takeoff.bodies.{}.", index)});
  if (job.bodies.size() == 1 && !body.adjust.empty()) {
    rules.push_back({"takeoff.painted_area_m2", "takeoff.measured_area_m2"});
  }
  rules.push_back({"/pool", body.pointer});
  return rules;
}

struct SumKeys {
  std::string_view sum, part;
};

template <class Q>
void note_sum(trace::Trace& trace, const SumKeys& keys, Q sum, const std::vector<Q>& parts) {
  std::vector<std::string> names;
  std::vector<std::string> from;
  std::string formula;
  names.reserve(parts.size());
  from.reserve(parts.size());
  for (std::size_t i = 0; i < parts.size(); ++i) {
    names.push_back(fmt::format("body_{}", i + 1));
    from.push_back(fmt::format("takeoff.bodies.{}.{}", i, keys.part));
    formula += (i == 0 ? "" : " + ") + names.back();
  }
  std::vector<trace::Operand> operands;
  operands.reserve(parts.size());
  for (std::size_t i = 0; i < parts.size(); ++i)
    operands.emplace_back(names[i], parts[i], trace::From{from[i]});
  trace.note_all(fmt::format("takeoff.{}", keys.sum), sum, formula, operands);
}

void note_totals(const Job& job, const TakeOffResult& result, trace::Trace& trace) {
  const bool adjusted =
      std::ranges::any_of(job.bodies, [](const Body& b) { return !b.adjust.empty(); });
  if (job.bodies.size() > 1) {
    std::vector<units::Area> areas;
    std::vector<units::Length> perimeters;
    std::vector<units::Volume> waters;
    areas.reserve(result.bodies.size());
    perimeters.reserve(result.bodies.size());
    waters.reserve(result.bodies.size());
    for (const BodyResult& body : result.bodies) {
      areas.push_back(body.take_off.painted_area);
      perimeters.push_back(body.take_off.perimeter);
      waters.push_back(body.take_off.water_volume);
    }
    const char* measured = adjusted ? "measured_area_m2" : "painted_area_m2";
    note_sum(trace, {measured, "painted_area_m2"}, result.total.painted_area, areas);
    note_sum(trace, {"perimeter_m", "perimeter_m"}, result.total.perimeter, perimeters);
    note_sum(trace, {"water_volume_m3", "water_volume_m3"}, result.total.water_volume, waters);
  }
  if (!adjusted) return;
  trace.note("takeoff.painted_area_m2",
             result.painted,
             "measured + adjusted",
             {{"measured", result.total.painted_area, trace::From{"takeoff.measured_area_m2"}},
              {"adjusted", result.adjusted, {sources::Kind::given, "", "/pool"}}},
             "named areas added and deducted");
}

}  // namespace

TakeOffResult take_off_all(const Job& job, trace::Trace& trace) {
  if (job.bodies.empty()) throw std::logic_error("a job without a body of water");
  TakeOffResult result;
  for (const Body& body : job.bodies) {
    trace::Trace own = trace.on() ? trace::Trace::recording() : trace::Trace();
    auto measured = shell::take_off(body.pool, own);
    trace.absorb(own, renames_for(job, result.bodies.size()));
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
  if (trace.on()) note_totals(job, result, trace);
  return result;
}

}  // namespace basinwright::job
