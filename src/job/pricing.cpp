#include "pricing.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"
#include "ordering.hpp"
#include "price_trace.hpp"
#include "quantities.hpp"

namespace basinwright::job {
namespace {

using money::Money;

// Whether the new water's chlorine is the one that the chlorine wash is mixed from.
bool is_chlorine_of_the_wash(const RateBook& rates, const chemistry::ChlorineStock& stock) {
  const auto wash = chlorine_stock_of(rates.chemicals);
  const auto* other = std::get_if<chemistry::ChlorineStock>(&wash);
  return other != nullptr && other->liquid == stock.liquid && other->solid == stock.solid;
}

const Item* item_named(const RateBook& rates, const std::string& name) {
  const auto it = rates.items.find(name);
  return it == rates.items.end() ? nullptr : &it->second;
}

// The system's own packs, else the general item's.
const Item* item_for(const RateBook& rates, const Plan& plan, const std::string& item) {
  const std::string& system = plan.system.name;
  if (!system.empty()) {
    std::string own;
    own.reserve(system.size() + 1 + item.size());
    own += system;
    if (item != "coating") (own += ' ') += item;
    if (const Item* found = item_named(rates, own)) return found;
  }
  if (const Item* found = item_named(rates, item)) return found;
  const bool chlorine = item == "liquid chlorine" || item == "chlorine granules";
  if (chlorine && is_chlorine_of_the_wash(rates, plan.water.chlorine)) {
    return item_named(rates, "hypochlorite");
  }
  return nullptr;
}

void buy_all(const RateBook& rates, quote::PurchaseMemory* memory, Plan& plan) {
  // One stock for all uses of an item, where there is only so much of it.
  std::map<const Item*, std::vector<purchase::Pack>> left;
  const std::vector<purchase::Pack> none;
  for (const quote::Need& need : needs_of(plan)) {
    const Item* item = item_for(rates, plan, need.item);
    const bool limited =
        item != nullptr && std::ranges::any_of(item->packs, [](const purchase::Pack& pack) {
          return pack.stock.has_value();
        });
    std::vector<purchase::Pack>* const stock =
        limited ? &left.try_emplace(item, item->packs).first->second : nullptr;
    const std::vector<purchase::Pack>& packs = limited           ? *stock
                                               : item == nullptr ? none
                                                                 : item->packs;
    quote::Purchase bought = memory == nullptr ? quote::buy(need, packs, rates.rounding)
                                               : memory->buy(need, packs, rates.rounding);
    if (stock != nullptr) *stock = quote::left_of(std::move(*stock), bought);
    const bool told = std::ranges::count(plan.unpriced, need.item) > 0;
    if (bought.unpriced && !told) plan.unpriced.push_back(need.item);
    plan.purchases.push_back(std::move(bought));
  }
}

}  // namespace

std::vector<dates::Date> hired_days(const sequence::Programme& programme, const std::string& task) {
  std::vector<dates::Date> days;
  days.reserve(2 * programme.bookings.size());
  for (const sequence::Booking& b : programme.bookings) {
    const bool abraded_again = task == "abrade" && b.task == sitelog::rework_task;
    if (!task.empty() && b.task != task && !abraded_again) continue;
    for (const sequence::Worked& w : b.worked) days.push_back(w.date);
  }
  std::ranges::sort(days);
  days.erase(std::unique(days.begin(), days.end()), days.end());
  return days;
}

quote::Basis basis_of(const Job& job, const Plan& plan) {
  quote::Basis basis;
  basis.days = plan.programme.days_on_site;
  basis.people = job.crew.people.value;
  basis.painters = job.crew.painters.value;
  basis.painted = plan.take_off.painted.in(units::square_metres);
  basis.abraded = (plan.route.abraded + plan.reworked).in(units::square_metres);
  basis.etched = plan.route.etched.in(units::square_metres);
  basis.edge = plan.take_off.total.perimeter.in(units::metres);
  basis.coat_sessions =
      static_cast<double>(plan.quantities.coats.size() * plan.quantities.cut.sections.size());
  basis.kits = static_cast<double>(plan.quantities.kits);
  basis.step_edge = plan.take_off.total.step_edge.in(units::metres);
  basis.treads = plan.take_off.total.tread_area.in(units::square_metres);
  return basis;
}

namespace {

void count_all(const Job& job, const RateBook& rates, Plan& plan) {
  const quote::Basis basis = basis_of(job, plan);
  plan.consumables = quote::count(rates.consumables, basis);
  plan.protection = quote::count(rates.protection, basis);
  for (const quote::Hire& hire : rates.hire) {
    const auto days = static_cast<std::int64_t>(hired_days(plan.programme, hire.task).size());
    if (days > 0) plan.hire.push_back({hire.item, days, hire.day * days});
  }
}

template <class List>
Money sum_of(const List& list) {
  Money sum;
  for (const auto& item : list) sum += item.total;
  return sum;
}

}  // namespace

void price_plan(const Job& job,
                const RateBook& rates,
                std::optional<dates::Date> today,
                quote::PurchaseMemory* memory,
                Plan& plan) {
  buy_all(rates, memory, plan);
  if (today) order_all(job, rates, *today, plan);
  count_all(job, rates, plan);
  plan.labour = quote::labour(plan.work,
                              plan.programme,
                              rates.productivity.daily_set_up.value,
                              rates.labour,
                              job.calendar.hours,
                              rates.rounding);
  plan.trace.use("productivity.daily_set_up", rates.productivity.daily_set_up);
  quote::PriceQuestion q;
  q.overheads = rates.overheads;
  q.rounding = rates.rounding;
  q.tax = rates.tax;
  q.discount = job.terms.discount;
  q.stages = job.terms.stages;
  if (q.stages.empty() && job.terms.deposit) {
    q.stages = {{"on order", *job.terms.deposit},
                {"on handover", {money::whole - job.terms.deposit->millionths}}};
  }
  if (job.terms.rounding)
    q.rounding_step = money::parse(*job.terms.rounding, rates.currency).value();
  const Money wages = sum_of(plan.labour);
  q.costs = {{"materials", sum_of(plan.purchases)},
             {"consumables", sum_of(plan.consumables)},
             {"protection", sum_of(plan.protection)},
             {"labour", wages}};
  if (wages < rates.overheads.call_out)
    q.costs.push_back({"call-out minimum", rates.overheads.call_out - wages});
  q.costs.push_back({"hire", sum_of(plan.hire)});
  q.costs.push_back({"disposal", rates.overheads.disposal});
  q.costs.push_back({"travel", rates.overheads.travel_a_day * plan.programme.days_on_site});
  if (job.refill.water_price) {
    const Money price = money::parse(*job.refill.water_price, rates.currency).value();
    constexpr std::int64_t million = 1'000'000;  // Parts of a unit that are priced.
    const std::int64_t units = std::llround(plan.water.billed * static_cast<double>(million));
    plan.water.cost = money::scaled(price, units, million, rates.rounding);
    q.costs.push_back({"fill water", *plan.water.cost});
  }
  plan.price = quote::price(q);
  trace_price(q, rates.currency, plan);
}

}  // namespace basinwright::job
