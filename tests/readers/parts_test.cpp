// Lists, tuples, variants, maps and months of a view, with the pointers of what is wrong in them.
#include <array>

#include "reading.hpp"

using namespace reading;
using readers::Alternative;
using readers::Field;
using readers::Type;

namespace {

constexpr Field needed(std::string_view key, Type type) {
  return {.key = key, .type = type, .doc = "x", .low = 0, .high = 10, .required = true};
}
constexpr Field free(std::string_view key, Type type) {
  return {.key = key, .type = type, .doc = "x", .low = 0, .high = 10, .fallback = "x"};
}

constexpr std::array<Field, 3> point{
    needed("x", Type::length), needed("y", Type::length), free("bulge", Type::number)};
constexpr std::array<Field, 1> round_kind{needed("radius", Type::length)};
constexpr std::array<Field, 1> square_kind{needed("side", Type::length)};
constexpr std::array<Field, 1> common{free("turned", Type::number)};
constexpr std::array<Alternative, 2> kinds{Alternative{"round", round_kind},
                                           Alternative{"square", square_kind}};
constexpr std::array<Field, 2> item{needed("name", Type::text), free("size", Type::length)};
constexpr std::array parts_table{
    Field{.key = "point", .type = Type::tuple, .doc = "x", .fields = point},
    Field{.key = "points", .type = Type::list, .doc = "x", .element = Type::tuple, .fields = point},
    Field{
        .key = "shape", .type = Type::variant, .doc = "x", .fields = common, .alternatives = kinds},
    Field{.key = "shapes",
          .type = Type::list,
          .doc = "x",
          .element = Type::variant,
          .alternatives = kinds},
    Field{.key = "items", .type = Type::list, .doc = "x", .element = Type::object, .fields = item},
    Field{.key = "one", .type = Type::one_or_many, .doc = "x", .fields = item},
    Field{.key = "named", .type = Type::map, .doc = "x", .fields = item},
    Field{.key = "lists", .type = Type::map, .doc = "x", .fields = item, .many = true},
    Field{.key = "texts", .type = Type::list, .doc = "x", .element = Type::text},
    Field{.key = "days", .type = Type::list, .doc = "x", .element = Type::date},
    Field{.key = "words",
          .type = Type::list,
          .doc = "x",
          .choices = "red blue",
          .element = Type::choice},
    Field{.key = "lengths",
          .type = Type::list,
          .doc = "x",
          .low = 0,
          .high = 10,
          .above_low = true,
          .element = Type::length},
    Field{.key = "warmth",
          .type = Type::by_month,
          .doc = "x",
          .low = 273.15,
          .high = 313.15,
          .element = Type::temperature}};

Object read(const std::string& members) {
  return Object("{" + members + "}", parts_table);
}

double si_metres(readers::View& view, std::string_view key) {
  const auto value = view.measure<units::Length>(key);
  return value ? value->si() : -1.0;
}

}  // namespace

TEST_CASE("parts, a tuple has its fields in order, the last of them at will") {
  Object o = read(R"("point": [1, "2 m", 0.5])");
  auto view = o.view.tuple("point");
  REQUIRE(view);
  CHECK(si_metres(*view, "x") == 1.0);
  CHECK(si_metres(*view, "y") == 2.0);
  CHECK(view->number("bulge") == 0.5);
  Object p = read(R"("point": [1, 2])");
  CHECK_FALSE(p.view.tuple("point")->number("bulge"));
  CHECK(p.found().empty());
  for (const std::string bad : {"[]", "[1]", "[1, 2, 3, 4]", "{}", "1", "\"1, 2\"", "null"}) {
    Object q = read("\"point\": " + bad);
    INFO(bad);
    CHECK_FALSE(q.view.tuple("point"));
    CHECK(q.found() == Found{"wrong-type /point"});
    CHECK(q.tree.problems.all()[0].message == "A list [x, y, bulge] belongs here");
  }
}

