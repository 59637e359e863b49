#include "basinwright/chemistry/etch.hpp"

#include <limits>

#include "chemistry/steps.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;
using basinwright::trace::Trace;
using chemistry_rows::hold_steps;

namespace {

chem::EtchSurface bare(chem::Substrate substrate, bool strong_asked = false) {
  return {substrate, false, std::nullopt, strong_asked};
}

chem::EtchSurface bare_aged(chem::Substrate substrate, double age_days) {
  return {substrate, false, units::days(age_days), false};
}

std::string said(const chem::EtchSurface& surface) {
  const auto ratio = chem::etch_ratio(surface);
  if (const auto* unfit = std::get_if<chem::Unfit>(&ratio)) return unfit->reason;
  const auto& fit = std::get<chem::EtchRatio>(ratio);
  return std::to_string(static_cast<int>(fit.parts.acid)) + " : " +
         std::to_string(static_cast<int>(fit.parts.water)) +
         (fit.milder_than_rule ? " (milder)" : "");
}

chem::EtchPatch patch(const std::string& where, double square_metres, chem::EtchSurface surface) {
  return {where, {units::square_metres(square_metres)}, chem::EtchPart::whole, surface};
}

chem::Etch etched(const std::vector<chem::EtchPatch>& patches, Trace& trace) {
  return std::get<chem::Etch>(chem::etch(patches, chem::ordinary_acid_as_sold(), {}, trace));
}

double litres(units::Volume volume) {
  return volume.in(units::litres);
}

}  // namespace

TEST_CASE("the ratio by surface follows the trades table") {
  using enum chem::Substrate;
  // Common practice, concrete assumed: practice table of acid : water by volume.
  CHECK(said(bare(render)) == "1 : 3");
  CHECK(said(bare_aged(render, 28.0)) == "1 : 2");
  CHECK(said(bare_aged(render, 90.0)) == "1 : 2");
  CHECK(said(bare_aged(render, 90.5)) == "1 : 3");
  CHECK(said(bare(pebble)) == "1 : 3");
  CHECK(said(bare(concrete)) == "1 : 3");
  CHECK(said(bare(plaster_soft, true)) == "1 : 1");
  CHECK(said(bare(plaster_hard, true)) == "1 : 0");
}

TEST_CASE("epoxy painted before wins over the substrate") {
  for (const auto substrate : {chem::Substrate::render,
                               chem::Substrate::concrete,
                               chem::Substrate::plaster_soft,
                               chem::Substrate::plaster_hard,
                               chem::Substrate::pebble}) {
    CHECK(said({substrate, true, std::nullopt, false}) == "1 : 2");
    CHECK(said({substrate, true, std::nullopt, true}) == "1 : 2");
  }
}

TEST_CASE("neat and 1 to 1 only when the data sheet asks for them") {
  CHECK(said(bare(chem::Substrate::plaster_soft)) == "1 : 2 (milder)");
  CHECK(said(bare(chem::Substrate::plaster_hard)) == "1 : 2 (milder)");
  const auto ratio =
      std::get<chem::EtchRatio>(chem::etch_ratio(bare(chem::Substrate::plaster_hard)));
  CHECK(ratio.reason.find("no data sheet asks") != std::string::npos);
}

TEST_CASE("fibreglass and young cement are not etched") {
  CHECK(said(bare(chem::Substrate::fibreglass)) == "fibreglass is never etched");
  CHECK(said({chem::Substrate::fibreglass, true, std::nullopt, true}) ==
        "fibreglass is never etched");
  CHECK(said(bare_aged(chem::Substrate::render, 27.9)) ==
        "cement younger than 28 days is not etched");
  CHECK(said(bare_aged(chem::Substrate::concrete, 3.0)) ==
        "cement younger than 28 days is not etched");
  CHECK(said(bare_aged(chem::Substrate::render, std::numeric_limits<double>::quiet_NaN())) ==
        "cement younger than 28 days is not etched");
}

