#include <fmt/format.h>
#include <algorithm>

#include "agenda.hpp"
#include "basinwright/units/unit.hpp"
#include "site_parts.hpp"

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
    table_.columns = {{"task", "Task"},
                      {"section", "Section"},
                      {"was", "Was"},
                      {"now", "Now"},
                      {"moved", "Moved"}};
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
            Cells::nothing("not planned"),
            Cells::moment(b.start),
            Cells::words(b.done ? "done, not planned" : "new"));
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
          "{} h {:02} min {}", minutes / 60, minutes % 60, quarters > 0 ? "later" : "earlier");
    } else {
      text = fmt::format("{} {} {}",
                         std::abs(days),
                         std::abs(days) == 1 ? "day" : "days",
                         days > 0 ? "later" : "earlier");
    }
    if (b.done) text = "done, " + text;
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
        Cells::nothing("cancelled"),
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
  Section section{"", "Promises", {}, true};
  Table table;
  table.key = "promises";
  table.columns = {
      {"what", "What"}, {"was", "Promised"}, {"now", "Now"}, {"state", "How it stands"}};
  const sequence::Programme& p = site.subject.plan.programme;
  const auto add =
      [&](const char* key, const char* what, std::optional<dates::Date> was, dates::Date now) {
        const bool broke = was && now > *was;
        Cell state = Cells::nothing("nothing was promised");
        if (was) {
          const std::string text = (broke ? "BROKEN: " : "") + days_apart(*was, now);
          state = {text, Value(broke ? "broken" : "kept"), broke ? Role::stop : Role::good};
        }
        if (!p.feasible && was) state = {"BROKEN: no dates fit", Value("broken"), Role::stop};
        table.rows.push_back({{Cells::coded(what, key),
                               was ? Cells::date(*was) : Cells::nothing("-"),
                               p.feasible ? Cells::date(now) : Cells::nothing("no date"),
                               std::move(state)}});
      };
  const auto day = [](const std::optional<dates::Moment>& m) {
    return m ? std::optional(m->date()) : std::nullopt;
  };
  dates::Date handover = p.first_swim;
  for (const Booking& b : p.bookings) {
    if (b.task == "handover") handover = b.start.date();
  }
  add("refill_done", "Full again", day(site.was.refill_done), p.refill_done.date());
  add("first_swim", "First swim, by readings", site.was.first_swim, p.first_swim);
  add("handover", "Handover", day(site.was.handover), handover);
  section.blocks.emplace_back(std::move(table));
  return section;
}

document::Paragraph advice(const Site& site) {
  if (const sitelog::Entry* e = release_of(site, job::makers_advice)) {
    return {
        "",
        fmt::format("The maker's advice in writing is there, says {} ({}). The dates below take "
                    "it as abrade and clean; plan otherwise if it says otherwise.",
                    e->by,
                    at(e->at)),
        {},
        Role::caution};
  }
  return {
      "",
      "HOLD POINT (makers-advice): the coating maker's advice in writing before anything is put "
      "on that coat. The dates below take it as there, and as abrade and clean. Record it with: "
      "hold_released hold=makers-advice by=NAME.",
      {},
      Role::stop};
}

// A hold point, then abrade and clean: what it takes, when and for how much.
Section lost_section(const Site& site) {
  const sequence::Lost& lost = site.subject.plan.programme.lost;
  Section section{"", "Lost, and what makes it good", {}, lost.anything()};
  document::Array codes;
  for (const std::string& s : lost.sections) {
    const std::string where = lost.sections.size() == 1 && site.deadlines.size() < 2 && s == "1"
                                  ? ""
                                  : "Section " + s + ": ";
    section.blocks.emplace_back(document::Paragraph{
        "",
        lost.together
            ? where + "Its recoat window and the others' cannot all be kept together."
            : where + "The recoat window is lost; the next coat would not hold on this one.",
        {},
        Role::stop});
    codes.emplace_back(s);
  }
  if (lost.etch) {
    section.blocks.emplace_back(
        document::Paragraph{"",
                            "The etch holds no longer: the bare shell is cleaned again and dries "
                            "before its first coat.",
                            {},
                            Role::stop});
  }
  if (!lost.sections.empty()) section.blocks.emplace_back(advice(site));
  const Cells cells(site.subject.units, site.subject.rates.currency);
  Table table;
  table.key = "remedies";
  table.columns = {{"task", "What is done"},
                   {"section", "Section"},
                   {"start", "From"},
                   {"end", "To"},
                   {"person_hours", "Person-hours", document::Align::right},
                   {"wages", "Wages, net", document::Align::right}};
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
  table.caption = "Wages only: discs, hire and travel are not in them.";
  section.blocks.emplace_back(std::move(table));
  section.blocks.emplace_back(
      document::Facts{{{"lost.sections", "", {"", Value(std::move(codes)), Role::plain}, false},
                       {"lost.etch", "", {"", Value(lost.etch), Role::plain}, false}}});
  return section;
}

Section changes_section(const Site& site) {
  Section section{"", "What moved", {}, true};
  Table table = Changes(site).table();
  if (table.rows.empty()) {
    section.blocks.emplace_back(
        document::Paragraph{"", "Nothing moved: all is as it was planned.", {}, Role::good});
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
    out.push_back(
        fmt::format("Check the yard: no delivery of {} is recorded, {}to be ordered by {}.",
                    items,
                    order.supplier.empty() ? "" : "from " + order.supplier + ", ",
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
      "The {} kept in hand at both ends of a recoat window is given up for {}: no programme "
      "keeps it.",
      units::show_in(site.subject.rates.waits.recoat_reserve.value, units::minutes, 0),
      coats);
}

Cell bottom(const Site& site) {
  const sequence::Programme& p = site.subject.plan.programme;
  if (!p.feasible) {
    return {
        "No dates fit the rest: " + (p.blocked_by ? blocked(*p.blocked_by) : ""), {}, Role::stop};
  }
  std::string line = "Full again " + Cells::date(p.refill_done.date()).text;
  if (site.was.refill_done)
    line += ", " + days_apart(site.was.refill_done->date(), p.refill_done.date());
  for (const job::Deadline& d : site.deadlines) {
    if (d.state == job::Deadline::State::lost) continue;
    line += fmt::format(" · {} must be started by {}", job_of(d.task, d.section), at(d.by));
    break;
  }
  return {line, {}, p.lost.anything() ? Role::stop : Role::total};
}

}  // namespace

document::Document replanned(const Site& site) {
  document::Document d;
  head(site, "Re-plan", d);
  d.notices = notices(site.subject, Goods::by_log);
  d.notices.insert(d.notices.begin(),
                   site.was_given
                       ? "Compared with the programme given with --was."
                       : "Compared with the job's own plan by the same weather; give the last "
                         "programme with --was to see what moved since.");
  for (const std::string& line : late_goods(site)) d.notices.push_back(line);
  if (const std::string line = without_reserve(site); !line.empty()) d.notices.push_back(line);
  std::string assumed;
  for (const Booking& b : site.subject.plan.programme.bookings) {
    if (b.assumed) assumed += (assumed.empty() ? "" : ", ") + task(b.task);
  }
  if (!assumed.empty()) {
    d.notices.push_back("Not recorded, taken as done since later work began: " + assumed + ".");
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
