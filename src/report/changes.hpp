// How a change between two plans is written.
#pragma once

#include <string>

#include "basinwright/report/pages.hpp"
#include "cells.hpp"

namespace basinwright::report {

/// The day, or that there are no dates.
[[nodiscard]] Cell day_cell(const sequence::Programme& programme, dates::Date day);
/// "+120.00".
[[nodiscard]] Cell change_cell(const Cells& cells, money::Money change);
/// From one total to the other.
[[nodiscard]] std::string change_line(const Subject& a, const Subject& b, const Cells& cells);

}  // namespace basinwright::report
