// What stops a job, at which step, against common practice unless a source is named.
#include "shell.hpp"

using namespace shell_of;
using prep::Stop;

namespace {

void stops(const prep::Question& q, const std::string& at, const std::string& why) {
  const auto r = route(q);
  INFO(why);
  REQUIRE(r.stop);
  CHECK(r.stop->step == at);
  CHECK(r.stop->why == why);
  CHECK(r.steps.back().task == at);
}

}  // namespace

// MIL-HDBK-1110 4.2.4: like goes on like.
TEST_CASE("a coat that is not epoxy stops the job unless it comes off anyway") {
  auto q = sound();
  q.regions[1].coating = prep::ExistingCoating::other;
  stops(q, "coating-test", "not-epoxy");
  CHECK(route(q).stop->where == "floor");
  q.regions[1].acetone_test = prep::AcetoneTest::softened;
  stops(q, "coating-test", "softened");
  q.regions[1].coating = prep::ExistingCoating::unknown;
  stops(q, "coating-test", "softened");
  q.regions[1].loose_share = units::percent(30);
  CHECK_FALSE(route(q).stop);
  CHECK(metres2(route(q).stripped) == Approx(40));
}

TEST_CASE("fibreglass and a shell that floats stop at the drain") {
  auto q = sound();
  q.regions[0].substrate = prep::Substrate::fibreglass;
  stops(q, "drain", "fibreglass");
  q = sound();
  q.condition.ground = prep::Ground::floats;
  stops(q, "drain", "flotation");
  q.condition.ground = prep::Ground::close;
  CHECK_FALSE(route(q).stop);
  CHECK(holds(route(q), "drain") == std::vector<std::string>{"groundwater"});
}

// Common practice: a crack that moves, or is wider than 5 mm, is for an engineer; even a hairline
// that moves.
TEST_CASE("cracks stop the job by movement and width") {
  auto q = sound();
  const auto length = units::metres(1);
  const auto depth = units::millimetres(8);
  q.condition.cracks = {{units::millimetres(0.4), length, depth, true}};
  stops(q, "repair", "moving-crack");
  q.condition.cracks = {{units::millimetres(5.1), length, depth, false}};
  stops(q, "repair", "wide-crack");
  q.condition.cracks = {{units::millimetres(5), length, depth, false}};
  CHECK_FALSE(route(q).stop);
}

// Assumed: over a twentieth of the area sounds hollow.
TEST_CASE("drummy render stops the job when it is widespread") {
  auto q = sound();
  q.condition.drummy_area = units::square_metres(5);
  CHECK_FALSE(route(q).stop);
  q.condition.drummy_area = units::square_metres(5.1);
  stops(q, "repair", "drummy");
}

TEST_CASE("lead stops the job at the first dust") {
  auto q = sound();
  q.condition.lead_test = prep::LeadTest::found;
  stops(q, "abrade", "lead-found");
  q.regions[1].loose_share = units::percent(5);
  stops(q, "loose-paint", "lead-found");
  q.regions[1].loose_share = units::percent(50);
  stops(q, "strip", "lead-found");
  for (auto& region : q.regions) region.coating = prep::ExistingCoating::none;
  for (auto& region : q.regions) region.loose_share = {};
  CHECK_FALSE(route(q).stop);
}

// Common practice: 28 days; the programme waits unless the start may not move.
TEST_CASE("young cement waits, and stops the job when the start is fixed") {
  auto q = sound();
  q.regions[1].coating = prep::ExistingCoating::none;
  q.regions[1].age_of_cement = units::days(20);
  auto r = route(q);
  CHECK_FALSE(r.stop);
  CHECK(r.cement_wait->in(units::days) == Approx(8));
  q.start_fixed = true;
  stops(q, "etch-floor", "young-cement");
  q.regions[1].age_of_cement = units::days(28);
  CHECK_FALSE(route(q).stop);
  CHECK_FALSE(route(q).cement_wait);
}

TEST_CASE("mortar laid on the job makes it wait all of 28 days, never stops it") {
  auto q = sound();
  q.start_fixed = true;
  q.condition.divots = {{units::millimetres(20), units::square_metres(0.05), 1}};
  const auto r = route(q);
  CHECK_FALSE(r.stop);
  CHECK(r.cement_wait->in(units::days) == Approx(28));
}

// The first in the order of the work; the rest are told with it.
TEST_CASE("of several stops the earliest ends the route and none is kept back") {
  auto q = sound();
  q.condition.cracks = {{units::millimetres(9), units::metres(1), {}, false}};
  q.condition.lead_test = prep::LeadTest::found;
  q.regions[0].loose_share = units::percent(5);
  auto r = route(q);
  CHECK(*r.stop == Stop{"loose-paint", "lead-found", "walls"});
  CHECK(r.also == std::vector<Stop>{{"repair", "wide-crack", ""}});
  q.regions[0].loose_share = {};
  r = route(q);
  CHECK(*r.stop == Stop{"repair", "wide-crack", ""});
  CHECK(r.also == std::vector<Stop>{{"abrade", "lead-found", "walls"}});
}
