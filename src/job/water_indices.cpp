#include "water_indices.hpp"

#include <array>
#include <string>
#include <utility>

namespace basinwright::job {
namespace {

using chemistry::IndexMethod;

struct Method {
  const char* code;
  IndexMethod method;
  bool stabiliser_out = false;
};
constexpr std::array<Method, 4> methods{
    {{"table", IndexMethod::regulation_table},
     {"table-corrected", IndexMethod::regulation_table, true},
     {"equations", IndexMethod::standard_equations},
     {"equations-corrected", IndexMethod::corrected_equations}}};

std::string key_of(const std::string& water, std::string method) {
  for (char& c : method) c = c == '-' ? '_' : c;
  return "quantities.saturation." + water + "." + method;
}

void add_all(WaterPlan& plan,
             const std::string& name,
             const chemistry::Water& water,
             trace::Trace& trace) {
  for (const Method& method : methods) {
    chemistry::Water seen = water;
    if (method.stabiliser_out) seen.alkalinity = chemistry::carbonate_alkalinity(water);
    // The salts of the water are the same, however its alkalinity is looked at.
    if (!seen.dissolved_solids) seen.dissolved_solids = chemistry::dissolved_solids_of(water);
    const auto index =
        chemistry::saturation_index(seen, method.method, key_of(name, method.code), trace);
    IndexLine line{name, method.code, {}, {}};
    if (const auto* unfit = std::get_if<chemistry::Unfit>(&index)) line.reason = unfit->reason;
    if (const auto* found = std::get_if<chemistry::SaturationIndex>(&index))
      line.value = found->value;
    plan.indices.push_back(std::move(line));
  }
}

}  // namespace

void add_indices(WaterPlan& plan, const IndexQuestion& q) {
  const WaterFigures& now = q.job.refill.analysis;
  if (now.ph && now.alkalinity && now.hardness) add_all(plan, "fill", q.fill, q.trace);
  chemistry::Water wanted = q.target;
  const auto& warmth = q.job.refill.targets.temperature;
  wanted.temperature =
      warmth ? warmth->value : q.trace.use("refill.targets.temperature", usual_warmth);
  add_all(plan, "target", wanted, q.trace);
}

}  // namespace basinwright::job
