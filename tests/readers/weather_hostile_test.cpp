// Files spoilt at random: nothing may be thrown, what is refused has a reason in its place, and
// what is read can be merged.
#include <random>

#include "weather_reading.hpp"

using namespace weather_reading;

namespace {

// Not std::uniform_int_distribution: its numbers differ between libraries.
class Draw {
 public:
  explicit Draw(unsigned seed) : engine_(seed) {}
  std::size_t below(std::size_t n) { return n == 0 ? 0 : engine_() % n; }

 private:
  std::minstd_rand engine_;
};

const std::vector<std::string>& splinters() {
  static const std::vector<std::string> all{
      "",     ",",    "\n",  "\r\n",  "\"",    "\"\"",   "-",          "9999",
      "nan",  "1e9",  "999", "-9900", "null",  "[",      "}",          "99.9",
      "time", ":",    "T",   "24",    "0",     "\xFF",   "2027-05-03", "\xC2\xB0",
      "\t",   "true", "{}",  "1e999", "0x1p3", "-1e-99", "2149-12-31", "12-31T23"};
  return all;
}

std::string spoilt(std::string text, Draw& draw) {
  for (std::size_t cuts = 1 + draw.below(4); cuts > 0; --cuts) {
    const std::size_t at = draw.below(text.size());
    const std::size_t length = std::min(draw.below(12), text.size() - at);
    switch (draw.below(5)) {
      case 0:
        text.erase(at, length);
        break;
      case 1:
        text.replace(at, length, splinters()[draw.below(splinters().size())]);
        break;
      case 2:
        text.insert(at, text.substr(draw.below(text.size()), draw.below(80)));
        break;
      case 3:
        text.resize(at + 1);
        break;
      default:
        text[at] = static_cast<char>(text[at] ^ static_cast<char>(1U << draw.below(8)));
    }
    if (text.empty()) return text;
  }
  return text;
}

std::size_t lines_in(const std::string& text) {
  return 1 + static_cast<std::size_t>(std::ranges::count(text, '\n'));
}

/// Whether everything that must hold of a file, good or bad, does.
bool is_sound(const std::string& text) {
  Weather w(text);
  if (w.file.has_value() == w.problems.has_errors()) return false;
  for (const Diagnostic& d : w.problems.all()) {
    if (d.at.line == 0 || d.at.line > lines_in(text) || d.at.column == 0 || d.at.width == 0)
      return false;
    if (d.message.empty() || d.code.empty()) return false;
  }
  if (!w.file) return true;
  const auto& hours = w.file->hours;
  for (std::size_t i = 1; i < hours.size(); ++i) {
    if (hours[i].at <= hours[i - 1].at) return false;
  }
  static_cast<void>(readers::merge({*w.file}, hour("2027-05-01T00:00"), hour("2027-05-08T00:00")));
  return true;
}

void spoil(const std::string& seed, unsigned number, int times) {
  Draw draw(number);
  for (int i = 0; i < times; ++i) {
    const std::string text = spoilt(seed, draw);
    bool sound = false;
    std::string thrown;
    try {
      sound = is_sound(text);
    } catch (const std::exception& e) {
      thrown = e.what();
    }
    if (sound) continue;
    INFO(text << "\n" << thrown);
    CHECK(sound);
  }
}

constexpr int times = 1500;

}  // namespace

TEST_CASE("spoilt tables") {
  spoil(
      "time,air_temp_c,rh_pct,dew_point_c,rain_mm,wind_ms,cloud_pct,shell_temp_c,quality\r\n"
      "2027-05-03T08:00,14.5,60,6.9,0.0,2.5,40,12.0,observed\r\n"
      "\"2027-05-03T09:00\",15,60,\"7.0\",1.5,2.5,40,,forecast\r\n"
      "2027-05-03T10:00,,60,6.9,,2.5,40,,\r\n"
      "2027-05-03T13:00,16,60,6.9,0,2.5,40,,climatology\r\n",
      1,
      times);
}

TEST_CASE("spoilt forecasts") {
  spoil(R"({"latitude": 41.9, "longitude": 12.5, "utc_offset_seconds": 7200,
 "hourly_units": {"time": "iso8601", "temperature_2m": "\u00b0C", "precipitation": "mm",
  "relative_humidity_2m": "%", "wind_speed_10m": "km/h"},
 "hourly": {"time": ["2027-05-03T08:00", "2027-05-03T09:00", "2027-05-03T10:00"],
  "temperature_2m": [14.5, null, 16], "relative_humidity_2m": [60, 58, 55],
  "precipitation": [0.0, 0.4, null], "wind_speed_10m": [36.0, 18, 0]}})",
        2,
        times);
}

TEST_CASE("spoilt typical years") {
  EpwRow missing;
  missing.hour = "2";
  missing.air = "99.9";
  missing.rain = "999";
  EpwRow last;
  last.month = "12";
  last.day = "31";
  last.hour = "24";
  spoil(epw({EpwRow{}, missing, last}), 3, times);
  spoil(tmy3_heading() +
            "05/03/1988,01:00,5,10.0,6.0,76,2.0,0,1\n"
            "05/03/1988,02:00,-9900,-9900,-9900.0,-9900,-9900,-9900,-9900\n"
            "12/31/1988,24:00,5,10.0,6.0,76,2.0,1.5,1\n",
        4,
        times);
}
