// What the project computes for a row of each reference form, as the row's own `expected` is laid
// out.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace basinwright::reference {

using Json = nlohmann::json;

/// Take-off of a pool read through the job file's reader; with `sections` where the row has them.
[[nodiscard]] Json shells(const Json& row);
/// The codes with which a pool is refused.
[[nodiscard]] Json refused_codes(const Json& row);
[[nodiscard]] Json packs(const Json& row);
/// Status and the four values of the objective.
[[nodiscard]] Json schedules(const Json& row);

}  // namespace basinwright::reference
