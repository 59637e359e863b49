// Kits, chalk marks and mixing of a plan, worked out by hand on a box. Pot life halves for 10 C
// more: UFGS 09971, 3.7.1.3; whole kits one after another: common practice.
#include <fmt/format.h>

#include "basinwright/report/pages.hpp"
#include "basinwright/units/unit.hpp"
#include "report/mixing_words.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using job::KitMark;

// 8 x 4 x 1.5 m: 32 + 24 x 1.5 = 68 m2.
std::string box_pool(const std::string& more, const std::string& july = "20 C") {
  return fmt::format(R"({{"job": {{"start": "2027-07-05"}},
      "site": {{"mean_temperatures": {{"july": "{}"}}}},
      "pool": {{"outline": {{"kind": "rectangle", "length": 8, "width": 4}},
      "floor": {{"kind": "constant", "depth": 1.5}}}},
      "surfaces": [{{"coating": "epoxy", "acetone_test": "untouched"}}],
      "condition": {{"lead_test": "clear"}}{}}})",
                     july,
                     more);
}

double m(units::Length l) {
  return l.in(units::metres);
}
double min(units::Duration d) {
  return d.in(units::minutes);
}

}  // namespace

TEST_CASE("kits of 22.5 m2 run out where the cumulative area says") {
  const auto plan = test::plan_of(box_pool(""), test::demonstration());
  const auto& marks = plan.mixing.marks;
  // The end wall is 6 m2, each metre along 4 + 2 x 1.5 = 7 m2: (22.5 - 6) / 7 and (45 - 6) / 7.
  REQUIRE(marks.size() == 3);
  CHECK(m(marks[0].along) == Approx(16.5 / 7.0).epsilon(1e-6));
  CHECK(m(marks[1].along) == Approx(39.0 / 7.0).epsilon(1e-6));
  CHECK(marks[0].place == KitMark::Place::across);
  // 67.5 m2 leave 0.5 m2 of the far wall: 5.5 / 6 of its 4 m, or of its 1.5 m of height.
  CHECK(marks[2].place == KitMark::Place::shallow_wall);
  CHECK(m(marks[2].from_corner) == Approx(4.0 * 5.5 / 6.0).epsilon(1e-4));
  CHECK(m(marks[2].below_rim) == Approx(1.5 * 5.5 / 6.0).epsilon(1e-4));
  CHECK(report::mark_words(marks[2], plan, units::System::metric) ==
        "shallow wall, 3.67 m from the corner, or from the top down to 1.38 m below the rim");
  CHECK(report::mark_words(marks[0], plan, units::System::metric) ==
        "across walls and floor, 2.36 m from the deep end");
}

TEST_CASE("a kit that covers less than the deep wall ends on it") {
  auto rates = test::demonstration();
  const auto text =
      box_pool(R"(, "coating": {"system": "Small"}, "crew": {"painters": 3, "people": 4})");
  rates.systems["Small"].cover_low.value = units::square_metres(4.5);
  rates.systems["Small"].cover_high.value = units::square_metres(4.5);
  const auto plan = test::plan_of(text, rates);
  const auto& mark = plan.mixing.marks.front();
  CHECK(mark.place == KitMark::Place::deep_wall);
  CHECK(m(mark.from_corner) == Approx(3.0).epsilon(1e-4));
  CHECK(report::mark_words(mark, plan, units::System::metric)
            .starts_with("deep wall, 3.00 m from the corner"));
}