TEST_CASE("a typical pool of 92 m2") {
  Trace off;
  const auto job = etched({patch("all", 92.0, {})}, off);
  // 1.05 L/m2 (assumed) x 92 = 96.6 L; a third of it acid; walls two thirds (common practice).
  CHECK(litres(job.solution) == Approx(96.6));
  CHECK(litres(job.acid) == Approx(32.2));
  CHECK(litres(job.water) == Approx(64.4));
  CHECK(litres(job.wall_solution) == Approx(64.4));
  CHECK(litres(job.floor_solution) == Approx(32.2));
  CHECK(job.mixes.front().above_published);
}

TEST_CASE("several surfaces add up and pebble counts a fifth more") {
  Trace off;
  chem::EtchPatch walls = patch("walls", 60.0, bare(chem::Substrate::render));
  walls.part = chem::EtchPart::walls;
  chem::EtchPatch floor = patch("floor", 40.0, bare(chem::Substrate::pebble));
  floor.part = chem::EtchPart::floor;
  const auto job = etched({walls, floor, patch("steps", 10.0, {})}, off);
  // By hand: 60 x 1.05 = 63, 40 x 1.2 x 1.05 = 50.4, 10 x 1.05 = 10.5; acid 1/4, 1/4, 1/3.
  CHECK(litres(job.solution) == Approx(123.9));
  CHECK(litres(job.acid) == Approx(63.0 / 4.0 + 50.4 / 4.0 + 3.5));
  CHECK(litres(job.wall_solution) == Approx(63.0 + 7.0));
  CHECK(litres(job.floor_solution) == Approx(50.4 + 3.5));
  CHECK(job.mixes.at(1).counted.in(units::square_metres) == Approx(48.0));
  CHECK(chem::counted_area(chem::Substrate::pebble, units::square_metres(40.0)) ==
        units::square_metres(48.0));
  CHECK_FALSE(job.mixes.at(0).above_published);
}

TEST_CASE("rates can be replaced") {
  Trace off;
  chem::EtchRates rates;
  rates.solution = {units::litres_per_square_metre(0.8),
                    {basinwright::sources::Kind::data_sheet, "etch", "rate"}};
  const auto job = std::get<chem::Etch>(
      chem::etch({patch("all", 100.0, {})}, chem::ordinary_acid_as_sold(), rates, off));
  CHECK(litres(job.solution) == Approx(80.0));
}

TEST_CASE("each row of the table can be replaced, but none made strong without a data sheet") {
  const basinwright::sources::Source own{basinwright::sources::Kind::given, "", "own"};
  chem::EtchRates rates;
  const auto row = [&](chem::EtchRow at) -> chem::EtchRule& {
    return rates.rules[static_cast<std::size_t>(at)];
  };
  row(chem::EtchRow::painted) = {{{1, 4}, own}, {{units::litres_per_square_metre(0.8), own}}};
  row(chem::EtchRow::concrete).parts = {{1, 1}, own};
  const auto of = [&](const chem::EtchSurface& surface) {
    return std::get<chem::EtchRatio>(chem::etch_ratio(surface, rates));
  };
  CHECK(of({}).parts == chem::Parts{1, 4});
  CHECK(of({}).source.kind == basinwright::sources::Kind::given);
  CHECK(of(bare(chem::Substrate::render)).parts == chem::Parts{1, 3});
  CHECK(of(bare(chem::Substrate::concrete)).parts == chem::Parts{1, 2});
  CHECK(of(bare(chem::Substrate::concrete)).milder_than_rule);
  CHECK(of(bare(chem::Substrate::concrete, true)).parts == chem::Parts{1, 1});
  Trace off;
  const auto job = std::get<chem::Etch>(
      chem::etch({patch("all", 100.0, {}), patch("spa", 10.0, bare(chem::Substrate::render))},
                 chem::ordinary_acid_as_sold(),
                 rates,
                 off));
  // 100 x 0.8 = 80 L, a fifth of it acid; 10 x 1.05 = 10.5 L, a quarter of it.
  CHECK(litres(job.solution) == Approx(80.0 + 10.5));
  CHECK(litres(job.acid) == Approx(16.0 + 2.625));
}

