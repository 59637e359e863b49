// What the crew's sheets say about a task beyond the route's own words.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace basinwright::report {

/// Codes of the cautions that matter at a task, the gravest first.
[[nodiscard]] std::vector<std::string_view> hazards_of(std::string_view task);
/// What is worn and kept at hand for it; empty where nothing is beyond boots and gloves.
[[nodiscard]] std::string_view worn_for(std::string_view task);

/// A case and what is done about it.
struct Aid {
  std::string_view what, what_to_do;
};
struct FirstAid {
  std::string what, what_to_do;
};
/// First aid line by line.
[[nodiscard]] std::vector<FirstAid> first_aid();
/// Who decides what: work that is not the crew's.
[[nodiscard]] std::span<const Aid> licensed_work();

/// The rounds of a painting day.
[[nodiscard]] std::span<const std::string_view> morning_rounds();
[[nodiscard]] std::vector<std::string> evening_rounds();
/// How acid is mixed, in order.
[[nodiscard]] std::span<const std::string_view> acid_steps();
/// How a kit is mixed, in order.
[[nodiscard]] std::vector<std::string> kit_steps(const std::string& induction,
                                                 const std::string& pot_life);

}  // namespace basinwright::report
