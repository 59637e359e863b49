#include "range.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <string_view>
#include <vector>

#include "coats.hpp"
#include "take_off_notes.hpp"

namespace basinwright::job {
namespace {

using units::Area;

constexpr std::string_view rule =
    "every length out by the tolerance the same way: to first order twice it on an area";

// One end of the range: every length too short, or too long.
struct End {
  std::string_view name;
  std::string_view formula;
  double sign;
};
constexpr End low_end{"low", "max(0, measured * (1 - tolerance)^2 + named)", -1.0};
constexpr End high_end{"high", "measured * (1 + tolerance)^2 + named", 1.0};

Sourced<units::Fraction> tolerance_of(const Job& job, const Body& body, const std::string& place) {
  if (!body.tape_tolerance_given) return job.tape_tolerance;
  return {body.pool.tape_tolerance, {sources::Kind::given, "", place}};
}

Area body_end(const Job& job, const Plan& plan, std::size_t b, const End& end) {
  const double stretch = 1.0 + end.sign * job.bodies[b].pool.tape_tolerance.share();
  const BodyResult& body = plan.take_off.bodies[b];
  return std::max(Area(), body.take_off.painted_area * (stretch * stretch) + body.adjusted);
}

Area end_of(const Job& job, Plan& plan, const End& end) {
  Area sum;
  std::vector<std::string> keys;
  std::vector<Area> areas;
  for (std::size_t b = 0; b < job.bodies.size(); ++b) {
    const BodyResult& body = plan.take_off.bodies[b];
    areas.push_back(body_end(job, plan, b, end));
    keys.push_back(fmt::format("{}painted_area_{}_m2", keys_of_body(job, b), end.name));
    sum += areas.back();
    const std::string measured = measured_key(job, b);
    const std::string place = job.bodies[b].pointer + "/tape_tolerance";
    plan.trace.note(keys.back(),
                    areas.back(),
                    end.formula,
                    {{"measured", body.take_off.painted_area, trace::From{measured}},
                     {"tolerance", tolerance_of(job, job.bodies[b], place)},
                     {"named", body.adjusted, {sources::Kind::given, "", job.bodies[b].pointer}}},
                    rule);
  }
  if (job.bodies.size() > 1) {
    std::vector<std::string> names;
    std::string formula;
    for (std::size_t b = 0; b < areas.size(); ++b) {
      names.push_back(fmt::format("body_{}", b + 1));
      formula += (b == 0 ? "" : " + ") + names.back();
    }
    std::vector<trace::Operand> operands;
    for (std::size_t b = 0; b < areas.size(); ++b) {
      operands.emplace_back(names[b], areas[b], trace::From{keys[b]});
    }
    plan.trace.note_all(
        fmt::format("takeoff.painted_area_{}_m2", end.name), sum, formula, operands);
  }
  return sum;
}

// Kits of all coats for an area, section by section where sections are painted from kits of their
// own; recorded at `key`, the area at `from`.
std::int64_t kits_for(const Job& job, Plan& plan, Area area, std::string_view end) {
  const auto cover = plan.system.expected_cover();
  const int coats = coats_of(job, plan.system);
  std::vector<Area> sections{plan.take_off.painted};
  const bool apart = !plan.quantities.cut.names.empty();
  if (apart) sections = plan.quantities.cut.sections;
  const double share = area / plan.take_off.painted;
  std::int64_t kits = 0;
  std::string formula;
  std::vector<std::string> names;
  for (const Area section : sections) {
    kits += coverage::whole_kits(section * share, cover.value);
    names.push_back(apart ? fmt::format("section_{}", names.size() + 1) : "painted");
    formula +=
        (formula.empty() ? "ceil(" : " + ceil(") + names.back() + " * area / painted / cover)";
  }
  if (!apart) formula = "ceil(area / cover)";
  kits *= coats;
  const std::string from = fmt::format("takeoff.painted_area_{}_m2", end);
  std::vector<std::string> origins;
  for (std::size_t i = 0; i < sections.size(); ++i) {
    origins.push_back(fmt::format("takeoff.parts.{}.painted_area_m2", i));
  }
  std::vector<trace::Operand> operands{
      {"coats",
       static_cast<double>(coats),
       job.coating.coats ? sources::Source{sources::Kind::given, "", "/coating/coats"}
                         : plan.system.least_coats.source},
      {"area", area, trace::From{end.empty() ? std::string_view("takeoff.painted_area_m2") : from}},
      {"cover", cover}};
  for (std::size_t i = 0; apart && i < sections.size(); ++i) {
    operands.emplace_back(names[i], sections[i], trace::From{origins[i]});
  }
  if (apart) {
    operands.emplace_back("painted", plan.take_off.painted, trace::From{"takeoff.painted_area_m2"});
  }
  plan.trace.note_all(fmt::format("takeoff.kits{}{}", end.empty() ? "" : "_", end),
                      static_cast<double>(kits),
                      "coats * (" + formula + ")",
                      operands);
  return kits;
}

}  // namespace

PaintedRange painted_range(const Job& job, Plan& plan) {
  for (const Body& body : job.bodies) {
    if (!body.tape_tolerance_given) plan.trace.use("pool.tape_tolerance", job.tape_tolerance);
  }
  PaintedRange range;
  range.coats = coats_of(job, plan.system);
  range.low = end_of(job, plan, low_end);
  range.high = end_of(job, plan, high_end);
  range.kits_low = kits_for(job, plan, range.low, "low");
  range.kits = kits_for(job, plan, plan.take_off.painted, "");
  range.kits_high = kits_for(job, plan, range.high, "high");
  return range;
}

}  // namespace basinwright::job
