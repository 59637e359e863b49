// What the water is kept at from the first swim on.
#pragma once

#include "basinwright/chemistry/balance.hpp"
#include "basinwright/job/refill.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::job {

/// Within this of its target a pH is left alone: 7.4 to 7.8 about 7.6.
inline constexpr sources::Sourced<double> ph_margin{
    0.2, {sources::Kind::common_practice, "start-up-targets", "7.4 to 7.8"}};
/// Free chlorine in which people swim, where neither the job nor a local code says otherwise.
inline constexpr sources::Sourced<units::Concentration> least_swim_chlorine{
    units::milligrams_per_litre(1.0), {sources::Kind::common_practice, "first-swim", "chlorine"}};
inline constexpr sources::Sourced<units::Concentration> most_swim_chlorine{
    units::milligrams_per_litre(3.0), {sources::Kind::common_practice, "first-swim", "chlorine"}};

/// The pH that is aimed at: the job's own, else the usual.
[[nodiscard]] inline double ph_aim(const Refill& refill) {
  return refill.targets.ph ? refill.targets.ph->value : chemistry::start_up_ph.value.value();
}

}  // namespace basinwright::job
