// Counted things: used up, worn or hired, each by a rule.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "basinwright/money/money.hpp"

namespace basinwright::quote {

/// What a count is taken per.
enum class Per {
  job,
  day,
  person,
  painter,
  painted_area,
  abraded_area,
  etched_area,
  edge,
  coat_session,
  kit,
  tread_area,
  step_edge
};

/// A thing used up or worn, with the rule for its count: `rate` for each `per`, rounded up.
struct Rule {
  std::string item;
  Per per = Per::job;
  double rate = 1.0;   ///< Pieces for each; areas in m2, lengths in m.
  money::Money price;  ///< Of one piece.
};

/// What the rules count by.
struct Basis {
  double days = 0, people = 0, painters = 0;
  double painted = 0, abraded = 0, etched = 0;  ///< m2
  double edge = 0;                              ///< m
  double coat_sessions = 0, kits = 0;
  double treads = 0;     ///< m2
  double step_edge = 0;  ///< m
  [[nodiscard]] double of(Per per) const;
};

struct Counted {
  Rule rule;
  std::int64_t count = 0;
  money::Money total;
};

/// count = ceil(rate x basis); a rule whose basis is 0 counts nothing and is left out.
[[nodiscard]] std::vector<Counted> count(const std::vector<Rule>& rules, const Basis& basis);

/// Hire by the day.
struct Hire {
  std::string item;
  std::string task;  ///< The task it is needed for; empty: all days on site.
  money::Money day;
};

struct Hired {
  std::string item;
  std::int64_t days = 0;
  money::Money total;
};

}  // namespace basinwright::quote
