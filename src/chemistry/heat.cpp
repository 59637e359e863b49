#include "basinwright/chemistry/heat.hpp"

#include <array>

#include "basinwright/chemistry/substances.hpp"
#include "table.hpp"

namespace basinwright::chemistry {
namespace {

// Molality and kJ/mol set free on dilution without end, 25 C.
constexpr sources::Sourced<std::array<Row, 19>> heats{
    {{{0, 0},
      {0.1, 0.556},
      {0.2, 0.761},
      {0.5, 1.172},
      {1, 1.695},
      {1.5, 2.167},
      {2, 2.623},
      {2.5, 3.063},
      {3, 3.506},
      {3.5, 3.958},
      {4, 4.402},
      {5, 5.318},
      {6, 6.268},
      {7, 7.217},
      {8, 8.201},
      {9, 9.213},
      {10, 10.24},
      {15, 15.40},
      {20, 19.87}}},
    {sources::Kind::published, "crc-heat-of-dilution", "table"}};

// Mass percent and kJ/(kg K); the row at 0 is water.
constexpr sources::Sourced<std::array<Row, 8>> specific_heats{
    {{{0, 4.18},
      {10, 3.47},
      {20, 2.99},
      {30, 2.60},
      {32, 2.55},
      {34, 2.50},
      {36, 2.46},
      {38, 2.43}}},
    {sources::Kind::published, "hcl-heat-capacity", "table"}};

double heat_at(units::Fraction strength) {
  const double molality = strength.share() / (1.0 - strength.share()) /
                          molar_mass(Substance::hydrogen_chloride).in_grams_per_mole() * 1000.0;
  return interpolate(heats.value, molality);
}

}  // namespace

DilutionHeat dilution_heat(const Acid& stock, units::Volume acid, units::Volume water) {
  const Dilution dilution = dilute(stock, acid, water);
  const double amount = (stock.molarity * acid).count();
  const double freed = amount * (heat_at(stock.strength) - heat_at(dilution.mixed.strength));
  const double capacity =
      dilution.mass.si() * interpolate(specific_heats.value, dilution.mixed.strength.in_percent());
  return {kilojoules(freed), units::kelvins(freed / capacity)};
}

}  // namespace basinwright::chemistry
