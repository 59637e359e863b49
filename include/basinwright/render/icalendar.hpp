// A page's agenda for a calendar program.
#pragma once

#include <string>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// The agenda as iCalendar (RFC 5545): work as events, what is to be done as to-dos with their due
/// time, deadlines as events with an alarm before them. Times are local and without a zone
/// ("floating"), since the pool stays where it is; lines end with CR LF and are folded at 75
/// octets, never inside a character. Cancelled entries stay in with their status; without a METHOD,
/// since one file holds both kinds. Control characters are shown as `\xNN`.
/// @throws std::logic_error if the page has no agenda or a time is not ISO 8601
[[nodiscard]] std::string icalendar(const document::Document& document);

}  // namespace basinwright::render
