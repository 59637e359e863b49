#include "agenda.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <map>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/site.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::EntryKind;
using sequence::Booking;

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

// The painted part of a section goes on under the section's name.
std::string_view whole_shell(std::string_view section) {
  constexpr std::string_view part = "painted part";
  if (!section.ends_with(part)) return section;
  section.remove_suffix(part.size());
  if (section.ends_with(", ")) section.remove_suffix(2);
  return section;
}

std::string named(const std::string& task, std::string_view section) {
  const std::string_view name = whole_shell(section);
  return name.empty() ? task : task + "/" + std::string(name);
}

bool same_task(const Booking& a, const Booking& b) {
  return a.task == b.task && a.section == b.section;
}

bool is_over(const Booking& b) {
  return b.done && !b.going_on;
}

class Agenda {
 public:
  Agenda(const Subject& s, const std::vector<Booking>& bookings, const Site* site = nullptr)
      : s_(s), bookings_(bookings), site_(site) {
    const job::Heading& h = s.job.heading;
    client_ = h.client.name;
    place_ = h.client.address;
    // Without a number the jobs of one calendar must still differ.
    number_ = !h.number.empty() ? h.number : client_.empty() ? place_ : client_;
  }

  document::Agenda made() {
    document::Agenda agenda;
    agenda.stamp = dates::iso(s_.today.value_or(s_.plan.first_day));
    if (site_ == nullptr) add_orders();
    for (const Booking& b : bookings_) add_work(b);
    add_holds();
    add_windows();
    agenda.entries = std::move(entries_);
    return agenda;
  }

 private:
  std::string uid(std::string_view kind, std::string_view what) {
    std::string id = fmt::format("{}-{}-{}", name_part(number_), kind, name_part(what));
    // Work that was broken off goes on under the same name: with the next number.
    const int again = ++times_[id];
    if (again > 1) id += fmt::format("-{}", again);
    return id + "@basinwright.invalid";
  }

  [[nodiscard]] std::string titled(std::string what, const std::string& section = "") const {
    if (!section.empty()) what += say::section_after + section;
    return client_.empty() ? what : what + " \u00b7 " + client_;
  }

