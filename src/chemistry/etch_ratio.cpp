#include <array>

#include "basinwright/chemistry/etch.hpp"

namespace basinwright::chemistry {
namespace {

using sources::Kind;

struct Rule {
  Substrate substrate;
  sources::Sourced<Parts> parts;
  std::string_view reason;
};

constexpr sources::Sourced<Parts> painted{{1, 2},
                                          {Kind::common_practice, "etch-ratios", "painted epoxy"}};
constexpr sources::Sourced<Parts> new_render{{1, 2},
                                             {Kind::common_practice, "etch-ratios", "new render"}};
// What a strong rule falls back to when no data sheet asks for it.
constexpr sources::Sourced<Parts> mildest_strong{
    {1, 2}, {Kind::common_practice, "etch-ratios", "strong mixes"}};

constexpr std::array<Rule, 5> rules{
    {{Substrate::render, {{1, 3}, {Kind::common_practice, "etch-ratios", "render"}}, "old render"},
     {Substrate::concrete, {{1, 3}, {Kind::assumed, "etch-ratios", "concrete"}}, "concrete"},
     {Substrate::plaster_soft,
      {{1, 1}, {Kind::common_practice, "etch-ratios", "plaster_soft"}},
      "soft plaster"},
     {Substrate::plaster_hard,
      {{1, 0}, {Kind::common_practice, "etch-ratios", "plaster_hard"}},
      "hard plaster"},
     {Substrate::pebble,
      {{1, 3}, {Kind::common_practice, "etch-ratios", "pebble"}},
      "exposed aggregate"}}};

bool stronger(Parts a, Parts b) {
  return a.acid * b.water > b.acid * a.water;
}

EtchRatio of_rule(const Rule& rule, bool strong_asked) {
  const bool strong = stronger(rule.parts.value, mildest_strong.value);
  if (strong && !strong_asked) {
    return {mildest_strong.value,
            mildest_strong.source,
            std::string(rule.reason) +
                ": 1 : 2, since no data sheet asks for a stronger mix and neat acid fills a deep "
                "end with vapour",
            true};
  }
  return {rule.parts.value, rule.parts.source, std::string(rule.reason), false};
}

}  // namespace

Checked<EtchRatio> etch_ratio(const EtchSurface& surface) {
  if (surface.substrate == Substrate::fibreglass) return Unfit{"fibreglass is never etched"};
  if (surface.painted_with_epoxy) {
    return EtchRatio{painted.value, painted.source, "abraded epoxy", false};
  }
  if (surface.age && !(*surface.age >= youngest_cement.value)) {
    return Unfit{"cement younger than 28 days is not etched"};
  }
  if (surface.substrate == Substrate::render && surface.age &&
      *surface.age <= render_is_old.value) {
    return EtchRatio{new_render.value, new_render.source, "new render", false};
  }
  for (const Rule& rule : rules) {
    if (rule.substrate == surface.substrate) return of_rule(rule, surface.strong_asked);
  }
  return Unfit{"no rule for this surface"};
}

}  // namespace basinwright::chemistry