TEST_CASE("every recorded step of the etch evaluates to its value and its origins exist") {
  Trace trace = Trace::recording();
  const auto job = etched({patch("walls", 61.3, bare(chem::Substrate::render)),
                           patch("floor", 38.9, bare(chem::Substrate::pebble)),
                           patch("steps", 7.7, {})},
                          trace);
  hold_steps(trace);
  REQUIRE(trace.find("quantities.etch.acid_l") != nullptr);
  CHECK(trace.find("quantities.etch.acid_l")->value.si == job.acid.si());
  for (const char* name : {"solution_l", "water_l", "wall_solution_l", "floor_solution_l"}) {
    CHECK(trace.find(std::string("quantities.etch.") + name) != nullptr);
  }
}

TEST_CASE("a refused surface refuses the whole etch") {
  Trace off;
  const auto refused =
      chem::etch({patch("all", 50.0, {}), patch("spa", 5.0, bare(chem::Substrate::fibreglass))},
                 chem::ordinary_acid_as_sold(),
                 {},
                 off);
  CHECK(std::holds_alternative<chem::Unfit>(refused));
}

TEST_CASE("mix cards hold exactly the solution, bucket by bucket") {
  // 96.6 L in buckets of 9 L: ten full ones and 6.6 L; 1 : 2 is 3 L of acid in 6 L of water.
  const auto card = chem::mix_card({1.0, 2.0}, units::litres(9.0), units::litres(96.6));
  CHECK(card.full == 10);
  CHECK(card.count() == 11);
  CHECK(litres(card.acid) == Approx(3.0));
  CHECK(litres(card.water) == Approx(6.0));
  CHECK(litres(card.last_acid) == Approx(2.2));
  CHECK(litres(card.last_water) == Approx(4.4));
  // A tenth that does not add up exactly in binary must not ask for a sliver of a bucket.
  const auto whole = chem::mix_card({1.0, 2.0}, units::litres(9.0), units::litres(90.0));
  CHECK(whole.full == 10);
  CHECK(litres(whole.last_acid) == 0.0);
  const auto exact = chem::mix_card({1.0, 3.0}, units::litres(0.1), units::litres(0.7));
  CHECK(exact.count() == 7);
  CHECK(chem::mix_card({1.0, 3.0}, units::litres(9.0), units::litres(0.0)).count() == 0);
  // 90.05 L in buckets of 9 L: ten of 9.005 L, not an eleventh of half a wineglass.
  const auto splash = chem::mix_card({1.0, 2.0}, units::litres(9.0), units::litres(90.05));
  CHECK(splash.count() == 10);
  CHECK(litres(splash.vessel) == Approx(9.005));
  CHECK(litres(splash.acid + splash.water) * 10 == Approx(90.05));
  CHECK(chem::mix_card({1.0, 2.0}, units::litres(9.0), units::litres(0.05)).count() == 1);
  // Common practice: nobody mixes a vessel of nothing, whole vessels in any unit included.
  for (int tenths = 1; tenths < 400; ++tenths) {
    const auto of =
        chem::mix_card({1.0, 2.0}, units::us_gallons(1.3), units::us_gallons(0.13) * tenths);
    const double last = litres(of.last_acid + of.last_water);
    INFO(tenths);
    CHECK((last == 0.0 || of.full == 0 || last > 0.05 * litres(of.vessel)));
    CHECK(litres(of.vessel) * of.full + last == Approx(litres(units::us_gallons(0.13)) * tenths));
  }
  CHECK(litres(chem::mix_card({1.0, 0.0}, units::litres(5.0), units::litres(5.0)).water) == 0.0);
}

TEST_CASE("areas and vessels that are none break the contract") {
  Trace off;
  const auto stock = chem::ordinary_acid_as_sold();
  CHECK_THROWS_AS(chem::etch({}, stock, {}, off), std::invalid_argument);
  CHECK_THROWS_AS(chem::etch({patch("all", -1.0, {})}, stock, {}, off), std::invalid_argument);
  CHECK_THROWS_AS(chem::mix_card({1.0, 2.0}, units::litres(0.0), units::litres(1.0)),
                  std::invalid_argument);
}
