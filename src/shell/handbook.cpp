#include "basinwright/shell/handbook.hpp"

#include <numbers>

namespace basinwright::shell {

namespace {

using sources::Kind;
using sources::Source;
using sources::Sourced;

constexpr Source rectangle_rule{Kind::common_practice, "pool-volume-shortcuts", "rectangle"};
constexpr Source round_rule{Kind::common_practice, "pool-volume-shortcuts", "circle and ellipse"};
// 6.7 gallons to the cubic foot of the box round it, where a full box takes 7.5.
constexpr Sourced<double> oval_share{6.7 / 7.5,
                                     {Kind::common_practice, "pool-volume-shortcuts", "oval"}};
constexpr Sourced<double> kidney_share{0.45,
                                       {Kind::common_practice, "pool-volume-shortcuts", "kidney"}};
constexpr double quarter_pi = std::numbers::pi / 4.0;

struct Rule {
  std::string_view words;
  Source source;
  Area plan;
};

std::vector<Rule> rules_of(const Rectangle& s) {
  return {{"length x width x mean depth", rectangle_rule, s.length * s.width}};
}
std::vector<Rule> rules_of(const RoundedRectangle& s) {
  return {{"length x width x mean depth", rectangle_rule, s.length * s.width}};
}
std::vector<Rule> rules_of(const Circle& s) {
  return {
      {"pi/4 x diameter squared x mean depth", round_rule, quarter_pi * s.diameter * s.diameter}};
}
std::vector<Rule> rules_of(const Ellipse& s) {
  return {{"pi/4 x length x width x mean depth", round_rule, quarter_pi * s.length * s.width}};
}
std::vector<Rule> rules_of(const Stadium& s) {
  return {{"pi/4 x length x width x mean depth", round_rule, quarter_pi * s.length * s.width},
          {"0.893 x length x width x mean depth",
           oval_share.source,
           oval_share.value * s.length * s.width}};
}
std::vector<Rule> rules_of(const Kidney& s) {
  const Length both_widths = 2.0 * (s.shallow_radius + s.deep_radius);
  const Length length = s.shallow_radius + s.centres + s.deep_radius;
  return {{"0.45 x both widths x length x mean depth",
           kidney_share.source,
           kidney_share.value * both_widths * length}};
}
template <class Freeform>
std::vector<Rule> rules_of(const Freeform&) {
  return {};
}

}  // namespace

std::vector<HandbookVolume> handbook_volumes(const Pool& pool, const TakeOff& exact) {
  const Length mean_depth = (exact.shallowest + exact.deepest) / 2.0 - pool.rim_to_water;
  std::vector<HandbookVolume> found;
  if (exact.water_volume <= Volume{}) return found;
  for (const Rule& rule :
       std::visit([](const auto& shape) { return rules_of(shape); }, pool.outline.shape)) {
    const Volume volume = rule.plan * mean_depth;
    const double difference = (volume - exact.water_volume) / exact.water_volume;
    found.push_back({rule.words, rule.source, rule.plan, volume, difference});
  }
  return found;
}

}  // namespace basinwright::shell
