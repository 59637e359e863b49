#include "handover_built.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"
#include "site_parts.hpp"
#include "word_table.hpp"
#include "wording/common.hpp"
#include "wording/handover.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Row;
using document::Section;
using document::Table;
using sitelog::Event;

void add_once(std::string& list, const std::string& word) {
  if (word.empty() || (", " + list + ", ").find(", " + word + ", ") != std::string::npos) return;
  list += (list.empty() ? "" : ", ") + word;
}

Cell recorded(const std::string& text) {
  return text.empty() ? Cells::nothing(say::not_recorded) : Cells::words(text);
}

// One coat of one section, as the log has it.
class Coat {
 public:
  Coat(const Site& site, std::string name, std::string section)
      : site_(site), task_(std::move(name)), section_(std::move(section)) {
    const auto all = sitelog::progress(site.log);
    if (const auto* found = sitelog::find(all, task_, section_)) done_ = *found;
    for (const sitelog::Entry& e : site.log.entries) take(e);
  }

  [[nodiscard]] Row row(units::Area area) const {
    const Cells cells(site_.subject.units, site_.subject.rates.currency);
    const units::System system = site_.subject.units;
    Row row;
    row.cells = {{job_of(task_, section_), Value(task_), Role::heading},
                 section_.empty() ? Cells::nothing("") : Cells::words(section_),
                 cells.area(area),
                 done_ ? minute_cell(done_->start) : Cells::nothing(say::not_recorded),
                 recorded(batch_a_),
                 recorded(batch_b_),
                 kits_ > 0 ? Cells::count(kits_) : Cells::nothing(say::not_recorded),
                 recorded(films_),
                 Cells::nothing(say::not_recorded),
                 Cells::nothing(say::not_recorded)};
    if (margin_) {
      row.cells[8] = {
          units::show(*shell_, system, 1), Value(shell_->in(units::celsius)), Role::quantity};
      row.cells[9] = {
          units::show(*margin_, system, 1), Value(margin_->in(units::kelvins)), Role::quantity};
    }
    return row;
  }

 private:
  void take(const sitelog::Entry& e) {
    const bool of_it = e.task == task_ && e.section == section_;
    if (of_it && e.event == Event::mix) {
      add_once(batch_a_, e.batch_a);
      add_once(batch_b_, e.batch_b);
      kits_ += e.kits.value_or(1);
    }
    if (e.event != Event::reading || !done_) return;
    const auto before =
        static_cast<std::int64_t>(sitelog::readings_hold_for.value.in(units::minutes));
    const bool during =
        e.at.minutes() >= done_->start.minutes() - before && (!done_->end || e.at <= *done_->end);
    if (e.read.wet_film && (of_it || (during && e.task.empty())))
      add_once(films_, fmt::format("{:.0f} µm", e.read.wet_film->in(units::metres)*microns));
    const auto margin = sitelog::dew_margin(e.read);
    if (!during || !margin || (margin_ && *margin >= *margin_)) return;
    margin_ = margin;  // The tightest one is kept, with its shell.
    shell_ = e.read.shell;
  }

  const Site& site_;
  std::string task_, section_;
  std::optional<sitelog::Progress> done_;
  std::string batch_a_, batch_b_, films_;
  std::int64_t kits_ = 0;
  std::optional<units::TemperatureDifference> margin_;
  std::optional<units::Temperature> shell_;
};

std::vector<std::string> coat_tasks(const Subject& s) {
  std::vector<std::string> coats;
  if (s.plan.route.has("prime")) coats.emplace_back("prime");
  for (const coverage::Coat& coat : s.plan.quantities.coats)
    coats.push_back(fmt::format("coat-{}", coat.number));
  return coats;
}

Table coats_by_hand(const Subject& s) {
  Table batches;
  batches.caption = say::batches_and_readings_of_each_coat;
  batches.columns = {{"", say::coat},
                     {"", say::date},
                     {"", say::batch_a},
                     {"", say::batch_b},
                     {"", say::kits_used},
                     {"", say::shell},
                     {"", say::above_dew_point}};
  for (const std::string& coat : coat_tasks(s)) {
    Row row;
    row.cells = {Cells::words(task(coat))};
    row.cells.resize(batches.columns.size(), Cells::blank());
    batches.rows.push_back(std::move(row));
  }
  return batches;
}

