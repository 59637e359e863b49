#include <fmt/format.h>
#include <algorithm>

#include "agenda.hpp"
#include "basinwright/units/unit.hpp"
#include "site_parts.hpp"
#include "wording/common.hpp"
#include "wording/site.hpp"

namespace basinwright::report {
namespace {

using document::Section;
using document::Table;
using sequence::Booking;

// The same task of the programme until now; a task that comes twice is matched in its order.
class Changes {
 public:
  explicit Changes(const Site& site) : site_(site), left_(site.was.tasks) {}

  Table table() {
    table_.key = "changes";
    table_.columns = {{"task", say::task},
                      {"section", say::section},
                      {"was", say::was},
                      {"now", say::now},
                      {"moved", say::moved}};
    for (const Booking& b : site_.subject.plan.programme.bookings) {
      if (b.task != "vacuum") compare(b);  // It goes with its coat.
    }
    for (const sequence::Before& b : left_) {
      if (b.task != "vacuum" && !is_done(b)) cancelled(b);
    }
    bool cut = false;
    for (const document::Row& row : table_.rows) cut = cut || !row.cells[1].text.empty();
    table_.columns[1].shown = cut;
    return std::move(table_);
  }

 private:
  void compare(const Booking& b) {
    const auto it = std::ranges::find_if(left_, [&](const sequence::Before& before) {
      return before.task == b.task && before.section == b.section;
    });
    if (it == left_.end()) {
      if (!b.assumed)
        row(b.task,
            b.section,
            Cells::nothing(say::not_planned),
            Cells::moment(b.start),
            Cells::words(b.done ? say::done_not_planned : "new"));
      return;
    }
    const dates::Moment was = it->start;
    left_.erase(it);
    if (was == b.start || b.assumed) return;
    if (b.done && was.date() == b.start.date()) return;
    row(b.task, b.section, Cells::moment(was), Cells::moment(b.start), moved(was, b));
  }

  static Cell moved(dates::Moment was, const Booking& b) {
    const std::int64_t quarters = b.start.quarters() - was.quarters();
    const std::int64_t days = (b.start.date() - was.date()).count();
    std::string text;
    if (days == 0) {
      const std::int64_t minutes = std::abs(quarters) * 15;
      text = fmt::format(
          say::h_min_of, minutes / 60, minutes % 60, quarters > 0 ? "later" : "earlier");
    } else {
      text = fmt::format("{} {} {}",
                         std::abs(days),
                         std::abs(days) == 1 ? "day" : "days",
                         days > 0 ? "later" : "earlier");
    }
    if (b.done) text = say::done_before + text;
    return {text, Value(static_cast<double>(quarters) / 4.0), Role::plain};
  }

  // The rest of a task that was broken off is no task of its own once it is done.
  [[nodiscard]] bool is_done(const sequence::Before& before) const {
    return std::ranges::any_of(site_.subject.plan.programme.bookings, [&](const Booking& b) {
      return b.done && b.task == before.task && (b.section == before.section || b.section.empty());
    });
  }

  void cancelled(const sequence::Before& b) {
    row(b.task,
        b.section,
        Cells::moment(b.start),
        Cells::nothing(say::cancelled),
        {"cancelled", Value("cancelled"), Role::caution});
  }

  void row(const std::string& name, const std::string& section, Cell was, Cell now, Cell how) {
    table_.rows.push_back({{Cells::coded(task(name), name),
                            section.empty() ? Cells::nothing("") : Cells::words(section),
                            std::move(was),
                            std::move(now),
                            std::move(how)}});
  }

