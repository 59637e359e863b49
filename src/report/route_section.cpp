#include <fmt/format.h>

#include "sections.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Row;
using document::Table;

Cell holds_cell(const preparation::Step& step) {
  std::string text;
  document::Array values;
  values.reserve(step.holds.size());
  for (const preparation::HoldPoint& point : step.holds) {
    const HoldWords words = hold(point.code);
    text += fmt::format(
        "{}Hold: {}; go on when: {}.", text.empty() ? "" : " ", words.what, words.limit);
    values.push_back(document::Object{
        {"code", Value(point.code)}, {"read", Value(words.what)}, {"limit", Value(words.limit)}});
  }
  return {text, Value(std::move(values)), Role::caution};
}

Table steps_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "steps";
  table.columns = {{"step", "Step"},
                   {"why", "Why"},
                   {"area_m2", "Area", document::Align::right},
                   {"holds", "", document::Align::left, false}};
  for (const preparation::Step& step : s.plan.route.steps) {
    const Cell holds = holds_cell(step);
    std::string why(reason(step.why));
    Cell why_cell{holds.text.empty() ? why : why + " " + holds.text, Value(why), Role::plain};
    Cell area = step.area > units::Area() ? c.area(step.area) : Cells::nothing("");
    table.rows.push_back(
        {{Cells::coded(task(step.task), step.task), std::move(why_cell), std::move(area), holds}});
  }
  return table;
}

}  // namespace

document::Section route_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  document::Section section;
  section.key = "route";
  section.title = "Preparation, coats and refill";
  const auto& stop_at = s.plan.route.stop;
  if (stop_at) {
    const StopWords words = stop(stop_at->why);
    const std::string where =
        stop_at->where.empty() ? "" : fmt::format(" Where: {}.", stop_at->where);
    section.blocks.emplace_back(document::Facts{
        {{"stop.step", "Stop at", {task(stop_at->step), Value(stop_at->step), Role::stop}, true},
         {"stop.why", "Why", {std::string(words.why) + where, Value(words.why), Role::stop}, true},
         {"stop.clear_by", "Cleared by", Cells::words(std::string(words.clear_by)), true}}});
  } else {
    section.blocks.emplace_back(document::Facts{{{"stop", "", Cells::nothing("none"), false}}});
  }
  section.blocks.emplace_back(steps_table(s, c));
  return section;
}

document::Section cautions_section(const Subject& s) {
  document::Section section;
  section.key = "cautions";
  section.title = "Cautions";
  Table table;
  table.columns = {{"code", "Hazard"},
                   {"text", "What to do"},
                   {"source", "Source", document::Align::left, false}};
  for (const job::Caution& caution : s.plan.cautions) {
    const CautionWords words = report::caution(caution.code);
    std::string text = fmt::format(fmt::runtime(words.text), caution.figure);
    std::string name = caution.code;
    for (char& ch : name) ch = ch == '-' ? ' ' : ch;
    name[0] = static_cast<char>(name[0] - 'a' + 'A');
    table.rows.push_back({{{name, Value(caution.code), Role::caution},
                           Cells::words(text),
                           Cells::words(std::string(words.source))}});
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

document::Section waste_section(const Subject& s) {
  document::Section section;
  section.key = "waste";
  section.title = "Waste";
  Table table;
  table.columns = {{"what", "What"},
                   {"amount", "Amount", document::Align::right},
                   {"unit", "", document::Align::left, false},
                   {"goes_to", "Goes to"}};
  for (const job::Waste& w : s.plan.waste) {
    const bool volume = w.unit == "m3" || w.unit == "L";
    const units::Volume v =
        w.unit == "m3" ? units::cubic_metres(w.amount) : units::litres(w.amount);
    Cell amount = Cells::nothing("");
    if (volume) {
      amount = {w.unit == "m3" ? units::show_bulk(v, s.units, 1) : units::show(v, s.units, 0),
                Value(w.amount),
                Role::quantity};
    } else if (w.amount > 0.0) {
      amount = {units::fixed(w.amount, 0), Value(w.amount), Role::quantity};
    }
    table.rows.push_back({{Cells::coded(std::string(waste(w.what)), w.what),
                           std::move(amount),
                           Cells::words(w.unit),
                           Cells::coded(std::string(destination(w.goes_to)), w.goes_to)}});
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

}  // namespace basinwright::report
