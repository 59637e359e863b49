// The programme as bars over the weather.
#pragma once

#include "basinwright/report/pages.hpp"

namespace basinwright::report {

/// One sheet lying across: a strip with air, dew-point margin, rain and night where they are known,
/// closed days, and below it a bar a task with what keeps it from starting earlier. Without dates,
/// why there are none.
[[nodiscard]] document::Drawing programme_drawing(const Subject& s);

}  // namespace basinwright::report
