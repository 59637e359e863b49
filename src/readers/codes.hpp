// Every code that a reader gives to a problem. docs/errors.md explains each one, and tests/errors
// holds a file for each one.
#pragma once

#include <string_view>

namespace basinwright::readers {

/// A problem's code, made nowhere but in the list below.
struct Code {
  std::string_view word;
};

namespace codes {

inline constexpr Code deduction_too_large{"deduction-too-large"};
inline constexpr Code empty_list{"empty-list"};
inline constexpr Code facts_clash{"facts-clash"};
inline constexpr Code missing_key{"missing-key"};
inline constexpr Code negative{"negative"};
inline constexpr Code not_a_choice{"not-a-choice"};
inline constexpr Code not_a_date{"not-a-date"};
inline constexpr Code not_a_measure{"not-a-measure"};
inline constexpr Code not_an_amount{"not-an-amount"};
inline constexpr Code not_finite{"not-finite"};
inline constexpr Code not_hours{"not-hours"};
inline constexpr Code not_positive{"not-positive"};
inline constexpr Code number_range{"number-range"};
inline constexpr Code out_of_range{"out-of-range"};
inline constexpr Code repeated_key{"repeated-key"};
inline constexpr Code sections_do_not_fit{"sections-do-not-fit"};
inline constexpr Code syntax{"syntax"};
inline constexpr Code too_deep{"too-deep"};
inline constexpr Code too_large{"too-large"};
inline constexpr Code too_many_problems{"too-many-problems"};
inline constexpr Code unknown_key{"unknown-key"};
inline constexpr Code wrong_type{"wrong-type"};
inline constexpr Code wrong_unit{"wrong-unit"};

}  // namespace codes
}  // namespace basinwright::readers
