// The other three examples, worked by hand from the tape measurements and the rate book's values:
// feet and inches as the US job has them, metres elsewhere. No number here was read off the tool.
#include <algorithm>
#include <sstream>
#include <stdexcept>

#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"
#include "units/outside.hpp"

namespace {

using namespace basinwright;
using units::litres;
using units::square_metres;

constexpr double square_foot = 0.3048 * 0.3048;  // m2
constexpr double gallon = 3.785411784;           // L, 231 cubic inches
constexpr double pound = 0.45359237;             // kg

job::Plan l_shape() {
  return test::plan_of(test::file_text("examples/l-shape-us.json"),
                       test::rates_of(test::file_text("examples/l-shape-us.rates.json")));
}
job::Plan metric(const std::string& name) {
  return test::plan_of(test::file_text("examples/" + name + ".json"), test::demonstration());
}

const sequence::Booking& booking(const job::Plan& plan, const std::string& task) {
  const auto it = std::ranges::find(plan.programme.bookings, task, &sequence::Booking::task);
  if (it == plan.programme.bookings.end()) throw std::runtime_error("no " + task);
  return *it;
}

double hours(const job::Plan& plan, const std::string& task) {
  const auto& b = booking(plan, task);
  return static_cast<double>(b.end.quarters() - b.start.quarters()) / 4;
}

double person_hours(const job::Plan& plan, const std::string& task) {
  const auto it = std::ranges::find(plan.labour, task, &quote::LabourLine::task);
  return it == plan.labour.end() ? 0.0 : it->person_hours.in(units::hours);
}

// Of one use: the shell's own where none is said.
std::int64_t packs(const job::Plan& plan, const std::string& item, const std::string& use = "") {
  std::int64_t out = 0;
  for (const auto& p : plan.purchases) {
    if (p.item != item || p.use != use) continue;
    for (const auto& pack : p.packs) out += pack.count;
  }
  return out;
}

std::int64_t minor(const job::Plan& plan, const std::string& what) {
  const auto it = std::ranges::find(plan.price->lines, what, &quote::Line::what);
  return it == plan.price->lines.end() ? 0 : it->amount.minor();
}

std::int64_t count_in(const std::vector<quote::Counted>& list, const std::string& item) {
  const auto it =
      std::ranges::find_if(list, [&](const auto& counted) { return counted.rule.item == item; });
  return it == list.end() ? -1 : it->count;
}

}  // namespace

TEST_CASE("L-shaped pool, areas and water by hand, in feet") {
  const auto plan = l_shape();
  const auto& t = plan.take_off.total;
  // 36 x 21.5 less the notch 13 x 8.
  CHECK(t.plan_area.in(square_metres) / square_foot == Approx(670).margin(1e-9));
  CHECK(t.perimeter.in(units::metres) / 0.3048 == Approx(115).margin(1e-9));
  // 430 ft2 at a slope of 1 in 20, 240 ft2 at 2.5 in 16: 430 x 1.0012492 + 240 x 1.0121327.
  CHECK(t.floor_area.in(square_metres) / square_foot == Approx(673.4490).margin(5e-4));
  // Long side 20 x 4 + 16 x 5.75 - 18 = 154; deep end 13.5 x 6.5 = 87.75; along the notch 13 x
  // (5.984375 - 0.5) = 71.296875; beside it 8 x 4.46875 = 35.75; far side 80 + 3 x 4.734375 - 11.5
  // = 82.703125; shallow end 64.5.
  CHECK(t.wall_area.in(square_metres) / square_foot == Approx(496.0).margin(1e-9));
  // (pi / 2 - 2) x 1/3 x 115.
  CHECK(t.cove_area_change.in(square_metres) / square_foot == Approx(-16.4530).margin(5e-4));
  // And 3 ft2 of skimmer throat, less 2 ft2 of niches.
  CHECK(plan.take_off.painted.in(square_metres) / square_foot == Approx(1153.9960).margin(1e-3));
  // 430 x 4 + 344 x 5.75 - 104 x 5.984375 = 3075.625 ft3 to the rim; less 670/3; less (1 - pi/4) x
  // 115/9.
  CHECK(t.water_volume.in(litres) / gallon == Approx(2849.550 * 1728 / 231).epsilon(1e-6));
}

