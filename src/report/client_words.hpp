// Sentences for the client: no term of the trade without its meaning, no cost, no crew.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/job/plan.hpp"
#include "basinwright/report/pages.hpp"

namespace basinwright::report {

/// "old cement render", "exposed aggregate".
[[nodiscard]] std::string_view substrate_words(preparation::Substrate substrate);
/// What is done to a surface before it is washed.
[[nodiscard]] std::string_view treatment_words(preparation::Treatment treatment);
/// A surface as a client says it: "Walls".
[[nodiscard]] std::string surface_words(std::string_view where);
/// What the price includes, a line each, in the order of the work.
[[nodiscard]] std::vector<std::string> included(const job::Plan& plan, bool with_water);
/// What no repainting includes unless it is listed.
[[nodiscard]] std::vector<std::string> never_included(bool with_water);
/// How to care for the coat, and what to expect of it.
[[nodiscard]] std::vector<std::string> care(const Subject& s);
/// The pH that is aimed at and what is left alone about it: "7.4 to 7.8".
[[nodiscard]] std::string ph_range(const job::Job& job);
/// What is still unknown, and what that means for the price.
[[nodiscard]] std::string_view open_question(std::string_view code);
/// What the price and the dates rest on.
[[nodiscard]] std::vector<std::string> assumptions(const job::Plan& plan);

}  // namespace basinwright::report
