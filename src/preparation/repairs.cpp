#include "repairs.hpp"

#include <algorithm>

namespace basinwright::preparation {
namespace {

using units::Area;
using units::Length;
using units::Volume;

void add_cracks(const Question& q, Repairs& found) {
  for (const Crack& crack : q.condition.cracks) {
    if (crack.width < q.thresholds.crack_hairline.value) continue;
    const Length depth = crack.depth > Length() ? crack.depth : q.thresholds.crack_opening.value;
    // A V with its root at that depth and sides at 45 degrees holds depth^2 a metre.
    found.filler += depth * depth * crack.length;
    found.area += q.thresholds.crack_worked.value * crack.length;
  }
}

void add_divots(const Question& q, Repairs& found) {
  for (const Divot& divot : q.condition.divots) {
    const Volume each = divot.area * divot.depth;
    const Volume all = each * static_cast<double>(divot.count);
    (divot.depth < q.thresholds.divot_filler.value ? found.filler : found.mortar) += all;
    found.area += divot.area * static_cast<double>(divot.count);
  }
}

}  // namespace

Repairs repairs_of(const Question& q) {
  Repairs found;
  add_cracks(q, found);
  add_divots(q, found);
  found.mortar += q.condition.drummy_area * q.thresholds.render_thickness.value;
  found.area += q.condition.drummy_area;
  return found;
}

std::optional<units::Duration> cement_wait(const Question& q, const Repairs& repairs) {
  const units::Duration full = q.thresholds.cement_age.value;
  if (repairs.mortar > Volume()) return full;
  std::optional<units::Duration> wait;
  for (const Region& region : q.regions) {
    if (region.coating != ExistingCoating::none || !region.age_of_cement) continue;
    if (*region.age_of_cement >= full) continue;
    wait = std::max(wait.value_or(units::Duration()), full - *region.age_of_cement);
  }
  return wait;
}

}  // namespace basinwright::preparation
