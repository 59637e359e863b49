// Where everything goes on the sheet, and at what scale.
#pragma once

#include <string>
#include <vector>

#include "drawing_scene.hpp"
#include "drawing_sheet.hpp"

namespace basinwright::report {

/// A scene put to scale.
struct Layout {
  int denominator = 1;    ///< Of the scale 1 : n.
  View view;              ///< Of the plan.
  Box plan;               ///< Round the outline.
  Box section;            ///< Round the long section: from the rim to the deepest point.
  double captions = 0.0;  ///< Base line over the plan.
  double bar = 0.0;       ///< Top of the scale bar.
  double foot = 0.0;      ///< Top of the table and the notes.
  bool leftwards = false;

  /// Where a position along the axis stands in the long section.
  [[nodiscard]] double x_of(Length position) const {
    const double mm = view.scale * position.si();
    return leftwards ? zero - mm : zero + mm;
  }
  [[nodiscard]] double y_of(Length depth) const { return section.top + view.scale * depth.si(); }
  double zero = 0.0;  ///< Where position 0 stands.
};

/// Millimetres kept free round the two views for labels and dimensions.
namespace gutters {
inline constexpr double head = 18.0;
inline constexpr double caption = 5.0;
inline constexpr double left = 15.0;
inline constexpr double right = 9.0;
inline constexpr double above = 7.0;
inline constexpr double cuts = 7.0;
inline constexpr double below = 14.0;
inline constexpr double section_above = 6.0;
inline constexpr double section_below = 17.0;
inline constexpr double bar = 9.0;
}  // namespace gutters

/// The largest round scale at which the scene fits on the sheet above a foot of the given height.
[[nodiscard]] Layout layout_of(const Scene& scene, const Sheet& sheet, double foot_height);

/// The plan: outline with its tile band, features, break lines, sections of the coat, the line of
/// the long section.
void draw_plan(Sheet& sheet, const Scene& scene, const Layout& layout);

enum class WallLengths { on_plan, in_notes };
/// Words on the plan: overall dimensions, walls, depths, sections.
/// @return false, and an unfinished plan, when a wall's length found no room on it
bool label_plan(Sheet& sheet, const Scene& scene, const Layout& layout, WallLengths lengths);

/// Depths, and what stands on the floor, on the plan.
void label_depths(Sheet& sheet, const Scene& scene, const Layout& layout);

/// The long section with its depths, water line and tile band.
void draw_long_section(Sheet& sheet, const Scene& scene, const Layout& layout);

/// The pattern of a part of the coat, by its number from the deep end.
[[nodiscard]] document::Fill pattern_of(std::size_t part);

/// The region of the plan between two positions along the axis.
[[nodiscard]] Trail strip(const Scene& scene, const View& view, Length from, Length to);

}  // namespace basinwright::report
