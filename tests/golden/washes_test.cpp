// Mixes, wash water, sump and refill of whole jobs, against hand calculations from published
// figures (named beside each) and common practice.
#include <fmt/format.h>

#include "chemistry/formula.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using job::Plan;
using units::litres;

// 10 x 5 m, 1.4 m deep: 92 m2 by hand, water 0.1 m below the rim: 65 m3.
std::string text(const std::string& more) {
  return R"({"job": {"start": "2027-06-07"},
    "pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
             "floor": {"kind": "constant", "depth": "1.4 m"}},
    "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}])" +
         (more.empty() ? "" : ", " + more) + "}";
}
job::RateBook book(const std::string& more = "") {
  return test::rates_of(R"({"currency": "EUR", "labour": {"hour": "40.00"})" +
                        (more.empty() ? "" : ", " + more) + "}");
}
Plan plan(const std::string& job, const std::string& rates = "", bool explain = false) {
  return test::plan_of(text(job), book(rates), explain);
}

const job::Addition& addition(const Plan& p, const std::string& what, int part = 1) {
  for (const auto& a : p.water.additions) {
    if (a.what == what && a.part == part) return a;
  }
  throw std::runtime_error("no " + what);
}

const char* const lead = R"("condition": {"lead_test": "clear", "algae": "normal"})";
const std::string water = R"("refill": {"analysis": {"ph": 8.0, "alkalinity": 60, "hardness": 120,
  "stabiliser": 0, "salt": 50, "temperature": "25 C"}, "salt_pool": true})";

}  // namespace

// 96.6 L of solution at 1 : 2 (1.05 L/m2): nine buckets of 10 L and one of 6.6 L; a can of 5 L
// holds 1.67 L of acid and 3.33 L of water.
TEST_CASE("a card for each bucket and can") {
  const Plan p = plan(lead);
  const auto& cards = p.mixes.cards;
  const auto find = [&](const std::string& wash, const std::string& vessel) {
    for (const auto& c : cards) {
      if (c.wash == wash && c.vessel == vessel) return c;
    }
    throw std::runtime_error("no card");
  };
  const auto bucket = find("etch", "bucket");
  CHECK(bucket.full == 9);
  CHECK(bucket.water.in(litres) == Approx(6.667).epsilon(1e-3));
  CHECK(bucket.agent.in(litres) == Approx(3.333).epsilon(1e-3));
  CHECK((bucket.last_water + bucket.last_agent).in(litres) == Approx(6.6).epsilon(1e-3));
  const auto can = find("etch", "can");
  CHECK(can.full == 19);
  CHECK(can.agent.in(litres) == Approx(5.0 / 3));
  // Half a litre in 20 L of water: 0.2439 L in a bucket of 10 L (common practice).
  CHECK(find("degreasing-wash", "bucket").agent.in(litres) == Approx(10 * 0.5 / 20.5));
  // 12.5 g/L from 125 g/L: a tenth (327 IAC 8-3.4-24, MIL-HDBK-1110 5.19.3).
  CHECK(find("chlorine-wash", "bucket").agent.in(litres) == Approx(1.0));
  CHECK(find("neutralising-wash", "bucket").agent_mass.in(units::kilograms) == Approx(1.0));
  // Poured and bought are the same litres.
  double acid = 0;
  for (const auto& c : cards) {
    if (c.wash == "etch" && c.vessel == "bucket")
      acid += c.full * c.agent.in(litres) + c.last_agent.in(litres);
  }
  CHECK(acid == Approx(p.quantities.etch->acid.in(litres)));
}

