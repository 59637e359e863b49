#include <algorithm>

#include "basinwright/report/pages.hpp"
#include "drawing.hpp"
#include "explain_tree.hpp"
#include "programme_chart.hpp"
#include "wording/jobsheet.hpp"

namespace basinwright::report {
namespace {

using document::Section;

Section drawings_section(const Subject& s) {
  Section section{"", say::drawings, {}, true};
  for (std::size_t body = 0; body < s.job.bodies.size(); ++body)
    section.blocks.emplace_back(take_off_drawing(s, body));
  return section;
}

/// How each number that is shown and was recorded came about, to be opened beside it; a number of
/// the page that another goes into is told at its own place.
std::vector<Section> explanations(const document::Document& d,
                                  const Subject& s,
                                  const std::vector<GivenPlace>& places) {
  Keys shown;
  for (const Called& one : numbers_of(d)) {
    if (one.shown && s.plan.trace.find(one.key) != nullptr) shown.insert(one.key);
  }
  std::vector<Section> out;
  for (const std::string& key : shown) {
    const trace::Step& step = *s.plan.trace.find(key);
    Section section{key, "", {}, true};
    section.folded = true;
    document::Table table = explained(s, step, places, shown).table;
    table.caption = say::how_key + key + say::key_came_about;
    section.blocks.emplace_back(std::move(table));
    out.push_back(std::move(section));
  }
  return out;
}

}  // namespace

document::Document job_pack(const Subject& s, const std::vector<GivenPlace>& places) {
  document::Document d = jobsheet(s);
  const auto after = [&d](std::string_view key) {
    const auto at = std::ranges::find(d.sections, key, &Section::key);
    return at == d.sections.end() ? at : at + 1;
  };
  d.sections.insert(after("takeoff"), drawings_section(s));
  if (!s.plan.stopped()) {
    Section chart{"", say::programme_chart, {programme_drawing(s)}, true};
    d.sections.insert(after("programme"), std::move(chart));
  }
  for (Section& section : explanations(d, s, places)) d.sections.push_back(std::move(section));
  return d;
}

}  // namespace basinwright::report
