#include "agenda.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <map>

#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Entry;
using document::EntryKind;

// Letters and digits stay; anything else as %NN, so that no two names become one.
std::string name_part(std::string_view text) {
  std::string out;
  for (const char ch : text) {
    const auto byte = static_cast<unsigned char>(ch);
    if (std::isalnum(byte) != 0 && byte < 0x80) {
      out += ch;
    } else {
      out += fmt::format("%{:02X}", byte);
    }
  }
  return out;
}

class Agenda {
 public:
  explicit Agenda(const Subject& s) : s_(s) {
    const job::Heading& h = s.job.heading;
    number_ = h.number;
    client_ = h.client.name;
    place_ = h.client.address;
  }

  document::Agenda made() {
    document::Agenda agenda;
    agenda.stamp = dates::iso(s_.today.value_or(s_.plan.first_day));
    add_orders();
    for (const sequence::Booking& b : s_.plan.programme.bookings) add_work(b);
    add_holds();
    add_windows();
    agenda.entries = std::move(entries_);
    return agenda;
  }

 private:
  std::string uid(std::string_view kind, std::string_view what) {
    std::string id = fmt::format("{}-{}-{}", name_part(number_), kind, name_part(what));
    // The vacuuming comes once a coat: the same name again gets the next number.
    const int again = ++times_[id];
    if (again > 1) id += fmt::format("-{}", again);
    return id + "@basinwright.invalid";
  }

  [[nodiscard]] std::string titled(std::string what, const std::string& section = "") const {
    if (!section.empty()) what += ", section " + section;
    return client_.empty() ? what : what + " \u00b7 " + client_;
  }

  void add(EntryKind kind,
           std::string id,
           std::string summary,
           std::string description,
           std::string start,
           std::string end) {
    entries_.push_back({kind,
                        std::move(id),
                        std::move(summary),
                        std::move(description),
                        place_,
                        std::move(start),
                        std::move(end)});
  }

  void add_orders() {
    for (const job::Order& order : s_.plan.orders) {
      if (!order.by) continue;
      std::vector<std::string> items;
      for (const job::Ordered& one : order.packs) {
        if (std::ranges::find(items, one.item) == items.end()) items.push_back(one.item);
      }
      add(EntryKind::to_do,
          uid("order", order.supplier),
          titled(order.supplier.empty() ? "Order" : "Order from " + order.supplier),
          fmt::format("{}", fmt::join(items, ", ")),
          "",
          dates::iso(*order.by));
    }
  }

  void add_work(const sequence::Booking& b) {
    std::string why;
    for (const sequence::Held& h : b.held_by) {
      const std::string words = held(h, s_.units);
      if (!words.empty()) why += (why.empty() ? "Not earlier because of: " : "; ") + words;
    }
    std::string text = b.people > 0 ? fmt::format("{} people", b.people) : "Nobody works on it";
    if (!why.empty()) text += "\n" + why;
    add(EntryKind::work,
        uid("task", b.section.empty() ? b.task : b.task + "/" + b.section),
        titled(task(b.task), b.section),
        std::move(text),
        dates::iso(b.start),
        dates::iso(b.end));
  }

  void add_holds() {
    for (const preparation::Step& step : s_.plan.route.steps) {
      for (const sequence::Booking& b : s_.plan.programme.bookings) {
        if (b.task != step.task) continue;
        // What is read before a coat is due when it starts, the rest before the next task.
        const bool before = step.task.starts_with("coat-") || step.task == "fill";
        for (const preparation::HoldPoint& point : step.holds) {
          const HoldWords words = hold(point.code);
          add(EntryKind::to_do,
              uid("hold", step.task + "/" + b.section + "/" + point.code),
              titled(fmt::format("Hold: {}, {}", task(step.task), words.what), b.section),
              fmt::format("Go on when: {}.", words.limit),
              "",
              dates::iso(before ? b.start : b.end));
        }
      }
    }
  }

  void add_windows() {
    const auto& bookings = s_.plan.programme.bookings;
    for (const sequence::Booking& b : bookings) {
      const bool primer = b.task == "prime";
      if (!primer && !b.task.starts_with("coat-")) continue;
      const auto next = std::ranges::find_if(bookings, [&](const sequence::Booking& later) {
        return later.task.starts_with("coat-") && later.section == b.section &&
               later.start > b.start;
      });
      if (next == bookings.end()) continue;
      const units::Duration most =
          primer ? s_.plan.system.primer.window_max.value : s_.plan.system.recoat_max.value;
      constexpr int quarters_an_hour = 4;
      const auto quarters = static_cast<std::int64_t>(most.in(units::hours)*quarters_an_hour);
      const auto close = dates::Moment::of_quarters(b.start.quarters() + quarters);
      Entry entry{EntryKind::deadline,
                  uid("window", b.task + "/" + b.section),
                  titled(fmt::format("Recoat window of {} closes", task(b.task)), b.section),
                  fmt::format("{} starts before this, or it is a hold point: the maker's advice in "
                              "writing, usually abrade and clean first.",
                              task(next->task)),
                  place_,
                  dates::iso(close),
                  ""};
      entries_.push_back(std::move(entry));
    }
  }

  const Subject& s_;
  std::string number_, client_, place_;
  std::map<std::string, int> times_;
  std::vector<Entry> entries_;
};

}  // namespace

document::Agenda agenda_of(const Subject& s) {
  return Agenda(s).made();
}

}  // namespace basinwright::report
