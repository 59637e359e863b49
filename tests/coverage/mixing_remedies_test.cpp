// Every remedy a session is offered is tried: alone it removes its obstacle, and a little less of
// it does not. Definition of the remedies in mixing.hpp; nothing here is computed by their
// formulae.
#include <algorithm>

#include "mixing_sessions.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using coverage::Hindrance;
using coverage::MixingSession;
using sessions::Random;

namespace {

constexpr double little = 1e-6;

bool is_free(const MixingSession& s, Hindrance kind) {
  const auto t = coverage::mixing_timetable(s);
  return std::none_of(t.obstacles.begin(), t.obstacles.end(), [kind](const auto& o) {
    // What is left of a pot life is one matter, however little it is.
    const bool both_lives = kind != Hindrance::window_short && kind != Hindrance::mixer_short &&
                            o.what != Hindrance::window_short && o.what != Hindrance::mixer_short;
    return o.what == kind || both_lives;
  });
}

struct Tried {
  int painters = 0;
  int covers = 0;
  int hours = 0;
  int windows = 0;
};

void try_painters(const MixingSession& s, const coverage::Obstacle& o, Tried& tried) {
  if (!o.painters || *o.painters > 2000) return;
  ++tried.painters;
  MixingSession with = s;
  with.painters = static_cast<int>(*o.painters);
  REQUIRE(is_free(with, o.what));
  REQUIRE(coverage::mixing_timetable(with).mixers == *o.mixers);
  --with.painters;
  REQUIRE(with.painters >= s.painters);
  REQUIRE_FALSE(is_free(with, o.what));
}

void try_cover(const MixingSession& s, const coverage::Obstacle& o, Tried& tried) {
  if (!o.cover) return;
  ++tried.covers;
  MixingSession with = s;
  REQUIRE(*o.cover < s.cover);
  with.cover = *o.cover;
  REQUIRE(is_free(with, o.what));
  if (s.mixer == coverage::Mixer::apart) REQUIRE(is_free(with, Hindrance::mixer_short));
  with.cover = *o.cover * (1.0 + little);
  REQUIRE_FALSE(is_free(with, o.what));
}

void try_hour(const MixingSession& s, const coverage::Obstacle& o, Tried& tried) {
  if (!o.no_warmer_than) return;
  ++tried.hours;
  MixingSession with = s;
  REQUIRE(*o.no_warmer_than < s.temperature);
  with.temperature = *o.no_warmer_than;
  REQUIRE(is_free(with, o.what));
  with.temperature = *o.no_warmer_than + units::kelvins(little);
  REQUIRE_FALSE(is_free(with, o.what));
}

void try_window(const MixingSession& s, const coverage::Obstacle& o, Tried& tried) {
  if (o.what != Hindrance::window_short) return;
  ++tried.windows;
  MixingSession with = s;
  REQUIRE(o.short_by > units::Duration());
  with.window = s.window + o.short_by;
  REQUIRE(is_free(with, o.what));
  with.window = s.window + o.short_by * (1.0 - little);
  REQUIRE_FALSE(is_free(with, o.what));
}

}  // namespace

TEST_CASE("every remedy removes its obstacle and a little less does not") {
  Random random(7);
  Tried tried;
  for (int i = 0; i < 3000; ++i) {
    const MixingSession s = sessions::any(random);
    INFO("session " << i);
    for (const coverage::Obstacle& o : coverage::mixing_timetable(s).obstacles) {
      try_painters(s, o, tried);
      try_cover(s, o, tried);
      try_hour(s, o, tried);
      try_window(s, o, tried);
    }
  }
  CHECK(tried.painters > 1000);
  CHECK(tried.covers > 200);
  CHECK(tried.hours > 200);
  CHECK(tried.windows > 500);
}
