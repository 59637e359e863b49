#include "outlines.hpp"

#include <numbers>

#include "basinwright/shell/outline.hpp"

namespace basinwright::shell {

namespace {

using geometry::Vec;

constexpr std::string_view outline_at = "/outline";

double quarter_turn() {
  return std::numbers::sqrt2 - 1.0;
}  // tan(pi / 8)

Corner corner(double x, double y, double bulge = 0.0) {
  return {{x, y}, bulge, std::string(outline_at)};
}

bool sides(const Length& length, const Length& width, Findings& findings) {
  const bool a = findings.positive(length, "/outline/length", "the length");
  const bool b = findings.positive(width, "/outline/width", "the width");
  return a && b;
}

// A radius of exactly half a side leaves no straight edge there.
void drop_empty_edges(Corners& corners) {
  Corners kept;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Corner& next = corners[(i + 1) % corners.size()];
    const bool empty = corners[i].bulge == 0.0 &&
                       geometry::norm(next.at - corners[i].at) < geometry::shortest_edge * 1e-3;
    if (!empty) kept.push_back(corners[i]);
  }
  corners = std::move(kept);
}

std::optional<geometry::EllipseFrame> frame_of(const Ellipse& shape, Findings& findings) {
  if (!sides(shape.length, shape.width, findings)) return std::nullopt;
  const double a = shape.length.si() / 2.0;
  const double b = shape.width.si() / 2.0;
  if (std::numbers::pi * a * b < 1e-4) {
    findings.refuse("zero-area", std::string(outline_at), "the ellipse encloses no area");
    return std::nullopt;
  }
  return geometry::EllipseFrame{{a, b}, {1.0, 0.0}, a, b};
}

std::string whole_path(const OutlineShape& shape) {
  if (std::holds_alternative<Offsets>(shape)) return "/outline/stations";
  if (std::holds_alternative<TwoTape>(shape) || std::holds_alternative<Path>(shape)) {
    return "/outline/points";
  }
  return std::string(outline_at);
}

}  // namespace

Corners corners_of(const Rectangle& shape, Findings& findings) {
  if (!sides(shape.length, shape.width, findings)) return {};
  const double l = shape.length.si();
  const double w = shape.width.si();
  return {corner(0, 0), corner(l, 0), corner(l, w), corner(0, w)};
}

Corners corners_of(const RoundedRectangle& shape, Findings& findings) {
  const bool sound = sides(shape.length, shape.width, findings);
  if (!findings.positive(shape.corner_radius, "/outline/corner_radius", "the corner radius") ||
      !sound) {
    return {};
  }
  const double l = shape.length.si();
  const double w = shape.width.si();
  const double r = shape.corner_radius.si();
  if (2.0 * r > std::min(l, w) * (1.0 + 1e-12)) {
    findings.refuse("radius-too-large",
                    "/outline/corner_radius",
                    "the corner radius is more than half the shorter side (" +
                        in_metres(std::min(l, w) / 2.0) + ")");
    return {};
  }
  const double q = quarter_turn();
  Corners corners{corner(r, 0),
                  corner(l - r, 0, q),
                  corner(l, r),
                  corner(l, w - r, q),
                  corner(l - r, w),
                  corner(r, w, q),
                  corner(0, w - r),
                  corner(0, r, q)};
  drop_empty_edges(corners);
  return corners;
}

Corners corners_of(const LShape& shape, Findings& findings) {
  bool sound = sides(shape.length, shape.width, findings);
  sound &= findings.positive(shape.notch_length, "/outline/notch_length", "the notch length");
  sound &= findings.positive(shape.notch_width, "/outline/notch_width", "the notch width");
  if (!sound) return {};
  const double l = shape.length.si();
  const double w = shape.width.si();
  const double nl = shape.notch_length.si();
  const double nw = shape.notch_width.si();
  if (nl >= l) {
    findings.refuse(
        "notch-too-large", "/outline/notch_length", "the notch is as long as the pool or longer");
  }
  if (nw >= w) {
    findings.refuse(
        "notch-too-large", "/outline/notch_width", "the notch is as wide as the pool or wider");
  }
  if (nl >= l || nw >= w) return {};
  return {corner(0, 0),
          corner(l, 0),
          corner(l, w - nw),
          corner(l - nl, w - nw),
          corner(l - nl, w),
          corner(0, w)};
}