TEST_CASE("L-shaped pool, washes, repairs, kits and readings by hand") {
  const auto plan = l_shape();
  const auto& q = plan.quantities;
  const double area = 1153.9960;  // ft2
  REQUIRE(q.chlorine_wash.has_value());
  // 12.5 g/L out of 125 g/L: a tenth is the liquid.
  CHECK(q.chlorine_wash->liquid.in(litres) / gallon == Approx(area * 0.012 / 10).epsilon(1e-6));
  // 16 fl oz to 5 gal, a gallon of mix for 180 ft2.
  CHECK(q.degrease->concentrate.in(litres) / gallon ==
        Approx(area / 180 * 0.125 / 5.125).epsilon(1e-6));
  CHECK(q.etch->solution.in(litres) / gallon == Approx(30.0039).epsilon(1e-5));
  CHECK(q.etch->acid.in(litres) / gallon == Approx(10.0013).epsilon(1e-5));
  CHECK(q.etch->wall_solution.in(litres) / gallon == Approx(19.8026).epsilon(1e-5));
  CHECK(q.neutralise->surface.bicarbonate.in(units::kilograms) == Approx(area / 190).epsilon(1e-6));
  // 363.7 g HCl a litre (CRC, 31.45 %), 2.3042 g of bicarbonate each, 99 % pure: 70.66 lb.
  CHECK(q.neutralise->sump_worst.in(units::kilograms) / pound == Approx(70.66).margin(0.05));
  // The V: 0.5 in deep and wide at the top twice that, 132 in long = 33 in3; four divots of 72 in2
  // x 0.25 in.
  CHECK(q.filler.litres.in(litres) / gallon == Approx((33.0 + 72.0) / 231).epsilon(1e-6));
  CHECK(q.filler.batches == 4);  // 3.64 pints, a pint at a time
  CHECK_FALSE(q.primer.has_value());
  REQUIRE(q.coats.size() == 3);
  for (const auto& coat : q.coats) CHECK(coat.kits == 5);  // 1154 / 255 = 4.53
  CHECK(q.coats[0].thinner.in(litres) / gallon == Approx(25.0 / 128).epsilon(1e-6));
  CHECK(q.readings.surface_ph == 6);      // two for each of 2.31 x 500 ft2
  CHECK(q.readings.dryness_sheets == 3);  // one for each
}

