// Kinds of task by name; private to the room.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace basinwright::sequence {

/// Acid on the shell until its last rinse.
[[nodiscard]] inline bool is_etch(std::string_view task) {
  return task == "etch-walls" || task == "etch-floor" || task == "neutralise";
}
[[nodiscard]] inline bool is_paint(std::string_view task) {
  return task == "prime" || task.starts_with("coat-");
}
/// Placed after the solver: behind the last coat, or on the morning of each coat.
[[nodiscard]] inline bool is_outside_chain(std::string_view task) {
  constexpr std::array outside{"vacuum", "unmask", "refit", "fill", "start-up", "handover"};
  return is_paint(task) || std::ranges::find(outside, task) != outside.end();
}
/// Electric tools, filler and tape want a dry shell.
[[nodiscard]] inline bool needs_dry_weather(std::string_view task) {
  constexpr std::array dry{"strip", "repair", "abrade", "mask"};
  return std::ranges::find(dry, task) != dry.end();
}

}  // namespace basinwright::sequence
