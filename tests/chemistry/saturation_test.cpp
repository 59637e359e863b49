#include "basinwright/chemistry/saturation.hpp"

#include <cmath>

#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;

namespace {

units::Concentration mg_per_litre(double value) {
  return units::milligrams_per_litre(value);
}

chem::Water tap_water() {
  chem::Water water;
  water.ph = chem::ph(7.5);
  water.alkalinity = mg_per_litre(60.0);
  water.hardness = mg_per_litre(100.0);
  water.temperature = units::celsius(25.0);
  return water;
}

}  // namespace

TEST_CASE("each index is named and refuses water outside its method") {
  using enum chem::IndexMethod;
  CHECK(chem::name(regulation_table) != chem::name(standard_equations));
  CHECK(chem::name(corrected_equations) == "saturation index, corrected");
  CHECK(chem::source(regulation_table).key == "10-nycrr-6-1.30");
  const auto refused = [](const chem::Water& water, chem::IndexMethod method) {
    return std::holds_alternative<chem::Unfit>(chem::saturation_index(water, method));
  };
  chem::Water soft = tap_water();
  soft.hardness = mg_per_litre(2.0);
  CHECK(refused(soft, regulation_table));
  CHECK_FALSE(refused(soft, standard_equations));
  soft.hardness = mg_per_litre(0.0);
  CHECK(refused(soft, standard_equations));
  CHECK(refused(soft, engineering_formula));
  chem::Water hot = tap_water();
  hot.temperature = units::fahrenheit(129.0);
  CHECK(refused(hot, regulation_table));
  chem::Water edge = tap_water();
  edge.temperature = units::fahrenheit(128.0);
  edge.hardness = mg_per_litre(1000.0);
  edge.alkalinity = mg_per_litre(5.0);
  CHECK_FALSE(refused(edge, regulation_table));
  chem::Water swamped = tap_water();
  swamped.stabiliser = mg_per_litre(400.0);
  CHECK(refused(swamped, corrected_equations));
}

// The factors of the table are, to its one decimal, log10 of the alkalinity and log10 of the
// hardness less 0.4: the definition of the index at one temperature (APHA 2330 B). Temperatures as
// printed in 10 NYCRR 6-1.30.
TEST_CASE("every row of the table of the regulation is the logarithm it stands for") {
  const auto index = [](const chem::Water& water) {
    return std::get<chem::SaturationIndex>(
               chem::saturation_index(water, chem::IndexMethod::regulation_table))
        .value;
  };
  const auto tenths = [](double value) { return std::round(value * 10.0) / 10.0; };
  chem::Water water = tap_water();
  water.ph = chem::ph(7.0);
  water.temperature = units::fahrenheit(76.0);
  for (const double row :
       {5.0, 25.0, 50.0, 75.0, 100.0, 150.0, 200.0, 300.0, 400.0, 800.0, 1000.0}) {
    INFO(row);
    water.dissolved_solids = mg_per_litre(500.0);
    water.hardness = mg_per_litre(100.0);
    water.alkalinity = mg_per_litre(row);
    CHECK(index(water) == Approx(7.0 + 0.6 + 1.6 + tenths(std::log10(row)) - 12.1).margin(1e-9));
    water.alkalinity = mg_per_litre(100.0);
    water.hardness = mg_per_litre(row);
    CHECK(index(water) ==
          Approx(7.0 + 0.6 + tenths(std::log10(row) - 0.4) + 2.0 - 12.1).margin(1e-9));
  }
  water.hardness = mg_per_litre(100.0);
  const double degrees[] = {32, 37, 46, 53, 60, 66, 76, 84, 94, 105, 128};
  for (std::size_t i = 0; i < std::size(degrees); ++i) {
    INFO(degrees[i]);
    water.temperature = units::fahrenheit(degrees[i]);
    const double factor = static_cast<double>(i) / 10.0;
    CHECK(index(water) == Approx(7.0 + factor + 1.6 + 2.0 - 12.1).margin(1e-9));
  }
}

TEST_CASE("solids that nobody measured are what is known to be dissolved") {
  chem::Water water = tap_water();
  water.salt = mg_per_litre(3000.0);
  // By hand: 3000 + 60 + 100.
  CHECK(chem::dissolved_solids_of(water).in(units::milligrams_per_litre) == Approx(3160.0));
  water.dissolved_solids = mg_per_litre(420.0);
  CHECK(chem::dissolved_solids_of(water).in(units::milligrams_per_litre) == Approx(420.0));
}

TEST_CASE("the stabiliser lowers the corrected index by the logarithm of what it takes away") {
  chem::Water water = tap_water();
  water.stabiliser = mg_per_litre(50.0);
  water.dissolved_solids = mg_per_litre(1000.0);
  const auto value = [&water](chem::IndexMethod method) {
    return std::get<chem::SaturationIndex>(chem::saturation_index(water, method)).value;
  };
  // Published table: 0.313 of 50 mg/L is taken off the 60 at pH 7.5.
  CHECK(value(chem::IndexMethod::corrected_equations) -
            value(chem::IndexMethod::standard_equations) ==
        Approx(std::log10((60.0 - 0.313 * 50.0) / 60.0)).margin(5e-4));
}
