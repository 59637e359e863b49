#include "basinwright/coverage/mixing.hpp"

#include <cmath>
#include <fstream>
#include <limits>
#include <stdexcept>

#include "mixing_rows.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace basinwright;
using coverage::Hindrance;
using coverage::MixingSession;
using mixing_rows::json;

namespace {

json file() {
  std::ifstream stream(places::source() + "/tests/reference/mixing.json");
  return json::parse(stream);
}

MixingSession row(std::size_t index) {
  return mixing_rows::session(file().at("rows").at(index));
}

bool agree(const json& got, const json& expected, double relative) {
  if (expected.is_array()) {
    bool all = got.size() == expected.size();
    for (std::size_t i = 0; all && i < expected.size(); ++i) {
      all = agree(got[i], expected[i], relative);
    }
    return all;
  }
  if (!got.is_number() || !expected.is_number()) return got == expected;
  const auto e = expected.get<double>();
  return std::abs(got.get<double>() - e) <= relative * std::abs(e);
}

/// Epoxy that is good for an hour at 20 C.
coverage::PotLife an_hour() {
  coverage::PotLife paint;
  paint.life.value = units::minutes(60);
  paint.at.value = units::celsius(20);
  return paint;
}

}  // namespace

// Outside source: tests/reference/mixing.json, closed forms equal to a simulation of events.
TEST_CASE("every reference row of the mixing is met in every key") {
  const json all = file();
  const double relative = all.at("tolerance").at("relative");
  REQUIRE(relative == 1e-9);
  REQUIRE(all.at("rows").size() == 6);
  for (const json& r : all.at("rows")) {
    const json got = mixing_rows::computed(r);
    INFO(r.at("name"));
    REQUIRE(r.at("expected").size() == 16);
    for (const auto& [key, expected] : r.at("expected").items()) {
      INFO(key << " got " << got.at(key).dump() << " expected " << expected.dump());
      CHECK(agree(got.at(key), expected, relative));
    }
  }
}

// Row E1 of the reference: mixes at -15, 21, ... minutes; the rest by the clock: 5 min of stirring,
// 10 of standing, 36 of rolling, an hour of pot life; the last kit covers 122.134 - 4 x 30 m2.
TEST_CASE("a mix has its times and its area") {
  const auto t = coverage::mixing_timetable(row(0));
  REQUIRE(t.works());
  REQUIRE(t.mixes.size() == 5);
  const coverage::Mix& second = t.mixes[1];
  CHECK(second.number == 2);
  CHECK(std::abs(second.start.in(units::minutes)-21.0) <= 1e-9);
  CHECK(std::abs(second.stirred.in(units::minutes)-26.0) <= 1e-9);
  CHECK(std::abs(second.ready.in(units::minutes)-36.0) <= 1e-9);
  CHECK(std::abs(second.empty.in(units::minutes)-72.0) <= 1e-9);
  REQUIRE(second.use_by.has_value());
  CHECK(std::abs(second.use_by->in(units::minutes)-81.0) <= 1e-9);
  CHECK(second.area == units::square_metres(30));
  CHECK(std::abs(t.mixes[4].area.in(units::square_metres)-2.134204482) <= 1e-9);
  CHECK(t.mixes[4].empty == t.finish);
}

// Row E2 of the reference: an hour at 20 C, paint at 28 C; four painters would do (E3).
TEST_CASE("a hot morning names the painters, the kit and the hour that would help") {
  MixingSession s = row(1);
  s.pot_life = an_hour();
  s.temperature = units::celsius(28);
  const auto t = coverage::mixing_timetable(s);
  REQUIRE(t.pot_life.has_value());
  CHECK(std::abs(t.pot_life->in(units::minutes)-34.460951) <= 1e-6);
  REQUIRE(t.obstacles.size() == 1);
  const coverage::Obstacle& o = t.obstacles[0];
  CHECK(o.what == Hindrance::pot_life_short);
  CHECK(std::abs(o.short_by.in(units::minutes) - (36.0 - 19.460951)) <= 1e-6);
  CHECK(o.painters == 4);
  CHECK(o.mixers == 1);
  // Two painters roll 50 m2/h: 19.460951 min of them.
  REQUIRE(o.cover.has_value());
  CHECK(std::abs(o.cover->in(units::square_metres)-50.0 * 19.460951 / 60.0) <= 1e-6);
  // 5 + 5 + 36 + 5 = 51 min are needed: 20 C + 10 C log2(60 / 51).
  REQUIRE(o.no_warmer_than.has_value());
  CHECK(std::abs(o.no_warmer_than->in(units::celsius)-22.344652) <= 1e-6);
  s.painters = 4;
  CHECK(coverage::mixing_timetable(s).works());
}

