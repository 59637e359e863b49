// Money in whole minor units of one currency; never a binary fraction.
#pragma once

#include <compare>
#include <concepts>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace basinwright::money {

/// An ISO 4217 currency: its code and how many decimals its minor unit has.
struct Currency {
  char code[4] = {'X', 'X', 'X', '\0'};  ///< The standard's code for no currency.
  int decimals = 2;
  [[nodiscard]] std::string_view name() const { return {code, 3}; }
  friend constexpr bool operator==(const Currency&, const Currency&) = default;
};

/// The currency of an ISO 4217 code in capitals; nothing for a code that is not three capitals.
/// Decimals are 2 but for the standard's exceptions (0: JPY, KRW, ...; 3: BHD, KWD, ...; 4: CLF,
/// UYW). @source iso-4217 table A.1
[[nodiscard]] std::optional<Currency> currency(std::string_view code);

/// How an exact amount becomes whole minor units. @source common practice: half away from zero
enum class Rounding { half_away, half_even };

/// An amount in whole minor units. Sums are overflow-checked.
/// @throws std::overflow_error when a sum leaves 64 bits
class Money {
 public:
  constexpr Money() = default;
  [[nodiscard]] static constexpr Money of_minor(std::int64_t units) { return Money(units); }
  static Money of_minor(std::floating_point auto) = delete;
  [[nodiscard]] constexpr std::int64_t minor() const { return minor_; }
  friend Money operator+(Money a, Money b);
  friend Money operator-(Money a, Money b);
  friend Money operator*(Money a, std::int64_t count);
  /// A binary fraction never multiplies money: use `share` or `scaled`, which round by name.
  friend Money operator*(Money, std::floating_point auto) = delete;
  Money& operator+=(Money other) { return *this = *this + other; }
  friend constexpr bool operator==(Money, Money) = default;
  friend constexpr auto operator<=>(Money a, Money b) { return a.minor_ <=> b.minor_; }

 private:
  constexpr explicit Money(std::int64_t minor) : minor_(minor) {}
  std::int64_t minor_ = 0;
};

/// A share that money is multiplied by, in millionths (1 % = 10,000): tax, mark-up, discount. Sales
/// taxes go down to thousandths of a percent.
struct Percentage {
  std::int64_t millionths = 0;
  friend constexpr auto operator<=>(Percentage, Percentage) = default;
};
/// 100 %, in millionths.
inline constexpr std::int64_t whole = 1'000'000;

/// Reads an exact decimal ("1234.50") into minor units; nothing when it is no decimal, has more
/// decimals than the currency, or does not fit.
[[nodiscard]] std::optional<Money> parse(std::string_view text, const Currency& currency);

/// The amount as a plain decimal with the currency's decimals: "1234.50", "-0.05", "120" (JPY).
[[nodiscard]] std::string plain(Money amount, const Currency& currency);

/// `amount` x `rate`, rounded once to a minor unit.
[[nodiscard]] Money share(Money amount, Percentage rate, Rounding rounding);

/// `price` x `numerator` / `denominator`, rounded once; exact integers throughout.
/// @throws std::invalid_argument when the denominator is not positive
[[nodiscard]] Money scaled(Money price,
                           std::int64_t numerator,
                           std::int64_t denominator,
                           Rounding rounding);

/// Splits `total` in proportion to `weights` so that the parts sum to it exactly: largest
/// remainder, ties to the earlier part. @throws std::invalid_argument unless a weight is positive
/// and none negative
[[nodiscard]] std::vector<Money> split(Money total, const std::vector<std::int64_t>& weights);

/// Net and tax inside a gross price: 99.99 at 10 % is 90.90 + 9.09. The tax is rounded and the net
/// is the rest. @throws std::invalid_argument for a tax of -100 % or less
struct GrossParts {
  Money net;
  Money tax;
};
[[nodiscard]] GrossParts inside_gross(Money gross, Percentage tax, Rounding rounding);

/// The selling price of a cost at a mark-up on cost (25 % on 1000 is 1250).
[[nodiscard]] Money with_markup(Money cost, Percentage markup, Rounding rounding);
/// The selling price of a cost at a margin on price (25 % on 1000 is 1333.33).
/// @throws std::invalid_argument unless 0 <= margin < 100 %
[[nodiscard]] Money with_margin(Money cost, Percentage margin, Rounding rounding);

}  // namespace basinwright::money