// 31.45 % acid: 1 : 2.485 makes 10 %, 1 : 6.129 makes 5 % (CRC densities, balance of mass); 25 000
// ppm over it; diluting to 10 % warms by 7.4 K (Parker's heats), 1 : 2 a little more.
TEST_CASE("the ratio of the trade stands beside the published one") {
  const auto e = plan(lead).mixes.strengths.at(0);
  CHECK(e.published_strong->water == Approx(2.485).epsilon(1e-3));
  CHECK(e.published_mild->water == Approx(6.129).epsilon(1e-3));
  CHECK(e.by_mass.in_percent() == Approx(11.54).epsilon(1e-3));
  CHECK(e.heat.rise.in(units::kelvins) > 7.4);
  CHECK(e.heat.rise.in(units::kelvins) < 9.0);
  CHECK(e.undiluted.by_volume.count() == Approx(25000).epsilon(0.05));
  CHECK_FALSE(e.strong);
}

TEST_CASE("weak acid has no published ratio of its own") {
  const auto p = plan(lead, R"("chemicals": {"acid": {"strength": "4 %"}})");
  CHECK_FALSE(p.mixes.strengths.at(0).published_strong);
  CHECK_FALSE(p.mixes.strengths.at(0).published_mild);
}

// Neat and 1 : 1 only when the data sheet asks (common practice).
TEST_CASE("neat acid is mixed and warned of only when the data sheet asks for it") {
  const std::string bare = R"({"job": {"start": "2027-06-07"},
    "pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
             "floor": {"kind": "constant", "depth": "1.4 m"}},
    "surfaces": [{"substrate": "plaster_hard", "coating": "none"}],
    "coating": {"system": "S"}})";
  const auto with = [&](const char* strong) {
    return test::plan_of(
        bare, book(fmt::format(R"("coating_systems": {{"S": {{"strong_etch": {}}}}})", strong)));
  };
  const auto warned = [](const Plan& p) {
    return std::ranges::count(p.cautions, "neat-acid", &job::Caution::code) == 1;
  };
  const Plan neat = with("true");
  CHECK(neat.mixes.strengths.at(0).strong);
  CHECK(warned(neat));
  const Plan mild = with("false");
  CHECK_FALSE(mild.mixes.strengths.at(0).strong);
  CHECK_FALSE(warned(mild));
}

// 32.2 L of 31.45 % in 96.6 + 460 L of flush: 9.977 x 32.2 / 556.6 = 0.577 mol/L, pH 0.24,
// hazardous (40 CFR 261.22); bicarbonate water 8.34 fits pH 6 to 9 (assumed).
TEST_CASE("each wash water has a volume, a pH and a verdict") {
  const auto& d = plan(lead).discharge;
  REQUIRE(d.waters.size() == 4);
  CHECK(d.waters[0].water.first == chemistry::FirstStep::take_out_chlorine);
  // 46 L at 12.5 g/L: 575 g of chlorine x 1.9 x 1.2 (AWWA tables 7-2, 7-5).
  CHECK(d.waters[0].dechlorinator.in(units::grams) == Approx(575 * 1.9 * 1.2));
  const auto& etch = d.waters[2].water;
  CHECK(etch.volume.in(litres) == Approx(556.6));
  CHECK(etch.ph.value.value() == Approx(0.24).margin(0.01));
  CHECK(etch.verdict == chemistry::Verdict::hazardous);
  CHECK(d.waters[3].water.ph.value.value() == Approx(8.34).margin(0.01));
  CHECK(d.waters[3].water.verdict == chemistry::Verdict::fits);
  CHECK(d.limits.lowest.source.kind == sources::Kind::assumed);
  // 65 m3 at 1 mg/L: 65 g of chlorine.
  CHECK(d.pool_dechlorinator.in(units::grams) == Approx(65 * 1.9));
  // 240.0 L for a litre of acid (20 C, 1 atm).
  CHECK(d.carbon_dioxide_worst.in(litres) == Approx(240.0 * 32.2).epsilon(1e-3));
  CHECK(d.of_shell_worst.in_percent() == Approx(240.0 * 32.2 / 65000 * 100).epsilon(1e-3));
}

