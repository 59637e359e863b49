// Values that a slip or a joker writes: 1,000,000,000 coats, 1e-308 m, 1e308 euro, a day in the
// year 9999. Each is refused where it stands or planned as it is; none may end in a fault of ours
// or in a day that is none. Days by the Gregorian calendar: 2028 and 2400 are leap years, 2027 and
// 2100 are not.
#include "basinwright/render/json.hpp"
#include "basinwright/render/text.hpp"
#include "basinwright/report/pages.hpp"
#include "readers/reading.hpp"
#include "support/plans.hpp"

using namespace reading;

namespace {

struct Row {
  const char* pointer;
  const char* value;
  const char* found;  ///< The codes; empty where it is planned.
};

json changed(json file, const Row& row) {
  file[json::json_pointer(row.pointer)] = json::parse(row.value);
  return file;
}

void plans(const json& job_file, const json& rate_file) {
  const auto job = basinwright::test::job_of(job_file.dump());
  const auto book = basinwright::test::rates_of(rate_file.dump());
  const auto plan = basinwright::test::plan_of(job_file.dump(), book);
  const auto page = basinwright::report::jobsheet({job, book, plan, job.units});
  CHECK(json::parse(basinwright::render::json(page)).contains("programme"));
  const std::string text = basinwright::render::text(page);
  for (const char* none : {" nan", " inf", "-nan", "-inf"})
    CHECK(text.find(none) == std::string::npos);
}

json usual_job() {
  return json::parse(contents("examples/plain-pool.json"));
}

json full_rates() {
  json file = plain_rates();
  file["coating_systems"]["paint"]["primer"]["cover"] = "60 m2";
  return file;
}

}  // namespace

TEST_CASE("hostile sizes in a job file are refused in place or planned") {
  const json file = usual_job();
  for (const Row& row : {Row{"/coating/coats", "1000000000", "out-of-range"},
                         Row{"/coating/coats", "1e308", "out-of-range"},
                         Row{"/coating/coats", "6", ""},
                         Row{"/pool/outline/length", "\"1e-308 m\"", "out-of-range"},
                         Row{"/pool/outline/length", "\"1e308 m\"", "out-of-range"},
                         Row{"/pool/outline/length", "\"1e309 m\"", "not-a-measure"},
                         Row{"/pool/cove_radius", "\"1e-308 m\"", ""},
                         Row{"/site/tap_flow", "\"1e-308 L/min\"", "out-of-range"},
                         Row{"/site/tap_flow", "\"0.1 L/min\"", ""},
                         Row{"/site/tap_flow", "0", "not-positive"},
                         Row{"/site/tap_flow", "-1", "not-positive"},
                         Row{"/crew/people", "1000000000", "out-of-range"},
                         Row{"/job/start", "\"9999-12-31\"", "not-a-date"},
                         Row{"/job/start", "\"9990-12-31\"", ""},
                         Row{"/job/start", "\"2028-02-29\"", ""},
                         Row{"/job/start", "\"2027-02-29\"", "not-a-date"},
                         Row{"/job/start", "\"2100-02-29\"", "not-a-date"},
                         Row{"/job/start", "\"2400-02-29\"", ""},
                         Row{"/job/number", "\"../../etc/passwd\"", ""}}) {
    INFO(row.pointer << " " << row.value);
    const json now = changed(file, row);
    if (*row.found != '\0') {
      CHECK(problems_of_job(now) == Found{std::string(row.found) + " " + row.pointer});
    } else {
      plans(now, plain_rates());
    }
  }
}

TEST_CASE("hostile sizes in a rate book are refused in place or planned") {
  const json file = full_rates();
  for (const Row& row :
       {Row{"/labour/hour", "\"1e308\"", "not-an-amount"},
        Row{"/labour/hour", "1e308", "not-an-amount"},
        Row{"/labour/hour", "\"999999999.99\"", ""},
        Row{"/labour/hour", "\"99999999999\"", "out-of-range"},
        Row{"/productivity/coat", "\"1e-308 m2/h\"", "out-of-range"},
        Row{"/productivity/etch", "\"0.01 m2/h\"", ""},
        Row{"/productivity/mask", "\"1e-308 m/h\"", "out-of-range"},
        Row{"/coating_systems/paint/primer/cover", "\"1e-308 m2\"", "out-of-range"},
        Row{"/coating_systems/paint/cure", R"({"warm": "0 d"})", "not-positive"},
        Row{"/coating_systems/paint/cure", R"({"cold": "1e-308 d"})", "out-of-range"},
        Row{"/coating_systems/paint/pot_life", R"({"time": "1e-308 h"})", "out-of-range"},
        Row{"/chemicals", R"({"degreaser": {"cover": "1e-308 m2/L"}})", "out-of-range"},
        Row{"/chemicals", R"({"bicarbonate": {"strength": "1e-308 %"}})", "out-of-range"},
        Row{"/chemicals", R"({"bicarbonate": {"mix": "1e-308 g/L"}})", "out-of-range"},
        Row{"/chemicals", R"({"bicarbonate": {"area_per_kg": "1e-308 m2"}})", "out-of-range"},
        Row{"/chemicals", R"({"hypochlorite": {"trade_percent": 1e-308}})", "out-of-range"},
        Row{"/weather", R"({"least_rain": "1e-308 mm"})", "out-of-range"}}) {
    INFO(row.pointer << " " << row.value);
    const json now = changed(file, row);
    if (*row.found == '\0') {
      plans(usual_job(), now);
      continue;
    }
    const Found found = problems_of_rates(now);
    REQUIRE(found.size() == 1);
    CHECK(found[0].starts_with(std::string(row.found) + " " + row.pointer));
  }
}

TEST_CASE("a wash stronger than its liquid is refused with both places") {
  json file = plain_rates();
  // 1 trade percent is 10 g of available chlorine in a litre (327 IAC 8-3.4-24), less than the wash
  // asks for.
  file["chemicals"]["hypochlorite"] = {{"trade_percent", 1}};
  CHECK(problems_of_rates(file) == Found{"facts-clash /chemicals/hypochlorite/trade_percent"});
  file["chemicals"]["hypochlorite"] = {{"trade_percent", 1}, {"wash_strength", "10 g/L"}};
  CHECK(problems_of_rates(file).empty());
  file["chemicals"]["hypochlorite"] = {{"wash_strength", "126 g/L"}};
  CHECK(problems_of_rates(file) == Found{"facts-clash /chemicals/hypochlorite/wash_strength"});
}

TEST_CASE("a shell larger than anyone paints is refused, one that is merely vast is planned") {
  json file = usual_job();
  file["pool"]["floor"] = {{"kind", "constant"}, {"depth", "2 m"}};
  file["pool"]["outline"] = {{"kind", "rectangle"}, {"length", "1000 m"}, {"width", "1000 m"}};
  CHECK(problems_of_job(file) == Found{"too-large /pool/outline"});
  file["pool"]["outline"]["length"] = "150 m";
  file["pool"]["outline"]["width"] = "60 m";
  json slow = plain_rates();
  slow["productivity"]["pressure_clean"] = "0.01 m2/h";
  plans(file, slow);
}
