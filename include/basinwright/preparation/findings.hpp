// What was found on the shell before a price.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"

namespace basinwright::preparation {

enum class Substrate { render, concrete, plaster_hard, plaster_soft, pebble, fibreglass };
enum class ExistingCoating { none, epoxy, other, unknown };
enum class AcetoneTest { untouched, softened, not_done };
enum class Dirt { none, normal, heavy };
enum class LeadTest { clear, found, not_done };
enum class LeakTest { holds, leaks, not_done };
/// Whether the empty shell stays down: by its weight against the groundwater, where both are known.
enum class Ground { clear, close, floats, unknown };

/// One part of the shell with the same findings.
struct Region {
  std::string where;  ///< `all`, `walls`, `floor`, `steps` or a section's name.
  units::Area area;
  bool is_wall = false;  ///< Etched first, with two thirds of the solution.
  Substrate substrate = Substrate::render;
  ExistingCoating coating = ExistingCoating::epoxy;
  AcetoneTest acetone_test = AcetoneTest::not_done;
  std::optional<units::Duration> age_of_cement;  ///< Since it was laid; nothing: old.
  std::optional<int> painted_year;               ///< Of its oldest paint; nothing: unknown.
  units::Fraction bare_share;
  units::Fraction loose_share;
  bool gloss = true;
};

struct Crack {
  units::Length width, length, depth;
  bool moving = false;
};

struct Divot {
  units::Length depth;
  units::Area area;
  int count = 1;
};

/// The shell as a whole.
struct Condition {
  Dirt algae = Dirt::none;
  Dirt oils = Dirt::normal;
  std::vector<Crack> cracks;
  std::vector<Divot> divots;
  units::Area drummy_area;
  units::Area blisters;
  bool rust = false;
  bool efflorescence = false;
  LeadTest lead_test = LeadTest::not_done;
  LeakTest leak_test = LeakTest::not_done;
  Ground ground = Ground::unknown;
  std::string floats;  ///< Which body of water is nearest to floating, where there are several.
};

}  // namespace basinwright::preparation
