#include "drawing_notes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include "wording/drawing.hpp"

namespace basinwright::report {
namespace {

/// A length that no line breaks in two.
std::string in_whole(Length length, const Cells& c) {
  constexpr std::string_view no_break_space = "\u00A0";
  std::string text = c.length(length).text;
  for (std::size_t at = text.find(' '); at != std::string::npos; at = text.find(' ', at)) {
    text.replace(at, 1, no_break_space);
  }
  return text;
}

std::string listed(const std::vector<Length>& lengths, const Cells& c) {
  std::string words;
  for (const Length l : lengths) words += (words.empty() ? "" : ", ") + in_whole(l, c);
  return words;
}

std::string feature_words(const shell::StraightSteps& f, const Cells& c) {
  return fmt::format(say::steps_at_wall_from_its_start_wide,
                     f.wall,
                     in_whole(f.from, c),
                     in_whole(f.width, c),
                     listed(f.treads, c),
                     listed(f.depths, c));
}

std::string feature_words(const shell::Bench& f, const Cells& c) {
  return fmt::format(say::bench_at_wall_from_its_start_by_depth,
                     f.wall,
                     in_whole(f.from, c),
                     in_whole(f.length, c),
                     in_whole(f.width, c),
                     in_whole(f.depth, c));
}

std::string feature_words(const shell::CornerSteps& f, const Cells& c) {
  return fmt::format(
      say::steps_in_corner_radii_and_depths, f.corner, listed(f.radii, c), listed(f.depths, c));
}

std::string feature_words(const shell::RoundSteps& f, const Cells& c) {
  return fmt::format(say::round_steps_at_wall_from_its_start,
                     f.wall,
                     in_whole(f.at, c),
                     listed(f.radii, c),
                     listed(f.depths, c));
}

std::string feature_words(const shell::Block& f, const Cells& c) {
  return fmt::format(say::block_depth, in_whole(f.depth, c));
}

std::string feature_words(const shell::Pit& f, const Cells& c) {
  return fmt::format(say::pit_depth, in_whole(f.depth, c));
}

void add_coat_key(std::vector<KeyEntry>& key, const Scene& scene) {
  if (!scene.cut()) return;
  for (std::size_t i = 0; i < scene.coat.size(); ++i) {
    const CoatPart& part = scene.coat[i];
    const Length length = part.to - part.from;
    const std::string area = scene.cells.area(part.area).text;
    const bool says_so = scene.coat[i].name == "deep end";
    const std::string end = i == 0 && !says_so ? say::deep_end : "";
    key.push_back(
        {Sample::coat,
         i,
         length > Length()
             ? fmt::format(say::along_the_axis, part.name, end, in_whole(length, scene.cells), area)
             : fmt::format(say::rest_of_the_end_wall, part.name, end, area)});
  }
}

}  // namespace

std::vector<KeyEntry> key_of(const Scene& scene) {
  const shell::Pool& pool = scene.pool();
  std::vector<KeyEntry> key;
  key.push_back({Sample::rim,
                 0,
                 pool.rim_to_paint > Length()
                     ? fmt::format(say::rim_second_line_tile_band_high_not,
                                   in_whole(pool.rim_to_paint, scene.cells))
                     : say::rim_painted_from_there_down});
  const auto drops = [](const shell::BreakLine& b) { return b.drops(); };
  if (!std::ranges::all_of(scene.plan.breaks, drops)) {
    key.push_back({Sample::break_line, 0, say::break_line_of_the_floor_with_its_depth});
  }
  if (std::ranges::any_of(scene.plan.breaks, drops)) {
    key.push_back({Sample::drop, 0, say::drop_of_the_floor_with_its_two_depths});
  }
  key.push_back({Sample::section_line, 0, say::line_of_the_long_section_a_a});
  key.push_back({Sample::water_line,
                 0,
                 pool.rim_to_water > Length()
                     ? fmt::format(say::water_line_below_the_rim_long_section,
                                   in_whole(pool.rim_to_water, scene.cells))
                     : say::water_line_at_the_rim_long_section});
  add_coat_key(key, scene);
  return key;
}

std::vector<std::string> notes_of(const Scene& scene, WallLengths lengths) {
  const shell::Pool& pool = scene.pool();
  const Cells& c = scene.cells;
  std::vector<std::string> notes{say::all_depths_run_down_from_the_rim_walls};
  const double turned = pool.outline.place ? pool.outline.place->rotation_deg : 0.0;
  if (scene.right_deg != turned) {
    notes.emplace_back(say::the_plan_lies_turned_so_that_the);
  }
  for (const shell::Feature& feature : pool.features) {
    notes.push_back(std::visit([&c](const auto& f) { return feature_words(f, c); }, feature) + ".");
  }
  if (pool.cove_radius > Length()) {
    notes.push_back(
        fmt::format(say::cove_of_radius_between_walls_and_floor, in_whole(pool.cove_radius, c)));
  }
  if (pool.wall_lean > 0.0) {
    constexpr double percent = 100.0;
    notes.push_back(fmt::format(say::walls_lean_inwards_by_percent_of_their,
                                units::fixed(percent * pool.wall_lean, 1)));
  }
  if (lengths == WallLengths::in_notes) {
    std::string walls = say::wall_lengths;
    for (std::size_t i = 0; i < scene.plan.walls.size(); ++i) {
      walls += fmt::format("{}({}) {}", i == 0 ? "" : ", ", i, in_whole(scene.plan.walls[i], c));
    }
    notes.push_back(walls + ".");
  }
  return notes;
}

std::string title_of(const Scene& scene) {
  const std::string& name = scene.pool().name;
  if (scene.subject.job.bodies.size() < 2 || name.empty()) return say::take_off_drawing;
  return say::take_off_drawing_before + name;
}

std::string description_of(const Scene& scene, const Layout& layout) {
  const Cells& c = scene.cells;
  const shell::TakeOff& t = scene.result.take_off;
  const bool letter = scene.subject.paper == document::Paper::letter;
  std::string out = fmt::format(say::plan_and_long_section_at_1_on_paper,
                                layout.denominator,
                                letter ? say::letter : "A4",
                                c.length(scene.right.length()).text,
                                c.length(scene.up.length()).text);
  const std::size_t walls = scene.plan.walls.size();
  if (walls > 1) out += fmt::format(say::with_walls_0_to, walls - 1);
  const std::string shallowest = c.length(t.shallowest).text;
  const std::string deepest = c.length(t.deepest).text;
  out += shallowest == deepest
             ? fmt::format(say::the_floor_lies_below_the_rim, deepest)
             : fmt::format(say::the_floor_lies_to_below_the_rim, shallowest, deepest);
  return out + fmt::format(say::painted_area_water_of,
                           c.area(t.painted_area + scene.result.adjusted).text,
                           c.bulk(t.water_volume).text);
}

}  // namespace basinwright::report
