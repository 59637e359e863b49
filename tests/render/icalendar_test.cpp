// Calendars, held against RFC 5545 and what the icalendar library of Python reads back.
#include "basinwright/render/icalendar.hpp"

#include "outside.hpp"
#include "render/visible.hpp"
#include "sample.hpp"
#include "support/catch.hpp"

namespace {

using namespace basinwright;
using namespace basinwright::document;

Document page_of(std::vector<Entry> entries) {
  Document page;
  page.title = "Sheet";
  page.agenda = {"2027-01-04", std::move(entries)};
  return page;
}

Entry entry(EntryKind kind) {
  Entry made;
  made.kind = kind;
  made.uid = "one@example.invalid";
  made.summary = "Etch; walls, floor";
  made.start = "2027-05-03T07:00";
  made.end = "2027-05-03T09:15";
  return made;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// What the library reads: "name field hexadecimal" lines; nothing when it is not there.
std::optional<std::vector<std::string>> read(const std::string& calendar) {
  if (!outside::has("python3", "calendar_back.py")) return std::nullopt;
  const outside::Folder folder;
  const std::string file = folder.write("job.ics", calendar);
  const auto result = outside::run("/usr/bin/python3 '" + places::source() +
                                   "/tests/render/calendar_back.py' '" + file + "' 2>&1");
  if (result.status == 77) {
    WARN("SKIPPED: python3-icalendar is not installed, so calendars are not read back by it");
    return std::nullopt;
  }
  INFO(result.output);
  REQUIRE(result.status == 0);
  return outside::lines(result.output);
}

bool among(const std::vector<std::string>& lines,
           const std::string& what,
           const std::string& text) {
  return std::ranges::find(lines, what + " " + outside::hex(text)) != lines.end();
}

}  // namespace

TEST_CASE("a calendar holds what RFC 5545 asks of it") {
  const std::string out = render::icalendar(page_of({entry(EntryKind::work)}));
  // 3.4, 3.7.3, 3.7.4, 3.8.7.2: the frame, PRODID, VERSION, a stamp in universal time.
  CHECK(out.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:"));
  CHECK(out.ends_with("END:VCALENDAR\r\n"));
  CHECK(has(out, "\r\nDTSTAMP:20270104T000000Z\r\n"));
  // 3.3.5, form 1: local time without a zone.
  CHECK(has(out, "\r\nDTSTART:20270503T070000\r\nDTEND:20270503T091500\r\n"));
  // 3.3.11: commas and semicolons escaped.
  CHECK(has(out, "\r\nSUMMARY:Etch\\; walls\\, floor\r\n"));
}

TEST_CASE("what is to be done has a due day, a deadline an alarm") {
  Entry order = entry(EntryKind::to_do);
  order.start.clear();
  order.end = "2027-04-26";
  Entry window = entry(EntryKind::deadline);
  window.end.clear();
  window.minutes_before = 90;
  const std::string out = render::icalendar(page_of({order, window}));
  CHECK(has(out, "BEGIN:VTODO\r\n"));
  CHECK(has(out, "\r\nDUE;VALUE=DATE:20270426\r\n"));
  CHECK(has(out, "BEGIN:VALARM\r\nACTION:DISPLAY\r\nDESCRIPTION:"));
  const auto lines = read(out);
  if (!lines) return;
  CHECK(among(*lines, "VTODO DUE", "2027-04-26"));
  CHECK(among(*lines, "VEVENT DTSTART", "2027-05-03T07:00:00"));
  CHECK(among(*lines, "VALARM TRIGGER", "-5400"));
}

// RFC 5545, 3.8.7.4: a higher number is the newer calendar; 3.8.1.11: what each status may be.
TEST_CASE("a newer calendar says so, with what is done and what is cancelled") {
  Entry done = entry(EntryKind::work);
  done.uid = "done@example.invalid";
  done.state = EntryState::done;
  Entry held = entry(EntryKind::to_do);
  held.uid = "held@example.invalid";
  held.state = EntryState::done;
  Entry gone = entry(EntryKind::deadline);
  gone.uid = "gone@example.invalid";
  gone.end.clear();
  gone.state = EntryState::cancelled;
  Document page = page_of({entry(EntryKind::work), done, held, gone});
  CHECK_FALSE(has(render::icalendar(page), "SEQUENCE"));
  page.agenda.sequence = 30'030'000;
  const std::string out = render::icalendar(page);
  CHECK_FALSE(has(out, "METHOD"));
  CHECK_FALSE(has(out, "VALARM"));
  std::size_t numbered = 0;
  for (std::size_t at = 0; (at = out.find("\r\nSEQUENCE:30030000\r\n", at)) != std::string::npos;
       ++at)
    ++numbered;
  CHECK(numbered == 4);
  const auto lines = read(out);
  if (!lines) return;
  CHECK(among(*lines, "VEVENT STATUS", "CONFIRMED"));
  CHECK(among(*lines, "VTODO STATUS", "COMPLETED"));
  CHECK(among(*lines, "VEVENT STATUS", "CANCELLED"));
}

TEST_CASE("lines end with CR LF and hold 75 octets at most, characters whole") {
  Entry long_one = entry(EntryKind::work);
  for (int i = 0; i < 60; ++i) long_one.description += "Tiefe Stelle über 2 m, 深い; ";
  const std::string out = render::icalendar(page_of({long_one}));
  std::size_t start = 0;
  while (start < out.size()) {
    const std::size_t end = out.find("\r\n", start);
    REQUIRE(end != std::string::npos);
    CHECK(end - start <= 75);
    const std::string line = out.substr(start, end - start);
    CHECK(line == render::visible(line));
    CHECK(line.find('\n') == std::string::npos);
    start = end + 2;
  }
  const auto lines = read(out);
  if (lines) CHECK(among(*lines, "VEVENT DESCRIPTION", long_one.description));
}

TEST_CASE("hostile names come back whole from a calendar") {
  std::vector<Entry> entries;
  for (const std::string& name : sample::hostile()) {
    Entry one = entry(EntryKind::work);
    one.uid = std::to_string(entries.size()) + "@example.invalid";
    one.summary = name;
    one.location = name;
    entries.push_back(one);
  }
  const auto lines = read(render::icalendar(page_of(entries)));
  if (!lines) return;
  for (const std::string& name : sample::hostile()) {
    // That library takes an escaped backslash before an n for a line end (RFC 5545, 3.3.11, says
    // otherwise); the next test looks at our side of it.
    if (has(name, "\\n")) continue;
    INFO(name);
    CHECK(among(*lines, "VEVENT SUMMARY", render::visible(name)));
    CHECK(among(*lines, "VEVENT LOCATION", render::visible(name)));
  }
}

TEST_CASE("backslashes are doubled, line ends become an n behind one") {
  Entry one = entry(EntryKind::work);
  one.summary = "back\\n \\\\ and\nnext";
  CHECK(has(render::icalendar(page_of({one})), "SUMMARY:back\\\\n \\\\\\\\ and\\nnext\r\n"));
}

TEST_CASE("a page without an agenda, or with times that are none, is our mistake") {
  CHECK_THROWS_AS(render::icalendar(Document{}), std::logic_error);
  Entry odd = entry(EntryKind::work);
  odd.start = "soon";
  CHECK_THROWS_AS(render::icalendar(page_of({odd})), std::logic_error);
}
