// The first example, worked by hand. Every expected number below was reckoned on paper from the
// tape measurements of examples/plain-pool.json and the values named in docs/method.md.
#include <algorithm>

#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using units::litres;

job::Plan plain_pool() {
  return test::plan_of(test::file_text("examples/plain-pool.json"), test::demonstration());
}

struct When {
  std::string task, start, end;
};

void check_booking(const job::Plan& plan, const When& when) {
  const auto it = std::ranges::find(plan.programme.bookings, when.task, &sequence::Booking::task);
  INFO(when.task);
  REQUIRE(it != plan.programme.bookings.end());
  CHECK(dates::iso(it->start) == when.start);
  CHECK(dates::iso(it->end) == when.end);
}

std::string line(const job::Plan& plan, const std::string& what) {
  for (const auto& l : plan.price->lines) {
    if (l.what == what) return money::plain(l.amount, *money::currency("EUR"));
  }
  return "none";
}

}  // namespace

TEST_CASE("plain pool, areas and water by hand") {
  const auto plan = plain_pool();
  const auto& t = plan.take_off.total;
  // Slope 0.8 over 4 m: slant sqrt(16 + 0.64) = 4.0792 m. Floor 4.5 x (3 + 4.0792 + 2).
  CHECK(t.floor_area.in(units::square_metres) == Approx(40.8565).margin(5e-4));
  // Sides 2 x (3 x 1.2 + 4 x 1.6 + 2 x 2.0 - 9 x 0.15) = 25.3; ends 4.5 x 1.05 + 4.5 x 1.85.
  CHECK(t.wall_area.in(units::square_metres) == Approx(38.35).margin(1e-9));
  // (pi/2 - 2) x 0.1 x 27 m.
  CHECK(t.cove_area_change.in(units::square_metres) == Approx(-1.15885).margin(1e-5));
  CHECK(plan.take_off.painted.in(units::square_metres) == Approx(78.0476).margin(5e-4));
  // 4.5 x 14 m2 of side, less 0.12 x 40.5, less (1 - pi/4) x 0.01 x 27.
  CHECK(t.water_volume.in(units::cubic_metres) == Approx(58.0821).margin(5e-4));
}

TEST_CASE("plain pool, washes and kits by hand") {
  const auto plan = plain_pool();
  const auto& q = plan.quantities;
  CHECK(q.degrease->concentrate.in(litres) == Approx(78.0476 / 4.5 * 0.5 / 20.5).margin(1e-4));
  CHECK(q.degrease->water.in(litres) == Approx(78.0476 / 4.5 * 20 / 20.5).margin(1e-3));
  CHECK(q.etch->solution.in(litres) == Approx(81.95).margin(0.01));
  CHECK(q.etch->acid.in(litres) == Approx(27.317).margin(0.001));
  CHECK(q.etch->water.in(litres) == Approx(54.633).margin(0.001));
  CHECK(q.etch->wall_solution.in(litres) == Approx(54.633).margin(0.001));
  CHECK(q.neutralise->surface.bicarbonate.in(units::kilograms) == Approx(4.336).margin(0.001));
  // 363.7 g HCl in a litre of 31.45 % acid (CRC), 2.3042 g bicarbonate for each gram of it.
  CHECK(q.neutralise->sump_worst.in(units::kilograms) == Approx(27.317 * 0.8381).margin(0.01));
  REQUIRE(q.coats.size() == 2);
  CHECK(q.coats[0].kits == 4);  // 78.05 / 22.5 = 3.47
  CHECK(q.coats[0].paint.in(litres) == Approx(3.5 * 78.0476 / 22.5).margin(1e-3));
  CHECK(q.kits == 8);
  CHECK_FALSE(q.chlorine_wash.has_value());
  CHECK_FALSE(q.primer.has_value());
}

TEST_CASE("plain pool, packs and price by hand") {
  const auto plan = plain_pool();
  // Acid 23 + 9 L = 68.20 (4 x 9 = 85.60, 2 x 23 = 93.60); bicarbonate 2 x 3 kg = 14.40 (13 kg
  // 23.90); degreaser 15.60; 8 kits at 131.00: 1146.20. The sump's 27.32 L x 0.8381 = 22.90 kg of
  // bicarbonate in 2 x 13 kg = 47.80; 58.08 m3 at 3 mg/L from 125 g/L, 1.39 L of chlorine, 17.90;
  // at 30 mg/L 1.74 kg of stabiliser, 18.60.
  CHECK(line(plan, "materials") == "1230.50");
  // 25 discs (0.31 x 78.05 = 24.2), 6 covers, 2 trays, 4 brushes, 1 tape (0.66), and the rest.
  CHECK(line(plan, "consumables") == "247.20");
  CHECK(line(plan, "protection") == "325.80");
  // 7 days on site: 7 x 23.00 travel; 2 days of grinder, 1 of blaster, 7 of pump and fence.
  CHECK(plan.programme.days_on_site == 7);
  CHECK(line(plan, "travel") == "161.00");
  CHECK(line(plan, "hire") == "385.00");
  const auto abrade = std::ranges::find(plan.labour, "abrade", &quote::LabourLine::task);
  REQUIRE(abrade != plan.labour.end());
  // 78.0476 / 3.5 = 22.2993 h at 37.00.
  CHECK(money::plain(abrade->total, *money::currency("EUR")) == "825.07");
  money::Money net;
  for (const auto& l : plan.price->lines) net += l.amount;
  CHECK(net == plan.price->net);
  // Tax once, 17 % of the net.
  CHECK(plan.price->tax.minor() == (plan.price->net.minor() * 17 + 50) / 100);
}

TEST_CASE("plain pool, programme by hand") {
  const auto plan = plain_pool();
  REQUIRE(plan.programme.feasible);
  for (const When& when : std::initializer_list<When>{
           {"set-out", "2027-05-03T13:45", "2027-05-03T15:15"},       // 4 h / 3, right before
           {"drain", "2027-05-03T15:15", "2027-05-03T21:15"},         // 58.1 m3 at 10 m3/h, as late
           {"degrease", "2027-05-04T07:00", "2027-05-04T09:15"},      // 78.05 / 12 / 3
           {"abrade", "2027-05-04T09:15", "2027-05-05T08:15"},        // 78.05 / 3.5 / 3, overnight
           {"etch-walls", "2027-05-05T10:00", "2027-05-05T11:30"},    // 37.77 / 10 / 3
           {"etch-floor", "2027-05-05T11:30", "2027-05-05T13:00"},    // 40.28 / 10 / 3
           {"neutralise", "2027-05-05T13:00", "2027-05-05T14:45"},    // 78.05 / 15 / 3
           {"dryness-test", "2027-05-07T14:45", "2027-05-08T06:45"},  // 48 h later, 16 h long
           {"mask", "2027-05-10T07:00", "2027-05-10T07:30"},          // after the weekend
           {"coat-1", "2027-05-10T09:00", "2027-05-10T11:00"},        // 78.05 / 20 / 2
           {"coat-2", "2027-05-11T08:00", "2027-05-11T10:00"},        // 23 h later: most in hand
           // 16 C: 1/14 + 0.6 x 1/14 a day, 8.75 days.
           {"cure", "2027-05-11T10:00", "2027-05-20T04:00"},
           {"fill", "2027-05-20T08:00", "2027-05-21T22:45"}}) {  // 58,082 L at 25 L/min
    check_booking(plan, when);
  }
  CHECK(dates::iso(plan.programme.first_swim) == "2027-05-27");
}
