#include "basinwright/chemistry/balance.hpp"

#include "chemistry/steps.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;
using basinwright::trace::Trace;
using chemistry_rows::hold_steps;

namespace {

units::Concentration mg(double value) {
  return units::milligrams_per_litre(value);
}

chem::Water tap() {
  chem::Water water;
  water.ph = chem::ph(7.5);
  water.alkalinity = mg(60.0);
  water.hardness = mg(100.0);
  water.temperature = units::celsius(25.0);
  return water;
}

chem::StartUpPlan plan() {
  chem::StartUpPlan made;
  made.acid = chem::ordinary_acid_as_sold();
  made.chlorine = std::get<chem::ChlorineStock>(chem::chlorine_stock(
      chem::TradePercent{12.5}, {basinwright::sources::Kind::given, "can", "label"}));
  return made;
}

const chem::StartUpDose* dose(const chem::StartUp& made, chem::StartUpAction action) {
  for (const auto& one : made.doses) {
    if (one.action == action) return &one;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("start-up of 50 m3 against doses per cubic metre") {
  using enum chem::StartUpAction;
  Trace trace = Trace::recording();
  auto salted = plan();
  salted.targets.salt_pool = true;
  const auto made = chem::start_up(units::cubic_metres(50.0), tap(), salted, trace);
  // Per m3 by stoichiometry: bicarbonate 16.79 g and flake 14.69 g for 10 mg/L, stabiliser 10 g for
  // 10 mg/L, 12.5 trade percent 8 mL for 1 mg/L, salt 3.2 kg for 3200 mg/L.
  REQUIRE(made.doses.size() == 5);
  CHECK(dose(made, raise_alkalinity)->mass.in(units::grams) ==
        Approx(16.79 * 4 * 50).epsilon(1e-3));
  CHECK(dose(made, raise_hardness)->mass.in(units::grams) == Approx(14.69 * 10 * 50).epsilon(1e-3));
  CHECK(dose(made, raise_stabiliser)->mass.in(units::grams) == Approx(1500.0));
  CHECK(dose(made, raise_chlorine)->volume.in(units::litres) == Approx(1.2));
  CHECK(dose(made, raise_salt)->mass.in(units::kilograms) == Approx(160.0));
  CHECK(made.doses.front().action == raise_salt);
  CHECK(made.doses.at(1).action == raise_chlorine);
  REQUIRE(trace.steps().size() == 5);
  hold_steps(trace);
}

TEST_CASE("water above its range is lowered by acid where acid can and named where nothing can") {
  Trace trace = Trace::recording();
  chem::Water hard = tap();
  hard.alkalinity = mg(150.0);
  hard.hardness = mg(1200.0);
  hard.stabiliser = mg(120.0);
  const auto made = chem::start_up(units::cubic_metres(50.0), hard, plan(), trace);
  // 20.03 mL of 31.45 % acid lower 10 mg/L in 1 m3 (stoichiometry).
  const auto* less = dose(made, chem::StartUpAction::lower_alkalinity);
  REQUIRE(less != nullptr);
  CHECK(less->volume.in(units::litres) == Approx(0.02003 * 5 * 50).epsilon(1e-3));
  CHECK(made.too_much ==
        std::vector<chem::TooMuch>{chem::TooMuch::hardness, chem::TooMuch::stabiliser});
  CHECK(made.doses.size() == 2);
  const auto* step = trace.find("quantities.start_up.acid_l");
  REQUIRE(step != nullptr);
  CHECK(chemistry_rows::Formula(*step).value() == Approx(step->value.si).epsilon(1e-12));
}

TEST_CASE("water inside its range gets chlorine alone") {
  Trace off;
  chem::Water good = tap();
  good.alkalinity = mg(115.0);
  good.hardness = mg(250.0);
  good.stabiliser = mg(40.0);
  const auto made = chem::start_up(units::cubic_metres(50.0), good, plan(), off);
  REQUIRE(made.doses.size() == 1);
  CHECK(made.doses.front().action == chem::StartUpAction::raise_chlorine);
  CHECK(made.too_much.empty());
  // ARM 37.115, table 6: 150 to 1000 and 0 to 100 mg/L, the last ones among them.
  good.hardness = mg(1000.0);
  good.stabiliser = mg(100.0);
  CHECK(chem::start_up(units::cubic_metres(50.0), good, plan(), off).too_much.empty());
}
