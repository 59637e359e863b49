#include <fmt/format.h>
#include <algorithm>

#include "basinwright/sitelog/progress.hpp"
#include "site_parts.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Section;
using document::Table;
using sitelog::Entry;
using sitelog::Event;

constexpr double microns = 1e6;

Cell missing(const std::string& what = "MISSING") {
  return {what, Value(nullptr), Role::caution};
}
Cell said(const std::string& text) {
  return text.empty() ? missing() : Cells::words(text);
}
Cell microns_cell(const std::optional<units::Length>& film) {
  if (!film) return Cells::nothing("");
  const double um = film->in(units::metres)*microns;
  return {fmt::format("{:.0f} µm", um), Value(um), Role::quantity};
}

// One coat of one section as it was painted.
struct Unit {
  std::string task, section;
  const sitelog::Progress* done = nullptr;
  units::Area area;
  std::int64_t planned_kits = 0, kits = 0;
  double planned_hours = 0.0, hours = 0.0;
  bool conditions = false, wet_film = false;
};

class Record {
 public:
  explicit Record(const Site& site)
      : site_(site),
        cells_(site.subject.units, site.subject.rates.currency),
        entries_(sitelog::in_time(site.log)),
        done_(sitelog::progress(site.log)) {
    gather();
  }

  document::Document page() {
    document::Document d;
    head(site_, "Coating record", d);
    d.notices.emplace_back(
        "Written from the site log. What nobody recorded is shown as missing, never filled in.");
    std::vector<Section> sections;
    for (Section (Record::*make)() : {&Record::coats,
                                      &Record::conditions,
                                      &Record::deliveries,
                                      &Record::mixes,
                                      &Record::films,
                                      &Record::waters,
                                      &Record::holds,
                                      &Record::used,
                                      &Record::notes}) {
      sections.push_back((this->*make)());
    }
    d.sections.push_back(missing_section());
    d.sections.push_back(breaches_section(site_));
    for (Section& s : sections) d.sections.push_back(std::move(s));
    d.bottom_line = missing_.empty()
                        ? Cell{"The record is whole.", {}, Role::good}
                        : Cell{fmt::format("{} {} missing from the record.",
                                           missing_.size(),
                                           missing_.size() == 1 ? "item is" : "items are"),
                               {},
                               Role::caution};
    return d;
  }

 private:
  void gather() {
    const auto& cut = site_.subject.plan.quantities.cut;
    const auto sections = job::site_sections(site_.subject.plan);
    for (const preparation::Step& step : site_.subject.plan.route.steps) {
      if (!sitelog::is_coat(step.task)) continue;
      for (std::size_t s = 0; s < std::max<std::size_t>(1, sections.size()); ++s) {
        Unit unit{step.task, sections.empty() ? "" : sections[s]};
        unit.done = sitelog::find(done_, unit.task, unit.section);
        if (s < cut.sections.size()) unit.area = cut.sections[s];
        if (s < cut.kits.size()) unit.planned_kits = cut.kits[s];
        if (step.task == "prime") unit.planned_kits = 0;
        unit.planned_hours = planned_hours(unit.task, s);
        use(unit);
        units_.push_back(std::move(unit));
      }
    }
  }

  [[nodiscard]] double planned_hours(const std::string& task, std::size_t section) const {
    std::size_t seen = 0;
    for (const sequence::Work& w : site_.subject.plan.work) {
      if (w.task == task && seen++ == section) return w.person_hours.in(units::hours);
    }
    return 0.0;
  }

