// Evaluates the formula of a recorded step over its inputs, for checking records.
#pragma once

#include <cctype>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <stdexcept>
#include <string>

#include "basinwright/trace/trace.hpp"

namespace formula {

class Evaluator {
 public:
  explicit Evaluator(const basinwright::trace::Step& step) : step_(step), text_(step.formula) {}

  double value() {
    const double v = sum();
    if (at_ != text_.size()) throw std::runtime_error("left over: " + text_.substr(at_));
    return v;
  }

 private:
  char next() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    return at_ < text_.size() ? text_[at_] : '\0';
  }
  bool take(char c) { return next() == c ? (++at_, true) : false; }

  double sum() {
    double v = product();
    for (;;) {
      if (take('+')) {
        v += product();
      } else if (take('-')) {
        v -= product();
      } else {
        return v;
      }
    }
  }
  double product() {
    double v = power();
    for (;;) {
      if (take('*')) {
        v *= power();
      } else if (take('/')) {
        v /= power();
      } else {
        return v;
      }
    }
  }
  double power() {
    const double base = term();
    return take('^') ? std::pow(base, power()) : base;
  }
  double term() {
    if (take('-')) return -term();
    if (take('(')) {
      const double v = sum();
      if (!take(')')) throw std::runtime_error("no closing bracket");
      return v;
    }
    const char c = next();
    if (std::isdigit(static_cast<unsigned char>(c)) != 0) {
      char* end = nullptr;
      const double v = std::strtod(text_.c_str() + at_, &end);
      at_ = static_cast<std::size_t>(end - text_.c_str());
      return v;
    }
    std::string word;
    while (at_ < text_.size() &&
           (std::isalnum(static_cast<unsigned char>(text_[at_])) != 0 || text_[at_] == '_')) {
      word += text_[at_++];
    }
    if (word == "pi") return std::numbers::pi;
    if (word == "sqrt") return std::sqrt(term());
    for (const auto& input : step_.inputs) {
      if (input.name == word) return input.value.si;
    }
    throw std::runtime_error("unknown name '" + word + "'");
  }

  const basinwright::trace::Step& step_;
  std::string text_;
  std::size_t at_ = 0;
};

}  // namespace formula
