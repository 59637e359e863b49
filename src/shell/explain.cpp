#include "explain.hpp"

#include <string>

#include "basinwright/units/unit.hpp"

namespace basinwright::shell {

namespace {

using sources::Kind;
using sources::Source;
using trace::From;
using trace::Trace;

constexpr Source by_green{Kind::published, "green-theorem", "region from its boundary"};
constexpr Source band_given{Kind::given, "rim_to_paint", "pool"};
constexpr Source water_given{Kind::given, "rim_to_water", "pool"};
constexpr Source cove_given{Kind::given, "cove_radius", "pool"};
constexpr Source lean_given{Kind::given, "wall_lean", "pool"};
constexpr Source depth_given{Kind::given, "floor", "pool"};

Length metres(double value) {
  return Length::from_si(value);
}
Area area(double value) {
  return Area::from_si(value);
}
Volume volume(double value) {
  return Volume::from_si(value);
}

/// A sum recorded part by part: "takeoff.floor_area.1", "takeoff.floor_area.2" ...
template <class Q>
class Chain {
 public:
  Chain(Trace& trace, std::string key) : trace_(trace), key_(std::move(key)), last_(key_ + ".0") {
    trace_.note(last_, sum_, "0", {});
  }

  void add(Q part, std::string_view formula, std::initializer_list<trace::Operand> operands) {
    sum_ += part;
    const std::string key = key_ + "." + std::to_string(++count_);
    std::vector<trace::Operand> all{{"before", sum_ - part, From{last_}}};
    all.insert(all.end(), operands.begin(), operands.end());
    note(key, "before + " + std::string(formula), all);
    last_ = key;
  }

  void close(Q total) { trace_.note(key_, total, "sum", {{"sum", sum_, From{last_}}}); }

 private:
  // Operands are handed over as a list of fixed length: before and up to two of the part's own.
  void note(const std::string& key,
            const std::string& formula,
            const std::vector<trace::Operand>& all) {
    if (all.size() == 2) {
      trace_.note(key, sum_, formula, {all[0], all[1]});
    } else if (all.size() == 3) {
      trace_.note(key, sum_, formula, {all[0], all[1], all[2]});
    } else {
      trace_.note(key, sum_, formula, {all[0], all[1], all[2], all[3]});
    }
  }

