// Words of quantities, washes and instruments.
#pragma once

namespace basinwright::report::say {

inline constexpr char thermometer_for_the_air[] = "thermometer for the air";
inline constexpr char surface_thermometer[] = "surface thermometer";
inline constexpr char wet_film_comb[] = "wet-film comb";
inline constexpr char ph_meter_calibrated_beside_the_paper[] =
    "pH meter, calibrated, beside the paper";
inline constexpr char one_a_job_with_acid[] = "1 a job with acid";
inline constexpr char gas_meter_for_oxygen_carbon_dioxide[] =
    "gas meter for oxygen, carbon dioxide and vapours";
inline constexpr char one_where_the_shell_is_deep_or_covered[] =
    "1 where the shell is deep, tented or covered";
inline constexpr char instruments[] = "Instruments";
inline constexpr char etch[] = "Etch";
inline constexpr char etch_of[] = "Etch, {}";
inline constexpr char the_acid_is_no_stronger[] = "the acid is no stronger";
inline constexpr char about[] = "about ";
inline constexpr char acid_to_water_by_volume_the_trades_mix[] =
    "Acid to water by volume: the trade's mix beside published 5 to 10 % by weight";
inline constexpr char trade[] = "Trade";
inline constexpr char by_weight[] = "By weight";
inline constexpr char bucket_warms[] = "Bucket warms";
inline constexpr char fume_over_it[] = "Fume over it, ppm";
inline constexpr char over_neat_acid[] = "Over neat acid, ppm";
inline constexpr char stronger_than_the_published_5_to_10[] =
    "Stronger than the published 5 to 10 % by weight: more fume and more lime taken off; the "
    "columns 10 % and 5 % say how much water the same acid takes for those.";
inline constexpr char neat_and_1_1_only_because_the_data[] =
    "Neat and 1 : 1 only because the data sheet asks for them: heat and fume are at their worst; "
    "forced air from the lowest point, acid-gas masks, nobody alone.";
inline constexpr char into_each_vessel_water_first_the_etch[] =
    "Into each vessel, water first; the etch in buckets or in cans";
inline constexpr char mix[] = "Mix";
inline constexpr char vessel[] = "Vessel";
inline constexpr char how_many[] = "How many";
inline constexpr char water_first[] = "Water first";
inline constexpr char then[] = "Then";
inline constexpr char chlorine_wash_granules[] = "Chlorine wash: granules";
inline constexpr char chlorine_wash_liquid[] = "Chlorine wash: liquid";
inline constexpr char chlorine_wash_water_first[] = "Chlorine wash: water first";
inline constexpr char chlorine_wash[] = "Chlorine wash";
inline constexpr char not_needed_no_algae[] = "not needed: no algae";
inline constexpr char degreaser_concentrate[] = "Degreaser concentrate";
inline constexpr char degreaser_warm_water[] = "Degreaser: warm water";
inline constexpr char neutralise[] = "Neutralise";
inline constexpr char etch_acid[] = "Etch: acid";
inline constexpr char etch_water_put_in_first[] = "Etch: water, put in first";
inline constexpr char etch_solution[] = "Etch: solution";
inline constexpr char etch_on_the_walls_first[] = "Etch: on the walls, first";
inline constexpr char etch_on_the_floor[] = "Etch: on the floor";
inline constexpr char acid_to_water_by_weight[] = "{} acid to water, {} by weight";
inline constexpr char published_practice_5_to_10_percent[] = "; published practice 5 to 10 %";
inline constexpr char inside_published_5_to_10_percent[] = "; inside published 5 to 10 %";
inline constexpr char etch_mix[] = "Etch: mix";
inline constexpr char bicarbonate_surface_wash[] = "Bicarbonate, surface wash";
inline constexpr char bicarbonate_warm_water[] = "Bicarbonate: warm water";
inline constexpr char no_acid_spent_then_by_the_measured_ph[] =
    " (no acid spent); then by the measured pH";
inline constexpr char bicarbonate_sump[] = "Bicarbonate, sump";
inline constexpr char two_part_filler[] = "Two-part filler";
inline constexpr char of_equal_volumes_of_a_and_b_used[] =
    "{} of {}, equal volumes of A and B, used within {}";
inline constexpr char filler_batches[] = "Filler: batches";
inline constexpr char filler_cure_before_sanding[] = "Filler: cure before sanding";
inline constexpr char sand_and_cement_mortar[] = "Sand and cement mortar";
inline constexpr char mortar_wait_before_acid[] = "Mortar: wait before acid";
inline constexpr char dust_of_the_old_coat[] = "Dust of the old coat";
inline constexpr char surface_ph_readings[] = "Surface pH readings";
inline constexpr char plastic_sheets_dryness[] = "Plastic sheets, dryness";
inline constexpr char quantities[] = "Quantities";
inline constexpr char primer_area[] = "Primer: area";
inline constexpr char kits_of_primer[] = "Primer: kits";
inline constexpr char kits_in_all[] = "Kits in all";
inline constexpr char no_system_named_usual_values[] = "no system named; usual values";
inline constexpr char cover_of_a_kit[] = "Cover of a kit";
inline constexpr char to_expected[] = "{} to {}, {} expected";
inline constexpr char thinner[] = "Thinner";
inline constexpr char deep_end_first_painters_would_do_a[] =
    "{}, deep end first; {} painters would do a coat in one morning";
inline constexpr char cut_over_mornings[] = "Cut over {} mornings";
inline constexpr char cut_at_the_sections_that_the_job_file[] =
    "Cut at the sections that the job file names";
inline constexpr char at_worst[] = " at worst";
inline constexpr char water_of_the[] = "Water of the";
inline constexpr char with_rinses[] = "With rinses";
inline constexpr char sewer[] = "Sewer";
inline constexpr char ph_to_never_under_5_0[] = "pH {} to {}{}; never under 5.0";
inline constexpr char assumed_ask_the_authority[] = ", assumed: ask the authority";
inline constexpr char sewer_takes[] = "Sewer takes";
inline constexpr char storm_drain[] = "Storm drain";
inline constexpr char never_none_of_it[] = "never, none of it";
inline constexpr char of_sodium_thiosulfate_a_fifth_more[] =
    " of sodium thiosulfate, a fifth more than it takes; never into acid";
inline constexpr char chlorine_out_of_the_wash[] = "Chlorine out of the wash";
inline constexpr char of_sodium_thiosulfate_for_each_mg_l[] =
    " of sodium thiosulfate for each mg/L read";
inline constexpr char chlorine_out_of_the_pool_water[] = "Chlorine out of the pool water";
inline constexpr char bicarbonate_for_the_etch_water_in_the[] =
    "Bicarbonate for the etch water in the sump to reach pH {}, by the pH it reads: closed or "
    "still, fizzing, or blown with air; under 1 the upper bound holds; half of it, then measure "
    "again; never pumped by the table alone";
inline constexpr char reads[] = "Reads";
inline constexpr char still[] = "Still";
inline constexpr char fizzing[] = "Fizzing";
inline constexpr char aerated[] = "Aerated";
inline constexpr char gas_given_off[] = "Gas given off";
inline constexpr char of_the_shell[] = "Of the shell";
inline constexpr char the_sump_reads_ph_the_first_line_is[] =
    "The sump reads pH {}: the first line is for it.";
inline constexpr char the_sump_reads_ph_where_a_reading_no[] =
    "The sump reads pH {}, where a reading no longer tells how much acid is left: air, a little "
    "bicarbonate, and measure again.";
inline constexpr char the_sump_reads_ph_inside_the_limits[] =
    "The sump reads pH {}: inside the limits, nothing to add.";
inline constexpr char the_sump_reads_ph_above_what_the_sewer[] =
    "The sump reads pH {}, above what the sewer takes: no acid into it; with leave only, or tanked "
    "away.";
inline constexpr char one_wash_water_at_a_time_sump_pump_and[] =
    "One wash water at a time: sump, pump and hose are emptied and rinsed between the chlorine "
    "wash and the etch; the two never meet there either.";
inline constexpr char sewer_above_bicarbonates_ph[] =
    "The sewer asks for more than pH 8.3, which bicarbonate alone does not reach: ask the "
    "authority before any stronger alkali.";
inline constexpr char water_of_the_washes_and_the_sump[] = "Water of the washes, and the sump";
inline constexpr char neutralising_all_the_acid_gives_off_up[] =
    "Neutralising all the acid gives off up to {} of carbon dioxide, {} of the shell were it to "
    "stay. It is heavier than air and lies in the deep end, where 1.5 % is the most for a quarter "
    "of an hour: draw air from the lowest point, nobody at the sump alone.";
inline constexpr char one_a_job[] = "1 a job";
inline constexpr char one_a_painter[] = "1 a painter";
inline constexpr char hygrometer[] = "hygrometer";

}  // namespace basinwright::report::say
