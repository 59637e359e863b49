// The weather strip of the chart.
#pragma once

#include "basinwright/report/pages.hpp"
#include "chart_sheet.hpp"

namespace basinwright::report {

/// Draws what is known of the weather from `top` down.
/// @return where it ends; `top` when no weather was read
double draw_strip(ChartSheet& sheet, const Subject& s, double top);

/// Night, a narrow band from `top` down; nothing where nobody knows the sun.
/// @return where it ends
double draw_nights(ChartSheet& sheet, const Subject& s, double top);

}  // namespace basinwright::report
