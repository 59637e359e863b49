// Which footprint lies in which, and whether their depths make sense there.
#include <algorithm>

#include "crossing.hpp"
#include "features.hpp"

namespace basinwright::shell {

namespace {

using geometry::contact;
using geometry::Loop;
using geometry::Piece;

using geometry::flush;

/// How the boundary of one region runs past another one.
struct Passage {
  bool inside = false;
  bool outside = false;
};

Passage passage(const Loop& walker, const Loop& region) {
  Passage found;
  for (const Piece& c : walker) {
    for (const Piece& piece : geometry::split(c, geometry::cuts_by(c, region, contact))) {
      const geometry::Vec p = piece.at(0.5);
      if (geometry::near_boundary(region, p, contact)) continue;
      (geometry::contains(region, p) ? found.inside : found.outside) = true;
    }
  }
  return found;
}

enum class Relation { apart, first_in_second, second_in_first, overlapping };

Relation relation(const Footprint& a, const Footprint& b) {
  if (a.feature == b.feature) {
    return a.area < b.area ? Relation::first_in_second : Relation::second_in_first;
  }
  if (a.box.apart(b.box, -contact)) return Relation::apart;
  const Passage ab = passage(a.loop, b.loop);
  if (ab.inside && ab.outside) return Relation::overlapping;
  if (ab.inside) return Relation::first_in_second;
  const Passage ba = passage(b.loop, a.loop);
  if (ba.inside && ba.outside) return Relation::overlapping;
  if (ba.inside) return Relation::second_in_first;
  return ab.outside || ba.outside ? Relation::apart : Relation::overlapping;
}

void adopt(std::vector<Footprint>& all, std::size_t child, std::size_t parent) {
  int& held = all[child].parent;
  if (held < 0 || all[parent].area < all[static_cast<std::size_t>(held)].area) {
    held = static_cast<int>(parent);
  }
}

void refuse_outside(const Footprint& f, const Loop& outline, Findings& findings) {
  if (!passage(f.loop, outline).outside) return;
  findings.refuse("block-outside", f.where, "it reaches beyond the walls of the pool");
}

struct Range {
  double low = 1e300;
  double high = -1e300;
};

Range floor_under(const Footprint& f, const std::vector<Cell>& cells) {
  Range range;
  for (const Cell& cell : cells) {
    const Loop part = geometry::clip(f.loop, cell.sides);
    if (part.empty() || geometry::moments(part).area < flush) continue;
    range.low = std::min(range.low, geometry::lowest(part, cell.depth).value);
    range.high = std::max(range.high,
                          -geometry::lowest(part, geometry::level_plane(0.0) - cell.depth).value);
  }
  return range;
}

}  // namespace

void nest(std::vector<Footprint>& footprints, const Loop& outline, Findings& findings) {
  for (const Footprint& f : footprints) refuse_outside(f, outline, findings);
  for (std::size_t j = 0; j < footprints.size(); ++j) {
    for (std::size_t i = 0; i < j; ++i) {
      switch (relation(footprints[i], footprints[j])) {
        case Relation::apart:
          break;
        case Relation::first_in_second:
          adopt(footprints, i, j);
          break;
        case Relation::second_in_first:
          adopt(footprints, j, i);
          break;
        case Relation::overlapping:
          findings.refuse("blocks-overlap",
                          footprints[j].where,
                          "it overlaps feature " + std::to_string(footprints[i].feature) +
                              " without lying inside it",
                          "footprints may lie apart, touch, or lie one inside the other");
          break;
      }
    }
  }
}

void check_depths(const std::vector<Footprint>& footprints,
                  const std::vector<Cell>& cells,
                  Findings& findings) {
  for (const Footprint& f : footprints) {
    Range under;
    if (f.parent >= 0) {
      const Footprint& parent = footprints[static_cast<std::size_t>(f.parent)];
      if (parent.feature == f.feature) continue;
      under = {parent.depth, parent.depth};
    } else {
      under = floor_under(f, cells);
    }
    if (!f.sinks && f.depth > under.low - flush) {
      findings.refuse("block-top-not-above-floor",
                      f.depth_where,
                      "its top at " + in_metres(f.depth) + " is not above what it stands on at " +
                          in_metres(under.low));
    }
    if (f.sinks && f.depth < under.high + flush) {
      findings.refuse("pit-not-below-floor",
                      f.depth_where,
                      "its bottom at " + in_metres(f.depth) +
                          " is not below what it is sunk into at " + in_metres(under.high));
    }
  }
}

}  // namespace basinwright::shell
