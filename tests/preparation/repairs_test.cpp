// Volumes of filler and mortar, by hand.
#include "chemistry/steps.hpp"
#include "shell.hpp"

using namespace shell_of;

// A V of 15 mm with sides at 45 degrees: 0.015^2 m2 a metre; over 4 m 0.9 L. Common practice: 1 mm
// and more is opened, a hairline is bridged.
TEST_CASE("cracks are filled to the root of the V") {
  auto q = sound();
  q.condition.cracks = {
      {units::millimetres(3), units::metres(4), units::millimetres(15), false},
      {units::millimetres(0.9), units::metres(40), units::millimetres(15), false}};
  auto r = route(q);
  CHECK(litres(r.filler) == Approx(0.9));
  CHECK(metres2(r.filler_area) == Approx(0.4));
  CHECK(litres(r.mortar) == 0.0);
  // Not measured: opened 10 mm deep, 0.1 L a metre.
  q.condition.cracks = {{units::millimetres(1), units::metres(6), {}, false}};
  r = route(q);
  CHECK(litres(r.filler) == Approx(0.6));
  CHECK(step(r, "repair").actions ==
        std::vector<std::string>{"open-to-a-v", "mix-small", "sand-flush"});
}

TEST_CASE("only hairlines leave nothing to repair") {
  auto q = sound();
  q.condition.cracks = {{units::millimetres(0.9), units::metres(40), {}, false}};
  CHECK_FALSE(route(q).has("repair"));
}

// Common practice: under 10 mm filler, from 10 mm mortar. 0.02 m2 x 6 mm x 5 = 0.6 L of filler;
// 0.03 m2 x 10 mm x 2 = 0.6 L of mortar, and 1 m2 of render at 20 mm 20 L.
TEST_CASE("hollows take filler or mortar by their depth") {
  auto q = sound();
  q.condition.divots = {{units::millimetres(6), units::square_metres(0.02), 5},
                        {units::millimetres(10), units::square_metres(0.03), 2}};
  q.condition.drummy_area = units::square_metres(1);
  const auto r = route(q);
  CHECK(litres(r.filler) == Approx(0.6));
  CHECK(litres(r.mortar) == Approx(20.6));
  CHECK(metres2(step(r, "repair").area) == Approx(0.1 + 0.06 + 1));
  CHECK(metres2(r.filler_area) == Approx(0.1));
  CHECK(holds(r, "repair") == std::vector<std::string>{"filler-hard", "mortar-age"});
  CHECK(step(r, "repair").actions ==
        std::vector<std::string>{"cut-out-drummy", "mix-small", "sand-flush", "mortar-by-weight"});
}

TEST_CASE("each repair is explained by its own formula") {
  auto q = sound();
  q.condition.cracks = {{units::millimetres(3), units::metres(4), units::millimetres(15), false},
                        {units::millimetres(2), units::metres(1), {}, false}};
  q.condition.divots = {{units::millimetres(6), units::square_metres(0.02), 5},
                        {units::millimetres(14), units::square_metres(0.03), 2}};
  q.condition.drummy_area = units::square_metres(1);
  auto trace = basinwright::trace::Trace::recording();
  const auto r = prep::route(q, trace);
  chemistry_rows::hold_steps(trace);
  REQUIRE(trace.find("quantities.filler.litres") != nullptr);
  CHECK(trace.find("quantities.filler.litres")->inputs.size() == 3);
  // 0.9 + 0.1 + 0.6 L
  CHECK(litres(r.filler) == Approx(1.6));
  // 0.03 m2 x 14 mm x 2 + 20 L
  CHECK(litres(r.mortar) == Approx(20.84));
}
