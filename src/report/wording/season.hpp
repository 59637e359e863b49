// Words of the season.
#pragma once

namespace basinwright::report::say {

inline constexpr char season[] = "Season";
inline constexpr char mon_30_sep[] = "Mon 30 Sep";
inline constexpr char the_crew_is_there[] = "the crew is there";
inline constexpr char until_the_pool_is_full[] = "until the pool is full";
inline constexpr char late_after_the_promised_day[] = "late: after the promised day";
inline constexpr char a_row_a_job_crew_by_crew_a_thick_mark[] =
    "A row a job, crew by crew; a thick mark is the promised day.";
inline constexpr char season_line[] = " {}: {}, {} to {}{}.";
inline constexpr char days_late[] = ", {} days late";
inline constexpr char the_season_rests_on[] = "The season rests on: ";
inline constexpr char a_crew_is_at_one_site_at_a_time_and[] =
    "A crew is at one site at a time and does not come back to a site on the day it left it. "
    "Start-up visits and handover are made beside by one person.";
inline constexpr char dates_are_a_plan_not_a_promise_data[] =
    "Dates are a plan, not a promise: data sheets, readings and hold points of each job go before "
    "it.";
inline constexpr char proven_no_season_of_these_jobs_on[] =
    "Proven: no season of these jobs on these crews is better.";
inline constexpr char not_proven_jobs_have_no_dates_at_least[] =
    "Not proven: {} jobs have no dates; at least {} have none in any season.";
inline constexpr char not_proven_the_best_no_season_has[] =
    "Not proven the best: no season has fewer than {} late, this one has {}; gap {}.";
inline constexpr char proven_that_no_season_is_less_late_not[] =
    "Proven that no season is less late; not that none is full earlier: of those with so few days "
    "late none has refill dates that sum to less than {} after the first day, this one has {}; gap "
    "{}, {:.1f} a job.";
inline constexpr char proven_in_lateness_and_refill_dates[] =
    "Proven in lateness and refill dates; not that no season has cheaper crews.";
inline constexpr char first_day[] = "First day";
inline constexpr char late_days_times_priority[] = "Late, days times priority";
inline constexpr char jobs_without_dates[] = "Jobs without dates";
inline constexpr char refill_dates_days_after_the_first_day[] =
    "Refill dates, days after the first day, summed";
inline constexpr char crews_hours_before[] = "Crews' hours, ";
inline constexpr char proven_the_best[] = "Proven the best";
inline constexpr char how_good_it_is[] = "How good it is";
inline constexpr char late[] = " late";
inline constexpr char in_hand[] = " in hand";
inline constexpr char must_stop_see_its_job_sheet[] = "must stop: see its job sheet";
inline constexpr char filled_already[] = "filled already";
inline constexpr char no_dates_see_its_job_sheet[] = "no dates: see its job sheet";
inline constexpr char crew[] = "Crew";
inline constexpr char promise[] = "Promise";
inline constexpr char kept_in[] = "Kept in";
inline constexpr char jobs[] = "Jobs";
inline constexpr char of_years[] = "{} of {} years";
inline constexpr char saturdays_worked_on_it[] = "Saturdays worked on it";
inline constexpr char kits_ordered_earlier_on_the_yard_by[] =
    "Kits ordered earlier: on the yard by {}";
inline constexpr char begun_before[] = "Begun before {}";
inline constexpr char put_before_the_others[] = "Put before the others";
inline constexpr char late_now[] = "Late now";
inline constexpr char what_would_help[] = "What would help";
inline constexpr char late_with_it[] = "Late with it";
inline constexpr char all_with_it[] = "All with it";
inline constexpr char promises_that_cannot_be_kept_and_what[] =
    "Promises that cannot be kept, and what would help";
inline constexpr char work[] = "Work";
inline constexpr char crews_day_by_day[] = "Crews, day by day";
inline constexpr char between_two_sites[] = "Between two sites";
inline constexpr char what_it_rests_on[] = "What it rests on";
inline constexpr char every_promise_can_be_kept[] = "Every promise can be kept";
inline constexpr char of_jobs_late[] = "{} of {} jobs late";
inline constexpr char without_dates[] = ", {} without dates";
inline constexpr char proven_the_best_season[] = "; proven the best season";
inline constexpr char not_proven_the_best_see_the_gap[] = "; not proven the best: see the gap";
inline constexpr char a_lost_recoat_window_waits_for_the[] =
    "; a lost recoat window waits for the maker's advice";
inline constexpr char and_provisional[] = ", provisional";
inline constexpr char any_crew_may_go_on_with_it_here_bind[] =
    ". Any crew may go on with it here; bind it with the key crew.";
inline constexpr char begun_and_the_crews_file_does_not_say[] =
    "Begun, and the crews file does not say on which crew: ";
inline constexpr char begun_after[] = ", begun";
inline constexpr char jobs_crews_from[] = "{}, {}, from {}";
inline constexpr char on_crew[] = ", on ";
inline constexpr char places_swapped_with[] = "Places swapped with ";
inline constexpr char one_more_painter_for_to[] = "One more painter for {}, {} to {}";
inline constexpr char one_more_painter_on_it_to[] = "One more painter on it, {} to {}";
inline constexpr char season_wages[] = "Wages";
inline constexpr char later_for_it[] = "Later for it";
inline constexpr char record_it_in_the_jobs_log_hold[] =
    ". Record it in the job's log: hold_released hold=makers-advice by=NAME.";
inline constexpr char hold_point_makers_advice_of_the_season[] =
    "HOLD POINT (makers-advice): the coating maker's advice in writing before anything is put on a "
    "coat whose recoat window is lost. Provisional until then, as abrade and clean: ";
inline constexpr char not_needed[] = "not needed";
inline constexpr char hold_point_not_there[] = "HOLD POINT: not there";
inline constexpr char the_makers_advice[] = "The maker's advice";
inline constexpr char lost_on_site_and_what_makes_it_good[] =
    "Lost on site, and what makes it good";
inline constexpr char the_promised_day[] = "the promised day";
inline constexpr char provisional_nothing_is_put_on_the_coat[] =
    ". Provisional: nothing is put on the coat whose recoat window is lost before the maker's "
    "advice in writing is there.";
inline constexpr char past_years[] = "Past years";
inline constexpr char kept_in_past_years_in_which_the_pool[] =
    "Kept in: past years in which the pool is full by the promised day, crews and order as here, "
    "each job as early as the weather of the year allows. The weather is known beforehand, so it "
    "is the most that can be hoped for.";
inline constexpr char priority[] = "Priority";
inline constexpr char wages_of_the_painter_by_the_rate_book[] =
    " Wages: of the painter, by the rate book, for the days named.";
inline constexpr char each_was_found_by_booking_again_with[] =
    "Each was found by booking again with it. Days late; all: of every job, times its priority.";
inline constexpr char not_looked_at_only_the_latest_are[] = "Not looked at: only the latest are";
inline constexpr char nothing_that_was_tried[] = "Nothing that was tried";

}  // namespace basinwright::report::say
