// Each getter of a view: what it gives, and what it says when it gives nothing. Conversions by
// NIST Handbook 44 App. C (inch, foot, US gallon, pound exact); temperatures by definition.
#include <array>
#include <stdexcept>

#include "basinwright/units/unit.hpp"
#include "reading.hpp"

using namespace reading;
using readers::Field;
using readers::Type;

namespace {

constexpr Field row(std::string_view key, Type type, double low, double high) {
  return {.key = key, .type = type, .doc = "x", .low = low, .high = high, .fallback = "x"};
}

constexpr std::array<Field, 3> inner{
    row("a", Type::text, 0, 1), row("b/c", Type::text, 0, 1), row("d~e", Type::number, 0, 1)};
constexpr std::array view_table{
    row("name", Type::text, 0, 1),
    row("count", Type::whole, 1, 10),
    row("share", Type::fraction, 0, 1),
    row("level", Type::number, -5, 5),
    row("yes", Type::boolean, 0, 1),
    Field{.key = "colour", .type = Type::choice, .doc = "x", .choices = "white blue sand"},
    row("day", Type::date, 0, 1),
    row("when", Type::moment, 0, 1),
    row("hours", Type::hours, 0, 1),
    row("price", Type::money, 0, 1000),
    row("year", Type::year, 1900, 2200),
    Field{
        .key = "width", .type = Type::length, .doc = "x", .low = 0, .high = 100, .above_low = true},
    row("depth", Type::length, 0, 100),
    row("warmth", Type::temperature, 263.15, 313.15),
    row("gap", Type::temperature_difference, 0, 20),
    row("rate", Type::application_rate, 0, 0.1),
    row("flow", Type::flow, 0, 1),
    Field{.key = "inner", .type = Type::object, .doc = "x", .required = true, .fields = inner}};

Object read_view(const std::string& members) {
  return Object("{" + members + "}", view_table);
}

}  // namespace

TEST_CASE("view, a key that is absent gives nothing and says nothing") {
  Object o = read_view("");
  CHECK_FALSE(o.view.text("name"));
  CHECK_FALSE(o.view.whole("count"));
  CHECK_FALSE(o.view.measure<units::Length>("width"));
  CHECK_FALSE(o.view.boolean("yes"));
  CHECK_FALSE(o.view.choice("colour"));
  CHECK_FALSE(o.view.date("day"));
  CHECK_FALSE(o.view.moment("when"));
  CHECK_FALSE(o.view.hours("hours"));
  CHECK_FALSE(o.view.money("price"));
  CHECK_FALSE(o.view.year("year"));
  CHECK_FALSE(o.view.object("inner"));
  CHECK_FALSE(o.view.has("name"));
  CHECK(o.found().empty());
}

TEST_CASE("view, a key that the table does not have is our fault") {
  Object o = read_view("\"nme\": 1");
  CHECK_THROWS_AS(o.view.text("nme"), std::logic_error);
  CHECK_THROWS_AS(o.view.number("other"), std::logic_error);
}

TEST_CASE("view, texts and booleans") {
  Object o = read_view(R"("name": "Bowl \u00e9", "yes": true)");
  CHECK(o.view.text("name") == "Bowl \xC3\xA9");
  CHECK(o.view.boolean("yes") == true);
  CHECK(o.found().empty());
  for (const std::string bad : {"1", "true", "null", "[]", "{}"}) {
    Object p = read_view("\"name\": " + bad);
    CHECK_FALSE(p.view.text("name"));
    CHECK(p.found() == Found{"wrong-type /name"});
  }
  for (const std::string bad : {"1", "\"true\"", "null", "[]"}) {
    Object p = read_view("\"yes\": " + bad);
    CHECK_FALSE(p.view.boolean("yes"));
    CHECK(p.found() == Found{"wrong-type /yes"});
  }
}

