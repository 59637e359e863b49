// Plans of many jobs one after the other.
#pragma once

#include <cstdint>

#include "basinwright/job/plan.hpp"
#include "basinwright/quote/purchase_memory.hpp"
#include "basinwright/sequence/memory.hpp"

namespace basinwright::job {

/// What was found before: planning many jobs goes faster with one.
struct Memory {
  sequence::Memory programmes;
  quote::PurchaseMemory purchases;
};

/// What a job has in common with others of its run.
struct Among {
  Memory& memory;                    ///< For jobs under one rate book.
  std::uint64_t weather_number = 0;  ///< Of the circumstances' weather, within the memory.
  /// Dates and price, and nothing that is only read on a page: cautions, range, parts by the plan's
  /// own cut, kit marks, mixing.
  bool line_only = false;
};

/// The same plan as without others.
/// @throws std::logic_error when there are mismatches or no body of water
[[nodiscard]] Plan make_plan(const Job& job,
                             const RateBook& rates,
                             const Circumstances& now,
                             const Among& others);

}  // namespace basinwright::job
