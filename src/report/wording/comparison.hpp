// Words of the comparison of two ways.
#pragma once

namespace basinwright::report::say {

inline constexpr char second[] = "Second";
inline constexpr char difference[] = "Difference";
inline constexpr char to_years[] = "{} to {} years";
inline constexpr char first_swim_compared[] = "First swim, not before";
inline constexpr char life_with_good_care[] = "Life, with good care";
inline constexpr char comparison[] = "Comparison";
inline constexpr char second_before[] = "Second: ";
inline constexpr char side_by_side[] = "Side by side";
inline constexpr char from_one_price_to_the_other[] = "From one price to the other";

}  // namespace basinwright::report::say
