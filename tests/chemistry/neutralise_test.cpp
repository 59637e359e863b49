#include "basinwright/chemistry/neutralise.hpp"

#include <cmath>

#include "basinwright/chemistry/etch.hpp"
#include "basinwright/chemistry/gas.hpp"
#include "chemistry/steps.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;
using basinwright::trace::Trace;
using chemistry_rows::hold_steps;

namespace {

chem::Sump sump(double measured, double target, chem::Air air = chem::Air::fizzing) {
  return {units::litres(1000.0), chem::ph(measured), chem::ph(target), air};
}

bool refused_text(const chem::Sump& water) {
  return std::holds_alternative<chem::Unfit>(chem::sump_dose(water));
}

double kilograms(const chem::Sump& water) {
  return std::get<chem::SumpDose>(chem::sump_dose(water)).bicarbonate.in(units::kilograms);
}

}  // namespace

TEST_CASE("more acid needs more bicarbonate, in the sump and by the reading") {
  Trace off;
  const auto stock = chem::ordinary_acid_as_sold();
  units::Mass last;
  for (const double acid : {1.0, 5.0, 20.0, 35.0, 36.0}) {
    const auto mass = chem::sump_worst_case(stock, units::litres(acid), off);
    CHECK(mass > last);
    last = mass;
  }
  for (const auto air : {chem::Air::still, chem::Air::fizzing, chem::Air::aerated}) {
    double more = 0.0;
    for (const double reading : {4.0, 3.0, 2.0, 1.5, 1.0, 0.5}) {
      const double mass = kilograms(sump(reading, 6.0, air));
      CHECK(mass > more);
      more = mass;
    }
  }
}

TEST_CASE("the surface and the sump are two quantities, each with its own step") {
  Trace trace = Trace::recording();
  const auto wash = chem::surface_wash({units::square_metres(90.0)}, {}, trace);
  const auto stock = chem::ordinary_acid_as_sold();
  const chem::EtchPatch patch{"all", {units::square_metres(92.0)}};
  const auto etched = std::get<chem::Etch>(chem::etch({patch}, stock, {}, trace));
  const auto worst = chem::sump_worst_case(stock, etched.acid, trace);
  // 5 kg per 90 m2, 1 kg in 10 L (common practice); 32.2 L at 838.1 g a litre (stoichiometry).
  CHECK(wash.bicarbonate.in(units::kilograms) == Approx(5.0));
  CHECK(wash.water.in(units::litres) == Approx(50.0));
  CHECK(worst.in(units::kilograms) == Approx(32.2 * 0.8381).epsilon(2e-4));
  hold_steps(trace);
  CHECK(trace.find("quantities.neutralise.surface_kg") != nullptr);
  CHECK(trace.find("quantities.neutralise.water_l") != nullptr);
  CHECK(trace.find("quantities.neutralise.sump_worst_kg")->inputs.front().from ==
        "quantities.etch.acid_l");
}

TEST_CASE("exact stoichiometry leaves still water too acid for any sewer") {
  // Carbonic acid holds it near pH 4.2 (closed system), under the 5.0 of 40 CFR 403.5(b)(2).
  const auto even = chem::closed_ph(chem::moles_per_litre(0.01), chem::moles_per_litre(0.01));
  CHECK(even.value() < 4.3);
  CHECK(even.value() > 4.1);
}

TEST_CASE("the demand formula meets the full balance of charge in still water") {
  // Two ways to the same end: the closed formula against the charge balance solved by halving.
  for (const double acid : {0.1, 0.01, 0.001}) {
    for (const double target : {4.6, 5.0, 5.5, 6.0, 6.35, 6.5, 7.0, 7.5, 8.0, 8.3}) {
      const auto strength = chem::moles_per_litre(acid);
      const auto dose = std::get<chem::Molarity>(
          chem::bicarbonate_for(strength, chem::ph(target), chem::Air::still));
      INFO(acid << " mol/L to pH " << target);
      CHECK(chem::closed_ph(strength, dose).value() == Approx(target).margin(1e-6));
    }
  }
}

TEST_CASE("still water needs at least as much as fizzing, and fizzing as aerated") {
  for (const double reading : {0.8, 1.0, 1.5, 2.0, 3.0}) {
    const double still = kilograms(sump(reading, 6.0, chem::Air::still));
    const double fizzing = kilograms(sump(reading, 6.0, chem::Air::fizzing));
    const double aerated = kilograms(sump(reading, 6.0, chem::Air::aerated));
    CHECK(still >= fizzing);
    CHECK(fizzing > aerated);
  }
}

