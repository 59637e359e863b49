#include "alone.hpp"

#include <algorithm>
#include <utility>
#include <variant>

#include "basinwright/schedule/solve.hpp"

namespace basinwright::season {
namespace {

using schedule::Booking;
using schedule::Calendar;

bool open(const Calendar& calendar, Slot slot) {
  return at(slot) < calendar.size() && calendar[at(slot)] != 0;
}

// The slots of a date: [first, second).
std::pair<Slot, Slot> slots_of(const schedule::Problem& problem, std::int32_t date) {
  const auto begin = problem.date_of.begin();
  const auto end = begin + problem.horizon;
  const auto [from, to] = std::equal_range(begin, end, date);
  return {static_cast<Slot>(from - begin), static_cast<Slot>(to - begin)};
}

void close(const Candidate& candidate, const Presence& window, schedule::Problem& cut) {
  const auto [from, to] = slots_of(cut, window.date);
  for (Slot slot = from; slot < to; ++slot) {
    const std::int32_t time = candidate.time_of[at(slot)];
    const bool away = time < window.from || time >= window.to;
    const bool unready = window.from > -all_day && time < window.from + candidate.ready;
    if (!away && !unready) continue;
    for (std::size_t c = 0; c < cut.calendars.size(); ++c) {
      if (away || c == cut.units.calendar) {
        if (at(slot) < cut.calendars[c].size()) cut.calendars[c][at(slot)] = 0;
      }
    }
  }
}

/// Open slots by rank.
class Ranks {
 public:
  Ranks(const Calendar& calendar, Slot horizon) : horizon_(horizon) {
    for (Slot slot = 0; slot < horizon; ++slot) {
      rank_.push_back(slots_.size());
      if (open(calendar, slot)) slots_.push_back(slot);
    }
  }
  // The first and the end of `slots` open ones from `from` on; of none, `from` itself.
  [[nodiscard]] std::optional<std::pair<Slot, Slot>> resumed(Slot from, Slot slots) const {
    if (slots == 0) return std::pair{from, from};
    if (from >= horizon_) return {};
    const std::size_t first = rank_[at(from)];
    const std::size_t last = first + at(slots) - 1;
    if (last >= slots_.size()) return {};
    return std::pair{slots_[first], slots_[last] + 1};
  }

 private:
  Slot horizon_;
  std::vector<std::size_t> rank_;
  std::vector<Slot> slots_;
};

struct Tail {
  std::pair<Slot, Slot> unmask, refit;
  Slot finish = 0;
};

std::optional<Tail> tail(const Candidate& candidate,
                         const schedule::Problem& problem,
                         const Ranks& ranks,
                         Slot end) {
  const Aftercare& after = candidate.after;
  const Slot now = problem.facts ? problem.facts->now : 0;
  if (at(end) >= after.cured.size() || !after.cured[at(end)]) return {};
  const auto unmask = ranks.resumed(std::max(end, now), after.unmask);
  if (!unmask) return {};
  const Slot cured = std::max({*after.cured[at(end)], unmask->second, now});
  const auto refit = ranks.resumed(cured, after.refit);
  if (!refit) return {};
  const auto finish = ranks.resumed(refit->second, 1);
  if (!finish || at(finish->first) >= candidate.full.size()) return {};
  return Tail{*unmask, *refit, finish->first};
}

Slot last_unit_end(const schedule::Problem& problem, const schedule::Answer& answer) {
  Slot end = 0;
  if (problem.facts) {
    for (const schedule::DoneUnit& done : problem.facts->units) end = std::max(end, done.end);
  }
  for (const Booking& b : answer.bookings) {
    if (b.what == Booking::What::unit) end = std::max(end, b.end);
  }
  return end;
}

/// Gathers when somebody is there into one stretch a date.
class Attendance {
 public:
  Attendance(const Candidate& candidate, const schedule::Problem& problem)
      : c_(candidate), p_(problem) {}

  void worked(std::size_t calendar, Slot from, Slot to) {
    for (Slot slot = from; slot < to; ++slot) {
      if (open(p_.calendars[calendar], slot)) there(slot, 0);
    }
  }
  void unit(Slot from, Slot to) {
    there(from, c_.ready);
    for (Slot slot = from; slot < to; ++slot) there(slot, 0);
  }
  void there(Slot slot, Slot before) {
    const std::int32_t date = p_.date_of[at(slot)];
    const std::int32_t time = c_.time_of[at(slot)];
    auto it = std::ranges::lower_bound(at_, date, {}, &Presence::date);
    if (it == at_.end() || it->date != date) {
      at_.insert(it, {date, time - before, time + 1});
      return;
    }
    it->from = std::min(it->from, time - before);
    it->to = std::max(it->to, time + 1);
  }
  [[nodiscard]] std::vector<Presence> take() { return std::move(at_); }

