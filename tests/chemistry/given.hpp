// Reads the values of a reference row.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <variant>

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/chlorine.hpp"

namespace chemistry_rows {

using nlohmann::json;
namespace chem = basinwright::chemistry;
namespace units = basinwright::units;

inline constexpr basinwright::sources::Source given{
    basinwright::sources::Kind::given, "rows", "label"};

inline double number(const json& input, const char* key) {
  return input.at(key).get<double>();
}
inline bool has(const json& input, const char* key) {
  return input.contains(key);
}

/// The value of a result that must not be refused; throws the reason otherwise.
template <class T>
T fit(const chem::Checked<T>& checked) {
  if (const auto* unfit = std::get_if<chem::Unfit>(&checked))
    throw std::runtime_error(unfit->reason);
  return std::get<T>(checked);
}

inline chem::Acid acid_of(const chem::AcidLabel& label) {
  return fit(chem::acid_from_label(label, given));
}
inline chem::Acid acid_percent(const json& input, const char* key) {
  return acid_of(units::percent(number(input, key)));
}

inline chem::ChlorineStock stock_of(const json& input) {
  const auto made = [](const chem::ChlorineLabel& label) {
    return fit(chem::chlorine_stock(label, given));
  };
  if (has(input, "trade_percent")) return made(chem::TradePercent{number(input, "trade_percent")});
  if (has(input, "granules_percent")) {
    return made(chem::CalciumHypochlorite{units::percent(number(input, "granules_percent"))});
  }
  const auto density = units::grams_per_litre(1000.0 * number(input, "density"));
  if (has(input, "available_mass_percent")) {
    return made(
        chem::AvailableByMass{units::percent(number(input, "available_mass_percent")), density});
  }
  return made(chem::SodiumHypochloriteByMass{
      units::percent(number(input, "hypochlorite_mass_percent")), density});
}

}  // namespace chemistry_rows
