// Each key of a rate book changes the value that it names, and nothing falls back in silence.
// Expected values are the ones written in the changed file, by the exact factors of the units
// (NIST Handbook 44 App. C; the international inch, the day of 24 h).
#include <set>

#include "product_effects.hpp"

using namespace effects;

namespace {

std::vector<Effect> of_weekdays() {
  const std::vector<std::string> names{
      "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"};
  std::vector<Effect> all;
  for (std::size_t d = 0; d < names.size(); ++d) {
    all.push_back({"/labour/weekday/" + names[d], "110 %", 1.1e6, [d](const RateBook& b) {
                     return static_cast<double>(b.labour.weekday[d].millionths);
                   }});
  }
  all.push_back({"/labour/outside_hours", "125 %", 1.25e6, [](const RateBook& b) {
                   return static_cast<double>(b.labour.outside_hours.millionths);
                 }});
  return all;
}

std::vector<Effect> of_packs_and_money() {
  const auto first = [](const RateBook& b) { return b.items.at("Two Part").packs[0]; };
  const auto minor = [](basinwright::money::Money m) { return static_cast<double>(m.minor()); };
  using namespace units;
  return {
      {"/packs/Two Part/0/size",
       "1.5 US gal",
       5679,
       [=](auto& b) { return static_cast<double>(first(b).size); }},
      {"/packs/Two Part/0/price", "181.25", 18125, [=](auto& b) { return minor(first(b).price); }},
      {"/packs/Two Part/0/stock",
       11,
       11,
       [=](auto& b) { return static_cast<double>(first(b).stock.value()); }},
      {"/suppliers/North Store/lead",
       "2 d",
       2,
       [](auto& b) { return b.suppliers[0].lead->in(days); }},
      {"/labour/hour", "42.50", 4250, [=](auto& b) { return minor(b.labour.hour); }},
  };
}

std::vector<Effect> of_counts_and_overheads() {
  const auto minor = [](basinwright::money::Money m) { return static_cast<double>(m.minor()); };
  return {
      {"/hire/0/day", "62", 6200, [=](auto& b) { return minor(b.hire[0].day); }},
      {"/consumables/0/rate", 2.5, 2.5, [](auto& b) { return b.consumables[0].rate; }},
      {"/consumables/0/price", "5.35", 535, [=](auto& b) { return minor(b.consumables[0].price); }},
      {"/consumables/0/per",
       "kit",
       9,
       [](auto& b) { return static_cast<double>(b.consumables[0].per); }},
      {"/protection/0/rate", 5, 5, [](auto& b) { return b.protection[0].rate; }},
      {"/protection/0/price", "2.25", 225, [=](auto& b) { return minor(b.protection[0].price); }},
      {"/protection/0/per",
       "painter",
       3,
       [](auto& b) { return static_cast<double>(b.protection[0].per); }},
      {"/options/0/rate", 3, 3, [](auto& b) { return b.options[0].rate; }},
      {"/options/0/price", "7.75", 775, [=](auto& b) { return minor(b.options[0].price); }},
      {"/options/0/per",
       "tread_area",
       10,
       [](auto& b) { return static_cast<double>(b.options[0].per); }},
      {"/disposal", "91.00", 9100, [=](auto& b) { return minor(b.overheads.disposal); }},
      {"/overheads/markup",
       "150 %",
       1.5e6,
       [](auto& b) { return static_cast<double>(b.overheads.markup->millionths); }},
      {"/overheads/contingency",
       "5 %",
       50000,
       [](auto& b) { return static_cast<double>(b.overheads.contingency.millionths); }},
      {"/overheads/call_out",
       "310.00",
       31000,
       [=](auto& b) { return minor(b.overheads.call_out); }},
      {"/overheads/travel",
       "26.00",
       2600,
       [=](auto& b) { return minor(b.overheads.travel_a_day); }},
      {"/tax/rate",
       "7.25 %",
       72500,
       [](auto& b) { return static_cast<double>(b.tax->rate.millionths); }},
      {"/tax/other_rates/0/rate",
       "6.5 %",
       65000,
       [](auto& b) { return static_cast<double>(b.tax->other_rates.at(0).rate.millionths); }},
      {"/rounding", "half_away", 0, [](auto& b) { return static_cast<double>(b.rounding); }},
      {"/demonstration", false, 0, [](auto& b) { return b.demonstration ? 1.0 : 0.0; }},
      {"/order_confidence", "95 %", 95, [](auto& b) {
         return b.order_confidence.value.in_percent();
       }}};
}

Effect rate(const char* key, units::WorkRate (*get)(const RateBook&)) {
  return {std::string("/productivity/") + key, "7 m2/h", 7, [get](const RateBook& b) {
            return get(b).in(units::square_metres_per_hour);
          }};
}
Effect reach(const char* key, units::Length (*get)(const RateBook&)) {
  return {std::string("/thresholds/") + key, "0.15 in", 3.81, [get](const RateBook& b) {
            return get(b).in(units::millimetres);
          }};
}
Effect part(const char* key, units::Fraction (*get)(const RateBook&)) {
  return {std::string("/thresholds/") + key, "40 %", 40, [get](const RateBook& b) {
            return get(b).in_percent();
          }};
}

std::vector<Effect> of_productivity() {
  return {
      rate("chlorine_wash", [](auto& b) { return b.productivity.chlorine_wash.value; }),
      rate("degrease", [](auto& b) { return b.productivity.degrease.value; }),
      rate("loose_paint", [](auto& b) { return b.productivity.loose_paint.value; }),
      rate("repair", [](auto& b) { return b.productivity.repair.value; }),
      rate("strip", [](auto& b) { return b.productivity.strip.value; }),
      rate("abrade", [](auto& b) { return b.productivity.abrade.value; }),
      rate("dust_removal", [](auto& b) { return b.productivity.dust_removal.value; }),
      rate("pressure_clean", [](auto& b) { return b.productivity.pressure_clean.value; }),
      rate("etch", [](auto& b) { return b.productivity.etch.value; }),
      rate("neutralise", [](auto& b) { return b.productivity.neutralise.value; }),
      rate("vacuum", [](auto& b) { return b.productivity.vacuum.value; }),
      rate("prime", [](auto& b) { return b.productivity.prime.value; }),
      rate("coat", [](auto& b) { return b.productivity.coat.value; }),
      rate("unmask", [](auto& b) { return b.productivity.unmask.value; }),
      {"/productivity/mask",
       "50 ft/h",
       15.24,
       [](auto& b) { return b.productivity.mask.value.in(units::metres_per_hour); }},
      {"/productivity/drain_pump",
       "15 m3/h",
       15,
       [](auto& b) { return b.productivity.drain_pump.value.in(units::cubic_metres_per_hour); }},
      time("/productivity/set_out", [](auto& b) { return b.productivity.set_out.value; }),
      time("/productivity/coating_test", [](auto& b) { return b.productivity.coating_test.value; }),
      time("/productivity/dryness_test", [](auto& b) { return b.productivity.dryness_test.value; }),
      time("/productivity/refit", [](auto& b) { return b.productivity.refit.value; }),
      time("/productivity/fill", [](auto& b) { return b.productivity.fill.value; }),
      time("/productivity/start_up", [](auto& b) { return b.productivity.start_up.value; }),
      time("/productivity/handover", [](auto& b) { return b.productivity.handover.value; }),
      time("/productivity/daily_set_up",
           [](auto& b) { return b.productivity.daily_set_up.value; })};
}

std::vector<Effect> of_weather_and_thresholds() {
  return {
      time("/weather/shell_lag", [](auto& b) { return b.weather.shell_lag.value; }),
      time("/weather/heavy_rain_within", [](auto& b) { return b.weather.heavy_rain_within.value; }),
      {"/weather/least_rain",
       "0.3 mm",
       0.3,
       [](auto& b) { return b.weather.least_rain.value.in(units::millimetres); }},
      {"/weather/heavy_rain",
       "30 mm",
       30,
       [](auto& b) { return b.weather.heavy_rain.value.in(units::millimetres); }},
      {"/weather/frost",
       "3 C",
       3,
       [](auto& b) { return b.weather.frost.value.in(units::celsius); }},
      time("/thresholds/cement_age", [](auto& b) { return b.thresholds.cement_age.value; }),
      {"/thresholds/lead_until", 1986, 1986, [](auto& b) { return b.thresholds.lead_until.value; }},
      reach("crack_hairline", [](auto& b) { return b.thresholds.crack_hairline.value; }),
      reach("crack_widest", [](auto& b) { return b.thresholds.crack_widest.value; }),
      reach("divot_filler", [](auto& b) { return b.thresholds.divot_filler.value; }),
      reach("crack_opening", [](auto& b) { return b.thresholds.crack_opening.value; }),
      reach("crack_worked", [](auto& b) { return b.thresholds.crack_worked.value; }),
      reach("render_thickness", [](auto& b) { return b.thresholds.render_thickness.value; }),
      reach("old_film", [](auto& b) { return b.thresholds.old_film.value; }),
      reach("abraded_film", [](auto& b) { return b.thresholds.abraded_film.value; }),
      {"/thresholds/filler_work",
       "40 min",
       40,
       [](auto& b) { return b.thresholds.filler_work.value.in(units::minutes); }},
      {"/thresholds/filler_batch",
       "0.6 L",
       0.6,
       [](auto& b) { return b.thresholds.filler_batch.value.in(units::litres); }},
      {"/thresholds/mortar_density",
       "1900 g/L",
       1900,
       [](auto& b) { return b.thresholds.mortar_density.value.in(units::grams_per_litre); }},
      {"/thresholds/film_density",
       "1300 g/L",
       1300,
       [](auto& b) { return b.thresholds.film_density.value.in(units::grams_per_litre); }},
      part("strip_share", [](auto& b) { return b.thresholds.strip_share.value; }),
      part("prime_share", [](auto& b) { return b.thresholds.prime_share.value; }),
      part("drummy_share", [](auto& b) { return b.thresholds.drummy_share.value; })};
}

std::vector<Effect> all_effects() {
  std::vector<Effect> all;
  for (const auto& part_of : {of_systems(),
                              of_pot_lives(),
                              of_use(),
                              of_mixing(),
                              of_etch_rows(),
                              of_limits(),
                              of_chemicals(),
                              of_wash_chemicals(),
                              of_weekdays(),
                              of_packs_and_money(),
                              of_counts_and_overheads(),
                              of_productivity(),
                              of_waits(),
                              of_weather_and_thresholds()}) {
    all.insert(all.end(), part_of.begin(), part_of.end());
  }
  return all;
}

RateBook book_with(const json& file) {
  Problems problems;
  auto book = rates(file.dump(1), problems);
  INFO(told(problems));
  REQUIRE(book.has_value());
  CHECK(problems.empty());
  return *book;
}

}  // namespace

