#include "basinwright/chemistry/saturation.hpp"

#include <array>
#include <cmath>
#include <initializer_list>
#include <span>

#include "basinwright/chemistry/substances.hpp"
#include "basinwright/units/unit.hpp"
#include "table.hpp"

namespace basinwright::chemistry {
namespace {

using sources::Kind;
using sources::Sourced;

double milligrams(units::Concentration content) {
  return content.in(units::milligrams_per_litre);
}

// Fahrenheit and temperature factor; mg/L and hardness or alkalinity factor.
constexpr sources::Sourced<std::array<Row, 11>> temperature_factors{
    {{{32, 0.0},
      {37, 0.1},
      {46, 0.2},
      {53, 0.3},
      {60, 0.4},
      {66, 0.5},
      {76, 0.6},
      {84, 0.7},
      {94, 0.8},
      {105, 0.9},
      {128, 1.0}}},
    {sources::Kind::published, "10-nycrr-6-1.30", "table"}};
constexpr sources::Sourced<std::array<Row, 11>> hardness_factors{
    {{{5, 0.3},
      {25, 1.0},
      {50, 1.3},
      {75, 1.5},
      {100, 1.6},
      {150, 1.8},
      {200, 1.9},
      {300, 2.1},
      {400, 2.2},
      {800, 2.5},
      {1000, 2.6}}},
    {sources::Kind::published, "10-nycrr-6-1.30", "table"}};
constexpr sources::Sourced<std::array<Row, 11>> alkalinity_factors{
    {{{5, 0.7},
      {25, 1.4},
      {50, 1.7},
      {75, 1.9},
      {100, 2.0},
      {150, 2.2},
      {200, 2.3},
      {300, 2.5},
      {400, 2.6},
      {800, 2.9},
      {1000, 3.0}}},
    {sources::Kind::published, "10-nycrr-6-1.30", "table"}};

// What is taken off, and from how much dissolved the larger one.
constexpr sources::Sourced<double> fresh_constant{12.1,
                                                  {Kind::published, "10-nycrr-6-1.30", "formula"}};
constexpr sources::Sourced<double> salty_constant{12.2, {Kind::published, "arm-37-115", "table 7"}};
constexpr sources::Sourced<units::Concentration> salty_from{
    units::milligrams_per_litre(1000.0), {Kind::published, "arm-37-115", "table 7"}};
constexpr sources::Sourced<double> stabiliser_first{
    6.88, {Kind::published, "stabiliser-correction", "first dissociation"}};

bool covers(std::span<const Row> rows, double at) {
  // A reading on the last row may come back from SI with its last bit changed.
  constexpr double rounding = 1.0e-9;
  return at >= rows.front().at - rounding && at <= rows.back().at + rounding;
}

// Where a value's derivation is recorded; nowhere without a key.
struct Record {
  std::string_view key;
  trace::Trace* trace = nullptr;
  double operator()(double value,
                    std::string_view formula,
                    std::initializer_list<trace::Operand> operands) const {
    return trace == nullptr ? value : trace->note(key, value, formula, operands);
  }
};

constexpr sources::Source reading{Kind::given, "", "/refill"};

Checked<double> by_table(const Water& water, const Record& record) {
  const double fahrenheit = water.temperature.in(units::fahrenheit);
  const double hardness = milligrams(water.hardness);
  const double alkalinity = milligrams(water.alkalinity);
  if (!covers(temperature_factors.value, fahrenheit))
    return Unfit{"temperature is outside the table"};
  if (!covers(hardness_factors.value, hardness)) return Unfit{"hardness is outside the table"};
  if (!covers(alkalinity_factors.value, alkalinity))
    return Unfit{"alkalinity is outside the table"};
  const bool salty = dissolved_solids_of(water) > salty_from.value;
  const Sourced<double> warm{interpolate(temperature_factors.value, fahrenheit),
                             temperature_factors.source};
  const Sourced<double> hard{interpolate(hardness_factors.value, hardness),
                             hardness_factors.source};
  const Sourced<double> alkaline{interpolate(alkalinity_factors.value, alkalinity),
                                 alkalinity_factors.source};
  const Sourced<double>& constant = salty ? salty_constant : fresh_constant;
  return record(water.ph.value() + warm.value + hard.value + alkaline.value - constant.value,
                "ph + warmth + hardness + alkalinity - constant",
                {{"ph", water.ph.value(), reading},
                 {"warmth", warm},
                 {"hardness", hard},
                 {"alkalinity", alkaline},
                 {"constant", constant}});
}

// Logarithm of a divalent ion's activity coefficient is 4 of these, a single one's 1 (Davies).
double activity_exponent(units::Temperature temperature, double dissolved_milligrams) {
  const double kelvin = temperature.si();
  const double ionic_strength = dissolved_milligrams / 40000.0;
  const double dielectric = 60954.0 / (kelvin + 116.0) - 68.937;
  const double slope = 1.82e6 * std::pow(dielectric * kelvin, -1.5);
  const double root = std::sqrt(ionic_strength);
  return slope * (root / (1.0 + root) - 0.3 * ionic_strength);
}

double by_equations(const Water& water, units::Concentration alkalinity, const Record& record) {
  const CarbonateConstants constants = carbonate_constants(water.temperature);
  const double calcite = molar_mass(Substance::calcium_carbonate).in_grams_per_mole();
  const double equivalent = calcium_carbonate_equivalent().in_grams_per_mole();
  const double calcium = -std::log10(milligrams(water.hardness) / 1000.0 / calcite);
  const double bicarbonate = -std::log10(milligrams(alkalinity) / 1000.0 / equivalent);
  const double exponent =
      activity_exponent(water.temperature, milligrams(dissolved_solids_of(water)));
  const double saturated =
      constants.second - constants.calcite + calcium + bicarbonate + 5.0 * exponent;
  constexpr sources::Source standard{Kind::from_memory, "apha-2330b", "equations"};
  return record(water.ph.value() - saturated,
                "ph - (second - calcite + calcium + bicarbonate + 5 * activity)",
                {{"ph", water.ph.value(), reading},
                 {"second", constants.second, standard},
                 {"calcite", constants.calcite, standard},
                 {"calcium", calcium, reading},
                 {"bicarbonate", bicarbonate, reading},
                 {"activity", exponent, standard}});
}

double by_formula(const Water& water, const Record& record) {
  const double solids = (std::log10(milligrams(dissolved_solids_of(water))) - 1.0) / 10.0;
  const double warmth = -13.12 * std::log10(water.temperature.in(units::celsius) + 273.0) + 34.55;
  const double calcium = std::log10(milligrams(water.hardness)) - 0.4;
  const double alkalinity = std::log10(milligrams(water.alkalinity));
  constexpr sources::Source printed{
      Kind::published, "engineering-saturation", "equations 8.26 to 8.31"};
  return record(water.ph.value() - ((9.3 + solids + warmth) - (calcium + alkalinity)),
                "ph - ((9.3 + solids + warmth) - (calcium + alkalinity))",
                {{"ph", water.ph.value(), reading},
                 {"solids", solids, printed},
                 {"warmth", warmth, printed},
                 {"calcium", calcium, reading},
                 {"alkalinity", alkalinity, reading}});
}

Checked<double> value_by(const Water& water, IndexMethod method, const Record& record) {
  if (method == IndexMethod::regulation_table) return by_table(water, record);
  const double celsius = water.temperature.in(units::celsius);
  if (!(celsius >= 0.0 && celsius <= 90.0)) return Unfit{"temperature is not 0 to 90 C"};
  if (!(water.hardness.si() > 0.0)) return Unfit{"water without hardness has no index"};
  const units::Concentration alkalinity =
      method == IndexMethod::corrected_equations ? carbonate_alkalinity(water) : water.alkalinity;
  if (!(alkalinity.si() > 0.0)) return Unfit{"water without carbonate alkalinity has no index"};
  if (method == IndexMethod::engineering_formula) return by_formula(water, record);
  return by_equations(water, alkalinity, record);
}

}  // namespace

units::Concentration dissolved_solids_of(const Water& water) {
  return water.dissolved_solids.value_or(water.salt + water.alkalinity + water.hardness);
}

std::string_view name(IndexMethod method) {
  switch (method) {
    case IndexMethod::regulation_table:
      return "saturation index, regulation table";
    case IndexMethod::standard_equations:
      return "saturation index, standard equations";
    case IndexMethod::corrected_equations:
      return "saturation index, corrected";
    case IndexMethod::engineering_formula:
      return "saturation index, engineering formula";
  }
  return "";
}

sources::Source source(IndexMethod method) {
  switch (method) {
    case IndexMethod::regulation_table:
      return {Kind::published, "10-nycrr-6-1.30", "table"};
    case IndexMethod::standard_equations:
      return {Kind::from_memory, "apha-2330b", "equations"};
    case IndexMethod::corrected_equations:
      return {Kind::from_memory, "stabiliser-correction", "with apha-2330b"};
    case IndexMethod::engineering_formula:
      return {Kind::published, "engineering-saturation", "equations 8.26 to 8.31"};
  }
  return {};
}

Checked<SaturationIndex> saturation_index(const Water& water, IndexMethod method) {
  const Checked<double> value = value_by(water, method, {});
  if (const Unfit* unfit = std::get_if<Unfit>(&value)) return *unfit;
  return SaturationIndex{std::get<double>(value), method};
}

Checked<SaturationIndex> saturation_index(const Water& water,
                                          IndexMethod method,
                                          std::string_view key,
                                          trace::Trace& trace) {
  const Checked<double> value = value_by(water, method, {key, &trace});
  if (const Unfit* unfit = std::get_if<Unfit>(&value)) return *unfit;
  return SaturationIndex{std::get<double>(value), method};
}

units::Concentration carbonate_alkalinity(const Water& water) {
  const double ionised = 1.0 / (1.0 + std::pow(10.0, stabiliser_first.value - water.ph.value()));
  const double equivalent = calcium_carbonate_equivalent().in_grams_per_mole() /
                            molar_mass(Substance::cyanuric_acid).in_grams_per_mole();
  return water.alkalinity - water.stabiliser * (equivalent * ionised);
}

CarbonateConstants carbonate_constants(units::Temperature temperature) {
  const double t = temperature.si();
  const double logarithm = std::log10(t);
  return {356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * logarithm + 1684915.0 / (t * t),
          107.8871 + 0.03252849 * t - 5151.79 / t - 38.92561 * logarithm + 563713.9 / (t * t),
          171.9065 + 0.077993 * t - 2839.319 / t - 71.595 * logarithm};
}

}  // namespace basinwright::chemistry
