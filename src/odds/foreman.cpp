// The replay without foresight.
#include <algorithm>
#include <optional>
#include <stdexcept>

#include "basinwright/odds/replay.hpp"
#include "basinwright/schedule/solve.hpp"

namespace basinwright::odds {
namespace {

using schedule::Booking;
using schedule::Facts;
using schedule::Kind;
using schedule::Problem;
using schedule::Slot;

constexpr int slots_in_hour = 4;

std::size_t at(Slot slot) {
  return static_cast<std::size_t>(slot);
}

bool open(const schedule::Calendar& calendar, Slot slot) {
  return at(slot) < calendar.size() && calendar[at(slot)] != 0;
}

class Foreman {
 public:
  Foreman(const sequence::Posed& year, const Climatology& climatology, int forecast_hours)
      : year_(year),
        truth_(year.problem()),
        expected_(truth_),
        climatology_(climatology),
        sees_(std::max(0, forecast_hours * slots_in_hour - year.looks_ahead())) {
    run_.last_coat_end = truth_.horizon;
    hide_closed_ends();
    // What is painted today must be known to be allowed.
    constexpr int slots_in_day = 24 * slots_in_hour;
    if (sees_ < slots_in_day) throw std::invalid_argument("as_a_foreman: too short a forecast");
  }

  Run work() {
    Slot morning = 0;
    while (morning < truth_.horizon && !run_.refill_done && !run_.window_missed) {
      if (!plan(morning)) return finished();
      morning = after_day_of(morning);
    }
    return finished();
  }

 private:
  // Does the day's part of the plan; false: the job cannot be finished any more.
  bool plan(Slot morning) {
    foresee(morning);
    facts_.now = morning;
    expected_.facts = facts_;
    auto solved = schedule::solve(expected_);
    auto* answer = std::get_if<schedule::Answer>(&solved);
    if (answer == nullptr && start_again_at_the_etch()) {
      expected_.facts = facts_;
      solved = schedule::solve(expected_);
      answer = std::get_if<schedule::Answer>(&solved);
    }
    // Nothing fits as far as can be seen: wait, unless a window has really gone by.
    if (answer == nullptr) {
      run_.window_missed = !facts_.units.empty() && !still_possible(morning);
      return !run_.window_missed;
    }
    const Slot evening = after_day_of(morning);
    for (const Booking& b : answer->bookings) {
      if (b.start >= evening) break;
      if (!carry_out(b)) break;
    }
    return true;
  }

  // The true problem has no finish for an end at which rain will keep everybody off the wall, and
  // that would tell of the rain weeks ahead: such an end counts as so much later than the one
  // before it, but not as later than the next.
  void hide_closed_ends() {
    auto& finish = expected_.finish;
    std::optional<schedule::Finish> next;
    std::vector<std::optional<schedule::Finish>> later(finish.size());
    for (std::size_t end = finish.size(); end-- > 0;) {
      if (finish[end]) next = finish[end];
      later[end] = next;
    }
    std::size_t before = finish.size();
    for (std::size_t end = 1; end < finish.size(); ++end) {
      if (truth_.finish[end]) {
        before = end;
      } else if (later[end]) {
        finish[end] = later[end];
        if (before == finish.size()) continue;
        const schedule::Finish& known = *truth_.finish[before];
        finish[end]->slot =
            std::min(finish[end]->slot, known.slot + static_cast<Slot>(end - before));
      }
    }
  }

  // The true weather as far as the forecast reaches, what is usual from there.
  void foresee(Slot morning) {
    const Slot from = std::min(truth_.horizon, morning + sees_);
    for (std::size_t c = 0; c < truth_.calendars.size(); ++c) {
      splice(truth_.calendars[c], climatology_.calendars[c], from, expected_.calendars[c]);
    }
    if (!truth_.wet.empty()) splice(truth_.wet, climatology_.wet, from, expected_.wet);
  }

  static void splice(const std::vector<char>& known,
                     const std::vector<char>& usual,
                     Slot from,
                     std::vector<char>& out) {
    std::copy(known.begin(), known.begin() + from, out.begin());
    std::copy(usual.begin() + from, usual.end(), out.begin() + from);
  }

