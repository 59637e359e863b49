// How long a take-off takes, for the shell of the reference file that takes longest. Printed, never
// asserted: another machine, another figure.
#include <fmt/format.h>
#include <algorithm>
#include <chrono>
#include <string>

#include "shell/rows.hpp"

#include "basinwright/shell/parts.hpp"
#include "basinwright/shell/take_off.hpp"

namespace {

namespace shell = basinwright::shell;
using Clock = std::chrono::steady_clock;

// Microseconds a call, the best of several rounds.
template <class Work>
double microseconds(Work work) {
  constexpr int rounds = 7;
  constexpr int calls = 200;
  double best = 1e300;
  for (int r = 0; r < rounds; ++r) {
    const auto start = Clock::now();
    for (int i = 0; i < calls; ++i) work();
    const std::chrono::duration<double, std::micro> took = Clock::now() - start;
    best = std::min(best, took.count() / calls);
  }
  return best;
}

double taken(const shell::Pool& pool) {
  basinwright::trace::Trace off;
  const auto measured = shell::take_off(pool, off);
  return std::get<shell::Measured>(measured).take_off.painted_area.si();
}

}  // namespace

int main() {
  std::string name;
  double slowest = 0.0;
  double all = 0.0;
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    const shell::Pool pool = rows::pool(row.at("pool"));
    volatile double kept = 0.0;
    const double took = microseconds([&] { kept = taken(pool); });
    all += took;
    if (took <= slowest) continue;
    slowest = took;
    name = row.at("name");
  }
  const shell::Pool pool = rows::pool(rows::row(name).at("pool"));
  basinwright::trace::Trace off;
  const auto measured = shell::take_off(pool, off);
  const auto whole = std::get<shell::Measured>(measured).take_off.painted_area;
  volatile double kept = 0.0;
  const double cut = microseconds([&] {
    kept = shell::parts_by_area(pool, {whole * 0.3, whole * 0.6}).front().painted.si();
  });
  fmt::print("take-off of {}: {:.1f} us, the slowest of {} shells ({:.1f} us on average)\n",
             name,
             slowest,
             file.at("rows").size(),
             all / static_cast<double>(file.at("rows").size()));
  fmt::print("the same cut into three shares: {:.1f} us\n", cut);
}
