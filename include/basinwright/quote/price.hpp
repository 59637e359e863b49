// From cost to price: lines that sum, tax once, stages that sum.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/money/money.hpp"

namespace basinwright::quote {

/// A rate for some of the costs, with what is laid on them.
struct OtherRate {
  std::string name;
  money::Percentage rate;
  std::vector<std::string> on;  ///< Costs by the names of their lines.
};

struct Tax {
  std::string name;
  money::Percentage rate;
  std::vector<OtherRate> other_rates = {};  ///< No cost stands under two of them.
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

/// A rate with its subtotal, and the tax on that.
struct Taxed {
  std::string name;
  money::Percentage rate;
  money::Money net, amount;
};

/// net = sum of lines = sum of the subtotals by rate; a tax is rounded once, on its subtotal;
/// total = net + tax = sum of stages. What is laid on the cost (contingency, mark-up, discount,
/// rounding) is shared out over the rates as their costs are.
struct Price {
  std::vector<Line> lines;
  money::Money net, tax, total;
  std::string tax_name;
  std::vector<Taxed> taxes;  ///< Rates with a subtotal; empty without tax.
  std::vector<Due> stages;
};

/// @throws std::overflow_error when a sum leaves 64 bits
[[nodiscard]] Price price(const PriceQuestion& question);

}  // namespace basinwright::quote
