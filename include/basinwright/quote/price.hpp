// From cost to price: lines that sum, tax once, stages that sum.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/money/money.hpp"

namespace basinwright::quote {

struct Tax {
  std::string name;
  money::Percentage rate;
};

/// How the price is made of the cost. Mark-up or margin, never both.
struct Overheads {
  std::optional<money::Percentage> markup;
  std::optional<money::Percentage> margin;
  money::Percentage contingency;
  money::Money call_out;  ///< Least charge for labour.
  money::Money travel_a_day;
  money::Money disposal;  ///< Flat, for the job.
};

struct Stage {
  std::string event;
  money::Percentage share;
};

struct Line {
  std::string what;
  money::Money amount;
};

struct PriceQuestion {
  std::vector<Line> costs;
  Overheads overheads;
  std::optional<money::Percentage> discount;
  std::optional<money::Money> rounding_step;  ///< The total is rounded to it, in a line of its own.
  std::optional<Tax> tax;
  std::vector<Stage> stages;  ///< Empty: all on handover.
  money::Rounding rounding = money::Rounding::half_away;
};

struct Due {
  std::string event;
  money::Money amount;
};

/// net = sum of lines; tax once on the net; total = net + tax = sum of stages.
struct Price {
  std::vector<Line> lines;
  money::Money net, tax, total;
  std::string tax_name;
  std::vector<Due> stages;
};

/// @throws std::overflow_error when a sum leaves 64 bits
[[nodiscard]] Price price(const PriceQuestion& question);

}  // namespace basinwright::quote
