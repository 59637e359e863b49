#include <algorithm>
#include <limits>

#include "basinwright/money/money.hpp"
#include "wide.hpp"

namespace basinwright::money {
namespace {

constexpr int base = 10;

bool digits_only(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

/// Appends decimal digits to `value`; false when it leaves 64 bits.
bool append(Wide& value, std::string_view digits) {
  // One more than the largest amount still fits when negative.
  constexpr Wide most = static_cast<Wide>(std::numeric_limits<std::int64_t>::max()) + 1;
  for (const char c : digits) {
    value = value * base + (c - '0');
    if (value > most) return false;
  }
  return true;
}

}  // namespace

std::optional<Money> parse(std::string_view text, const Currency& currency) {
  const bool negative = text.starts_with('-');
  if (negative) text.remove_prefix(1);
  const std::size_t point = text.find('.');
  const bool pointed = point != std::string_view::npos;
  const std::string_view units = text.substr(0, point);
  const std::string_view parts = pointed ? text.substr(point + 1) : std::string_view();
  if (units.empty() || (pointed && parts.empty())) return std::nullopt;
  if (!digits_only(units) || !digits_only(parts)) return std::nullopt;
  const auto decimals = static_cast<std::size_t>(currency.decimals);
  if (parts.size() > decimals) return std::nullopt;
  Wide value = 0;
  const std::string zeros(decimals - parts.size(), '0');
  if (!append(value, units) || !append(value, parts) || !append(value, zeros)) return std::nullopt;
  if (negative) value = -value;
  if (value > std::numeric_limits<std::int64_t>::max()) return std::nullopt;
  return Money::of_minor(narrow(value));
}

std::string plain(Money amount, const Currency& currency) {
  const bool negative = amount.minor() < 0;
  std::string digits = std::to_string(amount.minor()).substr(negative ? 1 : 0);
  const auto decimals = static_cast<std::size_t>(currency.decimals);
  if (digits.size() <= decimals) digits.insert(0, decimals + 1 - digits.size(), '0');
  if (decimals > 0) digits.insert(digits.size() - decimals, 1, '.');
  if (negative) digits.insert(0, 1, '-');
  return digits;
}

}  // namespace basinwright::money
