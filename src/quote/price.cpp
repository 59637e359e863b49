#include "basinwright/quote/price.hpp"

#include <algorithm>
#include <stdexcept>

namespace basinwright::quote {
namespace {

using money::Money;
using money::Percentage;

// What lifts the wages to the least charge for labour.
constexpr const char* call_out = "call-out minimum";

class Builder {
 public:
  explicit Builder(const PriceQuestion& q) : q_(q) {}

  Price build() {
    for (const Line& line : q_.costs) add(line.what, line.amount);
    weigh_rates();
    if (q_.overheads.contingency.millionths > 0) {
      add("contingency", money::share(sum_, q_.overheads.contingency, q_.rounding));
    }
    add_profit();
    if (q_.discount) add("discount", Money() - money::share(sum_, *q_.discount, q_.rounding));
    round_total();
    price_.net = sum_;
    price_.taxes = taxes_of(sum_);
    price_.tax = tax_of(sum_);
    price_.tax_name = q_.tax ? q_.tax->name : "";
    price_.total = price_.net + price_.tax;
    share_out();
    return std::move(price_);
  }

 private:
  void add(std::string what, Money amount) {
    if (amount == Money()) return;
    sum_ += amount;
    price_.lines.push_back({std::move(what), amount});
  }

  void add_profit() {
    if (q_.overheads.markup) {
      add("mark-up", money::with_markup(sum_, *q_.overheads.markup, q_.rounding) - sum_);
    } else if (q_.overheads.margin) {
      add("margin", money::with_margin(sum_, *q_.overheads.margin, q_.rounding) - sum_);
    }
  }

  // How much of the cost stands under each rate, the general one first.
  void weigh_rates() {
    if (!q_.tax) return;
    const std::vector<OtherRate>& others = q_.tax->other_rates;
    weights_.assign(others.size() + 1, 0);
    for (const Line& line : q_.costs) {
      const std::string& cost = line.what == call_out ? "labour" : line.what;
      const auto it = std::ranges::find_if(
          others, [&](const OtherRate& o) { return std::ranges::count(o.on, cost) > 0; });
      const auto at = it == others.end() ? 0 : it - others.begin() + 1;
      weights_[static_cast<std::size_t>(at)] += line.amount.minor();
    }
    if (std::ranges::count(weights_, 0) == std::ssize(weights_)) weights_.front() = 1;
  }

  [[nodiscard]] std::vector<Taxed> taxes_of(Money net) const {
    std::vector<Taxed> taxes;
    if (!q_.tax) return taxes;
    const std::vector<Money> parts = money::split(net, weights_);
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (weights_[i] == 0) continue;
      const bool general = i == 0;
      const std::string& name = general ? q_.tax->name : q_.tax->other_rates[i - 1].name;
      const Percentage rate = general ? q_.tax->rate : q_.tax->other_rates[i - 1].rate;
      taxes.push_back({name, rate, parts[i], money::share(parts[i], rate, q_.rounding)});
    }
    return taxes;
  }

  [[nodiscard]] Money tax_of(Money net) const {
    Money sum;
    for (const Taxed& one : taxes_of(net)) sum += one.amount;
    return sum;
  }

  // The client sees a round total: the nearest net whose total is a multiple of the step. Where tax
  // skips that multiple, the net stays as it is rather than be nearly round.
  void round_total() {
    if (!q_.rounding_step || q_.rounding_step->minor() <= 0) return;
    const std::int64_t step = q_.rounding_step->minor();
    const std::int64_t total = (sum_ + tax_of(sum_)).minor();
    const std::int64_t wanted = (total + step / 2) / step * step;
    const std::int64_t total_now = std::max<std::int64_t>(1, total);
    const Money guess =
        money::scaled(Money::of_minor(wanted), sum_.minor(), total_now, money::Rounding::half_away);
    // Each subtotal is off by less than a unit and each tax by half of one, here and in the guess.
    const auto reach = 3 * static_cast<std::int64_t>(weights_.size()) + 1;
    for (std::int64_t d = 0; d <= reach; ++d) {
      for (const std::int64_t off : {-d, d}) {
        const Money net = Money::of_minor(guess.minor() + off);
        if ((net + tax_of(net)).minor() != wanted) continue;
        add("rounding", net - sum_);
        return;
      }
    }
  }

  void share_out() {
    std::vector<Stage> stages = q_.stages;
    if (stages.empty()) stages.push_back({"on handover", Percentage{money::whole}});
    std::vector<std::int64_t> weights;
    weights.reserve(stages.size());
    for (const Stage& stage : stages) weights.push_back(stage.share.millionths);
    const auto parts = money::split(price_.total, weights);
    for (std::size_t i = 0; i < stages.size(); ++i) {
      price_.stages.push_back({stages[i].event, parts[i]});
    }
  }

  const PriceQuestion& q_;
  Price price_;
  Money sum_;
  std::vector<std::int64_t> weights_;  ///< Cost under each rate; empty without tax.
};

}  // namespace

Price price(const PriceQuestion& question) {
  if (question.overheads.markup && question.overheads.margin) {
    throw std::invalid_argument("price: mark-up and margin are two ways to one price");
  }
  return Builder(question).build();
}

}  // namespace basinwright::quote
