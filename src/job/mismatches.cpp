// What no file can say alone: the job against the rate book.
#include <optional>
#include <string>

#include <array>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/job/offer.hpp"
#include "basinwright/job/plan.hpp"

namespace basinwright::job {
namespace {

std::string known_systems(const std::map<std::string, materials::CoatingSystem>& systems,
                          const std::string& wanted) {
  if (systems.empty()) return "It has none.";
  std::string known;
  std::vector<std::string_view> names;
  for (const auto& [name, system] : systems) {
    known += (known.empty() ? "" : ", ") + name;
    names.emplace_back(name);
  }
  const std::string_view near = diagnostics::nearest(wanted, names);
  const std::string meant = near.empty() ? "" : "Did you mean \"" + std::string(near) + "\"? ";
  return meant + "It has: " + known + ".";
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
    out.push_back(Mismatch{"unknown-system",
                           job.coating.system_pointer,
                           "The rate book has no coating system of this name",
                           known_systems(rates.systems, job.coating.system)});
  }
  check_amount(job.refill.water_price, "/refill/water_price", rates, out);
  check_amount(job.terms.rounding, "/terms/rounding", rates, out);
  return out;
}

std::vector<Mismatch> quotation_gaps(const Job& job) {
  struct Gap {
    bool open;
    const char *pointer, *what;
  };
  const Party& by = job.heading.contractor;
  const Party& to = job.heading.client;
  const std::array<Gap, 9> gaps{{
      {job.heading.number.empty(), "/job/number", "a number"},
      {by.name.empty(), "/job/contractor/name", "the contractor's name"},
      {by.address.empty(), "/job/contractor/address", "the contractor's address"},
      {by.registration.empty(), "/job/contractor/registration", "the contractor's registration"},
      {by.insurance.empty(), "/job/contractor/insurance", "the contractor's insurance"},
      {to.name.empty(), "/job/client/name", "the client's name"},
      {to.address.empty(), "/job/client/address", "the client's address"},
      {job.terms.warranty.empty(), "/terms/warranty", "what is warranted"},
      {job.terms.cancellation.empty(), "/terms/cancellation", "the notice of cancellation"},
  }};
  std::vector<Mismatch> out;
  for (const Gap& gap : gaps) {
    if (!gap.open) continue;
    out.push_back(Mismatch{"quotation-incomplete",
                           gap.pointer,
                           std::string("A written quotation usually says ") + gap.what,
                           std::string("Give it at ") + gap.pointer + "."});
  }
  return out;
}

}  // namespace basinwright::job
