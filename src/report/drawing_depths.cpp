// Depths on the plan: at break lines, at the ends of the axis, on treads; and the coat's sections.
#include <algorithm>
#include <array>
#include <cmath>

#include "drawing_layout.hpp"

namespace basinwright::report {
namespace {

using document::Label;
using document::Shape;

constexpr double mark_width = 2.2;  ///< Of the triangle before a depth, with its gap.
/// What labels keep from the rim, so that the tile band beside it stays whole.
constexpr double off_rim = 1.1;

/// A depth to be written at a place, or anywhere along a line.
struct Depth {
  Spot at;
  Spot to;  ///< The line's other end; the same place when there is no line.
  std::string text;
  [[nodiscard]] bool along() const { return at.x != to.x || at.y != to.y; }
};

Box depth_box(const std::string& text, Spot middle) {
  return box_round(middle, mark_width + text_width(text, letters::label), letters::label);
}

/// A small triangle on its tip, as levels are marked on drawings, and the depth beside it.
void write_depth(Sheet& sheet, const std::string& text, const Box& box) {
  const double y = box.middle().y;
  Label label;
  label.name = "depth";
  label.text = text;
  label.size = letters::label;
  label.at = {box.left + mark_width, y + 0.5 * (ascent - descent) * letters::label};
  sheet.taken().take(box);
  sheet.blank(box.grown(0.3));
  sheet.write(std::move(label));
  const Box mark = box_round({box.left + 0.9, y}, 1.6, 1.4);
  sheet.mark(
      polygon({{mark.left, mark.top}, {mark.right, mark.top}, {mark.middle().x, mark.bottom}}),
      "depth-mark");
}

std::vector<Box> along(const Depth& d) {
  constexpr std::array<double, 9> shares{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88};
  std::vector<Box> boxes;
  boxes.reserve(shares.size());
  for (const double s : shares) {
    boxes.push_back(
        depth_box(d.text, {d.at.x + s * (d.to.x - d.at.x), d.at.y + s * (d.to.y - d.at.y)}));
  }
  return boxes;
}

std::vector<Box> around(const Depth& d) {
  constexpr int directions = 16;
  constexpr std::array<double, 5> gaps{1.5, 3.0, 5.0, 7.0, 9.0};
  std::vector<Box> boxes;
  for (const double gap : gaps) {
    for (int i = 0; i < directions; ++i) {
      const Spot way = unit_at(i * 360.0 / directions + 45.0);
      const Box size = depth_box(d.text, d.at);
      const double x = (gap + 0.5 * size.width()) / std::max(1e-9, std::abs(way.x));
      const double y = (gap + 0.5 * size.height()) / std::max(1e-9, std::abs(way.y));
      const double away = std::min(x, y);
      boxes.push_back(depth_box(d.text, {d.at.x + away * way.x, d.at.y - away * way.y}));
    }
  }
  return boxes;
}

bool same_place(const Depth& a, const Depth& b) {
  constexpr double near = 6.0;
  return a.text == b.text && std::hypot(a.at.x - b.at.x, a.at.y - b.at.y) < near;
}

/// Adds a depth unless it stands there already, or at a line that ends there.
void add_depth(std::vector<Depth>& depths, Depth depth) {
  const auto here = [&depth](const Depth& d) {
    return same_place(d, depth) || same_place({d.to, d.to, d.text}, depth);
  };
  if (depth.along() || std::ranges::none_of(depths, here)) depths.push_back(std::move(depth));
}

/// The depths at both ends of a break line; both depths of a drop.
std::array<Depth, 2> ends_of(const shell::BreakLine& b, const Scene& scene, const View& view) {
  const Spot from = view.at(b.line.from_x, b.line.from_y);
  const Spot to = view.at(b.line.to_x, b.line.to_y);
  const auto text = [&](Length one, Length other) {
    const std::string words = scene.cells.length(std::min(one, other)).text;
    return b.drops() ? words + " / " + scene.cells.length(std::max(one, other)).text : words;
  };
  return {{{from, from, text(b.line.from_depth, b.other_from_depth)},
           {to, to, text(b.line.to_depth, b.other_to_depth)}}};
}

/// Level lines once along them, then the ends of the others.
void add_breaks(std::vector<Depth>& depths, const Scene& scene, const View& view) {
  for (const bool level : {true, false}) {
    for (const shell::BreakLine& b : scene.plan.breaks) {
      const auto [first, last] = ends_of(b, scene, view);
      if ((first.text == last.text) != level) continue;
      if (level) {
        add_depth(depths, {first.at, last.at, first.text});
      } else {
        add_depth(depths, first);
        add_depth(depths, last);
      }
    }
  }
}

/// The floor's ends on the line of the long section; one of them where all is level.
void add_ends(std::vector<Depth>& depths, const Scene& scene, const View& view) {
  const shell::LongSection& s = scene.section;
  const auto at = [&](const shell::ProfilePoint& p) {
    const double share = (p.position - s.from) / (s.to - s.from);
    return view.at(s.from_x + share * (s.to_x - s.from_x), s.from_y + share * (s.to_y - s.from_y));
  };
  const auto floor = [](const shell::ProfilePoint& p) { return !p.on_feature; };
  const auto first = std::ranges::find_if(s.profile, floor);
  if (first == s.profile.end()) return;
  const auto last = std::find_if(s.profile.rbegin(), s.profile.rend(), floor);
  const std::string text = scene.cells.length(first->depth).text;
  const Spot a = at(*first);
  const Spot b = at(*last);
  const bool level = std::ranges::all_of(
      s.profile, [&](const auto& p) { return p.on_feature || p.depth == first->depth; });
  if (level && scene.plan.breaks.empty()) {
    const Spot middle{0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
    add_depth(depths, {middle, middle, text});
    return;
  }
  add_depth(depths, {a, a, text});
  add_depth(depths, {b, b, scene.cells.length(last->depth).text});
}

std::vector<Depth> depths_of(const Scene& scene, const View& view) {
  std::vector<Depth> depths;
  if (const auto* spots = std::get_if<shell::SpotDepthsFloor>(&scene.pool().floor)) {
    for (const shell::SpotDepth& s : spots->points) {
      const Spot at = view.at(s.x, s.y);
      add_depth(depths, {at, at, scene.cells.length(s.depth).text});
    }
    return depths;
  }
  add_breaks(depths, scene, view);
  add_ends(depths, scene, view);
  return depths;
}

/// Places of a region, close together.
template <class Inside>
std::vector<Spot> grid(const Box& round, Inside within) {
  constexpr int count = 48;
  std::vector<Spot> spots;
  for (int i = 1; i < count; ++i) {
    for (int k = 1; k < count; ++k) {
      const Spot s{round.left + i * round.width() / count, round.top + k * round.height() / count};
      if (within(s)) spots.push_back(s);
    }
  }
  return spots;
}

Box box_round_path(const std::vector<PathSpot>& path) {
  Box box{1e9, 1e9, -1e9, -1e9};
  for (const PathSpot& s : path) {
    box = {std::min(box.left, s.at.x),
           std::min(box.top, s.at.y),
           std::max(box.right, s.at.x),
           std::max(box.bottom, s.at.y)};
  }
  return box;
}

/// The label in the region, as near its middle as there is room; crossing no line if it must not.
template <class Inside>
bool put_within(Sheet& sheet, const Label& label, const Box& round, Inside within) {
  const std::vector<Spot> spots = grid(round, within);
  if (spots.empty()) return false;
  Spot middle;
  for (const Spot& s : spots) middle = {middle.x + s.x, middle.y + s.y};
  middle = {middle.x / static_cast<double>(spots.size()),
            middle.y / static_cast<double>(spots.size())};
  const Label* best = nullptr;
  Label found = label;
  double nearest = 1e18;
  for (const Spot& s : spots) {
    Label here = centred(label.text, s, label.size);
    here.upwards = label.upwards;
    if (here.upwards) here.at = {s.x + 0.5 * (ascent - descent) * here.size, s.y};
    const Box box = box_of(here);
    const Box room = box.grown(0.4);
    const double off = std::hypot(s.x - middle.x, s.y - middle.y);
    const bool fits = within({room.left, room.top}) && within({room.right, room.top}) &&
                      within({room.left, room.bottom}) && within({room.right, room.bottom});
    if (off >= nearest || !fits || !sheet.taken().free(box) || sheet.taken().covered(box) > 0 ||
        sheet.taken().strikes(box.grown(off_rim))) {
      continue;
    }
    nearest = off;
    found.at = here.at;
    found.anchor = here.anchor;
    best = &found;
  }
  if (best == nullptr) return false;
  sheet.write(*best, Behind::paper);
  return true;
}

/// Treads with room for it carry their depth; the notes give all of them.
void label_treads(Sheet& sheet, const Scene& scene, const Layout& layout) {
  std::vector<std::vector<PathSpot>> paths;
  std::vector<double> areas;
  for (const shell::Level& l : scene.plan.levels) {
    paths.push_back(spots_along(l.path, layout.view));
    const Box round = box_round_path(paths.back());
    areas.push_back(round.width() * round.height());
  }
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const Box round = box_round_path(paths[i]);
    const auto on_tread = [&](Spot s) {
      if (!inside(paths[i], s)) return false;
      for (std::size_t k = 0; k < paths.size(); ++k) {
        if (areas[k] < areas[i] && inside(paths[k], s)) return false;
      }
      return true;
    };
    Label label;
    label.name = "tread-depth";
    label.text = scene.cells.length(scene.plan.levels[i].depth).text;
    label.size = letters::small;
    if (put_within(sheet, label, round, on_tread)) continue;
    label.upwards = true;
    put_within(sheet, label, round, on_tread);
  }
}

void label_coat(Sheet& sheet, const Scene& scene, const Layout& layout) {
  if (!scene.cut()) return;
  const std::vector<PathSpot> rim = spots_along(scene.plan.outline, layout.view);
  for (const CoatPart& coat : scene.coat) {
    if (coat.to <= coat.from) continue;
    const Trail region = strip(scene, layout.view, coat.from, coat.to);
    std::vector<PathSpot> corners{{region.from}};
    for (const auto& leg : region.legs) corners.push_back({leg.to});
    Label label;
    label.name = "coat-section";
    label.size = letters::label;
    const auto here = [&](Spot s) { return inside(corners, s) && inside(rim, s); };
    for (const bool upwards : {false, true}) {
      label.upwards = upwards;
      label.text =
          fitted(coat.name, label.size, upwards ? layout.plan.height() : layout.plan.width());
      if (put_within(sheet, label, layout.plan, here)) break;
    }
  }
}

}  // namespace

void label_depths(Sheet& sheet, const Scene& scene, const Layout& layout) {
  const std::vector<PathSpot> rim = spots_along(scene.plan.outline, layout.view);
  label_treads(sheet, scene, layout);
  for (const Depth& depth : depths_of(scene, layout.view)) {
    std::vector<Box> boxes = depth.along() ? along(depth) : around(depth);
    std::erase_if(boxes, [&](const Box& box) {
      return !inside(rim, box.middle()) || sheet.taken().strikes(box.grown(off_rim));
    });
    const auto found = sheet.taken().best(boxes);
    if (found) write_depth(sheet, depth.text, boxes[*found]);
  }
  label_coat(sheet, scene, layout);
}

}  // namespace basinwright::report
