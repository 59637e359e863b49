// A small problem to change one rule of at a time: hours as slots, days of 24, always open.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "basinwright/schedule/solve.hpp"
#include "support/catch.hpp"

namespace basinwright::schedule::hand {

inline std::size_t place(Slot slot) {
  return static_cast<std::size_t>(slot);
}

/// Open from hour `from` to hour `to` of each of `days` days.
inline Calendar daily(int days, Slot from, Slot to) {
  Calendar calendar(place(24 * days), 0);
  for (Slot day = 0; day < days; ++day) {
    for (Slot hour = from; hour < to; ++hour) {
      calendar[place(24 * day + hour)] = 1;
    }
  }
  return calendar;
}

/// Wash (2 h), etch (2 h), then one section with two coats of 2 h, recoat 20 to 24 h, dry 12 h;
/// calendar 0 is 07-16, calendar 1 (painting) 08-12; the finish comes 48 h after the last coat.
inline Problem plain(int days = 10) {
  Problem problem;
  problem.horizon = 24 * days;
  for (Slot slot = 0; slot < problem.horizon; ++slot) {
    problem.date_of.push_back(slot / 24);
    problem.cost_of.push_back(10);
  }
  problem.wet.assign(place(problem.horizon), 0);
  problem.calendars = {daily(days, 7, 16), daily(days, 8, 12)};
  problem.attendance = 100;
  problem.chain.resize(2);
  problem.chain[0].name = "wash";
  problem.chain[0].slots = 2;
  problem.chain[1].name = "etch";
  problem.chain[1].slots = 2;
  problem.anchor.task = 1;
  problem.anchor.limit = 96;
  problem.anchor.dry = 12;
  problem.units.coats = {"first", "second"};
  problem.units.sections = {"all"};
  problem.units.slots = {{2}, {2}};
  problem.units.calendar = 1;
  problem.units.recoat = {{20, 24}};
  for (Slot end = 0; end <= problem.horizon; ++end) {
    problem.finish.push_back(Finish{end + 48, 0});
  }
  return problem;
}

inline Answer answer(const Problem& problem) {
  const auto solved = solve(problem);
  if (const auto* reason = std::get_if<Infeasible>(&solved)) {
    FAIL("no programme: " << reason->why);
  }
  const Answer result = std::get<Answer>(solved);
  for (const std::string& complaint : verify(problem, result)) {
    FAIL_CHECK(complaint);
  }
  return result;
}

inline Infeasible refusal(const Problem& problem) {
  const auto solved = solve(problem);
  REQUIRE(std::holds_alternative<Infeasible>(solved));
  return std::get<Infeasible>(solved);
}

/// Start of the only booking of a kind at an index.
inline Slot start_of(const Answer& answer,
                     Booking::What what,
                     std::size_t index,
                     std::size_t section = 0) {
  for (const Booking& booking : answer.bookings) {
    if (booking.what == what && booking.index == index && booking.section == section) {
      return booking.start;
    }
  }
  FAIL("not booked");
  return 0;
}

}  // namespace basinwright::schedule::hand