  document::Entry& add(EntryKind kind,
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
    return entries_.back();
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
          titled(order.supplier.empty() ? say::order : say::order_from + order.supplier),
          fmt::format("{}", fmt::join(items, ", ")),
          "",
          dates::iso(*order.by));
    }
  }

  // Vacuuming goes under the name of its coat.
  [[nodiscard]] std::string name_of(const Booking& b) const {
    if (b.task != "vacuum") return named(b.task, b.section);
    const auto coat = std::ranges::find_if(bookings_, [&](const Booking& later) {
      return sitelog::is_coat(later.task) && later.section == b.section && later.start >= b.start;
    });
    return named(coat == bookings_.end() ? b.task : b.task + "/" + coat->task, b.section);
  }

  void add_work(const Booking& b) {
    std::string why;
    for (const sequence::Held& h : b.held_by) {
      const std::string words = held(h, s_.units);
      if (!words.empty()) why += (why.empty() ? say::not_earlier_because_of_before : "; ") + words;
    }
    std::string text =
        b.people > 0 ? fmt::format(say::people_of, b.people) : say::nobody_works_on_it;
    if (b.people == 1) text = say::one_person;
    if (is_over(b)) text = b.assumed ? say::done_not_recorded : say::done;
    if (!why.empty()) text += "\n" + why;
    document::Entry& entry = add(EntryKind::work,
                                 uid("task", name_of(b)),
                                 titled(task(b.task), b.section),
                                 std::move(text),
                                 dates::iso(b.start),
                                 b.end > b.start ? dates::iso(b.end) : "");
    if (is_over(b)) entry.state = document::EntryState::done;
  }

  void add_holds() {
    std::vector<preparation::Step> steps = s_.plan.route.steps;
    // A programme until now may have booked what this one needs no more.
    for (preparation::Step& step : job::again_steps(s_.plan)) {
      if (!s_.plan.route.has(step.task)) steps.push_back(std::move(step));
    }
    for (const preparation::Step& step : steps) {
      // What is read before a coat is due when it starts, the rest before the next task.
      const bool before = step.task.starts_with("coat-") || step.task == "fill";
      for (auto b = bookings_.begin(); b != bookings_.end(); ++b) {
        if (b->task != step.task) continue;
        const bool again = std::any_of(
            b + 1, bookings_.end(), [&](const Booking& later) { return same_task(later, *b); });
        if (again) continue;  // Of work in parts the last one counts.
        for (const preparation::HoldPoint& point : step.holds)
          add_hold(*b, point.code, before || point.code == job::makers_advice);
      }
    }
  }

  void add_hold(const Booking& b, const std::string& code, bool before) {
    const HoldWords words = hold(code);
    document::Entry& entry =
        add(EntryKind::to_do,
            uid("hold", fmt::format("{}/{}/{}", b.task, whole_shell(b.section), code)),
            titled(fmt::format(say::hold, task(b.task), words.what), b.section),
            fmt::format(say::go_on_when_of, words.limit),
            "",
            dates::iso(before ? b.start : b.end));
    if (is_released(b, code, before)) entry.state = document::EntryState::done;
  }

  // A hold that comes before each coat is released once for each, on its day.
  [[nodiscard]] bool is_released(const Booking& b, std::string_view code, bool before) const {
    if (site_ == nullptr) return false;
    const bool each = b.task.starts_with("coat-");
    return std::ranges::any_of(site_->log.entries, [&](const sitelog::Entry& e) {
      if (e.event != sitelog::Event::hold_released || e.hold != code) return false;
      if (each) return e.at.date() == b.start.date();
      return before || e.at >= dates::Minute(b.start);
    });
  }

  void add_windows() {
    for (const Booking& b : bookings_) {
      if (!sitelog::is_coat(b.task)) continue;
      const auto next = std::ranges::find_if(bookings_, [&](const Booking& later) {
        return later.task.starts_with("coat-") && later.section == b.section &&
               later.start > b.start;
      });
      if (next == bookings_.end() || next->done) continue;
      add(EntryKind::deadline,
          uid("window", named(b.task, b.section)),
          titled(fmt::format(say::recoat_window_of_closes, task(b.task)), b.section),
          fmt::format(say::starts_before_this_or_it_is_a_hold, task(next->task)),
          dates::iso(close_of(b, *next)),
          "");
    }
  }

  [[nodiscard]] dates::Minute close_of(const Booking& b, const Booking& next) const {
    const auto after = [](dates::Moment from, units::Duration most) {
      return dates::Minute(dates::Minute(from).minutes() +
                           static_cast<std::int64_t>(most.in(units::minutes)));
    };
    if (site_ != nullptr) {
      for (const job::Deadline& d : site_->deadlines) {
        const bool alive = d.is_alive();
        if (alive && d.task == next.task && d.section == next.section) return d.by;
      }
    }
    for (const Booking& again : bookings_) {
      const bool between = again.start >= b.end && again.start < next.start;
      if (between && again.task == sitelog::rework_task && again.section == b.section)
        return after(again.end, s_.rates.waits.rework_coat_within.value);
    }
    return after(b.start,
                 b.task == "prime" ? s_.plan.system.primer.window_max.value
                                   : s_.plan.system.recoat_max.value);
  }

  const Subject& s_;
  const std::vector<Booking>& bookings_;
  const Site* site_;
  std::string number_, client_, place_;
  std::map<std::string, int> times_;
  std::vector<document::Entry> entries_;
};

}  // namespace

document::Agenda agenda_of(const Subject& s) {
  return Agenda(s, s.plan.programme.bookings).made();
}

document::Agenda agenda_of(const Site& site) {
  const Subject& s = site.subject;
  document::Agenda agenda = Agenda(s, s.plan.programme.bookings, &site).made();
  agenda.stamp = dates::iso(site.now.date());
  // RFC 5545, 3.8.7.4: it only has to rise, and minutes do.
  agenda.sequence = std::max<std::int64_t>(1, site.now.minutes());
  std::vector<Booking> before;
  for (const sequence::Before& b : site.was.tasks)
    before.push_back({b.task, b.section, b.start, b.start, 0, {}, {}});
  for (document::Entry& old : Agenda(s, before).made().entries) {
    const bool kept = std::ranges::any_of(
        agenda.entries, [&](const document::Entry& entry) { return entry.uid == old.uid; });
    if (kept || old.uid.find("-order-") != std::string::npos) continue;
    old.description = say::no_longer_in_the_programme;
    old.state = document::EntryState::cancelled;
    agenda.entries.push_back(std::move(old));
  }
  return agenda;
}

}  // namespace basinwright::report
