// Flotation against worked examples of the trade and of textbooks, each computed by others in
// pounds and feet or kilonewtons: weight of the empty shell over all water displaced.
#include <limits>
#include <numbers>
#include <stdexcept>

#include "basinwright/shell/flotation.hpp"
#include "make.hpp"

using namespace make;
using shell::FlotationVerdict;

namespace {

Length ft(double value) {
  return basinwright::units::feet(value);
}

// 150 lb/ft3 of concrete and 62.4 lb/ft3 of water.
shell::FlotationBasis pounds() {
  shell::FlotationBasis basis;
  const double pcf = 0.45359237 / (0.3048 * 0.3048 * 0.3048);
  basis.concrete.value = shell::Concentration::from_si(150.0 * pcf);
  basis.water.value = shell::Concentration::from_si(62.4 * pcf);
  return basis;
}

double in_pounds(shell::Mass mass) {
  return mass.in(basinwright::units::pounds);
}

shell::Flotation floating(shell::Pool p,
                          Length wall,
                          Length slab,
                          Length groundwater,
                          const shell::FlotationBasis& basis) {
  p.wall_thickness = wall;
  p.slab_thickness = slab;
  basinwright::trace::Trace off;
  const auto f = shell::flotation(p, groundwater, off, basis);
  REQUIRE(f.has_value());
  return *f;
}

shell::Pool clear_feet(double length, double width, double depth) {
  return pool(shell::Rectangle{ft(length), ft(width)}, shell::ConstantFloor{ft(depth)});
}

}  // namespace

// A rectangular pool, 20 x 40 x 8 ft clear, walls and floor of 12 in: 1916 ft3 of concrete,
// 287,400 lb; neutral with groundwater 5 ft (4.985) above the underside; 9 ft 0.554, 4 ft 1.246.
TEST_CASE("flotation, a pool of 20 x 40 x 8 ft") {
  const auto at = [](double above) {
    return floating(clear_feet(40, 20, 8), ft(1), ft(1), ft(9.0 - above), pounds());
  };
  CHECK(in_pounds(at(4).shell) == Approx(287400).margin(1));
  CHECK(at(9).factor == Approx(0.554).margin(0.0005));
  CHECK(at(4).factor == Approx(1.246).margin(0.0005));
  CHECK(at(9).verdict == FlotationVerdict::stop);
  CHECK(at(4).verdict == FlotationVerdict::hold);
  CHECK(at(3).verdict == FlotationVerdict::clear);
  CHECK((ft(9) - at(4).neutral.value()).in(basinwright::units::feet) ==
        Approx(4.985).margin(0.0005));
  CHECK(at(4).head.in(basinwright::units::feet) == Approx(4.0));
}

// The same, 5 ft deep: 231,600 lb, neutral at 4.017 ft.
TEST_CASE("flotation, the same pool 5 ft deep") {
  const auto f = floating(clear_feet(40, 20, 5), ft(1), ft(1), ft(0), pounds());
  CHECK(in_pounds(f.shell) == Approx(231600).margin(1));
  CHECK((ft(6) - f.neutral.value()).in(basinwright::units::feet) == Approx(4.017).margin(0.0005));
}

// A manhole 6 ft across and 23 ft deep outside displaces pi/4 x 36 x 23 x 62.4 = 40,579 lb.
TEST_CASE("flotation, water displaced by a round shaft") {
  const auto f = floating(
      pool(shell::Circle{ft(5)}, shell::ConstantFloor{ft(22)}), ft(0.5), ft(1), ft(0), pounds());
  CHECK(in_pounds(f.displaced) == Approx(40579).margin(1));
}

