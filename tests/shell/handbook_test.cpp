// The short cuts against their own worked table: volume by rule, exact volume, error.
#include "basinwright/shell/handbook.hpp"
#include "make.hpp"
#include "rows.hpp"

using namespace make;

namespace {

struct Line {
  shell::Pool pool;
  double rule;   // m3
  double exact;  // m3
  double error;  // percent, to 0.1
  std::size_t which = 0;
};

void check_row(const Line& line) {
  const auto t = taken(line.pool);
  const auto found = shell::handbook_volumes(line.pool, t);
  REQUIRE(found.size() > line.which);
  const auto& h = found[line.which];
  INFO(h.rule);
  CHECK(h.volume.si() == Approx(line.rule).margin(0.006));
  CHECK(t.water_volume.si() == Approx(line.exact).margin(0.006));
  CHECK(100.0 * h.difference == Approx(line.error).margin(0.06));
}

}  // namespace

// Trade handouts' formulae, worked for these pools: rectangle, hopper, ellipse, stadium.
TEST_CASE("handbook volumes meet the table of their errors") {
  check_row({rectangle(12, 6, breaks({{0, 1.1}, {12, 2.3}})), 122.400, 122.400, 0.0});
  check_row({rectangle(12, 6, breaks({{3, 1.1}, {8, 2.3}})), 122.400, 126.000, -2.9});
  check_row({rectangle(15, 7.5, breaks({{0, 0.95}, {6, 1.35}, {9.5, 3.1}, {12.5, 3.1}, {15, 2.4}})),
             227.81,
             231.47,
             -1.6});
  check_row(
      {rectangle(
           10,
           5,
           shell::HopperFloor{
               m(1.1), m(2.5), {m(3.5), m(0), m(10), m(5)}, {m(6.4), m(1.3), m(8.8), m(3.7)}}),
       90.00,
       79.29,
       13.5});
  check_row({pool(shell::Ellipse{m(10), m(5)}, breaks({{2, 1.1}, {7, 2.2}})), 64.80, 67.42, -3.9});
  check_row({pool(shell::Stadium{m(12), m(5)}, flat(1)), 47.12, 54.63, -13.7});
  check_row({pool(shell::Stadium{m(12), m(5)}, flat(1)), 53.60, 54.63, -1.9, 1});
  check_row({pool(shell::Stadium{m(9), m(6)}, flat(1)), 48.24, 46.27, 4.3, 1});
  check_row({pool(shell::RoundedRectangle{m(10), m(5), m(1)}, flat(1)), 50.00, 49.14, 1.7});
}

TEST_CASE("handbook volume of usual kidneys is 0.9 to 1.6 percent short") {
  for (const char* name : {"kidney_constant", "kidney_breaks"}) {
    auto p = rows::pool(rows::row(name).at("pool"));
    p.floor = flat(1.0);
    p.rim_to_water = m(0);
    p.cove_radius = m(0);
    const auto found = shell::handbook_volumes(p, taken(p));
    REQUIRE(found.size() == 1);
    CHECK(found[0].difference < -0.0085);
    CHECK(found[0].difference > -0.0165);
  }
}

TEST_CASE("handbook volumes are silent about freeform and l shaped pools") {
  const auto l = pool(shell::LShape{m(11), m(6.5), m(4), m(2.5)}, flat(1));
  CHECK(shell::handbook_volumes(l, taken(l)).empty());
  const auto p = pool(shell::Path{{point(0, 0), point(4, 0), point(0, 4)}}, flat(1));
  CHECK(shell::handbook_volumes(p, taken(p)).empty());
}

TEST_CASE("handbook volume of a circle") {
  const auto p = pool(shell::Circle{m(6)}, flat(1.2));
  const auto found = shell::handbook_volumes(p, taken(p));
  REQUIRE(found.size() == 1);
  CHECK_NEAR(found[0].difference, 0.0);
}
