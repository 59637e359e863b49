// Keys of `coating`, `crew`, `calendar`, `refill` and `terms`.
#pragma once

#include <array>

#include "field_parts.hpp"

namespace basinwright::readers::tables {

inline constexpr std::array section{
    Field{.key = "name", .type = Type::text, .doc = "As the crew calls it", .required = true},
    Field{.key = "to",
          .type = Type::length,
          .doc = "Where it ends along the axis, coming from the deep end",
          .low = -1e4,
          .high = 1e4,
          .required = true}};
inline constexpr std::array coating{
    words("system", "Name of a coating system in the rate book"),
    Field{.key = "coats",
          .type = Type::whole,
          .doc = "Coats of the coating",
          .low = 1,
          .high = 6,
          .fallback = "the data sheet's least, two"},
    words("colour", "Colour"),
    yes_no("colour_change", "Whether the colour changes, which often takes one coat more", "false"),
    texts("slip_resistant", "Where slip resistance is wanted"),
    Field{.key = "sections",
          .type = Type::list,
          .doc = "Sections to paint in, deep end first",
          .fallback = "as many as the mornings ask for",
          .element = Type::object,
          .fields = section}};

inline constexpr std::array overtime{
    Field{.key = "days",
          .type = Type::list,
          .doc = "Further days worked at overtime",
          .choices = "monday tuesday wednesday thursday friday saturday sunday",
          .fallback = "none",
          .element = Type::choice}};
inline constexpr std::array crew{
    Field{.key = "people",
          .type = Type::whole,
          .doc = "On site",
          .low = 1,
          .high = 50,
          .fallback = "3, assumed"},
    Field{.key = "painters",
          .type = Type::whole,
          .doc = "Of them, how many paint",
          .low = 1,
          .high = 50,
          .fallback = "2, assumed"},
    Field{.key = "hours",
          .type = Type::hours,
          .doc = "From and to",
          .fallback = "07:00 to 16:00, assumed"},
    Field{.key = "working_days",
          .type = Type::list,
          .doc = "Days of the week worked",
          .choices = "monday tuesday wednesday thursday friday saturday sunday",
          .fallback = "Monday to Friday, assumed",
          .element = Type::choice},
    Field{.key = "overtime",
          .type = Type::object,
          .doc = "Work outside those days",
          .fallback = "none",
          .fields = overtime}};
inline constexpr std::array calendar{Field{.key = "closed",
                                           .type = Type::list,
                                           .doc = "Days nobody works",
                                           .fallback = "none",
                                           .element = Type::date},
                                     Field{.key = "painting_hours",
                                           .type = Type::by_month,
                                           .doc = "From and to, for single months",
                                           .fallback = "08:00 to 11:00",
                                           .element = Type::hours},
                                     Field{.key = "first_light",
                                           .type = Type::list,
                                           .doc = "Months in which painting begins at first light; "
                                                  "needs latitude, longitude and utc_offset",
                                           .choices = "january february march april may june july "
                                                      "august september october november december",
                                           .fallback = "none",
                                           .element = Type::choice}};

inline constexpr Field level(std::string_view key,
                             std::string_view doc,
                             std::string_view fallback) {
  return {
      .key = key, .type = Type::number, .doc = doc, .low = 0, .high = 1e5, .fallback = fallback};
}
inline constexpr Field warmth(std::string_view fallback) {
  return {.key = "temperature",
          .type = Type::temperature,
          .doc = "Of the water",
          .low = 273.15,
          .high = 323.15,
          .fallback = fallback};
}
inline constexpr std::array fill_water{
    ph("ph", "pH", "not measured"),
    level("alkalinity", "Total alkalinity, mg/L as calcium carbonate", "not measured"),
    level("hardness", "Calcium hardness, mg/L as calcium carbonate", "not measured"),
    level("stabiliser", "Cyanuric acid, mg/L", "0: none in fresh water, assumed"),
    level("salt", "Salt, mg/L", "not measured"),
    warmth("20 C, assumed")};
inline constexpr std::array pool_water{
    ph("ph", "pH", "7.6"),
    level("alkalinity", "Total alkalinity, mg/L as calcium carbonate", "100"),
    level("hardness", "Calcium hardness, mg/L as calcium carbonate", "200"),
    level("stabiliser", "Cyanuric acid, mg/L", "30"),
    level("salt", "Salt, mg/L, of a salt pool", "3200, assumed"),
    level("free_chlorine", "Free chlorine, mg/L", "3"),
    warmth("20 C, assumed")};
inline constexpr std::array chlorine{
    Field{.key = "kind",
          .type = Type::choice,
          .doc = "What the pool is chlorinated with",
          .choices = "liquid calcium_hypochlorite",
          .fallback = "liquid"},
    Field{.key = "strength",
          .type = Type::fraction,
          .doc = "As on the label: trade percent of liquid, available chlorine of granules",
          .low = 0,
          .high = 1,
          .above_low = true,
          .fallback = "12.5 trade percent, or 65 % of granules"}};
inline constexpr std::array refill{
    flow("flow", "Of the fill", "site tap_flow"),
    Field{.key = "water_price",
          .type = Type::money,
          .doc = "Of one water_unit",
          .low = 0,
          .high = 1e9,
          .fallback = "not priced"},
    Field{.key = "water_unit",
          .type = Type::choice,
          .doc = "What the meter is read in",
          .choices = "m3 kL HCF 1000_US_gal",
          .fallback = "m3"},
    Field{.key = "analysis",
          .type = Type::object,
          .doc = "The fill water",
          .fallback = "not measured",
          .fields = fill_water},
    Field{.key = "targets",
          .type = Type::object,
          .doc = "The pool water wanted",
          .fallback = "the usual ranges",
          .fields = pool_water},
    Field{.key = "chlorine",
          .type = Type::object,
          .doc = "The pool's chlorine",
          .fallback = "liquid",
          .fields = chlorine},
    Field{.key = "first_share",
          .type = Type::fraction,
          .doc = "Of each dose, before the water is read again",
          .low = 0,
          .high = 1,
          .above_low = true,
          .fallback = "50 %, assumed"},
    yes_no("salt_pool", "Whether the pool makes its chlorine from salt", "false")};

inline constexpr std::array stage{
    Field{.key = "event", .type = Type::text, .doc = "When it falls due", .required = true},
    Field{.key = "share",
          .type = Type::fraction,
          .doc = "Of the total",
          .low = 0,
          .high = 1,
          .required = true}};
inline constexpr std::array terms{share("deposit", "Share of the total on order", "none"),
                                  Field{.key = "stages",
                                        .type = Type::list,
                                        .doc = "Payments tied to events; shares sum to all",
                                        .fallback = "all on handover",
                                        .element = Type::object,
                                        .fields = stage},
                                  Field{.key = "validity",
                                        .type = Type::duration,
                                        .doc = "How long the price holds",
                                        .low = 0,
                                        .high = 86400.0 * 366,
                                        .fallback = "job valid_days"},
                                  share("discount", "Off the net price", "none"),
                                  Field{.key = "rounding",
                                        .type = Type::money,
                                        .doc = "Step the total is rounded to, as a line of its own",
                                        .low = 0,
                                        .high = 1e9,
                                        .fallback = "none"},
                                  texts("allowances", "Sums allowed for"),
                                  texts("exclusions", "What is not included"),
                                  texts("notes", "Anything else"),
                                  Field{.key = "warranty",
                                        .type = Type::text,
                                        .doc = "What is warranted, for how long, by whom",
                                        .fallback = "not said"},
                                  Field{.key = "cancellation",
                                        .type = Type::text,
                                        .doc = "Notice of cancellation as the local law has it",
                                        .fallback = "not said"}};

}  // namespace basinwright::readers::tables
