// Short makers of fields that stand in more than one table.
#pragma once

#include <array>

#include "basinwright/readers/field.hpp"

namespace basinwright::readers::tables {

inline constexpr double largest_area = 1e5;
inline constexpr double coldest = 273.15 - 60;
inline constexpr double hottest = 273.15 + 70;

inline constexpr Field words(std::string_view key, std::string_view doc) {
  return {.key = key, .type = Type::text, .doc = doc, .fallback = "not said"};
}
inline constexpr Field day(std::string_view key, std::string_view doc, std::string_view fallback) {
  return {.key = key, .type = Type::date, .doc = doc, .fallback = fallback};
}
inline constexpr Field yes_no(std::string_view key,
                              std::string_view doc,
                              std::string_view fallback) {
  return {.key = key, .type = Type::boolean, .doc = doc, .fallback = fallback};
}
inline constexpr Field share(std::string_view key,
                             std::string_view doc,
                             std::string_view fallback) {
  return {
      .key = key, .type = Type::fraction, .doc = doc, .low = 0, .high = 1, .fallback = fallback};
}
inline constexpr Field texts(std::string_view key, std::string_view doc) {
  return {.key = key, .type = Type::list, .doc = doc, .fallback = "none", .element = Type::text};
}
inline constexpr Field ph(std::string_view key, std::string_view doc, std::string_view fallback) {
  return {.key = key, .type = Type::number, .doc = doc, .low = 0, .high = 14, .fallback = fallback};
}

inline constexpr Field flow(std::string_view key, std::string_view doc, std::string_view fallback) {
  return {.key = key,
          .type = Type::flow,
          .doc = doc,
          .low = 0,
          .high = 1,
          .above_low = true,
          .fallback = fallback};
}
inline constexpr Field lead{.key = "lead",
                            .type = Type::duration,
                            .doc = "Time from order or application",
                            .low = 0,
                            .high = 86400.0 * 400,
                            .fallback = "not said"};

}  // namespace basinwright::readers::tables
