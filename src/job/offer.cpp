#include "basinwright/job/offer.hpp"

#include <cmath>

#include "basinwright/units/unit.hpp"

namespace basinwright::job {
namespace {

void add_option(Option option, const Plan& with, const Plan& without, Offer& offer) {
  if (!with.price || !without.price) return;
  option.adds = with.price->total - without.price->total;
  if (option.adds == money::Money()) return;  // Slip-resistant treads in a pool without any.
  if (with.programme.feasible) option.refill_done = with.programme.refill_done;
  offer.options.push_back(std::move(option));
}

units::Duration validity_of(const Job& job) {
  if (job.terms.validity) return *job.terms.validity;
  if (job.heading.valid_days) return units::days(static_cast<double>(*job.heading.valid_days));
  return usual_validity.value;
}

}  // namespace

Offer offer_of(const Job& job, const RateBook& rates, const Circumstances& now, const Plan& plan) {
  Offer offer;
  offer.date = job.heading.quoted_on.value_or(now.today);
  const auto days = static_cast<int>(std::floor(validity_of(job).in(units::days) + 1e-9));
  offer.valid_until = offer.date + std::chrono::days{days};
  if (plan.stopped()) return offer;
  Circumstances quietly = now;
  quietly.explain = false;
  quietly.reasons = false;
  Job more = job;
  more.coating.coats = static_cast<int>(plan.quantities.coats.size()) + 1;
  add_option({"one-more-coat", "", {}, {}}, make_plan(more, rates, quietly), plan, offer);
  for (const quote::Rule& rule : rates.options) {
    RateBook book = rates;
    book.consumables.push_back(rule);
    add_option({"", rule.item, {}, {}}, make_plan(job, book, quietly), plan, offer);
  }
  return offer;
}

}  // namespace basinwright::job
