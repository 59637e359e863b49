#include <array>

#include "basinwright/readers/field.hpp"

namespace basinwright::readers {
namespace {

// Nothing that is painted by hand is longer; more is a slip of the unit.
constexpr double longest = 1000.0;
constexpr double deepest = 50.0;

constexpr Field span_of(std::string_view key, std::string_view doc) {
  return {.key = key,
          .type = Type::length,
          .doc = doc,
          .low = 0,
          .high = longest,
          .above_low = true,
          .required = true};
}
constexpr Field place_of(std::string_view key, std::string_view doc) {
  return {.key = key, .type = Type::length, .doc = doc, .low = -1e7, .high = 1e7, .required = true};
}
constexpr Field depth_of(std::string_view key, std::string_view doc) {
  return {.key = key,
          .type = Type::length,
          .doc = doc,
          .low = 0,
          .high = deepest,
          .above_low = true,
          .required = true};
}
constexpr Field bulge_field{
    .key = "bulge",
    .type = Type::number,
    .doc = "tan(arc angle / 4) of the edge to the next point; positive bends outward",
    .low = -1e3,
    .high = 1e3,
    .fallback = "0, straight"};

constexpr std::array rectangle{span_of("length", "Along the pool"),
                               span_of("width", "Across the pool")};
constexpr std::array rounded{span_of("length", "Along the pool"),
                             span_of("width", "Across the pool"),
                             span_of("corner_radius", "Radius of the corners")};
constexpr std::array l_shape{span_of("length", "Along the long leg"),
                             span_of("width", "Across both legs"),
                             span_of("notch_length", "Of the corner cut out"),
                             span_of("notch_width", "Of the corner cut out")};
constexpr std::array circle{span_of("diameter", "Across the middle")};
constexpr std::array kidney{span_of("shallow_radius", "End circle at the shallow end"),
                            span_of("deep_radius", "End circle at the deep end"),
                            span_of("centres", "Distance between the centres of the end circles"),
                            span_of("outer_radius", "The long outer arc"),
                            span_of("inner_radius", "The waist arc")};
constexpr std::array station{place_of("distance", "Along the baseline"),
                             place_of("near", "From the baseline to the near wall"),
                             place_of("far", "From the baseline to the far wall")};
constexpr std::array offsets{
    Field{.key = "stations",
          .type = Type::list,
          .doc = "[distance, near, far], along the baseline",
          .required = true,
          .element = Type::tuple,
          .fields = station},
    Field{.key = "curve",
          .type = Type::choice,
          .doc = "Straight between the stations, or arcs through each three points",
          .choices = "straight arcs",
          .fallback = "straight"}};
constexpr std::array tape_point{span_of("from_a", "Tape from the baseline's start"),
                                span_of("from_b", "Tape from the baseline's end"),
                                Field{.key = "side",
                                      .type = Type::whole,
                                      .doc = "1 left of the baseline, -1 right",
                                      .low = -1,
                                      .high = 1,
                                      .required = true},
                                bulge_field};
constexpr std::array two_tape{span_of("baseline", "Between the two tapes' zero points"),
                              Field{.key = "points",
                                    .type = Type::list,
                                    .doc = "[from A, from B, side, bulge], round the pool",
                                    .required = true,
                                    .element = Type::tuple,
                                    .fields = tape_point}};
constexpr std::array path_point{place_of("x", "Along"), place_of("y", "Across"), bulge_field};
constexpr std::array path{Field{.key = "points",
                                .type = Type::list,
                                .doc = "[x, y, bulge], counter-clockwise",
                                .required = true,
                                .element = Type::tuple,
                                .fields = path_point}};

constexpr std::array outline_kinds{Alternative{"rectangle", rectangle},
                                   Alternative{"rounded_rectangle", rounded},
                                   Alternative{"l_shape", l_shape},
                                   Alternative{"circle", circle},
                                   Alternative{"stadium", rectangle},
                                   Alternative{"ellipse", rectangle},
                                   Alternative{"kidney", kidney},
                                   Alternative{"offsets", offsets},
                                   Alternative{"two_tape", two_tape},
                                   Alternative{"path", path}};

constexpr std::array placing{Field{.key = "rotation_deg",
                                   .type = Type::number,
                                   .doc = "Turned about the origin, degrees",
                                   .low = -1e4,
                                   .high = 1e4,
                                   .fallback = "0"},
                             Field{.key = "dx",
                                   .type = Type::length,
                                   .doc = "Moved along x",
                                   .low = -1e7,
                                   .high = 1e7,
                                   .fallback = "0"},
                             Field{.key = "dy",
                                   .type = Type::length,
                                   .doc = "Moved along y",
                                   .low = -1e7,
                                   .high = 1e7,
                                   .fallback = "0"}};
// Keys that stand beside `kind` in every outline.
constexpr std::array outline_common{
    Field{.key = "place",
          .type = Type::object,
          .doc = "Moves the outline and the features tied to its walls",
          .fallback = "where it was measured",
          .fields = placing}};

constexpr std::array constant_floor{depth_of("depth", "Below the rim")};
constexpr std::array break_point{place_of("distance", "Along the axis"),
                                 depth_of("depth", "Below the rim")};
constexpr std::array point_2d{place_of("x", "Along"), place_of("y", "Across")};
constexpr std::array breaks_floor{
    Field{.key = "points",
          .type = Type::list,
          .doc = "[distance along the axis, depth]; two depths at one distance are a vertical drop",
          .required = true,
          .element = Type::tuple,
          .fields = break_point},
    Field{.key = "axis_deg",
          .type = Type::number,
          .doc = "Direction of the axis, degrees from x",
          .low = -1e4,
          .high = 1e4,
          .fallback = "0"},
    Field{.key = "origin",
          .type = Type::tuple,
          .doc = "[x, y] where the distance is 0",
          .fallback = "[0, 0]",
          .fields = point_2d}};
constexpr std::array hopper_box{place_of("x0", "Low x"),
                                place_of("y0", "Low y"),
                                place_of("x1", "High x"),
                                place_of("y1", "High y")};
constexpr std::array hopper_floor{depth_of("base_depth", "Outside the hopper"),
                                  depth_of("depth", "At the bottom of the hopper"),
                                  Field{.key = "outer",
                                        .type = Type::tuple,
                                        .doc = "[x0, y0, x1, y1] where the hopper begins",
                                        .required = true,
                                        .fields = hopper_box},
                                  Field{.key = "inner",
                                        .type = Type::tuple,
                                        .doc = "[x0, y0, x1, y1] of its bottom",
                                        .required = true,
                                        .fields = hopper_box}};
constexpr std::array spot{
    place_of("x", "Along"), place_of("y", "Across"), depth_of("depth", "Below the rim")};
constexpr std::array corner_numbers{Field{.key = "a",
                                          .type = Type::whole,
                                          .doc = "Point number",
                                          .low = 0,
                                          .high = 1e5,
                                          .required = true},
                                    Field{.key = "b",
                                          .type = Type::whole,
                                          .doc = "Point number",
                                          .low = 0,
                                          .high = 1e5,
                                          .required = true},
                                    Field{.key = "c",
                                          .type = Type::whole,
                                          .doc = "Point number",
                                          .low = 0,
                                          .high = 1e5,
                                          .required = true}};
constexpr std::array spot_floor{Field{.key = "points",
                                      .type = Type::list,
                                      .doc = "[x, y, depth]",
                                      .required = true,
                                      .element = Type::tuple,
                                      .fields = spot},
                                Field{.key = "triangles",
                                      .type = Type::list,
                                      .doc = "[a, b, c]: the points that make each plane",
                                      .fallback = "Delaunay",
                                      .element = Type::tuple,
                                      .fields = corner_numbers}};
constexpr std::array floor_kinds{Alternative{"constant", constant_floor},
                                 Alternative{"breaks", breaks_floor},
                                 Alternative{"hopper", hopper_floor},
                                 Alternative{"spot_depths", spot_floor}};

constexpr Field wall_field{.key = "wall",
                           .type = Type::whole,
                           .doc = "Number of the wall it stands against, from 0",
                           .low = 0,
                           .high = 1e4,
                           .required = true};
constexpr Field along_field(std::string_view key, std::string_view doc) {
  return {
      .key = key, .type = Type::length, .doc = doc, .low = 0, .high = longest, .required = true};
}
constexpr Field lengths_of(std::string_view key, std::string_view doc) {
  return {.key = key,
          .type = Type::list,
          .doc = doc,
          .low = 0,
          .high = deepest,
          .above_low = true,
          .required = true,
          .element = Type::length};
}
constexpr std::array straight_steps{
    wall_field,
    along_field("from", "From the wall's start"),
    span_of("width", "Along the wall"),
    lengths_of("treads", "Depth of each tread front to back, from the wall"),
    lengths_of("depths", "Of each tread below the rim")};
constexpr std::array bench{wall_field,
                           along_field("from", "From the wall's start"),
                           span_of("length", "Along the wall"),
                           span_of("width", "Out from the wall"),
                           depth_of("depth", "Of its seat below the rim")};
constexpr std::array corner_steps{
    Field{.key = "corner",
          .type = Type::whole,
          .doc = "Number of the corner: where wall of that number begins",
          .low = 0,
          .high = 1e4,
          .required = true},
    lengths_of("radii", "Of each tread, smallest first"),
    lengths_of("depths", "Of each tread below the rim")};
constexpr std::array round_steps{wall_field,
                                 along_field("at", "Centre, from the wall's start"),
                                 lengths_of("radii", "Of each tread, smallest first"),
                                 lengths_of("depths", "Of each tread below the rim")};
constexpr std::array free_block{Field{.key = "path",
                                      .type = Type::list,
                                      .doc = "[x, y, bulge] round its footprint",
                                      .required = true,
                                      .element = Type::tuple,
                                      .fields = path_point},
                                depth_of("depth", "Of its level below the rim")};
constexpr std::array feature_kinds{Alternative{"straight_steps", straight_steps},
                                   Alternative{"bench", bench},
                                   Alternative{"corner_steps", corner_steps},
                                   Alternative{"round_steps", round_steps},
                                   Alternative{"block", free_block},
                                   Alternative{"pit", free_block}};

constexpr std::array tape_check{Field{.key = "from",
                                      .type = Type::whole,
                                      .doc = "Corner number",
                                      .low = 0,
                                      .high = 1e4,
                                      .required = true},
                                Field{.key = "to",
                                      .type = Type::whole,
                                      .doc = "Corner number",
                                      .low = 0,
                                      .high = 1e4,
                                      .required = true},
                                span_of("length", "Measured between them")};
constexpr std::array adjustment{
    Field{.key = "name", .type = Type::text, .doc = "What it is", .required = true},
    Field{.key = "area",
          .type = Type::area,
          .doc = "Added, or with a minus taken off",
          .low = -1e5,
          .high = 1e5,
          .required = true},
    Field{.key = "where",
          .type = Type::choice,
          .doc = "Surface it belongs to",
          .choices = "walls floor steps",
          .fallback = "walls"}};

constexpr std::array pool_table{
    Field{
        .key = "name", .type = Type::text, .doc = "Name of this body of water", .fallback = "pool"},
    Field{.key = "outline",
          .type = Type::variant,
          .doc = "The plan at the rim",
          .required = true,
          .fields = outline_common,
          .alternatives = outline_kinds},
    Field{.key = "floor",
          .type = Type::variant,
          .doc = "Depths below the rim",
          .required = true,
          .alternatives = floor_kinds},
    Field{.key = "features",
          .type = Type::list,
          .doc = "Steps, benches, blocks and pits",
          .fallback = "none",
          .element = Type::variant,
          .alternatives = feature_kinds},
    Field{.key = "rim_to_paint",
          .type = Type::length,
          .doc = "Height of the unpainted tile band below the rim",
          .low = 0,
          .high = deepest,
          .fallback = "0"},
    Field{.key = "rim_to_water",
          .type = Type::length,
          .doc = "From the rim down to the water line",
          .low = 0,
          .high = deepest,
          .fallback = "0.1 m, assumed"},
    Field{.key = "cove_radius",
          .type = Type::length,
          .doc = "Radius of the curve between wall and floor",
          .low = 0,
          .high = deepest,
          .fallback = "0, a sharp corner"},
    Field{.key = "wall_lean",
          .type = Type::number,
          .doc = "Metres the walls lean in for each metre of depth; only without features and cove",
          .low = 0,
          .high = 10,
          .fallback = "0, upright"},
    Field{.key = "tape_tolerance",
          .type = Type::fraction,
          .doc = "How far a tape reading may be out",
          .low = 0,
          .high = 0.2,
          .fallback = "1 %, assumed"},
    Field{.key = "check",
          .type = Type::list,
          .doc = "[corner, corner, length]: tapes to check the outline by",
          .fallback = "none",
          .element = Type::tuple,
          .fields = tape_check},
    Field{.key = "wall_thickness",
          .type = Type::length,
          .doc = "Of the shell's walls, for the flotation check",
          .low = 0,
          .high = 5,
          .above_low = true,
          .fallback = "no flotation check"},
    Field{.key = "slab_thickness",
          .type = Type::length,
          .doc = "Of the shell's floor, for the flotation check",
          .low = 0,
          .high = 5,
          .above_low = true,
          .fallback = "no flotation check"},
    Field{.key = "adjust",
          .type = Type::list,
          .doc = "Named areas added or deducted",
          .fallback = "none",
          .element = Type::object,
          .fields = adjustment}};

}  // namespace

std::span<const Field> pool_fields() {
  return pool_table;
}

}  // namespace basinwright::readers
