// What the room makes of a reference row, by the subject of its file.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <string>

#include "basinwright/chemistry/checks.hpp"
#include "basinwright/chemistry/degrease.hpp"
#include "basinwright/chemistry/dose.hpp"
#include "basinwright/chemistry/dust.hpp"
#include "basinwright/chemistry/etch.hpp"
#include "basinwright/chemistry/gas.hpp"
#include "basinwright/chemistry/heat.hpp"
#include "basinwright/chemistry/neutralise.hpp"
#include "basinwright/chemistry/saturation.hpp"
#include "basinwright/chemistry/substances.hpp"
#include "basinwright/chemistry/water_units.hpp"
#include "chemistry/given.hpp"

namespace chemistry_rows {

using basinwright::trace::Trace;

inline json acid(const json& in) {
  json out;
  if (has(in, "baume")) out["specific_gravity"] = chem::specific_gravity({number(in, "baume")});
  const chem::Acid made = has(in, "mass_percent") ? acid_percent(in, "mass_percent")
                          : has(in, "baume")
                              ? acid_of(chem::Baume{number(in, "baume")})
                              : acid_of(chem::moles_per_litre(number(in, "molarity")));
  out["mass_percent"] = made.strength.in_percent();
  out["density_kg_m3"] = made.density.in(units::kilograms_per_cubic_metre);
  out["grams_per_litre"] = made.hydrogen_chloride.in(units::grams_per_litre);
  out["molarity"] = made.molarity.in_moles_per_litre();
  return out;
}

inline json dilution(const json& in) {
  const chem::Acid stock = acid_percent(in, "stock_percent");
  json out;
  chem::Parts parts{1.0, 0.0};
  if (has(in, "target_percent")) {
    parts = fit(chem::parts_for(stock, units::percent(number(in, "target_percent"))));
    const auto mix =
        chem::dilute(stock, units::litres(parts.acid), units::litres(parts.water)).volume;
    out["litres_per_100"] = 100.0 * parts.acid / mix.in(units::litres);
    out["water_parts"] = parts.water;
  } else if (has(in, "water_parts")) {
    parts.water = number(in, "water_parts");
  } else {
    parts.water = number(in, "water_l") / number(in, "acid_l");
  }
  const chem::Acid mix = chem::mixed(stock, parts);
  out["mass_percent"] = mix.strength.in_percent();
  out["molarity"] = mix.molarity.in_moles_per_litre();
  out["vapour_ppm"] = chem::vapour_over(mix).by_volume.count();
  if (has(in, "acid_l")) {
    const auto acid_volume = units::litres(number(in, "acid_l"));
    const auto freed = chem::dilution_heat(stock, acid_volume, acid_volume * parts.water);
    out["heat_kj"] = freed.heat.in(chem::kilojoules);
    out["rise_k"] = freed.rise.in(units::kelvins);
  }
  return out;
}

inline json substances(const json& in) {
  json out;
  if (has(in, "element")) {
    const std::array<std::string, 9> symbols{"H", "C", "N", "O", "Na", "P", "S", "Cl", "Ca"};
    for (std::size_t i = 0; i < symbols.size(); ++i) {
      if (symbols.at(i) != in.at("element").get<std::string>()) continue;
      out["atomic_weight"] =
          chem::atomic_weight(static_cast<chem::Element>(i)).value.in_grams_per_mole();
    }
    return out;
  }
  const int last = static_cast<int>(chem::Substance::sodium_sulfite);
  for (int i = 0; i <= last; ++i) {
    const auto substance = static_cast<chem::Substance>(i);
    if (chem::formula(substance) == in.at("formula").get<std::string>()) {
      out["molar_mass"] = chem::molar_mass(substance).in_grams_per_mole();
    }
  }
  return out;
}

inline json bicarbonate(const json& in) {
  json out;
  if (has(in, "moles")) {
    out["gas_l"] = chem::gas_volume(chem::moles(number(in, "moles"))).in(units::litres);
    return out;
  }
  if (has(in, "bicarbonate_kg")) {
    const auto mass = units::kilograms(number(in, "bicarbonate_kg"));
    out["gas_l"] = chem::carbon_dioxide_of(mass).in(units::litres);
    return out;
  }
  const chem::Acid stock = acid_percent(in, "stock_percent");
  if (has(in, "spread_l_m2")) {
    const auto spread = units::litres_per_square_metre(number(in, "spread_l_m2"));
    out["depth_um"] = chem::deepest_etch(stock, spread).in(units::micrometres);
    return out;
  }
  const auto volume = units::litres(number(in, "acid_l"));
  Trace off;
  const auto gas = chem::carbon_dioxide_from_bicarbonate(stock, volume);
  out["bicarbonate_kg"] = chem::sump_worst_case(stock, volume, off).in(units::kilograms);
  out["carbon_dioxide_l"] = gas.in(units::litres);
  out["lime_carbon_dioxide_l"] = chem::carbon_dioxide_from_lime(stock, volume).in(units::litres);
  if (has(in, "shell_m3")) {
    const auto shell = units::cubic_metres(number(in, "shell_m3"));
    out["share_percent"] =
        chem::gas_in_shell(gas, shell, chem::carbon_dioxide_workday.value).share.in_percent();
  }
  return out;
}

inline chem::Air air_of(const json& in) {
  const auto said = in.at("air").get<std::string>();
  return said == "still"     ? chem::Air::still
         : said == "fizzing" ? chem::Air::fizzing
                             : chem::Air::aerated;
}

inline json ph(const json& in) {
  json out;
  if (has(in, "measured_ph")) {
    const auto dose = fit(chem::sump_dose({units::litres(number(in, "water_l")),
                                           chem::ph(number(in, "measured_ph")),
                                           chem::ph(number(in, "target_ph")),
                                           air_of(in)}));
    out["kg"] = dose.bicarbonate.in(units::kilograms);
    return out;
  }
  const auto acid_strength = chem::moles_per_litre(number(in, "acid"));
  out["strong_ph"] = chem::strong_acid_ph(acid_strength).value();
  if (has(in, "bicarbonate")) {
    const auto b = chem::moles_per_litre(number(in, "bicarbonate"));
    out["closed_ph"] = chem::closed_ph(acid_strength, b).value();
  }
  if (has(in, "target_ph")) {
    const auto demand =
        fit(chem::bicarbonate_for(acid_strength, chem::ph(number(in, "target_ph")), air_of(in)));
    out["ratio"] = demand.in_moles_per_litre() / acid_strength.in_moles_per_litre();
    if (has(in, "water_l")) {
      out["kg"] = (demand * units::litres(number(in, "water_l")) *
                   chem::molar_mass(chem::Substance::sodium_bicarbonate))
                      .in(units::kilograms);
    }
  }
  return out;
}

inline json dechlorination(const json& in) {
  const std::map<std::string, chem::Dechlorinator> known{
      {"sodium_thiosulfate", chem::Dechlorinator::sodium_thiosulfate},
      {"sodium_bisulfite", chem::Dechlorinator::sodium_bisulfite},
      {"sodium_metabisulfite", chem::Dechlorinator::sodium_metabisulfite},
      {"sodium_sulfite", chem::Dechlorinator::sodium_sulfite},
      {"ascorbic_acid", chem::Dechlorinator::ascorbic_acid},
      {"sodium_ascorbate", chem::Dechlorinator::sodium_ascorbate}};
  const auto mass =
      chem::dechlorinator_for(known.at(in.at("dechlorinator").get<std::string>()),
                              units::us_gallons(number(in, "water_us_gal")),
                              units::milligrams_per_litre(number(in, "chlorine_mg_l")));
  return {{"pounds", mass.in(units::pounds)}, {"kilograms", mass.in(units::kilograms)}};
}

inline json gas_of(const json& in, units::Mass available) {
  json out;
  const auto gas = chem::chlorine_gas(available);
  out["gas_l"] = gas.in(units::litres);
  if (has(in, "stock_percent")) {
    out["acid_l"] =
        chem::acid_that_frees(available, acid_percent(in, "stock_percent")).in(units::litres);
  }
  if (has(in, "shell_m3")) {
    const auto shell = units::cubic_metres(number(in, "shell_m3"));
    const auto pooled = chem::gas_in_shell(gas, shell, chem::chlorine_danger.value);
    out["gas_ppm"] = pooled.by_volume.count();
    out["air_m3"] = pooled.air_needed.in(units::cubic_metres);
  }
  return out;
}

inline json chlorine(const json& in) {
  if (has(in, "dechlorinator")) return dechlorination(in);
  if (has(in, "available_kg")) return gas_of(in, units::kilograms(number(in, "available_kg")));
  const chem::ChlorineStock stock = stock_of(in);
  if (has(in, "litres")) return gas_of(in, units::litres(number(in, "litres")) * *stock.liquid);
  json out;
  if (has(in, "mix_l")) {
    out["liquid_l"] = fit(chem::liquid_for(units::litres(number(in, "mix_l")),
                                           units::grams_per_litre(number(in, "mix_g_l")),
                                           stock))
                          .in(units::litres);
  }
  if (has(in, "rise_mg_l")) {
    const auto dose = chem::chlorine_dose(units::us_gallons(number(in, "water_us_gal")),
                                          units::milligrams_per_litre(number(in, "rise_mg_l")),
                                          stock);
    out["fluid_ounces"] = dose.liquid.in(units::us_fluid_ounces);
    out["ounces"] = dose.solid.in(units::ounces);
  }
  if (stock.liquid) out["available_g_l"] = stock.liquid->in(units::grams_per_litre);
  return out;
}

}  // namespace chemistry_rows
