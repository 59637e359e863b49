#include "findings.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace basinwright::shell {

void Findings::refuse(std::string_view code,
                      std::string where,
                      std::string message,
                      std::string_view hint) {
  all_.push_back(
      {std::string(code), std::move(where), std::move(message), std::string(hint), false});
  ++refusals_;
}

void Findings::warn(std::string_view code,
                    std::string where,
                    std::string message,
                    std::string_view hint) {
  all_.push_back(
      {std::string(code), std::move(where), std::move(message), std::string(hint), true});
}

bool Findings::finite(double value, const std::string& where, std::string_view what) {
  if (!std::isfinite(value)) {
    refuse("not-finite", where, fmt::format("{} is not a number", what));
    return false;
  }
  constexpr double beyond_sense = 1e7;  // metres, far beyond any site's coordinates
  if (std::abs(value) <= beyond_sense) return true;
  refuse("too-large", where, fmt::format("{} is absurdly large", what));
  return false;
}

bool Findings::positive(units::Length value, const std::string& where, std::string_view what) {
  if (!finite(value.si(), where, what)) return false;
  if (value.si() > 0.0) return true;
  refuse("not-positive", where, fmt::format("{} must be more than 0", what));
  return false;
}

bool Findings::not_negative(units::Length value, const std::string& where, std::string_view what) {
  if (!finite(value.si(), where, what)) return false;
  if (value.si() >= 0.0) return true;
  refuse("negative", where, fmt::format("{} must not be negative", what));
  return false;
}

bool Findings::has(std::string_view code) const {
  return std::ranges::any_of(all_, [&](const Fault& f) { return f.code == code; });
}

std::vector<Fault> Findings::faults() const {
  return all_;
}

std::vector<Fault> Findings::warnings() const {
  std::vector<Fault> found;
  std::ranges::copy_if(all_, std::back_inserter(found), &Fault::warning);
  return found;
}

std::string at_index(std::string_view where, std::size_t index) {
  return fmt::format("{}/{}", where, index);
}

std::string in_metres(double metres) {
  return fmt::format("{:.3f} m", metres);
}

std::string in_millimetres(double metres) {
  return fmt::format("{:.0f} mm", metres * 1000.0);
}

std::string in_degrees(double degrees) {
  return fmt::format("{:.0f} degrees", degrees);
}

}  // namespace basinwright::shell
