// Keys of `surfaces` and `condition`.
#pragma once

#include <array>

#include "field_parts.hpp"

namespace basinwright::readers::tables {

inline constexpr std::array surface{
    Field{.key = "where",
          .type = Type::text,
          .doc = "all, walls, floor, steps or a section's name; the first that matches holds",
          .fallback = "all"},
    Field{.key = "substrate",
          .type = Type::choice,
          .doc = "What the shell is made of",
          .choices = "render concrete plaster_hard plaster_soft pebble fibreglass",
          .fallback = "render"},
    day("laid_on", "When its cement was laid", "long ago"),
    Field{.key = "painted_on",
          .type = Type::year,
          .doc =
              "Year of the oldest paint on it, or unknown: paint of 1978 or before, or of unknown "
              "age, waits for a lead test",
          .low = 1900,
          .high = 2200,
          .fallback = "unknown"},
    Field{.key = "coating",
          .type = Type::choice,
          .doc = "What is on it",
          .choices = "none epoxy other unknown",
          .fallback = "epoxy; other where acetone softened it"},
    Field{.key = "acetone_test",
          .type = Type::choice,
          .doc = "What acetone did to it",
          .choices = "untouched softened not_done",
          .fallback = "not_done: the sheet is provisional"},
    day("tested_on", "When it was tested", "not said"),
    words("places", "Where it was tested"),
    share("bare_share", "Share worn through to the substrate", "0"),
    share("loose_share", "Share of its paint that is loose", "0"),
    yes_no("gloss", "Whether it still has gloss", "true")};

inline constexpr Field size(std::string_view key, std::string_view doc, double high) {
  return {.key = key,
          .type = Type::length,
          .doc = doc,
          .low = 0,
          .high = high,
          .fallback = "not measured"};
}
inline constexpr std::array crack{Field{.key = "width",
                                        .type = Type::length,
                                        .doc = "Of the crack",
                                        .low = 0,
                                        .high = 0.5,
                                        .above_low = true,
                                        .required = true},
                                  Field{.key = "length",
                                        .type = Type::length,
                                        .doc = "Of the crack",
                                        .low = 0,
                                        .high = 1000,
                                        .above_low = true,
                                        .required = true},
                                  size("depth", "Of the crack", 1),
                                  yes_no("moving", "Whether it opens and closes", "false")};
inline constexpr std::array divot{Field{.key = "depth",
                                        .type = Type::length,
                                        .doc = "Of the hollow",
                                        .low = 0,
                                        .high = 1,
                                        .above_low = true,
                                        .required = true},
                                  Field{.key = "area",
                                        .type = Type::area,
                                        .doc = "Of one hollow",
                                        .low = 0,
                                        .high = 1000,
                                        .above_low = true,
                                        .required = true},
                                  Field{.key = "count",
                                        .type = Type::whole,
                                        .doc = "How many",
                                        .low = 1,
                                        .high = 1e5,
                                        .fallback = "1"}};
inline constexpr Field patch(std::string_view key, std::string_view doc) {
  return {
      .key = key, .type = Type::area, .doc = doc, .low = 0, .high = largest_area, .fallback = "0"};
}
inline constexpr std::array condition{
    Field{.key = "algae",
          .type = Type::choice,
          .doc = "Algae on the shell",
          .choices = "none normal heavy",
          .fallback = "none"},
    Field{.key = "oils",
          .type = Type::choice,
          .doc = "Sunscreen and body fats",
          .choices = "normal heavy",
          .fallback = "normal"},
    Field{.key = "cracks",
          .type = Type::list,
          .doc = "Cracks, one by one",
          .fallback = "none",
          .element = Type::object,
          .fields = crack},
    Field{.key = "divots",
          .type = Type::list,
          .doc = "Hollows",
          .fallback = "none",
          .element = Type::object,
          .fields = divot},
    patch("drummy_area", "Render that sounds hollow"),
    patch("blisters", "Blistered paint"),
    yes_no("rust", "Rust spots", "false"),
    yes_no("efflorescence", "White salts on the surface", "false"),
    Field{.key = "lead_test",
          .type = Type::choice,
          .doc = "Whether the old paint holds lead",
          .choices = "clear found not_done",
          .fallback = "not_done: a hold point before abrading"},
    Field{.key = "leak_test",
          .type = Type::choice,
          .doc = "Whether the full pool lost water",
          .choices = "holds leaks not_done",
          .fallback = "not_done"}};

}  // namespace basinwright::readers::tables
