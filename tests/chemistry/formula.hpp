// Evaluates the formula of a recorded step over its operands, apart from the code that recorded it.
#pragma once

#include <algorithm>
#include <cctype>
#include <cmath>
#include <functional>
#include <map>
#include <numbers>
#include <stdexcept>
#include <string>
#include <vector>

#include "basinwright/trace/trace.hpp"

namespace chemistry_rows {

/// Recursive descent over + - * / ^ ( ), numbers, names, pi and the named functions.
class Formula {
 public:
  explicit Formula(const basinwright::trace::Step& step) : text_(step.formula) {
    for (const auto& input : step.inputs) operands_[input.name] = input.value.si;
  }

  double value() {
    const double result = sum();
    if (at_ != text_.size()) throw std::runtime_error("left over: " + text_.substr(at_));
    return result;
  }

 private:
  bool take(char wanted) {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    if (at_ == text_.size() || text_[at_] != wanted) return false;
    ++at_;
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    return true;
  }
  double sum() {
    double result = product();
    for (;;) {
      if (take('+')) {
        result += product();
      } else if (take('-')) {
        result -= product();
      } else {
        return result;
      }
    }
  }
  double product() {
    double result = power();
    for (;;) {
      if (take('*')) {
        result *= power();
      } else if (take('/')) {
        result /= power();
      } else {
        return result;
      }
    }
  }
  double power() {
    const double base = atom();
    return take('^') ? std::pow(base, power()) : base;
  }
  double atom() {
    if (take('-')) return -atom();
    if (take('(')) {
      const double inner = sum();
      if (!take(')')) throw std::runtime_error("no closing bracket");
      return inner;
    }
    std::size_t end = at_;
    const auto part = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0; };
    while (end < text_.size() && (part(text_[end]) || text_[end] == '_' || text_[end] == '.'))
      ++end;
    const std::string word = text_.substr(at_, end - at_);
    if (word.empty()) throw std::runtime_error("nothing to evaluate in: " + text_);
    at_ = end;
    if (std::isdigit(static_cast<unsigned char>(word.front())) != 0) return std::stod(word);
    if (take('(')) return call(word);
    return word == "pi" ? std::numbers::pi : operands_.at(word);
  }
  double call(const std::string& name) {
    std::vector<double> arguments{sum()};
    while (take(',')) arguments.push_back(sum());
    if (!take(')')) throw std::runtime_error("no closing bracket");
    if (name == "max") return *std::max_element(arguments.begin(), arguments.end());
    if (name == "min") return *std::min_element(arguments.begin(), arguments.end());
    const std::map<std::string, double (*)(double)> functions{
        {"ceil", std::ceil}, {"floor", std::floor}, {"sqrt", std::sqrt}, {"round", std::round}};
    return functions.at(name)(arguments.front());
  }

  std::string text_;
  std::size_t at_ = 0;
  std::map<std::string, double> operands_;
};

}  // namespace chemistry_rows
