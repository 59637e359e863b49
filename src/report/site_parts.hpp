// What more than one page of a running job says; private to the room.
#pragma once

#include <string>

#include "basinwright/report/site.hpp"
#include "cells.hpp"
#include "sections.hpp"
#include "words.hpp"

namespace basinwright::report {

/// Micrometres in a metre, as films are read.
inline constexpr double microns = 1e6;

/// "Tue 25 May 08:05".
[[nodiscard]] std::string at(dates::Minute minute);
[[nodiscard]] Cell minute_cell(dates::Minute minute);
/// "Coat 2, section 1".
[[nodiscard]] std::string job_of(const std::string& task, const std::string& section);
/// Live windows, soonest first.
[[nodiscard]] document::Section deadlines_section(const Site& site);
/// Rules that were broken; they stand, and are said.
[[nodiscard]] document::Section breaches_section(const Site& site);
/// The last release of a hold point; nothing when nobody signed it.
[[nodiscard]] const sitelog::Entry* release_of(const Site& site, std::string_view hold);
/// Title, job and time of a page.
void head(const Site& site, const std::string& title, document::Document& page);

}  // namespace basinwright::report
