// Sections that the job names: areas, findings, kits and programme by them. Areas by hand from a
// box of 8 x 4 x 1.5 m: 6 m2 for each end wall and 4 + 2 x 1.5 m2 for each metre between.
#include <fmt/format.h>

#include <set>

#include "basinwright/job/sections.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

// What differs from a plain box: more of the pool, the surfaces, the sections.
struct Box {
  std::string pool, surfaces, sections, more;
};

job::Plan box_of_sections(const Box& b, bool explain = false) {
  return test::plan_of(fmt::format(R"({{"job": {{"start": "2027-06-07"}},
        "pool": {{"outline": {{"kind": "rectangle", "length": 8, "width": 4}},
                  "floor": {{"kind": "constant", "depth": 1.5}}{}}},
        "surfaces": [{}{{"coating": "epoxy", "acetone_test": "untouched"}}],
        "condition": {{"lead_test": "clear"}},
        "coating": {{"coats": 2, "sections": [{}]}}{}}})",
                                   b.pool,
                                   b.surfaces,
                                   b.sections,
                                   b.more),
                       test::demonstration(),
                       explain);
}

constexpr const char* halves = R"({"name": "deep end", "to": 5}, {"name": "shallow end", "to": 0})";
constexpr const char* thirds =
    R"({"name": "deep", "to": "5.5 m"}, {"name": "middle", "to": 2.5}, {"name": "shallow", "to": 0})";

double m2(units::Area a) {
  return a.in(units::square_metres);
}

}  // namespace

TEST_CASE("named sections share out the take-off by surface") {
  const auto plan = box_of_sections({.sections = halves});
  const auto& parts = plan.take_off.parts;
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].section == "deep end");
  CHECK(parts[1].section == "shallow end");
  CHECK(m2(parts[0].measured.walls) == Approx(2 * 3 * 1.5 + 6));
  CHECK(m2(parts[0].measured.floor) == Approx(12));
  CHECK(m2(parts[1].measured.walls) == Approx(2 * 5 * 1.5 + 6));
  CHECK(m2(parts[1].measured.floor) == Approx(20));
  CHECK(m2(parts[0].painted() + parts[1].painted()) == Approx(68));
  CHECK(parts[0].measured.from.si() == Approx(5));
  CHECK(parts[0].measured.to.si() == Approx(8));
}

TEST_CASE("named areas are spread over their surface") {
  const auto plan = box_of_sections({.pool = R"(, "adjust": [{"name": "niches", "area": -3.6},
                                    {"name": "sump", "area": 1.6, "where": "floor"}])",
                                     .sections = halves});
  const auto& parts = plan.take_off.parts;
  CHECK(m2(plan.take_off.painted) == Approx(66));
  CHECK(m2(parts[0].named.walls) == Approx(-3.6 * 15 / 36));
  CHECK(m2(parts[1].named.walls) == Approx(-3.6 * 21 / 36));
  CHECK(m2(parts[0].named.floor) == Approx(1.6 * 12 / 32));
  CHECK(m2(parts[0].painted()) == Approx(27 - 1.5 + 0.6));
}

TEST_CASE("a surface found in one section belongs to it alone") {
  const auto plan = box_of_sections({.surfaces = R"({"where": "deep end", "coating": "epoxy",
                                         "acetone_test": "untouched", "loose_share": "30 %"},)",
                                     .sections = halves});
  CHECK(m2(plan.route.stripped) == Approx(27));
  CHECK(m2(plan.route.abraded) == Approx(41));
  CHECK(m2(plan.route.primed) == Approx(27));
}

TEST_CASE("the first surface that matches a part holds") {
  // The floor is claimed first; bare walls are left of the deep end, 15 of 68 m2.
  const auto plan = box_of_sections({.surfaces = R"({"where": "floor", "coating": "epoxy",
                                         "acetone_test": "untouched"},
                                        {"where": "deep end", "coating": "none"},)",
                                     .sections = halves});
  CHECK(m2(plan.route.primed) == Approx(15));
  const auto& mixes = plan.quantities.etch->mixes;
  const auto at = [&](std::string_view where) {
    const auto it = std::ranges::find(mixes, where, &chemistry::EtchMix::where);
    return it == mixes.end() ? 0.0 : m2(it->counted);
  };
  CHECK(at("floor") == Approx(32));
  CHECK(at("deep end walls") == Approx(15));
  CHECK(at("walls") == Approx(21));
}

