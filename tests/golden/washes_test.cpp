// Mixes, wash water, sump and refill of whole jobs, against hand calculations from published
// figures (named beside each) and common practice.
#include <fmt/format.h>

#include "chemistry/formula.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using job::Plan;
using units::litres;

// 10 x 5 m, 1.4 m deep: 92 m2 by hand, water 0.1 m below the rim: 65 m3.
std::string text(const std::string& more) {
  return R"({"job": {"start": "2027-06-07"},
    "pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
             "floor": {"kind": "constant", "depth": "1.4 m"}},
    "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}])" +
         (more.empty() ? "" : ", " + more) + "}";
}
job::RateBook wash_book(const std::string& more = "") {
  return test::rates_of(R"({"currency": "EUR", "labour": {"hour": "40.00"})" +
                        (more.empty() ? "" : ", " + more) + "}");
}
Plan wash_plan(const std::string& job, const std::string& rates = "", bool explain = false) {
  return test::plan_of(text(job), wash_book(rates), explain);
}

const job::Addition& addition(const Plan& p, const std::string& what, int part = 1) {
  for (const auto& a : p.water.additions) {
    if (a.what == what && a.part == part) return a;
  }
  throw std::runtime_error("no " + what);
}

const char* const lead = R"("condition": {"lead_test": "clear", "algae": "normal"})";
const std::string water = R"("refill": {"analysis": {"ph": 8.0, "alkalinity": 60, "hardness": 120,
  "stabiliser": 0, "salt": 50, "temperature": "25 C"}, "salt_pool": true})";

}  // namespace

// 96.6 L of solution at 1 : 2 (1.05 L/m2): nine buckets of 10 L and one of 6.6 L; a can of 5 L
// holds 1.67 L of acid and 3.33 L of water.
TEST_CASE("a card for each bucket and can") {
  const Plan p = wash_plan(lead);
  const auto& cards = p.mixes.cards;
  const auto find = [&](const std::string& wash, const std::string& vessel) {
    for (const auto& c : cards) {
      if (c.wash == wash && c.vessel == vessel) return c;
    }
    throw std::runtime_error("no card");
  };
  const auto bucket = find("etch", "bucket");
  CHECK(bucket.full == 9);
  CHECK(bucket.water.in(litres) == Approx(6.667).epsilon(1e-3));
  CHECK(bucket.agent.in(litres) == Approx(3.333).epsilon(1e-3));
  CHECK((bucket.last_water + bucket.last_agent).in(litres) == Approx(6.6).epsilon(1e-3));
  const auto can = find("etch", "can");
  CHECK(can.full == 19);
  CHECK(can.agent.in(litres) == Approx(5.0 / 3));
  // 92 / 4.5 = 20.44 L in two buckets of 10.22 L, half a litre to 20 L of water (common practice).
  CHECK(find("degreasing-wash", "bucket").full == 2);
  CHECK(find("degreasing-wash", "bucket").agent.in(litres) == Approx(92 / 4.5 / 2 * 0.5 / 20.5));
  // 12.5 g/L from 125 g/L: a tenth (327 IAC 8-3.4-24, MIL-HDBK-1110 5.19.3).
  CHECK(find("chlorine-wash", "bucket").agent.in(litres) == Approx(1.0));
  CHECK(find("neutralising-wash", "bucket").agent_mass.in(units::kilograms) == Approx(1.0));
  // Poured and bought are the same litres.
  double acid = 0;
  for (const auto& c : cards) {
    if (c.wash == "etch" && c.vessel == "bucket")
      acid += c.full * c.agent.in(litres) + c.last_agent.in(litres);
  }
  CHECK(acid == Approx(p.quantities.etch->acid.in(litres)));
}

