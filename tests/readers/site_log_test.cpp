// The site log as a file: places, torn lines, entries that cannot be.
#include "basinwright/readers/site_log.hpp"

#include "reading.hpp"

using namespace reading;
using basinwright::sitelog::Event;
using basinwright::sitelog::Log;

namespace {

std::optional<Log> log(const std::string& text, Problems& problems) {
  return readers::read_site_log({"site.log", text}, problems);
}

const std::string start = R"({"at": "2027-05-31T07:00", "event": "started", "task": "abrade"})";
const std::string end = R"({"at": "2027-05-31T12:00", "event": "finished", "task": "abrade"})";

}  // namespace

TEST_CASE("a log is read line by line, empty lines and both ends of line allowed") {
  Problems problems;
  const auto read = log(start + "\r\n\n" + end + "\n", problems);
  INFO(told(problems));
  REQUIRE(read);
  CHECK(problems.empty());
  REQUIRE(read->entries.size() == 2);
  CHECK(read->entries[1].line == 3);
  CHECK(read->entries[1].event == Event::finished);
  CHECK_FALSE(read->torn);
}

TEST_CASE("readings are read with their units") {
  Problems problems;
  const auto read =
      log(R"({"at": "2027-05-31T08:05", "event": "reading", "air": "64 F", "shell": 17,)"
          R"( "humidity": "70 %", "wet_film": "200 um", "ph": 7.2})"
          "\n",
          problems);
  INFO(told(problems));
  REQUIRE(read);
  const auto& r = read->entries[0].read;
  CHECK(r.air->in(units::celsius) == Approx(17.7778).margin(1e-3));  // (64 - 32) / 1.8
  CHECK(r.shell->in(units::celsius) == Approx(17));
  CHECK(r.humidity->share() == Approx(0.7));
  CHECK(r.wet_film->in(units::metres) == Approx(200e-6));
  CHECK(r.ph == 7.2);
}

TEST_CASE("problems of any line have the place of that line") {
  Problems problems;
  CHECK_FALSE(log(start + "\n{\"at\": \"2027-05-31T12:00\", \"event\": \"ended\"}\nnonsense\n" +
                      R"({"at": "noon", "event": "note", "text": "x", "weather": 3})" + "\n",
                  problems));
  Found found;
  for (const Diagnostic& d : problems.sorted())
    found.push_back(std::to_string(d.at.line) + " " + d.code);
  CHECK(found == Found{"2 not-a-choice", "3 syntax", "4 not-a-date", "4 unknown-key"});
}

TEST_CASE("each kind of entry asks for what it is worth nothing without") {
  for (const std::string event :
       {"started", "finished", "stopped", "reading", "delivery", "mix", "hold_released", "note"}) {
    Problems problems;
    INFO(event);
    CHECK_FALSE(log("{\"at\": \"2027-05-31T12:00\", \"event\": \"" + event + "\"}\n", problems));
    CHECK(codes(problems).front() == "missing-key");
  }
}

TEST_CASE("every way to cut off the last line is mended or whole") {
  const std::string text = start + "\n" + end + "\n";
  for (std::size_t cut = start.size() + 2; cut < text.size(); ++cut) {
    Problems problems;
    const std::string torn = text.substr(0, cut);
    const auto read = log(torn, problems);
    INFO(cut << "\n" << told(problems));
    REQUIRE(read);
    const bool whole = cut >= text.size() - 1;
    CHECK(read->entries.size() == (whole ? 2 : 1));
    CHECK(read->torn == !whole);
    CHECK(codes(problems) == (whole ? Found{} : Found{"torn-line"}));
    CHECK_FALSE(problems.has_errors());
    CHECK(readers::whole_bytes(torn) == (whole ? torn.size() : start.size() + 1));
  }
}

TEST_CASE("an entry that cannot be shows what it contradicts") {
  Problems problems;
  CHECK_FALSE(log(start + "\n" + start + "\n", problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems.all()[0].code == "impossible-entry");
  CHECK(problems.all()[0].at.line == 2);
  REQUIRE(problems.all()[0].also.size() == 1);
  CHECK(problems.all()[0].also[0].line == 1);
}

TEST_CASE("words that the job does not have are refused with the nearest one") {
  const readers::KnownWords known{{"abrade", "coat-1"}, {"deep", "shallow"}, {"no-gloss"}};
  Problems problems;
  CHECK_FALSE(readers::read_entry(
      {"entry",
       R"({"at": "2027-05-31T12:00", "event": "started", "task": "coat1", "section": "dep"})"},
      known,
      problems));
  CHECK(codes(problems) == Found{"not-a-choice", "not-a-choice"});
  CHECK(problems.all()[0].hint == "Did you mean \"coat-1\"?");
}

TEST_CASE("the line of an entry says what was given and reads back") {
  const std::string line = readers::entry_line({{"at", "2027-05-31T08:00"},
                                                {"event", "reading"},
                                                {"ph", "7.2"},
                                                {"text", "say \"no\"\t\\"}});
  CHECK(line == R"({"at": "2027-05-31T08:00", "event": "reading", "ph": 7.2,)"
                R"( "text": "say \"no\"\u0009\\"})");
  Problems problems;
  const auto read = log(line + "\n", problems);
  REQUIRE(read);
  CHECK(read->entries[0].text == "say \"no\"\t\\");
  CHECK(readers::has_time(line));
  CHECK_FALSE(readers::has_time("{\"event\": \"note\"}"));
  CHECK(readers::with_time("{\"event\": \"note\"}", read->entries[0].at) ==
        R"({"at": "2027-05-31T08:00", "event": "note"})");
}

TEST_CASE("an entry after now is refused, and one that contradicts the log") {
  Problems ignored;
  const auto until_noon = log(start + "\n" + end + "\n", ignored);
  REQUIRE(until_noon);
  const Log begun{{until_noon->entries[0]}, false};
  const auto& finish = until_noon->entries[1];
  const auto minute = [](const char* text) {
    return basinwright::dates::parse_minute(text).value();
  };
  Problems problems;
  CHECK(readers::fits_log(begun, finish, {minute("2027-05-31T12:00"), "site.log", end}, problems));
  CHECK(problems.empty());
  CHECK_FALSE(
      readers::fits_log(begun, finish, {minute("2027-05-31T11:59"), "site.log", end}, problems));
  CHECK(codes(problems) == Found{"impossible-entry"});
  Problems again;
  CHECK_FALSE(
      readers::fits_log(*until_noon, finish, {minute("2027-05-31T13:00"), "site.log", end}, again));
  REQUIRE(codes(again) == Found{"impossible-entry"});
}
