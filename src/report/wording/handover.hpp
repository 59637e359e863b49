// Words of what the client keeps.
#pragma once

namespace basinwright::report::say {

inline constexpr char chlorine_tablets_or_granules_left[] =
    "Chlorine tablets or granules left lying on the floor, the steps or a ledge";
inline constexpr char water_left_out_of_balance_acid_or_soft[] =
    "Water left out of balance: acid, or soft enough to dissolve lime, or scaling";
inline constexpr char acid_chlorine_or_any_other_chemical[] =
    "Acid, chlorine or any other chemical poured in beside a wall or onto the paint";
inline constexpr char chemicals_other_than_salt_or_chlorine[] =
    "Chemicals other than salt or chlorine in the first days";
inline constexpr char emptying_the_pool_without_asking_us_an[] =
    "Emptying the pool without asking us: an empty shell can float, and sun and heat harm the coat";
inline constexpr char metal_brushes_wheeled_cleaners_with[] =
    "Metal brushes, wheeled cleaners with bare metal, high pressure held close";
inline constexpr char metal_left_on_the_floor_it_stains[] = "Metal left on the floor: it stains";
inline constexpr char repairs_or_coats_with_other_paint_than[] =
    "Repairs or coats with other paint than this system";
inline constexpr char measure_free_chlorine_and_ph_twice_a[] =
    "Measure free chlorine and pH twice a week, daily in hot weather and after a party or rain";
inline constexpr char ph_add_chemicals_with_the_pump_running[] =
    "pH {ph}; add chemicals with the pump running, one at a time, hours apart";
inline constexpr char solids_are_dissolved_first_acid_goes[] =
    "Solids are dissolved first; acid goes into a bucket of pool water, acid last";
inline constexpr char acid_and_chlorine_are_kept_apart_and[] =
    "Acid and chlorine are kept apart, and never meet in a bucket";
inline constexpr char alkalinity_hardness_and_stabiliser[] =
    "Alkalinity, hardness and stabiliser once a month, and after topping up a lot";
inline constexpr char leaves_out_before_they_stain_brush[] =
    "Leaves out before they stain; brush with nylon, once the first month is over";
inline constexpr char mg_l_or_as_local_code_asks[] = " mg/L or as local code asks";
inline constexpr char what_was_painted[] = "What was painted";
inline constexpr char finished_on[] = "Finished on";
inline constexpr char by_surface[] = "By surface";
inline constexpr char the_first_weeks[] = "The first weeks";
inline constexpr char full_again_as_planned[] = "Full again, as planned";
inline constexpr char nothing_but_salt_or_chlorine_until[] = "Nothing but salt or chlorine until";
inline constexpr char first_swim_test[] = "First-swim test";
inline constexpr char nobody_swims_until_each_of_these_holds[] =
    "Nobody swims until each of these holds";
inline constexpr char holds_when[] = "Holds when";
inline constexpr char holds[] = "Holds";
inline constexpr char free_chlorine[] = "Free chlorine";
inline constexpr char clear_the_deepest_point_is_seen[] = "clear: the deepest point is seen";
inline constexpr char pump_and_filter[] = "Pump and filter";
inline constexpr char running_day_and_night_since_the_fill[] =
    "running, day and night, since the fill";
inline constexpr char relief_valve_grates_lights[] = "Relief valve, grates, lights";
inline constexpr char in_place_and_tight[] = "in place and tight";
inline constexpr char left_over_for_touch_up[] = "Left over, for touch-up";
inline constexpr char unopened_kits_handed_over[] = "Unopened kits handed over";
inline constexpr char batch_a_and_b[] = "Batch A and B";
inline constexpr char to_be_used_by[] = "To be used by";
inline constexpr char kept_closed_upright_cool_and_dry_out[] =
    "Kept closed, upright, cool and dry, out of reach of children";
inline constexpr char mixed_paint_cannot_be_kept_a_touch_up[] =
    "Mixed paint cannot be kept: a touch-up takes a whole kit, or a small one";
inline constexpr char what_is_left_when_it_is_too_old_goes[] =
    "What is left when it is too old goes cured or to the hazardous-waste point, as local code "
    "asks";
inline constexpr char nothing_to_hand_over[] = "Nothing to hand over";
inline constexpr char the_job_has_stopped_nothing_was[] =
    "The job has stopped; nothing was painted";
inline constexpr char care_of_the_water[] = "Care of the water";
inline constexpr char care_of_the_coat[] = "Care of the coat";
inline constexpr char what_voids_it[] = "What voids it";
inline constexpr char handed_over[] = "Handed over";
inline constexpr char for_the_contractor[] = "For the contractor";
inline constexpr char for_the_client[] = "For the client";
inline constexpr char first_swim_by_readings_not_before[] = "First swim by readings, not before ";
inline constexpr char first_swim_by_readings_not_by_the[] =
    "First swim by readings, not by the calendar";
inline constexpr char not_recorded[] = "not recorded";
inline constexpr char batches_and_readings_of_each_coat[] = "Batches and readings of each coat";
inline constexpr char kits_used[] = "Kits used";
inline constexpr char each_coat_as_it_was_painted_from_the[] =
    "Each coat as it was painted, from the site log; the tightest reading of each";
inline constexpr char begun[] = "Begun";
inline constexpr char tests_before_painting[] = "Tests before painting";
inline constexpr char test[] = "Test";
inline constexpr char held_when[] = "Held when";
inline constexpr char held_small[] = "held";
inline constexpr char as_built[] = "As built";
inline constexpr char mg_l_and_when[] = "{:.1f} mg/L, {}";
inline constexpr char and_word[] = " and ";

}  // namespace basinwright::report::say