TEST_CASE("the timetable of a morning at 20 C") {
  const auto plan = test::plan_of(box_pool(""), test::demonstration());
  REQUIRE(plan.mixing.mornings.size() == 2);
  const auto& morning = plan.mixing.mornings.front();
  const auto& t = morning.timetable;
  // Two painters at 20 m2/h: a kit lasts 22.5 / 40 h = 33.75 min; lead 5 + 10 min.
  CHECK(t.kits == 4);
  CHECK(min(t.kit_time) == Approx(33.75));
  CHECK(min(t.mixes[1].start) == Approx(33.75 - 15.0));
  CHECK(min(*t.mixes[1].use_by) == Approx(33.75 - 15.0 + 60.0));
  CHECK(min(t.finish) == Approx(68.0 / 40.0 * 60.0));
  CHECK(t.works());
  CHECK(plan.mixing.painters_needed() == 2);
  CHECK(morning.rests_on == job::PaintTemperature::month_mean);
  CHECK_FALSE(morning.parts_cold);
  // The first is begun a quarter of an hour before painting opens.
  const auto begun = dates::Moment::of_quarters(morning.opening.quarters() - 1);
  CHECK(report::minute_of(morning.opening, t.mixes[0].start) == dates::clock(begun));
  CHECK(report::iso_minute(morning.opening, t.mixes[0].start) == dates::iso(begun));
  CHECK(report::iso_minute(dates::parse_moment("2027-07-06T00:00").value(), units::minutes(-10)) ==
        "2027-07-05T23:50");
}

TEST_CASE("at 30 C the shortest induction is taken, and what would help is said") {
  // 60 min at 20 C are 30 at 30 C; less 15 or 10 of lead and 5 of reserve leaves 10 or 15 min, and
  // 22.5 m2 at 20 m2/h a painter need 22.5 / (20 x 15 / 60) = 4.5, so 5 painters.
  const auto plan = test::plan_of(box_pool("", "30 C"), test::demonstration());
  const auto& morning = plan.mixing.mornings.front();
  CHECK(min(*morning.timetable.pot_life) == Approx(30.0));
  CHECK_FALSE(plan.mixing.works());
  const auto words = report::hindrances(morning, units::System::metric);
  REQUIRE(words.size() == 1);
  CHECK(words[0].find("pot life ends") != std::string::npos);
  CHECK(report::evening_before(morning, plan, units::System::metric).find("cool, shaded") !=
        std::string::npos);
  // Longest standing time: 10 min of use, 22.5 / (20 x 10 / 60) = 6.75.
  CHECK(plan.mixing.painters_needed() == 7);
  const auto five = test::plan_of(box_pool(R"(, "crew": {"painters": 5, "people": 6})", "30 C"),
                                  test::demonstration());
  CHECK(five.mixing.works());
  CHECK(five.mixing.mornings.front().shortest_induction);
}

TEST_CASE("parts that stand in the cold are brought in the evening before") {
  const auto plan = test::plan_of(box_pool("", "12 C"), test::demonstration());
  const auto& morning = plan.mixing.mornings.front();
  CHECK(morning.parts_cold);
  CHECK(report::evening_before(morning, plan, units::System::metric) ==
        "Parts that stand outside would be at 12.0 °C, too cold to mix: take both parts indoors "
        "the evening before, so that they are at 15 °C or more.");
  // A cold can is not trusted to keep its paint longer.
  CHECK(min(*morning.timetable.pot_life) == Approx(60.0));
}

TEST_CASE("without spare hands one of the painters mixes and paints nothing meanwhile") {
  const auto plan =
      test::plan_of(box_pool(R"(, "crew": {"painters": 2, "people": 2})"), test::demonstration());
  CHECK_FALSE(plan.mixing.mixer_apart);
  // Every further kit costs 20 m2/h x 5 min = 1.667 m2 of painting.
  const auto& t = plan.mixing.mornings.front().timetable;
  CHECK(min(t.kit_time) == Approx((22.5 + 20.0 * 5.0 / 60.0) / 40.0 * 60.0));
  CHECK(report::crew_words(plan.mixing).find("paints nothing meanwhile") != std::string::npos);
}

TEST_CASE("a table of pot lives of the sheet goes before the rule of thumb") {
  auto rates = test::demonstration();
  rates.systems["Own"].pot_lives = {{units::celsius(15), units::minutes(90)},
                                    {units::celsius(25), units::minutes(40)}};
  const auto plan = test::plan_of(box_pool(R"(, "coating": {"system": "Own"})"), rates);
  REQUIRE_FALSE(plan.mixing.mornings.empty());
  // Straight on a logarithmic scale: half way is the geometric mean, 60 min.
  CHECK(min(*plan.mixing.mornings.front().timetable.pot_life) == Approx(60.0));
}
