#include "basinwright/chemistry/chlorine.hpp"

#include <limits>

#include "chemistry/steps.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;
using basinwright::trace::Trace;
using chemistry_rows::hold_steps;

namespace {

constexpr basinwright::sources::Source can_label{basinwright::sources::Kind::given, "can", "label"};

chem::ChlorineStock stock(const chem::ChlorineLabel& label) {
  return std::get<chem::ChlorineStock>(chem::chlorine_stock(label, can_label));
}

bool refused(const chem::ChlorineLabel& label) {
  return std::holds_alternative<chem::Unfit>(chem::chlorine_stock(label, can_label));
}

constexpr chem::WorkedArea hundred{units::square_metres(100.0)};

}  // namespace

TEST_CASE("a chlorine wash of 100 m2 from liquid and from granules") {
  // 0.5 L/m2 (assumed) at 12.5 g/L (MIL-HDBK-1110 5.19.3): 50 L with 625 g of chlorine.
  Trace trace = Trace::recording();
  const auto liquid = std::get<chem::ChlorineWash>(
      chem::chlorine_wash(hundred, stock(chem::TradePercent{12.5}), {}, trace));
  CHECK(liquid.solution.in(units::litres) == Approx(50.0));
  CHECK(liquid.liquid.in(units::litres) == Approx(5.0));
  CHECK(liquid.water.in(units::litres) == Approx(45.0));
  CHECK(liquid.available.in(units::grams) == Approx(625.0));
  CHECK(liquid.granules.si() == 0.0);
  hold_steps(trace);

  Trace dry = Trace::recording();
  const auto granules = std::get<chem::ChlorineWash>(chem::chlorine_wash(
      hundred, stock(chem::CalciumHypochlorite{units::percent(65.0)}), {}, dry));
  CHECK(granules.granules.in(units::grams) == Approx(625.0 / 0.65));
  CHECK(granules.water.in(units::litres) == Approx(50.0));
  CHECK(granules.liquid.si() == 0.0);
  hold_steps(dry);
  CHECK(dry.find("quantities.chlorine_wash.granules_kg") != nullptr);
  CHECK(dry.find("quantities.chlorine_wash.liquid_l") == nullptr);
}

TEST_CASE("chlorine that is no chlorine, or too weak for the wash, is refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto water = units::grams_per_litre(1000.0);
  CHECK(refused(chem::TradePercent{0.0}));
  CHECK(refused(chem::TradePercent{-3.0}));
  CHECK(refused(chem::TradePercent{nan}));
  CHECK(refused(chem::TradePercent{26.0}));
  CHECK(refused(chem::AvailableByMass{units::percent(30.0), water}));
  CHECK(refused(chem::SodiumHypochloriteByMass{units::percent(0.0), water}));
  CHECK(refused(chem::CalciumHypochlorite{units::percent(0.0)}));
  // Pure calcium hypochlorite holds 2 x 70.90 / 142.976 = 99.2 %.
  CHECK(refused(chem::CalciumHypochlorite{units::percent(99.3)}));
  CHECK_FALSE(refused(chem::CalciumHypochlorite{units::percent(99.1)}));
  Trace off;
  const auto weak = stock(chem::TradePercent{1.0});
  CHECK(std::holds_alternative<chem::Unfit>(chem::chlorine_wash(hundred, weak, {}, off)));
  CHECK(std::holds_alternative<chem::Unfit>(
      chem::liquid_for(units::litres(10.0), units::grams_per_litre(12.5), weak)));
  CHECK(std::holds_alternative<chem::Unfit>(
      chem::liquid_for(units::litres(10.0),
                       units::grams_per_litre(1.0),
                       stock(chem::CalciumHypochlorite{units::percent(65.0)}))));
}

TEST_CASE("an area that is none breaks the contract of the chlorine wash") {
  Trace off;
  CHECK_THROWS_AS(
      chem::chlorine_wash({units::square_metres(-1.0)}, stock(chem::TradePercent{12.5}), {}, off),
      std::invalid_argument);
}
