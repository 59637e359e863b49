// The rules of problem.hpp held against a season one by one, by plain loops over slots. Shares no
// code with the search on purpose, so that neither can hide the other's mistakes.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "basinwright/schedule/solve.hpp"
#include "basinwright/season/solve.hpp"

namespace basinwright::season {
namespace {

using What = schedule::Booking::What;

std::size_t n(Slot slot) {
  return static_cast<std::size_t>(slot);
}

/// A window from before any time leaves the date's beginning free.
constexpr std::int32_t nobody_yet = 1'000'000;

/// One booked job.
class JobChecker {
 public:
  JobChecker(const Job& job, const Candidate& candidate, const Booked& booked)
      : j_(job), c_(candidate), b_(booked), p_(candidate.problem) {}

  std::vector<std::string> complaints() {
    close_outside();
    tail();
    for (std::string& complaint : schedule::verify(p_, b_.answer)) say("{}", std::move(complaint));
    presence();
    return std::move(complaints_);
  }

 private:
  template <class... Args>
  void say(fmt::format_string<Args...> text, Args&&... args) {
    complaints_.push_back(j_.name + ": " + fmt::format(text, std::forward<Args>(args)...));
  }
  void same(const char* what, std::int64_t found, std::int64_t stated) {
    if (found != stated) say("the {} is {}, not {}", what, found, stated);
  }

  [[nodiscard]] bool allowed(Slot slot, std::int32_t lead) const {
    for (const Presence& window : b_.windows) {
      if (window.date != p_.date_of[n(slot)]) continue;
      const std::int32_t least = window.from > -nobody_yet ? window.from + lead : window.from;
      if (c_.time_of[n(slot)] < least || c_.time_of[n(slot)] >= window.to) return false;
    }
    return true;
  }

  void close_outside() {
    for (std::size_t c = 0; c < p_.calendars.size(); ++c) {
      const Slot lead = c == p_.units.calendar ? c_.ready : 0;
      for (Slot slot = 0; slot < p_.horizon && n(slot) < p_.calendars[c].size(); ++slot) {
        if (!allowed(slot, lead)) p_.calendars[c][n(slot)] = 0;
      }
    }
  }

  [[nodiscard]] bool open_after(Slot slot) const {
    const auto& calendar = p_.calendars[c_.after.calendar];
    return n(slot) < calendar.size() && calendar[n(slot)] != 0;
  }
  [[nodiscard]] Slot next(Slot slot) const {
    while (slot < p_.horizon && !open_after(slot)) ++slot;
    return slot;
  }
  [[nodiscard]] std::pair<Slot, Slot> work(Slot from, Slot slots) const {
    if (slots == 0) return {from, from};
    const Slot start = next(from);
    Slot end = start;
    for (Slot left = slots; left > 0; ++end) {
      if (end >= p_.horizon) return {start, p_.horizon + 1};
      left -= open_after(end) ? 1 : 0;
    }
    return {start, end};
  }

  // The work after the last unit, each as soon as it may; then what the finish means.
  void tail() {
    p_.finish.assign(n(p_.horizon) + 1, std::nullopt);
    Slot last = 0;
    if (p_.facts) {
      for (const auto& done : p_.facts->units) last = std::max(last, done.end);
    }
    for (const auto& b : b_.answer.bookings) {
      if (b.what == What::unit) last = std::max(last, b.end);
    }
    const Slot now = p_.facts ? p_.facts->now : 0;
    if (n(last) >= c_.after.cured.size() || !c_.after.cured[n(last)]) {
      say("it is never cured");
      return;
    }
    const auto unmask = work(std::max(last, now), c_.after.unmask);
    const auto refit =
        work(std::max({*c_.after.cured[n(last)], unmask.second, now}), c_.after.refit);
    const Slot finish = next(refit.second);
    if (finish >= p_.horizon) {
      say("there is no finish");
      return;
    }
    same("unmasking", unmask.first, b_.unmask_start);
    same("unmasking's end", unmask.second, b_.unmask_end);
    same("refit", refit.first, b_.refit_start);
    same("refit's end", refit.second, b_.refit_end);
    same("finish", finish, b_.finish);
    same("date of completion", c_.full[n(finish)], b_.full);
    const std::int64_t late = j_.promised ? c_.full[n(finish)] - *j_.promised : 0;
    same("lateness", late > 0 ? late : 0, b_.days_late);
    p_.finish[n(last)] = schedule::Finish{finish, 0};
  }

