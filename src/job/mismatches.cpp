// What no file can say alone: the job against the rate book.
#include <optional>
#include <string>

#include "basinwright/job/plan.hpp"

namespace basinwright::job {
namespace {

std::string names_of(const std::map<std::string, materials::CoatingSystem>& systems) {
  std::string known;
  for (const auto& [name, system] : systems) known += (known.empty() ? "" : ", ") + name;
  return known;
}

// An amount of the job file is in the rate book's currency, whose minor units are known only now.
void check_amount(const std::optional<std::string>& amount,
                  const char* pointer,
                  const RateBook& rates,
                  std::vector<Mismatch>& out) {
  if (!amount || money::parse(*amount, rates.currency)) return;
  const std::string decimals = std::to_string(rates.currency.decimals);
  out.push_back(Mismatch{"currency-decimals",
                         pointer,
                         "This amount has more decimals than the rate book's currency, " +
                             std::string(rates.currency.name()),
                         "That currency has " + decimals + "."});
}

}  // namespace

std::vector<Mismatch> mismatches(const Job& job, const RateBook& rates) {
  std::vector<Mismatch> out;
  if (!job.coating.system.empty() && !rates.systems.contains(job.coating.system)) {
    const std::string known = names_of(rates.systems);
    out.push_back(Mismatch{"unknown-system",
                           job.coating.system_pointer,
                           "The rate book has no coating system of this name",
                           known.empty() ? "It has none." : "It has: " + known + "."});
  }
  check_amount(job.refill.water_price, "/refill/water_price", rates, out);
  check_amount(job.terms.rounding, "/terms/rounding", rates, out);
  return out;
}

}  // namespace basinwright::job
