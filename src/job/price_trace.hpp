// How the price came about, line by line.
#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Records the lines, net, tax and total of `plan.price` with the sums they are, in whole units of
/// the currency. Does nothing when nobody asked.
void trace_price(const quote::PriceQuestion& question, const money::Currency& currency, Plan& plan);

}  // namespace basinwright::job
