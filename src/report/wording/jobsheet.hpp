// Words of the job sheet.
#pragma once

namespace basinwright::report::say {

inline constexpr char drawings[] = "Drawings";
inline constexpr char programme_chart[] = "Programme chart";
inline constexpr char stop_at_of[] = "STOP at {}: {}";
inline constexpr char total_of[] = "Total {}";
inline constexpr char provisional_after[] = " (provisional)";
inline constexpr char no_dates_fit[] = " · no dates fit: ";
inline constexpr char but[] = " But ";
inline constexpr char kits_start_full[] = " · {} kits · start {} · full {}";
inline constexpr char the_programme_waits_days_before_crew[] =
    "The programme waits {} days before {}: crew, painting hours and recoat windows leave no "
    "earlier run of days. {} painters would do a coat in one morning.";
inline constexpr char late_was_to_be_ordered_from_by_or_the[] =
    "Late: {} was to be ordered from by {}, or the programme does not hold.";
inline constexpr char the_kits_ordered_run_short_with_a[] =
    "The kits ordered run short with a chance of {}; order_confidence in the rate book buys more.";
inline constexpr char the_work_begins_on_before_it_the_pool[] =
    "The work begins on {}: before it the pool would only stand empty for longer.";
inline constexpr char the_etch_is_larger_than_a_shift_of[] =
    "The etch is larger than a shift of this crew: by sections, each from the first acid to the "
    "last rinse on one day. {} people would do it in one.";
inline constexpr char from_on_the_dates_follow_the_calendar[] =
    "From {} ({}) on, the dates follow the calendar alone: the weather read ends.";
inline constexpr char demonstration_rates_give_your_own[] =
    "Demonstration rates: every price and data sheet on this page is invented. Give your own book "
    "with --rates.";
inline constexpr char provisional[] = "Provisional: ";
inline constexpr char not_in_the_price_the_rate_book_has_no[] =
    "Not in the price: the rate book has no pack of {} that reaches.";
inline constexpr char no_weather_has_been_read_the_dates[] =
    "No weather has been read: the dates follow the calendar alone.";
inline constexpr char job_sheet[] = "Job sheet";
inline constexpr char drawing[] = "Drawing";
inline constexpr char painted_area_water[] = "Painted area {} · water {}";
inline constexpr char by_the_calendar_alone[] = "by the calendar alone";
inline constexpr char by_a_typical_year[] = "by a typical year";
inline constexpr char going_on_end_as_planned[] = "going on, end as planned";
inline constexpr char taken_as_done_not_recorded[] = "taken as done, not recorded";
inline constexpr char weather_see_below[] = "weather, see below";
inline constexpr char held_by_the_weather_each_by_the_first[] =
    "Held by the weather, each by the first rule that closed a day:";
inline constexpr char rests_on[] = "Rests on";
inline constexpr char not_earlier_because_of[] = "Not earlier because of";
inline constexpr char by_the_mean_temperatures_given[] = "by the mean temperatures given";
inline constexpr char no_temperature_known_so_the_longer[] =
    "no temperature known, so the longer wait";
inline constexpr char by_the_air_that_was_read_month_means[] =
    "by the air that was read, month means beyond it";
inline constexpr char by_the_air_that_was_read_the_longer[] =
    "by the air that was read, the longer wait beyond it";
inline constexpr char cure_before_filling[] = "Cure before filling";
inline constexpr char as_the_data_sheet_allows_abraded_and[] =
    ", as the data sheet allows: abraded and cleaned before the next coat";
inline constexpr char recoat_windows_missed_on_purpose[] = "Recoat windows missed on purpose";
inline constexpr char weather[] = "Weather";
inline constexpr char fill_starts[] = "Fill starts";
inline constexpr char said_not_offered[] = " (said, not offered)";
inline constexpr char closed_by[] = ", closed by ";
inline constexpr char blocked_at[] = "Blocked at";
inline constexpr char why[] = "Why";
inline constexpr char these_exclude_one_another[] = "These exclude one another";
inline constexpr char would_fit_without_one_of[] = "Would fit without one of";
inline constexpr char came_closest[] = "Came closest";
inline constexpr char what_would_do[] = "What would do";
inline constexpr char the_calendar_alone_no_weather_has_been[] =
    "the calendar alone; no weather has been read";
inline constexpr char rain_on_after_the_dryness_test_lay_the[] =
    "Rain on {} after the dryness test: lay the sheets again before the first coat.";
inline constexpr char hold_go_on_when[] = "{}Hold: {}; go on when: {}.";
inline constexpr char step[] = "Step";
inline constexpr char factor_with_the_level_given_1_with_the[] =
    " (factor {} with the level given; 1 with the groundwater {} below the rim; from 1.3 it is "
    "clear)";
inline constexpr char to_be_cleared_as_well[] = "To be cleared as well";
inline constexpr char cleared_by[] = "Cleared by";
inline constexpr char new_cement_acid_and_paint_wait_more[] =
    "New cement: acid and paint wait {} more, until it is {} old. Published practice on pools is "
    "two months.";
inline constexpr char preparation_coats_and_refill[] = "Preparation, coats and refill";
inline constexpr char where_after[] = " Where: {}.";
inline constexpr char stop_at[] = "Stop at";
inline constexpr char cautions[] = "Cautions";
inline constexpr char hazard[] = "Hazard";
inline constexpr char what_to_do[] = "What to do";
inline constexpr char waste[] = "Waste";
inline constexpr char goes_to[] = "Goes to";
inline constexpr char key_came_about[] = " came about";
inline constexpr char how_key[] = "How ";

}  // namespace basinwright::report::say
