#include "basinwright/chemistry/acid.hpp"

#include <cmath>
#include <limits>

#include "basinwright/chemistry/heat.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;

namespace {

constexpr basinwright::sources::Source can{basinwright::sources::Kind::given, "can", "label"};

std::string refusal(const chem::AcidLabel& label) {
  const auto checked = chem::acid_from_label(label, can);
  const auto* unfit = std::get_if<chem::Unfit>(&checked);
  return unfit == nullptr ? "" : unfit->reason;
}

chem::Acid acid(double mass_percent) {
  return std::get<chem::Acid>(chem::acid_from_label(units::percent(mass_percent), can));
}

}  // namespace

TEST_CASE("a label that no can bears is refused with its reason") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinite = std::numeric_limits<double>::infinity();
  const std::string weak = "acid must be stronger than 0 %";
  // 40 % is the end of the CRC table (13.14 mol/L); fuming acid is sold up to 38 %.
  const std::string strong = "hydrochloric acid is not sold stronger than 40 % by mass";
  CHECK(refusal(units::percent(0.0)) == weak);
  CHECK(refusal(units::percent(-5.0)) == weak);
  CHECK(refusal(units::percent(nan)) == weak);
  CHECK(refusal(units::percent(40.1)) == strong);
  CHECK(refusal(units::percent(infinite)) == strong);
  CHECK(refusal(chem::Baume{0.0}) == weak);
  CHECK(refusal(chem::Baume{-1.0}) == weak);
  CHECK(refusal(chem::Baume{nan}) == weak);
  CHECK(refusal(chem::Baume{30.0}) == strong);
  CHECK(refusal(chem::Baume{145.0}) == strong);
  CHECK(refusal(chem::Baume{400.0}) == strong);
  CHECK(refusal(chem::moles_per_litre(0.0)) == weak);
  // By hand, a litre of so thin an acid being 998 g: 0.03 x 36.46 / 998.
  const auto thin = std::get<chem::Acid>(chem::acid_from_label(chem::moles_per_litre(0.03), can));
  CHECK(thin.strength.in_percent() == Approx(0.1096).epsilon(0.01));
  CHECK(refusal(chem::moles_per_litre(-2.0)) == weak);
  CHECK(refusal(chem::moles_per_litre(nan)) == weak);
  CHECK(refusal(chem::moles_per_litre(13.2)) == strong);
  CHECK(refusal(units::percent(40.0)).empty());
  CHECK(refusal(units::percent(0.01)).empty());
}

TEST_CASE("the acid carries where its label comes from") {
  CHECK(acid(31.45).source.key == "can");
  CHECK(chem::ordinary_acid_as_sold().source.kind == basinwright::sources::Kind::from_memory);
  CHECK(chem::ordinary_acid_as_sold().strength.in_percent() == Approx(31.45));
}

TEST_CASE(
    "dilution keeps the mass of hydrogen chloride and contracts by less than half a percent") {
  // Conservation of mass; c1 V1 = c2 V2 is good to 0.5 % up to 31.45 % (CRC densities).
  for (const double strength : {5.0, 10.0, 20.0, 31.45}) {
    for (const double water : {0.0, 0.3, 1.0, 2.0, 7.5, 40.0}) {
      const auto stock = acid(strength);
      const auto made = chem::dilute(stock, units::litres(1.0), units::litres(water));
      INFO(strength << " % with " << water << " of water");
      const auto chloride = made.volume * made.mixed.hydrogen_chloride;
      CHECK(chloride.in(units::grams) ==
            Approx(stock.hydrogen_chloride.in(units::grams_per_litre)).epsilon(1e-12));
      const double volume = made.volume.in(units::litres);
      CHECK(volume <= 1.0 + water + 1e-12);
      CHECK(volume > (1.0 + water) * 0.995);
    }
  }
}

TEST_CASE("parts for a target and the mix of those parts undo each other") {
  for (const double target : {3.0, 5.0, 8.0, 10.0, 15.0, 25.0}) {
    const auto parts = std::get<chem::Parts>(chem::parts_for(acid(31.45), units::percent(target)));
    CHECK(chem::mixed(acid(31.45), parts).strength.in_percent() == Approx(target).epsilon(1e-12));
  }
}

TEST_CASE("a target that dilution cannot reach is refused") {
  const auto refused = [](double target) {
    return std::holds_alternative<chem::Unfit>(chem::parts_for(acid(20.0), units::percent(target)));
  };
  CHECK(refused(20.0));
  CHECK(refused(31.45));
  CHECK(refused(0.0));
  CHECK(refused(-1.0));
  CHECK(refused(std::numeric_limits<double>::quiet_NaN()));
  CHECK_FALSE(refused(19.9));
}

