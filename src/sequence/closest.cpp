#include "closest.hpp"

#include <algorithm>
#include <cstdlib>

namespace basinwright::sequence {
namespace {

using schedule::Answer;
using schedule::Problem;
using schedule::Slot;

std::size_t calendar_of(const Problem& problem, const schedule::Booking& b) {
  switch (b.what) {
    case schedule::Booking::What::task:
      return problem.chain[b.index].calendar;
    case schedule::Booking::What::rework:
      return problem.units.rework->calendar;
    case schedule::Booking::What::reclean:
      return problem.anchor.reclean->calendar;
    case schedule::Booking::What::unit:
      break;
  }
  return problem.units.calendar;
}

bool pauses(const Problem& problem, const schedule::Booking& b) {
  if (b.what == schedule::Booking::What::unit) return false;
  return b.what != schedule::Booking::What::task ||
         problem.chain[b.index].kind == schedule::Kind::attended;
}

// The booking at another start: as many open slots as it has now, or as long.
schedule::Booking moved(const Problem& problem, const schedule::Booking& b, Slot start) {
  schedule::Booking out = b;
  out.start = start;
  out.end = start + (b.end - b.start);
  if (!pauses(problem, b)) return out;
  const schedule::Calendar& open = problem.calendars[calendar_of(problem, b)];
  const auto is_open = [&](Slot s) {
    return static_cast<std::size_t>(s) < open.size() && open[static_cast<std::size_t>(s)] != 0;
  };
  Slot left = 0;
  for (Slot s = b.start; s < b.end; ++s) left += is_open(s) ? 1 : 0;
  for (out.end = start; left > 0 && out.end < problem.horizon; ++out.end)
    left -= is_open(out.end) ? 1 : 0;
  return out;
}

class Mover {
 public:
  Mover(const Problem& problem, const Answer& answer, const OldStarts& old)
      : problem_(problem), objective_(answer.objective), best_(answer.bookings), old_(old) {}

  Answer move() {
    const std::size_t n = best_.size();
    // A whole stretch first: bookings that hold each other only move together.
    for (std::size_t from = 0; from < n; ++from) attempt(from, n);
    for (std::size_t until = n; until > 0; --until) attempt(0, until);
    for (bool better = true; better;) {
      better = false;
      for (std::size_t i = 0; i < n; ++i) better = attempt(i, i + 1) || better;
    }
    Answer answer{best_, objective_};
    std::ranges::stable_sort(answer.bookings, {}, &schedule::Booking::start);
    return answer;
  }

 private:
  [[nodiscard]] std::int64_t distance(const std::vector<schedule::Booking>& bookings) const {
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < bookings.size(); ++i) {
      if (old_[i]) sum += std::abs(bookings[i].start - *old_[i]);
    }
    return sum;
  }

  bool attempt(std::size_t from, std::size_t until) {
    std::vector<schedule::Booking> bookings = best_;
    for (std::size_t i = from; i < until; ++i) {
      if (old_[i]) bookings[i] = moved(problem_, bookings[i], *old_[i]);
    }
    if (distance(bookings) >= distance(best_)) return false;
    Answer candidate{bookings, objective_};
    std::ranges::stable_sort(candidate.bookings, {}, &schedule::Booking::start);
    if (!schedule::verify(problem_, candidate).empty()) return false;
    best_ = std::move(bookings);
    return true;
  }

  const Problem& problem_;
  schedule::Objective objective_;
  std::vector<schedule::Booking> best_;
  const OldStarts& old_;
};

}  // namespace

Answer closest(const Problem& problem, const Answer& answer, const OldStarts& old) {
  return Mover(problem, answer, old).move();
}

}  // namespace basinwright::sequence