  Trace& trace_;
  std::string key_;
  std::string last_;
  Q sum_{};
  int count_ = 0;
};

void explain_flats(const Survey& survey, Face face, Chain<Area>& chain) {
  for (const Flat& flat : survey.surfaces.flats) {
    if (flat.face != face) continue;
    const double plan = flat.sign * geometry::moments(flat.loop).area;
    const double slope = geometry::norm(flat.depth.gradient);
    chain.add(area(plan * flat.depth.stretch()),
              "plan * sqrt(1 + slope^2)",
              {{"plan", area(plan), by_green}, {"slope", slope, depth_given}});
  }
}

void explain_uprights(const Survey& survey, Face face, Chain<Area>& chain) {
  for (const Upright& upright : survey.surfaces.uprights) {
    if (upright.face != face) continue;
    const double length = upright.curve.length();
    const double height = upright.curve.integral(upright.height) / length;
    if (face == Face::wall) {
      chain.add(area(length * height),
                "length * (mean_depth - band)",
                {{"length", metres(length), by_green},
                 {"mean_depth", metres(height + survey.model.band), depth_given},
                 {"band", metres(survey.model.band), band_given}});
    } else {
      chain.add(
          area(length * height),
          "length * mean_height",
          {{"length", metres(length), by_green}, {"mean_height", metres(height), depth_given}});
    }
  }
}

void explain_face(const Survey& survey, Face face, std::string key, Area total, Trace& trace) {
  Chain<Area> chain(trace, std::move(key));
  explain_flats(survey, face, chain);
  explain_uprights(survey, face, chain);
  chain.close(total);
}

void explain_water(const Survey& survey, const TakeOff& t, Trace& trace) {
  const double water = survey.model.water;
  Chain<Volume> chain(trace, "takeoff.water_volume_before_cove");
  for (const Flat& flat : survey.surfaces.flats) {
    const geometry::Moments wet = flat.sign * wet_moments(flat.loop, flat.depth, water);
    if (wet.area == 0.0) continue;
    const double depth = wet.integral(flat.depth) / wet.area;
    chain.add(volume(wet.area * (depth - water)),
              "plan * (depth_at_centroid - rim_to_water)",
              {{"plan", area(wet.area), by_green},
               {"depth_at_centroid", metres(depth), depth_given},
               {"rim_to_water", metres(water), water_given}});
  }
  chain.close(t.water_volume_before_cove);
  trace.note("takeoff.water_volume",
             t.water_volume,
             "before_cove - (1 - pi / 4) * radius^2 * length",
             {{"before_cove", t.water_volume_before_cove, From{"takeoff.water_volume_before_cove"}},
              {"radius", metres(survey.model.cove), cove_given},
              {"length", t.cove_length, From{"takeoff.cove_length"}}},
             "the cove at a right angle between wall and floor");
}

void explain_cove(const Survey& survey, const TakeOff& t, Trace& trace) {
  Chain<Length> chain(trace, "takeoff.cove_length");
  for (const Upright& upright : survey.surfaces.uprights) {
    if (!upright.coved) continue;
    const Length length = metres(upright.curve.length());
    chain.add(length, "length", {{"length", length, by_green}});
  }
  chain.close(t.cove_length);
  trace.note("takeoff.cove_area_change",
             t.cove_area_change,
             "(pi / 2 - 2) * radius * length",
             {{"radius", metres(survey.model.cove), cove_given},
              {"length", t.cove_length, From{"takeoff.cove_length"}}},
             "the cove at a right angle between wall and floor");
}

void explain_lean(const Survey& survey, const TakeOff& t, Trace& trace) {
  const double lean = survey.model.lean;
  const double slant = std::sqrt(1.0 + lean * lean);
  trace.note("takeoff.wall_area",
             t.wall_area,
             "upright * sqrt(1 + lean^2)",
             {{"upright", t.wall_area / slant, by_green}, {"lean", lean, lean_given}},
             "upright: the wall's area seen square from the side, strip by strip");
  trace.note("takeoff.floor_area",
             t.floor_area,
             "plan * stretch",
             {{"plan", t.floor_plan_at_toe, by_green},
              {"stretch", t.floor_area / t.floor_plan_at_toe, depth_given}},
             "stretch: true area over plan area, mean over the floor");
  trace.note("takeoff.water_volume",
             t.water_volume,
             "plan * mean_water_depth",
             {{"plan", t.plan_area, by_green},
              {"mean_water_depth", t.water_volume / t.plan_area, depth_given}});
}

}  // namespace

void explain(const Survey& survey, const TakeOff& t, Trace& trace) {
  if (survey.model.lean > 0.0) {
    explain_lean(survey, t, trace);
    trace.note("takeoff.painted_area",
               t.painted_area,
               "floor + walls",
               {{"floor", t.floor_area, From{"takeoff.floor_area"}},
                {"walls", t.wall_area, From{"takeoff.wall_area"}}});
    return;
  }
  explain_face(survey, Face::floor, "takeoff.floor_area", t.floor_area, trace);
  explain_face(survey, Face::wall, "takeoff.wall_area", t.wall_area, trace);
  explain_face(survey, Face::tread, "takeoff.tread_area", t.tread_area, trace);
  explain_face(survey, Face::riser, "takeoff.riser_area", t.riser_area, trace);
  explain_cove(survey, t, trace);
  explain_water(survey, t, trace);
  trace.note("takeoff.painted_area",
             t.painted_area,
             "floor + walls + treads + risers + cove_change",
             {{"floor", t.floor_area, From{"takeoff.floor_area"}},
              {"walls", t.wall_area, From{"takeoff.wall_area"}},
              {"treads", t.tread_area, From{"takeoff.tread_area"}},
              {"risers", t.riser_area, From{"takeoff.riser_area"}},
              {"cove_change", t.cove_area_change, From{"takeoff.cove_area_change"}}});
}

}  // namespace basinwright::shell
