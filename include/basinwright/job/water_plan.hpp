// The refill: how long, how much it costs, and what goes into the new water when.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/chemistry/balance.hpp"
#include "basinwright/dates/date.hpp"
#include "basinwright/job/refill.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::job {

/// One addition: an amount, at most, and the day.
struct Addition {
  std::optional<dates::Date> day;  ///< Nothing without a programme.
  std::string what;                ///< A code: "chlorine-liquid", "bicarbonate", "ph-acid" ...
  int part = 1, of = 1;            ///< Later parts follow a reading.
  units::Mass mass;
  units::Volume volume;
  std::string figure;           ///< What it changes: "alkalinity", "ph" ...
  double from = 0.0, to = 0.0;  ///< mg/L, or pH.
};

/// A saturation index of one water by one method; a reason where there is none.
struct IndexLine {
  std::string water;   ///< "fill" or "target".
  std::string method;  ///< A code: "table", "table-corrected", "equations", "equations-corrected".
  std::optional<double> value;
  std::string reason;
};

struct WaterPlan {
  units::Volume water;
  units::Flow tap;
  units::Duration fill_time;
  WaterUnit unit = WaterUnit::cubic_metres;
  double billed = 0.0;               ///< In that unit.
  std::optional<money::Money> cost;  ///< Where a price of the unit was given.
  std::optional<dates::Date> full, quiet_until;
  std::vector<Addition> additions;
  chemistry::ChlorineStock chlorine;  ///< What the new water is chlorinated with.
  int visits = 0;  ///< Days on which somebody adds something after the quiet time.
  std::vector<std::string> measure_first;  ///< Figures nobody measured: no dose for them.
  std::vector<std::string> advice;         ///< Codes: "aerate", "drain-part-hardness" ...
  std::vector<IndexLine> indices;
};

}  // namespace basinwright::job
