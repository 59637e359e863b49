// A bare number is in the file's unit system. Factors: NIST Handbook 44 App. C (exact).
#include "basinwright/units/unit.hpp"
#include "reading.hpp"

using namespace reading;

namespace {

basinwright::job::Job job_of(const std::string& system) {
  json file = plain_job();
  if (!system.empty()) file["units"] = system;
  file["pool"]["adjust"] = json::parse(R"([{"name": "niche", "area": 2}])");
  file["site"] = json::parse(R"({"elevation": 100, "tap_flow": 5, "mean_temperatures": {"5": 60},
                                 "permits": [{"what": "a", "lead": 48}]})");
  file["surfaces"] = json::parse(R"([{"bare_share": 0.05}])");
  Problems problems;
  const auto read = job(file.dump(), problems);
  INFO(told(problems));
  REQUIRE(read);
  return *read;
}

basinwright::job::RateBook book_of(const std::string& system) {
  json file = plain_rates();
  if (!system.empty()) file["units"] = system;
  file["coating_systems"]["S"] = json::parse(R"({"kit": 1, "cover": [200, 300],
      "limits": {"air_min": 60, "air_max": 65, "dew_margin": 9}})");
  file["chemicals"] = json::parse(R"({"acid": {"rate": 0.02}, "bicarbonate": {"mix": 50},
      "degreaser": {"cover": 150}})");
  file["productivity"] = json::parse(R"({"coat": 200, "mask": 60, "refit": 2, "drain_pump": 30})");
  file["packs"]["rope"] = json::parse(R"([{"size": 12, "price": 3}])");
  Problems problems;
  const auto read = rates(file.dump(), problems);
  INFO(told(problems));
  REQUIRE(read);
  return *read;
}

}  // namespace

TEST_CASE("bare numbers of a job file, metric when nothing is said") {
  for (const std::string system : {"", "metric"}) {
    const auto j = job_of(system);
    const auto& rectangle = std::get<basinwright::shell::Rectangle>(j.bodies[0].pool.outline.shape);
    CHECK(rectangle.length.si() == 8.0);
    CHECK(j.bodies[0].adjust[0].area.si() == 2.0);
    CHECK(j.site.elevation->si() == 100.0);
    CHECK(j.site.tap_flow->si() == Approx(5.0e-3 / 60));
    CHECK(j.site.temperatures[4]->si() == Approx(273.15 + 60));
    CHECK(j.site.permits[0].lead->si() == 48 * 3600.0);
    CHECK(j.surfaces[0].bare_share.value.share() == 0.05);
    CHECK(j.units == units::System::metric);
  }
}

TEST_CASE("bare numbers of a job file in feet, US gallons and Fahrenheit") {
  const auto j = job_of("us");
  const auto& rectangle = std::get<basinwright::shell::Rectangle>(j.bodies[0].pool.outline.shape);
  CHECK(rectangle.length.si() == Approx(8 * 0.3048).epsilon(1e-15));
  CHECK(j.bodies[0].adjust[0].area.si() == Approx(2 * 0.3048 * 0.3048).epsilon(1e-15));
  CHECK(j.site.elevation->si() == Approx(100 * 0.3048).epsilon(1e-15));
  CHECK(j.site.tap_flow->si() == Approx(5 * 3.785411784e-3 / 60).epsilon(1e-15));
  CHECK(j.site.temperatures[4]->si() == Approx(273.15 + (60 - 32) / 1.8).epsilon(1e-15));
  CHECK(j.site.permits[0].lead->si() == 48 * 3600.0);
  CHECK(j.surfaces[0].bare_share.value.share() == 0.05);
  CHECK(j.units == units::System::us);
}

TEST_CASE("bare numbers of a rate book, metric") {
  const auto b = book_of("");
  const auto& s = b.systems.at("S");
  CHECK(s.kit.value.si() == Approx(1e-3));
  CHECK(s.cover_low.value.si() == 200.0);
  CHECK(s.limits.air_min.value.si() == Approx(273.15 + 60));
  CHECK(s.limits.dew_margin.value.si() == 9.0);
  CHECK(b.chemicals.etch.solution.value.si() == Approx(0.02e-3));
  CHECK(b.chemicals.neutralise.mix.value.si() == 50.0);
  CHECK(b.chemicals.degrease.cover.value.si() == Approx(150e3));
  CHECK(b.productivity.coat.value.si() == Approx(200.0 / 3600));
  CHECK(b.productivity.mask.value.si() == Approx(60.0 / 3600));
  CHECK(b.productivity.refit.value.si() == 7200.0);
  CHECK(b.productivity.drain_pump.value.si() == Approx(30e-3 / 60));
  CHECK(b.items.at("rope").packs[0].size == 12);
}

TEST_CASE("bare numbers of a rate book in US units") {
  constexpr double foot = 0.3048;
  constexpr double gallon = 3.785411784e-3;
  const auto b = book_of("us");
  const auto& s = b.systems.at("S");
  CHECK(s.kit.value.si() == Approx(gallon).epsilon(1e-15));
  CHECK(s.cover_low.value.si() == Approx(200 * foot * foot).epsilon(1e-14));
  CHECK(s.limits.air_min.value.si() == Approx(273.15 + (60 - 32) / 1.8).epsilon(1e-15));
  CHECK(s.limits.dew_margin.value.si() == Approx(5.0).epsilon(1e-15));
  CHECK(b.chemicals.etch.solution.value.si() ==
        Approx(0.02 * gallon / (foot * foot)).epsilon(1e-14));
  CHECK(b.chemicals.neutralise.mix.value.si() == 50.0);
  CHECK(b.chemicals.degrease.cover.value.si() == Approx(150 * foot * foot / gallon).epsilon(1e-14));
  CHECK(b.productivity.coat.value.si() == Approx(200 * foot * foot / 3600).epsilon(1e-14));
  CHECK(b.productivity.mask.value.si() == Approx(60 * foot / 3600).epsilon(1e-14));
  CHECK(b.productivity.refit.value.si() == 7200.0);
  CHECK(b.productivity.drain_pump.value.si() == Approx(30 * gallon / 60).epsilon(1e-14));
  CHECK(b.items.at("rope").packs[0].size == 12);
}

TEST_CASE("a text with its unit means the same in both systems") {
  for (const std::string system : {"metric", "us"}) {
    json file = plain_job();
    file["units"] = system;
    file["pool"]["outline"]["length"] = "26 ft 3 in";
    file["pool"]["outline"]["width"] = "4 m";
    file["pool"]["floor"]["depth"] = "1.5 m";
    Problems problems;
    const auto j = job(file.dump(), problems);
    INFO(told(problems));
    REQUIRE(j);
    const auto& r = std::get<basinwright::shell::Rectangle>(j->bodies[0].pool.outline.shape);
    CHECK(r.length.si() == Approx(26.25 * 0.3048).epsilon(1e-15));
    CHECK(r.width.si() == 4.0);
  }
}

TEST_CASE("the unit system counts wherever it stands in the file") {
  Problems problems;
  const auto j = job(R"({"pool": {"outline": {"kind": "circle", "diameter": 20},
                                  "floor": {"kind": "constant", "depth": 5}}, "units": "us"})",
                     problems);
  REQUIRE(j);
  CHECK(std::get<basinwright::shell::Circle>(j->bodies[0].pool.outline.shape).diameter.si() ==
        Approx(20 * 0.3048).epsilon(1e-15));
}
