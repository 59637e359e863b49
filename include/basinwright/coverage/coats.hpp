// How many kits a coat takes, and where a coat is cut.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/materials/coating_system.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::coverage {

/// Whole kits for an area: area over cover, rounded up; a hair under a whole kit (1e-9) is one.
/// @throws std::invalid_argument unless the cover is positive and the area not negative
[[nodiscard]] std::int64_t whole_kits(units::Area area, units::Area cover);

/// One coat of the shell.
struct Coat {
  int number = 1;
  units::Area area;
  std::int64_t kits = 0;
  units::Volume paint;    ///< What the area takes.
  units::Volume thinner;  ///< For the first coat on minor bare patches; otherwise none.
};

/// What the coats depend on.
struct CoatPlan {
  units::Area area;
  int coats = 2;
  bool thin_first = false;
  /// Where the number of coats comes from.
  sources::Source coats_from{sources::Kind::given, "", "/coating/coats"};
  /// Areas painted apart, each from kits of its own; empty: the whole in one row of kits.
  std::vector<units::Area> sections;
};

/// The coats with their kits, counted coat by coat since mixed paint cannot be kept.
[[nodiscard]] std::vector<Coat> coats(const CoatPlan& plan,
                                      const materials::CoatingSystem& system,
                                      trace::Trace& trace);

/// Where a coat is cut over mornings: areas deep end first.
struct Cut {
  std::vector<units::Area> sections;
  std::vector<std::int64_t> kits;     ///< One a section.
  std::int64_t painters_for_one = 1;  ///< Painters who would do a coat in one morning.
  std::vector<std::string> names;     ///< One a section; empty: they are numbered.
};

/// What cutting depends on: the cover of a kit, what one painter covers in an hour, how many
/// painters, and the painting time of a morning once the reserves are taken off.
struct Morning {
  units::Area cover;
  units::WorkRate rate;
  int painters = 2;
  units::Duration painting;
};

/// Cuts a coat at kit boundaries into the fewest sections that fit a morning each, kits shared out
/// evenly, the larger ones first (deep end).
/// @return without sections when not even one kit fits a morning
[[nodiscard]] Cut cut(units::Area area, const Morning& morning);

/// The given sections as the cut, each with whole kits of its own; nothing when one of them does
/// not fit a morning.
[[nodiscard]] std::optional<Cut> cut_at(const std::vector<units::Area>& sections,
                                        const Morning& morning);

}  // namespace basinwright::coverage
