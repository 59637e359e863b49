#include "basinwright/render/icalendar.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <string_view>

#include "utf8.hpp"
#include "visible.hpp"

namespace basinwright::render {
namespace {

using document::Entry;
using document::EntryKind;
using document::EntryState;

/// RFC 5545, 3.1: no line longer than 75 octets, the line end not counted.
constexpr std::size_t most_octets = 75;

std::string folded(const std::string& line) {
  std::string out;
  std::size_t used = 0;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t length = scalar_at(line, at).length;
    if (used + length > most_octets) {
      out += "\r\n ";
      used = 1;
    }
    out.append(line, at, length);
    used += length;
    at += length;
  }
  return out + "\r\n";
}

/// RFC 5545, 3.3.11.
std::string escaped(std::string_view text) {
  std::string out;
  for (const char ch : visible(text)) {
    if (ch == '\n') {
      out += "\\n";
      continue;
    }
    if (ch == '\\' || ch == ';' || ch == ',') out += '\\';
    out += ch;
  }
  return out;
}

void put_text(std::string& out, std::string_view name, std::string_view text) {
  if (!text.empty()) out += folded(std::string(name) + ":" + escaped(text));
}

bool is_day(std::string_view iso) {
  return iso.find('T') == std::string_view::npos;
}

/// `2027-05-03T07:00` as `20270503T070000`, a day as `20270503`.
std::string stamp(std::string_view iso) {
  constexpr std::size_t day = 10;
  constexpr std::size_t minute = 16;
  std::string digits;
  for (const char ch : iso) {
    if (ch != '-' && ch != ':') digits += ch;
  }
  const bool sound =
      iso.size() == (is_day(iso) ? day : minute) &&
      std::ranges::all_of(digits, [](char ch) { return ch == 'T' || (ch >= '0' && ch <= '9'); });
  if (!sound) throw std::logic_error("no time for a calendar: \"" + std::string(iso) + "\"");
  return is_day(iso) ? digits : digits + "00";
}

void put_time(std::string& out, std::string_view name, std::string_view iso) {
  if (iso.empty()) return;
  out += folded(fmt::format("{}{}:{}", name, is_day(iso) ? ";VALUE=DATE" : "", stamp(iso)));
}

void put_alarm(std::string& out, const Entry& entry) {
  out += "BEGIN:VALARM\r\nACTION:DISPLAY\r\n";
  put_text(out, "DESCRIPTION", entry.summary);
  out += folded(fmt::format("TRIGGER:-PT{}M", entry.minutes_before)) + "END:VALARM\r\n";
}

/// RFC 5545, 3.8.1.11: an event knows no completion, a to-do does. What may take back a
/// cancellation says so.
std::string_view status(const Entry& entry, bool again) {
  const bool to_do = entry.kind == EntryKind::to_do;
  switch (entry.state) {
    case EntryState::open:
      return to_do ? "NEEDS-ACTION" : again ? "CONFIRMED" : "";
    case EntryState::done:
      return to_do ? "COMPLETED" : "CONFIRMED";
    case EntryState::cancelled:
      return "CANCELLED";
  }
  return "";
}

std::string component(const Entry& entry, const std::string& made, std::int64_t sequence) {
  const bool to_do = entry.kind == EntryKind::to_do;
  const std::string_view name = to_do ? "VTODO" : "VEVENT";
  std::string out = fmt::format("BEGIN:{}\r\n", name);
  put_text(out, "UID", entry.uid);
  out += folded("DTSTAMP:" + made);
  if (sequence > 0) out += folded(fmt::format("SEQUENCE:{}", sequence));
  put_time(out, "DTSTART", entry.start);
  put_time(out, to_do ? "DUE" : "DTEND", entry.end);
  put_text(out, "SUMMARY", entry.summary);
  put_text(out, "DESCRIPTION", entry.description);
  put_text(out, "LOCATION", entry.location);
  put_text(out, "STATUS", status(entry, sequence > 0));
  const bool rings = entry.state == EntryState::open;
  if (entry.kind == EntryKind::deadline) {
    out += "TRANSP:TRANSPARENT\r\n";
    if (rings) put_alarm(out, entry);
  }
  return out + fmt::format("END:{}\r\n", name);
}

}  // namespace

std::string icalendar(const document::Document& document) {
  const document::Agenda& agenda = document.agenda;
  if (agenda.stamp.empty()) throw std::logic_error("a page without an agenda for a calendar");
  const std::string made = stamp(agenda.stamp) + "T000000Z";
  std::string out =
      "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Basinwright//Job planner//EN\r\n"
      "CALSCALE:GREGORIAN\r\n";
  for (const Entry& entry : agenda.entries) out += component(entry, made, agenda.sequence);
  return out + "END:VCALENDAR\r\n";
}

}  // namespace basinwright::render