TEST_CASE("view, numbers and whole numbers") {
  Object o = read_view("\"level\": -2.5, \"count\": 1e1");
  CHECK(o.view.number("level") == -2.5);
  CHECK(o.view.whole("count") == 10);
  CHECK(o.found().empty());
  struct Bad {
    std::string key, value, problem;
  };
  for (const Bad& bad : {Bad{"level", "5.01", "out-of-range"},
                         Bad{"level", "-5.01", "out-of-range"},
                         Bad{"level", "\"1\"", "wrong-type"},
                         Bad{"level", "1e-400", "number-range"},
                         Bad{"level", "null", "wrong-type"},
                         Bad{"count", "0", "out-of-range"},
                         Bad{"count", "11", "out-of-range"},
                         Bad{"count", "2.5", "wrong-type"},
                         Bad{"count", "true", "wrong-type"}}) {
    Object p = read_view("\"" + bad.key + "\": " + bad.value);
    INFO(bad.key << " " << bad.value);
    if (bad.key == "level") CHECK_FALSE(p.view.number("level"));
    if (bad.key == "count") CHECK_FALSE(p.view.whole("count"));
    CHECK(p.found() == Found{bad.problem + " /" + bad.key});
  }
}

TEST_CASE("view, a limit is said in the unit that people say it in") {
  const auto said = [](const std::string& members, auto get) {
    Object o = read_view(members);
    static_cast<void>(get(o.view));
    REQUIRE(o.tree.problems.size() == 1);
    return o.tree.problems.all()[0].message;
  };
  using View = readers::View;
  const auto length = [](View& v) { return v.measure<units::Length>("width"); };
  const auto warmth = [](View& v) { return v.measure<units::Temperature>("warmth"); };
  const auto share = [](View& v) { return v.measure<units::Fraction>("share"); };
  CHECK(said("\"width\": \"101 m\"", length) == "\"width\" is at most 100 m");
  CHECK(said("\"width\": \"0 m\"", length) == "\"width\" must be more than 0");
  CHECK(said("\"warmth\": \"-11 C\"", warmth) == "\"warmth\" is at least -10 C");
  CHECK(said("\"warmth\": \"105 F\"", warmth) == "\"warmth\" is at most 40 C");
  CHECK(said("\"share\": \"101 %\"", share) == "\"share\" is at most 100 %");
  CHECK(said("\"share\": -0.1", share) == "\"share\" must not be negative");
  CHECK(said("\"rate\": \"101 L/m2\"", [](View& v) { return v.measure<units::Length>("rate"); }) ==
        "\"rate\" is at most 100 L/m2");
  CHECK(said("\"flow\": \"70000 L/min\"", [](View& v) { return v.measure<units::Flow>("flow"); }) ==
        "\"flow\" is at most 60000 L/min");
}

TEST_CASE("view, measures with their unit") {
  Object o =
      read_view(R"("width": "30 ft 6 in", "depth": "150 mm", "warmth": "64.4 F", "gap": "5.4 F",
                     "share": "12.5 %", "rate": "0.2 L/m2", "flow": "20 L/min")");
  CHECK(o.view.measure<units::Length>("width")->si() == Approx(30.5 * 0.3048).epsilon(1e-15));
  CHECK(o.view.measure<units::Length>("depth")->si() == Approx(0.15).epsilon(1e-15));
  CHECK(o.view.measure<units::Temperature>("warmth")->si() == Approx(291.15).epsilon(1e-14));
  CHECK(o.view.measure<units::TemperatureDifference>("gap")->si() == Approx(3.0).epsilon(1e-14));
  CHECK(o.view.measure<units::Fraction>("share")->share() == Approx(0.125).epsilon(1e-15));
  CHECK(o.view.measure<units::ApplicationRate>("rate")->si() == Approx(0.0002).epsilon(1e-14));
  CHECK(o.view.measure<units::Flow>("flow")->si() == Approx(0.02 / 60).epsilon(1e-14));
  CHECK(o.found().empty());
}

TEST_CASE("view, measures that are none") {
  struct Bad {
    std::string value, problem;
  };
  for (const Bad& bad : {Bad{"\"9.2\"", "wrong-unit"},
                         Bad{"\"9.2 kg\"", "wrong-unit"},
                         Bad{"\"9.2 mtr\"", "wrong-unit"},
                         Bad{"\"nine m\"", "not-a-measure"},
                         Bad{"\"\"", "not-a-measure"},
                         Bad{"\"9,2 m\"", "not-a-measure"},
                         Bad{"\"1e999 m\"", "not-a-measure"},
                         Bad{"\"NaN\"", "not-finite"},
                         Bad{"\"-nan m\"", "not-finite"},
                         Bad{"\"Infinity\"", "not-finite"},
                         Bad{"\"-4 m\"", "not-positive"},
                         Bad{"0", "not-positive"},
                         Bad{"\"5000 m\"", "out-of-range"},
                         Bad{"1e300", "out-of-range"},
                         Bad{"1e-400", "number-range"},
                         Bad{"true", "wrong-type"},
                         Bad{"null", "wrong-type"},
                         Bad{"[9]", "wrong-type"}}) {
    Object o = read_view("\"width\": " + bad.value);
    INFO(bad.value);
    CHECK_FALSE(o.view.measure<units::Length>("width"));
    CHECK(o.found() == Found{bad.problem + " /width"});
  }
  Object o = read_view("\"depth\": -0.1");
  CHECK_FALSE(o.view.measure<units::Length>("depth"));
  CHECK(o.found() == Found{"negative /depth"});
}

