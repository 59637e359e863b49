// Wages by hand: hours times wage, rounded once a line, and the premium on dearer time.
#include "basinwright/quote/labour.hpp"

#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using quote::Labour;
using sequence::Booking;
using sequence::Programme;
using sequence::Work;

namespace {

dates::Date day(const char* text) {
  return dates::parse_date(text).value();
}

Labour wages(std::int64_t hour) {
  Labour labour;
  labour.hour = money::Money::of_minor(hour);
  labour.weekday.fill({money::whole});
  return labour;
}

// A stretch of a day between two quarters.
Booking stretch(const char* on, int from, int to, int people) {
  Booking b{"coat-1", "", dates::Moment(day(on), from), dates::Moment(day(on), to), people, {}, {}};
  b.worked = {{day(on), to - from}};
  return b;
}

constexpr dates::Hours seven_to_four{7 * 4, 16 * 4};

std::vector<quote::LabourLine> lines(const Programme& programme,
                                     const Labour& labour,
                                     units::Duration set_up = {}) {
  return quote::labour({Work{"coat-1", "", units::hours(6), 2}},
                       programme,
                       set_up,
                       labour,
                       seven_to_four,
                       money::Rounding::half_away);
}

}  // namespace

// Monday, 05:30 to 08:30, two people: three person-hours before seven. 3 h x 40.00 x 50 % = 60.00.
TEST_CASE("work before the hours of the crew is paid at overtime") {
  Programme programme;
  programme.bookings = {stretch("2027-06-07", 22, 34, 2)};
  Labour labour = wages(4000);
  CHECK(lines(programme, labour).size() == 1);
  labour.outside_hours = {money::whole * 3 / 2};
  const auto paid = lines(programme, labour);
  REQUIRE(paid.size() == 2);
  CHECK(paid[0].total.minor() == 24000);
  CHECK(paid[1].total.minor() == 6000);
}

// Saturday at 140 %, three hours before seven at 150 %, three after it: 60.00 + 3 h x 40.00 x 40 %.
TEST_CASE("of two premiums the dearer one counts") {
  Programme programme;
  programme.bookings = {stretch("2027-06-12", 22, 34, 2)};
  Labour labour = wages(4000);
  labour.outside_hours = {money::whole * 3 / 2};
  labour.weekday[5] = {money::whole * 7 / 5};
  CHECK(lines(programme, labour)[1].total.minor() == 6000 + 4800);
  labour.weekday[5] = {money::whole * 2};
  CHECK(lines(programme, labour)[1].total.minor() == 24000);
}

// Two people set up for half an hour on a Saturday: one person-hour at the premium of 40 %.
TEST_CASE("set-up on a dearer day is dearer too") {
  Programme programme;
  programme.bookings = {stretch("2027-06-12", 32, 44, 2)};
  programme.days_on_site = 1;
  Labour labour = wages(4000);
  labour.weekday[5] = {money::whole * 7 / 5};
  const auto paid = lines(programme, labour, units::minutes(30));
  REQUIRE(paid.size() == 3);
  CHECK(paid[1].total.minor() == 4000);
  CHECK(paid[2].total.minor() == 9600 + 1600);
}

// A day of 06:30 to 17:00: half an hour before, one after, for three people.
TEST_CASE("hours on both sides of those of the crew count") {
  Programme programme;
  programme.bookings = {stretch("2027-06-07", 26, 68, 3)};
  Labour labour = wages(1000);
  labour.outside_hours = {money::whole * 2};
  CHECK(lines(programme, labour).back().total.minor() == 4500);
}

// Half an hour at 0.45 is 0.225.
TEST_CASE("wages round as the book says") {
  const std::vector<Work> work{{"fill", "", units::minutes(30), 1}};
  const auto at = [&](money::Rounding rounding) {
    return quote::labour(work, {}, {}, wages(45), seven_to_four, rounding)[0].total.minor();
  };
  CHECK(at(money::Rounding::half_away) == 23);
  CHECK(at(money::Rounding::half_even) == 22);
}