// Textbook tank, 6 x 5 x 2 m outside, 0.3 m all round, 24 and 9.81 kN/m3: 470.6 kN against 588.6,
// factor 0.80, neutral at 1.60 m above the underside.
TEST_CASE("flotation, a tank with the water table at the surface") {
  const auto f = floating(rectangle(5.4, 4.4, flat(1.7)), m(0.3), m(0.3), m(0), {});
  CHECK(f.shell.si() * 9.81 / 1000.0 == Approx(470.6).margin(0.05));
  CHECK(f.displaced.si() * 9.81 / 1000.0 == Approx(588.6).margin(0.05));
  CHECK(f.factor == Approx(0.80).margin(0.005));
  CHECK(2.0 - f.neutral->si() == Approx(1.60).margin(0.005));
  CHECK(f.verdict == FlotationVerdict::stop);
}

// A slab by itself: 2.446 t at a factor of 1.0, 0.367 m for 150 mm; 1.88 t at 1.3.
TEST_CASE("flotation, a slab by itself") {
  CHECK(shell::slab_alone_head(m(1), 1.0).si() == Approx(2.446).margin(0.0005));
  CHECK(shell::slab_alone_head(m(0.15), 1.0).si() == Approx(0.367).margin(0.0005));
  CHECK(shell::slab_alone_head(m(1), 1.3).si() == Approx(1.88).margin(0.005));
  CHECK_THROWS_AS(shell::slab_alone_head(m(0), 1.0), std::invalid_argument);
  CHECK_THROWS_AS(shell::slab_alone_head(m(1), 0.0), std::invalid_argument);
}

TEST_CASE("flotation, no groundwater and no thickness") {
  const auto dry = floating(rectangle(8, 4, flat(1.5)), m(0.2), m(0.15), m(1.65), {});
  CHECK(dry.factor == std::numeric_limits<double>::infinity());
  CHECK(dry.verdict == FlotationVerdict::clear);
  CHECK(dry.head.si() == 0.0);
  const auto heavy = floating(rectangle(2, 1, flat(0.6)), m(0.6), m(0.6), m(0), {});
  CHECK(!heavy.neutral.has_value());
  basinwright::trace::Trace off;
  auto p = rectangle(8, 4, flat(1.5));
  CHECK(!shell::flotation(p, m(1), off).has_value());
  p.wall_thickness = m(0.2);
  CHECK(!shell::flotation(p, m(1), off).has_value());
  CHECK_THROWS_AS(shell::flotation(p, m(std::numeric_limits<double>::quiet_NaN()), off),
                  std::invalid_argument);
}

TEST_CASE("flotation, groundwater that only reaches the deep end") {
  // Floor 1 to 2 m over 10 m, slab 0.2 m square to the floor, walls 0.2 m; water 1.7 m down.
  const auto f = floating(rectangle(10, 4, breaks({{0, 1}, {10, 2}})), m(0.2), m(0.2), m(1.7), {});
  const double slab = 0.2 * std::sqrt(1.01);
  const double wet = 10.0 * (2.0 + slab - 1.7);  // metres of length below water, at 1 in 10
  const double deep = 2.0 + slab - 1.7;
  const double ring = 0.2 + 4.0 * 0.04 / 28.0;  // corners shared out over the rim
  const double displaced = 4.0 * wet * deep / 2.0 + ring * (2.0 * wet * deep / 2.0 + 4.0 * deep);
  CHECK_NEAR(f.displaced.si(), 1000.0 * displaced);
}

TEST_CASE("flotation, verdicts change at 1.0 and 1.3") {
  CHECK(shell::flotation_verdict(0.999) == FlotationVerdict::stop);
  CHECK(shell::flotation_verdict(1.0) == FlotationVerdict::hold);
  CHECK(shell::flotation_verdict(1.2999) == FlotationVerdict::hold);
  CHECK(shell::flotation_verdict(1.3) == FlotationVerdict::clear);
  CHECK_THROWS_AS(shell::flotation_verdict(-1), std::invalid_argument);
  CHECK_THROWS_AS(shell::flotation_verdict(std::numeric_limits<double>::quiet_NaN()),
                  std::invalid_argument);
}
