// Every number of the job sheet can be explained: the page's JSON is walked, and each number, sum
// of money, day and time must have a step at its path with that value.
#include <cmath>
#include <filesystem>
#include <functional>
#include <nlohmann/json.hpp>
#include <set>

#include "basinwright/dates/minute.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/report/pages.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"
#include "support/plans.hpp"
#include "weather/making.hpp"

namespace {

using namespace basinwright;
using Json = nlohmann::json;

/// What needs no explanation, each with the reason.
bool is_excepted(const std::string& path) {
  const auto ends = [&](std::string_view end) { return path.ends_with(end); };
  // The program's version and its JSON's; the day that somebody wrote on the quotation.
  if (path.starts_with("basinwright.") || path == "job.quoted_on") return true;
  // Each default is a constant with its source in the same row.
  if (path.starts_with("defaults_used.")) return true;
  // The rule stands in the same row: one a job, one a painter.
  if (path.starts_with("instruments.")) return true;
  // Names and ordinal numbers: section, coat, kit, part of a dose.
  return ends(".section") || ends(".number") || ends(".kit") || ends(".part") || ends(".of");
}

bool is_decimal(const std::string& text) {
  return !text.empty() && text.find_first_not_of("0123456789.-") == std::string::npos &&
         text.find_first_of("0123456789") != std::string::npos &&
         std::count(text.begin(), text.end(), '-') <= (text.front() == '-' ? 1 : 0);
}

std::optional<double> seconds_of(const std::string& text) {
  if (const auto day = dates::parse_date(text))
    return static_cast<double>(day->time_since_epoch().count()) * 86400.0;
  if (const auto minute = dates::parse_minute(text))
    return static_cast<double>(minute->minutes()) * 60.0;
  return {};
}

bool near(double a, double b) {
  return std::abs(a - b) <= 1e-9 * std::max({1e-6, std::abs(a), std::abs(b)});
}

/// The units that the page's keys name, as so many of them in one of the SI.
bool is_same_number(double number, const trace::Amount& amount) {
  std::vector<double> units{1.0};
  if (amount.dimensions == units::Volume::dimensions) units.push_back(1000.0);
  if (amount.dimensions == units::Flow::dimensions) units.push_back(60000.0);
  if (amount.dimensions == units::Duration::dimensions)
    units.insert(units.end(), {1.0 / 60.0, 1.0 / 3600.0, 1.0 / 86400.0});
  if (amount.is_share) units.push_back(100.0);
  const double shift = amount.is_point ? 273.15 : 0.0;
  return std::ranges::any_of(units,
                             [&](double unit) { return near(number, amount.si * unit - shift); });
}

bool is_same(const Json& value, const trace::Amount& amount) {
  if (value.is_number()) return is_same_number(value.get<double>(), amount);
  const std::string text = value.get<std::string>();
  // The page shows minutes.
  if (const auto seconds = seconds_of(text))
    return amount.is_point && amount.dimensions == units::Duration::dimensions &&
           std::abs(*seconds - amount.si) < 60.0;
  return near(std::stod(text), amount.si);
}

struct Walk {
  int numbers = 0;
  std::vector<std::string> missing;
  std::vector<std::string> other;
};

void walk(const Json& value, const std::string& path, const trace::Trace& trace, Walk& out) {
  if (value.is_structured()) {
    for (const auto& [key, member] : value.items())
      walk(member, path.empty() ? key : path + "." + key, trace, out);
    return;
  }
  const bool text = value.is_string() && (is_decimal(value.get<std::string>()) ||
                                          seconds_of(value.get<std::string>()).has_value());
  if ((!value.is_number() && !text) || is_excepted(path)) return;
  ++out.numbers;
  const trace::Step* step = trace.find(path);
  if (step == nullptr) {
    out.missing.push_back(path);
  } else if (!is_same(value, step->value)) {
    out.other.push_back(path + ": " + value.dump() + ", explained as " +
                        std::to_string(step->value.si));
  }
}

std::string lines(const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& one : all) out += "\n  " + one;
  return out;
}

Walk walked(const job::Job& job, const job::RateBook& rates, const job::Plan& plan) {
  Walk out;
  walk(Json::parse(render::json(report::jobsheet({job, rates, plan}))), "", plan.trace, out);
  INFO("not to be explained:" << lines(out.missing));
  INFO("explained as another number:" << lines(out.other));
  CHECK(out.missing.empty());
  CHECK(out.other.empty());
  return out;
}

Walk walked(const std::string& text, const job::RateBook& rates) {
  return walked(test::job_of(text), rates, test::plan_of(text, rates, true));
}

job::RateBook rates_beside(const std::string& job) {
  const std::string own = job.substr(0, job.size() - 5) + ".rates.json";
  return std::filesystem::exists(places::source() + "/" + own)
             ? test::rates_of(test::file_text(own))
             : test::demonstration();
}

}  // namespace

