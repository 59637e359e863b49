// The lists of the coating record: conditions, deliveries, mixes, films, waters, notes.
#include <fmt/format.h>
#include <algorithm>

#include "coating_record.hpp"
#include "wording/coating_record.hpp"
#include "wording/common.hpp"

namespace basinwright::report {

using document::Align;
using document::Section;
using document::Table;
using sitelog::Event;

namespace {

Cell said_or_not(const std::string& text) {
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
  Section section{"", say::conditions, {}, true};
  Table t;
  t.key = "conditions";
  t.caption = fmt::format(say::limits_air_to_shell_to_humidity_at,
                          units::show(r.air_min, site_.subject.units, 0),
                          units::show(r.air_max, site_.subject.units, 0),
                          units::show(r.shell_min, site_.subject.units, 0),
                          units::show(r.shell_max, site_.subject.units, 0),
                          r.humidity_max.share() * 100.0,
                          units::show(r.dew_margin, site_.subject.units, 1));
  t.columns = {{"at", say::at},
               {"air_c", say::air, Align::right},
               {"shell_c", say::shell, Align::right},
               {"rh_pct", say::humidity, Align::right},
               {"dew_margin_k", say::above_dew_point, Align::right},
               {"by", say::by}};
  const auto degrees = [&](const std::optional<units::Temperature>& v) {
    return v ? Cell{units::show(*v, site_.subject.units, 1),
                    Value(v->in(units::celsius)),
                    Role::quantity}
             : missing();
  };
  for (const sitelog::Entry& e : entries_) {
    const sitelog::Readings& x = e.read;
    if (e.event != Event::reading || !(x.air || x.shell || x.humidity)) continue;
    const auto margin = sitelog::dew_margin(x);
    Cell above = missing(say::cannot_be_told);
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
                       said_or_not(e.by)}});
  }
  return listed(section, std::move(t), say::no_conditions_were_read);
}

Section CoatingRecord::deliveries() {
  Section section{"", say::deliveries, {}, true};
  Table t;
  t.key = "deliveries";
  t.columns = {{"at", say::at},
               {"item", say::what},
               {"batch", say::batch},
               {"kind", say::kind},
               {"kits", say::kits, Align::right},
               {"amount", say::amount}};
  for (const sitelog::Entry& e : entries_) {
    if (e.event != Event::delivery) continue;
    t.rows.push_back({{minute_cell(e.at),
                       Cells::words(e.item),
                       said_or_not(e.batch),
                       e.kind.empty() ? Cells::nothing("") : Cells::words(e.kind),
                       e.kits ? Cells::count(*e.kits) : Cells::nothing(""),
                       e.amount.empty() ? Cells::nothing("") : Cells::words(e.amount)}});
    if (e.batch.empty()) lack(say::delivery_of + e.item + say::batch_of_it);
  }
  return listed(section, std::move(t), say::no_delivery_was_recorded);
}

Section CoatingRecord::mixes() {
  Section section{"", say::mixes, {}, true};
  Table t;
  t.key = "mixes";
  t.columns = {{"at", say::mixed},
               {"task", say::for_word},
               {"batch_a", say::part_a},
               {"batch_b", say::part_b},
               {"part_b", say::kind},
               {"kits", say::kits, Align::right},
               {"use_by", say::use_by},
               {"emptied", say::rolled_out}};
  const auto life = static_cast<std::int64_t>(site_.rules.pot_life.in(units::minutes));
  for (const sitelog::Entry& e : entries_) {
    if (e.event != Event::mix) continue;
    const std::string name = job_of(e.task, e.section) + say::mix_at_after + at(e.at);
    if (e.batch_a.empty()) lack(name + say::batch_of_part_a);
    if (e.batch_b.empty()) lack(name + say::batch_of_part_b);
    t.rows.push_back(
        {{minute_cell(e.at),
          {job_of(e.task, e.section), Value(e.task), Role::plain},
          said_or_not(e.batch_a),
          said_or_not(e.batch_b),
          said_or_not(e.part_b),
          Cells::count(e.kits.value_or(1)),
          {dates::clock(dates::Minute(e.at.minutes() + life)),
           Value(dates::iso(dates::Minute(e.at.minutes() + life))),
           Role::plain},
          e.emptied ? Cell{dates::clock(*e.emptied), Value(dates::iso(*e.emptied)), Role::plain}
                    : missing()}});
  }
  return listed(section, std::move(t), say::no_mix_was_recorded);
}

