// What is thrown at each reader, and what must hold whatever the bytes are.
#pragma once

#include <span>
#include <string_view>

namespace basinwright::fuzz {

struct Target {
  std::string_view name;
  /// Ends the program when a promise is broken.
  void (*examine)(std::string_view bytes);
};

[[nodiscard]] std::span<const Target> targets();

/// @throws std::invalid_argument for a name that is none of the targets'
[[nodiscard]] const Target& target_named(std::string_view name);

}  // namespace basinwright::fuzz
