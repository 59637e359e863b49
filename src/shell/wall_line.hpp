// The walls features stand against, and the parts all makers of footprints share.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "features.hpp"
#include "path.hpp"

namespace basinwright::shell {

/// A wall as a straight line.
struct WallLine {
  geometry::Vec start;
  geometry::Vec along;
  double length = 0.0;
  [[nodiscard]] geometry::Vec at(double distance, double inwards) const {
    return start + distance * along + inwards * geometry::left(along);
  }
};

/// The curves of wall `wall`, in order; none when there is no such wall.
[[nodiscard]] std::vector<geometry::Piece> curves_of_wall(const Ground& ground, int wall);

/// The wall as a line; refuses a wall that is not there or not straight.
[[nodiscard]] std::optional<WallLine> straight_wall(int wall,
                                                    const FeaturePlace& place,
                                                    Findings& findings);

/// Refuses what is not positive or under 1 mm: less than footprints are told apart by.
bool measurable(units::Length value,
                const std::string& where,
                std::string_view what,
                Findings& findings);

/// A stretch along a wall of some length.
struct Stretch {
  double from = 0.0;
  double to = 0.0;
};
/// Refuses a stretch that ends beyond the wall; a millimetre over is drawn back.
bool stretch_fits(Stretch& stretch, double wall, const std::string& where, Findings& findings);

/// Which measurements give a footprint its reach and its depth.
struct Pointers {
  std::string reach;
  std::string depth;
};
[[nodiscard]] Footprint footprint(const Corners& corners,
                                  double depth,
                                  const FeaturePlace& place,
                                  Pointers pointers);

}  // namespace basinwright::shell
