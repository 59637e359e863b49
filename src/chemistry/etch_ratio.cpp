#include <array>

#include "basinwright/chemistry/etch.hpp"

namespace basinwright::chemistry {
namespace {

struct Names {
  std::string_view key, words;
};
// In the order of EtchRow.
constexpr std::array<Names, 7> rows{{{"painted", "abraded epoxy"},
                                     {"new_render", "new render"},
                                     {"render", "old render"},
                                     {"concrete", "concrete"},
                                     {"plaster_soft", "soft plaster"},
                                     {"plaster_hard", "hard plaster"},
                                     {"pebble", "exposed aggregate"}}};

const Names& names(EtchRow row) {
  return rows[static_cast<std::size_t>(row)];
}

EtchRow row_of(const EtchSurface& surface) {
  if (surface.painted_with_epoxy) return EtchRow::painted;
  switch (surface.substrate) {
    case Substrate::concrete:
      return EtchRow::concrete;
    case Substrate::plaster_soft:
      return EtchRow::plaster_soft;
    case Substrate::plaster_hard:
      return EtchRow::plaster_hard;
    case Substrate::pebble:
      return EtchRow::pebble;
    case Substrate::render:
    case Substrate::fibreglass:
      break;
  }
  const bool young = surface.age && *surface.age <= render_is_old.value;
  return young ? EtchRow::new_render : EtchRow::render;
}

}  // namespace

std::string_view name(EtchRow row) {
  return names(row).key;
}

bool stronger(Parts one, Parts other) {
  return one.acid * other.water > other.acid * one.water;
}

Checked<EtchRatio> etch_ratio(const EtchSurface& surface, const EtchRates& rates) {
  if (surface.substrate == Substrate::fibreglass) return Unfit{"fibreglass is never etched"};
  if (!surface.painted_with_epoxy && surface.age && !(*surface.age >= youngest_cement.value)) {
    return Unfit{"cement younger than 28 days is not etched"};
  }
  const EtchRow row = row_of(surface);
  const sources::Sourced<Parts>& rule = rates.rule(row).parts;
  std::string reason(names(row).words);
  if (surface.strong_asked || !stronger(rule.value, strongest_unasked.value)) {
    return EtchRatio{rule.value, rule.source, std::move(reason), false, row};
  }
  reason +=
      ": 1 : 2, since no data sheet asks for a stronger mix and neat acid fills a deep end with "
      "vapour";
  return EtchRatio{strongest_unasked.value, strongest_unasked.source, std::move(reason), true, row};
}

}  // namespace basinwright::chemistry
