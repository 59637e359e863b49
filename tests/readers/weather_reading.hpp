// Short ways to read weather in tests.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/readers/weather_file.hpp"
#include "basinwright/units/unit.hpp"
#include "readers/reading.hpp"

namespace weather_reading {

namespace readers = basinwright::readers;
namespace units = basinwright::units;
namespace weather = basinwright::weather;
using basinwright::diagnostics::Diagnostic;
using basinwright::diagnostics::Problems;
using basinwright::diagnostics::Severity;
using readers::WeatherFile;
using readers::WeatherForm;
using weather::Quality;

/// A file read, with what was said of it.
struct Weather {
  explicit Weather(const std::string& text) : file(readers::read_weather({"w", text}, problems)) {}
  Problems problems;
  std::optional<WeatherFile> file;

  /// "line:column code" of every problem, in order of place.
  [[nodiscard]] std::vector<std::string> found() const {
    std::vector<std::string> out;
    for (const Diagnostic& d : problems.sorted()) {
      out.push_back(std::to_string(d.at.line) + ":" + std::to_string(d.at.column) + " " + d.code);
    }
    return out;
  }
  [[nodiscard]] const std::vector<readers::WeatherHour>& hours() const {
    INFO(reading::told(problems));
    REQUIRE(file.has_value());
    return file->hours;
  }
};

using Found = std::vector<std::string>;

/// The hour of a local time.
inline weather::HourNumber hour(const std::string& text) {
  return weather::hour_of(basinwright::dates::parse_moment(text).value());
}

/// What an hour holds in the units of the table; -999 where nothing is known.
struct Shown {
  double air, humidity, dew_point, rain, wind;
};
inline constexpr double unknown = -999.0;

template <class T, class Read>
double shown(const std::optional<weather::Reading<T>>& reading, Read read) {
  return reading ? read(reading->value) : unknown;
}

inline Shown shown(const weather::Hour& h) {
  const auto degrees = [](units::Temperature t) { return t.in(units::celsius); };
  return {shown(h.air, degrees),
          shown(h.humidity, [](double share) { return share * 100.0; }),
          shown(h.dew_point, degrees),
          shown(h.rain, [](units::Length l) { return l.in(units::millimetres); }),
          shown(h.wind, [](units::Speed s) { return s.in(units::metres_per_second); })};
}

/// Conversions round in the last digits only.
inline bool is_near(double a, double b) {
  return std::abs(a - b) < 1e-9;
}

inline void check_same(const Shown& got, const Shown& expected) {
  CHECK(got.air == Approx(expected.air).margin(1e-9));
  CHECK(got.humidity == Approx(expected.humidity).margin(1e-9));
  CHECK(got.dew_point == Approx(expected.dew_point).margin(1e-9));
  CHECK(got.rain == Approx(expected.rain).margin(1e-9));
  CHECK(got.wind == Approx(expected.wind).margin(1e-9));
}

/// A row of EPW: 35 fields counted from 1, as the form's description counts them.
struct EpwRow {
  std::string month = "5", day = "3", hour = "1";
  std::string air = "10.0", dew_point = "6.0", humidity = "76", wind = "2.0", cloud = "5";
  std::string rain = "0.0", period = "1.0";

  [[nodiscard]] std::string text() const {
    std::vector<std::string> f(36, "9999");
    f[1] = "1995";
    f[2] = month;
    f[3] = day;
    f[4] = hour;
    f[5] = "60";
    f[6] = "?9?9?9?9E0?9?9?9?9?9?9?9?9?9?9?9?9?9?9?9*9*9?9?9?9";
    f[7] = air;
    f[8] = dew_point;
    f[9] = humidity;
    f[10] = "101325";
    f[22] = wind;
    f[23] = cloud;
    f[34] = rain;
    f[35] = period;
    std::string out;
    for (std::size_t i = 1; i < f.size(); ++i) out += (i > 1 ? "," : "") + f[i];
    return out + "\n";
  }
};

inline std::string epw_heading() {
  return "LOCATION,Sample Bay,ST,XYZ,TMY,000000,41.9,12.5,1.0,20.0\n"
         "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\n"
         "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,said \"so\"\nCOMMENTS 2,\n"
         "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";
}

inline std::string epw(const std::vector<EpwRow>& rows) {
  std::string out = epw_heading();
  for (const EpwRow& row : rows) out += row.text();
  return out;
}

inline std::string tmy3_heading() {
  return "000001,\"SAMPLE, BAY\",ST,1.0,41.900,12.500,20\n"
         "Date (MM/DD/YYYY),Time (HH:MM),TotCld (tenths),Dry-bulb (C),Dew-point (C),RHum (%),"
         "Wspd (m/s),Lprecip depth (mm),Lprecip quantity (hr)\n";
}

}  // namespace weather_reading
