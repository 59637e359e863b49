// Words of the take-off.
#pragma once

namespace basinwright::report::say {

inline constexpr char no_lift[] = "no lift";
inline constexpr char never[] = "never";
inline constexpr char empty_shell_against_groundwater[] = "Empty shell against groundwater";
inline constexpr char water_at[] = "Water at";
inline constexpr char factor[] = "Factor";
inline constexpr char verdict[] = "Verdict";
inline constexpr char floats_from[] = "Floats from";
inline constexpr char displaces[] = "Displaces";
inline constexpr char metric[] = "Metric";
inline constexpr char plan_area[] = "Plan area";
inline constexpr char perimeter[] = "Perimeter";
inline constexpr char floor_true_slope[] = "Floor, true slope";
inline constexpr char walls_below_the_tile_band[] = "Walls below the tile band";
inline constexpr char treads[] = "Treads";
inline constexpr char risers[] = "Risers";
inline constexpr char step_edges[] = "Step edges";
inline constexpr char cove_length[] = "Cove length";
inline constexpr char cove_right_angle_convention[] = "Cove, right-angle convention";
inline constexpr char cove_at_the_true_angle[] = "Cove at the true angle";
inline constexpr char deepest_below_the_rim[] = "Deepest, below the rim";
inline constexpr char with_the_tape_out_by[] = "With the tape out by {}{}";
inline constexpr char either_way[] = "either way";
inline constexpr char by_the_tape_to[] = "by the tape {} to {}";
inline constexpr char kits_at_a_kit[] = "Kits, {} {} at {} a kit";
inline constexpr char version[] = "Version";
inline constexpr char format[] = "Format";
inline constexpr char cove[] = "Cove";
inline constexpr char named[] = "Named";
inline constexpr char bodies_of_water[] = "Bodies of water";
inline constexpr char by_section_and_surface_deep_end_first[] =
    "By section and surface, {}, deep end first";
inline constexpr char where_sections_begin_and_end_along_the[] =
    "Where sections begin and end along the axis";
inline constexpr char us_gal[] = "US gal";

}  // namespace basinwright::report::say
