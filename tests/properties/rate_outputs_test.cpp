// Each value of a full rate book, made larger, changes the parts of the job sheet that it belongs
// to and no other. The table below was written from what each value means (common practice).
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "basinwright/render/json.hpp"
#include "basinwright/report/pages.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using nlohmann::json;
using Names = std::set<std::string>;

// A pool with everything in it: algae, repairs, pebble, bare patches, a named system.
const char* const everything = R"({
  "basinwright": 1, "units": "metric",
  "job": { "start": "2027-05-03" },
  "site": { "mean_temperatures": { "5": "14 C", "6": "16 C", "7": "18 C" } },
  "pool": { "outline": { "kind": "rectangle", "length": "8 m", "width": "4 m" },
            "floor": { "kind": "constant", "depth": "1.5 m" }, "cove_radius": "100 mm" },
  "surfaces": [
    { "where": "floor", "substrate": "pebble", "coating": "epoxy", "acetone_test": "untouched",
      "bare_share": "30 %", "loose_share": "5 %" },
    { "where": "walls", "substrate": "render", "coating": "epoxy", "acetone_test": "untouched",
      "bare_share": "4 %" } ],
  "condition": { "algae": "normal", "lead_test": "clear",
    "cracks": [{ "width": "3 mm", "length": "4 m", "depth": "15 mm" }],
    "divots": [{ "depth": "6 mm", "area": "0.02 m2", "count": 5 },
               { "depth": "14 mm", "area": "0.03 m2", "count": 2 }],
    "drummy_area": "1 m2" },
  "coating": { "system": "Quarry Two-Pack", "coats": 2 } })";

struct Rule {
  std::string prefix;  ///< Of pointers; the longest that fits counts.
  Names must, may = {};
  double factor = 1.15;
};

// What follows from time: dates move, and with them orders, hire and the days that are paid.
// The first days of the new water move with the day it is in.
const Names dated{"mixing",
                  "programme",
                  "purchases",
                  "orders",
                  "hire",
                  "labour",
                  "consumables",
                  "price",
                  "refill"};
const Names bought{"purchases", "orders", "price"};
// More or other mix: other buckets, and other water to be got rid of.
const Names poured{"purchases", "orders", "price", "waste", "cautions", "mixes", "wash_water"};

Names with(Names some, const Names& more) {
  some.insert(more.begin(), more.end());
  return some;
}

std::vector<Rule> of_chemicals() {
  return {// Published ratios and heat go by the strength, and so does the acid in the spent etch.
          // So does what the sump takes at worst, which is bought.
          {"/chemicals/acid/strength",
           {"quantities", "mixes", "wash_water", "purchases"},
           {"cautions", "price"}},
          {"/chemicals/acid/ratio/painted", {"quantities", "mixes", "wash_water"}, poured},
          {"/chemicals/acid/ratio/render", {}, {}},  // All of it is painted or pebble.
          {"/chemicals/acid/bucket", {"mixes"}, {}},
          {"/chemicals/acid/can", {"mixes"}, {}},
          {"/chemicals/acid/rinses", {"wash_water"}, {}},
          {"/chemicals/hypochlorite/rinses", {"wash_water"}, {}},
          {"/chemicals/degreaser/rinses", {"wash_water"}, {}},
          {"/chemicals/bicarbonate/rinses", {"wash_water"}, {}},
          {"/chemicals/rinse", {"wash_water"}, {}},
          // What the sump takes; the surface goes by its own rule, and no water was analysed.
          {"/chemicals/bicarbonate/strength",
           {"quantities", "wash_water", "purchases"},
           {"price"},
           0.9},
          {"/chemicals/acid/rate", {"quantities", "waste"}, poured},
          {"/chemicals/acid/wall_share", {}, {}},  // Walls and floor are told apart here.
          {"/chemicals/acid/pebble_factor",
           {"quantities", "waste", "labour", "programme"},
           with(poured, dated)},
          {"/chemicals/hypochlorite", {"quantities"}, poured},
          {"/chemicals/degreaser", {"quantities"}, poured},
          {"/chemicals/bicarbonate/area_per_kg", {"quantities"}, poured},
          {"/chemicals/bicarbonate/mix", {"quantities"}, poured, 0.9}};
}

