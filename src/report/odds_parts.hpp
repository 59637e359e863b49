// The odds of a job's dates on the pages that show them.
#pragma once

#include <optional>

#include "basinwright/job/odds.hpp"
#include "sections.hpp"

namespace basinwright::report {

/// Quantiles with their intervals, hours lost by cause, and what they rest on.
[[nodiscard]] document::Section odds_section(const Subject& s, const job::Odds& odds);
/// Each replayed year.
[[nodiscard]] document::Section years_section(const job::Odds& odds);
/// Years that cannot be replayed, shown where there are any.
[[nodiscard]] document::Table left_out_table(const std::vector<odds::LeftOut>& years);
/// Start weeks of a season side by side, the best one marked.
[[nodiscard]] document::Section weeks_section(const job::Odds& odds);
/// "Aim for" and "allow for"; nothing without replayed years.
[[nodiscard]] std::optional<document::Facts> aim_and_allow(const Subject& s);

}  // namespace basinwright::report