TEST_CASE("L-shaped pool, packs, counts and the price ladder by hand") {
  const auto plan = l_shape();
  CHECK(packs(plan, "coating") == 15);
  CHECK(packs(plan, "hypochlorite") == 2);  // 1.385 gal
  CHECK(packs(plan, "degreaser") == 1);     // 0.156 gal in a quart
  CHECK(packs(plan, "filler") == 4);        // 3.64 pints
  CHECK(packs(plan, "acid") == 5);          // 10.0013 gal: 2 x 4 + 3 x 1 = 97.40; 3 x 4 = 102.00
  CHECK(packs(plan, "thinner") == 1);       // 0.195 gal in a quart
  // 10.0013 gal x 3.785412 L x 0.8381 kg / 0.99 = 32.05 kg, 70.66 lb: six bags of 12 lb.
  CHECK(packs(plan, "bicarbonate", "sump") == 6);
  // 80.69 m3 from 62 to 100 mg/L: 1.6787 x 38 x 80.69 / 0.99 = 5.20 kg, 11.46 lb.
  CHECK(packs(plan, "bicarbonate", "start-up") == 1);
  // From 96 to 200 mg/L: 1.4688 x 104 x 80.69 g = 12.33 kg, 27.2 lb of flake in bags of 8 lb.
  CHECK(packs(plan, "calcium chloride", "start-up") == 4);
  CHECK(packs(plan, "stabiliser", "start-up") == 2);         // 30 mg/L: 2.42 kg, 5.34 lb, in 4 lb
  CHECK(count_in(plan.consumables, "abrasive disc") == 31);  // 0.026 x 1154 ft2 = 30.004
  CHECK(count_in(plan.consumables, "tape, 180 ft") == 1);    // 115 ft x 0.0056 = 0.64
  CHECK(count_in(plan.consumables, "rags, pack") == 3);      // 0.002 x 1154 = 2.31
  CHECK(count_in(plan.protection, "coverall") == 9);         // three painters
  CHECK(person_hours(plan, "abrade") == Approx(27.4761).margin(1e-3));  // 1154 / 42
  CHECK(person_hours(plan, "coat-2") == Approx(5.4952).margin(1e-3));   // / 210
  CHECK(person_hours(plan, "vacuum") ==
        Approx(3 * 2.7476).margin(1e-3));  // / 420, before each coat
  CHECK(person_hours(plan, "mask") == Approx(115.0 / 70).margin(1e-9));
  // Water on the meter: 80.690 m3 over 2.831685 are 28.495 HCF, at 4.90.
  CHECK(minor(plan, "fill water") == 13963);
  std::int64_t cost = 0;
  for (const char* line : {"materials",
                           "consumables",
                           "protection",
                           "labour",
                           "hire",
                           "disposal",
                           "travel",
                           "fill water"}) {
    cost += minor(plan, line);
  }
  CHECK(minor(plan, "contingency") == (cost * 5 + 50) / 100);
  // A margin of 22 % of the price: cost / 0.78.
  const auto before = cost + minor(plan, "contingency");
  CHECK(minor(plan, "margin") == (before * 100 + 39) / 78 - before);
  CHECK(plan.price->net.minor() == before + minor(plan, "margin"));
  // Labour and travel are free of tax, with their part of what is laid on the cost: of two parts
  // the odd cent goes where the larger fraction is.
  const std::int64_t free = minor(plan, "labour") + minor(plan, "travel");
  const std::int64_t taxed = (2 * plan.price->net.minor() * (cost - free) + cost) / (2 * cost);
  CHECK(plan.price->taxes.at(0).net.minor() == taxed);
  CHECK(plan.price->tax.minor() == (taxed * 625 + 5000) / 10000);
}

TEST_CASE("L-shaped pool, cure and fill by hand") {
  const auto plan = l_shape();
  REQUIRE(plan.programme.feasible);
  // 29 and 30 April at 61 F: 1/14 + 11/18 x 1/14 a day for 38 h is 0.1822; the rest at 68 F, a
  // seventh a day: 5.7245 days of May, to the next quarter.
  CHECK(dates::iso(booking(plan, "cure").start) == "2027-04-29T10:00");
  CHECK(dates::iso(booking(plan, "cure").end) == "2027-05-06T17:30");
  CHECK(hours(plan, "fill") == 39.5);   // 21,316 gal at 9 gal/min: 39.47 h
  CHECK(hours(plan, "coat-1") == 2.0);  // 5.495 / 3 painters = 1.83 h
}

TEST_CASE("freeform pool, the outline walked in a million steps agrees") {
  if (!outside::has_python()) return;
  const auto out = outside::python_lines("golden/freeform_by_points.py", "");
  REQUIRE(out.has_value());
  REQUIRE(out->size() == 1);
  std::istringstream numbers(out->front());
  double perimeter = 0.0, plan_area = 0.0, floor = 0.0, walls = 0.0, water = 0.0;
  numbers >> perimeter >> plan_area >> floor >> walls >> water;
  REQUIRE(numbers);
  const auto plan = metric("freeform-southern-summer");
  const auto& t = plan.take_off.total;
  // The script prints five decimals and its steps are 0.1 mm.
  CHECK(t.perimeter.in(units::metres) == Approx(perimeter).margin(2e-5));
  CHECK(t.plan_area.in(square_metres) == Approx(plan_area).margin(2e-5));
  CHECK(t.floor_area.in(square_metres) == Approx(floor).margin(2e-5));
  CHECK(t.wall_area.in(square_metres) == Approx(walls).margin(2e-5));
  CHECK(t.water_volume_before_cove.in(units::cubic_metres) == Approx(water).margin(2e-5));
}

