#include "stops.hpp"

#include <algorithm>

namespace basinwright::preparation {
namespace {

using units::Area;

bool is_stripped(const Region& r, const Question& q) {
  return r.loose_share > q.thresholds.strip_share.value;
}

// Softened by acetone, or known to be something else, and not coming off anyway.
bool holds_no_epoxy(const Region& r, const Question& q) {
  if (r.coating == ExistingCoating::none || is_stripped(r, q)) return false;
  return r.coating == ExistingCoating::other || r.acetone_test == AcetoneTest::softened;
}

std::optional<Stop> substrate_stop(const Question& q) {
  for (const Region& r : q.regions) {
    if (r.substrate == Substrate::fibreglass) return Stop{"drain", "fibreglass", r.where};
  }
  return {};
}

std::optional<Stop> flotation_stop(const Question& q) {
  if (q.condition.flotation == Flotation::stop) return Stop{"drain", "floats", q.condition.floats};
  return {};
}

std::optional<Stop> coating_stop(const Question& q) {
  for (const Region& r : q.regions) {
    if (!holds_no_epoxy(r, q)) continue;
    const bool softened = r.acetone_test == AcetoneTest::softened;
    return Stop{"coating-test", softened ? "softened" : "not-epoxy", r.where};
  }
  return {};
}

std::optional<Stop> crack_stop(const Question& q) {
  for (const Crack& crack : q.condition.cracks) {
    if (crack.moving) return Stop{"repair", "moving-crack", ""};
    if (crack.width > q.thresholds.crack_widest.value) return Stop{"repair", "wide-crack", ""};
  }
  return {};
}

std::optional<Stop> drummy_stop(const Question& q) {
  Area total;
  for (const Region& r : q.regions) total += r.area;
  const Area most = total * q.thresholds.drummy_share.value.share();
  if (q.condition.drummy_area > most) return Stop{"repair", "drummy", ""};
  return {};
}

// Named at the first step that would raise the dust.
std::optional<Stop> lead_stop(const Question& q) {
  if (q.condition.lead_test != LeadTest::found) return {};
  for (const Region& r : q.regions) {
    if (r.coating == ExistingCoating::none) continue;
    if (is_stripped(r, q)) return Stop{"strip", "lead-found", r.where};
    const bool loose = r.loose_share > units::Fraction();
    return Stop{loose ? "loose-paint" : "abrade", "lead-found", r.where};
  }
  return {};
}

}  // namespace

std::optional<Stop> reason_to_stop(const Question& question) {
  for (const auto& reason :
       {substrate_stop, flotation_stop, coating_stop, crack_stop, drummy_stop, lead_stop}) {
    if (auto stop = reason(question)) return stop;
  }
  return {};
}

}  // namespace basinwright::preparation
