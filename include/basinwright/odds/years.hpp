// Past years of weather laid onto the plan's calendar.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::odds {

/// A year may lack so much of its weather at most; with more it says little about the job.
inline constexpr double most_missing = 0.02;

/// A replayed year: the weather of year `year` under the dates of the plan.
struct WeatherYear {
  int year = 0;            ///< In which the first day of the plan falls.
  weather::Record record;  ///< By the plan's dates.
};

/// A year that cannot be replayed.
struct LeftOut {
  int year = 0;
  double missing = 0.0;  ///< Share of the hours without air or rain.
};

struct Years {
  std::vector<WeatherYear> years;  ///< Ascending.
  std::vector<LeftOut> left_out;   ///< Ascending.
};

/// Days of the plan that a replay looks at, and the days of weather before them.
struct Window {
  dates::Date start;
  int days = 120;
  int before = 10;  ///< For what the shell and the rain were before the first day.
};

/// The years of a record under the plan's dates: month by month, day by day, hour by hour as the
/// clock shows them. A 29 February that a year lacks repeats its 28th; one that the plan lacks is
/// left out. A window that runs past 31 December goes on in the year after. A year with more than
/// `most_missing` of the window's hours without air or rain is left out.
[[nodiscard]] Years years_of(const weather::Record& record, const Window& window);

}  // namespace basinwright::odds
