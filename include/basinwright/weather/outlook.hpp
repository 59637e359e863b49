// A gate held against the weather, step by step.
#pragma once

#include <span>
#include <vector>

#include "basinwright/weather/conditions.hpp"
#include "basinwright/weather/gate.hpp"

namespace basinwright::weather {

/// Steps of elapsed time, each with the hour the local clock shows in it; the first begins an hour
/// and the last ends one.
struct Steps {
  std::span<const HourNumber> hours;
  int per_hour = 1;
};

/// Whether a task may be worked on in each step.
///
/// A step is open when every rule of the gate holds over the time it speaks of, counted in elapsed
/// steps from this one: rain from its start to `rain_free_after` past its end, and so on. Because
/// each step carries its own before and after, a stretch of work is allowed exactly when all its
/// steps are open. A value that is unknown inside the covered span closes; past the span
/// climatology speaks, or nobody, and then the rule holds.
///
/// `conditions` and the steps' hours must outlive it.
class Outlook {
 public:
  Outlook(const Conditions& conditions, const Gate& gate, Steps steps);
  /// One a step: 1 open, 0 closed.
  [[nodiscard]] std::vector<char> calendar() const;
  /// The first rule that fails at a step, or open.
  [[nodiscard]] Verdict verdict(std::int32_t step) const;
  /// The worst of the values looked at for the open steps [from, to).
  [[nodiscard]] Quality rests_on(std::int32_t from, std::int32_t to) const;
  /// Every rule that fails at a step, in the order of `all_rules`.
  [[nodiscard]] std::vector<Verdict> failures(std::int32_t step) const;

 private:
  /// The steps a rule speaks of, from the step itself, both included.
  struct Span {
    Rule rule;
    std::int32_t from, to;
  };
  [[nodiscard]] HourNumber hour_at(std::int32_t step) const;
  [[nodiscard]] std::vector<char> broken(Rule rule, std::int32_t from, std::int32_t to) const;
  void close(std::vector<char>& open, const Span& span) const;
  [[nodiscard]] std::int32_t first_broken(const Span& span, std::int32_t step) const;
  [[nodiscard]] Verdict failure(Rule rule, HourNumber hour) const;
  void ask(Rule rule, std::int32_t from, std::int32_t to);

  const Conditions* conditions_;
  Gate gate_;
  Steps steps_;
  std::vector<Span> spans_;  ///< Of the rules that are asked, in their order.
};

}  // namespace basinwright::weather