// 31.45 % acid: 1 : 2.485 makes 10 %, 1 : 6.129 makes 5 % (CRC densities, balance of mass); 25 000
// ppm over it; diluting to 10 % warms by 7.4 K (Parker's heats), 1 : 2 a little more.
TEST_CASE("the ratio of the trade stands beside the published one") {
  const auto e = wash_plan(lead).mixes.strengths.at(0);
  CHECK(e.published_strong->water == Approx(2.485).epsilon(1e-3));
  CHECK(e.published_mild->water == Approx(6.129).epsilon(1e-3));
  CHECK(e.by_mass.in_percent() == Approx(11.54).epsilon(1e-3));
  CHECK(e.heat.rise.in(units::kelvins) > 7.4);
  CHECK(e.heat.rise.in(units::kelvins) < 9.0);
  CHECK(e.undiluted.by_volume.count() == Approx(25000).epsilon(0.05));
  CHECK_FALSE(e.strong);
}

TEST_CASE("weak acid has no published ratio of its own") {
  const auto p = wash_plan(lead, R"("chemicals": {"acid": {"strength": "4 %"}})");
  CHECK_FALSE(p.mixes.strengths.at(0).published_strong);
  CHECK_FALSE(p.mixes.strengths.at(0).published_mild);
}

// Neat and 1 : 1 only when the data sheet asks (common practice).
TEST_CASE("neat acid is mixed and warned of only when the data sheet asks for it") {
  const std::string bare = R"({"job": {"start": "2027-06-07"},
    "pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
             "floor": {"kind": "constant", "depth": "1.4 m"}},
    "surfaces": [{"substrate": "plaster_hard", "coating": "none"}],
    "coating": {"system": "S"}})";
  const auto with = [&](const char* strong) {
    return test::plan_of(
        bare,
        wash_book(fmt::format(R"("coating_systems": {{"S": {{"strong_etch": {}}}}})", strong)));
  };
  const auto warned = [](const Plan& p) {
    return std::ranges::count(p.cautions, "neat-acid", &job::Caution::code) == 1;
  };
  const Plan neat = with("true");
  CHECK(neat.mixes.strengths.at(0).strong);
  CHECK(warned(neat));
  const Plan mild = with("false");
  CHECK_FALSE(mild.mixes.strengths.at(0).strong);
  CHECK_FALSE(warned(mild));
}

// 32.2 L of 31.45 % in 96.6 + 460 L of flush: 9.977 x 32.2 / 556.6 = 0.577 mol/L, pH 0.24,
// hazardous (40 CFR 261.22); bicarbonate water 8.34 fits pH 6 to 9 (assumed).
TEST_CASE("each wash water has a volume, a pH and a verdict") {
  const auto& d = wash_plan(lead).discharge;
  REQUIRE(d.waters.size() == 4);
  CHECK(d.waters[0].water.first == chemistry::FirstStep::take_out_chlorine);
  // 46 L at 12.5 g/L: 575 g of chlorine x 1.9 x 1.2 (AWWA tables 7-2, 7-5).
  CHECK(d.waters[0].dechlorinator.in(units::grams) == Approx(575 * 1.9 * 1.2));
  const auto& etch = d.waters[2].water;
  CHECK(etch.volume.in(litres) == Approx(556.6));
  CHECK(etch.ph.value.value() == Approx(0.24).margin(0.01));
  CHECK(etch.verdict == chemistry::Verdict::hazardous);
  CHECK(d.waters[3].water.ph.value.value() == Approx(8.34).margin(0.01));
  CHECK(d.waters[3].water.verdict == chemistry::Verdict::fits);
  CHECK(d.limits.lowest.source.kind == sources::Kind::assumed);
  // 65 m3 at 1 mg/L: 65 g of chlorine.
  CHECK(d.pool_dechlorinator.in(units::grams) == Approx(65 * 1.9));
  // 240.0 L for a litre of acid (20 C, 1 atm).
  CHECK(d.carbon_dioxide_worst.in(litres) == Approx(240.0 * 32.2).epsilon(1e-3));
  CHECK(d.of_shell_worst.in_percent() == Approx(240.0 * 32.2 / 65000 * 100).epsilon(1e-3));
}

