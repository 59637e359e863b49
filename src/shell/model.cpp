#include "model.hpp"

namespace basinwright::shell {

namespace {

using geometry::Piece;

const Footprint& at(const Model& model, int index) {
  return model.footprints[static_cast<std::size_t>(index)];
}

bool runs_along(const Model& model, int index, const Piece& edge) {
  return geometry::lies_along(edge, at(model, index).loop, geometry::contact);
}

// Whether `inner` is `outer` or lies somewhere inside it.
bool within(const Model& model, int inner, int outer) {
  while (inner >= 0 && inner != outer) inner = at(model, inner).parent;
  return inner == outer;
}

int smaller(const Model& model, int a, int b) {
  return a < 0 || at(model, b).area < at(model, a).area ? b : a;
}

}  // namespace

int against_wall(const Model& model, const Piece& wall) {
  int found = -1;
  for (int i = 0; i < static_cast<int>(model.footprints.size()); ++i) {
    if (runs_along(model, i, wall)) found = smaller(model, found, i);
  }
  return found;
}

Sides sides_of_edge(const Model& model, std::size_t footprint, const Piece& edge) {
  const int self = static_cast<int>(footprint);
  int beyond = at(model, self).parent;  // the first footprint round this one that reaches further
  while (beyond >= 0 && runs_along(model, beyond, edge)) beyond = at(model, beyond).parent;
  Sides sides{self, beyond};
  int neighbour = -1;
  for (int i = 0; i < static_cast<int>(model.footprints.size()); ++i) {
    if (i == self || within(model, self, i) || !runs_along(model, i, edge)) continue;
    if (within(model, i, self)) {
      sides.inner = smaller(model, sides.inner, i);
    } else {
      neighbour = smaller(model, neighbour, i);
    }
  }
  if (neighbour >= 0) sides.outer = neighbour;
  return sides;
}

}  // namespace basinwright::shell