TEST_CASE("readings and targets that no dose can be worked out for are refused") {
  CHECK(refused_text(sump(4.6, 6.0)));
  CHECK(refused_text(sump(5.5, 6.0)));
  CHECK(refused_text(sump(-0.5, 6.0)));
  CHECK(refused_text(sump(2.0, 8.4)));
  CHECK(refused_text(sump(2.0, 4.4)));
  CHECK(refused_text(sump(std::nan(""), 6.0)));
  CHECK(refused_text(sump(2.0, std::nan(""))));
  CHECK_FALSE(refused_text(sump(4.5, 6.0)));
  CHECK_FALSE(refused_text(sump(2.0, 7.0)));
  CHECK_FALSE(refused_text(sump(2.0, 8.3)));
}

TEST_CASE("a dose under air ends at the target by the open balance of charge") {
  // Open to the air the carbon dioxide stays at its own level, 1.4e-5 mol/L, so the mix's charge
  // Na + H = Cl + HCO3 + 2 CO3 + OH can be added up by hand: pK 6.352 and 10.329 at 25 C.
  for (const double target : {6.0, 7.0, 8.0}) {
    const auto acid = chem::moles_per_litre(0.01);
    const auto dose =
        std::get<chem::Molarity>(chem::bicarbonate_for(acid, chem::ph(target), chem::Air::aerated));
    const double single = 1.4e-5 * std::pow(10.0, target - 6.352);
    const double twice = single * std::pow(10.0, target - 10.329);
    const double negative = 0.01 + single + 2.0 * twice + std::pow(10.0, target - 14.0);
    CHECK(dose.in_moles_per_litre() + std::pow(10.0, -target) == Approx(negative));
  }
}

TEST_CASE("the gas bound of a sump dose is one mole for each of acid") {
  // 1000 L at pH 1 hold 100 mol of acid: 100 x 24.055 L.
  const auto dose = std::get<chem::SumpDose>(chem::sump_dose(sump(1.0, 6.0)));
  CHECK(dose.carbon_dioxide.in(units::litres) == Approx(2405.5).epsilon(1e-4));
}

TEST_CASE("strong acid and its pH undo each other") {
  for (const double value : {0.5, 1.0, 2.0, 4.0, 6.0, 6.9}) {
    CHECK(chem::strong_acid_ph(chem::strong_acid_at(chem::ph(value))).value() ==
          Approx(value).margin(1e-9));
  }
  CHECK(chem::strong_acid_at(chem::ph(9.0)).in_moles_per_litre() == 0.0);
}

TEST_CASE("what is no amount breaks the contract") {
  Trace off;
  const chem::WorkedArea negative{units::square_metres(-1.0)};
  CHECK_THROWS_AS(chem::surface_wash(negative, {}, off), std::invalid_argument);
  CHECK_THROWS_AS(chem::sump_worst_case(chem::ordinary_acid_as_sold(), units::litres(-1.0), off),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::closed_ph(chem::moles_per_litre(-1.0), {}), std::invalid_argument);
  CHECK_THROWS_AS(chem::gas_in_shell(units::litres(1.0), {}, chem::chlorine_danger.value),
                  std::invalid_argument);
}

TEST_CASE("the dose of a sump gives its formula") {
  for (const chem::Air air : {chem::Air::still, chem::Air::fizzing, chem::Air::aerated}) {
    Trace trace = Trace::recording();
    const auto made = chem::sump_dose(sump(2.0, 5.0, air), "dose", trace);
    REQUIRE(std::holds_alternative<chem::SumpDose>(made));
    const auto* step = trace.find("dose");
    REQUIRE(step != nullptr);
    CHECK(chemistry_rows::Formula(*step).value() == Approx(step->value.si).epsilon(1e-12));
  }
}

// 838.1 g of pure bicarbonate for a litre of 31.45 % acid; at 80 % purity a quarter more.
TEST_CASE("bicarbonate of less than full purity takes more of it") {
  basinwright::trace::Trace off;
  const basinwright::sources::Sourced<units::Fraction> bag{
      units::percent(80.0), {basinwright::sources::Kind::given, "", "bag"}};
  const auto acid = chem::ordinary_acid_as_sold();
  CHECK(chem::sump_worst_case(acid, units::litres(1.0), bag, off).in(units::grams) ==
        Approx(838.1 / 0.8).epsilon(1e-3));
  // pH 2, fizzing does not matter below saturation: 0.840 g/L of pure bicarbonate to degas.
  chem::Sump sump{units::litres(1000.0), chem::ph(2.0), chem::ph(5.0), chem::Air::aerated};
  sump.purity = bag.value;
  CHECK(std::get<chem::SumpDose>(chem::sump_dose(sump)).bicarbonate.in(units::kilograms) ==
        Approx(0.840 / 0.8).epsilon(2e-3));
  sump.purity = units::fraction(0.0);
  CHECK_THROWS_AS(chem::sump_dose(sump), std::invalid_argument);
}
