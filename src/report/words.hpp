// Every sentence the pages use for a code, in one place.
#pragma once

#include <string>
#include <string_view>

#include "basinwright/job/plan.hpp"
#include "basinwright/units/parse.hpp"

namespace basinwright::report {

/// What a hold point reads, and its limit.
struct HoldWords {
  std::string_view what;
  std::string_view limit;
};

/// What stops a job, and what would clear it.
struct StopWords {
  std::string_view why;
  std::string_view clear_by;
};

/// A caution with the source it rests on; `{}` in it takes the plan's figure.
struct CautionWords {
  std::string_view text;
  std::string_view source;
};

/// A chemical of the start-up and the safe way to add it.
struct AdditionWords {
  std::string_view what;
  std::string_view how;
};

// A code without words is a mistake of ours. @throws std::logic_error then
[[nodiscard]] std::string_view reason(std::string_view code);
[[nodiscard]] HoldWords hold(std::string_view code);
[[nodiscard]] StopWords stop(std::string_view code);
[[nodiscard]] std::string_view provisional(std::string_view code);
[[nodiscard]] CautionWords caution(std::string_view code);
[[nodiscard]] std::string_view waste(std::string_view code);
[[nodiscard]] std::string_view destination(std::string_view code);
[[nodiscard]] std::string_view branch(std::string_view code);
[[nodiscard]] std::string_view flotation_verdict(std::string_view code);
[[nodiscard]] std::string_view note(std::string_view code);
[[nodiscard]] std::string_view action(std::string_view code);
[[nodiscard]] AdditionWords addition(std::string_view code);
[[nodiscard]] std::string_view advice(std::string_view code);
[[nodiscard]] std::string_view figure(std::string_view code);
[[nodiscard]] std::string_view index_method(std::string_view code);
[[nodiscard]] std::string_view first_step(std::string_view code);
[[nodiscard]] std::string_view verdict(std::string_view code);
[[nodiscard]] std::string_view purchase_use(std::string_view code);
/// A caution with its figure, in the units people read.
[[nodiscard]] std::string caution_text(const job::Caution& caution, units::System system);

/// "etch-walls" as a person says it: "Etch the walls".
[[nodiscard]] std::string task(std::string_view name);

/// What held a task, in a few words.
[[nodiscard]] std::string held(const sequence::Held& held, units::System system);
/// Why there are no dates.
[[nodiscard]] std::string blocked(const sequence::Blocked& blocked);

}  // namespace basinwright::report
