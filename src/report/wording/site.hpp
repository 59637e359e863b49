// Words of a running job: today, re-plan, calendar.
#pragma once

namespace basinwright::report::say {

inline constexpr char order[] = "Order";
inline constexpr char order_from[] = "Order from ";
inline constexpr char not_earlier_because_of_before[] = "Not earlier because of: ";
inline constexpr char people_of[] = "{} people";
inline constexpr char one_person[] = "1 person";
inline constexpr char nobody_works_on_it[] = "Nobody works on it";
inline constexpr char done_not_recorded[] = "Done, not recorded";
inline constexpr char hold[] = "Hold: {}, {}";
inline constexpr char go_on_when_of[] = "Go on when: {}.";
inline constexpr char recoat_window_of_closes[] = "Recoat window of {} closes";
inline constexpr char starts_before_this_or_it_is_a_hold[] =
    "{} starts before this, or it is a hold point: the maker's advice in writing, usually abrade "
    "and clean first.";
inline constexpr char no_longer_in_the_programme[] = "No longer in the programme.";
inline constexpr char what_closes_it_first[] = "What closes it first";
inline constexpr char opens[] = "Opens";
inline constexpr char ends[] = "Ends";
inline constexpr char hold_point_the_makers_advice_in[] =
    "hold point: the maker's advice in writing";
inline constexpr char not_in_sight[] = "not in sight";
inline constexpr char with_the_advice[] = "with the advice";
inline constexpr char nothing[] = "nothing";
inline constexpr char next_48_hours[] = "Next 48 hours";
inline constexpr char nothing_is_left_to_do[] = "Nothing is left to do.";
inline constexpr char on_todays_sheet[] = "On today's sheet";
inline constexpr char morning_card_read_before_the_first_mix[] =
    "Morning card: read before the first mix, at each mix and every 4 h";
inline constexpr char at_most_percent[] = "at most {:.0f} %";
inline constexpr char shell_above_the_dew_point[] = "Shell above the dew point";
inline constexpr char parts_a_and_b_shade_and_temperature[] =
    "Parts A and B, shade and temperature";
inline constexpr char cool_and_shaded_both_above_15_c_in_the[] =
    "cool and shaded; both above 15 °C in the cold";
inline constexpr char batch_of_part_a_kind_of_part_b[] = "Batch of Part A, kind of Part B";
inline constexpr char one_batch_one_kind_for_the_whole_job[] =
    "one batch, one kind for the whole job";
inline constexpr char coat_below_thumb_and_wipe[] = "Coat below, thumb and wipe";
inline constexpr char dry_not_tacky_no_sticky_film[] = "dry, not tacky, no sticky film";
inline constexpr char who_cuts_in_who_rolls_last_start[] = "Who cuts in, who rolls, last start";
inline constexpr char kit_marks_on_the_wall[] = "kit marks on the wall";
inline constexpr char sign_before_you_start[] = "Sign before you start";
inline constexpr char before_go_on_when[] = "Before {}: {} ({}). Go on when: {}.";
inline constexpr char the_makers_advice_in_writing_is_not[] =
    "the maker's advice in writing is not there";
inline constexpr char from_after[] = " from ";
inline constexpr char today[] = "Today";
inline constexpr char no_weather_has_been_read_the_calendar[] =
    "No weather has been read: the calendar alone. Look at the sky and read the instruments.";
inline constexpr char was[] = "Was";
inline constexpr char moved[] = "Moved";
inline constexpr char not_planned[] = "not planned";
inline constexpr char done_not_planned[] = "done, not planned";
inline constexpr char h_min_of[] = "{} h {:02} min {}";
inline constexpr char done_before[] = "done, ";
inline constexpr char cancelled[] = "cancelled";
inline constexpr char promises[] = "Promises";
inline constexpr char how_it_stands[] = "How it stands";
inline constexpr char nothing_was_promised[] = "nothing was promised";
inline constexpr char broken_no_dates_fit[] = "BROKEN: no dates fit";
inline constexpr char no_date[] = "no date";
inline constexpr char first_swim_by_readings[] = "First swim, by readings";
inline constexpr char the_makers_advice_in_writing_is_there[] =
    "The maker's advice in writing is there, says {} ({}). The dates below take it as abrade and "
    "clean; plan otherwise if it says otherwise.";
inline constexpr char hold_point_makers_advice_the_coating[] =
    "HOLD POINT (makers-advice): the coating maker's advice in writing before anything is put on "
    "that coat. The dates below take it as there, and as abrade and clean. Record it with: "
    "hold_released hold=makers-advice by=NAME.";
inline constexpr char lost_and_what_makes_it_good[] = "Lost, and what makes it good";
inline constexpr char its_recoat_window_and_the_others[] =
    "Its recoat window and the others' cannot all be kept together.";
inline constexpr char the_recoat_window_is_lost_the_next[] =
    "The recoat window is lost; the next coat would not hold on this one.";
inline constexpr char the_etch_holds_no_longer_the_bare[] =
    "The etch holds no longer: the bare shell is cleaned again and dries before its first coat.";
inline constexpr char wages_net[] = "Wages, net";
inline constexpr char wages_only_discs_hire_and_travel_are[] =
    "Wages only: discs, hire and travel are not in them.";
inline constexpr char what_moved[] = "What moved";
inline constexpr char nothing_moved_all_is_as_it_was_planned[] =
    "Nothing moved: all is as it was planned.";
inline constexpr char check_the_yard_no_delivery_of_is[] =
    "Check the yard: no delivery of {} is recorded, {}to be ordered by {}.";
inline constexpr char the_kept_in_hand_at_both_ends_of_a[] =
    "The {} kept in hand at both ends of a recoat window is given up for {}: no programme keeps "
    "it.";
inline constexpr char no_dates_fit_the_rest[] = "No dates fit the rest: ";
inline constexpr char full_again_before[] = "Full again ";
inline constexpr char must_be_started_by_after[] = " · {} must be started by {}";
inline constexpr char re_plan[] = "Re-plan";
inline constexpr char compared_with_the_programme_given_with[] =
    "Compared with the programme given with --was.";
inline constexpr char compared_with_the_jobs_own_plan_by_the[] =
    "Compared with the job's own plan by the same weather; give the last programme with --was to "
    "see what moved since.";
inline constexpr char not_recorded_taken_as_done_since_later[] =
    "Not recorded, taken as done since later work began: ";
inline constexpr char h_min[] = "{} h {:02} min";
inline constexpr char planned_missed_on_purpose_abrade_and[] =
    "planned: missed on purpose; abrade and clean first, as the data sheet allows";
inline constexpr char lost_clean_again_first[] = "lost: clean again first";
inline constexpr char lost_stop_here_the_makers_advice_in[] =
    "lost: stop here, the maker's advice in writing first";
inline constexpr char lost_abrade_and_clean_first_as_the[] =
    "lost: abrade and clean first, as the maker advised";
inline constexpr char planned_in_hand[] = "{}: planned {}, {}{} in hand";
inline constexpr char only[] = "only ";
inline constexpr char since_hours_or_weather_close_it_after[] =
    ", since hours or weather close it after ";
inline constexpr char next_chance[] = "; next chance ";
inline constexpr char no_second_morning[] = "; no second morning";
inline constexpr char live_deadlines[] = "Live deadlines";
inline constexpr char not_before[] = "Not before";
inline constexpr char must_be_started_by[] = "Must be started by";
inline constexpr char on_the_etch[] = ", on the etch";
inline constexpr char when_dry[] = "when dry";
inline constexpr char no_window_is_open_nothing_expires[] = "No window is open: nothing expires.";
inline constexpr char rules_broken[] = "Rules broken";
inline constexpr char as_of[] = "as of ";

}  // namespace basinwright::report::say
