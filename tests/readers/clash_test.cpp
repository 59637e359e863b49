// Facts that clash: refused, and both places are shown. Which facts exclude each other is common
// practice of the trade and plain arithmetic.
#include <fmt/format.h>

#include "reading.hpp"

using namespace reading;

namespace {

// The one problem of a file: its pointer, and whether the other place is where `other` points.
void clashes(const json& file, bool is_job, const std::string& pointer, const std::string& other) {
  const std::string text = file.dump(1);
  Problems problems;
  const bool read = is_job ? job(text, problems).has_value() : rates(text, problems).has_value();
  INFO(told(problems));
  CHECK_FALSE(read);
  REQUIRE(problems.size() == 1);
  const Diagnostic& d = problems.all()[0];
  CHECK(d.code == "facts-clash");
  CHECK(d.pointer == pointer);
  const auto here = readers::place_of({"f", text}, pointer);
  CHECK(d.at.line == here.line);
  CHECK(d.at.column == here.column);
  if (other.empty()) {
    CHECK(d.also.empty());
    return;
  }
  const auto there = readers::place_of({"f", text}, other);
  CHECK(there.line > 0);
  REQUIRE(d.also.size() == 1);
  CHECK(d.also[0].line == there.line);
  CHECK(d.also[0].column == there.column);
}

void job_clashes(const std::string& key,
                 const std::string& value,
                 const std::string& pointer,
                 const std::string& other) {
  json file = plain_job();
  file[key] = json::parse(value);
  INFO(key << " " << value);
  clashes(file, true, pointer, other);
}

void rates_clash(const std::string& key,
                 const std::string& value,
                 const std::string& pointer,
                 const std::string& other) {
  json file = plain_rates();
  file[key] = json::parse(value);
  INFO(key << " " << value);
  clashes(file, false, pointer, other);
}

Found job_with(const std::string& key, const std::string& value) {
  json file = plain_job();
  file[key] = json::parse(value);
  return problems_of_job(file);
}

}  // namespace

TEST_CASE("a cost under two rates of tax clashes with itself") {
  rates_clash("tax",
              R"({"rate": "19 %", "other_rates": [{"rate": "9 %", "on": ["labour", "hire"]},
                  {"rate": "0 %", "on": ["hire"]}]})",
              "/tax/other_rates/1/on",
              "");
}

TEST_CASE("clash, what is on the shell") {
  const std::string surfaces = "surfaces";
  job_clashes(surfaces,
              R"([{"coating": "none", "acetone_test": "untouched"}])",
              "/surfaces/0/acetone_test",
              "/surfaces/0/coating");
  job_clashes(surfaces,
              R"([{"coating": "epoxy", "acetone_test": "softened"}])",
              "/surfaces/0/acetone_test",
              "/surfaces/0/coating");
  job_clashes(surfaces,
              R"([{"coating": "none", "loose_share": "5 %"}])",
              "/surfaces/0/loose_share",
              "/surfaces/0/coating");
  job_clashes(surfaces,
              R"([{"laid_on": "2020-05-01", "painted_on": 2019}])",
              "/surfaces/0/painted_on",
              "/surfaces/0/laid_on");
  CHECK(job_with(surfaces, R"([{"coating": "none", "acetone_test": "not_done"}])").empty());
  CHECK(job_with(surfaces, R"([{"coating": "other", "acetone_test": "softened"}])").empty());
  CHECK(job_with(surfaces, R"([{"laid_on": "2020-05-01", "painted_on": "2020"}])").empty());
}

TEST_CASE("clash, a test that softened a coating nobody named") {
  json file = plain_job();
  file["surfaces"] = json::parse(R"([{"acetone_test": "softened"}])");
  Problems problems;
  const auto read = job(file.dump(), problems);
  CHECK(problems.empty());
  REQUIRE(read);
  CHECK(read->surfaces[0].coating == basinwright::preparation::ExistingCoating::other);
}

