// Every unit name the readers of quantities know, one table for each kind.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

namespace basinwright::units {

/// What a unit without a fraction bar measures.
enum class Kind { none, length, area, volume, mass, duration, degree, share };

/// A unit and how people write it.
struct UnitName {
  std::string_view symbol;  ///< As hints say it.
  double factor;            ///< SI units in one; percent for a share.
  /// Spellings parted by `|`. A blank stands for any number of blanks, 2 and 3 also for ^2, ², ^3
  /// and ³; capitals do not matter unless the spelling begins with `=`.
  std::string_view spellings;
  std::string_view instead = {};  ///< Not empty: the name has several meanings; write one of these.
};

/// The table of one kind, commonest first.
[[nodiscard]] std::span<const UnitName> names_of(Kind kind);

/// One of 0 to 9.
[[nodiscard]] constexpr bool digit(char c) {
  return c >= '0' && c <= '9';
}

/// A unit name found at the start of a text.
struct NameMatch {
  const UnitName* name = nullptr;
  Kind kind = Kind::none;
  std::size_t length = 0;  ///< Bytes.
};

/// Whether capitals must be as the table says.
enum class Case { as_listed, ignored };

/// The longest unit name of any kind that `text` begins with and that ends there as a word does;
/// `wanted` wins among equally long ones.
[[nodiscard]] NameMatch match_name(std::string_view text, Kind wanted, Case letters);

/// Bytes of the blank (space, tab, no-break or thin space) that `text` begins with, or 0.
[[nodiscard]] std::size_t blank_length(std::string_view text);

}  // namespace basinwright::units
