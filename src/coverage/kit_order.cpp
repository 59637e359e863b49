#include "basinwright/coverage/kit_order.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>

#include "basinwright/coverage/coats.hpp"

namespace basinwright::coverage {
namespace {

using units::Area;

constexpr double half = 0.5;
// A chance a millionth over what is allowed is rounding, not risk.
constexpr double chance_slack = 1e-6;
// Ranges narrower than this share of their middle are single values.
constexpr double no_range = 1e-9;
// More than a page can show are thinned out evenly.
constexpr std::int64_t most_choices = 12;

Area sum_of(const OrderQuestion& q) {
  Area sum;
  for (const Area area : q.areas) sum += area;
  return sum;
}

void check_order(const OrderQuestion& q) {
  const Area sum = sum_of(q);
  bool good = q.cover_low > Area() && q.cover_low <= q.cover_high && sum > Area();
  good = good && q.spread >= Area() && q.spread <= sum;
  for (const Area area : q.areas) good = good && area >= Area();
  if (!good) throw std::invalid_argument("kit_order: areas and covers must be positive ranges");
}

double squared_above_zero(double x) {
  return x > 0.0 ? x * x : 0.0;
}

// The mean of max(0, x) over [low, high]; x itself where there is no range.
double mean_above_zero(double low, double high, double width) {
  return (squared_above_zero(high) - squared_above_zero(low)) / (2.0 * width);
}

// P(a > k c) for area over `spread` either side of `middle`, each value as likely as another.
double chance(const OrderQuestion& q, Area middle, double kits) {
  if (kits <= 0.0) return 1.0;
  const bool known_cover = q.cover_high - q.cover_low <= q.cover_low * no_range;
  const bool known_area = q.spread <= middle * no_range;
  const double a1 = (middle - q.spread) / middle;
  const double a2 = (middle + q.spread) / middle;
  const double reach_low = kits * (q.cover_low / middle);
  const double reach_high = kits * (q.cover_high / middle);
  if (known_cover && known_area) return 1.0 > reach_low * (1.0 + no_range) ? 1.0 : 0.0;
  // Over one range the chance is a length; over both it is the mean of that length.
  if (known_cover) return std::clamp((a2 - reach_low) / (a2 - a1), 0.0, 1.0);
  if (known_area) return std::clamp((1.0 - reach_low) / (reach_high - reach_low), 0.0, 1.0);
  const double over = mean_above_zero(a2 - reach_high, a2 - reach_low, reach_high - reach_low) -
                      mean_above_zero(a1 - reach_high, a1 - reach_low, reach_high - reach_low);
  return std::clamp(over / (a2 - a1), 0.0, 1.0);
}

std::int64_t kits_at(const OrderQuestion& q, double stretch, Area cover) {
  std::int64_t kits = 0;
  for (const Area area : q.areas) kits += whole_kits(area * stretch, cover);
  return kits;
}

}  // namespace

double effective_kits(const OrderQuestion& q, std::int64_t kits) {
  check_order(q);
  const Area sum = sum_of(q);
  if (q.areas.size() == 1) return static_cast<double>(kits);
  // However they are shared out, an area has at least its part of all kits but one for each area.
  std::vector<std::int64_t> share(q.areas.size(), 0);
  std::int64_t left = kits;
  const auto areas = static_cast<std::int64_t>(q.areas.size());
  for (std::size_t i = 0; i < share.size() && kits > areas; ++i) {
    share[i] = static_cast<std::int64_t>(
        std::floor(static_cast<double>(kits - areas) * (q.areas[i] / sum)));
    left -= share[i];
  }
  const auto tightest = [&] {
    std::size_t worst = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < share.size(); ++i) {
      if (q.areas[i] <= Area()) continue;
      const double reach = static_cast<double>(share[i]) * (sum / q.areas[i]);
      if (reach < least) {
        least = reach;
        worst = i;
      }
    }
    return std::pair(worst, least);
  };
  for (; left > 0; --left) ++share[tightest().first];
  return tightest().second;
}

double chance_of_running_short(const OrderQuestion& q, std::int64_t kits) {
  return chance(q, sum_of(q), effective_kits(q, kits));
}

KitOrder kit_order(const OrderQuestion& q) {
  check_order(q);
  if (q.confidence.share() < half || q.confidence.share() > 1.0) {
    throw std::invalid_argument("kit_order: the confidence is from 50 % to 100 %");
  }
  const double stretch = q.spread / sum_of(q);
  KitOrder order;
  order.best = kits_at(q, 1.0 - stretch, q.cover_high);
  order.expected = kits_at(q, 1.0, (q.cover_low + q.cover_high) * half);
  order.worst = kits_at(q, 1.0 + stretch, q.cover_low);
  const double allowed = 1.0 - q.confidence.share() + chance_slack;
  order.ordered = q.confidence.share() < 1.0 ? order.expected : order.worst;
  order.short_chance = chance_of_running_short(q, order.ordered);
  // The worst case itself may miss by the slack with which kits are rounded up.
  while (order.short_chance > allowed && order.ordered < order.worst) {
    order.short_chance = chance_of_running_short(q, ++order.ordered);
  }
  const std::int64_t step = (order.worst - order.best) / most_choices + 1;
  for (std::int64_t kits = order.best; kits <= order.worst; kits += step) {
    order.choices.push_back({kits, chance_of_running_short(q, kits)});
    if (kits < order.ordered && order.ordered < kits + step) {
      order.choices.push_back({order.ordered, order.short_chance});
    }
  }
  return order;
}

}  // namespace basinwright::coverage
