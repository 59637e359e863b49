// Keys of the rate book's `coating_systems`, `chemicals` and `packs`.
#pragma once

#include <array>

#include "field_parts.hpp"

namespace basinwright::readers::tables {

inline constexpr std::string_view usual = "the usual data sheet, assumed";

inline constexpr Field time(std::string_view key, std::string_view doc, std::string_view fallback) {
  return {.key = key,
          .type = Type::duration,
          .doc = doc,
          .low = 0,
          .high = 86400.0 * 400,
          .fallback = fallback};
}
inline constexpr Field volume(std::string_view key,
                              std::string_view doc,
                              std::string_view fallback) {
  return {.key = key,
          .type = Type::volume,
          .doc = doc,
          .low = 0,
          .high = 10,
          .above_low = true,
          .fallback = fallback};
}
inline constexpr Field area(std::string_view key, std::string_view doc, std::string_view fallback) {
  return {.key = key,
          .type = Type::area,
          .doc = doc,
          .low = 0,
          .high = largest_area,
          .above_low = true,
          .fallback = fallback};
}
inline constexpr Field heat(std::string_view key, std::string_view doc) {
  return {.key = key,
          .type = Type::temperature,
          .doc = doc,
          .low = coldest,
          .high = hottest,
          .fallback = usual};
}

inline constexpr std::array cover_range{Field{.key = "least",
                                              .type = Type::area,
                                              .doc = "Of a kit, one coat",
                                              .low = 0,
                                              .high = 1e4,
                                              .above_low = true,
                                              .required = true},
                                        Field{.key = "most",
                                              .type = Type::area,
                                              .doc = "Of a kit, one coat",
                                              .low = 0,
                                              .high = 1e4,
                                              .above_low = true,
                                              .required = true}};
inline constexpr std::array time_range{Field{.key = "least",
                                             .type = Type::duration,
                                             .doc = "Not before",
                                             .low = 0,
                                             .high = 86400.0 * 400,
                                             .required = true},
                                       Field{.key = "most",
                                             .type = Type::duration,
                                             .doc = "Not after",
                                             .low = 0,
                                             .high = 86400.0 * 400,
                                             .required = true}};
inline constexpr Field between(std::string_view key, std::string_view doc) {
  return {.key = key, .type = Type::tuple, .doc = doc, .fallback = usual, .fields = time_range};
}
inline constexpr std::array pot_life{Field{.key = "time",
                                           .type = Type::duration,
                                           .doc = "From the start of mixing",
                                           .low = 0,
                                           .high = 86400.0 * 400,
                                           .above_low = true,
                                           .fallback = usual},
                                     heat("at", "Temperature of that time")};
inline constexpr std::array limits{
    heat("air_min", "Lowest air temperature"),
    heat("air_max", "Highest air temperature"),
    time("air_after", "How long after painting the air limits still hold", usual),
    heat("shell_min", "Lowest shell temperature"),
    heat("shell_max", "Highest shell temperature"),
    Field{.key = "dew_margin",
          .type = Type::temperature_difference,
          .doc = "Shell above the dew point",
          .low = 0,
          .high = 20,
          .fallback = usual},
    share("humidity_max", "Highest relative humidity", usual),
    time("rain_free_after", "No rain for so long after painting", usual),
    time("dry_before", "No rain for so long before a coat", usual)};
inline constexpr std::array primer{volume("kit", "Of both parts", usual),
                                   area("cover", "Of a kit", usual),
                                   between("window", "[least, most] from primer to first coat")};
inline constexpr std::array cure{time("warm", "Before filling at 20 C or more", usual),
                                 time("cold", "Before filling at 10 C or less", usual)};
inline constexpr std::array system_keys{
    words("source", "Title and revision of the data sheet"),
    volume("kit", "Of both parts", usual),
    Field{.key = "cover",
          .type = Type::tuple,
          .doc = "[least, most] area of a kit, one coat, loss included",
          .fallback = usual,
          .fields = cover_range},
    between("recoat", "[least, most] from a coat to the next"),
    between("induction", "[least, most] standing time after mixing"),
    Field{.key = "pot_life",
          .type = Type::object,
          .doc = "Working time of a mix",
          .fallback = usual,
          .fields = pot_life},
    Field{.key = "limits",
          .type = Type::object,
          .doc = "Weather and surface limits",
          .fallback = usual,
          .fields = limits},
    texts("hardeners", "Kinds of Part B"),
    Field{.key = "primer",
          .type = Type::object,
          .doc = "Primer of the same system",
          .fallback = usual,
          .fields = primer},
    volume("thinner", "Thinner a kit for a thinned first coat", usual),
    Field{.key = "cure",
          .type = Type::object,
          .doc = "Before filling",
          .fallback = usual,
          .fields = cure},
    time("quiet_start", "Nothing but salt or chlorine for so long after filling", usual),
    Field{.key = "coats",
          .type = Type::whole,
          .doc = "Least number of coats",
          .low = 1,
          .high = 6,
          .fallback = "2"},
    yes_no("strong_etch", "Whether the sheet asks for neat or 1 : 1 acid", "false"),
    yes_no("planned_rework", "Whether a recoat window may be missed on purpose", "false")};

inline constexpr Field price(std::string_view key,
                             std::string_view doc,
                             std::string_view fallback) {
  return {.key = key, .type = Type::money, .doc = doc, .low = 0, .high = 1e9, .fallback = fallback};
}
inline constexpr std::array pack{
    Field{.key = "size",
          .type = Type::pack_size,
          .doc = "What a pack holds: a volume, a mass or a number of pieces",
          .required = true},
    Field{.key = "price",
          .type = Type::money,
          .doc = "Of a pack, without tax",
          .low = 0,
          .high = 1e9,
          .required = true},
    Field{.key = "stock",
          .type = Type::whole,
          .doc = "Packs to be had",
          .low = 0,
          .high = 1e6,
          .fallback = "as many as wanted"},
    words("supplier", "Who sells it"),
    words("batch", "Batch of Part A")};
inline constexpr Field own_packs{.key = "packs",
                                 .type = Type::list,
                                 .doc = "How it is sold, when it does not stand among all packs",
                                 .fallback = "as in packs",
                                 .element = Type::object,
                                 .fields = pack};

inline constexpr Field rinses(std::string_view fallback) {
  return {.key = "rinses",
          .type = Type::whole,
          .doc = "Rinses after it, for the water that leaves",
          .low = 0,
          .high = 20,
          .fallback = fallback};
}
inline constexpr Field water_parts(std::string_view key,
                                   std::string_view doc,
                                   std::string_view fallback) {
  return {.key = key, .type = Type::number, .doc = doc, .low = 0, .high = 30, .fallback = fallback};
}
inline constexpr std::array etch_ratios{
    water_parts("painted", "On abraded epoxy, whatever is below it", "2"),
    water_parts("new_render", "On cement render up to 90 days old", "2"),
    water_parts("render", "On older cement render", "3"),
    water_parts("concrete", "On concrete", "3, assumed"),
    water_parts("plaster_soft", "On plaster that a nail scratches", "1 if the sheet asks, else 2"),
    water_parts("plaster_hard", "On hard plaster", "0 if the sheet asks, else 2"),
    water_parts("pebble", "On exposed aggregate", "3")};
inline constexpr Field etch_rate(std::string_view key, std::string_view doc) {
  return {.key = key,
          .type = Type::application_rate,
          .doc = doc,
          .low = 0,
          .high = 0.1,
          .above_low = true,
          .fallback = "as rate"};
}
inline constexpr std::array etch_rates{
    etch_rate("painted", "On abraded epoxy, whatever is below it"),
    etch_rate("new_render", "On cement render up to 90 days old"),
    etch_rate("render", "On older cement render"),
    etch_rate("concrete", "On concrete"),
    etch_rate("plaster_soft", "On plaster that a nail scratches"),
    etch_rate("plaster_hard", "On hard plaster"),
    etch_rate("pebble", "On exposed aggregate, of its counted area")};
inline constexpr std::array acid{
    rinses("1, assumed"),
    own_packs,
    // The density table of the chemistry room ends here, and no stronger acid is sold.
    Field{.key = "strength",
          .type = Type::fraction,
          .doc = "Hydrogen chloride by mass, as on the label",
          .low = 0,
          .high = 0.40,
          .above_low = true,
          .fallback = "31.45 %; or degrees_baume or mol_per_litre"},
    Field{.key = "degrees_baume",
          .type = Type::number,
          .doc = "The label's degrees Baume instead of its strength",
          .low = 0,
          .high = 30,
          .above_low = true,
          .fallback = "strength"},
    Field{.key = "mol_per_litre",
          .type = Type::number,
          .doc = "The label's mol/L instead of its strength",
          .low = 0,
          .high = 13.14,
          .above_low = true,
          .fallback = "strength"},
    volume("bucket", "How far a mixing bucket is filled", "10 L, assumed"),
    volume("can", "How far a watering can is filled", "5 L, assumed"),
    Field{.key = "rate",
          .type = Type::application_rate,
          .doc = "Solution an area",
          .low = 0,
          .high = 0.1,
          .above_low = true,
          .fallback = "1.05 L/m2, assumed"},
    Field{.key = "ratio",
          .type = Type::object,
          .doc =
              "Parts of water to one of acid, surface by surface; under 2 only where the coating "
              "system asks for strong_etch",
          .fallback = "usual",
          .fields = etch_ratios},
    Field{.key = "rates",
          .type = Type::object,
          .doc = "Solution an area, surface by surface",
          .fallback = "as rate",
          .fields = etch_rates},
    share("wall_share", "Share of the solution for the walls", "two thirds"),
    Field{.key = "pebble_factor",
          .type = Type::number,
          .doc = "Area of exposed aggregate over its flat area",
          .low = 1,
          .high = 3,
          .fallback = "1.2, assumed"}};
inline constexpr std::array hypochlorite{own_packs,
                                         rinses("2, assumed"),
                                         Field{.key = "kind",
                                               .type = Type::choice,
                                               .doc = "What the label's strength is of: grams of "
                                                      "available chlorine in 100 mL, available "
                                                      "chlorine or sodium hypochlorite by weight, "
                                                      "or granules",
                                               .choices = "trade available_by_weight "
                                                          "sodium_by_weight calcium_hypochlorite",
                                               .fallback = "trade"},
                                         Field{.key = "strength",
                                               .type = Type::fraction,
                                               .doc = "As on the label, by its kind",
                                               .low = 0,
                                               .high = 1,
                                               .above_low = true,
                                               .fallback = "trade_percent; granules 65 %"},
                                         Field{.key = "density",
                                               .type = Type::concentration,
                                               .doc = "Of a liquid said by weight",
                                               .low = 1000,
                                               .high = 1400,
                                               .fallback = "1160 g/L"},
                                         Field{.key = "trade_percent",
                                               .type = Type::number,
                                               .doc = "Grams of available chlorine in 100 mL",
                                               .low = 0,
                                               .high = 25,
                                               .above_low = true,
                                               .fallback = "12.5, assumed"},
                                         Field{.key = "wash_strength",
                                               .type = Type::concentration,
                                               .doc = "Available chlorine in the wash",
                                               .low = 0,
                                               .high = 250,
                                               .above_low = true,
                                               .fallback = "12.5 g/L"},
                                         Field{.key = "rate",
                                               .type = Type::application_rate,
                                               .doc = "Wash an area",
                                               .low = 0,
                                               .high = 0.1,
                                               .above_low = true,
                                               .fallback = "0.5 L/m2, assumed"}};
inline constexpr std::array degreaser{
    own_packs,
    rinses("1, assumed"),
    volume("concentrate", "In a mix: with water, its strength", "0.5 L"),
    volume("water", "In a mix", "20 L"),
    Field{.key = "cover",
          .type = Type::spreading_rate,
          .doc = "Area a volume of mix washes",
          .low = 0,
          .high = 1e6,
          .above_low = true,
          .fallback = "4.5 m2/L, assumed"}};
inline constexpr std::array bicarbonate{
    own_packs,
    rinses("2, assumed"),
    Field{
        .key = "strength",
        .type = Type::fraction,
        .doc = "Sodium bicarbonate in what is sold; divides what the sump and the pool water take",
        .low = 0,
        .high = 1,
        .above_low = true,
        .fallback = "100 %, assumed"},
    area("area_per_kg", "Surface that a kilogram neutralises in all", "18 m2, from 5 kg per 90 m2"),
    Field{.key = "mix",
          .type = Type::concentration,
          .doc = "In warm water",
          .low = 0,
          .high = 100,
          .above_low = true,
          .fallback = "100 g/L"}};
inline constexpr std::array chemicals{Field{.key = "acid",
                                            .type = Type::object,
                                            .doc = "Hydrochloric acid",
                                            .fallback = "usual",
                                            .fields = acid},
                                      Field{.key = "hypochlorite",
                                            .type = Type::object,
                                            .doc = "For the chlorine wash",
                                            .fallback = "usual",
                                            .fields = hypochlorite},
                                      Field{.key = "degreaser",
                                            .type = Type::object,
                                            .doc = "For the degreasing wash",
                                            .fallback = "usual",
                                            .fields = degreaser},
                                      Field{.key = "bicarbonate",
                                            .type = Type::object,
                                            .doc = "For the neutralising wash",
                                            .fallback = "usual",
                                            .fields = bicarbonate},
                                      Field{.key = "rinse",
                                            .type = Type::application_rate,
                                            .doc = "Water of one rinse an area",
                                            .low = 0,
                                            .high = 0.1,
                                            .above_low = true,
                                            .fallback = "5 L/m2, assumed"}};

}  // namespace basinwright::readers::tables
