#include <algorithm>
#include <array>

#include "basinwright/report/pages.hpp"
#include "drawing.hpp"
#include "programme_chart.hpp"

namespace basinwright::report {
namespace {

using document::Section;

// Asked about most; the rest is there for `explain`.
constexpr std::array<std::string_view, 7> asked_about{"takeoff.painted_area_m2",
                                                      "takeoff.water_volume_m3",
                                                      "quantities.kits",
                                                      "quantities.etch.acid_l",
                                                      "quantities.neutralise.surface_kg",
                                                      "quantities.neutralise.sump_worst_kg",
                                                      "quantities.degrease.concentrate_l"};

Section drawings_section(const Subject& s) {
  Section section{"", "Drawings", {}, true};
  for (std::size_t body = 0; body < s.job.bodies.size(); ++body)
    section.blocks.emplace_back(take_off_drawing(s, body));
  return section;
}

/// How the numbers came about, each to be opened.
std::vector<Section> explanations(const Subject& s, const std::vector<GivenPlace>& places) {
  std::vector<Section> sections;
  for (const std::string_view key : asked_about) {
    auto page = explain(s, key, places);
    if (!page || !s.plan.trace.find(key)) continue;
    Section section{"", page->title, {}, true};
    section.folded = true;
    section.under = !sections.empty();
    for (Section& part : page->sections) {
      for (document::Block& block : part.blocks) {
        // Its machine values stay with the page of its own.
        if (auto* table = std::get_if<document::Table>(&block)) section.blocks.emplace_back(*table);
      }
    }
    sections.push_back(std::move(section));
  }
  return sections;
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
    Section chart{"", "Programme chart", {programme_drawing(s)}, true};
    d.sections.insert(after("programme"), std::move(chart));
  }
  for (Section& section : explanations(s, places)) d.sections.push_back(std::move(section));
  return d;
}

}  // namespace basinwright::report
