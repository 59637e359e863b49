#include "season_extra_painter.hpp"

#include <algorithm>

namespace basinwright::job {
namespace {

using schedule::Calendar;

bool same_tasks(const schedule::Problem& a, const schedule::Problem& b) {
  return std::ranges::equal(a.chain, b.chain, [](const auto& x, const auto& y) {
    return x.name == y.name && x.kind == y.kind && x.calendar == y.calendar;
  });
}

Calendar only_in(const schedule::Problem& problem, const Calendar& calendar, const Week& week) {
  Calendar open = calendar;
  const auto slots = std::min(open.size(), problem.date_of.size());
  for (std::size_t s = 0; s < slots; ++s) {
    if (problem.date_of[s] < week.from || problem.date_of[s] > week.to) open[s] = 0;
  }
  return open;
}

}  // namespace

CandidatePtr painted_in(const season::Candidate& usual,
                        const season::Candidate& more,
                        const Week& week) {
  if (!same_tasks(usual.problem, more.problem) || more.problem.facts) return nullptr;
  auto made = std::make_shared<season::Candidate>(more);
  made->problem.chain = usual.problem.chain;
  made->after = usual.after;
  made->cost = usual.cost;
  Calendar& painting = made->problem.calendars[made->problem.units.calendar];
  painting = only_in(made->problem, painting, week);
  return made;
}

CandidatePtr prepared_in(const season::Candidate& usual,
                         const season::Candidate& more,
                         const Week& week) {
  if (!same_tasks(usual.problem, more.problem) || usual.problem.facts) return nullptr;
  auto made = std::make_shared<season::Candidate>(usual);
  schedule::Problem& p = made->problem;
  std::size_t rinsed = 0;
  for (std::size_t t = 0; t < p.chain.size(); ++t) {
    if (p.chain[t].kind == schedule::Kind::one_shift) rinsed = t + 1;
  }
  if (rinsed == 0) return nullptr;
  const std::size_t calendars = p.calendars.size();
  for (std::size_t c = 0; c < calendars; ++c)
    p.calendars.push_back(only_in(p, p.calendars[c], week));
  for (std::size_t t = 0; t < rinsed; ++t) {
    p.chain[t].slots = more.problem.chain[t].slots;
    p.chain[t].calendar += calendars;
  }
  return made;
}

}  // namespace basinwright::job
