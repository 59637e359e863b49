#include "coating_record.hpp"

#include <fmt/format.h>
#include <algorithm>
#include "wording/coating_record.hpp"
#include "wording/common.hpp"
#include "wording/materials.hpp"

namespace basinwright::report {

using document::Align;
using document::Section;
using document::Table;
using sitelog::Event;

CoatingRecord::CoatingRecord(const Site& site)
    : site_(site),
      cells_(site.subject.units, site.subject.rates.currency),
      entries_(sitelog::in_time(site.log)),
      done_(sitelog::progress(site.log)) {
  gather();
}

document::Document CoatingRecord::page() {
  document::Document d;
  head(site_, say::coating_record, d);
  d.notices.emplace_back(say::written_from_the_site_log_what_nobody);
  std::vector<Section> sections;
  for (Section (CoatingRecord::*make)() : {&CoatingRecord::coats,
                                           &CoatingRecord::conditions,
                                           &CoatingRecord::deliveries,
                                           &CoatingRecord::mixes,
                                           &CoatingRecord::films,
                                           &CoatingRecord::waters,
                                           &CoatingRecord::holds,
                                           &CoatingRecord::used,
                                           &CoatingRecord::notes}) {
    sections.push_back((this->*make)());
  }
  d.sections.push_back(missing_section());
  d.sections.push_back(breaches_section(site_));
  for (Section& s : sections) d.sections.push_back(std::move(s));
  d.bottom_line = missing_.empty()
                      ? Cell{say::the_record_is_whole, {}, Role::good}
                      : Cell{fmt::format(say::missing_from_the_record,
                                         missing_.size(),
                                         missing_.size() == 1 ? say::item_is : say::items_are),
                             {},
                             Role::caution};
  return d;
}

void CoatingRecord::gather() {
  const auto& cut = site_.subject.plan.quantities.cut;
  const auto sections = job::site_sections(site_.subject.plan);
  for (const preparation::Step& step : site_.subject.plan.route.steps) {
    if (!sitelog::is_coat(step.task)) continue;
    for (std::size_t s = 0; s < std::max<std::size_t>(1, sections.size()); ++s) {
      CoatingUnit unit{step.task, sections.empty() ? "" : sections[s]};
      unit.done = sitelog::find(done_, unit.task, unit.section);
      if (s < cut.sections.size()) unit.area = cut.sections[s];
      unit.planned_kits = planned_kits(unit.task, s);
      unit.planned_hours = planned_hours(unit.task, s);
      use(unit);
      units_.push_back(std::move(unit));
    }
  }
}

std::optional<std::int64_t> CoatingRecord::planned_kits(const std::string& task,
                                                        std::size_t section) const {
  const auto& quantities = site_.subject.plan.quantities;
  const auto& kits = quantities.cut.kits;
  if (task != "prime") return section < kits.size() ? kits[section] : 0;
  if (kits.size() > 1 || !quantities.primer) return {};
  return quantities.primer->kits;
}

double CoatingRecord::planned_hours(const std::string& task, std::size_t section) const {
  std::size_t seen = 0;
  for (const sequence::Work& w : site_.subject.plan.work) {
    if (w.task == task && seen++ == section) return w.person_hours.in(units::hours);
  }
  return 0.0;
}

// What the log says of one coat on one section, from its start to its end.
void CoatingRecord::use(CoatingUnit& unit) const {
  // g++ 12 takes an optional of the moment for unset.
  bool begun = false;
  std::int64_t started = 0;
  int people = 0;
  for (const sitelog::Entry& e : entries_) {
    const bool of_it = e.task == unit.task && e.section == unit.section;
    if (of_it && e.event == Event::mix) unit.kits += e.kits.value_or(1);
    if (of_it && e.event == Event::started) {
      begun = true;
      started = e.at.minutes();
      people = e.people.value_or(painters());
    }
    if (of_it && begun && (e.event == Event::finished || e.event == Event::stopped)) {
      unit.hours += units::minutes(static_cast<double>(e.at.minutes() - started))
                        .in(units::hours)*e.people.value_or(people);
      begun = false;
    }
    if (e.event != Event::reading || !unit.done) continue;
    const bool during = e.at.minutes() >= unit.done->start.minutes() - minutes_before() &&
                        (!unit.done->end || e.at <= *unit.done->end);
    if (during && e.read.air && e.read.shell && e.read.humidity) unit.conditions = true;
    if (e.read.wet_film && (of_it || (during && e.task.empty()))) unit.wet_film = true;
  }
}

Section CoatingRecord::coats() {
  Section section{"", say::coats, {}, true};
  Table t;
  t.key = "coats";
  t.columns = {{"task", say::coat},
               {"section", say::section},
               {"start", say::from},
               {"end", say::to},
               {"area_m2", say::area, Align::right},
               {"kits", say::kits, Align::right},
               {"kits_planned", say::planned, Align::right},
               {"conditions", say::conditions},
               {"wet_film", say::wet_film}};
  t.columns[1].shown = !job::site_sections(site_.subject.plan).empty();
  for (const CoatingUnit& u : units_) {
    const std::string name = job_of(u.task, u.section);
    if (u.done == nullptr) lack(name + say::not_started);
    if (u.done && !u.done->finished) lack(name + say::no_end);
    if (u.done && u.kits == 0) lack(name + say::no_mixes);
    if (u.done && !u.conditions) lack(name + say::air_shell_and_humidity);
    if (u.done && !u.wet_film) lack(name + say::wet_film_after);
    const auto check = [&](bool there) {
      if (!u.done) return Cells::nothing("-");
      return there ? Cell{"read", Value(true), Role::good} : missing();
    };
    t.rows.push_back({{Cells::coded(task(u.task), u.task),
                       u.section.empty() ? Cells::nothing("") : Cells::words(u.section),
                       u.done ? minute_cell(u.done->start) : missing(),
                       u.done && u.done->end ? minute_cell(*u.done->end) : missing(),
                       cells_.area(u.area),
                       u.kits > 0 ? Cells::count(u.kits) : missing(),
                       u.planned_kits ? Cells::count(*u.planned_kits) : Cells::nothing("-"),
                       check(u.conditions),
                       check(u.wet_film)}});
  }
  section.blocks.emplace_back(std::move(t));
  return section;
}

Section CoatingRecord::holds() {
  Section section{"", say::hold_points, {}, true};
  Table t;
  t.key = "holds";
  t.columns = {{"hold", say::hold_point},
               {"task", say::at},
               {"what", say::what, Align::left},
               {"by", say::released_by},
               {"at", say::when}};
  std::vector<std::string> seen;
  const auto add = [&](const std::string& code, const std::string& step) {
    if (std::ranges::find(seen, code) != seen.end()) return;
    seen.push_back(code);
    const sitelog::Entry* last = release_of(site_, code);
    if (last == nullptr) lack(say::hold_point_before + code + say::who_and_when);
    t.rows.push_back({{Cells::words(code),
                       Cells::coded(task(step), step),
                       Cells::words(std::string(hold(code).what)),
                       last ? Cells::words(last->by) : missing(),
                       last ? minute_cell(last->at) : missing()}});
  };
  for (const preparation::Step& step : site_.subject.plan.route.steps) {
    for (const preparation::HoldPoint& h : step.holds) {
      if (h.code != "conditions" && h.code != "water-readings") add(h.code, step.task);
    }
  }
  section.blocks.emplace_back(std::move(t));
  return section;
}

// A kit of the primer is another kit than one of the coating.
void CoatingRecord::add_kits(document::Table& t, bool of_primer) const {
  const auto& plan = site_.subject.plan;
  std::int64_t kits = 0;
  std::int64_t planned = of_primer ? plan.quantities.primer->kits : 0;
  for (const CoatingUnit& u : units_) {
    if ((u.task == "prime") != of_primer) continue;
    kits += u.kits;
    if (!of_primer) planned += u.planned_kits.value_or(0);
  }
  const units::Volume kit = of_primer ? plan.system.primer.kit.value : plan.system.kit.value;
  const auto litres = [&](std::int64_t n) { return cells_.litres(kit * static_cast<double>(n)); };
  t.rows.push_back({{Cells::words(of_primer ? say::kits_of_primer : say::kits),
                     Cells::count(kits),
                     Cells::count(planned)}});
  t.rows.push_back({{Cells::words(of_primer ? say::litres_of_primer : say::litres_of_paint),
                     litres(kits),
                     litres(planned)}});
}

Section CoatingRecord::used() {
  Section section{"", say::used_against_planned, {}, true};
  Table t;
  t.key = "used";
  t.columns = {{"what", say::what},
               {"used", say::used, Align::right},
               {"planned", say::planned, Align::right}};
  if (site_.subject.plan.quantities.primer) add_kits(t, true);
  add_kits(t, false);
  for (const auto& [name, hours, planned] : hours_by_task()) {
    t.rows.push_back({{Cells::coded(task(name) + say::person_hours_after, name),
                       Cells::number(hours, 1),
                       Cells::number(planned, 1)}});
  }
  section.blocks.emplace_back(std::move(t));
  return section;
}

// Between start and end inside the crew's hours nobody knows the breaks: clock time it is.
std::vector<CoatingRecord::Hours> CoatingRecord::hours_by_task() const {
  std::vector<Hours> out;
  for (const sequence::Work& w : site_.subject.plan.work) {
    auto it = std::ranges::find(out, w.task, &Hours::task);
    if (it == out.end()) it = out.insert(out.end(), {w.task, worked(w.task, w.people), 0.0});
    it->planned += w.person_hours.in(units::hours);
  }
  // Nobody planned to make good what was lost, but the hours went into it.
  for (const sequence::Booking& b : site_.subject.plan.programme.bookings) {
    if (!b.done || (b.task != sitelog::rework_task && b.task != sitelog::clean_again_task))
      continue;
    if (std::ranges::count(out, b.task, &Hours::task) == 0)
      out.push_back({b.task, worked(b.task, b.people), 0.0});
  }
  std::erase_if(out, [](const Hours& h) { return h.used <= 0.0; });
  return out;
}

double CoatingRecord::worked(const std::string& name, int planned_people) const {
  double sum = 0.0;
  for (const sequence::Booking& b : site_.subject.plan.programme.bookings) {
    if (!b.done || b.assumed || b.task != name) continue;
    int people = planned_people;
    for (const sitelog::Entry& e : entries_) {
      if (e.task == name && e.people) people = *e.people;
    }
    for (const sequence::Worked& w : b.worked) sum += w.quarters / 4.0 * people;
  }
  return sum;
}

Section CoatingRecord::missing_section() {
  Section section{"", say::missing, {}, !missing_.empty()};
  document::List list;
  document::Array values;
  for (const std::string& what : missing_) {
    list.items.push_back({what, {}, Role::caution});
    values.emplace_back(what);
  }
  section.blocks.emplace_back(std::move(list));
  section.blocks.emplace_back(
      document::Facts{{{"missing", "", {"", Value(std::move(values)), Role::plain}, false}}});
  return section;
}

document::Document coating_record(const Site& site) {
  return CoatingRecord(site).page();
}

}  // namespace basinwright::report