TEST_CASE("parts, what is wrong in a tuple is pointed to by its number") {
  Object o = read(R"("points": [[1, 2], [11, "4 kg", "x"], 7, [1, 2, 3, 4], [5, 6]])");
  auto views = o.view.tuples("points");
  REQUIRE(views.size() == 3);
  CHECK(o.found() == Found{"wrong-type /points/2", "wrong-type /points/3"});
  CHECK(si_metres(views[1], "x") == -1.0);
  CHECK(si_metres(views[1], "y") == -1.0);
  CHECK_FALSE(views[1].number("bulge"));
  CHECK(o.found() ==
        Found{"out-of-range /points/1/0", "wrong-unit /points/1/1", "wrong-type /points/1/2"});
  CHECK(si_metres(views[2], "y") == 6.0);
}

TEST_CASE("parts, a variant reads the keys of its kind and the common ones") {
  Object o = read(R"("shape": {"kind": "square", "side": 3, "turned": 1})");
  auto shape = o.view.variant("shape");
  REQUIRE(shape);
  CHECK(shape->first == "square");
  CHECK(si_metres(shape->second, "side") == 3.0);
  CHECK(shape->second.number("turned") == 1.0);
  shape->second.finish();
  CHECK(o.found().empty());
  Object p = read(R"("shape": {"kind": "square", "radius": 3})");
  p.view.variant("shape")->second.finish();
  CHECK(p.found() == Found{"unknown-key /shape/radius", "missing-key /shape/side"});
}

TEST_CASE("parts, a variant without a kind, or with one that nobody knows") {
  struct Bad {
    std::string value, problem;
  };
  for (const Bad& bad : {Bad{"{}", "missing-key /shape/kind"},
                         Bad{"{\"kind\": 1}", "wrong-type /shape/kind"},
                         Bad{"{\"kind\": \"sqare\"}", "not-a-choice /shape/kind"},
                         Bad{"[]", "wrong-type /shape"},
                         Bad{"\"square\"", "wrong-type /shape"}}) {
    Object o = read("\"shape\": " + bad.value);
    INFO(bad.value);
    CHECK_FALSE(o.view.variant("shape"));
    CHECK(o.found() == Found{bad.problem});
  }
  Object o = read(R"("shape": {"kind": "sqare"})");
  static_cast<void>(o.view.variant("shape"));
  CHECK(o.tree.problems.all()[0].hint == "Did you mean \"square\"?");
  Object p = read(R"("shapes": [{"kind": "round", "radius": 2}, {}, 3])");
  CHECK(p.view.variants("shapes").size() == 1);
  CHECK(p.found() == Found{"missing-key /shapes/1/kind", "wrong-type /shapes/2"});
}

TEST_CASE("parts, lists of objects, and one instead of many") {
  Object o = read(R"("items": [{"name": "a"}, 5, {"size": "x"}])");
  auto items = o.view.objects("items");
  REQUIRE(items.size() == 2);
  CHECK(items[0].text("name") == "a");
  CHECK(si_metres(items[1], "size") == -1.0);
  items[1].finish();
  CHECK(o.found() ==
        Found{"wrong-type /items/1", "not-a-measure /items/2/size", "missing-key /items/2/name"});
  Object p = read(R"("one": {"name": "a"})");
  CHECK(p.view.objects("one").at(0).text("name") == "a");
  CHECK(p.view.objects("one").at(0).pointer() == "/one");
  Object q = read(R"("one": [{"name": "a"}, {"name": "b"}])");
  CHECK(q.view.objects("one").at(1).pointer() == "/one/1");
  Object r = read(R"("one": "a", "items": {"name": "a"})");
  CHECK(r.view.objects("one").empty());
  CHECK(r.view.objects("items").empty());
  CHECK(r.found() == Found{"wrong-type /one", "wrong-type /items"});
}

TEST_CASE("parts, maps with free names") {
  Object o = read(R"("named": {"a/b": {"name": "x"}, "c": 1})");
  auto named = o.view.members("named");
  REQUIRE(named.size() == 1);
  CHECK(named[0].first == "a/b");
  CHECK(named[0].second.pointer() == "/named/a~1b");
  CHECK(o.found() == Found{"wrong-type /named/c"});
  Object p = read(R"("lists": {"a": [{"name": "x"}, {"name": "y"}], "b": 1, "c": [2]})");
  auto lists = p.view.member_lists("lists");
  REQUIRE(lists.size() == 3);
  CHECK(lists[0].second.size() == 2);
  CHECK(lists[0].second[1].pointer() == "/lists/a/1");
  CHECK(p.found() == Found{"wrong-type /lists/b", "wrong-type /lists/c/0"});
  Object q = read(R"("named": [], "lists": 1)");
  CHECK(q.view.members("named").empty());
  CHECK(q.view.member_lists("lists").empty());
  CHECK(q.found() == Found{"wrong-type /named", "wrong-type /lists"});
}

