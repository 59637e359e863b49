// Reads the pools of the reference rows, whose numbers are all bare metres.
#pragma once

#include <cmath>
#include <fstream>
#include <limits>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>

#include "basinwright/shell/pool.hpp"
#include "basinwright/shell/take_off.hpp"
#include "basinwright/units/unit.hpp"
#include "support/places.hpp"

namespace rows {

namespace shell = basinwright::shell;
using basinwright::units::Length;
using nlohmann::json;

inline json shells() {
  std::ifstream file(places::source() + "/tests/reference/shells.json");
  return json::parse(file);
}

inline json row(const std::string& name) {
  const json file = shells();
  for (const json& r : file.at("rows")) {
    if (r.at("name") == name) return r;
  }
  throw std::runtime_error("no row " + name);
}

inline Length length(const json& j) {
  if (j.is_string()) return Length::from_si(std::numeric_limits<double>::quiet_NaN());
  return Length::from_si(j.get<double>());
}
inline Length length(const json& j, const char* key) {
  return j.contains(key) ? length(j.at(key)) : Length{};
}

inline std::vector<Length> lengths(const json& j) {
  std::vector<Length> found;
  for (const json& v : j) found.push_back(length(v));
  return found;
}

inline std::vector<shell::PathPoint> path(const json& j) {
  std::vector<shell::PathPoint> found;
  for (const json& p : j) {
    found.push_back({length(p.at(0)), length(p.at(1)), p.size() > 2 ? p.at(2).get<double>() : 0.0});
  }
  return found;
}

inline shell::OutlineShape surveyed(const json& j, const std::string& kind) {
  if (kind == "offsets") {
    shell::Offsets shape;
    shape.curve = j.at("curve") == "arcs" ? shell::Curve::arcs : shell::Curve::straight;
    for (const json& s : j.at("stations")) {
      shape.stations.push_back({length(s.at(0)), length(s.at(1)), length(s.at(2))});
    }
    return shape;
  }
  if (kind == "two_tape") {
    shell::TwoTape shape{length(j, "baseline"), {}};
    for (const json& p : j.at("points")) {
      shape.points.push_back({length(p.at(0)),
                              length(p.at(1)),
                              p.at(2).get<int>(),
                              p.size() > 3 ? p.at(3).get<double>() : 0.0});
    }
    return shape;
  }
  if (kind == "path") return shell::Path{path(j.at("points"))};
  throw std::runtime_error("unknown outline " + kind);
}

inline shell::OutlineShape shape(const json& j) {
  const std::string kind = j.at("kind");
  const Length l = length(j, "length");
  const Length w = length(j, "width");
  if (kind == "rectangle") return shell::Rectangle{l, w};
  if (kind == "rounded_rectangle") return shell::RoundedRectangle{l, w, length(j, "corner_radius")};
  if (kind == "l_shape") {
    return shell::LShape{l, w, length(j, "notch_length"), length(j, "notch_width")};
  }
  if (kind == "circle") return shell::Circle{length(j, "diameter")};
  if (kind == "stadium") return shell::Stadium{l, w};
  if (kind == "ellipse") return shell::Ellipse{l, w};
  if (kind == "kidney") {
    return shell::Kidney{length(j, "shallow_radius"),
                         length(j, "deep_radius"),
                         length(j, "centres"),
                         length(j, "outer_radius"),
                         length(j, "inner_radius")};
  }
  return surveyed(j, kind);
}

inline shell::SpotDepthsFloor spots(const json& j) {
  shell::SpotDepthsFloor floor;
  for (const json& p : j.at("points")) {
    floor.points.push_back({length(p.at(0)), length(p.at(1)), length(p.at(2))});
  }
  for (const json& t : j.value("triangles", json::array())) {
    floor.triangles.push_back({t.at(0).get<int>(), t.at(1).get<int>(), t.at(2).get<int>()});
  }
  return floor;
}

inline shell::Floor floor(const json& j) {
  const std::string kind = j.at("kind");
  if (kind == "constant") return shell::ConstantFloor{length(j, "depth")};
  if (kind == "spot_depths") return spots(j);
  if (kind == "hopper") {
    shell::HopperFloor floor{length(j, "base_depth"), length(j, "depth"), {}, {}};
    for (std::size_t i = 0; i < 4; ++i) {
      floor.outer[i] = length(j.at("outer").at(i));
      floor.inner[i] = length(j.at("inner").at(i));
    }
    return floor;
  }
  if (kind != "breaks") throw std::runtime_error("unknown floor " + kind);
  shell::BreaksFloor floor;
  for (const json& p : j.at("points")) floor.points.push_back({length(p.at(0)), length(p.at(1))});
  floor.axis_deg = j.value("axis_deg", 0.0);
  if (j.contains("origin")) {
    floor.origin_x = length(j.at("origin").at(0));
    floor.origin_y = length(j.at("origin").at(1));
  }
  return floor;
}

inline shell::Feature feature(const json& j) {
  const std::string kind = j.at("kind");
  if (kind == "straight_steps") {
    return shell::StraightSteps{j.at("wall").get<int>(),
                                length(j, "from"),
                                length(j, "width"),
                                lengths(j.at("treads")),
                                lengths(j.at("depths"))};
  }
  if (kind == "bench") {
    return shell::Bench{j.at("wall").get<int>(),
                        length(j, "from"),
                        length(j, "length"),
                        length(j, "width"),
                        length(j, "depth")};
  }
  if (kind == "corner_steps") {
    return shell::CornerSteps{
        j.at("corner").get<int>(), lengths(j.at("radii")), lengths(j.at("depths"))};
  }
  if (kind == "round_steps") {
    return shell::RoundSteps{
        j.at("wall").get<int>(), length(j, "at"), lengths(j.at("radii")), lengths(j.at("depths"))};
  }
  if (kind == "block") return shell::Block{path(j.at("path")), length(j, "depth")};
  if (kind == "pit") return shell::Pit{path(j.at("path")), length(j, "depth")};
  throw std::runtime_error("unknown feature " + kind);
}

/// A pool as a row gives it; a key left out is 0.
inline shell::Pool pool(const json& j) {
  shell::Pool made;
  made.outline.shape = shape(j.at("outline"));
  if (j.at("outline").contains("place")) {
    const json& place = j.at("outline").at("place");
    made.outline.place =
        shell::Place{place.value("rotation_deg", 0.0), length(place, "dx"), length(place, "dy")};
  }
  if (j.contains("floor")) made.floor = floor(j.at("floor"));
  for (const json& f : j.value("features", json::array())) made.features.push_back(feature(f));
  made.rim_to_paint = length(j, "rim_to_paint");
  made.rim_to_water = length(j, "rim_to_water");
  made.cove_radius = length(j, "cove_radius");
  made.wall_lean = j.value("wall_lean", 0.0);
  return made;
}

}  // namespace rows
