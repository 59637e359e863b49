// Words of the mixing plan.
#pragma once

namespace basinwright::report::say {

inline constexpr char unknown[] = "unknown";
inline constexpr char no_crew_is_fast_enough[] = "no crew is fast enough";
inline constexpr char where_each_kit_runs_out_chalk_it_on[] =
    "Where each kit runs out: chalk it on the wall, deep end first";
inline constexpr char after_kit[] = "After kit";
inline constexpr char mark[] = "Mark";
inline constexpr char each_coat[] = "Each coat";
inline constexpr char painting_mornings[] = "Painting mornings";
inline constexpr char painting_from[] = "Painting from";
inline constexpr char paint_at[] = "Paint at";
inline constexpr char pot_life[] = "Pot life";
inline constexpr char oldest_used[] = "Oldest used";
inline constexpr char painters_needed[] = "Painters needed";
inline constexpr char works[] = "Works";
inline constexpr char yes[] = "yes";
inline constexpr char no_see_below[] = "no, see below";
inline constexpr char mixing_timetable[] = "Mixing timetable";
inline constexpr char start_mixing[] = "Start mixing";
inline constexpr char stood_until_roll_from[] = "Stood until, roll from";
inline constexpr char what_stands_in_the_way_and_what_to_do[] =
    "What stands in the way, and what to do";
inline constexpr char let_it_stand_for_the_sheets_shortest[] =
    "Let it stand for the sheet's shortest time only: the longest leaves too little pot life.";
inline constexpr char the_warmest_air_of_the_session[] = "the warmest air of the session";
inline constexpr char else_word[] = ", else ";
inline constexpr char the_mean_of_the_month[] = "the mean of the month";
inline constexpr char the_temperature_of_the_sheets_pot_life[] =
    "the temperature of the sheet's pot life, since nothing is known";
inline constexpr char painters[] = "Painters";
inline constexpr char who_does_what[] = "Who does what";
inline constexpr char paint_counts_as[] = "Paint counts as";
inline constexpr char crew_and_mixing[] = "Crew and mixing";

}  // namespace basinwright::report::say
