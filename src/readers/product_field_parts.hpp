// Rows that many keys of a product share.
#pragma once

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
          .low = 0.1,
          .high = largest_area,
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

}  // namespace basinwright::readers::tables
