// What each number of the rate book's waits, coating systems and chemicals changes.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "basinwright/units/unit.hpp"
#include "reading.hpp"

namespace effects {

using namespace reading;
using basinwright::job::RateBook;

using Get = std::function<double(const RateBook&)>;

struct Effect {
  std::string pointer;
  json written;
  double expected;
  Get get;
};

inline Effect time(const std::string& pointer, units::Duration (*get)(const RateBook&)) {
  return {pointer, "5.25 h", 5.25, [get](const RateBook& b) { return get(b).in(units::hours); }};
}

inline std::vector<Effect> of_waits() {
  return {
      time("/waits/recoat_reserve", [](auto& b) { return b.waits.recoat_reserve.value; }),
      time("/waits/dry", [](auto& b) { return b.waits.dry.value; }),
      time("/waits/dryness_test", [](auto& b) { return b.waits.dryness_test.value; }),
      time("/waits/coat_within", [](auto& b) { return b.waits.coat_within.value; }),
      time("/waits/after_chlorine", [](auto& b) { return b.waits.after_chlorine.value; }),
      time("/waits/filler_cure", [](auto& b) { return b.waits.filler_cure.value; }),
      time("/waits/start_up", [](auto& b) { return b.waits.start_up.value; }),
      time("/waits/rework_dry", [](auto& b) { return b.waits.rework_dry.value; }),
      time("/waits/rework_coat_within", [](auto& b) { return b.waits.rework_coat_within.value; }),
      time("/waits/delivered_before", [](auto& b) { return b.waits.delivered_before.value; })};
}

// Parts of water, and solution an area, of each row of the etch.
inline std::vector<Effect> of_etch_rows() {
  const std::vector<std::string> rows{
      "painted", "new_render", "render", "concrete", "plaster_soft", "plaster_hard", "pebble"};
  std::vector<Effect> all;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    all.push_back({"/chemicals/acid/ratio/" + rows[r], 7, 7, [r](const RateBook& b) {
                     return b.chemicals.etch.rules[r].parts.value.water;
                   }});
    all.push_back({"/chemicals/acid/rates/" + rows[r], "0.8 L/m2", 0.8, [r](const RateBook& b) {
                     return b.chemicals.etch.rules[r].solution->value.in(
                         units::litres_per_square_metre);
                   }});
  }
  return all;
}

inline const auto& sheet(const RateBook& b) {
  return b.systems.at("Two Part");
}

inline std::vector<Effect> of_systems() {
  const std::string s = "/coating_systems/Two Part/";
  using namespace units;
  return {
      {s + "kit", "6 L", 6, [](auto& b) { return sheet(b).kit.value.in(litres); }},
      {s + "cover/0",
       "31 m2",
       31,
       [](auto& b) { return sheet(b).cover_low.value.in(square_metres); }},
      {s + "cover/1",
       "37 m2",
       37,
       [](auto& b) { return sheet(b).cover_high.value.in(square_metres); }},
      {s + "recoat/0", "17 h", 17, [](auto& b) { return sheet(b).recoat_min.value.in(hours); }},
      {s + "recoat/1", "37 h", 37, [](auto& b) { return sheet(b).recoat_max.value.in(hours); }},
      {s + "induction/0",
       "5 min",
       5,
       [](auto& b) { return sheet(b).induction_min.value.in(minutes); }},
      {s + "induction/1",
       "9 min",
       9,
       [](auto& b) { return sheet(b).induction_max.value.in(minutes); }},
      {s + "pot_life/time",
       "50 min",
       50,
       [](auto& b) { return sheet(b).pot_life.value.in(minutes); }},
      {s + "pot_life/at",
       "22 C",
       22,
       [](auto& b) { return sheet(b).pot_life_at.value.in(celsius); }},
      {s + "primer/kit", "3 L", 3, [](auto& b) { return sheet(b).primer.kit.value.in(litres); }},
      {s + "primer/cover",
       "20 m2",
       20,
       [](auto& b) { return sheet(b).primer.cover.value.in(square_metres); }},
      {s + "primer/window/0",
       "6 h",
       6,
       [](auto& b) { return sheet(b).primer.window_min.value.in(hours); }},
      {s + "primer/window/1",
       "27 h",
       27,
       [](auto& b) { return sheet(b).primer.window_max.value.in(hours); }},
      {s + "thinner", "160 mL", 160, [](auto& b) {
         return sheet(b).thinner_per_kit.value.in(millilitres);
       }}};
}

