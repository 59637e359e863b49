#include "ground.hpp"

#include <string>
#include <vector>

namespace basinwright::job {
namespace {

using preparation::Ground;
using shell::FlotationVerdict;

Ground as_ground(FlotationVerdict verdict) {
  switch (verdict) {
    case FlotationVerdict::stop:
      return Ground::floats;
    case FlotationVerdict::hold:
      return Ground::close;
    case FlotationVerdict::clear:
      return Ground::clear;
  }
  return Ground::unknown;
}

// The take-off has recorded the pool already: of its steps only the flotation's are new.
std::vector<trace::Trace::Renamed> renames_for(const Job& job, std::size_t index) {
  std::vector<trace::Trace::Renamed> rules;
  if (job.bodies.size() > 1) {
    rules.push_back({"flotation.", "flotation.bodies." + std::to_string(index) + "."});
    rules.push_back({"takeoff.", "takeoff.bodies." + std::to_string(index) + "."});
  }
  rules.push_back({"/pool", job.bodies[index].pointer});
  return rules;
}

}  // namespace

GroundFound ground_of(const Job& job, trace::Trace& trace) {
  GroundFound found;
  if (!job.site.groundwater) return found;
  bool unknown = false;
  for (std::size_t i = 0; i < job.bodies.size(); ++i) {
    trace::Trace own = trace.on() ? trace::Trace::recording() : trace::Trace();
    const auto one = shell::flotation(job.bodies[i].pool, job.site.groundwater->below_rim, own);
    if (!one) {
      unknown = true;
      continue;
    }
    trace.absorb(own, renames_for(job, i));
    if (!found.flotation || one->factor < found.flotation->factor) {
      found.flotation = one;
      found.ground = as_ground(one->verdict);
    }
  }
  // One body that may float is not made safe by another that does not.
  if (unknown && found.ground == Ground::clear) found.ground = Ground::unknown;
  return found;
}

}  // namespace basinwright::job