  // What the log says of one coat on one section, from its start to its end.
  void use(Unit& unit) const {
    // g++ 12 takes an optional of the moment for unset.
    bool begun = false;
    std::int64_t started = 0;
    int people = 0;
    for (const Entry& e : entries_) {
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

  [[nodiscard]] static std::int64_t minutes_before() {
    return static_cast<std::int64_t>(sitelog::readings_hold_for.value.in(units::minutes));
  }
  [[nodiscard]] int painters() const {
    return static_cast<int>(site_.subject.job.crew.painters.value);
  }

  void lack(const std::string& what) { missing_.push_back(what); }

  Section coats() {
    Section section{"", "Coats", {}, true};
    Table t;
    t.key = "coats";
    t.columns = {{"task", "Coat"},
                 {"section", "Section"},
                 {"start", "From"},
                 {"end", "To"},
                 {"area_m2", "Area", Align::right},
                 {"kits", "Kits", Align::right},
                 {"kits_planned", "planned", Align::right},
                 {"conditions", "Conditions"},
                 {"wet_film", "Wet film"}};
    t.columns[1].shown = !job::site_sections(site_.subject.plan).empty();
    for (const Unit& u : units_) {
      const std::string name = job_of(u.task, u.section);
      if (u.done == nullptr) lack(name + ": not started");
      if (u.done && !u.done->finished) lack(name + ": no end");
      if (u.done && u.kits == 0) lack(name + ": no mixes");
      if (u.done && !u.conditions) lack(name + ": air, shell and humidity");
      if (u.done && !u.wet_film) lack(name + ": wet film");
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
                         Cells::count(u.planned_kits),
                         check(u.conditions),
                         check(u.wet_film)}});
    }
    section.blocks.emplace_back(std::move(t));
    return section;
  }

  Section conditions() {
    const sitelog::Rules& r = site_.rules;
    Section section{"", "Conditions", {}, true};
    Table t;
    t.key = "conditions";
    t.caption = fmt::format(
        "Limits: air {} to {}, shell {} to {}, humidity at most {:.0f} %, shell at least {} above "
        "the "
        "dew point.",
        units::show(r.air_min, site_.subject.units, 0),
        units::show(r.air_max, site_.subject.units, 0),
        units::show(r.shell_min, site_.subject.units, 0),
        units::show(r.shell_max, site_.subject.units, 0),
        r.humidity_max.share() * 100.0,
        units::show(r.dew_margin, site_.subject.units, 1));
    t.columns = {{"at", "At"},
                 {"air_c", "Air", Align::right},
                 {"shell_c", "Shell", Align::right},
                 {"rh_pct", "Humidity", Align::right},
                 {"dew_margin_k", "Above dew point", Align::right},
                 {"by", "By"}};
    const auto degrees = [&](const std::optional<units::Temperature>& v) {
      return v ? Cell{units::show(*v, site_.subject.units, 1),
                      Value(v->in(units::celsius)),
                      Role::quantity}
               : missing();
    };
    for (const Entry& e : entries_) {
      const sitelog::Readings& x = e.read;
      if (e.event != Event::reading || !(x.air || x.shell || x.humidity)) continue;
      const auto margin = sitelog::dew_margin(x);
      Cell above = missing("cannot be told");
      if (margin) {
        const bool good = *margin >= r.dew_margin;
        above = {units::show(*margin, site_.subject.units, 1) + (good ? "" : " TOO LITTLE"),
                 Value(margin->in(units::kelvins)),
                 good ? Role::quantity : Role::stop};
      }
      t.rows.push_back({{minute_cell(e.at),
                         degrees(x.air),
                         degrees(x.shell),
                         x.humidity ? Cell{fmt::format("{:.0f} %", x.humidity->share() * 100.0),
                                           Value(x.humidity->share() * 100.0),
                                           Role::quantity}
                                    : missing(),
                         above,
                         said(e.by)}});
    }
    return listed(section, std::move(t), "no conditions were read");
  }

  Section deliveries() {
    Section section{"", "Deliveries", {}, true};
    Table t;
    t.key = "deliveries";
    t.columns = {{"at", "At"},
                 {"item", "What"},
                 {"batch", "Batch"},
                 {"kind", "Kind"},
                 {"kits", "Kits", Align::right},
                 {"amount", "Amount"}};
    for (const Entry& e : entries_) {
      if (e.event != Event::delivery) continue;
      t.rows.push_back({{minute_cell(e.at),
                         Cells::words(e.item),
                         said(e.batch),
                         e.kind.empty() ? Cells::nothing("") : Cells::words(e.kind),
                         e.kits ? Cells::count(*e.kits) : Cells::nothing(""),
                         e.amount.empty() ? Cells::nothing("") : Cells::words(e.amount)}});
      if (e.batch.empty()) lack("delivery of " + e.item + ": batch");
    }
    return listed(section, std::move(t), "no delivery was recorded");
  }

  Section mixes() {
    Section section{"", "Mixes", {}, true};
    Table t;
    t.key = "mixes";
    t.columns = {{"at", "Mixed"},
                 {"task", "For"},
                 {"batch_a", "Part A"},
                 {"batch_b", "Part B"},
                 {"part_b", "Kind"},
                 {"kits", "Kits", Align::right},
                 {"use_by", "Use by"},
                 {"emptied", "Rolled out"}};
    const auto life = static_cast<std::int64_t>(site_.rules.pot_life.in(units::minutes));
    for (const Entry& e : entries_) {
      if (e.event != Event::mix) continue;
      const std::string name = job_of(e.task, e.section) + ", mix at " + at(e.at);
      if (e.batch_a.empty()) lack(name + ": batch of Part A");
      if (e.batch_b.empty()) lack(name + ": batch of Part B");
      t.rows.push_back(
          {{minute_cell(e.at),
            {job_of(e.task, e.section), Value(e.task), Role::plain},
            said(e.batch_a),
            said(e.batch_b),
            said(e.part_b),
            Cells::count(e.kits.value_or(1)),
            {dates::clock(dates::Minute(e.at.minutes() + life)),
             Value(dates::iso(dates::Minute(e.at.minutes() + life))),
             Role::plain},
            e.emptied ? Cell{dates::clock(*e.emptied), Value(dates::iso(*e.emptied)), Role::plain}
                      : missing()}});
    }
    return listed(section, std::move(t), "no mix was recorded");
  }

  // Litres on square metres are the wet film that the data sheet's cover comes to.
  Section films() {
    const materials::CoatingSystem& sheet = site_.subject.plan.system;
    const units::Length thin = sheet.kit.value / sheet.cover_high.value;
    const units::Length thick = sheet.kit.value / sheet.cover_low.value;
    Section section{"", "Film readings", {}, true};
    Table t;
    t.key = "films";
    t.caption = fmt::format(
        "Wet film at the data sheet's cover: {:.0f} to {:.0f} µm a coat; for the dry film the "
        "sheet "
        "decides.",
        thin.in(units::metres)*microns,
        thick.in(units::metres)*microns);
    t.columns = {{"at", "At"},
                 {"task", "Where"},
                 {"wet_um", "Wet", Align::right},
                 {"dry_um", "Dry", Align::right},
                 {"state", "Against the sheet"},
                 {"by", "By"}};
    constexpr double hair = 1e-9;
    for (const Entry& e : entries_) {
      if (e.event != Event::reading || !(e.read.wet_film || e.read.dry_film)) continue;
      Cell state = Cells::nothing("the sheet decides");
      if (e.read.wet_film) {
        const double wet = e.read.wet_film->in(units::metres);
        const bool low = wet < thin.in(units::metres)-hair;
        const bool high = wet > thick.in(units::metres) + hair;
        const std::string word = low ? "too thin" : (high ? "too thick" : "inside");
        state = {word, Value(word), low || high ? Role::caution : Role::good};
      }
      t.rows.push_back(
          {{minute_cell(e.at),
            {e.task.empty() ? "shell" : job_of(e.task, e.section), Value(e.task), Role::plain},
            microns_cell(e.read.wet_film),
            microns_cell(e.read.dry_film),
            state,
            said(e.by)}});
    }
    return listed(section, std::move(t), "no film was read");
  }

  Section waters() {
    static constexpr const char* where[] = {"shell", "rinse", "outflow", "pool"};
    Section section{"", "Water readings", {}, true};
    Table t;
    t.key = "waters";
    t.columns = {{"at", "At"},
                 {"where", "Where"},
                 {"ph", "pH", Align::right},
                 {"chlorine_mg_l", "Chlorine", Align::right},
                 {"groundwater_m", "Groundwater below rim", Align::right},
                 {"by", "By"}};
    for (const Entry& e : entries_) {
      const sitelog::Readings& x = e.read;
      if (e.event != Event::reading || !(x.ph || x.chlorine || x.groundwater)) continue;
      t.rows.push_back({{minute_cell(e.at),
                         Cells::words(where[static_cast<std::size_t>(e.where)]),
                         x.ph ? Cells::number(*x.ph, 1) : Cells::nothing(""),
                         x.chlorine ? Cell{fmt::format("{:.1f} mg/L",
                                                       x.chlorine->in(units::milligrams_per_litre)),
                                           Value(x.chlorine->in(units::milligrams_per_litre)),
                                           Role::quantity}
                                    : Cells::nothing(""),
                         x.groundwater ? cells_.length(*x.groundwater) : Cells::nothing(""),
                         said(e.by)}});
    }
    section.shown = !t.rows.empty();
    section.blocks.emplace_back(std::move(t));
    return section;
  }

  Section holds() {
    Section section{"", "Hold points", {}, true};
    Table t;
    t.key = "holds";
    t.columns = {{"hold", "Hold point"},
                 {"task", "At"},
                 {"what", "What", Align::left},
                 {"by", "Released by"},
                 {"at", "When"}};
    std::vector<std::string> seen;
    const auto add = [&](const std::string& code, const std::string& step) {
      if (std::ranges::find(seen, code) != seen.end()) return;
      seen.push_back(code);
      const Entry* last = nullptr;
      for (const Entry& e : entries_) {
        if (e.event == Event::hold_released && e.hold == code) last = &e;
      }
      if (last == nullptr) lack("hold point " + code + ": who and when");
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
    const bool reworked = std::ranges::any_of(
        done_, [](const sitelog::Progress& p) { return p.task == sitelog::rework_task; });
    if (reworked) add(std::string(job::makers_advice), std::string(sitelog::rework_task));
    section.blocks.emplace_back(std::move(t));
    return section;
  }

  Section used() {
    Section section{"", "Used against planned", {}, true};
    Table t;
    t.key = "used";
    t.columns = {
        {"what", "What"}, {"used", "Used", Align::right}, {"planned", "Planned", Align::right}};
    std::int64_t kits = 0;
    std::int64_t planned_kits = 0;
    for (const Unit& u : units_) {
      kits += u.kits;
      planned_kits += u.planned_kits;
    }
    const units::Volume kit = site_.subject.plan.system.kit.value;
    const auto count = [](double n) { return static_cast<double>(n); };
    t.rows.push_back({{Cells::words("Kits"), Cells::count(kits), Cells::count(planned_kits)}});
    t.rows.push_back({{Cells::words("Litres of paint"),
                       cells_.litres(kit * count(static_cast<double>(kits))),
                       cells_.litres(kit * count(static_cast<double>(planned_kits)))}});
    for (const auto& [name, hours, planned] : hours_by_task()) {
      t.rows.push_back({{Cells::coded(task(name) + ", person-hours", name),
                         Cells::number(hours, 1),
                         Cells::number(planned, 1)}});
    }
    section.blocks.emplace_back(std::move(t));
    return section;
  }

  struct Hours {
    std::string task;
    double used = 0.0, planned = 0.0;
  };
  // Between start and end inside the crew's hours nobody knows the breaks: clock time it is.
  [[nodiscard]] std::vector<Hours> hours_by_task() const {
    std::vector<Hours> out;
    for (const sequence::Work& w : site_.subject.plan.work) {
      auto it = std::ranges::find(out, w.task, &Hours::task);
      if (it == out.end()) it = out.insert(out.end(), {w.task, worked(w.task, w.people), 0.0});
      it->planned += w.person_hours.in(units::hours);
    }
    std::erase_if(out, [](const Hours& h) { return h.used <= 0.0; });
    return out;
  }

  [[nodiscard]] double worked(const std::string& name, int planned_people) const {
    double sum = 0.0;
    for (const sequence::Booking& b : site_.subject.plan.programme.bookings) {
      if (!b.done || b.assumed || b.task != name) continue;
      int people = planned_people;
      for (const Entry& e : entries_) {
        if (e.task == name && e.people) people = *e.people;
      }
      for (const sequence::Worked& w : b.worked) sum += w.quarters / 4.0 * people;
    }
    return sum;
  }

  Section notes() {
    Section section{"", "Notes", {}, true};
    Table t;
    t.key = "notes";
    t.columns = {{"at", "At"}, {"text", "Note"}, {"by", "By"}};
    for (const Entry& e : entries_) {
      if (e.text.empty()) continue;
      t.rows.push_back({{minute_cell(e.at),
                         Cells::words(e.text),
                         e.by.empty() ? Cells::nothing("") : Cells::words(e.by)}});
    }
    section.shown = !t.rows.empty();
    section.blocks.emplace_back(std::move(t));
    return section;
  }

  Section listed(Section section, Table table, const std::string& none) {
    if (table.rows.empty()) {
      section.blocks.emplace_back(
          document::Paragraph{"", "MISSING: " + none + ".", {}, Role::caution});
      lack(none);
      table.shown = false;
    }
    section.blocks.emplace_back(std::move(table));
    return section;
  }

  Section missing_section() {
    Section section{"", "Missing", {}, !missing_.empty()};
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

  const Site& site_;
  Cells cells_;
  std::vector<Entry> entries_;
  std::vector<sitelog::Progress> done_;
  std::vector<Unit> units_;
  std::vector<std::string> missing_;
};

}  // namespace

document::Document coating_record(const Site& site) {
  return Record(site).page();
}

}  // namespace basinwright::report