// The lines of a sheet's own table of pot lives.
inline std::vector<Effect> of_pot_lives() {
  const std::string t = "/coating_systems/Two Part/pot_life/table/";
  using namespace units;
  return {
      {t + "0/0", "16 C", 16, [](auto& b) { return sheet(b).pot_lives[0].at.in(celsius); }},
      {t + "0/1", "80 min", 80, [](auto& b) { return sheet(b).pot_lives[0].time.in(minutes); }},
      {t + "1/0", "28 C", 28, [](auto& b) { return sheet(b).pot_lives[1].at.in(celsius); }},
      {t + "1/1", "25 min", 25, [](auto& b) { return sheet(b).pot_lives[1].time.in(minutes); }}};
}

inline std::vector<Effect> of_use() {
  const std::string s = "/coating_systems/Two Part/";
  using namespace units;
  return {
      {s + "cure/warm", "9 d", 9, [](auto& b) { return sheet(b).cure_warm.value.in(days); }},
      {s + "cure/cold", "16 d", 16, [](auto& b) { return sheet(b).cure_cold.value.in(days); }},
      {s + "quiet_start", "6 d", 6, [](auto& b) { return sheet(b).quiet_start.value.in(days); }},
      {s + "cool_hardener_to",
       "14 C",
       14,
       [](auto& b) { return sheet(b).cool_hardener_to.value.in(celsius); }},
      {s + "coats", 4, 4, [](auto& b) { return sheet(b).least_coats.value; }},
      {s + "strong_etch", false, 0, [](auto& b) { return sheet(b).strong_etch ? 1.0 : 0.0; }},
      {s + "planned_rework", false, 0, [](auto& b) {
         return sheet(b).planned_rework ? 1.0 : 0.0;
       }}};
}

inline std::vector<Effect> of_mixing() {
  const std::string s = "/coating_systems/Two Part/";
  using namespace units;
  return {
      {s + "mixing", "7 min", 7, [](auto& b) { return sheet(b).mixing.value.in(minutes); }},
      {s + "tray_reserve",
       "6 min",
       6,
       [](auto& b) { return sheet(b).tray_reserve.value.in(minutes); }},
      {s + "parts_min", "16 C", 16, [](auto& b) { return sheet(b).parts_min.value.in(celsius); }}};
}

inline std::vector<Effect> of_limits() {
  const std::string s = "/coating_systems/Two Part/limits/";
  using namespace units;
  return {{s + "air_min",
           "12 C",
           12,
           [](auto& b) { return sheet(b).limits.air_min.value.in(celsius); }},
          {s + "air_max",
           "28 C",
           28,
           [](auto& b) { return sheet(b).limits.air_max.value.in(celsius); }},
          {s + "air_after",
           "8 h",
           8,
           [](auto& b) { return sheet(b).limits.air_after.value.in(hours); }},
          {s + "shell_min",
           "13 C",
           13,
           [](auto& b) { return sheet(b).limits.shell_min.value.in(celsius); }},
          {s + "shell_max",
           "30 C",
           30,
           [](auto& b) { return sheet(b).limits.shell_max.value.in(celsius); }},
          {s + "dew_margin",
           "4 C",
           4,
           [](auto& b) { return sheet(b).limits.dew_margin.value.in(kelvins); }},
          {s + "humidity_max",
           "75 %",
           75,
           [](auto& b) { return sheet(b).limits.humidity_max.value.in_percent(); }},
          {s + "rain_free_after",
           "15 h",
           15,
           [](auto& b) { return sheet(b).limits.rain_free_after.value.in(hours); }},
          {s + "dry_before",
           "5 h",
           5,
           [](auto& b) { return sheet(b).limits.dry_before.value.in(hours); }},
          {s + "wind_max", "7 m/s", 7, [](auto& b) {
             return sheet(b).limits.wind_max->value.in(metres_per_second);
           }}};
}