TEST_CASE("view, choices, with the nearest one") {
  Object o = read_view("\"colour\": \"blue\"");
  CHECK(o.view.choice("colour") == 1U);
  Object p = read_view("\"colour\": \"bleu\"");
  CHECK_FALSE(p.view.choice("colour"));
  CHECK(p.found() == Found{"not-a-choice /colour"});
  CHECK(p.tree.problems.all()[0].hint == "Did you mean \"blue\"?");
  CHECK(p.tree.problems.all()[0].message == "\"bleu\" is none of: white, blue, sand");
  Object q = read_view("\"colour\": \"anthracite\"");
  CHECK_FALSE(q.view.choice("colour"));
  CHECK(q.tree.problems.all()[0].hint.empty());
  Object r = read_view("\"colour\": 2");
  CHECK_FALSE(r.view.choice("colour"));
  CHECK(r.found() == Found{"wrong-type /colour"});
}

TEST_CASE("view, days, times and hours") {
  Object o =
      read_view(R"("day": "2028-02-29", "when": "2027-05-31T08:15", "hours": ["07:00", "24:00"])");
  CHECK(basinwright::dates::iso(*o.view.date("day")) == "2028-02-29");
  CHECK(basinwright::dates::iso(*o.view.moment("when")) == "2027-05-31T08:15");
  CHECK(*o.view.hours("hours") == std::pair(28, 96));
  CHECK(o.found().empty());
  for (const std::string bad : {"\"2027-02-29\"", "\"31.05.2027\"", "\"2027-5-31\"", "\"\""}) {
    Object p = read_view("\"day\": " + bad);
    CHECK_FALSE(p.view.date("day"));
    CHECK(p.found() == Found{"not-a-date /day"});
  }
  for (const std::string bad : {"\"2027-05-31T08:10\"", "\"08:15\"", "\"2027-05-31 08:15\""}) {
    Object p = read_view("\"when\": " + bad);
    CHECK_FALSE(p.view.moment("when"));
    CHECK(p.found() == Found{"not-a-date /when"});
  }
  for (const std::string bad : {"[\"16:00\", \"07:00\"]",
                                "[\"07:00\", \"07:00\"]",
                                "[\"07:00\"]",
                                "[7, 16]",
                                "[\"07:00\", \"16:10\"]",
                                "[]",
                                "[\"07:00\", \"12:00\", \"13:00\"]"}) {
    Object p = read_view("\"hours\": " + bad);
    INFO(bad);
    CHECK_FALSE(p.view.hours("hours"));
    CHECK(p.found() == Found{"not-hours /hours"});
  }
  Object q = read_view("\"hours\": \"07:00\", \"day\": 2027, \"when\": {}");
  CHECK_FALSE(q.view.hours("hours"));
  CHECK_FALSE(q.view.date("day"));
  CHECK_FALSE(q.view.moment("when"));
  CHECK(q.found() == Found{"wrong-type /hours", "wrong-type /day", "wrong-type /when"});
}

TEST_CASE("view, years") {
  for (const std::string good : {"2019", "\"2019\"", "\"2019-06-01\""}) {
    Object o = read_view("\"year\": " + good);
    CHECK(o.view.year("year") == 2019);
    CHECK(o.found().empty());
  }
  Object unknown = read_view("\"year\": \"unknown\"");
  CHECK_FALSE(unknown.view.year("year"));
  CHECK(unknown.found().empty());
  for (const std::string bad :
       {"19", "\"19\"", "\"long ago\"", "2019.5", "\"2019-13-01\"", "1e300"}) {
    Object o = read_view("\"year\": " + bad);
    INFO(bad);
    CHECK_FALSE(o.view.year("year"));
    CHECK(o.found() == Found{"not-a-date /year"});
  }
  Object wrong = read_view("\"year\": [2019]");
  CHECK_FALSE(wrong.view.year("year"));
  CHECK(wrong.found() == Found{"wrong-type /year"});
}