// Grams for each litre by the published table at 25 C: pH 2 to 6.0, still 1.447 x 0.840 g.
TEST_CASE("the sump is dosed by what is read, to the limit that was entered") {
  const auto row = [](const Plan& p, double at) {
    for (const auto& r : p.discharge.sump) {
      if (r.measured == chemistry::ph(at)) return r;
    }
    throw std::runtime_error("no row");
  };
  const double water_l = 556.6;
  const auto assumed = plan(lead);
  CHECK(assumed.discharge.target == chemistry::ph(6.0));
  CHECK(row(assumed, 2.0).still.in(units::grams) == Approx(0.840 * 1.447 * water_l).epsilon(2e-3));
  CHECK(row(assumed, 2.0).aerated.in(units::grams) == Approx(0.840 * water_l).epsilon(2e-3));
  CHECK(row(assumed, 1.0).fizzing < row(assumed, 1.0).still);
  const std::string lower = std::string(lead) + R"(, "site": {"sewer": {"ph_min": 5.5}})";
  CHECK(row(plan(lower), 2.0).still.in(units::grams) ==
        Approx(0.840 * 1.141 * water_l).epsilon(2e-3));
  // 40 CFR 403.5(b)(2): never under 5.0, whatever was entered.
  const auto lax = plan(std::string(lead) + R"(, "site": {"sewer": {"ph_min": 4}})");
  CHECK(lax.discharge.target == chemistry::ph(5.0));
  CHECK(lax.discharge.limits_refused);
  CHECK(std::ranges::count(lax.cautions, "sewer-floor", &job::Caution::code) == 1);
  const auto half = plan(lead, R"("chemicals": {"bicarbonate": {"strength": "50 %"}})");
  CHECK(row(half, 2.0).still.in(units::grams) ==
        Approx(2 * row(assumed, 2.0).still.in(units::grams)));
}

// Granules of 65 %: 575 g of chlorine in 0.885 kg.
TEST_CASE("the chlorine wash from granules") {
  const auto p = plan(lead, R"("chemicals": {"hypochlorite": {"kind": "calcium_hypochlorite"}})");
  CHECK(p.quantities.chlorine_wash->granules.in(units::kilograms) == Approx(0.575 / 0.65));
  CHECK(std::ranges::count(p.cautions, "acid-and-granules", &job::Caution::code) == 1);
  CHECK(p.purchases.front().item == "hypochlorite");
  CHECK(p.purchases.front().need == 885);
}

// 65 m3 at 20 L/min: 54.17 h; 65 m3 are 22.95 HCF, 17.17 thousand US gallons (NIST HB 44 App. C).
TEST_CASE("the fill, its hours and what the meter counts") {
  const auto in = [](const char* unit) {
    return plan(
        fmt::format(R"({}, "refill": {{"water_price": "2.00", "water_unit": "{}"}})", lead, unit));
  };
  CHECK(in("m3").water.fill_time.in(units::hours) == Approx(54.17).epsilon(1e-3));
  CHECK(in("m3").water.billed == Approx(65));
  CHECK(in("kL").water.cost->minor() == 13000);
  CHECK(in("HCF").water.billed == Approx(22.955).epsilon(1e-3));
  CHECK(in("HCF").water.cost->minor() == 4591);
  CHECK(in("1000_US_gal").water.billed == Approx(17.171).epsilon(1e-3));
}

