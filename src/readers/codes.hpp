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

inline constexpr Code broken_quotes{"broken-quotes"};
inline constexpr Code dew_above_air{"dew-above-air"};
inline constexpr Code deduction_too_large{"deduction-too-large"};
inline constexpr Code empty_list{"empty-list"};
inline constexpr Code facts_clash{"facts-clash"};
inline constexpr Code impossible_entry{"impossible-entry"};
inline constexpr Code missing_column{"missing-column"};
inline constexpr Code missing_hours{"missing-hours"};
inline constexpr Code missing_key{"missing-key"};
inline constexpr Code negative{"negative"};
inline constexpr Code no_value{"no-value"};
inline constexpr Code not_a_choice{"not-a-choice"};
inline constexpr Code not_a_date{"not-a-date"};
inline constexpr Code not_a_full_hour{"not-a-full-hour"};
inline constexpr Code not_a_measure{"not-a-measure"};
inline constexpr Code not_a_number{"not-a-number"};
inline constexpr Code not_a_weather_file{"not-a-weather-file"};
inline constexpr Code not_an_amount{"not-an-amount"};
inline constexpr Code not_finite{"not-finite"};
inline constexpr Code not_hours{"not-hours"};
inline constexpr Code not_in_order{"not-in-order"};
inline constexpr Code not_positive{"not-positive"};
inline constexpr Code not_text{"not-text"};
inline constexpr Code number_range{"number-range"};
inline constexpr Code offset_unlikely{"offset-unlikely"};
inline constexpr Code out_of_range{"out-of-range"};
inline constexpr Code repeated_column{"repeated-column"};
inline constexpr Code repeated_hour{"repeated-hour"};
inline constexpr Code repeated_key{"repeated-key"};
inline constexpr Code sections_do_not_fit{"sections-do-not-fit"};
inline constexpr Code syntax{"syntax"};
inline constexpr Code too_deep{"too-deep"};
inline constexpr Code too_large{"too-large"};
inline constexpr Code too_many_problems{"too-many-problems"};
inline constexpr Code torn_line{"torn-line"};
inline constexpr Code typical_year{"typical-year"};
inline constexpr Code unknown_column{"unknown-column"};
inline constexpr Code unknown_key{"unknown-key"};
inline constexpr Code wrong_number_of_values{"wrong-number-of-values"};
inline constexpr Code wrong_type{"wrong-type"};
inline constexpr Code wrong_unit{"wrong-unit"};

}  // namespace codes
}  // namespace basinwright::readers
