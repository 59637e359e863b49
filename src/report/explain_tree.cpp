#include "explain_tree.hpp"

#include <fmt/format.h>

#include <set>
#include <utility>

#include "wording/common.hpp"
#include "wording/explain.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Array;
using document::Object;

// Indentation shows the tree: each input stands under the number it goes into.
constexpr int deepest_tree = 12;

class Tree {
 public:
  Tree(const Subject& s, const std::vector<GivenPlace>& places, const Keys& elsewhere)
      : s_(s), places_(places), elsewhere_(elsewhere) {
    table_.columns = {
        {"", say::number}, {"", say::value, document::Align::right}, {"", say::how_and_where_from}};
  }

  Value grow(const trace::Step& step, const std::string& name, int depth) {
    const bool link = is_link(step);
    // A number taken over from another step is told as that step, but for the one asked for.
    if (link && depth > 0 && !elsewhere_.contains(step.inputs.front().from))
      return grow(*s_.plan.trace.find(step.inputs.front().from), name, depth);
    const bool taken = step.formula == "value" && step.inputs.size() == 1 && !link;
    std::string how = taken  ? origin(step.inputs.front())
                      : link ? "= " + step.inputs.front().from
                             : "= " + step.formula;
    for (const std::string& words : {step.note, reasons(step.key)}) {
      if (!words.empty()) how += " (" + words + ")";
    }
    add(depth, name, step.value, {std::move(how), {}, Role::plain});
    Array inputs;
    inputs.reserve(step.inputs.size());
    for (const trace::Input& input : step.inputs)
      inputs.push_back(taken ? Value(told(input)) : input_of(input, depth + 1));
    return Object{{"key", Value(step.key)},
                  {"value_si", Value(step.value.si)},
                  {"shown", Value(text(step.value, step.key))},
                  {"formula", Value(step.formula)},
                  {"note", Value(step.note)},
                  {"inputs", Value(std::move(inputs))}};
  }

  [[nodiscard]] document::Table table() && { return std::move(table_); }

 private:
  [[nodiscard]] bool is_link(const trace::Step& step) const {
    return step.formula == "value" && step.inputs.size() == 1 &&
           s_.plan.trace.find(step.inputs.front().from) != nullptr;
  }

  [[nodiscard]] std::string text(const trace::Amount& amount, std::string_view name) const {
    return shown(amount, name, s_);
  }

  // Why a task does not start earlier: the gate, window or wait, in the page's words.
  [[nodiscard]] std::string reasons(const std::string& key) const {
    const auto& bookings = s_.plan.programme.bookings;
    std::string words;
    for (std::size_t i = 0; i < bookings.size(); ++i) {
      if (key != fmt::format("programme.tasks.{}.start", i)) continue;
      for (const sequence::Held& h : bookings[i].held_by) {
        const std::string one = held(h, s_.units);
        if (!one.empty()) words += (words.empty() ? say::held_because_of : "; ") + one;
      }
    }
    return words;
  }

  // No-break spaces keep the indentation through any format.
  void add(int depth, const std::string& name, const trace::Amount& amount, Cell how) {
    std::string pad;
    for (int i = 0; i < depth; ++i) pad += "\u00a0\u00a0";
    const Role role = depth == 0 ? Role::total : Role::plain;
    table_.rows.push_back(
        {{{pad + name, {}, role}, {text(amount, name), {}, Role::quantity}, std::move(how)}});
  }

  [[nodiscard]] std::string origin(const trace::Input& input) const {
    if (!input.from.empty()) return say::computed + input.from;
    if (input.kind == sources::Kind::given) {
      for (const GivenPlace& place : places_) {
        if (place.pointer == input.source_place) return say::given + place.place;
      }
      if (!input.source_place.starts_with('/')) return say::given + input.source_place;
      // Nobody gave it: what the job file leaves out has a default.
      return say::default_not_given_at + input.source_place;
    }
    std::string out = fmt::format("{}: {}", sources::name(input.kind), input.source_key);
    const bool both = !input.source_key.empty() && !input.source_place.empty();
    return out + (both ? ", " : "") + input.source_place;
  }

  [[nodiscard]] Object told(const trace::Input& input) const {
    return {{"name", Value(input.name)},
            {"value_si", Value(input.value.si)},
            {"shown", Value(text(input.value, input.name))},
            {"origin", Value(origin(input))}};
  }

  Value input_of(const trace::Input& input, int depth) {
    Object out = told(input);
    const trace::Step* below = s_.plan.trace.find(input.from);
    if (elsewhere_.contains(input.from)) {
      add(depth, input.name, input.value, {origin(input), Value(input.from), Role::plain});
    } else if (below != nullptr && depth < deepest_tree && told_.insert(input.from).second) {
      out.emplace_back("step", grow(*below, input.name, depth));
    } else {
      add(depth, input.name, input.value, {origin(input), {}, Role::plain});
    }
    return out;
  }

  const Subject& s_;
  const std::vector<GivenPlace>& places_;
  const Keys& elsewhere_;
  document::Table table_;
  std::set<std::string> told_;
};

}  // namespace

Explained explained(const Subject& s,
                    const trace::Step& step,
                    const std::vector<GivenPlace>& places,
                    const Keys& elsewhere) {
  Tree tree(s, places, elsewhere);
  Value value = tree.grow(step, step.key, 0);
  return {std::move(value), std::move(tree).table()};
}

}  // namespace basinwright::report
