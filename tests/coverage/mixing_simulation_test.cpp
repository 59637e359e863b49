// Outside source: a simulation that only knows who does what when (mixing_simulation.hpp), itself
// held against the simulated values printed in tests/reference/mixing.json.
#include <cmath>
#include <fstream>

#include "mixing_rows.hpp"
#include "mixing_sessions.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace basinwright;
using coverage::MixingSession;
using coverage::MixingTimetable;
using sessions::Random;

namespace {

// Thousands of sums of minutes of up to 1e4: a few 1e-10; events a hair apart are one event.
constexpr double minute_slack = 1e-6;

bool near(double a, double b) {
  return std::abs(a - b) <= minute_slack;
}
double minutes(units::Duration time) {
  return time.in(units::minutes);
}

/// Mixing falls in the painting time only: the beat is then exact, else the painters gain a little.
bool exact_beat(const MixingSession& s, const MixingTimetable& t) {
  return s.mixer == coverage::Mixer::apart || t.lead <= t.kit_time;
}

simulation::Outcome simulated(const MixingSession& s, const MixingTimetable& t) {
  return simulation::Session(sessions::crew(s)).with_starts(sessions::starts(t));
}

MixingTimetable with_painters(MixingSession s, std::int64_t painters) {
  s.painters = static_cast<int>(painters);
  return coverage::mixing_timetable(s);
}

/// Whether the paint of a simulated session is on the wall before its pot life is over.
bool fresh(const MixingSession& s, double worst_age) {
  const auto life = coverage::pot_life_at(s.pot_life, s.temperature);
  return worst_age + minutes(s.reserve) <= minutes(*life) + minute_slack;
}

}  // namespace

TEST_CASE("the simulation gives the simulated values of the reference") {
  std::ifstream stream(places::source() + "/tests/reference/mixing.json");
  const auto file = nlohmann::json::parse(stream);
  REQUIRE(file.at("rows").size() == 6);
  for (const auto& row : file.at("rows")) {
    INFO(row.at("name"));
    const auto& expected = row.at("simulation");
    const auto starts = row.at("expected").at("mix_starts_min").get<std::vector<double>>();
    const auto crew = sessions::crew(mixing_rows::session(row));
    const auto got = simulation::Session(crew).with_starts(starts);
    CHECK(near(got.finish, expected.at("finish_min").get<double>()));
    CHECK(near(got.wait, expected.at("wait_min").get<double>()));
    CHECK(near(got.worst_age, expected.at("worst_age_min").get<double>()));
    const auto lazy = simulation::Session(crew).lazily();
    CHECK(near(lazy.wait, row.at("expected").at("lazy_wait_min").get<double>()));
  }
}

TEST_CASE("random mixing timetables are what the simulation does") {
  Random random(4);
  int exact = 0;
  for (int i = 0; i < 4000; ++i) {
    const MixingSession s = sessions::any(random);
    const MixingTimetable t = coverage::mixing_timetable(s);
    const auto got = simulated(s, t);
    INFO("session " << i << ": " << t.kits << " kits, " << s.painters << " painters");
    REQUIRE(got.kits == static_cast<std::size_t>(t.kits));
    REQUIRE(near(got.finish, minutes(t.finish)));
    REQUIRE(got.worst_age <= minutes(t.worst_age) + minute_slack);
    REQUIRE(got.most_mixing == t.mixers);
    REQUIRE(got.most_in_pipeline == t.kits_in_pipeline);
    REQUIRE(near(simulation::Session(sessions::crew(s)).lazily().wait, minutes(t.lazy_wait)));
    if (!exact_beat(s, t)) continue;
    ++exact;
    REQUIRE(near(got.wait, 0.0));
    REQUIRE(near(got.worst_age, minutes(t.worst_age)));
  }
  REQUIRE(exact > 2000);
}

TEST_CASE("the painters asked for are the fewest who do in the simulation") {
  Random random(5);
  int short_lives = 0;
  for (int i = 0; i < 1500; ++i) {
    const MixingSession s = sessions::any(random);
    const MixingTimetable t = coverage::mixing_timetable(s);
    INFO("session " << i);
    for (int n = 1; n <= 14; ++n) {
      const MixingTimetable with = with_painters(s, n);
      MixingSession crew = s;
      crew.painters = n;
      const auto got = simulated(crew, with);
      const bool in_window = got.finish <= minutes(s.window) + minute_slack;
      REQUIRE(in_window == (t.painters_for_window && n >= *t.painters_for_window));
      REQUIRE(in_window == with.window_ok);
      if (!exact_beat(crew, with)) continue;
      REQUIRE(fresh(s, got.worst_age) ==
              (t.painters_for_pot_life && n >= *t.painters_for_pot_life));
      REQUIRE(fresh(s, got.worst_age) == with.pot_life_ok);
      short_lives += with.pot_life_ok ? 0 : 1;
    }
  }
  REQUIRE(short_lives > 1000);
}

TEST_CASE("no mix can be later without waiting nor earlier without ageing") {
  Random random(6);
  for (int i = 0; i < 2000; ++i) {
    MixingSession s = sessions::any(random);
    s.mixer = coverage::Mixer::apart;
    const MixingTimetable t = coverage::mixing_timetable(s);
    const auto moved = static_cast<std::size_t>(random.whole(0, static_cast<int>(t.kits) - 1));
    // Less than a kit lasts, so that the kits stay in order.
    const double by = std::min(0.5, minutes(t.kit_time) / 2.0);
    auto starts = sessions::starts(t);
    starts[moved] += by;
    const auto late = simulation::Session(sessions::crew(s)).with_starts(starts);
    INFO("session " << i << ", mix " << moved + 1);
    REQUIRE(near(late.wait, by));
    REQUIRE(near(late.finish, minutes(t.finish) + by));
    starts[moved] -= 2.0 * by;
    const auto early = simulation::Session(sessions::crew(s)).with_starts(starts);
    REQUIRE(near(early.finish, minutes(t.finish)));
    const bool lone_or_whole = t.kits == 1 || moved + 1 < starts.size();
    if (lone_or_whole) REQUIRE(near(early.worst_age, minutes(t.worst_age) + by));
  }
}
