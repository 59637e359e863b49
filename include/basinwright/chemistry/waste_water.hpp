// The waters of the washes: how much, how acid, and what to do before they go to the sewer.
#pragma once

#include <optional>

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/ph.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

/// Which wash a water comes from.
enum class Wash { chlorine, degrease, etch, neutralise, rinse };

/// What the sewer takes; none of these waters ever goes to a storm drain.
struct SewerLimits {
  sources::Sourced<Ph> lowest{ph(6.0), {sources::Kind::assumed, "sewer-ph", "lowest"}};
  sources::Sourced<Ph> highest{ph(9.0), {sources::Kind::assumed, "sewer-ph", "highest"}};
};

/// Under this no sewer takes it, whatever it allows otherwise.
inline constexpr sources::Sourced<Ph> sewer_floor{
    ph(5.0), {sources::Kind::published, "40-cfr-403", "403.5(b)(2)"}};
/// At or under this, and at or over 12.5, a water is hazardous waste: treat it where it is.
inline constexpr sources::Sourced<Ph> hazardous_acid{
    ph(2.0), {sources::Kind::from_memory, "40-cfr-261", "261.22"}};
inline constexpr sources::Sourced<Ph> hazardous_alkali{
    ph(12.5), {sources::Kind::from_memory, "40-cfr-261", "261.22"}};

enum class Verdict {
  fits,      ///< Inside the sewer's limits.
  treat,     ///< Outside them.
  refused,   ///< Under pH 5.0.
  hazardous  ///< At or beyond pH 2.0 or 12.5.
};

/// A pH against the sewer's limits.
[[nodiscard]] Verdict judge(Ph water, const SewerLimits& limits);

/// What comes first.
enum class FirstStep {
  ask_leave,          ///< Nothing but the authority's leave.
  take_out_chlorine,  ///< Until a strip shows none; then again by pH.
  add_bicarbonate,    ///< Too acid.
  lower_ph            ///< Too alkaline: with leave only, or tanked away.
};

/// A rinse with a hose: what it leaves on top of the wash.
inline constexpr sources::Sourced<units::ApplicationRate> rinse_rate{
    units::litres_per_square_metre(5.0), {sources::Kind::assumed, "rinse-rate", "one rinse"}};

/// mix + rinses x rate x area.
/// @throws std::invalid_argument for anything negative or not finite
[[nodiscard]] units::Volume wash_water_volume(units::Volume mix,
                                              units::Area area,
                                              int rinses,
                                              const sources::Sourced<units::ApplicationRate>& rate);

/// A wash water and what is known of it.
struct WashWater {
  Wash wash = Wash::rinse;
  units::Volume volume{};
  units::Mass hydrogen_chloride{};  ///< Put in, for an etch: none taken as spent.
  std::optional<Ph> measured{};     ///< A reading decides over the expectation.
  bool chlorine_gone = false;       ///< A strip shows none.
};

/// The pH a wash water has before anything is done: strong acid for an etch, plain bicarbonate
/// (pK1 + pK2) / 2 = 8.34 for a neutralising wash, assumed figures for the others.
/// @throws std::invalid_argument for an etch without a volume
/// @source carbonate-constants, "Water" and "Plain bicarbonate"; wash-ph, assumed
[[nodiscard]] sources::Sourced<Ph> expected_ph(const WashWater& water);

/// A wash water with its verdict.
struct WasteWater {
  Wash wash = Wash::rinse;
  units::Volume volume;
  sources::Sourced<Ph> ph;
  Verdict verdict = Verdict::fits;
  FirstStep first = FirstStep::ask_leave;
};

[[nodiscard]] WasteWater waste_water(const WashWater& water, const SewerLimits& limits);

}  // namespace basinwright::chemistry
