#include <algorithm>

#include "basinwright/preparation/route.hpp"

namespace basinwright::preparation {
namespace {

using units::Area;

// Nobody measures blisters wall by wall: they are shared out over what is painted.
double blistered_share(const Question& q) {
  Area painted;
  for (const Region& region : q.regions) {
    if (region.coating != ExistingCoating::none) painted += region.area;
  }
  return painted > Area() ? q.condition.blisters / painted : 0.0;
}

}  // namespace

bool is_untested(const Region& region) {
  if (region.coating == ExistingCoating::none) return false;
  return region.coating == ExistingCoating::unknown || region.acetone_test == AcetoneTest::not_done;
}

units::Fraction loose_of(const Region& region, const Question& question) {
  if (region.coating == ExistingCoating::none) return {};
  return units::fraction(std::min(1.0, region.loose_share.share() + blistered_share(question)));
}

bool may_hold_lead(const Region& region, const Thresholds& thresholds) {
  if (region.coating == ExistingCoating::none) return false;
  return !region.painted_year || *region.painted_year <= thresholds.lead_until.value;
}

bool is_stripped(const Region& region, const Question& question) {
  if (region.coating == ExistingCoating::none) return false;
  return loose_of(region, question) > question.thresholds.strip_share.value ||
         (question.strip_untested && is_untested(region));
}

}  // namespace basinwright::preparation