Table coats_by_log(const Site& site) {
  const Subject& s = site.subject;
  Table t;
  t.key = "coats";
  t.caption = say::each_coat_as_it_was_painted_from_the;
  t.columns = {{"task", say::coat},
               {"section", "", Align::left, false},
               {"area_m2", say::area, Align::right},
               {"start", say::begun},
               {"batch_a", say::batch_a},
               {"batch_b", say::batch_b},
               {"kits", say::kits, Align::right},
               {"wet_film", say::wet_film},
               {"shell_c", say::shell, Align::right},
               {"dew_margin_k", say::above_dew_point, Align::right}};
  auto sections = job::site_sections(s.plan);
  if (sections.empty()) sections.emplace_back();
  const auto& areas = s.plan.quantities.cut.sections;
  for (const std::string& coat : coat_tasks(s)) {
    for (std::size_t i = 0; i < sections.size(); ++i)
      t.rows.push_back(
          Coat(site, coat, sections[i]).row(i < areas.size() ? areas[i] : units::Area()));
  }
  return t;
}

Table tests_table(const Subject& s, const Site* site) {
  Table tests;
  tests.caption = say::tests_before_painting;
  tests.columns = {{"", say::test}, {"", say::held_when}, {"", say::found}, {"", say::held}};
  for (const preparation::Step& step : s.plan.route.steps) {
    if (step.task.starts_with("coat-") || step.task == "start-up" || step.task == "fill") continue;
    for (const preparation::HoldPoint& point : step.holds) {
      const HoldWords words = hold(point.code);
      Row row{{Cells::words(capital(words.what)),
               Cells::words(capital(words.limit)),
               Cells::blank(),
               Cells::tick()}};
      if (site != nullptr) {
        const sitelog::Entry* e = release_of(*site, point.code);
        row.cells[2] = e != nullptr ? Cells::words(e->by + ", " + at(e->at))
                                    : Cells::nothing(say::not_recorded);
        row.cells[3] = e != nullptr ? Cells::words(say::held_small) : Cells::tick();
      }
      tests.rows.push_back(std::move(row));
    }
  }
  return tests;
}

const sitelog::Entry* last_in_pool(const Site* site, bool (*has)(const sitelog::Readings&)) {
  const sitelog::Entry* last = nullptr;
  if (site == nullptr) return last;
  for (const sitelog::Entry& e : site->log.entries) {
    const bool wanted = e.event == Event::reading && e.where == sitelog::Where::pool && has(e.read);
    if (wanted && (last == nullptr || e.at >= last->at)) last = &e;
  }
  return last;
}

}  // namespace

Section built_section(const Subject& s, const Site* site) {
  Section section{site == nullptr ? "" : "as_built", say::as_built, {}, true};
  section.blocks.emplace_back(site == nullptr ? coats_by_hand(s) : coats_by_log(*site));
  section.blocks.emplace_back(tests_table(s, site));
  return section;
}

std::optional<dates::Date> painted_on(const Site& site) {
  const auto& coats = site.subject.plan.quantities.coats;
  if (coats.empty()) return {};
  auto sections = job::site_sections(site.subject.plan);
  if (sections.empty()) sections.emplace_back();
  const auto all = sitelog::progress(site.log);
  std::optional<dates::Date> day;
  for (const std::string& section : sections) {
    const auto* p = sitelog::find(all, fmt::format("coat-{}", coats.back().number), section);
    if (p == nullptr || !p->finished) return {};
    day = std::max(day.value_or(p->end->date()), p->end->date());
  }
  return day;
}

Cell pool_ph(const Site* site) {
  const sitelog::Entry* e =
      last_in_pool(site, [](const sitelog::Readings& r) { return r.ph.has_value(); });
  if (e == nullptr) return Cells::blank();
  return {fmt::format("{:.1f}, {}", *e->read.ph, at(e->at)), Value(*e->read.ph), Role::plain};
}

Cell pool_chlorine(const Site* site) {
  const sitelog::Entry* e =
      last_in_pool(site, [](const sitelog::Readings& r) { return r.chlorine.has_value(); });
  if (e == nullptr) return Cells::blank();
  const double read = e->read.chlorine->in(units::milligrams_per_litre);
  return {fmt::format(say::mg_l_and_when, read, at(e->at)), Value(read), Role::plain};
}

Cell kits_left(const Site* site) {
  std::int64_t kits = 0;
  bool counted = false;
  if (site != nullptr) {
    for (const sitelog::Entry& e : site->log.entries) {
      if (e.event == Event::delivery && e.item == "part-a" && e.kits) {
        kits += *e.kits;
        counted = true;
      }
      if (e.event == Event::mix && e.task != "prime") kits -= e.kits.value_or(1);
    }
  }
  return counted ? Cells::count(std::max<std::int64_t>(0, kits)) : Cells::blank();
}

Cell batches_left(const Site* site) {
  std::string a;
  std::string b;
  if (site != nullptr) {
    for (const sitelog::Entry& e : site->log.entries) {
      if (e.event != Event::delivery) continue;
      if (e.item == "part-a") add_once(a, e.batch);
      if (e.item == "part-b") add_once(b, e.batch);
    }
  }
  if (a.empty() || b.empty()) return Cells::blank();
  return Cells::words(a + say::and_word + b);
}

}  // namespace basinwright::report
