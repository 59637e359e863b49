// A pool as a tape can measure it. Depths run down from the rim (the underside of the coping).
#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"

namespace basinwright::shell {

using units::Length;

/// A point on the plan, and the bend of the edge to the next one: bulge = tan(arc angle / 4),
/// positive bends outward on a counter-clockwise outline, 0 is straight.
struct PathPoint {
  Length x;
  Length y;
  double bulge = 0.0;
};

struct Rectangle {
  Length length, width;
};
struct RoundedRectangle {
  Length length, width, corner_radius;
};
struct LShape {
  Length length, width, notch_length, notch_width;
};
struct Circle {
  Length diameter;
};
/// Straight sides and half-round ends.
struct Stadium {
  Length length, width;
};
struct Ellipse {
  Length length, width;
};
/// Four tangent arcs.
struct Kidney {
  Length shallow_radius, deep_radius, centres, outer_radius, inner_radius;
};
struct Station {
  Length distance, near, far;
};
enum class Curve { straight, arcs };
/// Offsets to the near and far side at stations along a baseline.
struct Offsets {
  Curve curve = Curve::straight;
  std::vector<Station> stations;
};
/// Two tapes from the ends of a baseline; side +1 left of it, -1 right.
struct TapePoint {
  Length from_a, from_b;
  int side = 1;
  double bulge = 0.0;
};
struct TwoTape {
  Length baseline;
  std::vector<TapePoint> points;
};
struct Path {
  std::vector<PathPoint> points;
};

using OutlineShape = std::variant<Rectangle,
                                  RoundedRectangle,
                                  LShape,
                                  Circle,
                                  Stadium,
                                  Ellipse,
                                  Kidney,
                                  Offsets,
                                  TwoTape,
                                  Path>;

/// Moves the outline and the features tied to its walls; floor coordinates are those after placing.
struct Place {
  double rotation_deg = 0.0;
  Length dx, dy;
};
struct Outline {
  OutlineShape shape;
  std::optional<Place> place;
};

struct ConstantFloor {
  Length depth;
};
struct BreakPoint {
  Length distance, depth;
};
/// Piecewise linear depth along an axis, flat beyond both ends; two depths at one distance are a
/// vertical drop.
struct BreaksFloor {
  std::vector<BreakPoint> points;
  double axis_deg = 0.0;
  Length origin_x, origin_y;
};
/// `[x0, y0, x1, y1]` rectangles: base depth outside `outer`, `depth` inside `inner`.
struct HopperFloor {
  Length base_depth, depth;
  std::array<Length, 4> outer, inner;
};
struct SpotDepth {
  Length x, y, depth;
};
struct SpotDepthsFloor {
  std::vector<SpotDepth> points;
  std::vector<std::array<int, 3>> triangles;  ///< Empty: Delaunay.
};
using Floor = std::variant<ConstantFloor, BreaksFloor, HopperFloor, SpotDepthsFloor>;

/// Walls are outline edges, numbered from 0; a footprint lies on the inside.
struct StraightSteps {
  int wall = 0;
  Length from, width;
  std::vector<Length> treads, depths;
};
struct Bench {
  int wall = 0;
  Length from, length, width, depth;
};
struct CornerSteps {
  int corner = 0;
  std::vector<Length> radii, depths;
};
struct RoundSteps {
  int wall = 0;
  Length at;
  std::vector<Length> radii, depths;
};
struct Block {
  std::vector<PathPoint> path;
  Length depth;
};
struct Pit {
  std::vector<PathPoint> path;
  Length depth;
};
using Feature = std::variant<StraightSteps, Bench, CornerSteps, RoundSteps, Block, Pit>;

/// A tape check between two outline vertices.
struct TapeCheck {
  int from = 0, to = 0;
  Length measured;
};

/// One body of water.
struct Pool {
  std::string name;
  Outline outline;
  Floor floor;
  std::vector<Feature> features;
  Length rim_to_paint;  ///< Height of the unpainted tile band.
  Length rim_to_water;
  Length cove_radius;      ///< 0: none.
  double wall_lean = 0.0;  ///< Metres in per metre of depth.
  units::Fraction tape_tolerance;
  std::vector<TapeCheck> checks;
  std::optional<Length> wall_thickness, slab_thickness;
};

}  // namespace basinwright::shell
