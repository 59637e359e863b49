// A floor between scattered depth readings: one plane a triangle.
#include <algorithm>

#include "delaunay.hpp"
#include "floor.hpp"

namespace basinwright::shell {

namespace {

using geometry::Triangle;
using geometry::Vec;

constexpr double thin_triangle = 1e-6;  // square metres
constexpr double overlap = 1e-9;

bool spots_fine(const SpotDepthsFloor& floor, Findings& findings) {
  const std::size_t before = findings.refusals();
  const std::string where = "/floor/points";
  if (floor.points.size() < 3) {
    findings.refuse("too-few-points", where, "spot depths need at least three points");
  }
  for (std::size_t i = 0; i < floor.points.size(); ++i) {
    const SpotDepth& p = floor.points[i];
    const std::string here = at_index(where, i);
    findings.finite(p.x.si(), here + "/0", "x");
    findings.finite(p.y.si(), here + "/1", "y");
    findings.positive(p.depth, here + "/2", "the depth");
  }
  return findings.refusals() == before;
}

bool refuse_duplicates(const std::vector<Vec>& points, Findings& findings) {
  const std::size_t before = findings.refusals();
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (geometry::norm(points[i] - points[j]) >= geometry::shortest_edge) continue;
      findings.refuse("duplicate-point",
                      at_index("/floor/points", i),
                      "two spot depths are less than 1 mm apart");
    }
  }
  return findings.refusals() == before;
}

struct Spots {
  const std::vector<Vec>& points;
  const SpotDepthsFloor& floor;
  [[nodiscard]] Vec at(int i) const { return points[static_cast<std::size_t>(i)]; }
  [[nodiscard]] double depth(int i) const {
    return floor.points[static_cast<std::size_t>(i)].depth.si();
  }
};

// Two triangles are apart when an edge of one has all of the other on its outer side.
bool edge_parts(const Spots& spots, const Triangle& a, const Triangle& b) {
  for (std::size_t e = 0; e < 3; ++e) {
    const auto side = geometry::left_of(spots.at(a[e]), spots.at(a[(e + 1) % 3]));
    if (std::ranges::all_of(b, [&](int i) { return side.at(spots.at(i)) <= overlap; })) return true;
  }
  return false;
}

bool settle_triangle(const Spots& spots, Triangle& t, std::size_t index, Findings& findings) {
  const std::string here = at_index("/floor/triangles", index);
  const int count = static_cast<int>(spots.points.size());
  for (std::size_t k = 0; k < 3; ++k) {
    if (t[k] >= 0 && t[k] < count) continue;
    findings.refuse("point-number-out-of-range", at_index(here, k), "there is no such spot depth");
    return false;
  }
  const double area = 0.5 * cross(spots.at(t[1]) - spots.at(t[0]), spots.at(t[2]) - spots.at(t[0]));
  if (std::abs(area) < thin_triangle) {
    findings.refuse("triangle-without-area", here, "the three points lie in line");
    return false;
  }
  if (area < 0.0) std::swap(t[1], t[2]);
  return true;
}

std::vector<Triangle> given_triangles(const Spots& spots, Findings& findings) {
  const std::size_t before = findings.refusals();
  std::vector<Triangle> triangles = spots.floor.triangles;
  for (std::size_t i = 0; i < triangles.size(); ++i) {
    settle_triangle(spots, triangles[i], i, findings);
  }
  if (findings.refusals() != before) return {};
  for (std::size_t i = 0; i < triangles.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (edge_parts(spots, triangles[i], triangles[j]) ||
          edge_parts(spots, triangles[j], triangles[i])) {
        continue;
      }
      findings.refuse("triangles-overlap",
                      at_index("/floor/triangles", i),
                      "the triangle covers part of triangle " + std::to_string(j));
    }
  }
  return findings.refusals() == before ? triangles : std::vector<Triangle>{};
}

std::vector<Triangle> found_triangles(const Spots& spots, Findings& findings) {
  const auto found = geometry::delaunay(spots.points);
  if (found.triangles.empty()) {
    findings.refuse(
        "spot-depths-do-not-cover", "/floor/points", "the spot depths all lie in one line");
  } else if (found.tie) {
    findings.warn("triangles-are-a-choice",
                  "/floor/points",
                  "four spot depths lie on one circle: the floor between them was split from the "
                  "point listed first",
                  "list the triangles to choose the diagonals");
  }
  return found.triangles;
}

geometry::Plane plane_through(const Spots& spots, const Triangle& t) {
  const Vec a = spots.at(t[0]);
  const Vec u = spots.at(t[1]) - a;
  const Vec v = spots.at(t[2]) - a;
  const double du = spots.depth(t[1]) - spots.depth(t[0]);
  const double dv = spots.depth(t[2]) - spots.depth(t[0]);
  const double twice = cross(u, v);
  const Vec gradient{(du * v.y - dv * u.y) / twice, (dv * u.x - du * v.x) / twice};
  return {spots.depth(t[0]) - dot(gradient, a), gradient};
}

}  // namespace

std::vector<Cell> cells_of(const SpotDepthsFloor& floor, Vec origin, Findings& findings) {
  if (!spots_fine(floor, findings)) return {};
  std::vector<Vec> points;
  points.reserve(floor.points.size());
  for (const SpotDepth& p : floor.points) points.push_back(Vec{p.x.si(), p.y.si()} - origin);
  if (!refuse_duplicates(points, findings)) return {};
  const Spots spots{points, floor};
  const auto triangles =
      floor.triangles.empty() ? found_triangles(spots, findings) : given_triangles(spots, findings);
  std::vector<Cell> cells;
  cells.reserve(triangles.size());
  for (const Triangle& t : triangles) {
    cells.push_back(
        {sides_of({spots.at(t[0]), spots.at(t[1]), spots.at(t[2])}), plane_through(spots, t)});
  }
  return cells;
}

}  // namespace basinwright::shell
