#include "changes.hpp"

#include <fmt/format.h>
#include "wording/common.hpp"
#include "wording/price.hpp"

namespace basinwright::report {

Cell day_cell(const sequence::Programme& p, dates::Date day) {
  return p.feasible ? Cells::date(day) : Cells::nothing(say::no_dates);
}

Cell change_cell(const Cells& c, money::Money change) {
  Cell cell = c.money(change);
  if (change > money::Money()) cell.text = "+" + cell.text;
  return cell;
}

std::string change_line(const Subject& a, const Subject& b, const Cells& c) {
  if (!a.plan.price || !b.plan.price) return say::one_of_the_two_has_no_price;
  const money::Money change = b.plan.price->total - a.plan.price->total;
  const std::string text = change_cell(c, change).text;
  return fmt::format(say::price_from_to,
                     c.price(a.plan.price->total),
                     c.price(b.plan.price->total),
                     text,
                     std::string(a.rates.currency.name()));
}

}  // namespace basinwright::report