inline std::vector<Effect> of_chemicals() {
  using namespace units;
  const auto pack = [](const char* item) {
    return
        [item](const RateBook& b) { return static_cast<double>(b.items.at(item).packs[0].size); };
  };
  return {
      {"/chemicals/acid/strength",
       "30 %",
       30,
       [](auto& b) { return b.chemicals.acid.value.in_percent(); }},
      {"/chemicals/acid/rate",
       "1.2 L/m2",
       1.2,
       [](auto& b) { return b.chemicals.etch.solution.value.in(litres_per_square_metre); }},
      {"/chemicals/acid/wall_share",
       "70 %",
       70,
       [](auto& b) { return b.chemicals.etch.wall_share.value.in_percent(); }},
      {"/chemicals/acid/pebble_factor",
       1.5,
       1.5,
       [](auto& b) { return b.chemicals.etch.pebble_factor.value; }},
      {"/chemicals/acid/bucket",
       "12 L",
       12,
       [](auto& b) { return b.chemicals.bucket.value.in(litres); }},
      {"/chemicals/acid/can", "6 L", 6, [](auto& b) { return b.chemicals.can.value.in(litres); }},
      {"/chemicals/acid/rinses", 4, 4, [](auto& b) { return b.chemicals.rinses_of_acid.value; }},
      {"/chemicals/hypochlorite/rinses",
       5,
       5,
       [](auto& b) { return b.chemicals.rinses_of_chlorine.value; }},
      {"/chemicals/degreaser/rinses",
       4,
       4,
       [](auto& b) { return b.chemicals.rinses_of_degreaser.value; }},
      {"/chemicals/bicarbonate/rinses",
       5,
       5,
       [](auto& b) { return b.chemicals.rinses_of_bicarbonate.value; }},
      {"/chemicals/rinse",
       "7 L/m2",
       7,
       [](auto& b) { return b.chemicals.rinse.value.in(litres_per_square_metre); }},
      {"/chemicals/acid/packs/0/size", "5 US gal", 18928, pack("acid")},
      {"/chemicals/hypochlorite/strength",
       "10 %",
       10,
       [](auto& b) { return b.chemicals.hypochlorite_trade_percent.value; }},
      {"/chemicals/hypochlorite/wash_strength",
       "11 g/L",
       11,
       [](auto& b) { return b.chemicals.chlorine_wash.strength.value.in(grams_per_litre); }},
      {"/chemicals/hypochlorite/rate",
       "0.7 L/m2",
       0.7,
       [](auto& b) { return b.chemicals.chlorine_wash.rate.value.in(litres_per_square_metre); }},
      {"/chemicals/hypochlorite/packs/0/size", "15 L", 15000, pack("hypochlorite")}};
}

inline std::vector<Effect> of_wash_chemicals() {
  using namespace units;
  const auto pack = [](const char* item) {
    return
        [item](const RateBook& b) { return static_cast<double>(b.items.at(item).packs[0].size); };
  };
  return {{"/chemicals/degreaser/concentrate",
           "0.7 L",
           0.7,
           [](auto& b) { return b.chemicals.degrease.concentrate.value.in(litres); }},
          {"/chemicals/degreaser/water",
           "21 L",
           21,
           [](auto& b) { return b.chemicals.degrease.water.value.in(litres); }},
          {"/chemicals/degreaser/cover",
           "5 m2/L",
           5,
           [](auto& b) { return b.chemicals.degrease.cover.value.in(square_metres_per_litre); }},
          {"/chemicals/degreaser/packs/0/size", "2 L", 2000, pack("degreaser")},
          {"/chemicals/bicarbonate/strength",
           "95 %",
           95,
           [](auto& b) { return b.chemicals.neutralise.purity.value.in_percent(); }},
          {"/chemicals/bicarbonate/area_per_kg",
           "20 m2",
           0.05,
           [](auto& b) {
             return b.chemicals.neutralise.bicarbonate.value.in(kilograms_per_square_metre);
           }},
          {"/chemicals/bicarbonate/mix",
           "80 g/L",
           80,
           [](auto& b) { return b.chemicals.neutralise.mix.value.in(grams_per_litre); }},
          {"/chemicals/bicarbonate/packs/0/size", "50 lb", 22680, pack("bicarbonate")}};
}

}  // namespace effects