// Litres on square metres are the wet film that the data sheet's cover comes to.
Section CoatingRecord::films() {
  const materials::CoatingSystem& sheet = site_.subject.plan.system;
  const units::Length thin = sheet.kit.value / sheet.cover_high.value;
  const units::Length thick = sheet.kit.value / sheet.cover_low.value;
  Section section{"", say::film_readings, {}, true};
  Table t;
  t.key = "films";
  t.caption = fmt::format(say::wet_film_at_the_data_sheets_cover_to_m,
                          thin.in(units::metres)*microns,
                          thick.in(units::metres)*microns);
  t.columns = {{"at", say::at},
               {"task", say::where},
               {"wet_um", say::wet, Align::right},
               {"dry_um", say::dry, Align::right},
               {"state", say::against_the_sheet},
               {"by", say::by}};
  constexpr double hair = 1e-9;
  for (const sitelog::Entry& e : entries_) {
    if (e.event != Event::reading || !(e.read.wet_film || e.read.dry_film)) continue;
    Cell state = Cells::nothing(say::the_sheet_decides);
    if (e.read.wet_film) {
      const double wet = e.read.wet_film->in(units::metres);
      const bool low = wet < thin.in(units::metres)-hair;
      const bool high = wet > thick.in(units::metres) + hair;
      const std::string word = low ? say::too_thin : (high ? say::too_thick : say::inside);
      state = {word, Value(word), low || high ? Role::caution : Role::good};
    }
    t.rows.push_back(
        {{minute_cell(e.at),
          {e.task.empty() ? "shell" : job_of(e.task, e.section), Value(e.task), Role::plain},
          microns_cell(e.read.wet_film),
          microns_cell(e.read.dry_film),
          state,
          said_or_not(e.by)}});
  }
  return listed(section, std::move(t), say::no_film_was_read);
}

Section CoatingRecord::waters() {
  static constexpr const char* where[] = {"shell", "rinse", "outflow", "pool"};
  Section section{"", say::water_readings, {}, true};
  Table t;
  t.key = "waters";
  t.columns = {{"at", say::at},
               {"where", say::where},
               {"ph", "pH", Align::right},
               {"chlorine_mg_l", say::chlorine, Align::right},
               {"groundwater_m", say::groundwater_below_rim, Align::right},
               {"by", say::by}};
  for (const sitelog::Entry& e : entries_) {
    const sitelog::Readings& x = e.read;
    if (e.event != Event::reading || !(x.ph || x.chlorine || x.groundwater)) continue;
    t.rows.push_back(
        {{minute_cell(e.at),
          Cells::words(where[static_cast<std::size_t>(e.where)]),
          x.ph ? Cells::number(*x.ph, 1) : Cells::nothing(""),
          x.chlorine ? Cell{fmt::format(say::mg_l_of, x.chlorine->in(units::milligrams_per_litre)),
                            Value(x.chlorine->in(units::milligrams_per_litre)),
                            Role::quantity}
                     : Cells::nothing(""),
          x.groundwater ? cells_.length(*x.groundwater) : Cells::nothing(""),
          said_or_not(e.by)}});
  }
  section.shown = !t.rows.empty();
  section.blocks.emplace_back(std::move(t));
  return section;
}

Section CoatingRecord::notes() {
  Section section{"", say::notes, {}, true};
  Table t;
  t.key = "notes";
  t.columns = {{"at", say::at}, {"text", say::note}, {"by", say::by}};
  for (const sitelog::Entry& e : entries_) {
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
