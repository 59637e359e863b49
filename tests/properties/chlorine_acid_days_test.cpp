// Hypochlorite and acid never on one day, whatever the hours, the waits and the size of the shell.
// Common practice: the two make chlorine gas in either order.
#include <fmt/format.h>

#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

// A shell that a crew does in a few hours, painted before or bare, with algae.
std::string job_text(double size, const char* from, const char* to, const char* coating) {
  return fmt::format(R"({{"job": {{"start": "2027-06-07"}},
    "pool": {{"outline": {{"kind": "circle", "diameter": {}}},
              "floor": {{"kind": "constant", "depth": "0.8 m"}}}},
    "surfaces": [{{"coating": "{}"{}}}],
    "condition": {{"algae": "normal", "lead_test": "clear"}},
    "crew": {{"people": 6, "painters": 3, "hours": ["{}", "{}"]}}}})",
                     size,
                     coating,
                     std::string_view(coating) == "none" ? "" : R"(, "acetone_test": "untouched")",
                     from,
                     to);
}

job::RateBook book(const char* wait) {
  return test::rates_of(fmt::format(R"({{"currency": "EUR", "labour": {{"hour": "40.00"}},
    "waits": {{"after_chlorine": "{}"}}}})",
                                    wait));
}

}  // namespace

TEST_CASE("acid is never on the day of the chlorine wash") {
  int dated = 0;
  for (const char* wait : {"0 h", "2 h", "12 h", "30 h"}) {
    for (const auto& [from, to] : {std::pair{"04:00", "23:00"}, std::pair{"07:00", "16:00"}}) {
      for (const double size : {1.0, 3.0, 6.0}) {
        for (const char* coating : {"epoxy", "none"}) {
          INFO(wait << " " << from << " " << size << " " << coating);
          const auto plan = test::plan_of(job_text(size, from, to, coating), book(wait));
          if (!plan.programme.feasible) continue;
          dates::Date washed{};
          dates::Date etched{};
          for (const auto& b : plan.programme.bookings) {
            if (b.task == "chlorine-wash") washed = b.end.date();
            if (b.task == "etch-walls") etched = b.start.date();
          }
          CHECK(washed < etched);
          // Chlorine comes back with the new water only, weeks after the last rinse.
          CHECK(plan.water.full.value() > etched);
          ++dated;
        }
      }
    }
  }
  CHECK(dated >= 40);
}
