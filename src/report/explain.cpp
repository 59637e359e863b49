#include <fmt/format.h>
#include <algorithm>
#include <iterator>

#include "basinwright/report/pages.hpp"
#include "basinwright/shell/handbook.hpp"
#include "explain_tree.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/explain.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

// "purchases.coating.left_over": a row of a table by its name.
const trace::Step* by_alias(const Subject& s, std::string_view quantity) {
  if (s.plan.take_off.bodies.empty()) return nullptr;
  for (const Called& one : numbers_of(jobsheet(s))) {
    if (one.alias == quantity) return s.plan.trace.find(one.key);
  }
  return nullptr;
}

// A row of the list; machines get the key by which the page's JSON has the number.
document::Row step_row(const Subject& s, const trace::Step& step, const Called& called) {
  return {{{called.alias.empty() ? step.key : called.alias, document::Value(step.key)},
           Cells::words(called.words),
           Cells::words(shown(step.value, step.key, s)),
           Cells::words(step.formula)}};
}

// "takeoff" of "takeoff.kits".
std::string_view group_of(const document::Row& row) {
  const std::string_view name = row.cells.front().text;
  return name.substr(0, name.find('.'));
}

std::string_view title_of(const document::Document& page, std::string_view group) {
  const auto it =
      std::find_if(page.sections.begin(), page.sections.end(), [&](const document::Section& one) {
        return one.key == group && !one.title.empty();
      });
  return it == page.sections.end() ? group : std::string_view(it->title);
}

// What belongs to a section of the page stands together, under its title.
void add_in_groups(document::Table& table,
                   std::vector<document::Row> rows,
                   const document::Document& page) {
  while (!rows.empty()) {
    const std::string group(group_of(rows.front()));
    document::Row heading{
        {Cells::words(std::string(title_of(page, group))), {}, {}, {}}, Role::heading, false};
    table.rows.push_back(std::move(heading));
    const auto others =
        std::stable_partition(rows.begin(), rows.end(), [&group](const document::Row& row) {
          return group_of(row) == group;
        });
    std::move(rows.begin(), others, std::back_inserter(table.rows));
    rows.erase(rows.begin(), others);
  }
}

// The numbers of the page by what it calls them, then the steps between.
document::Document list_of(const Subject& s) {
  const document::Document page = jobsheet(s);
  document::Document d;
  d.title = say::what_can_be_explained;
  d.subtitle = subtitle_of(s.job);
  d.sections = {version_section()};
  document::Table table;
  table.key = "quantities";
  table.columns = {{"key", say::quantity},
                   {"what", "", document::Align::left, false},
                   {"shown", say::value, document::Align::right},
                   {"formula", "", document::Align::left, false}};
  Keys on_page;
  std::vector<document::Row> rows;
  for (const Called& one : numbers_of(page)) {
    const trace::Step* step = s.plan.trace.find(one.key);
    if (step != nullptr && on_page.insert(one.key).second) rows.push_back(step_row(s, *step, one));
  }
  for (const trace::Step& step : s.plan.trace.steps()) {
    if (!on_page.contains(step.key)) rows.push_back(step_row(s, step, {}));
  }
  add_in_groups(table, std::move(rows), page);
  document::Section section;
  section.key = "explain";
  section.blocks.emplace_back(std::move(table));
  d.sections.push_back(std::move(section));
  d.bottom_line = {say::ask_for_one_basinwright_explain_job, {}, Role::plain};
  return d;
}

// The trade's short cuts beside the exact volume, and how far each misses.
document::Section handbook_section(const Subject& s, std::string_view quantity) {
  const Cells c(s.units, s.rates.currency);
  document::Table table;
  table.key = "handbook";
  table.columns = {{"body", say::body, document::Align::left, s.job.bodies.size() > 1},
                   {"rule", say::handbook_short_cut},
                   {"volume_m3", say::volume, document::Align::right},
                   {"difference", say::misses_by, document::Align::right},
                   {"source", "", document::Align::left, false}};
  const auto& bodies = s.plan.take_off.bodies;
  for (std::size_t b = 0; b < bodies.size(); ++b) {
    const bool of_body = quantity.starts_with("takeoff.bodies.");
    if (of_body && quantity != fmt::format("takeoff.bodies.{}.water_volume_m3", b)) continue;
    for (const auto& h : shell::handbook_volumes(s.job.bodies[b].pool, bodies[b].take_off)) {
      const std::string sign = h.difference < 0.0 ? "" : "+";
      table.rows.push_back({{Cells::words(bodies[b].name),
                             Cells::words(std::string(h.rule)),
                             c.bulk(h.volume),
                             {sign + units::show(units::fraction(h.difference), 1),
                              Value(h.difference),
                              Role::quantity},
                             Cells::words(std::string(h.source.key))}});
    }
  }
  document::Section section;
  section.title = say::beside_it;
  const bool none = table.rows.empty();
  table.shown = !none;
  section.blocks.emplace_back(std::move(table));
  if (none) {
    section.blocks.emplace_back(
        document::Paragraph{"", std::string(note("no-handbook")), {}, Role::muted, true});
  }
  return section;
}

}  // namespace

std::vector<std::string> explainable(const Subject& s) {
  std::vector<std::string> keys;
  keys.reserve(s.plan.trace.steps().size());
  for (const trace::Step& step : s.plan.trace.steps()) keys.push_back(step.key);
  if (s.plan.take_off.bodies.empty()) return keys;
  for (Called& one : numbers_of(jobsheet(s))) {
    const bool known = !one.alias.empty() && s.plan.trace.find(one.key) != nullptr;
    if (known) keys.push_back(std::move(one.alias));
  }
  return keys;
}

std::optional<document::Document> explain(const Subject& s,
                                          std::string_view quantity,
                                          const std::vector<GivenPlace>& places) {
  if (quantity.empty()) return list_of(s);
  const trace::Step* step = s.plan.trace.find(quantity);
  if (step == nullptr) step = by_alias(s, quantity);
  if (step == nullptr) return {};
  auto [value, table] = explained(s, *step, places);
  document::Document d;
  d.title = say::how_before + std::string(quantity) + say::came_about;
  d.subtitle = subtitle_of(s.job);
  document::Section section;
  section.blocks.emplace_back(
      document::Paragraph{"explain", "", std::move(value), Role::plain, false});
  section.blocks.emplace_back(std::move(table));
  d.sections = {version_section(), std::move(section)};
  if (quantity.ends_with("water_volume_m3")) d.sections.push_back(handbook_section(s, quantity));
  d.bottom_line = {
      fmt::format("{} = {}", quantity, shown(step->value, step->key, s)), {}, Role::total};
  return d;
}

}  // namespace basinwright::report
