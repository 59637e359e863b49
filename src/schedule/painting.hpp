// What is asked of the ways to end a programme, and what they ask of the work before.
#pragma once

#include <bit>
#include <cstdint>
#include <vector>

#include "stages.hpp"
#include "tally.hpp"

namespace basinwright::schedule {

/// All the painting that is left, as the chain sees it.
struct Painting {
  Slot start = 0;        ///< Of its first work.
  Slot wet_until = 0;    ///< The chain ends at this slot at the latest.
  Slot anchor_from = 0;  ///< The anchor ends at this slot at the earliest; 0 when it may be any.
  Tally tally;           ///< With the attendance of its first date. By finish: its cost is that.

  friend auto operator<=>(const Painting&, const Painting&) = default;
};

/// What has been painted so far, for the question whether the rest can be had at a price.
struct Prefix {
  Stages::Coats done;
  std::vector<SectionStanding> sections;  ///< Rework ends: of reworks booked.
  std::vector<std::int32_t> dates;        ///< By coat: of the last section done.
  Slot clock = 0;
  Slot wet = no_slot;
  Slot anchor = no_slot;
  std::int32_t last_date = no_date;  ///< Of work.
};

/// What is asked of the programmes' ends.
struct Question {
  Slot finish = 0;
  bool priced = true;  ///< At this finish, the least tally; otherwise the least finish up to it.
};

/// How many coats a set holds, a bit a coat.
[[nodiscard]] inline int ones(std::uint64_t coats) {
  return std::popcount(coats);
}

/// Does an end of the last unit answer the question?
[[nodiscard]] inline bool asked(const Setting& setting, const Question& question, Slot end) {
  const auto& finish = setting.problem.finish;
  if (at(end) >= finish.size() || !finish[at(end)]) {
    return false;
  }
  const Slot slot = finish[at(end)]->slot;
  return question.priced ? slot == question.finish : slot <= question.finish;
}

}  // namespace basinwright::schedule
