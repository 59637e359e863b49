#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <stdexcept>

#include "basinwright/units/show.hpp"

namespace basinwright::units {
namespace {

/// A decimal: 0.DDDD x 10^exponent.
struct Decimal {
  std::string digits;
  int exponent = 0;
};

/// The shortest decimal that reads back as `magnitude`.
Decimal shortest(double magnitude) {
  constexpr std::size_t room = 32;  // 17 digits, point, exponent
  std::array<char, room> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + room, magnitude, std::chars_format::scientific).ptr;
  const std::string_view all(text.data(), static_cast<std::size_t>(end - text.data()));
  const std::size_t e = all.find('e');
  Decimal out;
  for (const char c : all.substr(0, e)) {
    if (c != '.') out.digits += c;
  }
  const std::size_t sign = all[e + 1] == '+' ? 1 : 0;
  std::from_chars(all.data() + e + 1 + sign, end, out.exponent);
  ++out.exponent;
  return out;
}

/// Adds one in the last place; a carry out of the first digit lengthens the number.
void increment(std::string& digits) {
  for (std::size_t i = digits.size(); i-- > 0;) {
    if (digits[i] != '9') {
      ++digits[i];
      return;
    }
    digits[i] = '0';
  }
  digits.insert(digits.begin(), '1');
}

/// All digits of the number scaled by 10^decimals and rounded half up, at least one before the
/// point.
std::string scaled_digits(const Decimal& number, int decimals) {
  const int kept = number.exponent + decimals;
  std::string out;
  if (kept >= 0) {
    const auto count = static_cast<std::size_t>(kept);
    out = number.digits.substr(0, count);
    out.resize(count, '0');
    if (count < number.digits.size() && number.digits[count] >= '5') increment(out);
  }
  const std::size_t least = static_cast<std::size_t>(decimals) + 1;
  if (out.size() < least) out.insert(0, least - out.size(), '0');
  return out;
}

}  // namespace

std::string fixed(double value, int decimals) {
  constexpr int most = 30;
  if (!std::isfinite(value) || decimals < 0 || decimals > most) {
    throw std::invalid_argument("fixed: needs a finite value and 0 to 30 decimals");
  }
  std::string out = scaled_digits(shortest(std::abs(value)), decimals);
  const bool zero = out.find_first_not_of('0') == std::string::npos;
  if (decimals > 0) out.insert(out.size() - static_cast<std::size_t>(decimals), 1, '.');
  if (value < 0.0 && !zero) out.insert(0, 1, '-');
  return out;
}

}  // namespace basinwright::units