TEST_CASE("parts, lists of texts, days, choices and lengths") {
  Object o = read(R"("texts": ["a", "b"], "days": ["2027-05-03"], "words": ["blue", "red"],
                     "lengths": [1, "2 m"])");
  CHECK(o.view.texts("texts") == Found{"a", "b"});
  CHECK(o.view.dates("days").size() == 1);
  CHECK(o.view.choices("words") == std::vector<std::size_t>{1, 0});
  CHECK(o.view.measures<units::Length>("lengths").size() == 2);
  CHECK(o.found().empty());
  Object p = read(R"("texts": ["a", 1], "days": ["2027-05-03", "2027-05-32", 3],
                     "words": ["blue", "rad", 0], "lengths": [1, 0, 11, "x m", true])");
  CHECK(p.view.texts("texts") == Found{"a"});
  CHECK(p.found() == Found{"wrong-type /texts/1"});
  CHECK(p.view.dates("days").size() == 1);
  CHECK(p.found() == Found{"wrong-type /days/2", "not-a-date /days/1"});
  CHECK(p.view.choices("words") == std::vector<std::size_t>{1});
  CHECK(p.found() == Found{"wrong-type /words/2", "not-a-choice /words/1"});
  CHECK(p.view.measures<units::Length>("lengths").size() == 1);
  CHECK(p.found() == Found{"not-positive /lengths/1",
                           "out-of-range /lengths/2",
                           "not-a-measure /lengths/3",
                           "wrong-type /lengths/4"});
}

TEST_CASE("parts, months by number or by name") {
  const std::vector<std::pair<std::string, unsigned>> names{{"1", 1},
                                                            {"01", 1},
                                                            {"9", 9},
                                                            {"09", 9},
                                                            {"10", 10},
                                                            {"12", 12},
                                                            {"january", 1},
                                                            {"february", 2},
                                                            {"march", 3},
                                                            {"april", 4},
                                                            {"may", 5},
                                                            {"june", 6},
                                                            {"july", 7},
                                                            {"august", 8},
                                                            {"september", 9},
                                                            {"october", 10},
                                                            {"november", 11},
                                                            {"december", 12}};
  for (const auto& [name, number] : names) {
    Object o = read("\"warmth\": {\"" + name + "\": \"18 C\"}");
    auto months = o.view.months("warmth");
    REQUIRE(months.size() == 1);
    CHECK(months[0].number == number);
    const auto value = months[0].view.measure<units::Temperature>(months[0].key);
    CHECK(value->si() == Approx(291.15));
    CHECK(o.found().empty());
  }
  for (const std::string bad : {"0", "13", "00", "010", "May", "jan", "", "1.0", "-1"}) {
    Object o = read("\"warmth\": {\"" + bad + "\": \"18 C\"}");
    INFO(bad);
    CHECK(o.view.months("warmth").empty());
    CHECK(o.found() == Found{"unknown-key /warmth/" + bad});
  }
}

TEST_CASE("parts, the value of a month is pointed to, and a month given twice clashes") {
  Object o = read(R"("warmth": {"5": "50 C", "may": "18 C"})");
  auto months = o.view.months("warmth");
  CHECK(o.found() == Found{"facts-clash /warmth/may"});
  REQUIRE(o.tree.problems.all()[0].also.size() == 1);
  CHECK(o.tree.problems.all()[0].also[0].column == 13);
  CHECK_FALSE(months[0].view.measure<units::Temperature>(months[0].key));
  CHECK(o.found() == Found{"out-of-range /warmth/5"});
  CHECK(o.tree.problems.all()[1].message == "\"5\" is at most 40 C");
  Object p = read(R"("warmth": ["18 C"])");
  CHECK(p.view.months("warmth").empty());
  CHECK(p.found() == Found{"wrong-type /warmth"});
}
