// How many kits to order, when neither the area nor the cover is known better than as a range.
#pragma once

#include <cstdint>
#include <vector>

#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"

namespace basinwright::coverage {

/// What an order of kits depends on. The true areas are the measured ones, all of them out by the
/// same share; a kit covers the same on every coat, since one crew paints one shell.
struct OrderQuestion {
  std::vector<units::Area> areas;     ///< Painted apart, each from whole kits; one: the whole coat.
  units::Area spread;                 ///< The areas together are out by this at most, either way.
  units::Area cover_low, cover_high;  ///< Of a kit.
  units::Fraction confidence;         ///< Wanted chance that the kits are enough, 50 % at least.
};

/// Kits of a coat, with the chance that they do not reach.
struct KitChoice {
  std::int64_t kits = 0;
  double short_chance = 0.0;
};

/// Kits of one coat. `choices` run from `best` to `worst`, thinned out where they are many; what is
/// ordered is always among them.
struct KitOrder {
  std::int64_t best = 0;      ///< Least area, most cover.
  std::int64_t expected = 0;  ///< Measured area, middle of the cover.
  std::int64_t worst = 0;     ///< Most area, least cover.
  std::int64_t ordered = 0;   ///< The fewest, from `expected` up, that the confidence allows.
  double short_chance = 0.0;  ///< Of what is ordered.
  std::vector<KitChoice> choices;
};

/// How far `kits` reach when they are shared out over the areas so that the tightest one is as well
/// off as can be: the number itself for one area, less for several, since each takes whole kits.
/// @return the kits that one undivided area would need to reach as far
[[nodiscard]] double effective_kits(const OrderQuestion& question, std::int64_t kits);

/// The chance that a coat takes more than `kits`, in closed form: with the area a spread evenly
/// over [a1, a2] and the cover c over [c1, c2],
///   P(a > k c) = (p(a2 - k c1) - p(a2 - k c2) - p(a1 - k c1) + p(a1 - k c2))
///                / (2 k (a2 - a1) (c2 - c1)),  p(x) = max(0, x)^2,  k the effective kits.
/// @source jcgm-100 4.3.7: where only limits are known, every value between is as likely
/// @throws std::invalid_argument unless 0 < cover_low <= cover_high, an area is positive and none
/// negative, and 0 <= spread <= the areas together
[[nodiscard]] double chance_of_running_short(const OrderQuestion& question, std::int64_t kits);

/// The order. By symmetry the expected kits are enough with a chance of 50 % or more.
/// @throws std::invalid_argument as above, and for a confidence outside 50 to 100 %
[[nodiscard]] KitOrder kit_order(const OrderQuestion& question);

}  // namespace basinwright::coverage