TEST_CASE("each number of a rate book changes what it names") {
  const json whole = json::parse(contents("tests/readers/full-rates.json"));
  const RateBook before = book_with(whole);
  for (const Effect& effect : all_effects()) {
    INFO(effect.pointer);
    json changed = whole;
    REQUIRE(changed.at(json::json_pointer(effect.pointer)) != effect.written);
    changed[json::json_pointer(effect.pointer)] = effect.written;
    const RateBook after = book_with(changed);
    CHECK(effect.get(before) != Approx(effect.expected));
    CHECK(effect.get(after) == Approx(effect.expected).epsilon(1e-12));
  }
}

TEST_CASE("no number of a rate book is without such a check") {
  const std::set<std::string> texts{
      "/$schema", "/basinwright_rates", "/name", "/units", "/currency", "/tax/name"};
  std::set<std::string> checked;
  for (const Effect& effect : all_effects()) checked.insert(effect.pointer);
  const json leaves = json::parse(contents("tests/readers/full-rates.json")).flatten();
  for (const auto& [pointer, value] : leaves.items()) {
    INFO(pointer);
    const std::string key = pointer.substr(pointer.rfind('/') + 1);
    const bool text = texts.contains(pointer) || key == "supplier" || key == "batch" ||
                      key == "item" || key == "task" || key == "source" || key == "name" ||
                      pointer.find("/on/") != std::string::npos ||
                      pointer.find("/hardeners/") != std::string::npos;
    const bool other_pack = pointer.find("packs/") != std::string::npos &&
                            (key == "price" || key == "stock" || key == "size");
    if (!text && !other_pack) CHECK(checked.contains(pointer));
  }
}

