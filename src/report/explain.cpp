#include <fmt/format.h>
#include <algorithm>
#include <set>

#include "basinwright/report/pages.hpp"
#include "basinwright/shell/handbook.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/explain.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Array;
using document::Object;

// Indentation shows the tree: each input stands under the number it goes into.
constexpr int deepest_tree = 12;

class Tree {
 public:
  Tree(const Subject& s, const std::vector<GivenPlace>& places) : s_(s), places_(places) {
    table_.columns = {
        {"", say::number}, {"", say::value, document::Align::right}, {"", say::how_and_where_from}};
  }

  Value grow(const trace::Step& step, const std::string& name, int depth) {
    std::string how = "= " + step.formula;
    if (!step.note.empty()) how += " (" + step.note + ")";
    add(depth, name, step.value, std::move(how));
    Array inputs;
    inputs.reserve(step.inputs.size());
    for (const trace::Input& input : step.inputs) inputs.push_back(input_of(input, depth + 1));
    return Object{{"key", Value(step.key)},
                  {"value_si", Value(step.value.si)},
                  {"shown", Value(text(step.value, step.key))},
                  {"formula", Value(step.formula)},
                  {"note", Value(step.note)},
                  {"inputs", Value(std::move(inputs))}};
  }

  [[nodiscard]] document::Table table() && { return std::move(table_); }

 private:
  [[nodiscard]] std::string text(const trace::Amount& amount, std::string_view name) const {
    return shown(amount, name, s_.units);
  }

  // No-break spaces keep the indentation through any format.
  void add(int depth, const std::string& name, const trace::Amount& amount, std::string how) {
    std::string pad;
    for (int i = 0; i < depth; ++i) pad += "\u00a0\u00a0";
    const Role role = depth == 0 ? Role::total : Role::plain;
    table_.rows.push_back({{{pad + name, {}, role},
                            {text(amount, name), {}, Role::quantity},
                            {std::move(how), {}, Role::plain}}});
  }

  [[nodiscard]] std::string origin(const trace::Input& input) const {
    if (!input.from.empty()) return say::computed + input.from;
    if (input.kind == sources::Kind::given) {
      for (const GivenPlace& place : places_) {
        if (place.pointer == input.source_place) return say::given + place.place;
      }
      // Nobody gave it: what the job file leaves out has a default.
      return say::default_not_given_at + input.source_place;
    }
    std::string out = fmt::format("{}: {}", sources::name(input.kind), input.source_key);
    if (!input.source_place.empty()) out += ", " + input.source_place;
    return out;
  }

  Value input_of(const trace::Input& input, int depth) {
    Object out{{"name", Value(input.name)},
               {"value_si", Value(input.value.si)},
               {"shown", Value(text(input.value, input.name))},
               {"origin", Value(origin(input))}};
    const trace::Step* below = s_.plan.trace.find(input.from);
    if (below != nullptr && depth < deepest_tree && told_.insert(input.from).second) {
      out.emplace_back("step", grow(*below, input.name, depth));
    } else {
      add(depth, input.name, input.value, origin(input));
    }
    return out;
  }

  const Subject& s_;
  const std::vector<GivenPlace>& places_;
  document::Table table_;
  std::set<std::string> told_;
};

document::Document list_of(const Subject& s) {
  document::Document d;
  d.title = say::what_can_be_explained;
  d.sections = {version_section()};
  document::Table table;
  table.key = "quantities";
  table.columns = {{"key", say::quantity},
                   {"shown", say::value, document::Align::right},
                   {"formula", say::formula}};
  for (const trace::Step& step : s.plan.trace.steps()) {
    table.rows.push_back({{Cells::words(step.key),
                           Cells::words(shown(step.value, step.key, s.units)),
                           Cells::words(step.formula)}});
  }
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

std::vector<std::string> explainable(const job::Plan& plan) {
  std::vector<std::string> keys;
  keys.reserve(plan.trace.steps().size());
  for (const trace::Step& step : plan.trace.steps()) keys.push_back(step.key);
  return keys;
}

std::optional<document::Document> explain(const Subject& s,
                                          std::string_view quantity,
                                          const std::vector<GivenPlace>& places) {
  if (quantity.empty()) return list_of(s);
  const trace::Step* step = s.plan.trace.find(quantity);
  if (step == nullptr) return {};
  Tree tree(s, places);
  Value value = tree.grow(*step, std::string(quantity), 0);
  document::Document d;
  d.title = say::how_before + std::string(quantity) + say::came_about;
  document::Section section;
  section.blocks.emplace_back(
      document::Paragraph{"explain", "", std::move(value), Role::plain, false});
  section.blocks.emplace_back(std::move(tree).table());
  d.sections = {version_section(), std::move(section)};
  if (quantity.ends_with("water_volume_m3")) d.sections.push_back(handbook_section(s, quantity));
  d.bottom_line = {
      fmt::format("{} = {}", quantity, shown(step->value, step->key, s.units)), {}, Role::total};
  return d;
}

}  // namespace basinwright::report
