// What a job asks of its site log.
#pragma once

#include <string>
#include <vector>

#include "basinwright/job/plan.hpp"
#include "basinwright/sitelog/rules.hpp"

namespace basinwright::job {

/// The maker's advice in writing, asked for when a recoat window is lost.
inline constexpr std::string_view makers_advice = "makers-advice";

/// The steps that make good a lost window or etch, `rework` and `clean-again`, whether or not the
/// programme books them; the route has those that it does.
[[nodiscard]] std::vector<preparation::Step> again_steps(const Plan& plan);

/// Limits of the data sheet and the sewer, and the hold points of the route.
[[nodiscard]] sitelog::Rules site_rules(const Job& job, const RateBook& rates, const Plan& plan);

/// The names an entry may use: tasks of the route with `rework` and `clean-again`, sections as the
/// plan cuts the coats, hold points.
[[nodiscard]] std::vector<std::string> site_tasks(const Plan& plan);
[[nodiscard]] std::vector<std::string> site_sections(const Plan& plan);
[[nodiscard]] std::vector<std::string> site_holds(const Plan& plan);

}  // namespace basinwright::job
