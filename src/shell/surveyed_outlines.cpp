// Outlines whose corners are worked out from circles, offsets or tapes.
#include <algorithm>
#include <numbers>

#include "limits.hpp"
#include "outlines.hpp"

namespace basinwright::shell {

namespace {

using geometry::Vec;

struct MeasuredKidney {
  double r1, r2, centres, outer, inner;
};

bool kidney_closes(const MeasuredKidney& k, Findings& findings) {
  const auto refuse = [&](const char* where, const std::string& message) {
    findings.refuse("circles-do-not-meet", where, message);
  };
  const std::size_t before = findings.refusals();
  const auto at_least = [](double least) { return "; it must be over " + in_metres(least); };
  const double apart = std::abs(k.r1 - k.r2);
  if (k.centres <= apart) {
    refuse("/outline/centres", "one end circle lies inside the other" + at_least(apart));
  }
  const double outer = std::max({(k.centres + k.r1 + k.r2) / 2.0, k.r1, k.r2});
  if (k.outer <= outer) {
    refuse("/outline/outer_radius",
           "the outer arc is too small to enclose both end circles" + at_least(outer));
  }
  const double inner = (k.centres - k.r1 - k.r2) / 2.0;
  if (k.inner <= inner) {
    refuse("/outline/inner_radius",
           "the inner arc is too small to touch both end circles" + at_least(inner));
  }
  return findings.refusals() == before;
}

// The point below the line of centres at the given distances from both.
Vec below_centres(const MeasuredKidney& k, double from_first, double from_second) {
  const double along =
      (from_first * from_first - from_second * from_second + k.centres * k.centres) /
      (2.0 * k.centres);
  return {k.r1 + along, -std::sqrt(std::max(0.0, from_first * from_first - along * along))};
}

// Bulge of the arc about `centre` from a to b, counter-clockwise or clockwise.
double bulge_about(Vec centre, Vec a, Vec b, bool clockwise) {
  const Vec p = a - centre;
  const Vec q = b - centre;
  double angle = std::atan2(cross(p, q), dot(p, q));
  if (clockwise) angle = -angle;
  if (angle < 0.0) angle += 2.0 * std::numbers::pi;
  const double bulge = std::tan(angle / 4.0);
  return clockwise ? -bulge : bulge;
}

struct Side {
  std::vector<Vec> points;
  std::vector<std::string> where;
};

void add_side(Corners& corners, const Side& side, Curve curve) {
  const std::size_t n = side.points.size();
  const std::size_t step = curve == Curve::arcs ? 2 : 1;
  for (std::size_t i = 0; i < n; i += step) {
    double bulge = 0.0;
    if (step == 2 && i + 2 < n) {
      bulge = bulge_through(side.points[i], side.points[i + 1], side.points[i + 2]);
    }
    const bool closes = !corners.empty() && geometry::norm(corners.back().at - side.points[i]) <
                                                geometry::shortest_edge;
    if (closes) {
      corners.back().bulge = bulge;
    } else {
      corners.push_back({side.points[i], bulge, side.where[i]});
    }
  }
}

bool stations_fine(const Offsets& shape, Findings& findings) {
  const std::size_t before = findings.refusals();
  const std::string where = "/outline/stations";
  const std::size_t least = shape.curve == Curve::arcs ? 3 : 2;
  if (shape.stations.size() < least) {
    findings.refuse("too-few-points", where, "there are too few stations for an outline");
  } else if (shape.curve == Curve::arcs && shape.stations.size() % 2 == 0) {
    findings.refuse("wrong-number-of-stations",
                    where,
                    "arcs through three points need an odd number of stations",
                    "measure one more station or use straight");
  }
  for (std::size_t i = 0; i < shape.stations.size(); ++i) {
    const Station& s = shape.stations[i];
    const std::string here = at_index(where, i);
    const bool numbers = findings.finite(s.distance.si(), here + "/0", "the distance") &&
                         findings.finite(s.near.si(), here + "/1", "the near offset") &&
                         findings.finite(s.far.si(), here + "/2", "the far offset");
    if (!numbers) continue;
    if (i > 0 && s.distance <= shape.stations[i - 1].distance) {
      findings.refuse(
          "stations-not-ascending", here + "/0", "stations must follow each other along the line");
    }
    if (s.far < s.near) {
      findings.refuse("offsets-reversed", here + "/2", "the far side is nearer than the near side");
    }
  }
  return findings.refusals() == before;
}

void doubt_thin_crossing(const TapePoint& p, Length baseline, std::size_t index, Findings& found) {
  const double a = p.from_a.si();
  const double b = p.from_b.si();
  const double c = baseline.si();
  const double cosine = std::clamp((a * a + b * b - c * c) / (2.0 * a * b), -1.0, 1.0);
  const double angle = std::acos(cosine) * 180.0 / std::numbers::pi;
  if (angle >= limits::least_tape_angle.value && angle <= limits::greatest_tape_angle.value) return;
  found.warn("tapes-cross-too-flat",
             at_index("/outline/points", index),
             "the two tapes meet at " + in_degrees(angle) +
                 ": a small error of the tape moves this point far",
             "measure it from a second baseline, or check it with a third tape");
}

std::optional<Vec> tape_point(const TapePoint& p,
                              Length baseline,
                              std::size_t index,
                              Findings& findings) {
  const std::string here = at_index("/outline/points", index);
  const bool a = findings.positive(p.from_a, here + "/0", "the tape from A");
  const bool b = findings.positive(p.from_b, here + "/1", "the tape from B");
  const bool c = findings.finite(p.bulge, here + "/3", "the bulge");
  if (p.side != 1 && p.side != -1) {
    findings.refuse("side-not-known",
                    here + "/2",
                    "the side must be 1 (left of the baseline) or -1 (right of it)");
    return std::nullopt;
  }
  if (!a || !b || !c) return std::nullopt;
  const double da = p.from_a.si();
  const double db = p.from_b.si();
  const double base = baseline.si();
  if (da + db < base || std::abs(da - db) > base) {
    const double misfit = std::max(base - da - db, std::abs(da - db) - base);
    findings.refuse("circles-do-not-meet",
                    here,
                    "tapes of " + in_metres(da) + " and " + in_metres(db) +
                        " do not meet over a baseline of " + in_metres(base) + ": they miss by " +
                        in_millimetres(misfit),
                    da + db < base ? "one of the two is too short, or the baseline too long"
                                   : "the longer one is too long, or the other too short");
    return std::nullopt;
  }
  doubt_thin_crossing(p, baseline, index, findings);
  const double x = (da * da - db * db + base * base) / (2.0 * base);
  return Vec{x, p.side * std::sqrt(std::max(0.0, da * da - x * x))};
}

}  // namespace

double bulge_through(Vec a, Vec m, Vec b) {
  const Vec p = a - m;
  const Vec q = b - m;
  const double seen = std::atan2(std::abs(cross(p, q)), dot(p, q));
  if (cross(p, q) == 0.0) return 0.0;
  const double bulge = std::tan((std::numbers::pi - seen) / 2.0);
  return cross(b - a, m - a) < 0.0 ? bulge : -bulge;
}

Corners corners_of(const Kidney& shape, Findings& findings) {
  const std::size_t before = findings.refusals();
  findings.positive(shape.shallow_radius, "/outline/shallow_radius", "the shallow radius");
  findings.positive(shape.deep_radius, "/outline/deep_radius", "the deep radius");
  findings.positive(shape.centres, "/outline/centres", "the distance of the centres");
  findings.positive(shape.outer_radius, "/outline/outer_radius", "the outer radius");
  findings.positive(shape.inner_radius, "/outline/inner_radius", "the inner radius");
  if (findings.refusals() != before) return {};
  const MeasuredKidney k{shape.shallow_radius.si(),
                         shape.deep_radius.si(),
                         shape.centres.si(),
                         shape.outer_radius.si(),
                         shape.inner_radius.si()};
  if (!kidney_closes(k, findings)) return {};
  const Vec c1{k.r1, 0.0};
  const Vec c2{k.r1 + k.centres, 0.0};
  const Vec o = below_centres(k, k.outer - k.r1, k.outer - k.r2);
  const Vec i = below_centres(k, k.inner + k.r1, k.inner + k.r2);
  const Vec inner1 = c1 - k.r1 * geometry::unit(c1 - i);
  const Vec inner2 = c2 - k.r2 * geometry::unit(c2 - i);
  const Vec outer1 = c1 + k.r1 * geometry::unit(c1 - o);
  const Vec outer2 = c2 + k.r2 * geometry::unit(c2 - o);
  return {{inner1, bulge_about(i, inner1, inner2, true), "/outline"},
          {inner2, bulge_about(c2, inner2, outer2, false), "/outline"},
          {outer2, bulge_about(o, outer2, outer1, false), "/outline"},
          {outer1, bulge_about(c1, outer1, inner1, false), "/outline"}};
}

Corners corners_of(const Offsets& shape, Findings& findings) {
  if (!stations_fine(shape, findings)) return {};
  Side near;
  Side far;
  const std::size_t n = shape.stations.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Station& there = shape.stations[i];
    const Station& back = shape.stations[n - 1 - i];
    near.points.push_back({there.distance.si(), there.near.si()});
    near.where.push_back(at_index("/outline/stations", i));
    far.points.push_back({back.distance.si(), back.far.si()});
    far.where.push_back(at_index("/outline/stations", n - 1 - i));
  }
  Corners corners;
  add_side(corners, near, shape.curve);
  add_side(corners, far, shape.curve);
  const bool closed = corners.size() > 1 && geometry::norm(corners.back().at - corners.front().at) <
                                                geometry::shortest_edge;
  if (closed) corners.pop_back();
  return corners;
}

Corners corners_of(const TwoTape& shape, Findings& findings) {
  if (!findings.positive(shape.baseline, "/outline/baseline", "the baseline")) return {};
  Corners corners;
  for (std::size_t i = 0; i < shape.points.size(); ++i) {
    if (const auto p = tape_point(shape.points[i], shape.baseline, i, findings)) {
      corners.push_back({*p, shape.points[i].bulge, at_index("/outline/points", i)});
    }
  }
  return corners;
}

Corners corners_of(const Path& shape, Findings& findings) {
  return corners_of(shape.points, "/outline/points", findings);
}

}  // namespace basinwright::shell
