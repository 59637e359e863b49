// From the measurements of an outline to corners or an ellipse.
#pragma once

#include <optional>

#include "basinwright/shell/pool.hpp"
#include "findings.hpp"
#include "path.hpp"

namespace basinwright::shell {

/// An outline as measured and settled, before it is placed.
struct Plot {
  Corners corners;  ///< Empty for an ellipse.
  std::optional<geometry::EllipseFrame> ellipse;
  bool turned = false;  ///< It was given clockwise.
};

/// Checks every measurement and makes the settled outline; nothing when any is refused.
[[nodiscard]] std::optional<Plot> plot(const Outline& outline, Findings& findings);

/// One maker a kind: refuses bad measurements and leaves the corners out then.
[[nodiscard]] Corners corners_of(const Rectangle& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const RoundedRectangle& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const LShape& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const Circle& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const Stadium& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const Kidney& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const Offsets& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const TwoTape& shape, Findings& findings);
[[nodiscard]] Corners corners_of(const Path& shape, Findings& findings);

/// Bulge of the arc from a to b through m; 0 when the three are in line.
[[nodiscard]] double bulge_through(geometry::Vec a, geometry::Vec m, geometry::Vec b);

/// The part of `place` that is not finite is refused.
bool check_place(const Outline& outline, Findings& findings);

/// A point turned and moved by `place`.
[[nodiscard]] geometry::Vec turned_by(const std::optional<Place>& place, geometry::Vec p);
[[nodiscard]] geometry::Vec moved_by(const std::optional<Place>& place, geometry::Vec p);

}  // namespace basinwright::shell
