// Words of the odds of the dates.
#pragma once

namespace basinwright::report::say {

inline constexpr char odds_of_the_dates[] = "Odds of the dates";
inline constexpr char what_to_say[] = "What to say";
inline constexpr char no_year_could_be_replayed[] = "No year could be replayed";
inline constexpr char not_finished_in_enough_of_the_years_to[] =
    "Not finished in enough of the years to promise a date";
inline constexpr char allow_for_years_p80[] = "Allow for {} ({} years, P80)";
inline constexpr char later_than_days[] = "later than {} days";
inline constexpr char no_lower_bound[] = "no lower bound";
inline constexpr char to_before[] = "to ";
inline constexpr char no_upper_bound[] = "no upper bound";
inline constexpr char replayed_years_those_not_finished_last[] =
    "{} replayed years, those not finished last";
inline constexpr char planned_with[] = "Planned with";
inline constexpr char odds[] = "Odds";
inline constexpr char interval_of_90_percent_and_what_it_covers[] =
    "90 % interval (what it covers)";
inline constexpr char three_day_forecast[] = "three-day forecast";
inline constexpr char perfect_foresight[] = "perfect foresight";
inline constexpr char air_too_cold[] = "air too cold";
inline constexpr char air_too_warm[] = "air too warm";
inline constexpr char shell_too_cold[] = "shell too cold";
inline constexpr char shell_too_warm[] = "shell too warm";
inline constexpr char too_close_to_the_dew_point[] = "too close to the dew point";
inline constexpr char air_too_damp[] = "air too damp";
inline constexpr char rain_while_painting_or_soon_after[] = "rain while painting or soon after";
inline constexpr char rain_shortly_before[] = "rain shortly before";
inline constexpr char painting_hours_lost_up_to_the_last[] =
    "Painting hours lost up to the last coat, mean of a year, by what closed them first";
inline constexpr char cause[] = "Cause";
inline constexpr char hours_a_year[] = "Hours a year";
inline constexpr char unknown_not_finished_in_enough_years[] =
    "unknown: not finished in enough years";
inline constexpr char of_years_to_with_95_percent_confidence[] =
    "{} of {} years; {} to {} with 95 % confidence";
inline constexpr char years_replayed[] = "Years replayed";
inline constexpr char looked_ahead[] = "Looked ahead";
inline constexpr char days_from[] = "{} days from {}";
inline constexpr char what_perfect_foresight_gains_at_p80[] = "What perfect foresight gains at P80";
inline constexpr char years_not_finished_by_then[] = "Years not finished by then";
inline constexpr char years_in_which_the_etch_grew_too_old[] =
    "Years in which the etch grew too old and was done again";
inline constexpr char years_in_which_a_recoat_window_went_by[] =
    "Years in which a recoat window went by (hold point)";
inline constexpr char ready_by_then[] = "Ready by then";
inline constexpr char the_same_with_perfect_foresight[] = "The same with perfect foresight";
inline constexpr char no_year_of_the_weather_given_covers[] =
    "No year of the weather given covers the days of this job.";
inline constexpr char p90_is_withheld_with_fewer_than_ten[] =
    "P90 is withheld: with fewer than ten years it would be one year's luck.";
inline constexpr char perfect_foresight_is_optimistic_it[] =
    "Perfect foresight is optimistic: it knows every shower weeks ahead. The other replay plans "
    "each morning with a forecast that is right for three days and with what was usual beyond, as "
    "a foreman would; its P80 is the date to allow for.";
inline constexpr char each_past_year_counts_alike_a_warming[] =
    "Each past year counts alike: a warming climate, the distance of the station and hours made "
    "from days are not in these odds.";
inline constexpr char year_by_year[] = "Year by year";
inline constexpr char year[] = "Year";
inline constexpr char first_coat[] = "First coat";
inline constexpr char with_perfect_foresight[] = "With perfect foresight";
inline constexpr char not_finished[] = "not finished";
inline constexpr char left_out_more_than_2_percent_of_the[] =
    "Left out: more than 2 % of the hours have no air or no rain";
inline constexpr char start_weeks[] = "Start weeks";
inline constexpr char with_perfect_foresight_the_week_with[] =
    "With perfect foresight; the week with the fewest days to P80 is the best";
inline constexpr char days_to_p80[] = "Days to P80";
inline constexpr char finished[] = "Finished";
inline constexpr char years[] = "Years";
inline constexpr char no_years[] = "no years";
inline constexpr char full_again_aim_for[] = "Full again, aim for";
inline constexpr char allow_for_met_in_8_of_10_of_past_years[] =
    "Allow for (met in 8 of 10 of {} past years)";
inline constexpr char p50_full[] = "P50 full";
inline constexpr char p80_full[] = "P80 full";

}  // namespace basinwright::report::say
