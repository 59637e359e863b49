#include "take_off_notes.hpp"

#include <fmt/format.h>
#include <string_view>
#include <vector>

#include "notes.hpp"

namespace basinwright::job {
namespace {

constexpr sources::Source given_pool{sources::Kind::given, "", "/pool"};

// One figure of every body, added up.
template <class Get>
void note_sum(const Job& job,
              const TakeOffResult& result,
              std::string_view key,
              Get get,
              trace::Trace& trace) {
  using Q = decltype(get(result.bodies.front()));
  std::vector<Term<Q>> terms;
  Q sum{};
  for (std::size_t b = 0; b < result.bodies.size(); ++b) {
    const Q one = get(result.bodies[b]);
    sum += one;
    terms.push_back({fmt::format("body_{}", b + 1), one, keys_of_body(job, b) + std::string(key)});
  }
  note_terms(trace, "takeoff." + std::string(key), sum, terms);
}

void note_named(const Job& job, const TakeOffResult& result, std::size_t b, trace::Trace& trace) {
  const Body& body = job.bodies[b];
  if (body.adjust.empty()) return;
  const std::string measured = measured_key(job, b);
  std::string formula = "measured";
  std::vector<std::string> names;
  std::vector<std::string> places;
  for (std::size_t i = 0; i < body.adjust.size(); ++i) {
    names.push_back(fmt::format("named_{}", i + 1));
    places.push_back(fmt::format("{}/adjust/{}/area", body.pointer, i));
    formula += " + " + names.back();
  }
  std::vector<trace::Operand> operands{
      {"measured", result.bodies[b].take_off.painted_area, trace::From{measured}}};
  for (std::size_t i = 0; i < body.adjust.size(); ++i) {
    operands.emplace_back(
        names[i], body.adjust[i].area, sources::Source{sources::Kind::given, "", places[i]});
  }
  trace.note_all(
      keys_of_body(job, b) + "painted_area_m2", result.bodies[b].painted(), formula, operands);
}

void note_deepest(const Job& job, const TakeOffResult& result, trace::Trace& trace) {
  std::string formula;
  std::vector<std::string> names;
  std::vector<std::string> from;
  for (std::size_t b = 0; b < result.bodies.size(); ++b) {
    names.push_back(fmt::format("body_{}", b + 1));
    from.push_back(keys_of_body(job, b) + "deepest_m");
    formula += (b == 0 ? "max(" : ", ") + names.back();
  }
  std::vector<trace::Operand> operands;
  for (std::size_t b = 0; b < result.bodies.size(); ++b) {
    operands.emplace_back(names[b], result.bodies[b].take_off.deepest, trace::From{from[b]});
  }
  trace.note_all("takeoff.deepest_m", result.total.deepest, formula + ")", operands);
}

void note_sums(const Job& job, const TakeOffResult& result, trace::Trace& trace) {
  const auto sum = [&](std::string_view key, auto member) {
    note_sum(
        job, result, key, [member](const BodyResult& b) { return b.take_off.*member; }, trace);
  };
  using shell::TakeOff;
  sum("plan_area_m2", &TakeOff::plan_area);
  sum("perimeter_m", &TakeOff::perimeter);
  sum("floor_area_m2", &TakeOff::floor_area);
  sum("wall_area_m2", &TakeOff::wall_area);
  sum("tread_area_m2", &TakeOff::tread_area);
  sum("riser_area_m2", &TakeOff::riser_area);
  sum("step_edge_m", &TakeOff::step_edge);
  sum("cove_length_m", &TakeOff::cove_length);
  sum("cove_area_change_m2", &TakeOff::cove_area_change);
  sum("cove_true_angle_area_change_m2", &TakeOff::cove_true_angle_area_change);
  sum("cove_true_angle_volume_change_m3", &TakeOff::cove_true_angle_volume_change);
  sum("floor_plan_at_toe_m2", &TakeOff::floor_plan_at_toe);
  sum("water_volume_before_cove_m3", &TakeOff::water_volume_before_cove);
  sum("water_volume_m3", &TakeOff::water_volume);
  note_sum(
      job, result, "painted_area_m2", [](const BodyResult& b) { return b.painted(); }, trace);
  note_deepest(job, result, trace);
}

}  // namespace

std::string keys_of_body(const Job& job, std::size_t body) {
  return job.bodies.size() > 1 ? fmt::format("takeoff.bodies.{}.", body) : "takeoff.";
}

std::string measured_key(const Job& job, std::size_t body) {
  const bool adjusted = !job.bodies[body].adjust.empty();
  return keys_of_body(job, body) + (adjusted ? "measured_area_m2" : "painted_area_m2");
}

void note_totals(const Job& job, const TakeOffResult& result, trace::Trace& trace) {
  for (std::size_t b = 0; b < job.bodies.size(); ++b) note_named(job, result, b, trace);
  if (job.bodies.size() > 1) note_sums(job, result, trace);
}

void note_parts(const TakeOffResult& result, trace::Trace& trace) {
  if (!trace.on()) return;
  constexpr sources::Source by_green{
      sources::Kind::published, "green-theorem", "surfaces clipped at the section's ends"};
  for (std::size_t i = 0; i < result.parts.size(); ++i) {
    const SectionPart& part = result.parts[i];
    const shell::Part& m = part.measured;
    trace.note(fmt::format("takeoff.parts.{}.painted_area_m2", i),
               part.painted(),
               "walls + floor + treads + risers + cove_change + named",
               {{"walls", m.walls, by_green},
                {"floor", m.floor, by_green},
                {"treads", m.treads, by_green},
                {"risers", m.risers, by_green},
                {"cove_change", m.cove_change, by_green},
                {"named", part.named.sum(), given_pool}},
               "named areas in proportion to what the section has of their surface");
  }
}

}  // namespace basinwright::job
