#include "ordering.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "basinwright/units/unit.hpp"

namespace basinwright::job {
namespace {

using dates::Date;

int whole_days(units::Duration time) {
  constexpr double slack = 1e-9;
  return static_cast<int>(std::ceil(time.in(units::days)-slack));
}

Date working_day_up_to(const Job& job, Date day) {
  constexpr int week = 7;
  if (std::ranges::none_of(job.calendar.working, [](bool works) { return works; })) return day;
  // Closed days may follow one another for longer than a week.
  const auto furthest = static_cast<int>(job.calendar.closed.size()) + week;
  for (int d = 0; d <= furthest; ++d) {
    if (job.calendar.works_on(day - std::chrono::days{d})) return day - std::chrono::days{d};
  }
  return day;
}

class Ordering {
 public:
  Ordering(const Job& job, const RateBook& rates, Date today, Plan& plan)
      : job_(job), rates_(rates), today_(today), plan_(plan) {}

  void order() {
    std::map<std::string, Order> orders;
    for (const quote::Purchase& purchase : plan_.purchases) add(purchase, orders);
    for (auto& [supplier, order] : orders) {
      date(order);
      plan_.orders.push_back(std::move(order));
    }
    for (const quote::Purchase& purchase : plan_.purchases)
      plan_.order_by.push_back(last_day(purchase));
  }

 private:
  void add(const quote::Purchase& purchase, std::map<std::string, Order>& orders) {
    for (const quote::Bought& packs : purchase.packs) {
      Order& order = orders[packs.supplier];
      order.supplier = packs.supplier;
      order.packs.push_back({purchase.item, purchase.measure, packs});
      order.total += packs.total;
      const auto needed = needed_on(purchase);
      if (needed && (!order.needed || *needed < *order.needed)) order.needed = needed;
    }
  }

  [[nodiscard]] std::optional<Date> needed_on(const quote::Purchase& purchase) const {
    const auto& bookings = plan_.programme.bookings;
    const auto use = std::ranges::find(bookings, first_use(purchase), &sequence::Booking::task);
    if (use == bookings.end() || use->done) return {};  // What was needed then was there.
    const int days = whole_days(rates_.waits.delivered_before.value);
    return working_day_up_to(job_, use->start.date() - std::chrono::days{days});
  }

  [[nodiscard]] std::optional<units::Duration> lead_of(const std::string& supplier) const {
    const auto it = std::ranges::find(rates_.suppliers, supplier, &Supplier::name);
    return it == rates_.suppliers.end() ? std::nullopt : it->lead;
  }

  [[nodiscard]] std::optional<Date> order_day(std::optional<Date> needed,
                                              std::optional<units::Duration> lead) const {
    if (!needed || !lead) return {};
    return working_day_up_to(job_, *needed - std::chrono::days{whole_days(*lead)});
  }

  void date(Order& order) const {
    order.lead = lead_of(order.supplier);
    order.by = order_day(order.needed, order.lead);
    order.late = order.by && *order.by < today_;
  }

  [[nodiscard]] std::optional<Date> last_day(const quote::Purchase& purchase) const {
    std::optional<Date> last;
    for (const quote::Bought& packs : purchase.packs) {
      const auto day = order_day(needed_on(purchase), lead_of(packs.supplier));
      if (day && (!last || *day < *last)) last = day;
    }
    return last;
  }

  const Job& job_;
  const RateBook& rates_;
  Date today_;
  Plan& plan_;
};

// What the closed form was given, so that it can be worked again.
void note_order(const coverage::OrderQuestion& q, const RateBook& rates, Plan& plan) {
  trace::Trace& t = plan.trace;
  const PaintedRange& range = plan.take_off.range;
  t.note("orders.spread_m2",
         q.spread,
         "(high - low) / 2",
         {{"high", range.high, trace::From{"takeoff.painted_area_high_m2"}},
          {"low", range.low, trace::From{"takeoff.painted_area_low_m2"}}},
         "the painted area may be out by this, either way");
  const coverage::KitOrder& order = plan.quantities.order;
  const bool one_area = q.areas.size() == 1 && q.spread > units::Area();
  if (!one_area || !(q.cover_low < q.cover_high)) return;
  t.note("orders.short_chance",
         order.short_chance,
         "min(1, max(0, (max(0, area + spread - kits * least)^2 - max(0, area + spread - kits * "
         "most)^2 - max(0, area - spread - kits * least)^2 + max(0, area - spread - kits * "
         "most)^2) / (4 * kits * spread * (most - least))))",
         {{"area", plan.take_off.painted, trace::From{"takeoff.painted_area_m2"}},
          {"spread", q.spread, trace::From{"orders.spread_m2"}},
          {"kits", static_cast<double>(order.ordered), rates.order_confidence.source},
          {"least", plan.system.cover_low},
          {"most", plan.system.cover_high}},
         "area and cover anywhere in their ranges, every value as likely as another, one cover for "
         "all coats");
}

}  // namespace

std::string first_use(const quote::Purchase& purchase) {
  const std::string& item = purchase.item;
  if (purchase.use == "start-up") return "fill";
  if (purchase.use == "chlorine-wash") return purchase.use;
  if (item == "hypochlorite") return "chlorine-wash";
  if (item == "degreaser") return "degrease";
  if (item == "filler" || item == "mortar") return "repair";
  if (item == "acid") return "etch-walls";
  if (item == "bicarbonate") return "neutralise";
  if (item == "primer") return "prime";
  return "coat-1";
}

void order_kits(const RateBook& rates, Plan& plan) {
  coverage::OrderQuestion q;
  q.areas = {plan.take_off.painted};
  if (!plan.quantities.cut.names.empty()) q.areas = plan.quantities.cut.sections;
  constexpr double half = 0.5;
  q.spread = (plan.take_off.range.high - plan.take_off.range.low) * half;
  q.cover_low = plan.system.cover_low.value;
  q.cover_high = plan.system.cover_high.value;
  q.confidence = plan.trace.use("order_confidence", rates.order_confidence);
  plan.quantities.order = coverage::kit_order(q);
  note_order(q, rates, plan);
}

void order_all(const Job& job, const RateBook& rates, dates::Date today, Plan& plan) {
  plan.trace.use("waits.delivered_before", rates.waits.delivered_before);
  Ordering(job, rates, today, plan).order();
}

}  // namespace basinwright::job