TEST_CASE("freeform pool, bare pebble in a southern summer, by hand") {
  const auto plan = metric("freeform-southern-summer");
  const auto& q = plan.quantities;
  const double area = 102.5868;  // 63.8649 + 39.9993 + (pi / 2 - 2) x 0.1 x 29.7643
  CHECK(plan.take_off.painted.in(square_metres) == Approx(area).margin(1e-3));
  // Pebble: three of water to one of acid, 1.2 times 1.05 L/m2.
  CHECK(q.etch->acid.in(litres)*3 == Approx(q.etch->water.in(litres)).epsilon(1e-9));
  CHECK(q.etch->solution.in(litres) == Approx(area * 1.05 * 1.2).margin(0.01));
  // All bare: primed, 102.59 / 22.5 = 4.56 kits, and no thinned coat.
  REQUIRE(q.primer.has_value());
  CHECK(q.primer->kits == 5);
  CHECK(q.kits == 10);
  CHECK(q.coats[0].thinner.in(litres) == 0.0);
  // 22 C and warmer: the seven days of the warm table. Fill: 84,097 L at 22 L/min, 63.71 h.
  CHECK(hours(plan, "cure") == 7 * 24.0);
  CHECK(hours(plan, "fill") == 63.75);
  // Painting in December between six and nine.
  for (const char* coat : {"prime", "coat-1", "coat-2"}) {
    INFO(coat);
    CHECK(booking(plan, coat).start.quarter() >= 6 * 4);
    CHECK(booking(plan, coat).end.quarter() <= 9 * 4);
  }
}

TEST_CASE("pool and spa by hand") {
  const auto plan = metric("pool-and-spa");
  REQUIRE(plan.take_off.bodies.size() == 2);
  const auto& pool = plan.take_off.bodies[0].take_off;
  const auto& spa = plan.take_off.bodies[1].take_off;
  // 8 x 4 less four corners, (4 - pi) x 0.64; round it 24 - 1.6 x 4 + 1.6 pi = 22.6265 m.
  CHECK(pool.floor_area.in(square_metres) == Approx(31.45062).margin(1e-5));
  CHECK(pool.wall_area.in(square_metres) == Approx(22.62655 * 1.25).margin(1e-4));
  CHECK(pool.cove_area_change.in(square_metres) ==
        Approx(-0.429204 * 0.08 * 22.62655).margin(1e-5));
  CHECK(pool.water_volume.in(units::cubic_metres) ==
        Approx(31.45062 * 1.3 - 0.214602 * 0.0064 * 22.62655).margin(1e-4));
  // pi x 1.21; 2.2 pi x 0.85; to 0.1 m under the rim.
  CHECK(spa.floor_area.in(square_metres) == Approx(3.80133).margin(1e-5));
  CHECK(spa.wall_area.in(square_metres) == Approx(5.87478).margin(1e-5));
  CHECK(spa.water_volume.in(units::cubic_metres) == Approx(3.23113).margin(1e-5));
  const double area = 68.6330;
  CHECK(plan.take_off.painted.in(square_metres) == Approx(area).margin(1e-3));
  const auto& q = plan.quantities;
  CHECK(q.etch->solution.in(litres) == Approx(area * 1.05).margin(0.01));
  CHECK(q.etch->acid.in(litres) == Approx(area * 0.35).margin(0.01));
  CHECK(q.kits == 8);               // 68.63 / 22.5 = 3.05, twice
  CHECK(packs(plan, "acid") == 3);  // 24.02 L: 3 x 9 = 64.20; 23 + 9 = 68.20
  CHECK(packs(plan, "bicarbonate") >= 2);
  // September at 15 C: 1/14 + 0.5 x 1/14 a day, 9.333 days. 44,086 L at 30 L/min, 24.49 h.
  CHECK(hours(plan, "cure") == Approx(9 * 24 + 8).margin(1e-9));
  CHECK(hours(plan, "fill") == 24.5);
  // Loose paint on 6 % of it, off before anything is made on it.
  CHECK(booking(plan, "loose-paint").end <= booking(plan, "abrade").start);
}
