// What the room makes of the reference rows about water and whole jobs; the list of all subjects.
#pragma once

#include "chemistry/subjects.hpp"

namespace chemistry_rows {

inline json checks(const json& in) {
  if (has(in, "disc_inches")) {
    const auto drawn = chem::dust_extraction(units::inches(number(in, "disc_inches")));
    return {{"extraction_cfm", drawn / units::Flow::from_si(units::cubic_feet.factor / 60.0)}};
  }
  const auto area = has(in, "square_feet") ? units::square_feet(number(in, "square_feet"))
                                           : units::square_metres(number(in, "square_metres"));
  return {{"ph_readings", chem::ph_readings(area)}, {"dryness_sheets", chem::dryness_sheets(area)}};
}

inline chem::Additive additive_of(const json& in) {
  const std::map<std::string, chem::Additive> additives{
      {"sodium_bicarbonate", chem::Additive::sodium_bicarbonate},
      {"sodium_carbonate", chem::Additive::sodium_carbonate},
      {"sodium_bisulfate", chem::Additive::sodium_bisulfate},
      {"calcium_chloride", chem::Additive::calcium_chloride},
      {"calcium_chloride_dihydrate", chem::Additive::calcium_chloride_dihydrate},
      {"stabiliser", chem::Additive::stabiliser},
      {"salt", chem::Additive::salt}};
  return additives.at(in.at("additive").get<std::string>());
}

inline json doses(const json& in) {
  const auto water = units::us_gallons(number(in, "water_us_gal"));
  const auto change = units::milligrams_per_litre(number(in, "change_mg_l"));
  if (has(in, "additive")) {
    const auto purity = units::percent(in.value("purity_percent", 100.0));
    const auto mass = chem::additive_dose(additive_of(in), water, change, purity);
    return {{"pounds", mass.in(units::pounds)}, {"grams", mass.in(units::grams)}};
  }
  if (has(in, "acid_percent")) {
    const auto volume = chem::acid_dose(water, change, acid_percent(in, "acid_percent"));
    return {{"fluid_ounces", volume.in(units::us_fluid_ounces)},
            {"millilitres", volume.in(units::millilitres)}};
  }
  const auto dose = chem::chlorine_dose(water, change, stock_of(in));
  return {{"fluid_ounces", dose.liquid.in(units::us_fluid_ounces)},
          {"ounces", dose.solid.in(units::ounces)}};
}

inline chem::Water water_of(const json& in) {
  chem::Water water;
  water.ph = chem::ph(number(in, "ph"));
  water.alkalinity = units::milligrams_per_litre(number(in, "alkalinity"));
  water.hardness = units::milligrams_per_litre(in.value("hardness", 200.0));
  water.stabiliser = units::milligrams_per_litre(in.value("stabiliser", 0.0));
  water.temperature = units::fahrenheit(in.value("fahrenheit", 77.0));
  if (has(in, "solids")) water.dissolved_solids = units::milligrams_per_litre(number(in, "solids"));
  return water;
}

inline json saturation(const json& in) {
  if (has(in, "celsius")) {
    const auto constants = chem::carbonate_constants(units::celsius(number(in, "celsius")));
    return {
        {"first", constants.first}, {"second", constants.second}, {"calcite", constants.calcite}};
  }
  const std::map<std::string, chem::IndexMethod> methods{
      {"regulation_table", chem::IndexMethod::regulation_table},
      {"standard_equations", chem::IndexMethod::standard_equations},
      {"corrected_equations", chem::IndexMethod::corrected_equations},
      {"engineering_formula", chem::IndexMethod::engineering_formula}};
  const chem::Water water = water_of(in);
  json out;
  if (has(in, "method")) {
    const auto method = methods.at(in.at("method").get<std::string>());
    out["index"] = fit(chem::saturation_index(water, method)).value;
  }
  const auto carbonate = chem::carbonate_alkalinity(water);
  out["carbonate_alkalinity"] = carbonate.in(units::milligrams_per_litre);
  if (water.stabiliser.si() > 0.0) {
    out["stabiliser_share"] = (water.alkalinity - carbonate) / water.stabiliser;
  }
  return out;
}

inline json water_units(const json& in) {
  json out;
  if (has(in, "bucket_us_gal")) {
    const auto flow = chem::bucket_test(units::us_gallons(number(in, "bucket_us_gal")),
                                        units::seconds(number(in, "seconds")));
    out["gpm"] = flow.in(units::us_gallons_per_minute);
    return out;
  }
  const auto volume = has(in, "hcf")  ? chem::hundred_cubic_feet(number(in, "hcf"))
                      : has(in, "kl") ? chem::kilolitres(number(in, "kl"))
                                      : units::us_gallons(number(in, "us_gallons"));
  out["us_gallons"] =
      1000.0 * chem::billed_units(volume, chem::thousand_us_gallons, chem::Metering::exact);
  out["litres"] = volume.in(units::litres);
  out["imperial_gallons"] = volume.in(units::imperial_gallons);
  out["kl"] = volume.in(chem::kilolitres);
  const auto& hcf = chem::hundred_cubic_feet;
  out["hcf"] = chem::billed_units(volume, hcf, chem::Metering::exact);
  out["hcf_nearest"] = chem::billed_units(volume, hcf, chem::Metering::nearest);
  out["hcf_whole"] = chem::billed_units(volume, hcf, chem::Metering::whole);
  if (has(in, "gpm") || has(in, "litres_per_minute")) {
    const auto flow = has(in, "gpm") ? units::us_gallons_per_minute(number(in, "gpm"))
                                     : units::litres_per_minute(number(in, "litres_per_minute"));
    out["hours"] = chem::fill_time(volume, flow).in(units::hours);
  }
  return out;
}

inline json typical_pool(const json& in) {
  const chem::WorkedArea area{units::square_metres(number(in, "square_metres"))};
  const chem::Acid stock = acid_percent(in, "stock_percent");
  Trace off;
  const chem::EtchPatch patch{"all", area, chem::EtchPart::whole, {}};
  const auto etched = fit(chem::etch({patch}, stock, {}, off));
  const auto wash = chem::surface_wash(area, {}, off);
  const auto degreased = chem::degrease(area, {}, off);
  return {{"etch_acid_l", etched.acid.in(units::litres)},
          {"mix_percent", etched.mixes.front().mixed.strength.in_percent()},
          {"surface_kg", wash.bicarbonate.in(units::kilograms)},
          {"surface_water_l", wash.water.in(units::litres)},
          {"concentrate_l", degreased.concentrate.in(units::litres)},
          {"degrease_water_l", degreased.water.in(units::litres)}};
}

/// The function for each subject.
inline const std::map<std::string, std::function<json(const json&)>>& by_subject() {
  static const std::map<std::string, std::function<json(const json&)>> functions{
      {"chemistry-acid", acid},
      {"chemistry-dilution", dilution},
      {"chemistry-substances", substances},
      {"chemistry-bicarbonate", bicarbonate},
      {"chemistry-ph", ph},
      {"chemistry-chlorine", chlorine},
      {"chemistry-checks", checks},
      {"chemistry-doses", doses},
      {"chemistry-saturation", saturation},
      {"chemistry-water-units", water_units},
      {"chemistry-typical-pool", typical_pool}};
  return functions;
}

}  // namespace chemistry_rows