// Grams for each litre by the published table at 25 C: pH 2 to 6.0, still 1.447 x 0.840 g.
TEST_CASE("the sump is dosed by what is read, to the limit that was entered") {
  const auto row = [](const Plan& p, double at) {
    for (const auto& r : p.discharge.sump) {
      if (r.measured == chemistry::ph(at)) return r;
    }
    throw std::runtime_error("no row");
  };
  const double water_l = 556.6;
  const auto assumed = wash_plan(lead);
  CHECK(assumed.discharge.target == chemistry::ph(6.0));
  CHECK(row(assumed, 2.0).still.in(units::grams) == Approx(0.840 * 1.447 * water_l).epsilon(2e-3));
  CHECK(row(assumed, 2.0).aerated.in(units::grams) == Approx(0.840 * water_l).epsilon(2e-3));
  CHECK(row(assumed, 1.0).fizzing < row(assumed, 1.0).still);
  const std::string lower = std::string(lead) + R"(, "site": {"sewer": {"ph_min": 5.5}})";
  CHECK(row(wash_plan(lower), 2.0).still.in(units::grams) ==
        Approx(0.840 * 1.141 * water_l).epsilon(2e-3));
  // 40 CFR 403.5(b)(2): never under 5.0, whatever was entered.
  const auto lax = wash_plan(std::string(lead) + R"(, "site": {"sewer": {"ph_min": 4}})");
  CHECK(lax.discharge.target == chemistry::ph(5.0));
  CHECK(lax.discharge.limits_refused);
  CHECK(std::ranges::count(lax.cautions, "sewer-floor", &job::Caution::code) == 1);
  const auto half = wash_plan(lead, R"("chemicals": {"bicarbonate": {"strength": "50 %"}})");
  CHECK(row(half, 2.0).still.in(units::grams) ==
        Approx(2 * row(assumed, 2.0).still.in(units::grams)));
}

// The same balance of charge at a higher limit: carbon dioxide that stays holds half the target
// back.
TEST_CASE("the sump is dosed to a limit above 7 too, and by what was read in it") {
  const auto at = [&](const char* sewer) {
    return wash_plan(fmt::format(R"({}, "site": {{"sewer": {{{}}}}})", lead, sewer)).discharge;
  };
  const auto high = at(R"("ph_min": 7.5)");
  CHECK(high.target == chemistry::ph(7.5));
  // Under air 0.01 mol/L and 1.4e-5 x 10^(7.5 - 6.352) = 1.97e-4 mol/L of bicarbonate: 84.006 g.
  CHECK(high.sump.at(2).measured == chemistry::ph(2.0));
  CHECK(high.sump.at(2).aerated.in(units::grams) ==
        Approx((0.01 + 1.97e-4) * 84.006 * 556.6).epsilon(2e-3));
  CHECK_FALSE(high.beyond_bicarbonate);
  const auto beyond = at(R"("ph_min": 8.6, "ph_max": 9.5)");
  CHECK(beyond.beyond_bicarbonate);
  CHECK(beyond.target == chemistry::ph(8.3));
  // 400 L at pH 1.5: 0.03162 mol/L x 84.006 g x 400 L, blown with air to pH 6 (0.840 g a
  // centimole).
  const auto read = at(R"("sump_ph": 1.5, "sump_volume": "400 L")");
  CHECK(read.reading == job::SumpReading::dosed);
  CHECK(read.sump.front().measured == chemistry::ph(1.5));
  CHECK(read.sump.front().aerated.in(units::grams) ==
        Approx(0.031623 * 84.006 * 400).epsilon(2e-3));
  CHECK(std::ranges::count(read.sump, chemistry::ph(1.5), &job::SumpRow::measured) == 1);
  CHECK(at(R"("sump_ph": 5.2)").reading == job::SumpReading::little_by_little);
  CHECK(at(R"("sump_ph": 6.4)").reading == job::SumpReading::inside);
  CHECK(at(R"("sump_ph": 9.4)").reading == job::SumpReading::too_alkaline);
  CHECK(at("").reading == job::SumpReading::none);
}

