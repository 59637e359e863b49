// How much paint a job file needs: the library used from another project.
#include <basinwright/job/plan.hpp>
#include <basinwright/readers/read.hpp>
#include <basinwright/units/unit.hpp>
#include <cstdio>
#include <fstream>
#include <iterator>

int main(int count, char** words) {
  using namespace basinwright;
  std::ifstream file(count > 1 ? words[1] : "pool.json");
  const std::string text((std::istreambuf_iterator<char>(file)), {});
  diagnostics::Problems problems;
  const auto job = readers::read_job({"pool.json", text}, problems);
  const auto rates = readers::read_rate_book(readers::demonstration_rates(), problems);
  for (const auto& problem : problems.sorted())
    std::fputs(diagnostics::underlined(problem, text).c_str(), stderr);
  if (!job || !rates || !job::mismatches(*job, *rates).empty()) return 1;
  const job::Plan plan = job::make_plan(*job, *rates, {.today = *dates::parse_date("2027-01-04")});
  std::printf("%.1f m2, %lld kits\n",
              plan.take_off.painted.in(units::square_metres),
              static_cast<long long>(plan.quantities.kits));
}
