// What the site log adds to the handover; private to the room.
#pragma once

#include "basinwright/report/site.hpp"
#include "cells.hpp"

namespace basinwright::report {

/// Batches, kits, films and conditions of each coat and section, and who found what before
/// painting. Without a log all of it is to be written in.
[[nodiscard]] document::Section built_section(const Subject& s, const Site* site);

/// The day the last coat was finished; nothing when it is not, or nobody recorded it.
[[nodiscard]] std::optional<dates::Date> painted_on(const Site& site);

/// What was read last in the filled pool: pH, then free chlorine. Room to write without a reading.
[[nodiscard]] Cell pool_ph(const Site* site);
[[nodiscard]] Cell pool_chlorine(const Site* site);

/// Kits delivered less kits mixed, where deliveries of Part A say how many; else room to write.
[[nodiscard]] Cell kits_left(const Site* site);
/// Every batch delivered or mixed, "A2207 and B881"; else room to write.
[[nodiscard]] Cell batches_left(const Site* site);

}  // namespace basinwright::report