// Whole packs for each use of a chemical. Thiosulfate 1.9 and a fifth more (AWWA tables 7-2, 7-5);
// 838.1 g of bicarbonate for a litre of acid; doses by stoichiometry (10 NYCRR 6-1.30).
TEST_CASE("what the sump and the new water take is bought too, each for its use") {
  const std::string packs = R"("packs": {
    "acid": [{"size": "10 L", "price": "20.00"}],
    "bicarbonate": [{"size": "25 kg", "price": "30.00", "stock": 2}],
    "calcium chloride": [{"size": "10 kg", "price": "15.00"}],
    "salt": [{"size": "25 kg", "price": "9.00"}],
    "hypochlorite": [{"size": "5 L", "price": "8.00"}]})";
  const Plan p = wash_plan(std::string(lead) + ", " + water, packs);
  const auto bought = [&](const char* item, const char* use) {
    for (const auto& one : p.purchases) {
      if (one.item == item && one.use == use) return one;
    }
    throw std::runtime_error(std::string("no ") + item);
  };
  CHECK(bought("bicarbonate", "").need == Approx(92 * 5000 / 90.0).margin(1));
  CHECK(bought("bicarbonate", "sump").need == Approx(838.1 * 32.2).epsilon(1e-3));
  CHECK(bought("bicarbonate", "start-up").need == Approx(16.79 * 4 * 65).epsilon(1e-3));
  // Two bags are all there is: the surface and a part of the sump have them.
  CHECK(bought("bicarbonate", "").packs.at(0).count == 1);
  CHECK(bought("bicarbonate", "sump").short_stock);
  CHECK(bought("bicarbonate", "start-up").packs.at(0).count == 1);
  CHECK(bought("salt", "start-up").packs.at(0).count == 9);  // 3.15 kg/m3 x 65 m3 = 204.75 kg.
  CHECK(bought("salt", "start-up").total.minor() == 8100);
  CHECK(bought("calcium chloride", "start-up").need == Approx(14.69 * 8 * 65).epsilon(1e-3));
  // 3 mg/L in 65 m3 from 125 g/L: 1.56 L of what the chlorine wash is mixed from too.
  CHECK(bought("liquid chlorine", "start-up").need == Approx(1560));
  CHECK(bought("liquid chlorine", "start-up").total.minor() == 800);
  CHECK(bought("thiosulfate", "chlorine-wash").need == Approx(575 * 1.9 * 1.2).margin(1));
  CHECK(bought("acid", "start-up").need > 0);
  CHECK(p.unpriced == std::vector<std::string>{
                          "degreaser", "coating", "thiosulfate", "bicarbonate", "stabiliser"});
}

// Common practice: somebody pours, waits and reads, so nothing goes in on a day off; the quiet days
// are past first (data sheet), and nobody swims before the last of it.
TEST_CASE("additions keep off the days off") {
  const Plan p = wash_plan(std::string(lead) + ", " + water +
                           R"(, "calendar": {"closed": ["2027-07-05", "2027-07-06"]})");
  const job::Job job = test::job_of(text(std::string(lead) + ", " + water));
  dates::Date last = *p.water.full;
  for (const auto& a : p.water.additions) {
    INFO(a.what << " " << dates::iso(*a.day));
    CHECK(job.calendar.works_on(*a.day));
    CHECK(dates::iso(*a.day) != "2027-07-05");
    CHECK(dates::iso(*a.day) != "2027-07-06");
    last = std::max(last, *a.day);
  }
  CHECK(p.programme.first_swim > last);
  const auto handover =
      std::ranges::find(p.programme.bookings, "handover", &sequence::Booking::task);
  CHECK(handover->start.date() >= p.programme.first_swim);
  const auto full = p.programme.refill_done.quarters();
  CHECK(dates::Moment(*p.water.quiet_until, 0).quarters() - full >=
        static_cast<std::int64_t>(p.system.quiet_start.value.in(units::hours)*4));
}

