// What one look at the programme is made under; private to the room.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "basinwright/sequence/blocked.hpp"
#include "basinwright/weather/conditions.hpp"

namespace basinwright::sequence {

/// Days ahead of a job in hand within which its next work is looked for: far enough for any window
/// and for an etch.
inline constexpr int days_looked_at = 60;

/// Constraints left out for a trial.
class Dropped {
 public:
  [[nodiscard]] bool has(Constraint c) const { return (bits_ & bit(c)) != 0; }
  [[nodiscard]] Dropped with(Constraint c) const { return Dropped(bits_ | bit(c)); }
  [[nodiscard]] static Dropped all() {
    Dropped all;
    for (const Constraint c : all_constraints) all = all.with(c);
    return all;
  }
  [[nodiscard]] Dropped without(Constraint c) const { return Dropped(bits_ & ~bit(c)); }
  [[nodiscard]] std::uint32_t bits() const { return bits_; }
  Dropped() = default;

 private:
  explicit Dropped(std::uint32_t bits) : bits_(bits) {}
  static std::uint32_t bit(Constraint c) { return 1U << static_cast<unsigned>(c); }
  std::uint32_t bits_ = 0;
};

/// What is done again where there is no programme without it.
struct Offers {
  std::vector<char> rework;  ///< One a section, by its place before any was split; may be empty.
  bool clean_again = false;
  bool no_reserve = false;  ///< Recoat windows to their true ends.
};

/// How far ahead, by what weather (none: the calendar alone), and what is left out.
struct Setting {
  int days = 0;
  const weather::Conditions* conditions = nullptr;
  Dropped dropped = {};
  Offers offers = {};
};

}  // namespace basinwright::sequence
