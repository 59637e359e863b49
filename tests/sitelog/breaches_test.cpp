// Rules broken. Limits: common practice as in practice guides (3 C above the dew point, recoat 20
// to 24 h, one batch of Part A). Dew points: 20 C and 80 % gives 16.4 C (Alduchov and Eskridge
// 1996).
#include "log.hpp"

using namespace log_of;

using Found = std::vector<Broken>;

TEST_CASE("painting inside the limits breaks nothing") {
  CHECK(broken({conditions("0T07:45", 20, 21, 60),
                started("0T08:00", "coat-1"),
                conditions("0T09:00", 21, 21, 60),
                finished("0T10:00", "coat-1")})
            .empty());
}

TEST_CASE("painting under the dew margin is told with both figures") {
  // 20 C, 80 %: dew point 16.4 C; a shell at 18 C is 1.6 C above it.
  const auto found = breaches(
      {{conditions("0T07:45", 20, 18, 80), started("0T08:00", "coat-1", "2")}, false}, usual());
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == Broken::dew_margin);
  CHECK(found[0].entry == 1);
  CHECK(found[0].section == "2");
  CHECK(found[0].measured == Approx(1.56).margin(0.03));
  CHECK(found[0].limit == 3.0);
}

TEST_CASE("a reading while nobody paints breaks nothing, one while painting does") {
  CHECK(broken({conditions("0T05:00", 5, 4, 95)}).empty());
  CHECK(broken({conditions("0T07:45", 20, 21, 60),
                started("0T08:00", "coat-1"),
                conditions("0T09:00", 31, 21, 30)}) == Found{Broken::air});
  CHECK(broken({conditions("0T07:45", 20, 21, 60),
                started("0T08:00", "coat-1"),
                finished("0T09:00", "coat-1"),
                conditions("0T13:00", 33, 21, 60)})
            .empty());
}

TEST_CASE("painting begun with no conditions read in the four hours before") {
  CHECK(broken({started("0T08:00", "coat-1")}) == Found{Broken::no_reading});
  CHECK(broken({conditions("0T03:59", 20, 21, 60), started("0T08:00", "coat-1")}) ==
        Found{Broken::no_reading});
  CHECK(broken({conditions("0T04:00", 20, 21, 60), started("0T08:00", "coat-1")}).empty());
  // Read with the first stroke.
  CHECK(broken({started("0T08:00", "coat-1"), conditions("0T08:00", 20, 21, 60)}).empty());
  CHECK(broken({started("0T08:00", "coat-1"), conditions("0T08:00", 8, 21, 60)}) ==
        Found{Broken::air});
}

TEST_CASE("two batches of Part A and both kinds of Part B are told") {
  CHECK(broken({mix("0T08:00", "A7"), mix("0T08:30", "A7")}).empty());
  CHECK(broken({mix("0T08:00", "A7"), mix("0T08:30", "A8")}) == Found{Broken::part_a_batches});
  CHECK(broken({mix("0T08:00", "A7", "standard"), mix("0T08:30", "A7", "cool")}) ==
        Found{Broken::part_b_kinds});
  Entry delivery = entry(Event::delivery, "0T07:00", "");
  delivery.item = "part-a";
  delivery.batch = "A6";
  CHECK(broken({delivery, mix("0T08:00", "A7")}) == Found{Broken::part_a_batches});
}

TEST_CASE("a recoat window holds for starts and for ends, bounds included") {
  const auto two_coats = [](const std::string& start, const std::string& end) {
    return broken({conditions("0T08:00", 20, 21, 60),
                   started("0T08:00", "coat-1", "1"),
                   finished("0T10:00", "coat-1", "1"),
                   conditions("1T04:00", 20, 21, 60),
                   started(start, "coat-2", "1"),
                   finished(end, "coat-2", "1")});
  };
  CHECK(two_coats("1T08:00", "1T10:00").empty());
  CHECK(two_coats("1T04:00", "1T06:00").empty());
  CHECK(two_coats("1T08:01", "1T10:00") == Found{Broken::no_reading, Broken::recoat_late});
  CHECK(two_coats("1T07:59", "1T10:01") == Found{Broken::recoat_late});
  CHECK(two_coats("1T03:59", "1T06:30") == Found{Broken::no_reading, Broken::recoat_early});
}

