// Reading a drawing back: areas of its trails, where its marks reach, how wide its words run.
#pragma once

#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <vector>

#include "basinwright/document/drawing.hpp"

namespace drawn {

using basinwright::document::Anchor;
using basinwright::document::Drawing;
using basinwright::document::Label;
using basinwright::document::Leg;
using basinwright::document::Shape;
using basinwright::document::Spot;
using basinwright::document::Trail;

struct Extent {
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
  void add(double x, double y) {
    left = std::min(left, x);
    right = std::max(right, x);
    top = std::min(top, y);
    bottom = std::max(bottom, y);
  }
};

/// Angle of the arc seen from its centre, by the chord on the unit circle.
inline double turn_of(Spot from, const Leg& leg) {
  const double phi = leg.turn_deg * std::numbers::pi / 180.0;
  const double dx = leg.to.x - from.x;
  const double dy = leg.to.y - from.y;
  const double u = (std::cos(phi) * dx + std::sin(phi) * dy) / leg.radius_x;
  const double v = (-std::sin(phi) * dx + std::cos(phi) * dy) / leg.radius_y;
  const double half = std::min(1.0, std::hypot(u, v) / 2.0);
  const double angle = 2.0 * std::asin(half);
  return leg.large ? 2.0 * std::numbers::pi - angle : angle;
}

/// Area inside a closed trail: shoelace, and the segment of each arc, rx ry (angle - sin angle) / 2
/// (any table of plane figures; an ellipse is a stretched circle).
inline double area_of(const Trail& trail) {
  double twice = 0.0;
  double segments = 0.0;
  Spot from = trail.from;
  const auto side = [&](Spot to) { twice += from.x * to.y - to.x * from.y; };
  for (const Leg& leg : trail.legs) {
    side(leg.to);
    if (leg.radius_x > 0.0) {
      const double angle = turn_of(from, leg);
      const double segment = leg.radius_x * leg.radius_y * (angle - std::sin(angle)) / 2.0;
      // With y downwards the shoelace counts clockwise as positive.
      segments += leg.clockwise ? segment : -segment;
    }
    from = leg.to;
  }
  side(trail.from);
  return std::abs(twice / 2.0 + segments);
}

/// Where a trail reaches at most: its corners, and beyond them by the height of each arc.
inline void reach(Extent& extent, const Trail& trail) {
  extent.add(trail.from.x, trail.from.y);
  Spot from = trail.from;
  for (const Leg& leg : trail.legs) {
    const double longer = std::max(leg.radius_x, leg.radius_y);
    const double height =
        leg.radius_x > 0.0 ? longer * (1.0 - std::cos(turn_of(from, leg) / 2.0)) : 0.0;
    const Spot middle{(from.x + leg.to.x) / 2.0, (from.y + leg.to.y) / 2.0};
    const double length = std::hypot(leg.to.x - from.x, leg.to.y - from.y);
    if (height > 0.0 && length > 0.0) {
      // Clockwise with y downwards: the arc bows to the left of travel.
      const double side = (leg.clockwise ? height : -height) / length;
      extent.add(middle.x + side * (leg.to.y - from.y), middle.y - side * (leg.to.x - from.x));
    }
    extent.add(leg.to.x, leg.to.y);
    from = leg.to;
  }
}

/// Advance widths of DejaVu Sans in thousandths, from the font's own hmtx table; it is the widest
/// of the sans-serif faces that free systems come with.
inline double advance(char c) {
  static const std::string letters =
      " !\"#$%&'()*+,-./"
      "0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz";
  static const std::vector<int> widths{
      318,  401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337,
      636,  636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531,
      1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787,
      603,  787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500,
      500,  613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612,
      635,  635, 411, 521, 392, 634, 592, 818, 592, 592, 525};
  const auto at = letters.find(c);
  return at == std::string::npos ? 0.64 : widths[at] / 1000.0;
}

inline double width_of(const Label& label) {
  double width = 0.0;
  for (const char c : label.text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80) width += advance(c);
    if (byte >= 0xC0) width += 0.4;  // superscripts, the middle dot and no-break spaces at most
  }
  return width * label.size * (label.bold ? 1.12 : 1.0);
}

/// The ink of a label: capitals stand 0.73 of the size high (the same font's OS/2 table), tails
/// hang 0.24 low.
inline Extent ink_of(const Label& label) {
  constexpr double up = 0.73;
  constexpr double down = 0.2;
  const double width = width_of(label);
  double before = 0.0;
  if (label.anchor == Anchor::middle) before = width / 2.0;
  if (label.anchor == Anchor::end) before = width;
  Extent extent;
  if (label.upwards) {
    extent.add(label.at.x - up * label.size, label.at.y + before);
    extent.add(label.at.x + down * label.size, label.at.y + before - width);
  } else {
    extent.add(label.at.x - before, label.at.y - up * label.size);
    extent.add(label.at.x - before + width, label.at.y + down * label.size);
  }
  return extent;
}

inline bool overlap(const Extent& a, const Extent& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

}  // namespace drawn
