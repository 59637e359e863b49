#include "outline_reader.hpp"

namespace basinwright::readers {
namespace {

using shell::Length;
using shell::OutlineShape;

// Reads the lengths a shape needs; says afterwards whether all were there.
class Lengths {
 public:
  explicit Lengths(View& view) : view_(view) {}
  Length operator()(std::string_view key) {
    const auto value = view_.measure<Length>(key);
    whole_ = whole_ && value.has_value();
    return value.value_or(Length());
  }
  [[nodiscard]] bool whole() const { return whole_; }

 private:
  View& view_;
  bool whole_ = true;
};

std::optional<OutlineShape> read_offsets(View& view) {
  shell::Offsets shape;
  shape.curve = view.choice("curve").value_or(0) == 1 ? shell::Curve::arcs : shell::Curve::straight;
  bool whole = true;
  for (View& s : view.tuples("stations")) {
    Lengths get(s);
    shape.stations.push_back({get("distance"), get("near"), get("far")});
    whole = whole && get.whole();
  }
  return whole ? std::optional<OutlineShape>(shape) : std::nullopt;
}

std::optional<OutlineShape> read_two_tape(View& view) {
  shell::TwoTape shape;
  Lengths base(view);
  shape.baseline = base("baseline");
  bool whole = base.whole();
  for (View& p : view.tuples("points")) {
    Lengths get(p);
    const Length a = get("from_a");
    const Length b = get("from_b");
    const auto side = p.whole("side");
    shape.points.push_back({a, b, side.value_or(0), p.number("bulge").value_or(0.0)});
    whole = whole && get.whole() && side.has_value();
  }
  return whole ? std::optional<OutlineShape>(shape) : std::nullopt;
}

std::optional<OutlineShape> from_lengths(std::string_view kind, View& view) {
  Lengths get(view);
  OutlineShape shape;
  if (kind == "rectangle") shape = shell::Rectangle{get("length"), get("width")};
  if (kind == "rounded_rectangle") {
    shape = shell::RoundedRectangle{get("length"), get("width"), get("corner_radius")};
  }
  if (kind == "l_shape") {
    shape = shell::LShape{get("length"), get("width"), get("notch_length"), get("notch_width")};
  }
  if (kind == "circle") shape = shell::Circle{get("diameter")};
  if (kind == "stadium") shape = shell::Stadium{get("length"), get("width")};
  if (kind == "ellipse") shape = shell::Ellipse{get("length"), get("width")};
  if (kind == "kidney") {
    shape = shell::Kidney{get("shallow_radius"),
                          get("deep_radius"),
                          get("centres"),
                          get("outer_radius"),
                          get("inner_radius")};
  }
  return get.whole() ? std::optional(shape) : std::nullopt;
}

std::optional<shell::Place> placed(View& view) {
  auto place = view.object("place");
  if (!place) return {};
  shell::Place out;
  out.rotation_deg = place->number("rotation_deg").value_or(0.0);
  out.dx = place->measure<Length>("dx").value_or(Length());
  out.dy = place->measure<Length>("dy").value_or(Length());
  place->finish();
  return out;
}

}  // namespace

std::optional<std::vector<shell::PathPoint>> path_points(View& view, std::string_view key) {
  std::vector<shell::PathPoint> points;
  bool whole = true;
  for (View& p : view.tuples(key)) {
    Lengths get(p);
    const Length x = get("x");
    const Length y = get("y");
    points.push_back({x, y, p.number("bulge").value_or(0.0)});
    whole = whole && get.whole();
  }
  return whole ? std::optional(std::move(points)) : std::nullopt;
}

std::optional<shell::Outline> outline_of(View& pool) {
  auto variant = pool.variant("outline");
  if (!variant) return {};
  auto& [kind, view] = *variant;
  std::optional<OutlineShape> shape;
  if (kind == "offsets") {
    shape = read_offsets(view);
  } else if (kind == "two_tape") {
    shape = read_two_tape(view);
  } else if (kind == "path") {
    if (auto points = path_points(view, "points")) shape = shell::Path{std::move(*points)};
  } else {
    shape = from_lengths(kind, view);
  }
  auto place = placed(view);
  view.finish();
  if (!shape) return {};
  return shell::Outline{std::move(*shape), place};
}

}  // namespace basinwright::readers
