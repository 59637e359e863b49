// Segments of a circle on a chord of length 1 against Simpson's rule over the arc itself, on both
// sides of the angle at which series take over from the direct forms.
#include <cmath>
#include <functional>
#include <numbers>

#include "shell/moments.hpp"
#include "support/catch.hpp"

using namespace basinwright::shell::geometry;

namespace {

double over_arc(double t, const std::function<double(double)>& f) {
  constexpr int halves = 2000;
  const double step = t / halves;
  double sum = f(-t / 2.0) + f(t / 2.0);
  for (int i = 1; i < halves; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * f(-t / 2.0 + i * step);
  return sum * step / 3.0;
}

}  // namespace

TEST_CASE("area, moment, mean and length of a segment are those of its integrals") {
  for (const double t : {0.001, 0.02, 0.15, 0.29, 0.31, 1.0, 2.5, std::numbers::pi, 5.0}) {
    INFO(t);
    const double radius = 0.5 / std::sin(t / 2.0);
    // Height over the chord, as a product that loses no digits where the arc is flat.
    const auto height = [&](double a) {
      return 2.0 * radius * std::sin((t / 2.0 + a) / 2.0) * std::sin((t / 2.0 - a) / 2.0);
    };
    const auto across = [&](double a) { return radius * std::cos(a); };
    const ArcFactors f = arc_factors(t);
    CHECK(f.area ==
          Approx(over_arc(t, [&](double a) { return height(a) * across(a); })).epsilon(1e-11));
    CHECK(f.moment == Approx(over_arc(t, [&](double a) {
                        return height(a) * height(a) / 2.0 * across(a);
                      })).epsilon(1e-9));
    CHECK(f.mean ==
          Approx(over_arc(t, [&](double a) { return height(a) * radius; })).epsilon(1e-11));
    CHECK(f.length == Approx(radius * t).epsilon(1e-14));
  }
}
