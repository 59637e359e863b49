#include "stops.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace basinwright::preparation {
namespace {

using units::Area;
using MaybeStop = std::optional<Stop>;

// Softened by acetone, or known to be something else, and not coming off anyway. Softening is told
// even of a coat that was called unknown.
bool holds_no_epoxy(const Region& r, const Question& q) {
  if (r.coating == ExistingCoating::none || is_stripped(r, q)) return false;
  return r.coating == ExistingCoating::other || r.acetone_test == AcetoneTest::softened;
}

MaybeStop substrate_stop(const Question& q) {
  for (const Region& r : q.regions) {
    if (r.substrate == Substrate::fibreglass) return Stop{"drain", "fibreglass", r.where};
  }
  return {};
}

MaybeStop ground_stop(const Question& q) {
  if (q.condition.ground == Ground::floats) return Stop{"drain", "flotation", q.condition.floats};
  return {};
}

MaybeStop coating_stop(const Question& q) {
  for (const Region& r : q.regions) {
    if (!holds_no_epoxy(r, q)) continue;
    const bool softened = r.acetone_test == AcetoneTest::softened;
    return Stop{"coating-test", softened ? "softened" : "not-epoxy", r.where};
  }
  return {};
}

MaybeStop moving_stop(const Question& q) {
  if (std::ranges::any_of(q.condition.cracks, &Crack::moving)) {
    return Stop{"repair", "moving-crack", ""};
  }
  return {};
}

MaybeStop wide_stop(const Question& q) {
  const auto wide = [&](const Crack& c) { return c.width > q.thresholds.crack_widest.value; };
  if (std::ranges::any_of(q.condition.cracks, wide)) return Stop{"repair", "wide-crack", ""};
  return {};
}

MaybeStop drummy_stop(const Question& q) {
  Area total;
  for (const Region& r : q.regions) total += r.area;
  const Area most = total * q.thresholds.drummy_share.value.share();
  if (q.condition.drummy_area > most) return Stop{"repair", "drummy", ""};
  return {};
}

// Named at the first step that would raise the dust.
MaybeStop lead_stop(const Question& q) {
  if (q.condition.lead_test != LeadTest::found) return {};
  MaybeStop found;
  for (const Region& r : q.regions) {
    if (r.coating == ExistingCoating::none) continue;
    if (is_stripped(r, q)) return Stop{"strip", "lead-found", r.where};
    const bool loose = loose_of(r, q) > units::Fraction();
    if (!found || (loose && found->step == "abrade")) {
      found = Stop{loose ? "loose-paint" : "abrade", "lead-found", r.where};
    }
  }
  return found;
}

// Without a fixed start the programme waits until the cement is old enough.
MaybeStop cement_stop(const Question& q) {
  if (!q.start_fixed) return {};
  for (const Region& r : q.regions) {
    if (r.coating != ExistingCoating::none || !r.age_of_cement) continue;
    if (*r.age_of_cement >= q.thresholds.cement_age.value) continue;
    return Stop{r.is_wall ? "etch-walls" : "etch-floor", "young-cement", r.where};
  }
  return {};
}

}  // namespace

std::vector<Stop> reasons_to_stop(const Question& question) {
  constexpr std::array reasons{substrate_stop,
                               ground_stop,
                               coating_stop,
                               lead_stop,
                               moving_stop,
                               wide_stop,
                               drummy_stop,
                               cement_stop};
  std::vector<Stop> found;
  for (const auto& reason : reasons) {
    if (auto stop = reason(question)) found.push_back(std::move(*stop));
  }
  return found;
}

}  // namespace basinwright::preparation
