// The problems of a file with thousands of rows, told so that a person can read them.
#pragma once

#include <vector>

#include "node.hpp"

namespace basinwright::readers {

/// Problems of one code that are told one by one; the others are counted.
inline constexpr std::size_t told_of_each = 10;
/// A file with more problems than this is not read to its end.
inline constexpr std::size_t hopeless_problems = 20'000;

/// Tells the first few problems of each code in their places, then how many more there were.
class WeatherProblems {
 public:
  WeatherProblems(const SourceText& source, diagnostics::Problems& problems)
      : source_(source), problems_(problems) {}

  void tell(Complaint complaint);
  [[nodiscard]] bool is_hopeless() const { return count_ > hopeless_problems; }
  /// Says how many were left unsaid, at the first of them. Call once, at the end.
  void finish();

 private:
  struct Kind {
    Code code;
    std::size_t count = 0;
    Span first_unsaid = {};
    diagnostics::Severity severity = diagnostics::Severity::error;
  };

  const SourceText& source_;
  diagnostics::Problems& problems_;
  std::vector<Kind> kinds_;
  std::size_t count_ = 0;
};

/// "8,760".
[[nodiscard]] std::string grouped(std::size_t number);

}  // namespace basinwright::readers