// Granules of 65 %: 575 g of chlorine in 0.885 kg.
TEST_CASE("the chlorine wash from granules") {
  const auto p =
      wash_plan(lead, R"("chemicals": {"hypochlorite": {"kind": "calcium_hypochlorite"}})");
  CHECK(p.quantities.chlorine_wash->granules.in(units::kilograms) == Approx(0.575 / 0.65));
  CHECK(std::ranges::count(p.cautions, "acid-and-granules", &job::Caution::code) == 1);
  CHECK(p.purchases.front().item == "hypochlorite");
  CHECK(p.purchases.front().need == 885);
}

// 65 m3 at 20 L/min: 54.17 h; 65 m3 are 22.95 HCF, 17.17 thousand US gallons (NIST HB 44 App. C).
TEST_CASE("the fill, its hours and what the meter counts") {
  const auto in = [](const char* unit) {
    return wash_plan(
        fmt::format(R"({}, "refill": {{"water_price": "2.00", "water_unit": "{}"}})", lead, unit));
  };
  CHECK(in("m3").water.fill_time.in(units::hours) == Approx(54.17).epsilon(1e-3));
  CHECK(in("m3").water.billed == Approx(65));
  CHECK(in("kL").water.cost->minor() == 13000);
  CHECK(in("HCF").water.billed == Approx(22.955).epsilon(1e-3));
  CHECK(in("HCF").water.cost->minor() == 4591);
  CHECK(in("1000_US_gal").water.billed == Approx(17.171).epsilon(1e-3));
}

// Common practice: nothing but chlorine or salt in the first days, then one chemical at a time.
// Bicarbonate 16.79 g/m3 and flake 14.69 g/m3 for 10 mg/L, salt 1 kg/m3 for 1000 mg/L.
TEST_CASE("the start-up goes in order, in steps that do not overshoot") {
  const Plan p = wash_plan(std::string(lead) + ", " + water);
  std::vector<std::string> order;
  for (const auto& a : p.water.additions) {
    if (a.part == 1) order.push_back(a.what);
  }
  CHECK(order ==
        std::vector<std::string>{
            "chlorine-liquid", "bicarbonate", "ph-acid", "calcium-chloride", "stabiliser", "salt"});
  const auto full_mass = [&](const char* what) {
    return (addition(p, what).mass + addition(p, what, 2).mass).in(units::kilograms);
  };
  CHECK(full_mass("bicarbonate") == Approx(0.01679 * 4 * 65).epsilon(1e-3));
  CHECK(full_mass("calcium-chloride") == Approx(0.01469 * 8 * 65).epsilon(1e-3));
  CHECK(full_mass("salt") == Approx(3.15 * 65).epsilon(1e-3));
  CHECK(addition(p, "bicarbonate").to == Approx(80));
  CHECK(addition(p, "bicarbonate", 2).to == Approx(100));
  dates::Date before = p.water.full.value();
  for (const auto& a : p.water.additions) {
    CHECK(a.day.value() >= before);
    if (a.what != "chlorine-liquid") CHECK(a.day.value() >= p.water.quiet_until.value());
    before = a.day.value();
  }
  for (std::size_t i = 1; i + 1 < p.water.additions.size(); ++i) {
    const auto& one = p.water.additions[i];
    const auto& next = p.water.additions[i + 1];
    if (one.what != next.what) CHECK(one.day.value() < next.day.value());
  }
}

TEST_CASE("nothing is added for a figure that nobody measured") {
  const Plan p = wash_plan(lead);
  CHECK(p.water.measure_first == std::vector<std::string>{"ph", "alkalinity", "hardness"});
  for (const auto& a : p.water.additions) {
    CHECK((a.what == "chlorine-liquid" || a.what == "stabiliser"));
  }
}

