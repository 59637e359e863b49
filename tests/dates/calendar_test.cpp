#include "basinwright/dates/calendar.hpp"

#include <algorithm>

#include "support/catch.hpp"

namespace dates = basinwright::dates;
using dates::Moment;

namespace {

dates::Date day(std::string_view text) {
  return dates::parse_date(text).value();
}
Moment at(std::string_view text) {
  return dates::parse_moment(text).value();
}

}  // namespace

TEST_CASE("a day without a clock change has 96 quarters") {
  const dates::Timeline timeline(day("2027-05-03"), 2, {});
  CHECK(timeline.size() == 2 * 96);
  CHECK(timeline.moment(96) == at("2027-05-04"));
  CHECK(timeline.day(95) == 0);
  CHECK(timeline.day(96) == 1);
  CHECK(timeline.slot(at("2027-05-03T08:15")) == 33);
}

// Facts of civil time (EU Directive 2000/84/EC): clocks jump at 02:00 to 03:00 on the last Sunday
// of March and from 03:00 back to 02:00 on the last Sunday of October.
TEST_CASE("the spring day has 23 hours and 08 to 08 over it is 23 elapsed hours") {
  const dates::ClockChange spring{at("2027-03-28T02:00"), 60};
  const dates::Timeline timeline(day("2027-03-27"), 3, std::span(&spring, 1));
  CHECK(timeline.size() == (24 + 23 + 24) * 4);
  const auto before = timeline.slot(at("2027-03-27T08:00"));
  const auto after = timeline.slot(at("2027-03-28T08:00"));
  CHECK(after - before == 23 * 4);
  CHECK(timeline.slot(at("2027-03-28T02:30")) == timeline.slot(at("2027-03-28T03:00")));
}

TEST_CASE("the autumn day has 25 hours and 08 to 08 over it is 25 elapsed hours") {
  const dates::ClockChange autumn{at("2027-10-31T03:00"), -60};
  const dates::Timeline timeline(day("2027-10-30"), 3, std::span(&autumn, 1));
  CHECK(timeline.size() == (24 + 25 + 24) * 4);
  CHECK(timeline.slot(at("2027-10-31T08:00")) - timeline.slot(at("2027-10-30T08:00")) == 25 * 4);
  CHECK(timeline.slot(at("2027-10-31T08:00")) - timeline.slot(at("2027-10-30T09:00")) == 24 * 4);
  CHECK(timeline.slot(at("2027-10-31T08:00")) - timeline.slot(at("2027-10-30T09:30")) == 94);
}

TEST_CASE("work slots are the crews hours on its days, without the clean-up") {
  dates::WorkCalendar calendar;
  calendar.closed.push_back(day("2027-05-04"));
  const dates::Timeline timeline(day("2027-05-03"), 7, {});
  const auto open = dates::work_slots(timeline, calendar, 2);
  // Monday, Wednesday, Thursday and Friday, 07:00 to 15:30; Tuesday closed, the weekend off.
  CHECK(std::ranges::count(open, 1) == 4 * 34);
  CHECK(open[27] == 0);
  CHECK(open[28] == 1);
  CHECK(open[61] == 1);
  CHECK(open[62] == 0);
  CHECK(open[96 + 40] == 0);
}

TEST_CASE("painting waits until the crew is ready, from its start or from first light") {
  dates::WorkCalendar calendar;
  const dates::Timeline timeline(day("2027-05-03"), 1, {});
  CHECK(std::ranges::count(dates::painting_slots(timeline, calendar, 4), 1) == 12);
  CHECK(std::ranges::count(dates::painting_slots(timeline, calendar, 6), 1) == 10);
  calendar.painting_by_month[4] = dates::Hours{6 * 4, 9 * 4};
  CHECK(std::ranges::count(dates::painting_slots(timeline, calendar, 6), 1) == 6);
}
