#include "pool_reader.hpp"

#include "outline_reader.hpp"

namespace basinwright::readers {
namespace {

using shell::Length;

std::optional<shell::BreaksFloor> breaks(View& view) {
  shell::BreaksFloor floor;
  for (View& p : view.tuples("points")) {
    const auto distance = p.measure<Length>("distance");
    const auto depth = p.measure<Length>("depth");
    if (!distance || !depth) return {};
    floor.points.push_back({*distance, *depth});
  }
  floor.axis_deg = view.number("axis_deg").value_or(0.0);
  if (auto origin = view.tuple("origin")) {
    floor.origin_x = origin->measure<Length>("x").value_or(Length());
    floor.origin_y = origin->measure<Length>("y").value_or(Length());
  }
  return floor;
}

bool box(View& view, std::string_view key, std::array<Length, 4>& out) {
  auto corners = view.tuple(key);
  if (!corners) return false;
  constexpr std::array keys{"x0", "y0", "x1", "y1"};
  for (std::size_t i = 0; i < keys.size(); ++i) {
    const auto value = corners->measure<Length>(keys[i]);
    if (!value) return false;
    out[i] = *value;
  }
  return true;
}

std::optional<shell::HopperFloor> hopper(View& view) {
  shell::HopperFloor floor;
  const auto base = view.measure<Length>("base_depth");
  const auto depth = view.measure<Length>("depth");
  const bool boxes = box(view, "outer", floor.outer) && box(view, "inner", floor.inner);
  if (!base || !depth || !boxes) return {};
  floor.base_depth = *base;
  floor.depth = *depth;
  return floor;
}

std::optional<shell::SpotDepthsFloor> spots(View& view) {
  shell::SpotDepthsFloor floor;
  for (View& p : view.tuples("points")) {
    const auto x = p.measure<Length>("x");
    const auto y = p.measure<Length>("y");
    const auto depth = p.measure<Length>("depth");
    if (!x || !y || !depth) return {};
    floor.points.push_back({*x, *y, *depth});
  }
  if (!view.has("triangles")) return floor;
  for (View& t : view.tuples("triangles")) {
    const auto a = t.whole("a");
    const auto b = t.whole("b");
    const auto c = t.whole("c");
    if (!a || !b || !c) return {};
    floor.triangles.push_back({*a, *b, *c});
  }
  return floor;
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

void adjustments(View& pool, job::Body& body) {
  for (View& item : pool.objects("adjust")) {
    const auto name = item.text("name");
    const auto area = item.measure<units::Area>("area");
    if (name && area) body.adjust.push_back({*name, *area});
    item.finish();
  }
}

}  // namespace

std::optional<job::Body> read_body(View& view, const job::Job& defaults) {
  job::Body body;
  body.pointer = view.pointer();
  shell::Pool& pool = body.pool;
  const std::size_t before = view.context().problems.size();
  pool.name = view.text("name").value_or("pool");
  auto outline = outline_of(view);
  auto floor = floor_of(view);
  for (auto& [kind, feature] : view.variants("features")) {
    auto read = feature_of(kind, feature);
    feature.finish();
    if (read) pool.features.push_back(std::move(*read));
  }
  pool.rim_to_paint = view.measure<Length>("rim_to_paint").value_or(Length());
  pool.rim_to_water = view.measure<Length>("rim_to_water").value_or(defaults.rim_to_water.value);
  pool.cove_radius = view.measure<Length>("cove_radius").value_or(Length());
  pool.wall_lean = view.number("wall_lean").value_or(0.0);
  pool.tape_tolerance =
      view.measure<units::Fraction>("tape_tolerance").value_or(defaults.tape_tolerance.value);
  pool.checks = tape_checks(view);
  pool.wall_thickness = view.measure<Length>("wall_thickness");
  pool.slab_thickness = view.measure<Length>("slab_thickness");
  adjustments(view, body);
  view.finish();
  if (outline) pool.outline = std::move(*outline);
  if (floor) pool.floor = std::move(*floor);
  if (!outline || !floor || view.context().problems.size() != before) return {};
  return body;
}

const Node& nearest_node(const Node& root, std::string_view pointer) {
  const Node* at = &root;
  while (!pointer.empty()) {
    pointer.remove_prefix(1);
    const std::size_t slash = std::min(pointer.find('/'), pointer.size());
    const std::string_view part = pointer.substr(0, slash);
    pointer.remove_prefix(slash);
    const Node* next = at->find(part);
    if (next == nullptr && at->kind == Node::Kind::list) {
      std::size_t index = 0;
      for (const char c : part) index = index * 10 + static_cast<std::size_t>(c - '0');
      if (index < at->items.size()) next = &at->items[index];
    }
    if (next == nullptr) break;
    at = next;
  }
  return *at;
}

void check_geometry(const shell::Pool& pool,
                    const std::string& pointer,
                    const Node& root,
                    Context& context) {
  trace::Trace silent;
  const auto result = shell::take_off(pool, silent);
  const auto* faults = std::get_if<std::vector<shell::Fault>>(&result);
  if (faults == nullptr) faults = &std::get<shell::Measured>(result).warnings;
  for (const shell::Fault& fault : *faults) {
    const Node& at = nearest_node(root, pointer + fault.where);
    context.problems.add(
        {fault.code,
         fault.warning ? diagnostics::Severity::warning : diagnostics::Severity::error,
         context.source.at(at.begin, at.end),
         pointer + fault.where,
         fault.message,
         fault.hint,
         {}});
  }
}

}  // namespace basinwright::readers
