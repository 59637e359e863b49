#include <algorithm>

#include "basinwright/report/pages.hpp"
#include "drawing.hpp"
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

/// How one number came about; its machine values stay with the page of its own.
Section explanation(const Subject& s,
                    const std::string& key,
                    const std::vector<GivenPlace>& places) {
  Section section{key, "", {}, true};
  section.folded = true;
  const auto page = explain(s, key, places);
  for (const Section& part : page->sections) {
    for (const document::Block& block : part.blocks) {
      const auto* table = std::get_if<document::Table>(&block);
      if (table == nullptr) continue;
      section.blocks.emplace_back(*table);
      if (section.blocks.size() == 1)
        std::get<document::Table>(section.blocks.front()).caption = page->title;
    }
  }
  return section;
}

/// The explanations of all numbers that are shown and were recorded, each to be opened beside it.
std::vector<Section> explanations(const document::Document& d,
                                  const Subject& s,
                                  const std::vector<GivenPlace>& places) {
  std::vector<Section> out;
  for (const Section& section : d.sections) {
    for (const document::Block& block : section.blocks) {
      const auto* facts = std::get_if<document::Facts>(&block);
      if (facts == nullptr || section.key.empty()) continue;
      for (const document::Fact& fact : facts->facts) {
        const std::string key = section.key + "." + fact.key;
        if (fact.shown && s.plan.trace.find(key) != nullptr)
          out.push_back(explanation(s, key, places));
      }
    }
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
