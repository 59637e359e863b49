// Short makers for pools in tests.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "basinwright/shell/outline.hpp"
#include "basinwright/shell/parts.hpp"
#include "basinwright/shell/pool.hpp"
#include "basinwright/shell/take_off.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

namespace make {

namespace shell = basinwright::shell;
using basinwright::units::Length;

inline Length m(double value) {
  return Length::from_si(value);
}
inline std::vector<Length> ms(const std::vector<double>& values) {
  std::vector<Length> found;
  for (const double v : values) found.push_back(m(v));
  return found;
}
inline shell::PathPoint point(double x, double y, double bulge = 0.0) {
  return {m(x), m(y), bulge};
}
inline shell::Floor flat(double depth) {
  return shell::ConstantFloor{m(depth)};
}
inline shell::Floor breaks(const std::vector<std::pair<double, double>>& points) {
  shell::BreaksFloor floor;
  for (const auto& [s, d] : points) floor.points.push_back({m(s), m(d)});
  return floor;
}
inline shell::Pool pool(shell::OutlineShape shape, shell::Floor floor) {
  shell::Pool made;
  made.outline.shape = std::move(shape);
  made.floor = std::move(floor);
  return made;
}
inline shell::Pool rectangle(double length, double width, shell::Floor floor) {
  return pool(shell::Rectangle{m(length), m(width)}, std::move(floor));
}

inline std::vector<shell::Fault> faults(const shell::Pool& p) {
  basinwright::trace::Trace off;
  const auto result = shell::take_off(p, off);
  if (const auto* measured = std::get_if<shell::Measured>(&result)) return measured->warnings;
  return std::get<std::vector<shell::Fault>>(result);
}

inline shell::TakeOff taken(const shell::Pool& p) {
  basinwright::trace::Trace off;
  const auto result = shell::take_off(p, off);
  if (const auto* refused = std::get_if<std::vector<shell::Fault>>(&result)) {
    for (const auto& f : *refused) UNSCOPED_INFO(f.code << " at " << f.where << ": " << f.message);
    FAIL("the pool was refused");
  }
  return std::get<shell::Measured>(result).take_off;
}

inline bool has(const std::vector<shell::Fault>& found,
                const std::string& code,
                const std::string& where) {
  return std::ranges::any_of(
      found, [&](const shell::Fault& f) { return f.code == code && f.where == where; });
}

/// Agreement to `tolerance` of the larger of 1 and the value.
inline bool near(double got, double expected, double tolerance = 1e-9) {
  return std::abs(got - expected) <= tolerance * std::max(1.0, std::abs(expected));
}

}  // namespace make

// Says both numbers when they disagree.
#define CHECK_NEAR(got, expected)                             \
  do {                                                        \
    INFO(#got " = " << (got) << ", expected " << (expected)); \
    CHECK(make::near((got), (expected)));                     \
  } while (false)
