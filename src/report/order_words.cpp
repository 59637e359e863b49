#include "order_words.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "weather_words.hpp"

namespace basinwright::report {
namespace {

const quote::Purchase* bought(const job::Plan& plan, std::string_view item) {
  const auto it = std::ranges::find(plan.purchases, item, &quote::Purchase::item);
  return it == plan.purchases.end() || it->packs.empty() ? nullptr : &*it;
}

std::string batch_of(const quote::Purchase& kits) {
  for (const quote::Bought& packs : kits.packs) {
    if (!packs.batch.empty()) return packs.batch;
  }
  return "";
}

// The last day on which a coat is painted.
std::optional<dates::Date> last_coat(const job::Plan& plan) {
  std::optional<dates::Date> day;
  for (const sequence::Booking& b : plan.programme.bookings) {
    if (b.task.starts_with("coat-")) day = b.end.date();
  }
  return day;
}

std::string hardener_words(const job::Plan& plan) {
  if (!plan.programme.hardener) return "Part B of every kit is of one kind";
  return fmt::format("Part B of every kit is of one kind: {}", code(plan.programme.hardener->kind));
}

}  // namespace

std::vector<std::string> delivery_checks(const job::Plan& plan) {
  std::vector<std::string> out;
  if (const quote::Purchase* kits = bought(plan, "coating")) {
    const std::string batch = batch_of(*kits);
    out.push_back(fmt::format(
        "One batch number on every Part A{}: another batch may be another shade. Read the labels "
        "when buying and again now.",
        batch.empty() ? "" : fmt::format(", {}", batch)));
    out.push_back(hardener_words(plan) + ", and as many of Part B as of Part A.");
    const auto day = last_coat(plan);
    out.push_back(fmt::format(
        "Use-by date of every kit after the last coat{}; ask for the shelf life when ordering.",
        day ? fmt::format(", {}", dates::short_day(*day)) : ""));
    out.emplace_back("Data sheet and safety data sheets of this batch are with the goods.");
  }
  if (bought(plan, "acid") != nullptr)
    out.emplace_back("Acid: the strength on the label is the one in the rate book.");
  if (bought(plan, "hypochlorite") != nullptr)
    out.emplace_back("Hypochlorite: filled lately, since it loses strength on the shelf.");
  if (!plan.orders.empty())
    out.emplace_back("No can dented, leaking, rusted or opened; count against the order.");
  return out;
}

std::vector<std::string> storage(const job::Plan& plan) {
  std::vector<std::string> out;
  if (bought(plan, "coating") != nullptr) {
    out.emplace_back(
        "Kits: indoors, dry, upright and out of the sun; overnight indoors in heat or cold, so "
        "that they are at mixing temperature in the morning.");
  }
  const bool acid = bought(plan, "acid") != nullptr;
  if (acid && bought(plan, "hypochlorite") != nullptr) {
    out.emplace_back(
        "Acid and hypochlorite: never in one store or one van; together they make chlorine gas.");
  }
  if (acid)
    out.emplace_back(
        "Acid: locked, aired, low down, in a plastic tray, away from metal and tools.");
  if (bought(plan, "bicarbonate") != nullptr || bought(plan, "mortar") != nullptr)
    out.emplace_back("Powders: dry and off the ground.");
  return out;
}

std::vector<std::string> left_over_words(const job::Plan& plan) {
  if (plan.orders.empty()) return {};
  std::vector<std::string> out;
  out.emplace_back("Whole packs are in the price, so the client has paid for what is left.");
  if (bought(plan, "coating") != nullptr)
    out.emplace_back("Unopened kits stay with the client for touch-up, with the batch number.");
  out.emplace_back(
      "Agree when ordering whether unopened packs go back, and until when; the credit is the "
      "client's unless your terms say otherwise.");
  return out;
}

}  // namespace basinwright::report