TEST_CASE("1 to 2 and milder mixes against the published 5 to 10 percent") {
  // MIL-HDBK-1110 5.14: 5 to 10 % by weight; 1 : 2 of 31.45 % is 11.5 %, 1 : 3 is 8.8 %.
  CHECK(chem::above_published_range(chem::mixed(acid(31.45), {1.0, 2.0})));
  CHECK_FALSE(chem::above_published_range(chem::mixed(acid(31.45), {1.0, 3.0})));
  CHECK_FALSE(chem::above_published_range(acid(10.0)));
}

TEST_CASE("vapour outside its table is a bound and thins out two thousandfold by dilution") {
  const auto over_neat = chem::vapour_over(acid(31.45));
  const auto over_ten = chem::vapour_over(acid(10.0));
  CHECK(over_neat.bound == chem::Bound::equal);
  // "Diluting before use cuts the vapour about 2000-fold": Perry's table, from memory.
  const double ratio = over_neat.by_volume.count() / over_ten.by_volume.count();
  CHECK(ratio > 2000.0);
  CHECK(ratio < 2500.0);
  CHECK(chem::vapour_over(acid(5.0)).bound == chem::Bound::at_most);
  CHECK(chem::vapour_over(acid(36.0)).bound == chem::Bound::at_least);
  CHECK(chem::vapour_over(acid(36.0)).by_volume.count() == Approx(50.5 / 760.0 * 1e6));
}

TEST_CASE("diluting always warms and neat acid does not") {
  CHECK(chem::dilution_heat(acid(31.45), units::litres(1.0), units::litres(0.0))
            .heat.in(chem::kilojoules) == Approx(0.0).margin(1e-9));
  double last = 0.0;
  for (const double water : {0.5, 1.0, 2.0, 5.0, 20.0, 100.0}) {
    const double heat = chem::dilution_heat(acid(31.45), units::litres(1.0), units::litres(water))
                            .heat.in(chem::kilojoules);
    CHECK(heat > last);
    last = heat;
  }
  // 9.977 mol of acid of 12.58 mol/kg hold 12.907 kJ/mol (CRC): no dilution frees more.
  CHECK(last < 9.977 * 12.907 + 0.1);
}

// The table itself (CRC, heat of dilution of hydrochloric acid, 25 C): from 1 mol/kg to 0.1 mol/kg
// 1.695 - 0.556 kJ/mol are set free, to 0.2 mol/kg 1.695 - 0.761, to 0.5 mol/kg 1.695 - 1.172.
TEST_CASE("diluting from row to row of the table frees their difference") {
  constexpr double grams_per_mole = 36.461;
  const auto one = acid(100.0 * grams_per_mole / (1000.0 + grams_per_mole));
  const double moles = one.hydrogen_chloride.in(units::grams_per_litre) / grams_per_mole;
  const auto freed = [&](double to) {
    // A mole stands in 1 kg of water and is to stand in 1/to; water is 0.998 kg/L.
    const double water = moles * (1.0 / to - 1.0) / 0.998;
    return chem::dilution_heat(one, units::litres(1.0), units::litres(water))
               .heat.in(chem::kilojoules) /
           moles;
  };
  CHECK(freed(0.1) == Approx(1.695 - 0.556).epsilon(0.01));
  CHECK(freed(0.2) == Approx(1.695 - 0.761).epsilon(0.01));
  CHECK(freed(0.5) == Approx(1.695 - 1.172).epsilon(0.01));
}

// Heat over mass and rise is the specific heat: the printed table, J/(g K) at its mass percents.
TEST_CASE("a mix warms by its specific heat") {
  const std::vector<std::pair<double, double>> table{
      {10, 3.47}, {20, 2.99}, {30, 2.60}, {32, 2.55}, {34, 2.50}, {36, 2.46}};
  for (const auto& [percent, specific] : table) {
    const auto stock = acid(38.0);
    const auto parts = std::get<chem::Parts>(chem::parts_for(stock, units::percent(percent)));
    const auto water = units::litres(1.0) * (parts.water / parts.acid);
    const auto warmed = chem::dilution_heat(stock, units::litres(1.0), water);
    const auto mass = chem::dilute(stock, units::litres(1.0), water).mass;
    INFO(percent << " %");
    CHECK(warmed.heat.in(chem::kilojoules) / mass.in(units::kilograms) /
              warmed.rise.in(units::kelvins) ==
          Approx(specific).epsilon(1e-6));
  }
}

TEST_CASE("no acid or water that is not a volume breaks the contract") {
  const auto stock = acid(31.45);
  CHECK_THROWS_AS(chem::dilute(stock, units::litres(0.0), units::litres(1.0)),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::dilute(stock, units::litres(1.0), units::litres(-1.0)),
                  std::invalid_argument);
}
