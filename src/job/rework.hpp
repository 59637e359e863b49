#pragma once

#include <optional>
#include <string>

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// What abrading and cleaning a section takes, at the book's rates for abrading, dust and pressure
/// cleaning.
[[nodiscard]] sequence::ReworkRules rework_rules(const RateBook& rates, const Plan& plan);

/// The work, area and dust of reworks that the programme plans.
/// @param past  of a job that has begun: a section painted in part is reworked in part
void add_reworks(const RateBook& rates, const std::optional<sequence::Past>& past, Plan& plan);

/// The section that a section of the programme is part of: "deep" of "deep, rest", nothing of
/// "rest".
[[nodiscard]] std::string whole_section(std::string section);

}  // namespace basinwright::job
