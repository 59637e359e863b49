// Painted area by surface, for the whole pool or for the part beyond a line.
#pragma once

#include "survey.hpp"

namespace basinwright::shell {

struct Painted {
  double floor = 0.0;
  double walls = 0.0;
  double treads = 0.0;
  double risers = 0.0;
  double cove_change = 0.0;
  [[nodiscard]] double steps() const { return treads + risers; }
  [[nodiscard]] double total() const { return floor + walls + steps() + cove_change; }
};

[[nodiscard]] Painted painted(const Survey& survey);
[[nodiscard]] Painted painted_beyond(const Survey& survey, const geometry::HalfPlane& side);

}  // namespace basinwright::shell
