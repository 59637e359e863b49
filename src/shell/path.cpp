#include "path.hpp"

#include <algorithm>

#include "crossing.hpp"
#include "limits.hpp"

namespace basinwright::shell {

namespace {

using geometry::Loop;
using geometry::Piece;
using geometry::Vec;

void add_edge(Loop& loop, const Corner& corner, Vec to, int wall) {
  Piece edge;
  edge.from = corner.at;
  edge.to = to;
  edge.bulge = corner.bulge;
  edge.wall = wall;
  if (std::abs(corner.bulge) <= 1.0) {
    loop.push_back(edge);
    return;
  }
  const Vec top =
      geometry::middle(edge.from, to) + 0.5 * corner.bulge * geometry::right(to - corner.at);
  const double half = std::tan(0.5 * std::atan(corner.bulge));
  edge.to = top;
  edge.bulge = half;
  loop.push_back(edge);
  edge.from = top;
  edge.to = to;
  loop.push_back(edge);
}

bool refuse_short_edges(const Corners& corners, Findings& findings) {
  bool fine = true;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const std::size_t next = (i + 1) % corners.size();
    const double edge = geometry::norm(corners[next].at - corners[i].at);
    if (edge >= geometry::shortest_edge) continue;
    fine = false;
    findings.refuse("duplicate-point",
                    corners[std::max(i, next)].where,
                    "two points of the path are less than 1 mm apart",
                    "take one of them out");
  }
  return fine;
}

void turn_round(Corners& corners) {
  std::reverse(corners.begin() + 1, corners.end());
  // The edge that left a corner now arrives there: each bulge moves to the corner before it.
  const double first = corners.front().bulge;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const double arriving = i + 1 < corners.size() ? corners[i + 1].bulge : first;
    corners[i].bulge = -arriving;
  }
}

}  // namespace

Loop loop_of(const Corners& corners) {
  Loop loop;
  loop.reserve(corners.size() + 2);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    add_edge(loop, corners[i], corners[(i + 1) % corners.size()].at, static_cast<int>(i));
  }
  return loop;
}

Settled settle(Corners& corners, const std::string& where, Findings& findings) {
  const bool bent = std::ranges::any_of(corners, [](const Corner& c) { return c.bulge != 0.0; });
  if (corners.size() < (bent ? 2U : 3U)) {
    findings.refuse("too-few-points",
                    where,
                    "a closed path needs at least three points, or two "
                    "with an arc between them");
    return Settled::refused;
  }
  if (!refuse_short_edges(corners, findings)) return Settled::refused;
  Loop loop = loop_of(corners);
  const double area = geometry::moments(loop).area;
  const bool some_area = std::abs(area) >= limits::least_area;
  if (!some_area) {
    findings.refuse("zero-area", where, "the path encloses no area");
  }
  if (const int crossing = geometry::first_self_crossing(loop); crossing >= 0) {
    const auto wall = static_cast<std::size_t>(loop[static_cast<std::size_t>(crossing)].wall);
    findings.refuse("self-intersection",
                    corners[wall].where,
                    "the edge from here crosses or touches another edge",
                    "check the order of the points and the sign of the bulges");
    return Settled::refused;
  }
  if (!some_area) return Settled::refused;
  if (area > 0.0) return Settled::kept;
  turn_round(corners);
  return Settled::turned;
}

Corners corners_of(const VertexPath& points, const std::string& where, Findings& findings) {
  Corners corners;
  corners.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    const PathPoint& p = points[i];
    const std::string here = at_index(where, i);
    const bool fine = findings.finite(p.x.si(), here + "/0", "x") &&
                      findings.finite(p.y.si(), here + "/1", "y") &&
                      findings.finite(p.bulge, here + "/2", "the bulge");
    if (fine) corners.push_back({{p.x.si(), p.y.si()}, p.bulge, here});
  }
  return corners;
}

}  // namespace basinwright::shell
