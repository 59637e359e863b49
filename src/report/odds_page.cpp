#include <fmt/format.h>

#include "odds_parts.hpp"
#include "sections.hpp"

namespace basinwright::report {

document::Document odds(const Subject& s) {
  document::Document d;
  d.title = "Odds of the dates";
  d.subtitle = s.job.heading.number;
  d.notices = notices(s);
  d.sections = {version_section(), heading_section(s)};
  if (s.odds == nullptr) return d;
  d.sections.push_back(odds_section(s, *s.odds));
  if (auto facts = aim_and_allow(s)) {
    document::Section section{"odds", "What to say", {}, true};
    section.blocks.emplace_back(std::move(*facts));
    d.sections.push_back(std::move(section));
  }
  d.sections.push_back(weeks_section(*s.odds));
  d.sections.push_back(years_section(*s.odds));
  const auto allow = s.odds->allow_for();
  if (!allow) {
    d.bottom_line = {s.odds->years.empty()
                         ? "No year could be replayed"
                         : "Not finished in enough of the years to promise a date",
                     {},
                     Role::stop};
    return d;
  }
  d.bottom_line = {
      fmt::format(
          "Allow for {} ({} years, P80)", Cells::date(allow->date()).text, s.odds->years.size()),
      {},
      Role::total};
  return d;
}

}  // namespace basinwright::report
