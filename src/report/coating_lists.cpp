// The lists of the coating record: conditions, deliveries, mixes, films, waters, notes.
#include <fmt/format.h>
#include <algorithm>

#include "coating_record.hpp"

namespace basinwright::report {

using document::Align;
using document::Section;
using document::Table;
using sitelog::Entry;
using sitelog::Event;

namespace {

constexpr double microns = 1e6;

Cell said(const std::string& text) {
  return text.empty() ? missing() : Cells::words(text);
}
Cell microns_cell(const std::optional<units::Length>& film) {
  if (!film) return Cells::nothing("");
  const double um = film->in(units::metres)*microns;
  return {fmt::format("{:.0f} µm", um), Value(um), Role::quantity};
}

}  // namespace

Section CoatingRecord::conditions() {
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

Section CoatingRecord::deliveries() {
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

Section CoatingRecord::mixes() {
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
Section CoatingRecord::films() {
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

Section CoatingRecord::waters() {
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
    t.rows.push_back(
        {{minute_cell(e.at),
          Cells::words(where[static_cast<std::size_t>(e.where)]),
          x.ph ? Cells::number(*x.ph, 1) : Cells::nothing(""),
          x.chlorine ? Cell{fmt::format("{:.1f} mg/L", x.chlorine->in(units::milligrams_per_litre)),
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

Section CoatingRecord::notes() {
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

Section CoatingRecord::listed(Section section, Table table, const std::string& none) {
  if (table.rows.empty()) {
    section.blocks.emplace_back(
        document::Paragraph{"", "MISSING: " + none + ".", {}, Role::caution});
    lack(none);
    table.shown = false;
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

}  // namespace basinwright::report
