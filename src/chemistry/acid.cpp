#include "basinwright/chemistry/acid.hpp"

#include <array>
#include <stdexcept>

#include "basinwright/chemistry/substances.hpp"
#include "basinwright/units/unit.hpp"
#include "constants.hpp"
#include "contract.hpp"
#include "table.hpp"

namespace basinwright::chemistry {
namespace {

constexpr double strongest = 40.0;  // End of the table, percent by mass.

// Mass percent and g/cm3 at 20 C; the row at 0 is water.
constexpr sources::Sourced<std::array<Row, 32>> densities{
    {{{0, 0.9982},  {0.5, 1.0007}, {1, 1.0031},  {2, 1.0081},  {3, 1.0130},  {4, 1.0179},
      {5, 1.0228},  {6, 1.0278},   {7, 1.0327},  {8, 1.0377},  {9, 1.0426},  {10, 1.0476},
      {11, 1.0526}, {12, 1.0576},  {13, 1.0626}, {14, 1.0676}, {15, 1.0726}, {16, 1.0777},
      {17, 1.0828}, {18, 1.0878},  {19, 1.0929}, {20, 1.0980}, {22, 1.1083}, {24, 1.1185},
      {26, 1.1288}, {28, 1.1391},  {30, 1.1492}, {32, 1.1594}, {34, 1.1693}, {36, 1.1791},
      {38, 1.1886}, {40, 1.1977}}},
    {sources::Kind::published, "crc-hcl-density", "table"}};

double density_at(double mass_percent) {
  return interpolate(densities.value, mass_percent);
}

double molarity_at(double mass_percent) {
  return 10.0 * mass_percent * density_at(mass_percent) /
         molar_mass(Substance::hydrogen_chloride).in_grams_per_mole();
}

constexpr sources::Sourced<double> baume_modulus{
    145.0, {sources::Kind::published, "baume-scale", "145 / (145 - B)"}};
// g/cm3 of water where the scale is read, 60 F.
constexpr sources::Sourced<double> scale_water{
    0.99904, {sources::Kind::from_memory, "water-density", "60 F"}};
// g/cm3 lost a kelvin: 0.00046 published at 6 mol/kg, a little more in stronger acid.
constexpr sources::Sourced<double> thermal_slope{
    0.0005, {sources::Kind::assumed, "hcl-density-slope", "15 to 20 C"}};

// Density at 20 C of an acid whose hydrometer floats at 60 F.
double density_from(Baume label) {
  const double warming = 20.0 - (60.0 - 32.0) / 1.8;
  return specific_gravity(label) * scale_water.value - thermal_slope.value * warming;
}

double percent_of(units::Fraction label) {
  return label.in_percent();
}

double percent_of(Baume label) {
  // Past its modulus the scale turns over, so that the density alone would not tell.
  if (!(label.degrees > 0.0)) return 0.0;
  if (label.degrees >= baume_modulus.value) return 2.0 * strongest;
  const double density = density_from(label);
  if (density > densities.value.back().value) return 2.0 * strongest;
  return root_of_rising(density_at, density, 0.0, strongest);
}

double percent_of(Molarity label) {
  const double wanted = label.in_moles_per_litre();
  if (!(wanted > 0.0)) return 0.0;
  if (wanted > molarity_at(strongest)) return 2.0 * strongest;
  return root_of_rising(molarity_at, wanted, 0.0, strongest);
}

Acid acid_of(double mass_percent, sources::Source source) {
  // Of a kilogram.
  constexpr double grams_in_a_percent = 10.0;
  const double density = density_at(mass_percent);
  return {units::percent(mass_percent),
          units::grams_per_litre(density * 1000.0),
          units::grams_per_litre(grams_in_a_percent * mass_percent * density),
          moles_per_litre(molarity_at(mass_percent)),
          source};
}

}  // namespace

double specific_gravity(Baume label) {
  return baume_modulus.value / (baume_modulus.value - label.degrees);
}

Checked<Acid> acid_from_label(const AcidLabel& label, sources::Source source) {
  const double mass_percent = std::visit([](auto said) { return percent_of(said); }, label);
  if (!(mass_percent > 0.0)) return Unfit{"acid must be stronger than 0 %"};
  if (!(mass_percent <= strongest)) {
    return Unfit{"hydrochloric acid is not sold stronger than 40 % by mass"};
  }
  return acid_of(mass_percent, source);
}

Acid ordinary_acid_as_sold() {
  return acid_of(ordinary_acid.value.in_percent(), ordinary_acid.source);
}

const sources::Sourced<units::Concentration>& density_of_water() {
  return water_density;
}

Dilution dilute(const Acid& stock, units::Volume acid, units::Volume water) {
  require_some(acid, "no acid to dilute");
  require_amount(water, "water is negative or not finite");
  const units::Mass mass = acid * stock.density + water * water_density.value;
  const units::Mass chloride = acid * stock.hydrogen_chloride;
  const Acid mix = acid_of(chloride / mass * 100.0, stock.source);
  return {mix, mass / mix.density, mass};
}

Acid mixed(const Acid& stock, Parts parts) {
  return dilute(stock, units::litres(parts.acid), units::litres(parts.water)).mixed;
}

Checked<Parts> parts_for(const Acid& stock, units::Fraction target) {
  if (!(target.share() > 0.0)) return Unfit{"the mix must be stronger than 0 %"};
  if (!(target < stock.strength)) return Unfit{"the mix must be weaker than the acid"};
  const double by_mass = (stock.strength.share() - target.share()) / target.share();
  return Parts{1.0, by_mass * (stock.density / water_density.value)};
}

bool above_published_range(const Acid& mix) {
  return mix.strength > published_etch_high.value;
}

}  // namespace basinwright::chemistry
