// Words of drawings and charts.
#pragma once

namespace basinwright::report::say {

inline constexpr char limits_while_painting[] = "limits while painting";
inline constexpr char coat_only_above_the_limit[] = "coat only above the limit";
inline constexpr char rain[] = "Rain";
inline constexpr char an_hour_full_height[] = "an hour; full height ";
inline constexpr char night[] = "Night";
inline constexpr char job_before[] = "Job ";
inline constexpr char revision_before[] = "revision ";
inline constexpr char measures_in_scale_1_on_paper_at_full[] =
    "Measures in {}. Scale 1 : {} on {} paper at full size.";
inline constexpr char feet_and_inches[] = "feet and inches";
inline constexpr char letter[] = "Letter";
inline constexpr char sheet_of[] = "Sheet {} of {}";
inline constexpr char scale_1_on_the_sheet_is[] = "Scale 1 : {}: {} on the sheet is {}";
inline constexpr char areas_and_water[] = "Areas and water";
inline constexpr char the_job_file_has_the_rest[] = "The job file has the rest.";
inline constexpr char key_and_notes[] = "Key and notes";
inline constexpr char steps_at_wall_from_its_start_wide[] =
    "Steps at wall {}, {} from its start, {} wide: treads {} and depths {}";
inline constexpr char bench_at_wall_from_its_start_by_depth[] =
    "Bench at wall {}, {} from its start: {} by {}, depth {}";
inline constexpr char steps_in_corner_radii_and_depths[] =
    "Steps in corner {}: radii {} and depths {}";
inline constexpr char round_steps_at_wall_from_its_start[] =
    "Round steps at wall {}, {} from its start: radii {} and depths {}";
inline constexpr char block_depth[] = "Block, depth {}";
inline constexpr char pit_depth[] = "Pit, depth {}";
inline constexpr char deep_end[] = " (deep end)";
inline constexpr char along_the_axis[] = "{}{}: {} along the axis, {}";
inline constexpr char rest_of_the_end_wall[] = "{}{}: rest of the end wall, {}";
inline constexpr char rim_second_line_tile_band_high_not[] =
    "Rim; second line: tile band, {} high, not painted";
inline constexpr char rim_painted_from_there_down[] = "Rim; painted from there down";
inline constexpr char break_line_of_the_floor_with_its_depth[] =
    "Break line of the floor, with its depth";
inline constexpr char drop_of_the_floor_with_its_two_depths[] =
    "Drop of the floor, with its two depths";
inline constexpr char line_of_the_long_section_a_a[] = "Line of the long section A-A";
inline constexpr char water_line_below_the_rim_long_section[] =
    "Water line, {} below the rim (long section)";
inline constexpr char water_line_at_the_rim_long_section[] =
    "Water line, at the rim (long section)";
inline constexpr char all_depths_run_down_from_the_rim_walls[] =
    "All depths run down from the rim. Walls are numbered from 0.";
inline constexpr char the_plan_lies_turned_so_that_the[] =
    "The plan lies turned so that the floor's axis runs level.";
inline constexpr char cove_of_radius_between_walls_and_floor[] =
    "Cove of {} radius between walls and floor.";
inline constexpr char walls_lean_inwards_by_percent_of_their[] =
    "Walls lean inwards by {} % of their depth.";
inline constexpr char wall_lengths[] = "Wall lengths: ";
inline constexpr char take_off_drawing[] = "Take-off drawing";
inline constexpr char take_off_drawing_before[] = "Take-off drawing: ";
inline constexpr char plan_and_long_section_at_1_on_paper[] =
    "Plan and long section at 1 : {} on {} paper. The outline is {} by {}";
inline constexpr char with_walls_0_to[] = ", with walls 0 to {}";
inline constexpr char the_floor_lies_below_the_rim[] = ". The floor lies {} below the rim. ";
inline constexpr char the_floor_lies_to_below_the_rim[] =
    ". The floor lies {} to {} below the rim. ";
inline constexpr char painted_area_water_of[] = "Painted area {}, water {}.";
inline constexpr char plan_1[] = "Plan, 1 : {}";
inline constexpr char long_section_a_a_1[] = "Long section A-A, 1 : {}";
inline constexpr char ft[] = " ft";
inline constexpr char people_at_work[] = "people at work";
inline constexpr char time_passes_nobody_works_on_it[] = "time passes, nobody works on it";
inline constexpr char weather_not_known[] = "weather not known";
inline constexpr char bars_of_each_task_from_to[] = "Bars of each task from {} to {}.";
inline constexpr char marked_from_to[] = " {}: {} to {}.";
inline constexpr char the_job_must_stop_before_it[] = "The job must stop before it.";
inline constexpr char no_dates_before[] = "No dates: ";
inline constexpr char one_inch[] = "1 in";
inline constexpr char one_centimetre[] = "1 cm";
inline constexpr char metres[] = "metres";

}  // namespace basinwright::report::say