std::vector<Rule> of_coating() {
  return {
      {"/coating_systems/Quarry Two-Pack/kit", {"quantities", "purchases"}, with(dated, {"waste"})},
      {"/coating_systems/Quarry Two-Pack/cover",
       {"quantities"},
       with(dated, {"waste", "takeoff"}),
       1.1},
      {"/coating_systems/Quarry Two-Pack/recoat", {}, dated},
      {"/coating_systems/Quarry Two-Pack/primer/kit",
       {"quantities", "purchases"},
       with(dated, {"waste"})},
      {"/coating_systems/Quarry Two-Pack/primer/cover", {"quantities"}, with(dated, {"waste"})},
      {"/coating_systems/Quarry Two-Pack/primer/window", {}, dated},
      {"/coating_systems/Quarry Two-Pack/cure", {"programme"}, dated},
      {"/coating_systems/Quarry Two-Pack/quiet_start", {"programme"}, dated},
      {"/coating_systems/Quarry Two-Pack/induction", {}, {"mixing"}},
      {"/coating_systems/Quarry Two-Pack/pot_life", {}, {"mixing"}},
      // A thinned coat, other temperatures and a strong etch are not in this job.
      {"/coating_systems/Quarry Two-Pack/", {}, {}}};
}

const std::vector<Rule>& rules() {
  static const std::vector<Rule> all{
      {"/tax/other_rates/0/rate", {}, {"price"}},  // Nothing, made larger, is nothing.
      {"/tax", {"price"}},
      {"/packs/Quarry Two-Pack", {}, bought},
      {"/packs", {"purchases", "orders"}, bought},
      {"/packs/Quarry Two-Pack thinner", {}, {}},
      // No water was analysed: only stabiliser is wanted.
      {"/packs/soda ash", {}, {}},
      {"/packs/calcium chloride", {}, {}},
      {"/packs/salt", {}, {}},
      {"/suppliers", {"purchases", "orders"}, {}, 2.0},
      {"/productivity/strip", {}, {}},
      {"/productivity/coating_test", {}, {}},
      {"/productivity/drain_pump", {"programme"}, dated},
      {"/productivity", {"labour", "price"}, dated},
      // A batch of filler is what one person works in before it sets.
      {"/productivity/repair", {"labour", "price"}, with(dated, {"quantities"})},
      {"/labour/hour", {"labour", "price"}},
      {"/labour/weekday", {}, {}},        // Nobody works on those days here.
      {"/labour/outside_hours", {}, {}},  // Nor before or after the crew's hours.
      {"/hire", {"hire", "price"}},
      {"/consumables", {"consumables"}, {"price"}, 1.3},
      {"/protection", {"protection", "price"}, {}, 2.0},
      {"/options", {}, {}},  // The client's quotation shows them, not the job sheet.
      {"/disposal", {"price"}},
      {"/overheads/call_out", {}, {}},  // The wages are far above it.
      {"/overheads", {"price"}},
      {"/waits", {}, dated},
      {"/waits/filler_cure", {"quantities"}, dated},  // Said beside the filler.
      {"/waits/dry", {"programme"}, dated},
      {"/waits/start_up", {"programme"}, dated},
      {"/waits/delivered_before", {"purchases", "orders"}, {}, 2.0},
      // The findings here are well inside one side of each of these limits.
      {"/thresholds", {}, {}},
      {"/thresholds/crack_worked", {"labour", "price"}, with(dated, {"route", "quantities"})},
      {"/thresholds/crack_opening", {}, {"quantities", "purchases", "price"}},
      {"/thresholds/render_thickness", {"quantities"}, bought},
      // The mortar's wait is said on the route and beside the mortar.
      {"/thresholds/cement_age", {"programme", "route", "quantities"}, dated},
      {"/thresholds/filler_work", {}, {"quantities"}},
      {"/thresholds/filler_batch", {}, {"quantities"}},
      {"/thresholds/mortar_density", {"quantities"}, bought},
      {"/thresholds/abraded_film", {"quantities", "waste"}, {}},
      {"/thresholds/film_density", {"quantities", "waste"}, {}},
      {"/order_confidence", {"orders"}, bought}};
  return all;
}

