#include <fmt/format.h>
#include <cctype>
#include <cmath>

#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/jobsheet.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Row;
using document::Table;

Cell route_holds_cell(const preparation::Step& step) {
  std::string text;
  document::Array values;
  values.reserve(step.holds.size());
  for (const preparation::HoldPoint& point : step.holds) {
    const HoldWords words = hold(point.code);
    text += fmt::format(say::hold_go_on_when, text.empty() ? "" : "\n", words.what, words.limit);
    values.push_back(document::Object{
        {"code", Value(point.code)}, {"read", Value(words.what)}, {"limit", Value(words.limit)}});
  }
  return {text, Value(std::move(values)), Role::caution};
}

Cell actions_cell(const preparation::Step& step) {
  std::string text;
  document::Array codes;
  codes.reserve(step.actions.size());
  for (const std::string& code : step.actions) {
    text += (text.empty() ? "" : "; ") + std::string(action(code));
    codes.emplace_back(code);
  }
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  if (!text.empty()) text += ".";
  return {text, Value(std::move(codes)), Role::plain};
}

Table steps_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "steps";
  table.columns = {{"step", say::step},
                   {"why", say::why},
                   {"area_m2", say::area, document::Align::right},
                   {"actions", "", document::Align::left, false},
                   {"holds", "", document::Align::left, false}};
  for (const preparation::Step& step : s.plan.route.steps) {
    const Cell actions = actions_cell(step);
    const Cell holds = route_holds_cell(step);
    const std::string why(reason(step.why));
    std::string said = why;
    for (const Cell* more : {&actions, &holds}) {
      if (!more->text.empty()) said += "\n" + more->text;
    }
    Cell area = step.area > units::Area() ? c.area(step.area) : Cells::nothing("");
    table.rows.push_back({{Cells::coded(task(step.task), step.task),
                           {said, Value(why), Role::plain},
                           std::move(area),
                           actions,
                           holds}});
  }
  return table;
}

// What an age or a level has to come to, where a stop is cleared by one.
std::string clear_text(const Subject& s, const preparation::Stop& at) {
  std::string text(stop(at.why).clear_by);
  const job::Plan& plan = s.plan;
  if (at.why == "young-cement" && plan.route.cement_wait) {
    const auto days = static_cast<int>(std::ceil(plan.route.cement_wait->in(units::days)-1e-9));
    text += fmt::format(" ({})", Cells::date(plan.first_day + std::chrono::days{days}).text);
  }
  if (at.why == "flotation" && plan.flotation && plan.flotation->neutral) {
    const Cells c(s.units, s.rates.currency);
    text += fmt::format(say::factor_with_the_level_given_1_with_the,
                        units::fixed(plan.flotation->factor, 2),
                        c.length(*plan.flotation->neutral).text);
  }
  return text;
}

Table also_table(const Subject& s) {
  Table table;
  table.key = "also";
  table.caption = say::to_be_cleared_as_well;
  table.columns = {{"step", say::at}, {"why", say::why}, {"clear_by", say::cleared_by}};
  for (const preparation::Stop& at : s.plan.route.also) {
    table.rows.push_back({{Cells::coded(task(at.step), at.step),
                           Cells::words(std::string(stop(at.why).why)),
                           Cells::words(clear_text(s, at))}});
  }
  table.shown = !table.rows.empty();
  return table;
}

// New cement on the shell: when it may meet acid, and what published practice asks for.
void add_cement(const Subject& s, document::Section& section) {
  const auto& wait = s.plan.route.cement_wait;
  if (!wait || s.plan.stopped()) return;
  section.blocks.emplace_back(
      document::Paragraph{"cement_wait_days",
                          fmt::format(say::new_cement_acid_and_paint_wait_more,
                                      units::show(*wait, 0),
                                      units::show(s.rates.thresholds.cement_age.value, 0)),
                          Value(wait->in(units::days)),
                          Role::caution,
                          true});
}

}  // namespace

document::Section route_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  document::Section section;
  section.key = "route";
  section.title = say::preparation_coats_and_refill;
  const auto& stop_at = s.plan.route.stop;
  if (stop_at) {
    const StopWords words = stop(stop_at->why);
    const std::string where =
        stop_at->where.empty() ? "" : fmt::format(say::where_after, stop_at->where);
    section.blocks.emplace_back(document::Facts{
        {{"stop.step", say::stop_at, {task(stop_at->step), Value(stop_at->step), Role::stop}, true},
         {"stop.why",
          say::why,
          {std::string(words.why) + where, Value(words.why), Role::stop},
          true},
         {"stop.clear_by", say::cleared_by, Cells::words(clear_text(s, *stop_at)), true}}});
    section.blocks.emplace_back(also_table(s));
  } else {
    section.blocks.emplace_back(document::Facts{{{"stop", "", Cells::nothing(say::none), false}}});
  }
  add_cement(s, section);
  section.blocks.emplace_back(steps_table(s, c));
  return section;
}

document::Section cautions_section(const Subject& s) {
  document::Section section;
  section.key = "cautions";
  section.title = say::cautions;
  Table table;
  table.columns = {{"code", say::hazard},
                   {"text", say::what_to_do},
                   {"source", say::source, document::Align::left, false}};
  for (const job::Caution& caution : s.plan.cautions) {
    const CautionWords words = report::caution(caution.code);
    const std::string text = caution_text(caution, s.units);
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
  const Cells c(s.units, s.rates.currency);
  document::Section section;
  section.key = "waste";
  section.title = say::waste;
  Table table;
  table.columns = {{"what", say::what},
                   {"amount", say::amount, document::Align::right},
                   {"unit", "", document::Align::left, false},
                   {"goes_to", say::goes_to}};
  for (const job::Waste& w : s.plan.waste) {
    const bool volume = w.unit == "m3" || w.unit == "L";
    const units::Volume v =
        w.unit == "m3" ? units::cubic_metres(w.amount) : units::litres(w.amount);
    Cell amount = Cells::nothing("");
    if (volume) {
      amount = {
          grouped(w.unit == "m3" ? units::show_bulk(v, s.units, 1) : units::show(v, s.units, 0)),
          Value(w.amount),
          Role::quantity};
    } else if (w.amount > 0.0) {
      amount = w.unit == "kg" ? c.mass(units::kilograms(w.amount))
                              : Cell{units::fixed(w.amount, 0), Value(w.amount), Role::quantity};
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
