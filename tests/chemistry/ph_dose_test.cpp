// Acid and soda ash for a pH. Against the balance of a closed vessel, solved another way (its own
// rows are held against a titration table in chemistry_ph.json), and against hand calculations.
#include "basinwright/chemistry/ph_dose.hpp"

#include <cmath>

#include "basinwright/chemistry/neutralise.hpp"
#include "chemistry/steps.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;
using basinwright::sources::Sourced;
using basinwright::trace::Trace;

namespace {

Sourced<chem::Ph> wanted(double value) {
  return {chem::ph(value), {basinwright::sources::Kind::given, "", "/refill/targets/ph"}};
}

chem::Water water(double at_ph, double alkalinity) {
  chem::Water w;
  w.ph = chem::ph(at_ph);
  w.alkalinity = units::milligrams_per_litre(alkalinity);
  w.temperature = units::celsius(25.0);
  return w;
}

double litres_of(double now, double to, double alkalinity = 100.0) {
  Trace off;
  return chem::acid_to_ph(units::cubic_metres(50.0),
                          water(now, alkalinity),
                          wanted(to),
                          chem::ordinary_acid_as_sold(),
                          off)
      .in(units::litres);
}

double kg_of(double now, double to) {
  Trace off;
  return chem::soda_ash_to_ph(units::cubic_metres(50.0), water(now, 100.0), wanted(to), off)
      .in(units::kilograms);
}

}  // namespace

// Bicarbonate at 2 mmol/L with 0.2 mmol/L of acid is a closed vessel whose pH the charge balance
// gives; from pH 8.3 (bicarbonate alone, alkalinity 2 meq/L = 100.086 mg/L) the same acid must be
// asked for. In 50 m3: 10 mol, at 9.977 mol/L (31.45 %) 1.0023 L.
TEST_CASE("acid for a pH is what a closed vessel needs") {
  const auto b = chem::moles_per_litre(0.002);
  const chem::Ph start = chem::closed_ph(chem::moles_per_litre(0.0), b);
  const chem::Ph end = chem::closed_ph(chem::moles_per_litre(0.0002), b);
  CHECK(start.value() == Approx(8.34).margin(0.05));
  // Hydroxide is left out of the dose: under a thousandth of the alkalinity at pH 8.3.
  CHECK(litres_of(start.value(), end.value(), 100.086) == Approx(1.0023).epsilon(0.02));
}

// By hand at 25 C (pK1 6.352, pK2 10.329): charge for each mole of carbonate r(8.2) = 0.99338,
// r(7.6) = 0.94838; A = 100/50.043 = 1.99828 mol/m3, C = 2.01159; spent A - C r(7.6) = 0.09052
// mol/m3, 4.526 mol in 50 m3, 0.4536 L.
TEST_CASE("acid from pH 8.2 to 7.6 by hand") {
  CHECK(litres_of(8.2, 7.6) == Approx(0.4536).epsilon(0.01));
  // Charge and carbonate go with the alkalinity, so the dose does, down to none.
  CHECK(litres_of(8.2, 7.6, 10.0) == Approx(0.04536).epsilon(0.01));
  CHECK(litres_of(8.2, 7.6, 0.0) == 0.0);
  CHECK(litres_of(7.6, 7.6) == 0.0);
  CHECK(litres_of(7.2, 7.6) == 0.0);
}

// By hand: r(7.0) = 0.81684, C = 2.44635; x = (2.44635 x 0.94838 - 1.99828) / (2 - 0.94838)
// = 0.30600 mol/m3; 50 m3 and 105.988 g/mol: 1.6216 kg.
TEST_CASE("soda ash from pH 7.0 to 7.6 by hand") {
  CHECK(kg_of(7.0, 7.6) == Approx(1.6216).epsilon(0.01));
  CHECK(kg_of(7.8, 7.6) == 0.0);
}

// Bicarbonate pulls any water towards its own pH of 8.34, and never past it.
TEST_CASE("bicarbonate moves the pH towards 8.34") {
  const auto after = [](double at_ph, double rise) {
    return chem::ph_after_bicarbonate(water(at_ph, 60.0), units::milligrams_per_litre(rise))
        .value();
  };
  CHECK(after(7.4, 0.0) == Approx(7.4).margin(1e-9));
  CHECK(after(7.4, 40.0) > 7.4);
  CHECK(after(7.4, 40.0) < 8.34);
  CHECK(after(7.4, 1e5) == Approx(8.34).margin(0.01));
  CHECK(after(8.9, 40.0) < 8.9);
}

TEST_CASE("each pH dose gives its formula") {
  Trace trace = Trace::recording();
  static_cast<void>(chem::acid_to_ph(units::cubic_metres(50.0),
                                     water(8.2, 120.0),
                                     wanted(7.5),
                                     chem::ordinary_acid_as_sold(),
                                     trace));
  static_cast<void>(
      chem::soda_ash_to_ph(units::cubic_metres(50.0), water(7.0, 80.0), wanted(7.5), trace));
  CHECK(trace.steps().size() == 2);
  chemistry_rows::hold_steps(trace);
}

TEST_CASE("a dose is refused for water that cannot be") {
  Trace off;
  auto odd = water(8.0, -1.0);
  CHECK_THROWS_AS(chem::soda_ash_to_ph(units::cubic_metres(1.0), odd, wanted(8.5), off),
                  std::invalid_argument);
  CHECK_THROWS_AS(
      chem::soda_ash_to_ph(units::cubic_metres(-1.0), water(7.0, 80.0), wanted(7.5), off),
      std::invalid_argument);
}
