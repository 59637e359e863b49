#include "basinwright/trace/trace.hpp"

#include <algorithm>

namespace basinwright::trace {

Trace Trace::recording() {
  Trace trace;
  trace.on_ = true;
  return trace;
}

Trace Trace::none() {
  Trace trace;
  trace.lists_ = false;
  return trace;
}

const Step* Trace::find(std::string_view key) const {
  const auto it = std::ranges::find(steps_, key, &Step::key);
  return it == steps_.end() ? nullptr : &*it;
}

void Trace::record(std::string_view key,
                   Amount value,
                   std::string_view formula,
                   std::span<const Operand> operands,
                   std::string_view words) {
  Step step{std::string(key), std::string(formula), value, {}, std::string(words)};
  step.inputs.reserve(operands.size());
  for (const Operand& operand : operands) {
    step.inputs.push_back({std::string(operand.name),
                           operand.value,
                           std::string(operand.from),
                           operand.source.kind,
                           std::string(operand.source.key),
                           std::string(operand.source.place)});
  }
  put(std::move(step));
}

void Trace::put(Step step) {
  const auto it = std::ranges::find(steps_, step.key, &Step::key);
  if (it == steps_.end()) {
    steps_.push_back(std::move(step));
  } else {
    *it = std::move(step);
  }
}

void Trace::absorb(const Trace& other, std::span<const Renamed> rules) {
  const auto renamed = [&](std::string text) {
    for (const Renamed& rule : rules) {
      if (text.starts_with(rule.from)) return text.replace(0, rule.from.size(), rule.to);
    }
    return text;
  };
  for (Step step : other.steps_) {
    step.key = renamed(std::move(step.key));
    for (Input& input : step.inputs) {
      input.from = renamed(std::move(input.from));
      input.source_place = renamed(std::move(input.source_place));
    }
    put(std::move(step));
  }
  for (const Used& used : other.used_) list(used.key, used.value, used.source);
}

void Trace::list(std::string_view key, Amount value, const sources::Source& source) {
  if (std::ranges::find(used_, key, &Used::key) != used_.end()) return;
  constexpr std::size_t usual = 96;
  if (used_.empty()) used_.reserve(usual);
  used_.push_back({std::string(key), value, source});
}

}  // namespace basinwright::trace