  // Records what really comes of a booking; false: it could not be begun or ended as planned.
  bool carry_out(const Booking& b) {
    if (b.what == Booking::What::unit) {
      facts_.units.push_back({b.index, b.section, b.start, b.end});
      if (facts_.units.size() == 1) run_.first_coat = year_.moment(b.start);
      const auto& units = truth_.units;
      if (facts_.units.size() == units.coats.size() * units.sections.size()) finish(b.end);
      return true;
    }
    if (b.what != Booking::What::task) return false;
    const Slot end = true_end(b);
    if (end > truth_.horizon) return false;
    facts_.tasks.push_back({b.index, b.start, end});
    if (!run_.start) run_.start = year_.moment(b.start);
    return end == b.end;
  }

  [[nodiscard]] Slot true_end(const Booking& b) const {
    const schedule::Task& task = truth_.chain[b.index];
    if (task.kind != Kind::attended) return b.start + task.slots;
    Slot left = task.slots;
    Slot end = b.start;
    for (; left > 0 && end < truth_.horizon; ++end) {
      if (open(truth_.calendars[task.calendar], end)) --left;
    }
    return left > 0 ? truth_.horizon + 1 : end;
  }

  void finish(Slot end) {
    run_.last_coat_end = end;
    const auto& fill = truth_.finish[at(end)];
    if (fill) run_.refill_done = year_.full(fill->slot);
  }

  // Before anything is painted an old etch is only washed off and done again.
  bool start_again_at_the_etch() {
    if (!facts_.units.empty()) return false;
    std::size_t first = truth_.anchor.task;
    while (first > 0 && truth_.chain[first].lag_max) --first;
    const auto done = std::ranges::find_if(
        facts_.tasks, [&](const schedule::DoneTask& t) { return t.task >= first; });
    if (done == facts_.tasks.end()) return false;
    facts_.tasks.erase(done, facts_.tasks.end());
    ++run_.etched_again;
    return true;
  }

  [[nodiscard]] bool still_possible(Slot morning) const {
    Problem best = truth_;
    best.facts = facts_;
    best.facts->now = morning;
    return schedule::has_programme(best);
  }

  [[nodiscard]] Slot after_day_of(Slot slot) const {
    Slot next = slot;
    while (next < truth_.horizon && truth_.date_of[at(next)] == truth_.date_of[at(slot)]) ++next;
    return next;
  }

  Run finished() { return run_; }

  const sequence::Posed& year_;
  const Problem& truth_;
  Problem expected_;
  const Climatology& climatology_;
  Slot sees_;
  Facts facts_;
  Run run_;
};

// Whether a slot is set in at least, or in more than, half of the years.
std::vector<char> majority(const std::vector<const std::vector<char>*>& years, bool tie) {
  std::vector<char> out(years.front()->size(), 0);
  for (std::size_t s = 0; s < out.size(); ++s) {
    std::size_t set = 0;
    for (const std::vector<char>* year : years) {
      if (year->size() != out.size())
        throw std::invalid_argument("climatology: years of one length");
      if ((*year)[s] != 0) ++set;
    }
    out[s] = set * 2 > years.size() || (tie && set * 2 == years.size()) ? 1 : 0;
  }
  return out;
}

}  // namespace

Climatology climatology(const std::vector<sequence::Posed>& years, std::size_t without) {
  if (years.empty()) throw std::invalid_argument("climatology: one year or more");
  Climatology out;
  const auto of = [&](const auto& member, bool tie) {
    std::vector<const std::vector<char>*> all;
    for (std::size_t y = 0; y < years.size(); ++y) {
      if (y != without || years.size() == 1) all.push_back(&member(years[y].problem()));
    }
    return majority(all, tie);
  };
  for (std::size_t c = 0; c < years.front().problem().calendars.size(); ++c) {
    out.calendars.push_back(
        of([c](const Problem& p) -> const std::vector<char>& { return p.calendars.at(c); }, true));
  }
  out.wet = of([](const Problem& p) -> const std::vector<char>& { return p.wet; }, false);
  return out;
}

Run as_a_foreman(const sequence::Posed& year, const Climatology& climatology, int forecast_hours) {
  return Foreman(year, climatology, forecast_hours).work();
}

}  // namespace basinwright::odds
