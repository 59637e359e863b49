// A trade number with where it comes from.
#pragma once

#include <string_view>

namespace basinwright::sources {

/// What stands behind a number.
enum class Kind {
  published,        ///< A document; `key` names it in docs/sources.md.
  common_practice,  ///< What the trade does; no document.
  from_memory,      ///< A document quoted from memory; to be checked before relying on it.
  assumed,          ///< Ours, with the reason in docs/sources.md.
  data_sheet,       ///< The product's data sheet in the rate book.
  given             ///< The user's own job file or rate book.
};

/// Where a number comes from. `key` resolves to a heading of docs/sources.md for every kind but
/// `data_sheet` and `given`; `place` is the section, table or key there. Both views must outlive
/// the source: use string literals (field keys for what the user gave).
struct Source {
  Kind kind = Kind::assumed;
  std::string_view key;
  std::string_view place;
};

/// A constant with its source.
template <class T>
struct Sourced {
  T value{};
  Source source;
};

/// The kind in the words the output uses.
[[nodiscard]] std::string_view name(Kind kind);

}  // namespace basinwright::sources
