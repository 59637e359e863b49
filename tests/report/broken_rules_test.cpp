// What a broken rule is told as, in the units of the job: 5 C are 41 F, 2 K are 3.6 F (NIST SP 811,
// B.8).
#include "basinwright/report/site.hpp"
#include "support/catch.hpp"

namespace {

using namespace basinwright;
using sitelog::Breach;
using sitelog::Broken;

Breach broken(Broken rule, double measured = 0.0, double limit = 0.0) {
  Breach b;
  b.rule = rule;
  b.task = "coat-2";
  b.section = "1";
  b.measured = measured;
  b.limit = limit;
  return b;
}
std::string metric(const Breach& b) {
  return report::broken_rule(b, units::System::metric);
}
std::string us(const Breach& b) {
  return report::broken_rule(b, units::System::us);
}

}  // namespace

TEST_CASE("a limit of the weather is told with what was read") {
  const Breach cold = broken(Broken::air, 5, 10);
  CHECK(metric(cold) == "Coat 2, section 1: air 5.0 \u00B0C, under the limit of 10.0 \u00B0C");
  CHECK(us(cold) == "Coat 2, section 1: air 41.0 \u00B0F, under the limit of 50.0 \u00B0F");
  const Breach hot = broken(Broken::shell_temperature, 40, 35);
  CHECK(metric(hot) == "Coat 2, section 1: shell 40.0 \u00B0C, over the limit of 35.0 \u00B0C");
  CHECK(us(hot) == "Coat 2, section 1: shell 104.0 \u00B0F, over the limit of 95.0 \u00B0F");
  const Breach dew = broken(Broken::dew_margin, 2, 3);
  CHECK(metric(dew).find("only 2.0 \u00B0C above the dew point, 3.0 \u00B0C asked") !=
        std::string::npos);
  CHECK(us(dew).find("only 3.6 \u00B0F above the dew point, 5.4 \u00B0F asked") !=
        std::string::npos);
  CHECK(metric(broken(Broken::humidity, 0.9, 0.85)).find("humidity 90 %, over the limit of 85 %") !=
        std::string::npos);
}

TEST_CASE("times, batches and water are told with both figures") {
  CHECK(metric(broken(Broken::recoat_early, 18, 20))
            .find("18.0 h after the coat below, 20.0 h asked") != std::string::npos);
  CHECK(metric(broken(Broken::recoat_late, 25.5, 24))
            .find("25.5 h after the coat below, 24.0 h at most") != std::string::npos);
  CHECK(metric(broken(Broken::etch_expired, 192, 168)).find("192.0 h after the etch, 168.0 h") !=
        std::string::npos);
  CHECK(metric(broken(Broken::pot_life, 0.75, 0.5)).find("for 45 min, pot life 30 min") !=
        std::string::npos);
  CHECK(metric(broken(Broken::no_reading)).find("4 h before") != std::string::npos);
  Breach batch = broken(Broken::part_a_batches);
  batch.was = "A1";
  batch.now = "A2";
  CHECK(metric(batch).find("batch A2, after batch A1") != std::string::npos);
  batch.rule = Broken::part_b_kinds;
  CHECK(metric(batch).find("kind A2, after A1") != std::string::npos);
  Breach water = broken(Broken::outflow_ph, 4.2, 6);
  water.task = water.section = "";
  CHECK(metric(water) == "pumped out at pH 4.2, the limit is 6.0");
  water.rule = Broken::outflow_chlorine;
  CHECK(us(water) == "pumped out with 4.2 mg/L of chlorine, 6.0 mg/L at most");
  water.rule = Broken::recoat_early;
  water.section = "2";
  CHECK(metric(water).starts_with("section 2: "));
}