  // Whoever works is where the stretch of that date says.
  void presence() {
    for (const auto& b : b_.answer.bookings) {
      if (b.what == What::unit) {
        must_be_there(b.start, c_.ready);
        for (Slot slot = b.start; slot < b.end; ++slot) must_be_there(slot, 0);
      } else if (b.what == What::task && p_.chain[b.index].kind == schedule::Kind::unattended) {
        must_be_there(b.start, 0);
      } else {
        const std::size_t calendar = b.what == What::task     ? p_.chain[b.index].calendar
                                     : b.what == What::rework ? p_.units.rework->calendar
                                                              : p_.anchor.reclean->calendar;
        for (Slot slot = b.start; slot < b.end; ++slot) {
          if (p_.calendars[calendar][n(slot)] != 0) must_be_there(slot, 0);
        }
      }
    }
    for (Slot slot = b_.unmask_start; slot < b_.unmask_end; ++slot) {
      if (open_after(slot)) must_be_there(slot, 0);
    }
    for (Slot slot = b_.refit_start; slot < b_.refit_end; ++slot) {
      if (open_after(slot)) must_be_there(slot, 0);
    }
    must_be_there(b_.finish, 0);
  }

  void must_be_there(Slot slot, Slot lead) {
    int stretches = 0;
    bool inside = false;
    for (const Presence& at : b_.at) {
      if (at.date != p_.date_of[n(slot)]) continue;
      ++stretches;
      const std::int32_t time = c_.time_of[n(slot)];
      inside = inside || (at.from <= time - lead && time < at.to);
    }
    if (stretches != 1 || !inside) say("nobody is said to be there in slot {}", slot);
  }

  const Job& j_;
  const Candidate& c_;
  const Booked& b_;
  schedule::Problem p_;
  std::vector<std::string> complaints_;
};

/// Who a crew is with on a date.
struct Visit {
  std::size_t job = 0;
  Presence at;
};

void check_crew(const Problem& problem,
                const std::vector<Visit>& visits,
                std::vector<std::string>& complaints) {
  for (const Visit& a : visits) {
    for (const Visit& b : visits) {
      const bool first = a.at.from < b.at.from || (a.at.from == b.at.from && a.job < b.job);
      if (a.at.date != b.at.date || a.job == b.job || !first) continue;
      if (a.at.to + problem.travel[a.job][b.job] > b.at.from) {
        complaints.push_back(fmt::format("on date {} a crew is at {} until {} and at {} from {}",
                                         a.at.date,
                                         problem.jobs[a.job].name,
                                         a.at.to,
                                         problem.jobs[b.job].name,
                                         b.at.from));
      }
    }
  }
}

}  // namespace

std::vector<std::string> verify(const Problem& problem, const Answer& answer) {
  std::vector<std::string> complaints;
  if (answer.jobs.size() != problem.jobs.size()) return {"a job is not answered"};
  Value value;
  std::map<std::size_t, std::vector<Visit>> visits;
  for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
    const auto& booked = answer.jobs[j];
    if (!booked) {
      ++value.unbooked;
      continue;
    }
    if (booked->crew >= problem.crews || !problem.jobs[j].by_crew[booked->crew]) {
      complaints.push_back(problem.jobs[j].name + ": its crew cannot do it");
      continue;
    }
    const Candidate& candidate = *problem.jobs[j].by_crew[booked->crew];
    for (std::string& complaint : JobChecker(problem.jobs[j], candidate, *booked).complaints())
      complaints.push_back(std::move(complaint));
    for (const Presence& at : booked->at) visits[booked->crew].push_back({j, at});
    value.late += booked->days_late * problem.jobs[j].weight;
    value.refill += booked->full;
    value.cost += candidate.cost;
  }
  for (const auto& [crew, all] : visits) check_crew(problem, all, complaints);
  if (value != answer.value) complaints.emplace_back("the value is not what the jobs sum up to");
  if (answer.value < answer.bound) complaints.emplace_back("the value is under the bound");
  if (answer.optimal && answer.value != answer.bound)
    complaints.emplace_back("it is called optimal with a bound under it");
  return complaints;
}

}  // namespace basinwright::season