 private:
  const Candidate& c_;
  const schedule::Problem& p_;
  std::vector<Presence> at_;
};

std::vector<Presence> attendance(const Candidate& candidate,
                                 const schedule::Problem& problem,
                                 const Booked& booked) {
  Attendance who(candidate, problem);
  for (const Booking& b : booked.answer.bookings) {
    switch (b.what) {
      case Booking::What::task: {
        const schedule::Task& task = problem.chain[b.index];
        if (task.kind == schedule::Kind::unattended) {
          who.there(b.start, 0);
        } else {
          who.worked(task.calendar, b.start, b.end);
        }
        break;
      }
      case Booking::What::unit:
        who.unit(b.start, b.end);
        break;
      case Booking::What::rework:
        who.worked(problem.units.rework->calendar, b.start, b.end);
        break;
      case Booking::What::reclean:
        who.worked(problem.anchor.reclean->calendar, b.start, b.end);
        break;
    }
  }
  who.worked(candidate.after.calendar, booked.unmask_start, booked.unmask_end);
  who.worked(candidate.after.calendar, booked.refit_start, booked.refit_end);
  who.there(booked.finish, 0);
  return who.take();
}

}  // namespace

void narrow(Windows& windows, const Presence& stretch) {
  auto it = std::ranges::lower_bound(windows, stretch.date, {}, &Presence::date);
  if (it == windows.end() || it->date != stretch.date) it = windows.insert(it, stretch);
  it->from = std::max(it->from, stretch.from);
  it->to = std::max(it->from, std::min(it->to, stretch.to));
  if (it->from == it->to) it->from = it->to = -all_day;  // one way to write a date without it
}

schedule::Problem within(const Candidate& candidate, const Windows& windows) {
  schedule::Problem cut = candidate.problem;
  for (const Presence& window : windows) close(candidate, window, cut);
  const Ranks ranks(cut.calendars[candidate.after.calendar], cut.horizon);
  cut.finish.assign(at(cut.horizon) + 1, std::nullopt);
  const Calendar& painting = cut.calendars[cut.units.calendar];
  const Slot painted = last_unit_end(cut, {});
  for (Slot end = 1; end <= cut.horizon; ++end) {
    if (!open(painting, end - 1) && end != painted) continue;
    if (const auto after = tail(candidate, cut, ranks, end))
      cut.finish[at(end)] = schedule::Finish{after->finish, 0};
  }
  return cut;
}

Single Singles::solve(std::size_t job, std::size_t crew, const Windows& windows) const {
  const Job& j = p_.jobs[job];
  Single single;
  single.value.unbooked = 1;
  const auto& candidate = j.by_crew[crew];
  if (!candidate) return single;
  const schedule::Problem cut = within(*candidate, windows);
  auto solved = schedule::solve(cut);
  auto* answer = std::get_if<schedule::Answer>(&solved);
  if (answer == nullptr) return single;
  Booked booked;
  booked.crew = crew;
  booked.windows = windows;
  booked.answer = std::move(*answer);
  const Ranks ranks(cut.calendars[candidate->after.calendar], cut.horizon);
  const auto after = tail(*candidate, cut, ranks, last_unit_end(cut, booked.answer));
  if (!after) return single;
  std::tie(booked.unmask_start, booked.unmask_end) = after->unmask;
  std::tie(booked.refit_start, booked.refit_end) = after->refit;
  booked.finish = after->finish;
  booked.full = candidate->full[at(booked.finish)];
  booked.days_late = j.promised ? std::max(0, booked.full - *j.promised) : 0;
  booked.at = attendance(*candidate, cut, booked);
  single.value = {0, booked.days_late * j.weight, booked.full, candidate->cost};
  single.booked = std::move(booked);
  return single;
}

SinglePtr Singles::best(std::size_t job, std::size_t crew, const Windows& windows) {
  std::vector<std::int32_t> flat;
  flat.reserve(3 * windows.size());
  for (const Presence& w : windows) flat.insert(flat.end(), {w.date, w.from, w.to});
  SinglePtr& known = known_[{job, crew, std::move(flat)}];
  if (!known) {
    ++solved_;
    known = std::make_shared<const Single>(solve(job, crew, windows));
  }
  return known;
}

}  // namespace basinwright::season
