#include "drawing_notes.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace basinwright::report {
namespace {

/// A length that no line breaks in two.
std::string whole(Length length, const Cells& c) {
  constexpr std::string_view no_break_space = "\u00A0";
  std::string text = c.length(length).text;
  for (std::size_t at = text.find(' '); at != std::string::npos; at = text.find(' ', at)) {
    text.replace(at, 1, no_break_space);
  }
  return text;
}

std::string listed(const std::vector<Length>& lengths, const Cells& c) {
  std::string words;
  for (const Length l : lengths) words += (words.empty() ? "" : ", ") + whole(l, c);
  return words;
}

std::string words(const shell::StraightSteps& f, const Cells& c) {
  return fmt::format("Steps at wall {}, {} from its start, {} wide: treads {} and depths {}",
                     f.wall,
                     whole(f.from, c),
                     whole(f.width, c),
                     listed(f.treads, c),
                     listed(f.depths, c));
}

std::string words(const shell::Bench& f, const Cells& c) {
  return fmt::format("Bench at wall {}, {} from its start: {} by {}, depth {}",
                     f.wall,
                     whole(f.from, c),
                     whole(f.length, c),
                     whole(f.width, c),
                     whole(f.depth, c));
}

std::string words(const shell::CornerSteps& f, const Cells& c) {
  return fmt::format("Steps in corner {}: radii {} and depths {}",
                     f.corner,
                     listed(f.radii, c),
                     listed(f.depths, c));
}

std::string words(const shell::RoundSteps& f, const Cells& c) {
  return fmt::format("Round steps at wall {}, {} from its start: radii {} and depths {}",
                     f.wall,
                     whole(f.at, c),
                     listed(f.radii, c),
                     listed(f.depths, c));
}

std::string words(const shell::Block& f, const Cells& c) {
  return fmt::format("Block, depth {}", whole(f.depth, c));
}

std::string words(const shell::Pit& f, const Cells& c) {
  return fmt::format("Pit, depth {}", whole(f.depth, c));
}

void add_coat(std::vector<KeyEntry>& key, const Scene& scene) {
  if (!scene.cut()) return;
  for (std::size_t i = 0; i < scene.coat.size(); ++i) {
    const CoatPart& part = scene.coat[i];
    const Length length = part.to - part.from;
    const std::string area = scene.cells.area(part.area).text;
    const bool says_so = scene.coat[i].name == "deep end";
    const std::string end = i == 0 && !says_so ? " (deep end)" : "";
    key.push_back(
        {Sample::coat,
         i,
         length > Length()
             ? fmt::format(
                   "{}{}: {} along the axis, {}", part.name, end, whole(length, scene.cells), area)
             : fmt::format("{}{}: rest of the end wall, {}", part.name, end, area)});
  }
}

}  // namespace

std::vector<KeyEntry> key_of(const Scene& scene) {
  const shell::Pool& pool = scene.pool();
  std::vector<KeyEntry> key;
  key.push_back({Sample::rim,
                 0,
                 pool.rim_to_paint > Length()
                     ? fmt::format("Rim; second line: tile band, {} high, not painted",
                                   whole(pool.rim_to_paint, scene.cells))
                     : "Rim; painted from there down"});
  const auto drops = [](const shell::BreakLine& b) { return b.drops(); };
  if (!std::ranges::all_of(scene.plan.breaks, drops)) {
    key.push_back({Sample::break_line, 0, "Break line of the floor, with its depth"});
  }
  if (std::ranges::any_of(scene.plan.breaks, drops)) {
    key.push_back({Sample::drop, 0, "Drop of the floor, with its two depths"});
  }
  key.push_back({Sample::section_line, 0, "Line of the long section A-A"});
  key.push_back({Sample::water_line,
                 0,
                 pool.rim_to_water > Length()
                     ? fmt::format("Water line, {} below the rim (long section)",
                                   whole(pool.rim_to_water, scene.cells))
                     : "Water line, at the rim (long section)"});
  add_coat(key, scene);
  return key;
}

std::vector<std::string> notes_of(const Scene& scene, WallLengths lengths) {
  const shell::Pool& pool = scene.pool();
  const Cells& c = scene.cells;
  std::vector<std::string> notes{"All depths run down from the rim. Walls are numbered from 0."};
  const double turned = pool.outline.place ? pool.outline.place->rotation_deg : 0.0;
  if (scene.right_deg != turned) {
    notes.emplace_back("The plan lies turned so that the floor's axis runs level.");
  }
  for (const shell::Feature& feature : pool.features) {
    notes.push_back(std::visit([&c](const auto& f) { return words(f, c); }, feature) + ".");
  }
  if (pool.cove_radius > Length()) {
    notes.push_back(
        fmt::format("Cove of {} radius between walls and floor.", whole(pool.cove_radius, c)));
  }
  if (pool.wall_lean > 0.0) {
    constexpr double percent = 100.0;
    notes.push_back(fmt::format("Walls lean inwards by {} % of their depth.",
                                units::fixed(percent * pool.wall_lean, 1)));
  }
  if (lengths == WallLengths::in_notes) {
    std::string walls = "Wall lengths: ";
    for (std::size_t i = 0; i < scene.plan.walls.size(); ++i) {
      walls += fmt::format("{}({}) {}", i == 0 ? "" : ", ", i, whole(scene.plan.walls[i], c));
    }
    notes.push_back(walls + ".");
  }
  return notes;
}

std::string title_of(const Scene& scene) {
  const std::string& name = scene.pool().name;
  if (scene.subject.job.bodies.size() < 2 || name.empty()) return "Take-off drawing";
  return "Take-off drawing: " + name;
}

std::string description_of(const Scene& scene, const Layout& layout) {
  const Cells& c = scene.cells;
  const shell::TakeOff& t = scene.result.take_off;
  const bool letter = scene.subject.paper == document::Paper::letter;
  std::string out =
      fmt::format("Plan and long section at 1 : {} on {} paper. The outline is {} by {}",
                  layout.denominator,
                  letter ? "Letter" : "A4",
                  c.length(scene.right.length()).text,
                  c.length(scene.up.length()).text);
  const std::size_t walls = scene.plan.walls.size();
  if (walls > 1) out += fmt::format(", with walls 0 to {}", walls - 1);
  const std::string shallowest = c.length(t.shallowest).text;
  const std::string deepest = c.length(t.deepest).text;
  out += shallowest == deepest
             ? fmt::format(". The floor lies {} below the rim. ", deepest)
             : fmt::format(". The floor lies {} to {} below the rim. ", shallowest, deepest);
  return out + fmt::format("Painted area {}, water {}.",
                           c.area(t.painted_area + scene.result.adjusted).text,
                           c.bulk(t.water_volume).text);
}

}  // namespace basinwright::report