TEST_CASE("each text of a rate book is where it belongs") {
  const RateBook b = book_with(json::parse(contents("tests/readers/full-rates.json")));
  CHECK(b.name == "Book with every key");
  CHECK(b.currency.name() == "EUR");
  CHECK(b.tax->name == "VAT");
  CHECK(b.tax->other_rates[0].name == "VAT on labour");
  CHECK(b.tax->other_rates[0].on == std::vector<std::string>{"labour", "hire"});
  CHECK(sheet(b).name == "Two Part");
  CHECK(sheet(b).sheet == "Sheet 4, revision 2");
  CHECK(sheet(b).hardeners == std::vector<std::string>{"standard", "winter"});
  CHECK(b.items.at("Two Part").packs[0].supplier == "North Store");
  CHECK(b.items.at("Two Part").packs[0].batch == "A1");
  CHECK(b.items.at("bicarbonate").packs[0].supplier == "South Store");
  CHECK(b.items.at("thinner").packs[0].price.minor() == 1370);
  CHECK(b.items.at("mortar").packs[0].size == 25'000);
  CHECK(b.suppliers[0].name == "North Store");
  CHECK(b.hire[0].item == "grinder");
  CHECK(b.hire[0].task == "abrade");
  CHECK(b.consumables[0].item == "roller cover");
  CHECK(b.protection[0].item == "gloves, pair");
}

TEST_CASE("the other ways to say a price and a strength") {
  const RateBook b = book_with(json::parse(contents("tests/readers/other-rates.json")));
  CHECK(b.overheads.margin->millionths == 180'000);
  CHECK_FALSE(b.overheads.markup.has_value());
  CHECK(b.chemicals.hypochlorite_trade_percent.value == 11.5);
  // 20 degrees Baume is 31.45 % by mass (trade grades, from memory).
  CHECK(b.chemicals.acid.value.in_percent() == Approx(31.45).margin(0.04));
  CHECK(b.chemicals.acid.source.place == "/chemicals/acid/degrees_baume");
  CHECK(b.chemicals.hypochlorite_trade_percent.source.place ==
        "/chemicals/hypochlorite/trade_percent");
}

// 9.977 mol/L is 31.45 % (CRC table of densities); 11.3 % of sodium hypochlorite by weight at
// 1.155 kg/L holds 0.9525 x 130.5 = 124.3 g/L of available chlorine (Cl2 over NaOCl by weight).
TEST_CASE("labels by moles and by weight") {
  const RateBook b = book_with(json::parse(contents("tests/readers/label-rates.json")));
  CHECK(b.chemicals.acid.value.in_percent() == Approx(31.45).margin(0.01));
  const auto stock = basinwright::job::chlorine_stock_of(b.chemicals);
  const auto& liquid = std::get<basinwright::chemistry::ChlorineStock>(stock).liquid;
  REQUIRE(liquid);
  CHECK(liquid->in(units::grams_per_litre) == Approx(124.3).epsilon(1e-3));
}

// Granules are bought by weight: 327 IAC 8-3.4-24 table 24-1 reckons with 65 %.
TEST_CASE("granules are sold by weight and need no label") {
  json file = plain_rates();
  file["chemicals"] = json::parse(R"({"hypochlorite": {"kind": "calcium_hypochlorite",
    "packs": [{"size": "10 kg", "price": "50.00"}]}})");
  const RateBook b = book_with(file);
  const auto stock = basinwright::job::chlorine_stock_of(b.chemicals);
  CHECK(std::get<basinwright::chemistry::ChlorineStock>(stock).solid->in_percent() == Approx(65));
  file["chemicals"]["hypochlorite"]["packs"][0]["size"] = "10 L";
  CHECK(problems_of_rates(file) == Found{"wrong-unit /chemicals/hypochlorite/packs/0/size"});
}