TEST_CASE("every number on the job sheet of every example can be explained") {
  int examples = 0;
  for (const auto& entry : std::filesystem::directory_iterator(places::source() + "/examples")) {
    const std::string name = "examples/" + entry.path().filename().string();
    if (!name.ends_with(".json") || name.ends_with(".rates.json")) continue;
    INFO(name);
    CHECK(walked(test::file_text(name), rates_beside(name)).numbers > 500);
    ++examples;
  }
  CHECK(examples >= 4);
}

// Algae, primer, filler, mortar, sections by name, a sump that was read, measured water and terms.
TEST_CASE("every number on a job sheet with everything can be explained") {
  const auto walk = walked(R"({"job": {"start": "2027-05-03", "quoted_on": "2027-04-20"},
    "site": {"groundwater": {"below_rim": 1}, "sewer": {"ph_min": 6.5, "sump_ph": 2.3},
             "mean_temperatures": {"april": 12, "may": 16, "june": 20}},
    "pool": [
      {"outline": {"kind": "rectangle", "length": 12, "width": 6},
       "floor": {"kind": "breaks", "points": [[3, 1.1], [8, 2.3]]},
       "features": [{"kind": "straight_steps", "wall": 3, "from": 1, "width": 2,
                     "treads": [0.3, 0.3], "depths": [0.4, 0.8]}],
       "rim_to_paint": 0.15, "cove_radius": 0.15, "wall_thickness": 0.25, "slab_thickness": 0.2,
       "tape_tolerance": "0.5 %", "adjust": [{"name": "niche", "area": -1}]},
      {"outline": {"kind": "circle", "diameter": 3}, "floor": {"kind": "constant", "depth": 1.2}}],
    "surfaces": [{"where": "floor", "coating": "none"},
                 {"coating": "epoxy", "acetone_test": "untouched", "bare_share": "15 %",
                  "loose_share": "5 %"}],
    "condition": {"lead_test": "clear", "algae": "heavy", "drummy_area": 1,
                  "cracks": [{"length": 4, "width": 0.002}], "divots": [{"depth": 0.02, "area": 0.1}]},
    "coating": {"system": "Demo Two-Pack", "coats": 3,
                "sections": [{"name": "deep", "to": 8}, {"name": "shallow", "to": 0}]},
    "crew": {"people": 5, "painters": 4},
    "refill": {"flow": "30 L/min", "water_price": "2.10",
               "analysis": {"ph": 7.9, "alkalinity": 40, "hardness": 120}},
    "terms": {"deposit": "30 %", "discount": "2 %", "rounding": "5.00"}})",
                           test::demonstration());
  CHECK(walk.numbers > 700);
}

// Weather made by hand; the dates of a fine month.
TEST_CASE("every number of a programme under weather can be explained") {
  weather::Record record = weather_making::fine_days("2027-05-01", 25);
  const std::string text = test::file_text("examples/plain-pool.json");
  const auto rates = test::demonstration();
  const auto job = test::job_of(text);
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  now.explain = true;
  now.weather = &record;
  CHECK(walked(job, rates, job::make_plan(job, rates, now)).numbers > 500);
}

TEST_CASE("what a stopped job prints can be explained") {
  const auto walk = walked(R"({"pool": {"outline": {"kind": "rectangle", "length": 9, "width": 4.5},
    "floor": {"kind": "constant", "depth": 1.5}},
    "surfaces": [{"acetone_test": "softened"}],
    "condition": {"cracks": [{"width": 0.002, "length": 3, "moving": true}]}})",
                           test::demonstration());
  CHECK(walk.numbers > 20);
}

// What can be asked for stands under the titles of the page that has the numbers.
TEST_CASE("the list of what can be explained has the titles of the job sheet") {
  const auto rates = test::demonstration();
  const std::string text = test::file_text("examples/plain-pool.json");
  const auto job = test::job_of(text);
  const auto plan = test::plan_of(text, rates, true);
  const report::Subject subject{job, rates, plan};
  std::set<std::string> titles;
  for (const auto& section : report::jobsheet(subject).sections) titles.insert(section.title);
  const auto list = report::explain(subject, "", {});
  REQUIRE(list);
  const auto& table = std::get<document::Table>(list->sections.back().blocks.back());
  std::string group;
  std::set<std::string> groups;
  for (const document::Row& row : table.rows) {
    const std::string& name = row.cells.front().text;
    if (row.role == document::Role::heading) {
      INFO(name);
      CHECK(titles.contains(name));
      group.clear();
      continue;
    }
    const std::string first = name.substr(0, name.find('.'));
    if (group.empty()) CHECK(groups.insert(first).second);
    group = group.empty() ? first : group;
    CHECK(group == first);
  }
  CHECK(groups.size() > 10);
}
