#include "price_trace.hpp"

#include <fmt/format.h>
#include <cmath>
#include <map>
#include <string>
#include <vector>

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

class Recorder {
 public:
  Recorder(const quote::PriceQuestion& q, const money::Currency& currency, Plan& plan)
      : q_(q), plan_(plan), unit_(std::pow(10.0, currency.decimals)) {}

  void record() {
    purchases();
    counted("consumables", plan_.consumables);
    counted("protection", plan_.protection);
    wages();
    hire();
    flat();
    for (const quote::Line& line : plan_.price->lines) overhead(line);
    totals();
  }

 private:
  [[nodiscard]] double of(Money money) const { return static_cast<double>(money.minor()) / unit_; }
  [[nodiscard]] static double of(money::Percentage share) {
    return static_cast<double>(share.millionths) / static_cast<double>(money::whole);
  }
  [[nodiscard]] static std::string name(std::string_view what) {
    std::string out;
    for (const char c : what) {
      const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
      out += plain ? c : '_';
    }
    return out;
  }
  [[nodiscard]] static std::string line_key(std::string_view what) {
    return "price.lines." + name(what);
  }

  void note(const std::string& key, double value, const std::string& formula, const char* words) {
    plan_.trace.note(key, value, formula, {}, words);
  }
  // A rounding to the smallest coin.
  [[nodiscard]] std::string rounded(const std::string& formula) const {
    return fmt::format("round(({}) * {}) / {}", formula, unit_, unit_);
  }

  void purchases() {
    std::vector<std::pair<std::string, std::string>> terms;
    std::vector<double> totals;
    for (const quote::Purchase& p : plan_.purchases) {
      if (p.total == Money()) continue;
      Sum sum;
      for (const quote::Bought& pack : p.packs) {
        sum.add(static_cast<double>(pack.count), of(pack.unit_price));
      }
      const std::string what = name(p.use.empty() ? p.item : p.item + "_" + p.use);
      const std::string key = "purchases." + what + ".total";
      note(key, of(p.total), sum.text(), "whole packs, the cheapest that reach, at their prices");
      terms.emplace_back(what, key);
      totals.push_back(of(p.total));
    }
    add_up(line_key("materials"), terms, totals);
  }

  // One operand a term, each computed in a step of its own; equal names become one.
  void add_up(const std::string& key,
              const std::vector<std::pair<std::string, std::string>>& terms,
              const std::vector<double>& values) {
    Sum sum;
    std::vector<trace::Operand> operands;
    double total = 0.0;
    for (std::size_t i = 0; i < terms.size(); ++i) {
      sum.add(terms[i].first);
      operands.emplace_back(terms[i].first, values[i], trace::From{terms[i].second});
      total += values[i];
    }
    plan_.trace.note_all(key, total, sum.text(), operands);
  }

  void counted(const char* what, const std::vector<quote::Counted>& list) {
    Sum sum;
    Money total;
    for (const quote::Counted& c : list) {
      sum.add(static_cast<double>(c.count), of(c.rule.price));
      total += c.total;
    }
    note(line_key(what), of(total), sum.text(), "pieces at their prices, counted by the rules");
  }

  void wages() {
    Sum sum;
    Money total;
    for (const quote::LabourLine& line : plan_.labour) {
      sum.add(of(line.total));
      total += line.total;
    }
    note(line_key("labour"), of(total), sum.text(), "task by task, person-hours at the wage");
  }

  void hire() {
    Sum sum;
    Money total;
    for (const quote::Hired& h : plan_.hire) {
      sum.add(of(h.total));
      total += h.total;
    }
    note(line_key("hire"), of(total), sum.text(), "days on site at the price of a day");
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
           fmt::format("{}", of(line.amount)),
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
      note(key, of(line.amount), fmt::format("{}", of(line.amount)), "to the step of the total");
    }
    parts_.push_back({name(line.what), of(line.amount)});
    sum_.add(of(line.amount));
    before_ += line.amount;
    ++lines_;
  }

  void totals() {
    std::vector<std::pair<std::string, std::string>> terms;
    std::vector<double> values;
    for (const auto& [what, amount] : parts_) {
      terms.emplace_back(what, "price.lines." + what);
      values.push_back(amount);
    }
    add_up("price.net", terms, values);
    Sum tax;
    for (const quote::Taxed& one : plan_.price->taxes)
      tax.add(rounded(fmt::format("{} * {}", of(one.net), of(one.rate))));
    note("price.tax", of(plan_.price->tax), tax.text(), "each rate on its part of the net");
    plan_.trace.note("price.total",
                     of(plan_.price->total),
                     "net + tax",
                     {{"net", of(plan_.price->net), trace::From{"price.net"}},
                      {"tax", of(plan_.price->tax), trace::From{"price.tax"}}});
  }

  const quote::PriceQuestion& q_;
  Plan& plan_;
  double unit_;
  Money before_;
  int lines_ = 0;
  Sum sum_;
  std::vector<std::pair<std::string, double>> parts_;
};

}  // namespace

void trace_price(const quote::PriceQuestion& question,
                 const money::Currency& currency,
                 Plan& plan) {
  if (plan.trace.on() && plan.price) Recorder(question, currency, plan).record();
}

}  // namespace basinwright::job
