// What the facts of a re-plan leave: the crew's clock, the links of the chain still to do, and how
// far every section is.
#pragma once

#include <cstddef>
#include <vector>

#include "tally.hpp"
#include "timeline.hpp"

namespace basinwright::schedule {

/// A task still to do; its lags hold against the end of the link before.
struct Link {
  std::size_t task = 0;
  Slot from = 0;  ///< The start's earliest and latest slot whatever the link before.
  Slot until = never;
  Slot lag_min = 0;
  Slot lag_max = never;
};

/// The last coat done on a section.
struct SectionStanding {
  std::size_t done = 0;  ///< Coats.
  Slot start = no_slot;
  Slot end = no_slot;
  Slot rework_end = no_slot;  ///< Of a rework since.
};

inline constexpr std::size_t no_link = static_cast<std::size_t>(-1);

struct Standing {
  Slot clock = 0;                    ///< Nothing starts before.
  std::int32_t free_date = no_date;  ///< Its attendance is paid.
  std::vector<Link> links;
  std::size_t anchor_link = no_link;   ///< Among the links; none when the anchor task is done.
  std::size_t emptied_link = no_link;  ///< The one that empties; none when it is done or no task.
  Slot emptied = no_slot;              ///< The end of that task when it is done.
  Slot wet = no_slot;                  ///< The end of what is done of the chain, recleans included.
  Slot anchor = no_slot;               ///< The anchor's end when it is done.
  bool bare = true;                    ///< No unit is done.
  std::vector<SectionStanding> sections;
  std::vector<std::vector<std::int32_t>> dates;  ///< Of done units, [coat][section].
  Tally tally;

  [[nodiscard]] bool done(std::size_t coat, std::size_t section) const {
    return dates[coat][section] != no_date;
  }
};

[[nodiscard]] Standing standing_of(const Problem& problem);

}  // namespace basinwright::schedule