TEST_CASE("clash, the crew") {
  job_clashes("crew", R"({"people": 2, "painters": 3})", "/crew/painters", "/crew/people");
  job_clashes("crew", R"({"painters": 4})", "/crew/painters", "");
  CHECK(job_with("crew", R"({"working_days": []})") == Found{"empty-list /crew/working_days"});
  CHECK(job_with("crew", R"({"working_days": [], "overtime": {"days": ["sunday"]}})").empty());
  CHECK(job_with("crew", R"({"working_days": ["mnday"]})") ==
        Found{"not-a-choice /crew/working_days/0"});
  // One who works alone is the painter too.
  json file = plain_job();
  file["crew"] = {{"people", 1}};
  Problems problems;
  const auto read = job(file.dump(), problems);
  INFO(told(problems));
  REQUIRE(read);
  CHECK(read->crew.painters.value == 1.0);
}

TEST_CASE("clash, the site and the words for places") {
  job_clashes("site",
              R"({"sewer": {"ph_min": 9, "ph_max": 6}})",
              "/site/sewer/ph_min",
              "/site/sewer/ph_max");
  job_clashes("coating",
              R"({"sections": [{"name": "a", "to": 4}, {"name": "a", "to": 0}]})",
              "/coating/sections/1/name",
              "/coating/sections/0/name");
  CHECK(job_with("coating", R"({"sections": [{"name": "walls", "to": 4}]})") ==
        Found{"not-a-choice /coating/sections/0/name"});
  CHECK(job_with("coating", R"({"slip_resistant": ["step"]})") ==
        Found{"not-a-choice /coating/slip_resistant/0"});
  CHECK(job_with("surfaces", R"([{"where": "flor"}, 5])") ==
        Found{"not-a-choice /surfaces/0/where", "wrong-type /surfaces/1"});
}

TEST_CASE("clash, payments") {
  job_clashes("terms",
              R"({"stages": [{"event": "a", "share": "60 %"}, {"event": "b", "share": "30 %"}]})",
              "/terms/stages",
              "");
  job_clashes("terms",
              R"({"deposit": "20 %", "stages": [{"event": "a", "share": "70 %"}]})",
              "/terms/stages",
              "/terms/deposit");
  job_clashes("terms",
              R"({"deposit": "20 %", "stages": [{"event": "a", "share": "100 %"}]})",
              "/terms/stages",
              "/terms/deposit");
  json file = plain_job();
  file["job"] = {{"valid_days", 30}};
  file["terms"] = {{"validity", "14 d"}};
  clashes(file, true, "/terms/validity", "/job/valid_days");
  file["terms"]["validity"] = "720 h";
  CHECK(problems_of_job(file).empty());
}

TEST_CASE("clash, a deposit and stages that sum to all of the price do not") {
  json file = plain_job();
  file["terms"] =
      json::parse(R"({"deposit": "20 %", "stages": [{"event": "a", "share": "80 %"}]})");
  Problems problems;
  const auto read = job(file.dump(), problems);
  INFO(told(problems));
  REQUIRE(read);
  REQUIRE(read->terms.stages.size() == 2);
  CHECK(read->terms.stages[0].share.millionths == 200000);
  CHECK(read->terms.stages[1].share.millionths == 800000);
  file["terms"]["stages"] = json::parse(
      R"([{"event": "on order", "share": "20 %"}, {"event": "on handover", "share": "80 %"}])");
  CHECK(problems_of_job(file).empty());
}

TEST_CASE("clash, ways to one price") {
  rates_clash("overheads",
              R"({"markup": "25 %", "margin": "20 %"})",
              "/overheads/margin",
              "/overheads/markup");
  rates_clash("chemicals",
              R"({"hypochlorite": {"strength": "12 %", "trade_percent": 12.5}})",
              "/chemicals/hypochlorite/strength",
              "/chemicals/hypochlorite/trade_percent");
  json file = plain_rates();
  file["packs"]["acid"] = json::parse(R"([{"size": "20 L", "price": 30}])");
  file["chemicals"]["acid"]["packs"] = file["packs"]["acid"];
  clashes(file, false, "/chemicals/acid/packs", "/packs/acid");
}

