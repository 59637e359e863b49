#include "basinwright/chemistry/waste_water.hpp"

#include "support/catch.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;

namespace {

chem::Verdict verdict(double value) {
  return chem::judge(chem::ph(value), {});
}

}  // namespace

TEST_CASE("the sewers limits decide, and under pH 5 nothing does") {
  // 40 CFR 403.5(b)(2); 40 CFR 261.22 (from memory); 6 to 9 assumed.
  CHECK(verdict(2.0) == chem::Verdict::hazardous);
  CHECK(verdict(2.1) == chem::Verdict::refused);
  CHECK(verdict(4.99) == chem::Verdict::refused);
  CHECK(verdict(5.0) == chem::Verdict::treat);
  CHECK(verdict(6.0) == chem::Verdict::fits);
  CHECK(verdict(9.0) == chem::Verdict::fits);
  CHECK(verdict(9.1) == chem::Verdict::treat);
  CHECK(verdict(12.5) == chem::Verdict::hazardous);
  const basinwright::sources::Source town{basinwright::sources::Kind::given, "site.sewer", "ph"};
  const chem::SewerLimits lax{{chem::ph(4.0), town}, {chem::ph(11.0), town}};
  CHECK(chem::judge(chem::ph(4.5), lax) == chem::Verdict::refused);
  CHECK(chem::judge(chem::ph(10.9), lax) == chem::Verdict::fits);
}

TEST_CASE("etch water goes by its acid, then by its reading") {
  // 10 L of 31.45 % made to 1000 L: pH 1.00 (strong acid).
  chem::WashWater water{chem::Wash::etch, units::litres(1000.0), units::grams(3637.0)};
  auto waste = chem::waste_water(water, {});
  CHECK(waste.ph.value.value() == Approx(1.0).margin(0.005));
  CHECK(waste.verdict == chem::Verdict::hazardous);
  CHECK(waste.first == chem::FirstStep::add_bicarbonate);
  water.measured = chem::ph(6.8);
  waste = chem::waste_water(water, {});
  CHECK(waste.verdict == chem::Verdict::fits);
  CHECK(waste.first == chem::FirstStep::ask_leave);
  CHECK(waste.ph.source.kind == basinwright::sources::Kind::given);
}

TEST_CASE("chlorine comes out before anything else") {
  chem::WashWater water{chem::Wash::chlorine, units::litres(500.0), {}};
  CHECK(chem::waste_water(water, {}).first == chem::FirstStep::take_out_chlorine);
  water.chlorine_gone = true;
  CHECK(chem::waste_water(water, {}).first == chem::FirstStep::lower_ph);
  water.measured = chem::ph(7.2);
  CHECK(chem::waste_water(water, {}).first == chem::FirstStep::ask_leave);
}

TEST_CASE("a neutralising wash is plain bicarbonate and fits") {
  // (pK1 + pK2) / 2 = 8.34.
  const auto waste = chem::waste_water({chem::Wash::neutralise, units::litres(50.0), {}}, {});
  CHECK(waste.ph.value.value() == Approx(8.34).margin(0.005));
  CHECK(waste.verdict == chem::Verdict::fits);
}

TEST_CASE("the water of a wash is its mix and its rinses") {
  // 5 L/m2 a rinse (assumed): 96.6 + 2 x 5 x 92.
  CHECK(
      chem::wash_water_volume(units::litres(96.6), units::square_metres(92.0), 2, chem::rinse_rate)
          .in(units::litres) == Approx(1016.6));
  CHECK_THROWS_AS(chem::wash_water_volume({}, {}, -1, chem::rinse_rate), std::invalid_argument);
}
