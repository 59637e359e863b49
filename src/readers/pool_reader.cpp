#include "pool_reader.hpp"

#include <fmt/format.h>
#include <array>
#include <string>
#include <string_view>

#include "basinwright/shell/outline.hpp"
#include "outline_reader.hpp"

namespace basinwright::readers {
namespace {

using shell::Length;

std::optional<shell::BreaksFloor> breaks(View& view) {
  shell::BreaksFloor floor;
  bool whole = true;
  for (View& p : view.tuples("points")) {
    const auto distance = p.measure<Length>("distance");
    const auto depth = p.measure<Length>("depth");
    whole = whole && distance && depth;
    if (whole) floor.points.push_back({*distance, *depth});
  }
  floor.axis_deg = view.number("axis_deg").value_or(0.0);
  if (auto origin = view.tuple("origin")) {
    floor.origin_x = origin->measure<Length>("x").value_or(Length());
    floor.origin_y = origin->measure<Length>("y").value_or(Length());
  }
  return whole ? std::optional(std::move(floor)) : std::nullopt;
}

bool box(View& view, std::string_view key, std::array<Length, 4>& out) {
  auto corners = view.tuple(key);
  if (!corners) return false;
  constexpr std::array keys{"x0", "y0", "x1", "y1"};
  bool whole = true;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    const auto value = corners->measure<Length>(keys[i]);
    whole = whole && value;
    out[i] = value.value_or(Length());
  }
  return whole;
}

std::optional<shell::HopperFloor> hopper(View& view) {
  shell::HopperFloor floor;
  const auto base = view.measure<Length>("base_depth");
  const auto depth = view.measure<Length>("depth");
  const bool outer = box(view, "outer", floor.outer);
  const bool inner = box(view, "inner", floor.inner);
  if (!base || !depth || !outer || !inner) return {};
  floor.base_depth = *base;
  floor.depth = *depth;
  return floor;
}

std::optional<shell::SpotDepthsFloor> spots(View& view) {
  shell::SpotDepthsFloor floor;
  bool whole = true;
  for (View& p : view.tuples("points")) {
    const auto x = p.measure<Length>("x");
    const auto y = p.measure<Length>("y");
    const auto depth = p.measure<Length>("depth");
    whole = whole && x && y && depth;
    if (whole) floor.points.push_back({*x, *y, *depth});
  }
  for (View& t : view.tuples("triangles")) {
    const auto a = t.whole("a");
    const auto b = t.whole("b");
    const auto c = t.whole("c");
    whole = whole && a && b && c;
    if (whole) floor.triangles.push_back({*a, *b, *c});
  }
  return whole ? std::optional(std::move(floor)) : std::nullopt;
}

std::optional<shell::Floor> floor_of(View& pool) {
  auto variant = pool.variant("floor");
  if (!variant) return {};
  auto& [kind, view] = *variant;
  std::optional<shell::Floor> floor;
  if (kind == "constant") {
    if (const auto depth = view.measure<Length>("depth")) floor = shell::ConstantFloor{*depth};
  } else if (kind == "breaks") {
    if (auto read = breaks(view)) floor = std::move(*read);
  } else if (kind == "hopper") {
    if (const auto read = hopper(view)) floor = *read;
  } else if (auto read = spots(view)) {
    floor = std::move(*read);
  }
  view.finish();
  return floor;
}

std::optional<shell::Feature> feature_of(std::string_view kind, View& view) {
  const auto get = [&](std::string_view key) {
    return view.measure<Length>(key).value_or(Length());
  };
  const auto number = [&](std::string_view key) { return view.whole(key).value_or(0); };
  if (kind == "straight_steps") {
    return shell::StraightSteps{number("wall"),
                                get("from"),
                                get("width"),
                                view.measures<Length>("treads"),
                                view.measures<Length>("depths")};
  }
  if (kind == "bench") {
    return shell::Bench{number("wall"), get("from"), get("length"), get("width"), get("depth")};
  }
  if (kind == "corner_steps") {
    return shell::CornerSteps{
        number("corner"), view.measures<Length>("radii"), view.measures<Length>("depths")};
  }
  if (kind == "round_steps") {
    return shell::RoundSteps{
        number("wall"), get("at"), view.measures<Length>("radii"), view.measures<Length>("depths")};
  }
  auto path = path_points(view, "path");
  if (!path) return {};
  if (kind == "pit") return shell::Pit{std::move(*path), get("depth")};
  return shell::Block{std::move(*path), get("depth")};
}

std::vector<shell::TapeCheck> tape_checks(View& pool) {
  std::vector<shell::TapeCheck> checks;
  for (View& c : pool.tuples("check")) {
    const auto from = c.whole("from");
    const auto to = c.whole("to");
    const auto length = c.measure<Length>("length");
    if (from && to && length) checks.push_back({*from, *to, *length});
  }
  return checks;
}

constexpr std::array<std::string_view, 3> surfaces{"walls", "floor", "steps"};

void adjustments(View& pool, job::Body& body) {
  for (View& item : pool.objects("adjust")) {
    const auto name = item.text("name");
    const auto area = item.measure<units::Area>("area");
    const std::size_t where = item.choice("where").value_or(0);
    if (name && area) body.adjust.push_back({*name, *area, std::string(surfaces[where])});
    item.finish();
  }
}

// What the geometry refuses or doubts, each at its own value.
void tell_faults(const std::vector<shell::Fault>& faults, View& pool) {
  Context& context = pool.context();
  for (const shell::Fault& fault : faults) {
    const Span at = nearest_node(pool.raw(), fault.where).span();
    context.tell({.code = Code{fault.code},
                  .at = at,
                  .pointer = pool.pointer() + fault.where,
                  .message = fault.message,
                  .hint = fault.hint,
                  .severity = fault.warning ? diagnostics::Severity::warning
                                            : diagnostics::Severity::error});
  }
}

void check_outline(const shell::Outline& outline, View& pool) {
  const auto path = shell::outline_path(outline);
  if (const auto* faults = std::get_if<std::vector<shell::Fault>>(&path)) {
    tell_faults(*faults, pool);
  }
}

units::Area area_of(std::string_view surface, const shell::TakeOff& t) {
  if (surface == "steps") return t.tread_area + t.riser_area;
  // The cove lies half on either.
  return (surface == "walls" ? t.wall_area : t.floor_area) + t.cove_area_change / 2.0;
}

// The largest deduction of a surface that has less than is taken off.
void check_surface(const job::Body& body, std::string_view surface, units::Area there, View& pool) {
  constexpr double hair = 1e-9;
  units::Area left = there;
  std::size_t largest = body.adjust.size();
  for (std::size_t i = 0; i < body.adjust.size(); ++i) {
    const job::Adjustment& a = body.adjust[i];
    if (a.where != surface) continue;
    left += a.area;
    const bool larger = largest == body.adjust.size() || a.area < body.adjust[largest].area;
    if (a.area < units::Area() && larger) largest = i;
  }
  if (left.si() >= -hair || largest == body.adjust.size()) return;
  const Node& item = pool.node("adjust")->items[largest];
  pool.context().report(
      codes::deduction_too_large,
      *item.find("area"),
      pool.pointer("adjust") + "/" + std::to_string(largest) + "/area",
      fmt::format("There are {:.2f} m2 of {} to paint, {:.2f} m2 less than is taken off",
                  there.si(),
                  surface,
                  -left.si()),
      "Take off no more than is there, or say with \"where\" which surface it belongs to.");
}

void check_adjustments(const job::Body& body, const shell::TakeOff& taken, View& pool) {
  if (body.adjust.empty()) return;
  const std::size_t before = pool.context().problems.size();
  units::Area painted = taken.painted_area;
  for (const job::Adjustment& a : body.adjust) painted += a.area;
  for (const std::string_view surface : surfaces) {
    check_surface(body, surface, area_of(surface, taken), pool);
  }
  if (pool.context().problems.size() != before || painted > units::Area()) return;
  pool.context().report(codes::deduction_too_large,
                        *pool.node("adjust"),
                        pool.pointer("adjust"),
                        "Nothing is left to paint once all of this is taken off");
}

// Ten times the largest outdoor pools that are painted: beyond it a unit slipped.
void check_size(const shell::TakeOff& taken, View& pool) {
  constexpr auto most = units::square_metres(1e5);
  if (taken.painted_area <= most) return;
  pool.context().report(codes::too_large,
                        *pool.node("outline"),
                        pool.pointer("outline"),
                        fmt::format("The shell comes to {:.0f} m2, more than anyone paints",
                                    taken.painted_area.in(units::square_metres)),
                        "Look at the units of its measures.");
}

void check_geometry(job::Body& body, View& pool) {
  trace::Trace silent;
  const auto result = shell::take_off(body.pool, silent);
  if (const auto* measured = std::get_if<shell::Measured>(&result)) {
    tell_faults(measured->warnings, pool);
    check_size(measured->take_off, pool);
    check_adjustments(body, measured->take_off, pool);
    body.taken_off = measured->take_off;
  } else {
    tell_faults(std::get<std::vector<shell::Fault>>(result), pool);
  }
}

void read_heights(View& view, const job::Job& defaults, shell::Pool& pool) {
  pool.rim_to_paint = view.measure<Length>("rim_to_paint").value_or(Length());
  pool.rim_to_water = view.measure<Length>("rim_to_water").value_or(defaults.rim_to_water.value);
  pool.cove_radius = view.measure<Length>("cove_radius").value_or(Length());
  pool.wall_lean = view.number("wall_lean").value_or(0.0);
  pool.tape_tolerance =
      view.measure<units::Fraction>("tape_tolerance").value_or(defaults.tape_tolerance.value);
  pool.wall_thickness = view.measure<Length>("wall_thickness");
  pool.slab_thickness = view.measure<Length>("slab_thickness");
}

}  // namespace

std::optional<job::Body> read_body(View& view, const job::Job& defaults) {
  const auto problems = [&] { return view.context().problems.size(); };
  job::Body body;
  body.pointer = view.pointer();
  shell::Pool& pool = body.pool;
  const std::size_t before = problems();
  auto outline = outline_of(view);
  const bool clear_outline = outline && problems() == before;
  pool.name = view.text("name").value_or("pool");
  auto floor = floor_of(view);
  for (auto& [kind, feature] : view.variants("features")) {
    auto read = feature_of(kind, feature);
    feature.finish();
    if (read) pool.features.push_back(std::move(*read));
  }
  read_heights(view, defaults, pool);
  body.rim_to_water_given = view.has("rim_to_water");
  body.tape_tolerance_given = view.has("tape_tolerance");
  pool.checks = tape_checks(view);
  adjustments(view, body);
  view.finish();
  if (!outline || !floor || problems() != before) {
    if (clear_outline) check_outline(*outline, view);
    return {};
  }
  pool.outline = std::move(*outline);
  pool.floor = std::move(*floor);
  check_geometry(body, view);
  return body;
}

}  // namespace basinwright::readers
