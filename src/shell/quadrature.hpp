// Gauss-Legendre with 16 points, for the few integrands that have no closed form.
#pragma once

#include <array>

namespace basinwright::shell::geometry {

struct Node {
  double at;
  double weight;
};

/// The positive nodes on [-1, 1]; each has a twin at -at.
inline constexpr std::array<Node, 8> gauss_nodes{{
    {0.98940093499164993, 0.02715245941175409},
    {0.94457502307323258, 0.06225352393864789},
    {0.86563120238783174, 0.09515851168249278},
    {0.75540440835500303, 0.12462897125553387},
    {0.61787624440264375, 0.14959598881657673},
    {0.45801677765722739, 0.16915651939500254},
    {0.28160355077925891, 0.18260341504492359},
    {0.09501250983763744, 0.18945061045506850},
}};

/// Calls `visit(x, weight)` for the nodes on [from, to].
template <class Visit>
void for_nodes(double from, double to, Visit visit) {
  const double middle = 0.5 * (from + to);
  const double half = 0.5 * (to - from);
  for (const Node& node : gauss_nodes) {
    visit(middle - half * node.at, half * node.weight);
    visit(middle + half * node.at, half * node.weight);
  }
}

}  // namespace basinwright::shell::geometry
