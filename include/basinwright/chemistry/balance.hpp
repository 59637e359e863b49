// The start-up balance: what new water needs to reach its targets.
#pragma once

#include <vector>

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/chlorine.hpp"
#include "basinwright/chemistry/dose.hpp"
#include "basinwright/chemistry/neutralise.hpp"
#include "basinwright/chemistry/saturation.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

inline constexpr sources::Sourced<Ph> start_up_ph{
    ph(7.6), {sources::Kind::common_practice, "start-up-targets", "pH"}};
inline constexpr sources::Sourced<units::Concentration> start_up_alkalinity{
    units::milligrams_per_litre(100.0), {sources::Kind::published, "10-nycrr-6-1.30", "80 to 120"}};
inline constexpr sources::Sourced<units::Concentration> start_up_hardness{
    units::milligrams_per_litre(200.0),
    {sources::Kind::published, "10-nycrr-6-1.30", "180 to 250"}};
inline constexpr sources::Sourced<units::Concentration> start_up_stabiliser{
    units::milligrams_per_litre(30.0),
    {sources::Kind::published, "arm-37-115", "table 6, 10 to 50"}};
inline constexpr sources::Sourced<units::Concentration> start_up_free_chlorine{
    units::milligrams_per_litre(3.0), {sources::Kind::published, "arm-37-115", "table 6, 3 to 5"}};
inline constexpr sources::Sourced<units::Concentration> start_up_salt{
    units::milligrams_per_litre(3200.0), {sources::Kind::assumed, "start-up-targets", "salt"}};
/// Past these the water is out of every range; below them it may stay over its target.
inline constexpr sources::Sourced<units::Concentration> highest_alkalinity{
    units::milligrams_per_litre(120.0), {sources::Kind::published, "10-nycrr-6-1.30", "80 to 120"}};
inline constexpr sources::Sourced<units::Concentration> highest_hardness{
    units::milligrams_per_litre(1000.0),
    {sources::Kind::published, "arm-37-115", "table 6, 150 to 1000"}};
inline constexpr sources::Sourced<units::Concentration> highest_stabiliser{
    units::milligrams_per_litre(100.0),
    {sources::Kind::published, "arm-37-115", "table 6, 0 to 100"}};

/// Where the water is to go.
struct Targets {
  sources::Sourced<Ph> ph = start_up_ph;
  sources::Sourced<units::Concentration> alkalinity = start_up_alkalinity;
  sources::Sourced<units::Concentration> hardness = start_up_hardness;
  sources::Sourced<units::Concentration> stabiliser = start_up_stabiliser;
  sources::Sourced<units::Concentration> free_chlorine = start_up_free_chlorine;
  sources::Sourced<units::Concentration> salt = start_up_salt;
  bool salt_pool = false;  ///< Otherwise salt is left alone.
};

/// Where the water is to go and what is at hand for it.
struct StartUpPlan {
  Targets targets{};
  Acid acid{};
  ChlorineStock chlorine{};
  bool flake = true;  ///< Calcium chloride as dihydrate flake.
  sources::Sourced<units::Fraction> bicarbonate = bicarbonate_purity;
};

/// In the order of the work: salt and chlorine first, the rest days later and one at a time.
enum class StartUpAction {
  raise_salt,
  raise_chlorine,
  raise_alkalinity,
  lower_alkalinity,
  raise_hardness,
  raise_stabiliser
};

/// One addition; a mass or a volume, the other zero.
struct StartUpDose {
  StartUpAction action = StartUpAction::raise_salt;
  units::Mass mass;
  units::Volume volume;
  units::Concentration from, to;
};

/// Figures beyond every range that no addition lowers; only part-draining does.
enum class TooMuch { hardness, stabiliser };

/// The additions in the order to make them, one at a time, and what they cannot mend. The pH comes
/// last, by small steps and readings: its dose depends on the alkalinity and is not linear.
struct StartUp {
  std::vector<StartUpDose> doses;
  std::vector<TooMuch> too_much;
};

/// The doses for a volume: each figure below its target is raised to it, alkalinity beyond its
/// range lowered to it; the new water's own chlorine counts as none. Records
/// quantities.start_up.bicarbonate_kg, .acid_l, .calcium_chloride_kg, .stabiliser_kg, .salt_kg,
/// .chlorine_l or .chlorine_kg for the doses that are needed.
/// @param filled volume of water, from `takeoff.water_volume_m3`
/// @throws std::invalid_argument for a volume that is negative or not finite
[[nodiscard]] StartUp start_up(units::Volume filled,
                               const Water& water,
                               const StartUpPlan& plan,
                               trace::Trace& trace);

}  // namespace basinwright::chemistry