TEST_CASE("an abraded section has no window to keep") {
  CHECK(broken({conditions("0T08:00", 20, 21, 60),
                started("0T08:00", "coat-1", "1"),
                finished("0T10:00", "coat-1", "1"),
                started("3T08:00", "rework", "1"),
                finished("3T10:00", "rework", "1"),
                conditions("4T08:00", 20, 21, 60),
                started("4T08:00", "coat-2", "1"),
                finished("4T10:00", "coat-2", "1")})
            .empty());
}

TEST_CASE("a first coat eight days after the etch comes too late") {
  const std::vector<Entry> etched{started("0T08:00", "etch-floor"),
                                  finished("0T10:00", "etch-floor"),
                                  conditions("7T10:30", 20, 21, 60),
                                  started("7T10:30", "coat-1")};
  CHECK(broken(etched) == Found{Broken::etch_expired});
  std::vector<Entry> cleaned = etched;
  cleaned.insert(cleaned.begin() + 2,
                 {started("5T08:00", "clean-again"), finished("5T10:00", "clean-again")});
  CHECK(broken(cleaned).empty());
}

TEST_CASE("a kit past its pot life and water outside the limits of the sewer are told") {
  Entry late = mix("0T08:00", "A7");
  late.emptied = at("0T09:01");
  CHECK(broken({late}) == Found{Broken::pot_life});
  Entry out = entry(Event::reading, "0T08:00", "");
  out.where = Where::outflow;
  out.read.ph = 5.9;
  out.read.chlorine = units::milligrams_per_litre(1);
  CHECK(broken({out}) == Found{Broken::outflow_ph, Broken::outflow_chlorine});
  out.read.ph = 6.0;
  out.read.chlorine.reset();
  CHECK(broken({out}).empty());
}

TEST_CASE("work that goes past a hold point is told once") {
  Rules rules = usual();
  rules.route = {{"abrade", {}, {"no-gloss"}},
                 {"etch-walls", {}, {}},
                 {"etch-floor", {}, {}},
                 {"fill", {"cured"}, {}}};
  CHECK(broken({started("0T08:00", "etch-walls"), started("0T09:00", "etch-floor")}, rules) ==
        Found{Broken::hold_open});
  CHECK(broken({released("0T07:00", "no-gloss"), started("0T08:00", "etch-walls")}, rules).empty());
  CHECK(broken({released("0T07:00", "no-gloss"), started("0T08:00", "fill")}, rules) ==
        Found{Broken::hold_open});
}

TEST_CASE("a surface abraded again is signed for again, where it was abraded") {
  Rules rules = usual();
  rules.route = {{"abrade", {}, {"no-gloss"}},
                 {"coat-1", {}, {}},
                 {"rework", {"makers-advice"}, {"no-gloss"}},
                 {"coat-2", {}, {}}};
  const auto second_coat = [&](std::vector<Entry> between, const std::string& section) {
    std::vector<Entry> entries{released("0T06:00", "no-gloss"),
                               conditions("0T08:00", 20, 21, 60),
                               started("0T08:00", "coat-1", section),
                               finished("0T10:00", "coat-1", section)};
    entries.insert(entries.end(), between.begin(), between.end());
    entries.push_back(conditions("1T06:00", 20, 21, 60));
    entries.push_back(started("1T06:00", "coat-2", section));
    return broken(entries, rules);
  };
  const Entry advice = released("0T11:00", "makers-advice");
  const Entry again = started("0T12:00", "rework", "1");
  const Entry done = finished("0T14:00", "rework", "1");
  const Entry gloss = released("0T14:00", "no-gloss");
  CHECK(second_coat({advice, again, done, gloss}, "1").empty());
  CHECK(second_coat({again, done, gloss}, "1") == Found{Broken::hold_open});
  CHECK(second_coat({advice, again, done}, "1") == Found{Broken::hold_open});
  CHECK(second_coat({advice, again, done}, "2").empty());
  CHECK(second_coat({}, "1").empty());
}
