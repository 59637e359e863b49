// How a number came about: recorded while it is calculated, free when nobody asks.
#pragma once

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::trace {

/// A number with its dimension: what an explanation shows.
struct Amount {
  double si = 0.0;
  units::Dimensions dimensions;
  bool is_point = false;  ///< A temperature on a scale, not a difference.
  bool is_share = false;  ///< A share of a whole.
  bool is_money = false;  ///< In units of the job's currency.
};

[[nodiscard]] constexpr Amount amount(Amount as_it_is) {
  return as_it_is;
}
[[nodiscard]] constexpr Amount amount(double number) {
  return {number, {}, false, false};
}
[[nodiscard]] constexpr Amount amount(units::Fraction f) {
  return {f.share(), {}, false, true};
}
[[nodiscard]] constexpr Amount amount(units::Temperature t) {
  return {t.si(), {0, 0, 0, 1}, true, false};
}
template <int L, int M, int T, int K>
[[nodiscard]] constexpr Amount amount(units::Quantity<L, M, T, K> q) {
  return {q.si(), units::Quantity<L, M, T, K>::dimensions, false, false};
}

/// Names another recorded step as the origin of an operand.
struct From {
  std::string_view key;
};

/// One operand of a formula: its name there, its value, and where the value comes from: another
/// step, a source, or (with a pointer) the job file itself.
struct Operand {
  template <class Q>
  constexpr Operand(std::string_view name_, Q value_, From from_)
      : name(name_), value(amount(value_)), from(from_.key) {}
  template <class Q>
  constexpr Operand(std::string_view name_, const sources::Sourced<Q>& constant)
      : name(name_), value(amount(constant.value)), source(constant.source) {}
  template <class Q>
  constexpr Operand(std::string_view name_, Q value_, sources::Source source_)
      : name(name_), value(amount(value_)), source(source_) {}

  std::string_view name;
  Amount value;
  std::string_view from;  ///< Key of the step it was computed in; empty when `source` holds.
  sources::Source source;
};

/// A recorded operand; owns its text.
struct Input {
  std::string name;
  Amount value;
  std::string from;
  sources::Kind kind = sources::Kind::given;
  std::string source_key;
  std::string source_place;
};

/// A recorded step: `key` = `formula` over `inputs`, giving `value`.
///
/// The formula is plain arithmetic over the operands' names (+ - * / ^ ( ) ceil floor max min sqrt
/// round pi and numbers), in SI, so that a test can evaluate it again and hold it against `value`.
struct Step {
  std::string key;
  std::string formula;
  Amount value;
  std::vector<Input> inputs;
  std::string note;  ///< The rule in words, or how it was rounded; may be empty.
};

/// A constant that a calculation took: `key` is where the user may set it.
struct Used {
  std::string key;
  Amount value;
  sources::Source source;
};

/// The recorder handed through a calculation. Off, `note` returns its value and does nothing else;
/// the constants taken are listed either way, since the output says which of them were defaults.
class Trace {
 public:
  Trace() = default;
  [[nodiscard]] static Trace recording();
  /// Off, and no constant is listed: for figures that nobody will ask about.
  [[nodiscard]] static Trace none();
  [[nodiscard]] bool on() const { return on_; }
  /// Whether the constants taken are listed.
  [[nodiscard]] bool lists() const { return lists_; }
  [[nodiscard]] const std::vector<Step>& steps() const { return steps_; }
  [[nodiscard]] const Step* find(std::string_view key) const;

  /// Takes a constant that may be overridden at `key` ("productivity.abrade"), once a key.
  template <class Q>
  Q use(std::string_view key, const sources::Sourced<Q>& constant) {
    if (lists_) list(key, amount(constant.value), constant.source);
    return constant.value;
  }
  /// The constants taken, in the order of first use.
  [[nodiscard]] const std::vector<Used>& used() const { return used_; }

  /// Records `key` = `formula` and returns `value` unchanged. A key recorded again replaces the
  /// earlier step. Keys are the dotted paths of the job sheet's JSON.
  template <class Q>
  Q note(std::string_view key,
         Q value,
         std::string_view formula,
         std::initializer_list<Operand> operands,
         std::string_view words = {}) {
    if (on_) record(key, amount(value), formula, {operands.begin(), operands.size()}, words);
    return value;
  }

  /// `note` for operands whose number is not known beforehand.
  template <class Q>
  Q note_all(std::string_view key,
             Q value,
             std::string_view formula,
             std::span<const Operand> operands) {
    if (on_) record(key, amount(value), formula, operands, {});
    return value;
  }

  /// A rule for `absorb`: what a key or place begins with, and what it is to begin with instead.
  struct Renamed {
    std::string_view from;
    std::string to;
  };
  /// Takes over another trace's steps and constants, keys and places renamed by the first rule that
  /// fits.
  void absorb(const Trace& other, std::span<const Renamed> rules);

 private:
  void record(std::string_view key,
              Amount value,
              std::string_view formula,
              std::span<const Operand> operands,
              std::string_view words);
  void put(Step step);
  void list(std::string_view key, Amount value, const sources::Source& source);

  bool on_ = false;
  bool lists_ = true;
  std::vector<Step> steps_;
  std::vector<Used> used_;
};

}  // namespace basinwright::trace
