#include "explain.hpp"

#include <string>
#include <vector>

#include "plain.hpp"
#include "trace_sum.hpp"

namespace basinwright::shell {

namespace {

using sources::Kind;
using sources::Source;
using trace::From;
using trace::Trace;

constexpr Source band_given{Kind::given, "", "/pool/rim_to_paint"};
constexpr Source water_given{Kind::given, "", "/pool/rim_to_water"};
constexpr Source cove_given{Kind::given, "", "/pool/cove_radius"};
constexpr Source lean_given{Kind::given, "", "/pool/wall_lean"};
constexpr Source floor_given{Kind::given, "", "/pool/floor"};
constexpr Source outline_given{Kind::given, "", "/pool/outline"};
constexpr Source features_given{Kind::given, "", "/pool/features"};
constexpr std::string_view right_angle = "the cove at a right angle between wall and floor";

const Source& depth_of(Face face) {
  return face == Face::floor || face == Face::wall ? floor_given : features_given;
}

std::string numbered(const std::string& key, std::size_t index) {
  return key + "." + std::to_string(index + 1);
}

/// Everything that lies in one plane, less what covers it.
struct OnePlane {
  Face face;
  geometry::Plane depth;
  double plan = 0.0;
  geometry::Moments wet;
};

bool same_plane(const geometry::Plane& a, const geometry::Plane& b) {
  return a.constant == b.constant && a.gradient.x == b.gradient.x && a.gradient.y == b.gradient.y;
}

std::vector<OnePlane> levels_of(const Survey& survey) {
  std::vector<OnePlane> levels;
  for (const Flat& flat : survey.surfaces.flats) {
    OnePlane* level = nullptr;
    for (OnePlane& l : levels) {
      if (l.face == flat.face && same_plane(l.depth, flat.depth)) level = &l;
    }
    if (level == nullptr) level = &levels.emplace_back(OnePlane{flat.face, flat.depth, 0.0, {}});
    level->plan += flat.sign * geometry::moments(flat.loop).area;
    level->wet += flat.sign * wet_moments(flat.loop, flat.depth, survey.model.water);
  }
  return levels;
}

/// All pieces of one wall, or of vertical faces of one kind.
struct WallStretch {
  Face face;
  int wall;
  double length = 0.0;
  double area = 0.0;
};

std::vector<WallStretch> stretches_of(const Survey& survey) {
  std::vector<WallStretch> stretches;
  for (const Upright& upright : survey.surfaces.uprights) {
    const int wall = upright.face == Face::wall ? upright.curve.wall : -1;
    WallStretch* stretch = nullptr;
    for (WallStretch& s : stretches) {
      if (s.face == upright.face && s.wall == wall) stretch = &s;
    }
    if (stretch == nullptr) stretch = &stretches.emplace_back(WallStretch{upright.face, wall});
    stretch->length += upright.curve.length();
    stretch->area += upright.curve.integral(upright.height);
  }
  return stretches;
}

void explain_walls(const Survey& survey,
                   const std::vector<WallStretch>& stretches,
                   const TakeOff& t,
                   Trace& trace) {
  const std::string key = "takeoff.wall_area_m2";
  std::vector<Term<Area>> terms;
  for (const WallStretch& s : stretches) {
    if (s.face != Face::wall) continue;
    const std::string name = key + ".wall_" + std::to_string(s.wall);
    const double depth = s.area / s.length + survey.model.band;
    trace.note(name,
               area(s.area),
               "length * (mean_depth - band)",
               {{"length", metres(s.length), outline_given},
                {"mean_depth", metres(depth), floor_given},
                {"band", metres(survey.model.band), band_given}},
               "mean depth of what stands at the wall's foot");
    terms.push_back({name, area(s.area)});
  }
  note_sum(trace, key, t.wall_area, terms);
}

/// Level or sloping parts and vertical faces of one kind under one key.
struct Sum {
  std::string key;
  Face face;
  Area total;
};

void explain_faces(const std::vector<OnePlane>& levels,
                   const std::vector<WallStretch>& stretches,
                   const Sum& sum,
                   Trace& trace) {
  std::vector<Term<Area>> terms;
  for (const OnePlane& level : levels) {
    if (level.face != sum.face) continue;
    const std::string name = numbered(sum.key, terms.size());
    const double slope = geometry::norm(level.depth.gradient);
    const Area part = area(level.plan * level.depth.stretch());
    trace.note(name,
               part,
               "plan * sqrt(1 + slope^2)",
               {{"plan", area(level.plan), by_green}, {"slope", slope, depth_of(level.face)}});
    terms.push_back({name, part});
  }
  for (const WallStretch& s : stretches) {
    if (s.face != sum.face) continue;
    const std::string name = numbered(sum.key, terms.size());
    trace.note(name,
               area(s.area),
               "length * mean_height",
               {{"length", metres(s.length), by_green},
                {"mean_height", metres(s.area / s.length), depth_of(s.face)}},
               "vertical faces");
    terms.push_back({name, area(s.area)});
  }
  note_sum(trace, sum.key, sum.total, terms);
}

void explain_water(const Survey& survey,
                   const std::vector<OnePlane>& levels,
                   const TakeOff& t,
                   Trace& trace) {
  const std::string key = "takeoff.water_volume_before_cove_m3";
  std::vector<Term<Volume>> terms;
  for (const OnePlane& level : levels) {
    if (level.wet.area == 0.0) continue;
    const double depth = level.wet.integral(level.depth) / level.wet.area;
    const Volume part = volume(level.wet.area * (depth - survey.model.water));
    const std::string name = numbered(key, terms.size());
    trace.note(name,
               part,
               "plan * (depth_at_centroid - rim_to_water)",
               {{"plan", area(level.wet.area), by_green},
                {"depth_at_centroid", metres(depth), depth_of(level.face)},
                {"rim_to_water", metres(survey.model.water), water_given}});
    terms.push_back({name, part});
  }
  note_sum(trace, key, t.water_volume_before_cove, terms);
  trace.note("takeoff.water_volume_m3",
             t.water_volume,
             "before_cove - (1 - pi / 4) * radius^2 * length",
             {{"before_cove", t.water_volume_before_cove, From{key}},
              {"radius", metres(survey.model.cove), cove_given},
              {"length", t.cove_length, From{"takeoff.cove_length_m"}}},
             right_angle);
}

void explain_cove(const Survey& survey, const TakeOff& t, Trace& trace) {
  trace.note("takeoff.cove_length_m",
             t.cove_length,
             "perimeter - against_features",
             {{"perimeter", t.perimeter, From{"takeoff.perimeter_m"}},
              {"against_features", t.perimeter - t.cove_length, by_green}});
  trace.note("takeoff.cove_area_change_m2",
             t.cove_area_change,
             "(pi / 2 - 2) * radius * length",
             {{"radius", metres(survey.model.cove), cove_given},
              {"length", t.cove_length, From{"takeoff.cove_length_m"}}},
             right_angle);
  const double radius = survey.model.cove;
  const double by_angle = radius == 0.0 ? 0.0 : t.cove_true_angle_area_change.si() / radius;
  trace.note("takeoff.cove_true_angle_area_change_m2",
             t.cove_true_angle_area_change,
             "radius * by_angle",
             {{"radius", metres(radius), cove_given}, {"by_angle", metres(by_angle), by_green}},
             "by_angle: (pi - angle) - 2 / tan(angle / 2) summed along the foot of the walls");
  trace.note("takeoff.cove_true_angle_volume_change_m3",
             t.cove_true_angle_volume_change,
             "radius / 2 * area_change",
             {{"radius", metres(radius), cove_given},
              {"area_change",
               t.cove_true_angle_area_change,
               From{"takeoff.cove_true_angle_area_change_m2"}}});
}

void explain_perimeter(const Survey& survey, const TakeOff& t, Trace& trace) {
  const std::string key = "takeoff.perimeter_m";
  std::vector<Term<Length>> terms;
  const geometry::Loop& outline = survey.model.outline();
  for (std::size_t i = 0; i < outline.size();) {
    const int wall = outline[i].wall;
    double length = 0.0;
    for (; i < outline.size() && outline[i].wall == wall; ++i) length += outline[i].length();
    const std::string name = key + ".wall_" + std::to_string(wall);
    trace.note(name, metres(length), "length", {{"length", metres(length), outline_given}});
    terms.push_back({name, metres(length)});
  }
  note_sum(trace, key, t.perimeter, terms);
}

// What leaning walls never have.
void explain_nothing(const TakeOff& t, Trace& trace) {
  const auto none = [&](const char* key, auto value) {
    trace.note(key, value, "0", {}, "leaning walls are measured without it");
  };
  none("takeoff.tread_area_m2", t.tread_area);
  none("takeoff.riser_area_m2", t.riser_area);
  none("takeoff.step_edge_m", t.step_edge);
  none("takeoff.cove_area_change_m2", t.cove_area_change);
  none("takeoff.cove_true_angle_area_change_m2", t.cove_true_angle_area_change);
  none("takeoff.cove_true_angle_volume_change_m3", t.cove_true_angle_volume_change);
  trace.note("takeoff.cove_length_m",
             t.cove_length,
             "perimeter",
             {{"perimeter", t.perimeter, From{"takeoff.perimeter_m"}}},
             "where a cove would run");
}

void explain_lean(const Survey& survey, const TakeOff& t, Trace& trace) {
  const double lean = survey.model.lean;
  const double slant = std::sqrt(1.0 + lean * lean);
  trace.note("takeoff.wall_area_m2",
             t.wall_area,
             "upright * sqrt(1 + lean^2)",
             {{"upright", t.wall_area / slant, by_green}, {"lean", lean, lean_given}},
             "upright: the wall seen square from the side, strip by strip");
  trace.note("takeoff.floor_area_m2",
             t.floor_area,
             "plan * stretch",
             {{"plan", t.floor_plan_at_toe, From{"takeoff.floor_plan_at_toe_m2"}},
              {"stretch", t.floor_area / t.floor_plan_at_toe, floor_given}},
             "stretch: true area over plan area, mean over the floor between the walls");
  trace.note("takeoff.floor_plan_at_toe_m2",
             t.floor_plan_at_toe,
             "plan",
             {{"plan", t.floor_plan_at_toe, by_green}},
             "the floor's plan inside the feet of the walls");
  trace.note("takeoff.water_volume_before_cove_m3",
             t.water_volume_before_cove,
             "plan * mean_water_depth",
             {{"plan", t.plan_area, From{"takeoff.plan_area_m2"}},
              {"mean_water_depth", t.water_volume_before_cove / t.plan_area, floor_given}});
  trace.note(
      "takeoff.water_volume_m3",
      t.water_volume,
      "before_cove",
      {{"before_cove", t.water_volume_before_cove, From{"takeoff.water_volume_before_cove_m3"}}},
      "leaning walls are measured without a cove");
  explain_nothing(t, trace);
  trace.note("takeoff.painted_area_m2",
             t.painted_area,
             "floor + walls",
             {{"floor", t.floor_area, From{"takeoff.floor_area_m2"}},
              {"walls", t.wall_area, From{"takeoff.wall_area_m2"}}});
}

void explain_upright(const Survey& survey, const TakeOff& t, Trace& trace) {
  const std::vector<OnePlane> levels = levels_of(survey);
  const std::vector<WallStretch> stretches = stretches_of(survey);
  for (const Sum& sum : {Sum{"takeoff.floor_area_m2", Face::floor, t.floor_area},
                         Sum{"takeoff.tread_area_m2", Face::tread, t.tread_area},
                         Sum{"takeoff.riser_area_m2", Face::riser, t.riser_area}}) {
    explain_faces(levels, stretches, sum, trace);
  }
  trace.note("takeoff.step_edge_m",
             t.step_edge,
             "length",
             {{"length", t.step_edge, Source{sources::Kind::given, "", "/pool/features"}}},
             "upper edges of steps, benches and blocks, each once");
  explain_walls(survey, stretches, t, trace);
  trace.note("takeoff.floor_plan_at_toe_m2",
             t.floor_plan_at_toe,
             "plan",
             {{"plan", t.plan_area, From{"takeoff.plan_area_m2"}}},
             "upright walls: the plan at the rim");
  explain_cove(survey, t, trace);
  explain_water(survey, levels, t, trace);
  trace.note("takeoff.painted_area_m2",
             t.painted_area,
             "floor + walls + treads + risers + cove_change",
             {{"floor", t.floor_area, From{"takeoff.floor_area_m2"}},
              {"walls", t.wall_area, From{"takeoff.wall_area_m2"}},
              {"treads", t.tread_area, From{"takeoff.tread_area_m2"}},
              {"risers", t.riser_area, From{"takeoff.riser_area_m2"}},
              {"cove_change", t.cove_area_change, From{"takeoff.cove_area_change_m2"}}});
}

}  // namespace

void explain(const Survey& survey, const TakeOff& t, Trace& trace) {
  trace.note("takeoff.plan_area_m2",
             t.plan_area,
             "plan",
             {{"plan", t.plan_area, by_green}},
             "the outline's area: half the sum of x dy - y dx round the rim");
  explain_perimeter(survey, t, trace);
  trace.note("takeoff.deepest_m",
             t.deepest,
             "depth",
             {{"depth", t.deepest, floor_given}},
             "the lowest point of the floor along the shell, features left out");
  if (survey.model.lean > 0.0) {
    explain_lean(survey, t, trace);
  } else {
    explain_upright(survey, t, trace);
  }
}

}  // namespace basinwright::shell
