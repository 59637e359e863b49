#include <fmt/format.h>

#include "odds_parts.hpp"
#include "sections.hpp"
#include "wording/odds.hpp"

namespace basinwright::report {

document::Document odds(const Subject& s) {
  document::Document d;
  d.title = say::odds_of_the_dates;
  d.subtitle = subtitle_of(s.job);
  d.notices = notices(s);
  d.sections = {version_section(), heading_section(s)};
  if (s.odds == nullptr) return d;
  d.sections.push_back(odds_section(s, *s.odds));
  if (auto facts = aim_and_allow(s)) {
    document::Section section{"odds", say::what_to_say, {}, true};
    section.blocks.emplace_back(std::move(*facts));
    d.sections.push_back(std::move(section));
  }
  d.sections.push_back(weeks_section(*s.odds));
  d.sections.push_back(years_section(*s.odds));
  const auto allow = s.odds->allow_for();
  if (!allow) {
    d.bottom_line = {s.odds->years.empty() ? say::no_year_could_be_replayed
                                           : say::not_finished_in_enough_of_the_years_to,
                     {},
                     Role::stop};
    return d;
  }
  d.bottom_line = {
      fmt::format(say::allow_for_years_p80, Cells::date(allow->date()).text, s.odds->years.size()),
      {},
      Role::total};
  return d;
}

}  // namespace basinwright::report
