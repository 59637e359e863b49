// A coat cut into the mornings it takes. By hand from area = rate x time x painters; common
// practice: the larger sections first, kits never split between two of them.
#include <numeric>

#include "basinwright/coverage/coats.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using units::square_metres;

namespace {

// 15 m2/h over 4 h: 60 m2 a painter and morning.
coverage::Morning morning(int painters) {
  return {square_metres(20), units::square_metres_per_hour(15), painters, units::hours(4)};
}

}  // namespace

TEST_CASE("what fits a morning is one section and names its painters") {
  const auto small = coverage::cut(square_metres(10), morning(2));
  CHECK(small.sections.size() == 1);
  CHECK(small.painters_for_one == 1);
  CHECK(coverage::cut(square_metres(120), morning(2)).sections.size() == 1);
  CHECK(coverage::cut(square_metres(120), morning(2)).painters_for_one == 2);
  CHECK(coverage::cut(square_metres(121), morning(3)).painters_for_one == 3);
}

TEST_CASE("what does not is cut at kit boundaries, evenly and the larger first") {
  // 250 m2 at 120 m2 a morning: 12.5 kits of 20 m2, six a morning: three sections.
  const auto found = coverage::cut(square_metres(250), morning(2));
  REQUIRE(found.sections.size() == 3);
  CHECK(std::accumulate(found.kits.begin(), found.kits.end(), std::int64_t{0}) == 13);
  units::Area all;
  for (std::size_t i = 0; i < found.sections.size(); ++i) {
    all += found.sections[i];
    CHECK(found.sections[i] <= square_metres(120.0001));
    if (i > 0) CHECK(found.kits[i] <= found.kits[i - 1]);
  }
  CHECK(all.in(square_metres) == Approx(250.0));
  CHECK(found.painters_for_one == 5);
  // Not even one kit fits a morning of a quarter of an hour.
  coverage::Morning short_one = morning(1);
  short_one.painting = units::hours(0.25);
  CHECK(coverage::cut(square_metres(250), short_one).sections.empty());
}

TEST_CASE("a morning without an hour takes no coat") {
  for (const double hours : {0.0, -0.5, 1e-30}) {
    CAPTURE(hours);
    coverage::Morning gone = morning(2);
    gone.painting = units::hours(hours);
    CHECK(coverage::cut(square_metres(10), gone).sections.empty());
    CHECK_FALSE(coverage::cut_at({square_metres(10)}, gone));
  }
}

TEST_CASE("cuts that are asked for hold where each fits a morning") {
  const auto found = coverage::cut_at({square_metres(8), square_metres(6)}, morning(1));
  REQUIRE(found.has_value());
  CHECK(found->sections.size() == 2);
  CHECK(found->kits == std::vector<std::int64_t>{1, 1});
  CHECK(found->painters_for_one == 1);
  CHECK(coverage::cut_at({square_metres(60), square_metres(60)}, morning(1))->painters_for_one ==
        2);
  CHECK_FALSE(coverage::cut_at({square_metres(61), square_metres(20)}, morning(1)));
}