Corners corners_of(const Circle& shape, Findings& findings) {
  if (!findings.positive(shape.diameter, "/outline/diameter", "the diameter")) return {};
  const double d = shape.diameter.si();
  return {corner(0, d / 2.0, 1.0), corner(d, d / 2.0, 1.0)};
}

Corners corners_of(const Stadium& shape, Findings& findings) {
  if (!sides(shape.length, shape.width, findings)) return {};
  const double l = shape.length.si();
  const double w = shape.width.si();
  if (l < w) {
    findings.refuse("radius-too-large",
                    "/outline/width",
                    "half-round ends across the width do not fit the length",
                    "length is the longer side");
    return {};
  }
  const double r = w / 2.0;
  Corners corners{corner(r, 0), corner(l - r, 0, 1.0), corner(l - r, w), corner(r, w, 1.0)};
  drop_empty_edges(corners);
  return corners;
}

bool check_place(const Outline& outline, Findings& findings) {
  if (!outline.place) return true;
  const Place& place = *outline.place;
  const bool a = findings.finite(place.rotation_deg, "/outline/place/rotation_deg", "the rotation");
  const bool b = findings.finite(place.dx.si(), "/outline/place/dx", "dx");
  const bool c = findings.finite(place.dy.si(), "/outline/place/dy", "dy");
  return a && b && c;
}

std::optional<Plot> plot(const Outline& outline, Findings& findings) {
  const bool placed = check_place(outline, findings);
  if (const auto* ellipse = std::get_if<Ellipse>(&outline.shape)) {
    const auto frame = frame_of(*ellipse, findings);
    if (!frame || !placed) return std::nullopt;
    return Plot{{}, frame};
  }
  const std::size_t before = findings.refusals();
  Plot made;
  made.corners = std::visit(
      [&](const auto& shape) {
        if constexpr (std::is_same_v<std::decay_t<decltype(shape)>, Ellipse>) {
          return Corners{};
        } else {
          return corners_of(shape, findings);
        }
      },
      outline.shape);
  if (findings.refusals() != before) return std::nullopt;
  const Settled settled = settle(made.corners, whole_path(outline.shape), findings);
  if (settled == Settled::refused || !placed) return std::nullopt;
  made.turned = settled == Settled::turned;
  return made;
}

Vec turned_by(const std::optional<Place>& place, Vec p) {
  return place ? geometry::turned(p, geometry::from_degrees(place->rotation_deg)) : p;
}

Vec moved_by(const std::optional<Place>& place, Vec p) {
  const Vec turned = turned_by(place, p);
  return place ? turned + Vec{place->dx.si(), place->dy.si()} : turned;
}

std::variant<OutlinePath, std::vector<Fault>> outline_path(const Outline& outline) {
  Findings findings;
  const auto made = plot(outline, findings);
  if (!made) return findings.faults();
  if (made->ellipse) {
    const Vec centre = moved_by(outline.place, made->ellipse->centre);
    return OutlinePath{EllipsePath{Length::from_si(centre.x),
                                   Length::from_si(centre.y),
                                   Length::from_si(made->ellipse->a),
                                   Length::from_si(made->ellipse->b),
                                   outline.place ? outline.place->rotation_deg : 0.0}};
  }
  VertexPath path;
  path.reserve(made->corners.size());
  for (const Corner& c : made->corners) {
    const Vec p = moved_by(outline.place, c.at);
    path.push_back({Length::from_si(p.x), Length::from_si(p.y), c.bulge});
  }
  return OutlinePath{std::move(path)};
}

}  // namespace basinwright::shell
