// Words of the crew's checklist and its cards.
#pragma once

namespace basinwright::report::say {

inline constexpr char day_of[] = "Day {} · {}";
inline constexpr char in_this_order_there_are_no_dates_yet[] =
    "In this order; there are no dates yet";
inline constexpr char goes_on_small[] = "goes on";
inline constexpr char nobody[] = "nobody";
inline constexpr char this_site[] = "This site";
inline constexpr char client[] = "Client";
inline constexpr char address_for_an_ambulance[] = "Address, for an ambulance";
inline constexpr char deepest[] = "Deepest";
inline constexpr char parking[] = "Parking";
inline constexpr char hours_allowed[] = "Hours allowed";
inline constexpr char sewer_gully[] = "Sewer gully";
inline constexpr char ph_the_sewer_takes[] = "pH the sewer takes";
inline constexpr char permits_in_hand_before_work[] = "Permits in hand before work";
inline constexpr char emergency_and_first_aid[] = "Emergency and first aid";
inline constexpr char call[] = "Call";
inline constexpr char nearest_hospital[] = "Nearest hospital";
inline constexpr char first_aider_on_site[] = "First-aider on site";
inline constexpr char safety_data_sheets_lie_at[] = "Safety data sheets lie at";
inline constexpr char power_is_cut_at[] = "Power is cut at";
inline constexpr char first_aid_the_safety_data_sheet_of_the[] =
    "First aid; the safety data sheet of the product goes first";
inline constexpr char what_happened[] = "What happened";
inline constexpr char who_decides[] = "Who decides";
inline constexpr char not_this_crews_work[] = "Not this crew's work";
inline constexpr char decided_or_done_by[] = "Decided or done by";
inline constexpr char readings_inside_these_limits_or_nobody[] =
    "Readings, inside these limits or nobody paints";
inline constexpr char time[] = "Time";
inline constexpr char dew_point[] = "Dew point";
inline constexpr char wind[] = "Wind";
inline constexpr char as_the_data_sheet_says[] = "as the data sheet says";
inline constexpr char end_of_the_day[] = "End of the day";
inline constexpr char site_checklist[] = "Site checklist";
inline constexpr char nobody_starts[] = "Nobody starts";
inline constexpr char cleared_by_of[] = "Cleared by: {}.";
inline constexpr char stop_nobody_starts_on_this_job[] = "STOP: nobody starts on this job";
inline constexpr char days_hold_points_kits[] = "{} days · {} hold points · {} kits";
inline constexpr char the_rest_as_of[] = "the rest, as of ";
inline constexpr char acid_mix_card[] = "Acid mix card";
inline constexpr char neat_acid[] = "neat acid";
inline constexpr char of_acid_to_of_water[] = "{:g} of acid to {:g} of water";
inline constexpr char parts[] = "Parts";
inline constexpr char parts_before[] = "Parts, ";
inline constexpr char acid_in_all[] = "Acid in all";
inline constexpr char water_in_all_first[] = "Water in all, first";
inline constexpr char into_each_bucket_or_can_water_first[] =
    "Into each bucket or can, water first";
inline constexpr char paint_at_of[] = "{}{} · {} · paint at {}{}";
inline constexpr char mix_at[] = "Mix at";
inline constexpr char stands_from[] = "Stands from";
inline constexpr char chalk_mark_section_after_kit[] = "Chalk mark, {}section {}, after kit {}: {}";
inline constexpr char primer_before[] = "primer, ";
inline constexpr char coating_mix_card[] = "Coating mix card";
inline constexpr char none_named_usual_values[] = "none named; usual values";
inline constexpr char kit_a_and_b_together[] = "Kit, A and B together";
inline constexpr char stands_pot_life[] = "Stands, pot life";
inline constexpr char at_after[] = " at ";
inline constexpr char coat_and_section[] = "Coat and section";
inline constexpr char filled_in_and_signed_by[] = "Filled in and signed by";
inline constexpr char read_again[] = "Read again";
inline constexpr char morning_card[] = "Morning card";
inline constexpr char evening_card[] = "Evening card";
inline constexpr char from_before[] = "From ";
inline constexpr char goes_on[] = "Goes on";
inline constexpr char goes_on_the_next_day[] = ", goes on the next day";
inline constexpr char and_section[] = " · section ";
inline constexpr char people_after[] = " · {} people";
inline constexpr char one_person_after[] = " · 1 person";
inline constexpr char a_kit_covers_about[] = "A kit covers about";
inline constexpr char thinner_a_kit_first_coat_only[] = "Thinner, a kit, first coat only";
inline constexpr char bicarbonate_on_the_surface[] = "Bicarbonate, on the surface";
inline constexpr char warm_water[] = "Warm water";
inline constexpr char by_the_measured_ph[] = ", by the measured pH";
inline constexpr char bicarbonate_in_the_sump[] = "Bicarbonate, in the sump";
inline constexpr char solution_on_the_walls[] = "Solution on the walls";
inline constexpr char solution_on_the_floor[] = "Solution on the floor";
inline constexpr char batches[] = "Batches";
inline constexpr char of[] = "{} of {}";
inline constexpr char mortar[] = "Mortar";
inline constexpr char primer_kits[] = "Primer, kits";
inline constexpr char hired_for_it[] = "Hired for it";
inline constexpr char worn[] = "Worn";
inline constexpr char the_mix_water_first[] = "The mix, water first";
inline constexpr char hold_point_nobody_goes_on_until_it_is[] =
    "HOLD POINT: nobody goes on until it is signed";
inline constexpr char go_on_when[] = "Go on when";
inline constexpr char signed_word[] = "Signed";
inline constexpr char surface_ph_within_1_unit_of_the_rinse[] =
    "Surface pH, within 1 unit of the rinse water";
inline constexpr char no[] = "No.";
inline constexpr char briefed_before_the_work[] =
    "Briefed before the work: hazards, first aid, who is called, the way out";
inline constexpr char no_days[] = "no";
inline constexpr char rinse_water[] = "Rinse water";
inline constexpr char plastic_sheets_16_to_24_h_no_water_no[] =
    "Plastic sheets, 16 to 24 h: no water, no dark patch";
inline constexpr char sheet[] = "Sheet";
inline constexpr char laid_at[] = "Laid at";
inline constexpr char read_at[] = "Read at";
inline constexpr char when_the_next_coat_may_go_on[] = "When the next coat may go on";
inline constexpr char day_and_time[] = "Day and time";
inline constexpr char cleaned_and_dry[] = "Cleaned and dry";
inline constexpr char dust_free_to_the_wiped_hand[] = "dust-free to the wiped hand";
inline constexpr char coat_not_before[] = "Coat not before";
inline constexpr char later[] = " later";
inline constexpr char coat_started_by[] = "Coat started by";
inline constexpr char kits_as_mixed[] = "Kits as mixed";
inline constexpr char mixed_at[] = "Mixed at";
inline constexpr char stood_until[] = "Stood until";
inline constexpr char area_done[] = "Area done";
inline constexpr char each_day_of_the_cure[] = "Each day of the cure";
inline constexpr char mean_air[] = "Mean air";
inline constexpr char pools_off[] = "Pools off";
inline constexpr char groundwater[] = "Groundwater";
inline constexpr char goes_on_after[] = ", goes on";
inline constexpr char middle[] = "Middle";
inline constexpr char end[] = "End";

}  // namespace basinwright::report::say
