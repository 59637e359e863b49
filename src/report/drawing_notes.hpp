// What a drawing says in words beside its views.
#pragma once

#include <string>
#include <vector>

#include "drawing_layout.hpp"

namespace basinwright::report {

/// Entries of the key, in the order of `Sample`.
enum class Sample { rim, break_line, drop, section_line, water_line, coat };
struct KeyEntry {
  Sample sample = Sample::rim;
  std::size_t part = 0;  ///< For coat: which part.
  std::string words;
};
[[nodiscard]] std::vector<KeyEntry> key_of(const Scene& scene);

/// What no line can show: features with their depths, cove, lean, and the walls' lengths where they
/// found no room on the plan.
[[nodiscard]] std::vector<std::string> notes_of(const Scene& scene, WallLengths lengths);

/// What stands below the two views.
struct Foot {
  struct Entry {
    KeyEntry key;
    std::vector<std::string> lines;
  };
  std::vector<document::Fact> facts;
  std::vector<Entry> key;
  std::vector<std::string> notes;  ///< Lines.
  double height = 0.0;
};
[[nodiscard]] Foot foot_of(const Scene& scene, const Sheet& sheet, WallLengths lengths);
void draw_foot(Sheet& sheet, const Layout& layout, const Foot& foot);

/// The drawing in a few sentences.
[[nodiscard]] std::string description_of(const Scene& scene, const Layout& layout);

/// The body's name after a dash where it has one and there are several.
[[nodiscard]] std::string title_of(const Scene& scene);

}  // namespace basinwright::report
