// Collects everything that is wrong with a pool, so that it can be said at once.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/shell/fault.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::shell {

class Findings {
 public:
  void refuse(std::string_view code,
              std::string where,
              std::string message,
              std::string_view hint = {});
  void warn(std::string_view code,
            std::string where,
            std::string message,
            std::string_view hint = {});

  /// Each refuses what it does not accept, absurdly large values too, and says whether all is fine.
  bool finite(double value, const std::string& where, std::string_view what);
  bool positive(units::Length value, const std::string& where, std::string_view what);
  bool not_negative(units::Length value, const std::string& where, std::string_view what);

  [[nodiscard]] bool fine() const { return refusals_ == 0; }
  [[nodiscard]] std::size_t refusals() const { return refusals_; }
  [[nodiscard]] bool has(std::string_view code) const;
  /// Refusals and warnings in the order found.
  [[nodiscard]] std::vector<Fault> faults() const;
  [[nodiscard]] std::vector<Fault> warnings() const;

 private:
  std::vector<Fault> all_;
  std::size_t refusals_ = 0;
};

/// "/outline/points/2"
[[nodiscard]] std::string at_index(std::string_view where, std::size_t index);
[[nodiscard]] std::string in_metres(double metres);
[[nodiscard]] std::string in_millimetres(double metres);
[[nodiscard]] std::string in_degrees(double degrees);

}  // namespace basinwright::shell
