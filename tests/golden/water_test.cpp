// The new water of whole jobs when it is not as one would wish, and the labels of what chlorinates
// it, by hand from published figures: equivalent weight of calcium carbonate 50.04, hydrochloric
// acid of 31.45 % 9.977 mol/L (838.1 g of bicarbonate of 84.007 g/mol a litre: CRC densities),
// sodium hypochlorite 74.44 g/mol for 70.906 g/mol of chlorine.
#include <algorithm>

#include "basinwright/report/pages.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

// 10 x 5 m, 1.4 m deep, filled to 0.1 m below the rim: 65 m3 of water and 92 m2.
std::string water_text(const std::string& refill) {
  return R"({"job": {"start": "2027-06-07"},
    "pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
             "floor": {"kind": "constant", "depth": "1.4 m"}},
    "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}],
    "condition": {"lead_test": "clear", "algae": "normal"}, "refill": )" +
         refill + "}";
}
job::Plan water_plan(const std::string& refill, const std::string& rates = "") {
  return test::plan_of(
      water_text(refill),
      test::rates_of(R"({"currency": "EUR", "labour": {"hour": "40.00"})" + rates + "}"));
}
bool water_has(const std::vector<std::string>& all, const char* one) {
  return std::ranges::find(all, one) != all.end();
}
std::vector<job::Addition> of(const job::Plan& p, const char* what) {
  std::vector<job::Addition> out;
  std::ranges::copy_if(
      p.water.additions, std::back_inserter(out), [&](const auto& a) { return a.what == what; });
  return out;
}
double litres_of(const job::Plan& p, const char* what) {
  double sum = 0.0;
  for (const auto& a : of(p, what)) sum += a.volume.in(units::litres);
  return sum;
}
double kilograms_of(const job::Plan& p, const char* what) {
  double sum = 0.0;
  for (const auto& a : of(p, what)) sum += a.mass.in(units::kilograms);
  return sum;
}

const char* const too_much = R"({"analysis": {"ph": 7.8, "alkalinity": 180, "hardness": 1100,
  "stabiliser": 150, "salt": 400, "temperature": "25 C"}, "chlorine": {"kind": "calcium_hypochlorite"}})";

}  // namespace

TEST_CASE("water that is too hard, stabilised and alkaline") {
  const job::Plan p = water_plan(too_much);
  // Nothing poured in takes hardness or stabiliser out again: fresh water in its place (common
  // practice).
  CHECK(water_has(p.water.advice, "drain-part-hardness"));
  CHECK(water_has(p.water.advice, "drain-part-stabiliser"));
  CHECK(of(p, "calcium-chloride").empty());
  CHECK(of(p, "stabiliser").empty());
  // 80 mg/L less in 65 m3: 80 * 65 / 50.04 = 103.9 mol of acid.
  CHECK(litres_of(p, "alkalinity-acid") == Approx(80.0 * 65 / 50.04 / 9.977).epsilon(2e-3));
  // What acid leaves of the pH only air brings back.
  CHECK(water_has(p.water.advice, "aerate"));
  CHECK(of(p, "ph-acid").empty());
  // No salt into a pool that is not salted, whatever is in it already.
  CHECK(of(p, "salt").empty());
}

TEST_CASE("chlorine of the pool by what stands on its label") {
  // 3 mg/L in 65 m3 are 195 g of chlorine; granules of 65 % unless said (327 IAC 8-3.4-24, table
  // 24-1).
  CHECK(kilograms_of(water_plan(too_much), "chlorine-granules") == Approx(0.195 / 0.65));
  const char* const granules =
      R"({"chlorine": {"kind": "calcium_hypochlorite", "strength": "70 %"}})";
  CHECK(kilograms_of(water_plan(granules), "chlorine-granules") == Approx(0.195 / 0.70));
  // Trade percent: grams in 100 mL.
  const char* const liquid = R"({"chlorine": {"strength": "10 %"}})";
  CHECK(litres_of(water_plan(liquid), "chlorine-liquid") == Approx(1.95));
  CHECK(litres_of(water_plan("{}"), "chlorine-liquid") == Approx(195 / 125.0));
}

TEST_CASE("chlorine of the wash by what stands on its label") {
  // The wash takes as much chlorine whatever it is made from; a litre of each holds:
  const auto litres = [](const char* label) {
    const auto p =
        water_plan("{}", std::string(R"(, "chemicals": {"hypochlorite": )") + label + "}");
    return p.quantities.chlorine_wash->liquid.in(units::litres);
  };
  const double trade = litres(R"({"kind": "trade", "trade_percent": 12.5})");  // 125 g
  CHECK(litres(R"({"kind": "available_by_weight", "strength": "10 %", "density": "1.2 kg/L"})") ==
        Approx(trade * 125 / 120));
  CHECK(litres(R"({"kind": "sodium_by_weight", "strength": "10 %", "density": "1.2 kg/L"})") ==
        Approx(trade * 125 / (120 * 70.906 / 74.44)).epsilon(1e-3));
}