TEST_CASE("view, money is a plain decimal, kept as written") {
  for (const std::string good : {"12.50", "0", "1000"}) {
    Object o = read_view("\"price\": " + good);
    CHECK(o.view.money("price") == good);
    Object p = read_view("\"price\": \"" + good + "\"");
    CHECK(p.view.money("price") == good);
    CHECK(p.found().empty());
  }
  struct Bad {
    std::string value, problem;
  };
  for (const Bad& bad : {Bad{"\"12,50\"", "not-an-amount"},
                         Bad{"\"EUR 12\"", "not-an-amount"},
                         Bad{"\"\"", "not-an-amount"},
                         Bad{"1e2", "not-an-amount"},
                         Bad{"\"+5\"", "not-an-amount"},
                         Bad{"\"-5\"", "negative"},
                         Bad{"1000.01", "out-of-range"},
                         Bad{"true", "wrong-type"}}) {
    Object o = read_view("\"price\": " + bad.value);
    INFO(bad.value);
    CHECK_FALSE(o.view.money("price"));
    CHECK(o.found() == Found{bad.problem + " /price"});
  }
}

TEST_CASE("view, shares of money go down to millionths") {
  Object o = read_view("\"share\": \"8.25 %\"");
  CHECK(o.view.percentage("share")->millionths == 82'500);
  Object p = read_view("\"share\": 0.0825");
  CHECK(p.view.percentage("share")->millionths == 82'500);
  Object tax = read_view("\"share\": \"8.875 %\"");
  CHECK(tax.view.percentage("share")->millionths == 88'750);
  Object q = read_view("\"share\": \"8.87512 %\"");
  CHECK_FALSE(q.view.percentage("share"));
  CHECK(q.found() == Found{"out-of-range /share"});
}

TEST_CASE("view, a key that nobody knows, and one that is missing") {
  Object o = read_view(R"("nmae": 1, "$schema": "x", "zzzzzz": 2)");
  o.view.finish();
  CHECK(o.found() == Found{"unknown-key /nmae", "unknown-key /zzzzzz", "missing-key /inner"});
  const auto& all = o.tree.problems.all();
  CHECK(all[0].hint == "Did you mean \"name\"?");
  CHECK(all[0].at.column == 2);
  CHECK(all[0].at.width == 6);
  CHECK(all[1].hint.starts_with("Known here: name, count, share"));
  CHECK(all[2].hint == "x.");
}

TEST_CASE("view, a pointer escapes what RFC 6901 escapes") {
  Object o = read_view(R"("inner": {"b/c": 1, "d~e": 9, "x/~": 0})");
  auto view = o.view.object("inner");
  REQUIRE(view);
  CHECK_FALSE(view->text("b/c"));
  CHECK_FALSE(view->number("d~e"));
  view->finish();
  CHECK(o.found() ==
        Found{"wrong-type /inner/b~1c", "out-of-range /inner/d~0e", "unknown-key /inner/x~1~0"});
  const auto& bytes = o.tree.source.bytes();
  for (const auto& d : o.tree.problems.all()) {
    if (d.code == "unknown-key") continue;
    CHECK(readers::place_of({"f", bytes}, d.pointer).column == d.at.column);
  }
}

TEST_CASE("view, a given value carries its place") {
  Object o = read_view(R"("width": 3, "level": 2, "count": 4)");
  basinwright::sources::Sourced<units::Length> width;
  basinwright::sources::Sourced<double> level;
  basinwright::sources::Sourced<double> count;
  o.view.set("width", width);
  o.view.set_number("level", level);
  o.view.set_whole("count", count);
  CHECK(width.value.si() == 3.0);
  CHECK(width.source.kind == basinwright::sources::Kind::given);
  CHECK(width.source.place == "/width");
  CHECK(level.source.place == "/level");
  CHECK(count.value == 4.0);
  CHECK(count.source.place == "/count");
  const auto before = width;
  Object p = read_view("");
  p.view.set("width", width);
  CHECK(width.value == before.value);
}
