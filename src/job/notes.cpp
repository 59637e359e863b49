#include "notes.hpp"

#include <fmt/format.h>

namespace basinwright::job {

std::string formula_name(std::string_view words) {
  const auto is_plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
  };
  std::string out;
  for (const char c : words) out += is_plain(c) ? c : '_';
  if (out.empty() || (out.front() >= '0' && out.front() <= '9')) out.insert(0, "_");
  return out;
}

sources::Source hours_source(const Job& job) {
  if (job.crew.hours_given) return given_at("/crew/hours");
  return {sources::Kind::assumed, "crew", "07:00 to 16:00"};
}

sources::Source days_source(const Job& job) {
  if (job.crew.days_given) return given_at("/crew/working_days");
  return {sources::Kind::assumed, "crew", "Monday to Friday"};
}

sources::Source coats_source(const Job& job, const Plan& plan) {
  return job.coating.coats ? given_at("/coating/coats") : plan.system.least_coats.source;
}

std::string booking_key(const sequence::Programme& programme,
                        const sequence::Booking& booking,
                        std::string_view end) {
  const auto number = &booking - programme.bookings.data();
  return fmt::format("programme.tasks.{}.{}", number, end);
}

void note_page(const Job& job, const RateBook& rates, Plan& plan) {
  if (!plan.trace.on()) return;
  note_shell(job, rates, plan);
  note_mixes(rates, plan);
  note_waters(job, rates, plan);
  note_programme(job, rates, plan);
  note_dates(job, rates, plan);
  note_mixing(job, rates, plan);
  note_goods(job, rates, plan);
  note_orders(job, rates, plan);
  note_lists(job, rates, plan);
}

}  // namespace basinwright::job
