// Records the job sheet's numbers at the paths of its JSON, once they are worked out: what a
// calculation has recorded under a name of its own is linked, the rest is told here. Nothing is
// recorded when nobody asked.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// One term of a sum and the step it was computed in.
template <class Q>
struct Term {
  std::string name;
  Q value;
  std::string from;
};

/// A name as formulas can spell it: letters, digits and underscores, no digit first.
[[nodiscard]] std::string formula_name(std::string_view words);

/// Records a sum of terms; names that come twice are told apart.
template <class Q>
void note_terms(trace::Trace& trace, const std::string& key, Q sum, std::vector<Term<Q>> terms) {
  std::string formula;
  std::vector<trace::Operand> operands;
  operands.reserve(terms.size());
  for (std::size_t i = 0; i < terms.size(); ++i) {
    const auto named = [&](const Term<Q>& term) { return term.name == terms[i].name; };
    const auto end = terms.begin() + static_cast<std::ptrdiff_t>(i);
    if (std::any_of(terms.begin(), end, named)) terms[i].name += "_" + std::to_string(i + 1);
    formula += (formula.empty() ? "" : " + ") + terms[i].name;
    operands.emplace_back(terms[i].name, terms[i].value, trace::From{terms[i].from});
  }
  trace.note_all(key, sum, formula.empty() ? "0" : formula, operands);
}

/// The number that another step has computed.
template <class Q>
void note_same(trace::Trace& trace,
               const std::string& key,
               Q value,
               std::string_view from,
               std::string_view words = {}) {
  trace.note(key, value, "value", {{"value", value, trace::From{from}}}, words);
}

/// A number taken as it is from where it stands.
template <class Q>
void note_taken(trace::Trace& trace,
                const std::string& key,
                Q value,
                const sources::Source& source,
                std::string_view words = {}) {
  trace.note(key, value, "value", {{"value", value, source}}, words);
}

/// A local time, in seconds since 1970-01-01T00:00 there.
struct At {
  double seconds = 0.0;
};
/// A point on the scale of time.
[[nodiscard]] constexpr trace::Amount amount(At time) {
  return {time.seconds, units::Duration::dimensions, true, false};
}

/// Local times as the trace tells them.
[[nodiscard]] inline At at(dates::Moment moment) {
  constexpr double seconds_in_quarter = 900.0;
  return {static_cast<double>(moment.quarters()) * seconds_in_quarter};
}
[[nodiscard]] inline At at(dates::Date day) {
  return at(dates::Moment(day, 0));
}

/// Where the job file says it.
[[nodiscard]] constexpr sources::Source given_at(std::string_view pointer) {
  return {sources::Kind::given, "", pointer};
}

/// Where the crew's hours and days come from, and the number of coats.
[[nodiscard]] sources::Source hours_source(const Job& job);
[[nodiscard]] sources::Source days_source(const Job& job);
[[nodiscard]] sources::Source coats_source(const Job& job, const Plan& plan);

/// A sum of money in units of its currency, as formulas reckon with it.
struct Price {
  double units = 0.0;
  constexpr operator double() const { return units; }
};
[[nodiscard]] constexpr trace::Amount amount(Price price) {
  trace::Amount amount = trace::amount(price.units);
  amount.is_money = true;
  return amount;
}
[[nodiscard]] inline Price in_units(const money::Money& money, const money::Currency& currency) {
  return {static_cast<double>(money.minor()) / std::pow(10.0, currency.decimals)};
}

/// The booking a number of the programme hangs on, by its place in it.
[[nodiscard]] std::string booking_key(const sequence::Programme& programme,
                                      const sequence::Booking& booking,
                                      std::string_view end);

void note_shell(const Job& job, const RateBook& rates, Plan& plan);
void note_mixes(const RateBook& rates, Plan& plan);
void note_waters(const Job& job, const RateBook& rates, Plan& plan);
void note_programme(const Job& job, const RateBook& rates, Plan& plan);
/// One for each day, named.
void note_days(trace::Trace& trace,
               const std::string& key,
               std::int64_t count,
               const std::set<dates::Date>& days);
void note_dates(const Job& job, const RateBook& rates, Plan& plan);
void note_mixing(const Job& job, const RateBook& rates, Plan& plan);
void note_goods(const Job& job, const RateBook& rates, Plan& plan);
void note_orders(const Job& job, const RateBook& rates, Plan& plan);
void note_lists(const Job& job, const RateBook& rates, Plan& plan);

/// All of the job sheet; nothing when the plan's trace is off.
void note_page(const Job& job, const RateBook& rates, Plan& plan);

}  // namespace basinwright::job