// Common practice: paint that is gone before it is rolled helps no crew. 60 min at 20 C is 15
// at 40.
TEST_CASE("a pot life that mixing and induction use up helps no crew") {
  MixingSession s = row(0);
  s.pot_life = an_hour();
  s.temperature = units::celsius(40);
  const auto t = coverage::mixing_timetable(s);
  REQUIRE(t.obstacles.size() == 1);
  const coverage::Obstacle& o = t.obstacles[0];
  CHECK(o.what == Hindrance::pot_life_gone);
  CHECK(std::abs(t.usable->in(units::minutes) - (15.0 - 20.0)) <= 1e-9);
  CHECK(std::abs(o.short_by.in(units::minutes) - (51.0 + 5.0 - 15.0)) <= 1e-9);
  CHECK_FALSE(t.painters_for_pot_life.has_value());
  CHECK_FALSE(o.painters.has_value());
  CHECK_FALSE(o.cover.has_value());
  REQUIRE(o.no_warmer_than.has_value());
  CHECK(std::abs(o.no_warmer_than->in(units::celsius) - (20.0 + 10.0 * std::log2(60.0 / 56.0))) <=
        1e-9);
}

TEST_CASE("a table that ends before the day says which hours it covers") {
  MixingSession s = row(0);
  s.pot_life.table = {{units::celsius(15), units::minutes(90)},
                      {units::celsius(25), units::minutes(50)}};
  s.temperature = units::celsius(26);
  const auto hot = coverage::mixing_timetable(s);
  REQUIRE(hot.obstacles.size() == 1);
  CHECK(hot.obstacles[0].what == Hindrance::pot_life_unknown);
  CHECK(hot.obstacles[0].no_warmer_than == units::celsius(25));
  CHECK_FALSE(hot.obstacles[0].no_colder_than.has_value());
  CHECK_FALSE(hot.pot_life.has_value());
  CHECK_FALSE(hot.mixes[0].use_by.has_value());
  s.temperature = units::celsius(14);
  const auto cold = coverage::mixing_timetable(s);
  REQUIRE(cold.obstacles.size() == 1);
  CHECK(cold.obstacles[0].no_colder_than == units::celsius(15));
  CHECK_FALSE(cold.obstacles[0].no_warmer_than.has_value());
}

// Row E5 of the reference with 13 painters: 1233.735 m2 at 390 m2/h are 189.805 min of 180.
TEST_CASE("a window too short names the painters and the time missing") {
  MixingSession s = row(4);
  s.painters = 13;
  const auto t = coverage::mixing_timetable(s);
  REQUIRE(t.obstacles.size() == 1);
  CHECK(t.obstacles[0].what == Hindrance::window_short);
  CHECK(t.obstacles[0].painters == 14);
  CHECK(t.obstacles[0].mixers == 1);
  CHECK(std::abs(t.obstacles[0].short_by.in(units::minutes)-9.8053448) <= 1e-6);
  s.window = units::Duration();
  CHECK_FALSE(coverage::mixing_timetable(s).obstacles[0].painters.has_value());
}

