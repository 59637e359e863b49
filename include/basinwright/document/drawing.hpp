// A drawing before any format: lines, arcs, patterns and texts where they stand on a sheet.
//
// All places and sizes are millimetres on the sheet, from its top left corner, y downwards. Nothing
// here is to scale by itself: whoever makes a drawing has scaled it.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace basinwright::document {

enum class Paper { a4, letter };

/// A place on the sheet.
struct Spot {
  double x = 0.0;
  double y = 0.0;
};

/// The way to the next place: straight, or along a circular or elliptical arc.
struct Leg {
  Spot to;
  double radius_x = 0.0;  ///< 0: straight.
  double radius_y = 0.0;
  double turn_deg = 0.0;   ///< Of the x radius, clockwise as seen.
  bool large = false;      ///< Along the larger part of the ellipse.
  bool clockwise = false;  ///< As seen.
};

/// A chain of legs.
struct Trail {
  Spot from;
  std::vector<Leg> legs;
  bool closed = false;
};

enum class Dash { solid, dashed, dotted, chain };

/// How a line is drawn; no line with a width of 0.
struct Pen {
  double width = 0.0;
  Dash dash = Dash::solid;
  bool white = false;  ///< Paper instead of ink.
};

/// What an area is filled with; patterns instead of colours, so that any printer will do.
enum class Fill { none, paper, ink, shade, rising, falling, dots, upright, level, crossed };

/// Lines and areas.
struct Shape {
  std::string name;  ///< What it shows, for whoever reads the file: "outline".
  std::vector<Trail> trails;
  Pen pen;
  Fill fill = Fill::none;
  std::vector<Trail> within;  ///< Only what lies inside these is seen; none: all of it.
};

enum class Anchor { start, middle, end };

/// A line of text.
struct Label {
  std::string name;  ///< What it says, for whoever reads the file: "wall-length".
  std::string text;
  Spot at;            ///< On the base line, at the anchor.
  double size = 2.6;  ///< Of the letters, as a font's size is said.
  Anchor anchor = Anchor::start;
  bool upwards = false;  ///< Runs up the sheet.
  bool bold = false;
};

using Mark = std::variant<Shape, Label>;

/// One sheet. Marks are drawn in their order, the later over the earlier.
struct Drawing {
  std::string title;
  std::string description;  ///< For those who cannot see it: what it shows, in a few sentences.
  double width = 210.0;
  double height = 297.0;
  std::vector<Mark> marks;
};

}  // namespace basinwright::document
