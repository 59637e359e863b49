#include "mixing_work.hpp"

#include <algorithm>
#include <cmath>

namespace basinwright::coverage {
namespace {

using units::Area;
using units::Duration;

// Ratios of decimals miss whole numbers by far less, and no crew counts so finely.
constexpr double hair = 1e-9;
// A larger crew is no answer but the sign of a time that is all but gone.
constexpr double most_painters = 1e5;

}  // namespace

Area lost_to_mixing(const MixingSession& session) {
  return session.mixer == Mixer::painter ? session.rate * session.mixing : Area();
}

MixingWork work_of(const MixingSession& session, std::int64_t kits) {
  const Area lost = lost_to_mixing(session);
  const Area kit = session.cover + lost;
  return {kit, kits == 1 ? session.area : kit, session.area + lost * static_cast<double>(kits - 1)};
}

std::int64_t whole_above(double count) {
  return static_cast<std::int64_t>(std::ceil(count - hair));
}

std::int64_t kits_at_once(double ratio, std::int64_t kits) {
  return std::max<std::int64_t>(1, whole_above(std::min(ratio, static_cast<double>(kits))));
}

std::optional<std::int64_t> painters_within(Area work,
                                            const MixingSession& session,
                                            Duration time) {
  if (!(time > Duration())) return std::nullopt;
  const double count = work / (session.rate * time);
  if (!(count <= most_painters)) return std::nullopt;
  return std::max<std::int64_t>(1, whole_above(count));
}

std::int64_t mixers_for(const MixingSession& session, std::int64_t kits, std::int64_t painters) {
  const units::WorkRate crew = session.rate * static_cast<double>(painters);
  const Area kit = session.cover + lost_to_mixing(session);
  return kits_at_once(session.mixing * crew / kit, kits);
}

}  // namespace basinwright::coverage