// Row E5 with 40 painters: 1200 m2/h empty 80 m2 in 4 min, a mix takes 5; the pipeline holds
// 15 / 4, so four. Painters who mix themselves send a second one and are not held up.
TEST_CASE("a crew faster than its mixer needs a second one") {
  MixingSession s = row(4);
  s.painters = 40;
  const auto t = coverage::mixing_timetable(s);
  REQUIRE(t.obstacles.size() == 1);
  CHECK(t.obstacles[0].what == Hindrance::mixer_short);
  CHECK(t.obstacles[0].mixers == 2);
  CHECK(std::abs(t.obstacles[0].short_by.in(units::minutes)-1.0) <= 1e-9);
  CHECK(t.kits_in_pipeline == 4);
  CHECK_FALSE(t.one_mixer_ok);
  s.mixer = coverage::Mixer::painter;
  CHECK(coverage::mixing_timetable(s).works());
}

// Not a crew, but a number must come out: never more kits at once than there are.
TEST_CASE("a crew beyond all bounds keeps every kit busy at once") {
  MixingSession s = row(4);
  s.rate = units::square_metres_per_hour(1e30);
  const auto t = coverage::mixing_timetable(s);
  CHECK(t.mixers == 16);
  CHECK(t.kits_in_pipeline == 16);
  s.area = units::square_metres(1e-12);
  CHECK(coverage::mixing_timetable(s).kits == 1);
}

// Row E6 of the reference: a lone kit is judged by the paint used, not by the kit.
TEST_CASE("a lone kit only partly used is judged by what is painted") {
  MixingSession s = row(5);
  s.painters = 2;
  CHECK(coverage::mixing_timetable(s).works());
  s.painters = 1;
  s.cover = units::square_metres(40);
  CHECK(coverage::mixing_timetable(s).painters_for_pot_life == 2);
  s.pot_life.life.value = units::minutes(20 + 32.7);  // painted out after 32.695 min
  CHECK(coverage::mixing_timetable(s).works());
  s.pot_life.life.value = units::minutes(20 + 32.69);
  CHECK_FALSE(coverage::mixing_timetable(s).works());
}

// Whole numbers that decimals only just miss: 3 x 0.7 over 0.7 is a last bit off 3 in doubles; two
// painters at 25 m2/h roll out 30 m2 in just 36 min.
TEST_CASE("a hair decides neither about a kit nor about a painter") {
  MixingSession s = row(0);
  s.area = units::square_metres(3 * 0.7);
  s.cover = units::square_metres(0.7);
  CHECK(coverage::mixing_timetable(s).kits == 3);
  CHECK(coverage::mixing_timetable(s).waste.in(units::square_metres) >= 0.0);
  CHECK(coverage::mixing_timetable(s).waste.in(units::square_metres) <= 1e-12);
  s = row(0);
  s.pot_life.life.value = units::minutes(56);  // 36 of them usable, as long as a kit lasts
  CHECK(coverage::mixing_timetable(s).painters_for_pot_life == 2);
  CHECK(coverage::mixing_timetable(s).works());
  s.pot_life.life.value = units::minutes(55.999);
  CHECK(coverage::mixing_timetable(s).painters_for_pot_life == 3);
}

TEST_CASE("sessions without sense are refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto refused = [](auto change) {
    MixingSession s = row(0);
    change(s);
    CHECK_THROWS_AS(coverage::mixing_timetable(s), std::invalid_argument);
  };
  refused([](MixingSession& s) { s.area = units::Area(); });
  refused([nan](MixingSession& s) { s.area = units::square_metres(nan); });
  refused([](MixingSession& s) { s.cover = units::square_metres(-1); });
  refused([](MixingSession& s) { s.cover = units::square_metres(1e-4); });
  refused([](MixingSession& s) { s.rate = units::WorkRate(); });
  refused([](MixingSession& s) { s.painters = 0; });
  refused([](MixingSession& s) { s.mixing = units::minutes(-1); });
  refused([nan](MixingSession& s) { s.induction = units::minutes(nan); });
  refused([](MixingSession& s) { s.reserve = units::minutes(-1); });
  refused([](MixingSession& s) { s.window = units::minutes(-1); });
  refused([](MixingSession& s) { s.pot_life.life.value = units::Duration(); });
  refused([nan](MixingSession& s) { s.temperature = units::celsius(nan); });
}