const std::vector<Rule>& all_rules() {
  static const std::vector<Rule> all = [] {
    std::vector<Rule> joined = rules();
    for (Rule& rule : of_chemicals()) joined.push_back(std::move(rule));
    for (Rule& rule : of_coating()) joined.push_back(std::move(rule));
    return joined;
  }();
  return all;
}

const Rule* rule_for(const std::string& pointer) {
  const Rule* best = nullptr;
  for (const Rule& rule : all_rules()) {
    const bool fits = pointer.starts_with(rule.prefix);
    if (fits && (best == nullptr || rule.prefix.size() > best->prefix.size())) best = &rule;
  }
  return best;
}

// Numbers and measures, larger by a factor; nothing for names and choices.
json larger(const json& value, double factor) {
  if (value.is_number_float()) return value.get<double>() * factor;
  if (value.is_number_integer()) return value.get<int>() + 1;
  if (!value.is_string()) return {};
  static const std::regex measure(R"(([0-9]+)(\.[0-9]+)?( .*)?)");
  std::smatch parts;
  const std::string text = value;
  if (!std::regex_match(text, parts, measure)) return {};
  char number[32];
  const bool money = parts[2].matched && !parts[3].matched;
  std::snprintf(number, sizeof number, money ? "%.2f" : "%.4g", std::stod(text) * factor);
  return number + parts[3].str();
}

void add_pointers(const json& node, const std::string& pointer, std::vector<std::string>& out) {
  if (!node.is_structured()) {
    out.push_back(pointer);
    return;
  }
  for (const auto& [key, value] : node.items()) add_pointers(value, pointer + "/" + key, out);
}

json sheet_of(const json& book) {
  const job::Job job = test::job_of(everything);
  const job::RateBook rates = test::rates_of(book.dump());
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  const job::Plan plan = job::make_plan(job, rates, now);
  return json::parse(render::json(report::jobsheet({job, rates, plan})));
}

Names differences(const json& one, const json& other) {
  Names names;
  for (const auto& [key, value] : one.items()) {
    if (!other.contains(key) || other[key] != value) names.insert(key);
  }
  return names;
}

}  // namespace

TEST_CASE("each value of a rate book changes what it should and nothing else") {
  const json book = json::parse(test::file_text("examples/l-shape-us.rates.json"));
  const json before = sheet_of(book);
  std::vector<std::string> pointers;
  add_pointers(book, "", pointers);
  int tried = 0;
  const std::size_t step = places::some_of(5) == 5 ? 1 : 5;
  for (std::size_t p = 0; p < pointers.size(); p += step) {
    const std::string& pointer = pointers[p];
    if (pointer == "/basinwright_rates") continue;
    const json::json_pointer at(pointer);
    const Rule* rule = rule_for(pointer);
    const json value = larger(book.at(at), rule == nullptr ? 1.0 : rule->factor);
    if (value.is_null()) continue;
    INFO(pointer << " = " << value);
    REQUIRE(rule != nullptr);
    json changed = book;
    changed[at] = value;
    const Names moved = differences(before, sheet_of(changed));
    for (const std::string& name : rule->must) {
      INFO("does not change " << name);
      CHECK(moved.contains(name));
    }
    for (const std::string& name : moved) {
      INFO("changes " << name);
      CHECK((rule->must.contains(name) || rule->may.contains(name)));
    }
    ++tried;
  }
  CHECK(tried * static_cast<int>(step) > 100);
}