  const Site& site_;
  std::vector<sequence::Before> left_;
  Table table_;
};

std::string days_apart(dates::Date was, dates::Date now) {
  const std::int64_t days = (now - was).count();
  if (days == 0) return "kept";
  return fmt::format("{} {} {}",
                     std::abs(days),
                     std::abs(days) == 1 ? "day" : "days",
                     days > 0 ? "late" : "early");
}

Section promises_section(const Site& site) {
  Section section{"", say::promises, {}, true};
  Table table;
  table.key = "promises";
  table.columns = {{"what", say::what},
                   {"was", say::promised},
                   {"now", say::now},
                   {"state", say::how_it_stands}};
  const sequence::Programme& p = site.subject.plan.programme;
  const auto add =
      [&](const char* key, const char* what, std::optional<dates::Date> was, dates::Date now) {
        const bool broke = was && now > *was;
        Cell state = Cells::nothing(say::nothing_was_promised);
        if (was) {
          const std::string text = (broke ? "BROKEN: " : "") + days_apart(*was, now);
          state = {text, Value(broke ? "broken" : "kept"), broke ? Role::stop : Role::good};
        }
        if (!p.feasible && was) state = {say::broken_no_dates_fit, Value("broken"), Role::stop};
        table.rows.push_back({{Cells::coded(what, key),
                               was ? Cells::date(*was) : Cells::nothing("-"),
                               p.feasible ? Cells::date(now) : Cells::nothing(say::no_date),
                               std::move(state)}});
      };
  const auto day = [](const std::optional<dates::Moment>& m) {
    return m ? std::optional(m->date()) : std::nullopt;
  };
  dates::Date handover = p.first_swim;
  for (const Booking& b : p.bookings) {
    if (b.task == "handover") handover = b.start.date();
  }
  add("refill_done", say::full_again, day(site.was.refill_done), p.refill_done.date());
  add("first_swim", say::first_swim_by_readings, site.was.first_swim, p.first_swim);
  add("handover", say::handover, day(site.was.handover), handover);
  section.blocks.emplace_back(std::move(table));
  return section;
}

document::Paragraph advice(const Site& site) {
  if (const sitelog::Entry* e = release_of(site, job::makers_advice)) {
    return {"",
            fmt::format(say::the_makers_advice_in_writing_is_there, e->by, at(e->at)),
            {},
            Role::caution};
  }
  return {"", say::hold_point_makers_advice_the_coating, {}, Role::stop};
}

// A hold point, then abrade and clean: what it takes, when and for how much.
Section lost_section(const Site& site) {
  const sequence::Lost& lost = site.subject.plan.programme.lost;
  Section section{"", say::lost_and_what_makes_it_good, {}, lost.anything()};
  document::Array codes;
  for (const std::string& s : lost.sections) {
    const std::string where = lost.sections.size() == 1 && site.deadlines.size() < 2 && s == "1"
                                  ? ""
                                  : say::section_before + s + ": ";
    section.blocks.emplace_back(
        document::Paragraph{"",
                            lost.together ? where + say::its_recoat_window_and_the_others
                                          : where + say::the_recoat_window_is_lost_the_next,
                            {},
                            Role::stop});
    codes.emplace_back(s);
  }
  if (lost.etch) {
    section.blocks.emplace_back(
        document::Paragraph{"", say::the_etch_holds_no_longer_the_bare, {}, Role::stop});
  }
  if (!lost.sections.empty()) section.blocks.emplace_back(advice(site));
  const Cells cells(site.subject.units, site.subject.rates.currency);
  Table table;
  table.key = "remedies";
  table.columns = {{"task", say::what_is_done},
                   {"section", say::section},
                   {"start", say::from},
                   {"end", say::to},
                   {"person_hours", say::person_hours, document::Align::right},
                   {"wages", say::wages_net, document::Align::right}};
  for (const job::Remedy& r : site.remedies) {
    table.rows.push_back({{Cells::coded(task(r.task), r.task),
                           r.section.empty() ? Cells::nothing("") : Cells::words(r.section),
                           Cells::moment(r.start),
                           Cells::moment(r.end),
                           cells.hours(r.person_hours),
                           cells.money(r.wages)}});
  }
  table.shown = !table.rows.empty();
  table.columns[1].shown =
      std::ranges::any_of(site.remedies, [](const job::Remedy& r) { return !r.section.empty(); });
  table.caption = say::wages_only_discs_hire_and_travel_are;
  section.blocks.emplace_back(std::move(table));
  section.blocks.emplace_back(
      document::Facts{{{"lost.sections", "", {"", Value(std::move(codes)), Role::plain}, false},
                       {"lost.etch", "", {"", Value(lost.etch), Role::plain}, false}}});
  return section;
}

Section changes_section(const Site& site) {
  Section section{"", say::what_moved, {}, true};
  Table table = Changes(site).table();
  if (table.rows.empty()) {
    section.blocks.emplace_back(
        document::Paragraph{"", say::nothing_moved_all_is_as_it_was_planned, {}, Role::good});
    table.shown = false;
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

bool is_delivered(const Site& site, const std::string& item) {
  const auto came = [&](std::string_view what) {
    return std::ranges::any_of(site.log.entries, [&](const sitelog::Entry& e) {
      return e.event == sitelog::Event::delivery && e.item == what;
    });
  };
  return came(item) || (item == "coating" && came("part-a") && came("part-b"));
}

// Nobody records an order; what came needs none.
std::vector<std::string> late_goods(const Site& site) {
  std::vector<std::string> out;
  for (const job::Order& order : site.subject.plan.orders) {
    if (!order.late) continue;
    std::string items;
    for (const job::Ordered& one : order.packs) {
      if (is_delivered(site, one.item) || items.find(one.item) != std::string::npos) continue;
      items += (items.empty() ? "" : ", ") + one.item;
    }
    if (items.empty()) continue;
    out.push_back(fmt::format(say::check_the_yard_no_delivery_of_is,
                              items,
                              order.supplier.empty() ? "" : say::from_small + order.supplier + ", ",
                              dates::short_day(*order.by)));
  }
  return out;
}

std::string without_reserve(const Site& site) {
  std::string coats;
  for (const job::Tight& t : job::without_reserve(site.subject.plan, site.subject.rates))
    coats += (coats.empty() ? "" : "; ") + job_of(t.task, t.section);
  if (coats.empty()) return "";
  return fmt::format(
      say::the_kept_in_hand_at_both_ends_of_a,
      units::show_in(site.subject.rates.waits.recoat_reserve.value, units::minutes, 0),
      coats);
}

Cell bottom(const Site& site) {
  const sequence::Programme& p = site.subject.plan.programme;
  if (!p.feasible) {
    return {
        say::no_dates_fit_the_rest + (p.blocked_by ? blocked(*p.blocked_by) : ""), {}, Role::stop};
  }
  std::string line = say::full_again_before + Cells::date(p.refill_done.date()).text;
  if (site.was.refill_done)
    line += ", " + days_apart(site.was.refill_done->date(), p.refill_done.date());
  for (const job::Deadline& d : site.deadlines) {
    if (!d.is_alive()) continue;
    line += fmt::format(say::must_be_started_by_after, job_of(d.task, d.section), at(d.by));
    break;
  }
  return {line, {}, p.lost.anything() ? Role::stop : Role::total};
}

}  // namespace

document::Document replanned(const Site& site) {
  document::Document d;
  head(site, say::re_plan, d);
  d.notices = notices(site.subject, Goods::by_log);
  d.notices.insert(d.notices.begin(),
                   site.was_given ? say::compared_with_the_programme_given_with
                                  : say::compared_with_the_jobs_own_plan_by_the);
  for (const std::string& line : late_goods(site)) d.notices.push_back(line);
  if (const std::string line = without_reserve(site); !line.empty()) d.notices.push_back(line);
  std::string assumed;
  for (const Booking& b : site.subject.plan.programme.bookings) {
    if (b.assumed) assumed += (assumed.empty() ? "" : ", ") + task(b.task);
  }
  if (!assumed.empty()) {
    d.notices.push_back(say::not_recorded_taken_as_done_since_later + assumed + ".");
  }
  for (Section (*make)(const Site&) :
       {lost_section, changes_section, promises_section, deadlines_section, breaches_section}) {
    d.sections.push_back(make(site));
  }
  d.sections.push_back(programme_section(site.subject));
  d.sections.push_back(cautions_section(site.subject));
  d.bottom_line = bottom(site);
  d.agenda = agenda_of(site);
  return d;
}

}  // namespace basinwright::report
