#include "subjects.hpp"

#include <variant>
#include <vector>

#include "basinwright/purchase/packs.hpp"
#include "basinwright/readers/read.hpp"
#include "basinwright/schedule/solve.hpp"
#include "basinwright/shell/take_off.hpp"
#include "schedule/reference_row.hpp"

namespace basinwright::reference {
namespace {

Json take_off_json(const shell::TakeOff& t) {
  return {{"plan_area_m2", t.plan_area.si()},
          {"perimeter_m", t.perimeter.si()},
          {"floor_area_m2", t.floor_area.si()},
          {"wall_area_m2", t.wall_area.si()},
          {"tread_area_m2", t.tread_area.si()},
          {"riser_area_m2", t.riser_area.si()},
          {"cove_length_m", t.cove_length.si()},
          {"cove_area_change_m2", t.cove_area_change.si()},
          {"cove_true_angle_area_change_m2", t.cove_true_angle_area_change.si()},
          {"cove_true_angle_volume_change_m3", t.cove_true_angle_volume_change.si()},
          {"floor_plan_at_toe_m2", t.floor_plan_at_toe.si()},
          {"painted_area_m2", t.painted_area.si()},
          {"water_volume_before_cove_m3", t.water_volume_before_cove.si()},
          {"water_volume_m3", t.water_volume.si()}};
}

template <class Q>
Json plain(const std::vector<Q>& values) {
  Json out = Json::array();
  for (const Q& v : values) out.push_back(v.si());
  return out;
}

Json sections_json(const shell::Pool& pool, const Json& wanted) {
  std::vector<units::Length> cuts;
  for (const Json& x : wanted.at("cuts_x")) cuts.push_back(units::Length::from_si(x.get<double>()));
  const auto cover = units::Area::from_si(wanted.at("kit_coverage_m2").get<double>());
  const auto boundaries = shell::kit_boundaries(pool, cover);
  Json out = wanted;
  out["areas_deep_to_shallow"] = plain(shell::section_areas(pool, cuts).deep_to_shallow);
  out["kit_boundaries_x"] = plain(boundaries);
  out["kits"] = boundaries.size() + 1;
  return out;
}

purchase::Pack pack_of(const Json& p) {
  purchase::Pack pack;
  pack.id = p.at("id").get<std::string>();
  pack.size = p.at("ml").get<std::int64_t>();
  pack.price = money::Money::of_minor(p.at("cents").get<std::int64_t>());
  if (!p.at("max").is_null()) pack.stock = p.at("max").get<std::int64_t>();
  pack.batch = p.value("batch", "");
  return pack;
}

Json counts_json(const std::vector<purchase::Choice>& choices,
                 const std::vector<purchase::Pack>& packs) {
  Json out = Json::object();
  for (const auto& c : choices)
    out[packs.at(c.pack).id] = out.value(packs.at(c.pack).id, std::int64_t{0}) + c.count;
  return out;
}

}  // namespace

Json shells(const Json& row) {
  diagnostics::Problems problems;
  const auto pool = readers::read_pool({"pool", row.at("pool").dump()}, problems);
  if (!pool) return {{"refused", refused_codes(row)}};
  trace::Trace off;
  const auto result = shell::take_off(*pool, off);
  Json out{{"expected", take_off_json(std::get<shell::Measured>(result).take_off)}};
  if (row.contains("sections")) out["sections"] = sections_json(*pool, row.at("sections"));
  return out;
}

Json refused_codes(const Json& row) {
  diagnostics::Problems problems;
  const auto pool = readers::read_pool({"pool", row.at("pool").dump()}, problems);
  Json codes = Json::array();
  if (pool) return codes;
  for (const auto& d : problems.all()) codes.push_back(d.code);
  return codes;
}

Json packs(const Json& row) {
  std::vector<purchase::Pack> packs;
  for (const Json& p : row.at("packs")) packs.push_back(pack_of(p));
  const Json& need = row.at("required_ml");
  purchase::Request request;
  request.needs = need.is_array() ? need.get<std::vector<std::int64_t>>()
                                  : std::vector{need.get<std::int64_t>()};
  request.apart = row.at("mode") == "per_coat";
  request.one_batch = row.at("same_batch").get<bool>();
  const auto basket = purchase::cheapest(request, packs);
  if (!basket) return {{"status", "infeasible"}};
  Json out{{"status", "optimal"},
           {"cost_cents", basket->cost.minor()},
           {"volume_ml", basket->size},
           {"packs", basket->packs},
           {"counts", counts_json(basket->choices, packs)},
           {"batch", basket->batch}};
  for (const auto& one : basket->by_need) out["per_coat"].push_back(counts_json(one, packs));
  return out;
}

Json schedules(const Json& row) {
  const auto read = schedule::reference::read_row(row);
  const auto solved = schedule::solve(read.problem);
  const auto* answer = std::get_if<schedule::Answer>(&solved);
  if (answer == nullptr) return {{"status", "infeasible"}};
  if (!schedule::verify(read.problem, *answer).empty()) return {{"status", "broken"}};
  return {{"status", "optimal"},
          {"refill_slot", answer->objective.finish},
          {"split_coats", answer->objective.splits},
          {"reworks", answer->objective.reworks},
          {"labour_cents", answer->objective.cost}};
}

}  // namespace basinwright::reference