TEST_CASE("a stop names the section it was found in") {
  const auto plan = box_of_sections({.surfaces = R"({"where": "deep end", "coating": "other",
                                         "acetone_test": "softened"},)",
                                     .sections = halves});
  REQUIRE(plan.stopped());
  CHECK(plan.route.stop->where == "deep end walls");
  CHECK(plan.take_off.parts.size() == 2);
}

// Whole kits a section, at the demonstration sheet's 22.5 m2: 23.5, 21 and 23.5 m2 take 2, 1 and 2.
TEST_CASE("named sections are the units of the programme") {
  const auto plan = box_of_sections({.sections = thirds}, true);
  const auto& cut = plan.quantities.cut;
  CHECK(cut.names == std::vector<std::string>{"deep", "middle", "shallow"});
  CHECK(cut.kits == std::vector<std::int64_t>{2, 1, 2});
  CHECK(plan.quantities.kits == 10);
  CHECK(plan.take_off.range.kits == 10);
  REQUIRE(plan.trace.find("quantities.coats.kits") != nullptr);
  CHECK(plan.trace.find("quantities.coats.kits")->value.si == 5.0);
  REQUIRE(plan.programme.feasible);
  std::set<std::string> painted;
  for (const auto& booking : plan.programme.bookings) {
    if (booking.task == "coat-2") painted.insert(booking.section);
  }
  CHECK(painted == std::set<std::string>{"deep", "middle", "shallow"});
}

TEST_CASE("named sections that do not fit a morning leave the cut to the kits") {
  // One painter does 20 m2 an hour for 2.5 h; the deep section has 7 x 7 + 6 = 55 m2.
  const auto plan =
      box_of_sections({.sections = R"({"name": "deep", "to": 1}, {"name": "step end", "to": 0})",
                       .more = R"(, "crew": {"people": 2, "painters": 1})"});
  CHECK(plan.quantities.cut.names.empty());
  CHECK(plan.quantities.kits == 8);  // 68 / 22.5, not a kit more
  REQUIRE(plan.take_off.parts.size() == 2);
  CHECK(plan.take_off.parts[0].section == "deep");
}

TEST_CASE("every further body of water is a section of its own") {
  const auto plan = test::plan_of(R"({"job": {"start": "2027-06-07"},
      "pool": [{"outline": {"kind": "rectangle", "length": 8, "width": 4},
                "floor": {"kind": "constant", "depth": 1.5}},
               {"name": "deep", "outline": {"kind": "rectangle", "length": 2, "width": 1},
                "floor": {"kind": "constant", "depth": 1}}],
      "surfaces": [{"where": "deep 2", "coating": "none"},
                   {"coating": "epoxy", "acetone_test": "untouched"}],
      "condition": {"lead_test": "clear"},
      "coating": {"sections": [{"name": "deep", "to": 5}, {"name": "shallow", "to": 0}]}})",
                                  test::demonstration());
  REQUIRE(plan.take_off.parts.size() == 3);
  CHECK(plan.take_off.parts[2].section == "deep 2");  // a name that is taken gets a number
  CHECK(plan.take_off.parts[2].body == 1);
  CHECK(m2(plan.take_off.parts[2].painted()) == Approx(2 + 6));
  CHECK(m2(plan.route.primed) == Approx(8));  // above 10 % of 76 m2
}

TEST_CASE("without names the parts follow the cut by kits") {
  // 12 x 6 x 1.5 m: 72 + 54 m2, two painters, a cut in two at whole kits of 22.5 m2.
  const auto plan = test::plan_of(R"({"job": {"start": "2027-06-07"},
      "pool": {"outline": {"kind": "rectangle", "length": 12, "width": 6},
               "floor": {"kind": "constant", "depth": 1.5},
               "adjust": [{"name": "ledge", "area": "2 m2"}]},
      "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}],
      "condition": {"lead_test": "clear"}})",
                                  test::demonstration());
  const auto& cut = plan.quantities.cut;
  const auto& parts = plan.take_off.parts;
  REQUIRE(cut.sections.size() == 2);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].section == "1");
  for (std::size_t i = 0; i < 2; ++i) CHECK(m2(parts[i].painted()) == Approx(m2(cut.sections[i])));
  CHECK(m2(parts[0].named.sum() + parts[1].named.sum()) == Approx(2));
  // 3 kits hold 67.5 of 128 m2, 66.445 of them measured: 9 for the end wall, then 9 a metre.
  CHECK(parts[0].measured.from.si() == Approx(12 - (67.5 * 126 / 128 - 9) / 9));
}
