// Steps, benches, footprints and pits as footprints with one depth each.
#pragma once

#include <string>
#include <vector>

#include "basinwright/shell/pool.hpp"
#include "findings.hpp"
#include "floor.hpp"
#include "loop.hpp"

namespace basinwright::shell {

/// A footprint with a level top, or the bottom of a pit; nested ones form a forest.
struct Footprint {
  geometry::Loop loop;
  double depth = 0.0;
  bool sinks = false;  ///< A pit.
  std::size_t feature = 0;
  std::string where;  ///< Pointer to the measurement that gives the footprint its reach.
  std::string depth_where;
  int parent = -1;  ///< The smallest block round it; -1 the floor.
  double area = 0.0;
  geometry::Box box;
};

/// Where features stand: the settled outline in local coordinates.
struct Ground {
  geometry::Vec origin;  ///< World position of the local (0, 0).
  geometry::Loop outline;
  std::vector<geometry::Vec> corners;
};

/// The footprints of all features; those with a bad measurement are left out.
[[nodiscard]] std::vector<Footprint> footprints_of(const std::vector<Feature>& features,
                                                   const Ground& ground,
                                                   Findings& findings);

/// One maker a kind.
struct FeaturePlace {
  const Ground& ground;
  std::size_t index = 0;
  std::string where;  ///< "/features/1"
};
[[nodiscard]] std::vector<Footprint> footprints(const StraightSteps& feature,
                                                const FeaturePlace& place,
                                                Findings& findings);
[[nodiscard]] std::vector<Footprint> footprints(const Bench& feature,
                                                const FeaturePlace& place,
                                                Findings& findings);
[[nodiscard]] std::vector<Footprint> footprints(const CornerSteps& feature,
                                                const FeaturePlace& place,
                                                Findings& findings);
[[nodiscard]] std::vector<Footprint> footprints(const RoundSteps& feature,
                                                const FeaturePlace& place,
                                                Findings& findings);
[[nodiscard]] std::vector<Footprint> footprints(const Block& feature,
                                                const FeaturePlace& place,
                                                Findings& findings);
[[nodiscard]] std::vector<Footprint> footprints(const Pit& feature,
                                                const FeaturePlace& place,
                                                Findings& findings);

/// Refuses footprints outside the outline and those that overlap without nesting; finds parents.
void nest(std::vector<Footprint>& footprints, const geometry::Loop& outline, Findings& findings);

/// Refuses tops that do not stand above what they stand on, and pits that do not go below it.
void check_depths(const std::vector<Footprint>& footprints,
                  const std::vector<Cell>& cells,
                  Findings& findings);

}  // namespace basinwright::shell
