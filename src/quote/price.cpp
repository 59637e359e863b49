#include "basinwright/quote/price.hpp"

#include <stdexcept>

namespace basinwright::quote {
namespace {

using money::Money;
using money::Percentage;

class Builder {
 public:
  explicit Builder(const PriceQuestion& q) : q_(q) {}

  Price build() {
    for (const Line& line : q_.costs) add(line.what, line.amount);
    if (q_.overheads.contingency.millionths > 0) {
      add("contingency", money::share(sum_, q_.overheads.contingency, q_.rounding));
    }
    add_profit();
    if (q_.discount) add("discount", Money() - money::share(sum_, *q_.discount, q_.rounding));
    round_total();
    price_.net = sum_;
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

  [[nodiscard]] Money tax_of(Money net) const {
    return q_.tax ? money::share(net, q_.tax->rate, q_.rounding) : Money();
  }

  // The client sees a round total: the nearest net whose total is a multiple of the step. Where tax
  // skips that multiple, the net stays as it is rather than be nearly round.
  void round_total() {
    if (!q_.rounding_step || q_.rounding_step->minor() <= 0) return;
    const std::int64_t step = q_.rounding_step->minor();
    const std::int64_t total = (sum_ + tax_of(sum_)).minor();
    const std::int64_t wanted = (total + step / 2) / step * step;
    const std::int64_t rate = q_.tax ? q_.tax->rate.millionths : 0;
    const Money guess = money::scaled(
        Money::of_minor(wanted), money::whole, money::whole + rate, money::Rounding::half_away);
    for (const std::int64_t d : {0, -1, 1}) {
      const Money net = Money::of_minor(guess.minor() + d);
      if ((net + tax_of(net)).minor() == wanted) {
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
};

}  // namespace

Price price(const PriceQuestion& question) {
  if (question.overheads.markup && question.overheads.margin) {
    throw std::invalid_argument("price: mark-up and margin are two ways to one price");
  }
  return Builder(question).build();
}

}  // namespace basinwright::quote