// The worked row of the operator course: TA 75, pH 7.6, CH 300, 84 F gives +0.2 by the table.
TEST_CASE("saturation by the table and by the equations, each named") {
  const Plan p =
      wash_plan(std::string(lead) +
                R"(, "refill": {"analysis": {"ph": 7.6, "alkalinity": 75, "hardness": 300,
                          "temperature": "84 F"}})");
  REQUIRE(p.water.indices.size() == 8);
  CHECK(p.water.indices[0].water == "fill");
  CHECK(p.water.indices[0].method == "table");
  CHECK(p.water.indices[0].value.value() == Approx(0.2).margin(0.05));
  CHECK(p.water.indices[2].method == "equations");
  CHECK(p.water.indices[2].value.value() == Approx(0.2).margin(0.15));
  // With stabiliser at its target the corrected index is the lower one.
  CHECK(p.water.indices[7].value.value() < p.water.indices[6].value.value());
}

TEST_CASE("every number of washes and water is explained by its formula") {
  const Plan p = wash_plan(std::string(lead) + ", " + water, "", true);
  for (const char* key : {"quantities.mixes.etch.all_bucket_agent_l",
                          "quantities.wash_water.etch_l",
                          "quantities.wash_water.thiosulfate_kg",
                          "quantities.sump.ph_2_0.still_kg",
                          "quantities.sump.carbon_dioxide_share",
                          "quantities.sump.carbon_dioxide_worst_l",
                          "quantities.sump.ph_2_0.carbon_dioxide_l",
                          "quantities.wash_water.chlorine_gas_l",
                          "quantities.etch.acid_content",
                          "quantities.mixes.etch.all_mass_share",
                          "quantities.mixes.etch.published_10_water_parts",
                          "quantities.refill.hours",
                          "quantities.refill.billed_units",
                          "quantities.start_up.bicarbonate_kg",
                          "quantities.start_up.ph_acid_l",
                          "quantities.saturation.target.equations_corrected"}) {
    INFO(key);
    CHECK(p.trace.find(key) != nullptr);
  }
  for (const trace::Step& step : p.trace.steps()) {
    INFO(step.key << " = " << step.formula);
    CHECK(chemistry_rows::Formula(step).value() ==
          Approx(step.value.si).epsilon(1e-9).margin(1e-12));
    for (const trace::Input& input : step.inputs) {
      if (input.from.empty()) continue;
      INFO("operand " << input.name << " from " << input.from);
      REQUIRE(p.trace.find(input.from) != nullptr);
      CHECK(p.trace.find(input.from)->value.si == Approx(input.value.si).epsilon(1e-9));
    }
  }
}

// 234 m2: etch 23.4 and neutralising 15.6 person-hours (10 and 15 m2/h, assumed) in a shift of
// 8.5 h are 39 / 8.5 = 4.6: five people, in one shift; four need two days.
TEST_CASE("an etch larger than a shift says how many people would do it in one") {
  const auto with = [](int people) {
    return test::plan_of(fmt::format(R"({{"job": {{"start": "2027-06-07"}},
      "pool": {{"outline": {{"kind": "rectangle", "length": "16 m", "width": "9 m"}},
               "floor": {{"kind": "constant", "depth": "1.8 m"}}}},
      "surfaces": [{{"coating": "epoxy", "acetone_test": "untouched"}}],
      "condition": {{"lead_test": "clear"}},
      "crew": {{"people": {}, "painters": 4, "working_days":
        ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday"]}}}})",
                                     people),
                         wash_book());
  };
  const auto days = [](const Plan& p) {
    std::vector<dates::Date> out;
    for (const auto& b : p.programme.bookings) {
      if (b.task.starts_with("etch-") || b.task == "neutralise") {
        CHECK(b.start.date() == b.end.date());
        out.push_back(b.start.date());
      }
    }
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out.size();
  };
  const Plan four = with(4);
  CHECK(four.people_for_one_etch == 5);
  CHECK(days(four) == 2);
  CHECK(days(with(5)) == 1);
}