// Common practice: nothing but chlorine or salt in the first days, then one chemical at a time.
// Bicarbonate 16.79 g/m3 and flake 14.69 g/m3 for 10 mg/L, salt 1 kg/m3 for 1000 mg/L.
TEST_CASE("the start-up goes in order, in steps that do not overshoot") {
  const Plan p = plan(std::string(lead) + ", " + water);
  std::vector<std::string> order;
  for (const auto& a : p.water.additions) {
    if (a.part == 1) order.push_back(a.what);
  }
  CHECK(order ==
        std::vector<std::string>{
            "chlorine-liquid", "bicarbonate", "ph-acid", "calcium-chloride", "stabiliser", "salt"});
  const auto full_mass = [&](const char* what) {
    return (addition(p, what).mass + addition(p, what, 2).mass).in(units::kilograms);
  };
  CHECK(full_mass("bicarbonate") == Approx(0.01679 * 4 * 65).epsilon(1e-3));
  CHECK(full_mass("calcium-chloride") == Approx(0.01469 * 8 * 65).epsilon(1e-3));
  CHECK(full_mass("salt") == Approx(3.15 * 65).epsilon(1e-3));
  CHECK(addition(p, "bicarbonate").to == Approx(80));
  CHECK(addition(p, "bicarbonate", 2).to == Approx(100));
  dates::Date before = p.water.full.value();
  for (const auto& a : p.water.additions) {
    CHECK(a.day.value() >= before);
    if (a.what != "chlorine-liquid") CHECK(a.day.value() >= p.water.quiet_until.value());
    before = a.day.value();
  }
  for (std::size_t i = 1; i + 1 < p.water.additions.size(); ++i) {
    const auto& one = p.water.additions[i];
    const auto& next = p.water.additions[i + 1];
    if (one.what != next.what) CHECK(one.day.value() < next.day.value());
  }
}

TEST_CASE("nothing is added for a figure that nobody measured") {
  const Plan p = plan(lead);
  CHECK(p.water.measure_first == std::vector<std::string>{"ph", "alkalinity", "hardness"});
  for (const auto& a : p.water.additions) {
    CHECK((a.what == "chlorine-liquid" || a.what == "stabiliser"));
  }
}

// The worked row of the operator course: TA 75, pH 7.6, CH 300, 84 F gives +0.2 by the table.
TEST_CASE("saturation by the table and by the equations, each named") {
  const Plan p = plan(std::string(lead) +
                      R"(, "refill": {"analysis": {"ph": 7.6, "alkalinity": 75, "hardness": 300,
                          "temperature": "84 F"}})");
  REQUIRE(p.water.indices.size() == 8);
  CHECK(p.water.indices[0].water == "fill");
  CHECK(p.water.indices[0].method == "table");
  CHECK(p.water.indices[0].value.value() == Approx(0.2).margin(0.05));
  CHECK(p.water.indices[2].method == "equations");
  CHECK(p.water.indices[2].value.value() == Approx(0.2).margin(0.15));
  // With stabiliser at its target the corrected index is the lower one.
  CHECK(p.water.indices[7].value.value() < p.water.indices[6].value.value());
}

TEST_CASE("every number of washes and water is explained by its formula") {
  const Plan p = plan(std::string(lead) + ", " + water, "", true);
  for (const char* key : {"quantities.mixes.etch.all_bucket_agent_l",
                          "quantities.wash_water.etch_l",
                          "quantities.wash_water.thiosulfate_kg",
                          "quantities.sump.ph_2_0.still_kg",
                          "quantities.sump.carbon_dioxide_share",
                          "quantities.refill.hours",
                          "quantities.refill.billed_units",
                          "quantities.start_up.bicarbonate_kg",
                          "quantities.start_up.ph_acid_l",
                          "quantities.saturation.target.equations_corrected"}) {
    INFO(key);
    CHECK(p.trace.find(key) != nullptr);
  }
  for (const trace::Step& step : p.trace.steps()) {
    INFO(step.key << " = " << step.formula);
    CHECK(chemistry_rows::Formula(step).value() ==
          Approx(step.value.si).epsilon(1e-9).margin(1e-12));
    for (const trace::Input& input : step.inputs) {
      if (input.from.empty()) continue;
      INFO("operand " << input.name << " from " << input.from);
      REQUIRE(p.trace.find(input.from) != nullptr);
      CHECK(p.trace.find(input.from)->value.si == Approx(input.value.si).epsilon(1e-9));
    }
  }
}
