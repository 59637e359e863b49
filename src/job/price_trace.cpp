#include "price_trace.hpp"

#include <fmt/format.h>
#include <cmath>
#include <string>
#include <vector>

#include "notes.hpp"

namespace basinwright::job {
namespace {

using money::Money;

/// A sum of products written out: counts and prices are the plan's own.
class Sum {
 public:
  void add(double count, double price) { add(fmt::format("{} * {}", count, price)); }
  void add(double amount) { add(fmt::format("{}", amount)); }
  void add(const std::string& term) { text_ += (text_.empty() ? "" : " + ") + term; }
  [[nodiscard]] std::string text() const { return text_.empty() ? "0" : text_; }

 private:
  std::string text_;
};

class PriceNotes {
 public:
  PriceNotes(const quote::PriceQuestion& q, const money::Currency& currency, Plan& plan)
      : q_(q), plan_(plan), currency_(currency), unit_(std::pow(10.0, currency.decimals)) {}

  void record() {
    list("materials", "purchases", plan_.purchases);
    list("consumables", "consumables", plan_.consumables);
    list("protection", "protection", plan_.protection);
    list("labour", "labour", plan_.labour);
    list("hire", "hire", plan_.hire);
    flat();
    for (const quote::Line& line : plan_.price->lines) overhead(line);
    totals();
  }

 private:
  [[nodiscard]] Price of(Money money) const { return in_units(money, currency_); }
  [[nodiscard]] static double of(money::Percentage share) {
    return static_cast<double>(share.millionths) / static_cast<double>(money::whole);
  }
  /// The line's place on the page.
  [[nodiscard]] std::string line_key(std::string_view what) const {
    const auto& lines = plan_.price->lines;
    const auto it = std::ranges::find(lines, what, &quote::Line::what);
    return fmt::format("price.lines.{}.amount", it - lines.begin());
  }
  [[nodiscard]] static std::string_view name_of(const quote::Purchase& p) { return p.item; }
  [[nodiscard]] static std::string_view name_of(const quote::Counted& c) { return c.rule.item; }
  [[nodiscard]] static std::string_view name_of(const quote::LabourLine& l) { return l.task; }
  [[nodiscard]] static std::string_view name_of(const quote::Hired& h) { return h.item; }

  void note(const std::string& key, Price value, const std::string& formula, const char* words) {
    plan_.trace.note(key, value, formula, {}, words);
  }
  // A rounding to the smallest coin.
  [[nodiscard]] std::string rounded(const std::string& formula) const {
    return fmt::format("round(({}) * {}) / {}", formula, unit_, unit_);
  }

  // A line that adds up a table of the page, row by row.
  template <class Row>
  void list(const char* line, const char* table, const std::vector<Row>& rows) {
    std::vector<Term<Price>> terms;
    Money total;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      total += rows[i].total;
      terms.push_back({formula_name(name_of(rows[i])),
                       of(rows[i].total),
                       fmt::format("{}.{}.total", table, i)});
    }
    note_terms(plan_.trace, line_key(line), of(total), terms);
  }

  // Amounts that the rate book says as they are.
  void flat() {
    for (const quote::Line& line : q_.costs) {
      if (plan_.trace.find(line_key(line.what)) != nullptr) continue;
      if (line.what == "travel") {
        Sum sum;
        sum.add(static_cast<double>(plan_.programme.days_on_site), of(q_.overheads.travel_a_day));
        note(line_key(line.what), of(line.amount), sum.text(), "days on site at a day's travel");
        continue;
      }
      note(line_key(line.what),
           of(line.amount),
           fmt::format("{}", of(line.amount).units),
           "a flat amount");
    }
  }

  // What is laid on the sum of the lines before it.
  void overhead(const quote::Line& line) {
    const std::string key = line_key(line.what);
    const auto laid_on = [&](const std::string& formula, money::Percentage share, const char* at) {
      const std::string before = fmt::format("price.before.{}", lines_ + 1);
      note(before, of(before_), sum_.text(), "the lines before");
      const trace::Operand operands[] = {
          {"before", of(before_), trace::From{before}},
          {"share", units::fraction(of(share)), sources::Source{sources::Kind::given, "", at}}};
      plan_.trace.note_all(key, of(line.amount), rounded(formula), operands);
    };
    if (line.what == "contingency") {
      laid_on("before * share", q_.overheads.contingency, "/overheads/contingency");
    } else if (line.what == "mark-up") {
      laid_on("before * share", *q_.overheads.markup, "/overheads/markup");
    } else if (line.what == "margin") {
      laid_on("before / (1 - share) - before", *q_.overheads.margin, "/overheads/margin");
    } else if (line.what == "discount") {
      laid_on("0 - before * share", *q_.discount, "/terms/discount");
    } else if (line.what == "rounding") {
      note(key,
           of(line.amount),
           fmt::format("{}", of(line.amount).units),
           "to the step of the total");
    }
    parts_.push_back({formula_name(line.what), of(line.amount), key});
    sum_.add(of(line.amount));
    before_ += line.amount;
    ++lines_;
  }

  void totals() {
    note_terms(plan_.trace, "price.net", of(plan_.price->net), parts_);
    Sum tax;
    for (const quote::Taxed& one : plan_.price->taxes)
      tax.add(rounded(fmt::format("{} * {}", of(one.net).units, of(one.rate))));
    note("price.tax", of(plan_.price->tax), tax.text(), "each rate on its part of the net");
    plan_.trace.note("price.total",
                     of(plan_.price->total),
                     "net + tax",
                     {{"net", of(plan_.price->net), trace::From{"price.net"}},
                      {"tax", of(plan_.price->tax), trace::From{"price.tax"}}});
  }

  const quote::PriceQuestion& q_;
  Plan& plan_;
  const money::Currency& currency_;
  double unit_;  ///< Smallest coins in one of it.
  Money before_;
  int lines_ = 0;
  Sum sum_;
  std::vector<Term<Price>> parts_;
};

}  // namespace

void trace_price(const quote::PriceQuestion& question,
                 const money::Currency& currency,
                 Plan& plan) {
  if (plan.trace.on() && plan.price) PriceNotes(question, currency, plan).record();
}

}  // namespace basinwright::job