TEST_CASE("clash, ranges whose ends cross") {
  const auto sheet = [](const std::string& members) { return "{\"S\": {" + members + "}}"; };
  const std::string s = "/coating_systems/S/";
  for (const std::string range : {"\"cover\": [\"30 m2\", \"20 m2\"]",
                                  "\"recoat\": [\"30 h\", \"20 h\"]",
                                  "\"induction\": [\"30 min\", \"20 min\"]"}) {
    const std::string key = range.substr(1, range.find('"', 1) - 1);
    rates_clash("coating_systems", sheet(range), s + key + "/1", s + key + "/0");
  }
  rates_clash("coating_systems",
              sheet(R"("primer": {"window": ["9 h", "8 h"]})"),
              s + "primer/window/1",
              s + "primer/window/0");
  rates_clash("coating_systems",
              sheet(R"("limits": {"air_min": "31 C", "air_max": "30 C"})"),
              s + "limits/air_min",
              s + "limits/air_max");
  rates_clash("coating_systems",
              sheet(R"("limits": {"shell_max": "9 C", "shell_min": "10 C"})"),
              s + "limits/shell_min",
              s + "limits/shell_max");
  rates_clash(
      "coating_systems", sheet(R"("limits": {"air_max": "5 C"})"), s + "limits/air_max", "");
  rates_clash("thresholds",
              R"({"crack_hairline": "6 mm", "crack_widest": "5 mm"})",
              "/thresholds/crack_hairline",
              "/thresholds/crack_widest");
}

TEST_CASE("clash, packs of one item in two kinds of unit") {
  const auto packs = [](const std::string& item, const std::string& sizes) {
    json file = plain_rates();
    for (const json& size : json::parse(sizes)) {
      file["packs"][item].push_back({{"size", size}, {"price", 1}});
    }
    return file;
  };
  clashes(packs("rope", R"(["5 kg", "5 L"])"), false, "/packs/rope/1/size", "/packs/rope/0/size");
  clashes(packs("rope", R"([5, "5 L"])"), false, "/packs/rope/1/size", "/packs/rope/0/size");
  CHECK(problems_of_rates(packs("rope", R"(["5 kg", "500 g"])")).empty());
  CHECK(problems_of_rates(packs("acid", R"(["5 kg"])")) == Found{"wrong-unit /packs/acid/0/size"});
  CHECK(problems_of_rates(packs("mortar", R"(["5 L"])")) ==
        Found{"wrong-unit /packs/mortar/0/size"});
  CHECK(problems_of_rates(packs("acid", R"([20])")) == Found{"wrong-unit /packs/acid/0/size"});
  CHECK(problems_of_rates(packs("acdi", R"(["5 L"])")) == Found{"unknown-key /packs/acdi"});
}

// Zones that set the clock back over midnight do it at the end of a day (IANA time zone data:
// America/Santiago at 24:00).
TEST_CASE("a clock set back into the day before") {
  const char* const at = "/site/utc_offset_changes/0/at";
  const char* const minutes = "/site/utc_offset_changes/0/minutes";
  const auto change = [](const char* when, int by) {
    return fmt::format(
        R"({{"utc_offset_changes": [{{"at": "2027-04-04T{}", "minutes": {}}}]}})", when, by);
  };
  job_clashes("site", change("00:30", -60), minutes, at);
  job_clashes("site", change("00:15", -30), minutes, at);
  CHECK(job_with("site", change("00:00", -60)).empty());
  CHECK(job_with("site", change("01:00", -60)).empty());
  CHECK(job_with("site", change("00:30", 60)).empty());
}