// No such acid, bleach or soda is sold: the CRC table ends at 40 %, liquids keep to about 20 %.
TEST_CASE("hostile labels are refused where they stand") {
  const auto refused = [](const char* chemicals, const std::string& code, const char* at) {
    json file = plain_rates();
    file["chemicals"] = json::parse(chemicals);
    INFO(chemicals);
    CHECK(problems_of_rates(file) == Found{code + " /chemicals/" + at});
  };
  refused(R"({"acid": {"strength": "0 %"}})", "not-positive", "acid/strength");
  refused(R"({"acid": {"strength": "60 %"}})", "out-of-range", "acid/strength");
  refused(R"({"acid": {"strength": "-5 %"}})", "not-positive", "acid/strength");
  refused(R"({"acid": {"degrees_baume": 29}})", "out-of-range", "acid/degrees_baume");
  refused(R"({"acid": {"degrees_baume": 0}})", "not-positive", "acid/degrees_baume");
  refused(R"({"acid": {"mol_per_litre": 14}})", "out-of-range", "acid/mol_per_litre");
  refused(R"({"acid": {"strength": "30 %", "degrees_baume": 20}})", "facts-clash", "acid/strength");
  refused(R"({"acid": {"mol_per_litre": 9, "degrees_baume": 20}})",
          "facts-clash",
          "acid/degrees_baume");
  refused(R"({"bicarbonate": {"strength": "0 %"}})", "not-positive", "bicarbonate/strength");
  refused(R"({"bicarbonate": {"strength": "101 %"}})", "out-of-range", "bicarbonate/strength");
  refused(R"({"hypochlorite": {"strength": "26 %"}})", "out-of-range", "hypochlorite/strength");
  refused(R"({"hypochlorite": {"kind": "calcium_hypochlorite", "strength": "99.9 %"}})",
          "out-of-range",
          "hypochlorite/strength");
  refused(
      R"({"hypochlorite": {"kind": "available_by_weight"}})", "missing-key", "hypochlorite/kind");
  refused(R"({"hypochlorite": {"kind": "calcium_hypochlorite", "trade_percent": 12}})",
          "facts-clash",
          "hypochlorite/kind");
}

TEST_CASE("every given value names its place") {
  const std::string text = contents("tests/readers/full-rates.json");
  const RateBook b = book_with(json::parse(text));
  const auto given = [&](const basinwright::sources::Source& source, const std::string& pointer) {
    INFO(pointer);
    CHECK(source.kind == basinwright::sources::Kind::given);
    CHECK(source.place == pointer);
    CHECK(readers::place_of({"r", text}, source.place).line > 1);
  };
  given(b.productivity.coat.source, "/productivity/coat");
  given(sheet(b).cover_high.source, "/coating_systems/Two Part/cover/1");
  given(sheet(b).primer.window_min.source, "/coating_systems/Two Part/primer/window/0");
  given(sheet(b).least_coats.source, "/coating_systems/Two Part/coats");
  given(b.chemicals.neutralise.bicarbonate.source, "/chemicals/bicarbonate/area_per_kg");
  given(b.chemicals.hypochlorite_trade_percent.source, "/chemicals/hypochlorite/strength");
  given(b.order_confidence.source, "/order_confidence");
}
