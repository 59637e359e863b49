// What goes into each bucket and can, and where the water of each wash goes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/chemistry/etch.hpp"
#include "basinwright/chemistry/heat.hpp"
#include "basinwright/chemistry/neutralise.hpp"
#include "basinwright/chemistry/waste_water.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::job {

/// One kind of mix in one kind of vessel: `full` alike, and one with the rest. The agent is a
/// volume or a mass, the other zero; water goes in first.
struct VesselMix {
  std::string wash;    ///< A code: "etch", "chlorine-wash", "degreasing-wash", "neutralising-wash".
  std::string where;   ///< Part of the shell, for an etch.
  std::string vessel;  ///< "bucket" or "can".
  units::Volume filled;
  int full = 0;
  units::Volume water, agent, last_water, last_agent;
  units::Mass agent_mass, last_mass;
  [[nodiscard]] bool has_last() const {
    return last_agent > units::Volume() || last_mass > units::Mass();
  }
};

/// An etch's strength beside what is published, and what mixing it does.
struct EtchStrength {
  std::string where;
  chemistry::Parts trade;
  units::Fraction by_mass;
  /// Of the user's acid at 10 and at 5 %; nothing when the acid itself is no stronger.
  std::optional<chemistry::Parts> published_strong, published_mild;
  chemistry::DilutionHeat heat;  ///< Of a full bucket.
  chemistry::Vapour vapour;      ///< Over the mix.
  chemistry::Vapour undiluted;   ///< Over the acid as sold.
  bool strong = false;           ///< Stronger than 1 : 2.
};

struct Mixes {
  std::vector<VesselMix> cards;
  std::vector<EtchStrength> strengths;
};

/// The water of one wash with what takes its chlorine out.
struct WashWaterOut {
  chemistry::WasteWater water;
  units::Mass dechlorinator;  ///< Sodium thiosulfate, a fifth more than is needed; for chlorine.
};

/// The sump's dose at one reading.
struct SumpRow {
  chemistry::Ph measured;
  units::Mass still, fizzing, aerated;
  units::Volume carbon_dioxide;
  units::Fraction of_shell;  ///< Were all of it to stay in the shell.
};

/// What a reading that somebody took in the sump asks for.
enum class SumpReading {
  none,              ///< Nobody took one.
  dosed,             ///< The first row of the doses.
  little_by_little,  ///< Too high to tell how much acid is left: air, a little, measure again.
  inside,            ///< Inside the sewer's limits.
  too_alkaline       ///< Above them.
};

/// Where the wash waters go.
struct Discharge {
  chemistry::SewerLimits limits;
  bool limits_refused = false;  ///< What was entered lets in what no sewer may take.
  std::vector<WashWaterOut> waters;
  chemistry::Ph target;             ///< Of the sump's doses.
  bool beyond_bicarbonate = false;  ///< The sewer asks for more than bicarbonate alone reaches.
  SumpReading reading = SumpReading::none;
  std::vector<SumpRow> sump;
  units::Volume carbon_dioxide_worst;
  units::Fraction of_shell_worst;
  units::Mass pool_dechlorinator;  ///< For each mg/L of chlorine in the pool's own water.
};

}  // namespace basinwright::job
