#include <stdexcept>

#include "basinwright/money/money.hpp"
#include "wide.hpp"

namespace basinwright::money {
Money scaled(Money price, std::int64_t numerator, std::int64_t denominator, Rounding rounding) {
  if (denominator <= 0) throw std::invalid_argument("scaled: the denominator must be positive");
  const Wide product = static_cast<Wide>(price.minor()) * numerator;
  return Money::of_minor(narrow(rounded_quotient(product, denominator, rounding)));
}

Money share(Money amount, Percentage rate, Rounding rounding) {
  return scaled(amount, rate.millionths, whole, rounding);
}

GrossParts inside_gross(Money gross, Percentage tax, Rounding rounding) {
  if (tax.millionths <= -whole) throw std::invalid_argument("inside_gross: no net price remains");
  const Wide product = static_cast<Wide>(gross.minor()) * tax.millionths;
  const Wide part = rounded_quotient(product, static_cast<Wide>(tax.millionths) + whole, rounding);
  const Money inside = Money::of_minor(narrow(part));
  return {gross - inside, inside};
}

Money with_markup(Money cost, Percentage markup, Rounding rounding) {
  const Wide product =
      static_cast<Wide>(cost.minor()) * (static_cast<Wide>(markup.millionths) + whole);
  return Money::of_minor(narrow(rounded_quotient(product, whole, rounding)));
}

Money with_margin(Money cost, Percentage margin, Rounding rounding) {
  if (margin.millionths < 0 || margin.millionths >= whole) {
    throw std::invalid_argument("with_margin: the margin must be from 0 to under 100 %");
  }
  return scaled(cost, whole, whole - margin.millionths, rounding);
}

}  // namespace basinwright::money
