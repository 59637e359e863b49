#include "basinwright/render/json.hpp"

#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "outside.hpp"
#include "sample.hpp"

using namespace sample;
using basinwright::render::json;
using Tree = nlohmann::ordered_json;

namespace {

Document one_section(std::string key, std::vector<Block> blocks) {
  Document document;
  document.sections.push_back({std::move(key), "", std::move(blocks), true});
  return document;
}

Block fact(std::string key, Value value) {
  return Facts{{{std::move(key), "", {"", std::move(value), Role::plain}}}};
}

}  // namespace

// Outside reader: python3's json, which keeps the order of members. The tree is written out by hand
// from the rules in document.hpp.
TEST_CASE("the page becomes the tree its keys describe") {
  const auto read = outside::read_back("json", json(page()));
  if (!read) return;
  CHECK(*read ==
        R"({"takeoff":{"painted_area_m2":92.04,"cove":{"length_m":31.4},"rim_to_water_m":0.1,)"
        R"("hidden":"never shown","note":"as measured"},"purchases":[)"
        R"({"item":"Hydrochloric acid, thirty-three per cent","need_l":24.6,)"
        R"("supplier":"Trade counter, to be ordered by Tuesday 4 March","total":"61.40"},)"
        R"({"item":"Two-part epoxy finish, mid blue","need_l":31.0,"supplier":"Coating supplier",)"
        R"("total":"1284.00"},{"item":"Bicarbonate of soda","need_l":100.25,"supplier":"Any",)"
        R"("total":"-3.00"}],"unseen":{"answer":42}})"
        "\n");
}

TEST_CASE("JSON is indented by two spaces and ends its last line") {
  CHECK(json(Document{}) == "{}\n");
  CHECK(json(one_section("a.b", {fact("c", nullptr)})) ==
        "{\n  \"a\": {\n    \"b\": {\n      \"c\": null\n    }\n  }\n}\n");
}

TEST_CASE("a table without rows is an empty list and one without keys stays out") {
  Table empty{"lines", "", {{"what", "What"}}, {}, true};
  Table people{"", "", {{"", "What"}}, {{{words("x")}}}, true};
  Table at_section{"", "", {{"what", "What"}}, {{{words("x")}}}, true};
  CHECK(Tree::parse(json(one_section("price", {empty, people}))) ==
        Tree::parse(R"({"price":{"lines":[]}})"));
  CHECK(Tree::parse(json(one_section("waste", {at_section}))) ==
        Tree::parse(R"({"waste":[{"what":"x"}]})"));
  CHECK(json(one_section("", {at_section})) == "{}\n");
}

TEST_CASE("objects at one path merge in the order given") {
  const Document document = one_section(
      "quantities", {fact("etch", Object{{"acid_l", 2.5}}), fact("etch.water_l", 25.0)});
  CHECK(Tree::parse(json(document)).dump() ==
        R"({"quantities":{"etch":{"acid_l":2.5,"water_l":25.0}}})");
}

TEST_CASE("clashes and empty parts of a path are our fault") {
  CHECK_THROWS_AS(json(one_section("a", {fact("b", 1), fact("b", 1)})), std::logic_error);
  CHECK_THROWS_AS(json(one_section("a", {fact("b", nullptr), fact("b.c", 1)})), std::logic_error);
  CHECK_THROWS_AS(json(one_section("a", {fact("b.c", 1), fact("b", nullptr)})), std::logic_error);
  CHECK_THROWS_AS(json(one_section("a", {fact("b", Array{}), fact("b", Array{})})),
                  std::logic_error);
  CHECK_THROWS_AS(json(one_section("a", {fact("b..c", 1)})), std::logic_error);
  CHECK_THROWS_AS(json(one_section("", {fact(".c", 1)})), std::logic_error);
  CHECK_THROWS_AS(json(one_section("a", {fact("b", Object{{"x", 1}, {"x", 2}})})),
                  std::logic_error);
  const Table twice{"t", "", {{"k", ""}, {"k", ""}}, {{{words("x"), words("y")}}}, true};
  CHECK_THROWS_AS(json(one_section("a", {twice})), std::logic_error);
  const Table short_row{"t", "", {{"k", ""}, {"l", ""}}, {{{words("x")}}}, true};
  CHECK_THROWS_AS(json(one_section("a", {short_row})), std::logic_error);
}

// IEEE 754 binary64 bounds; nlohmann's parser reads the digits back.
TEST_CASE("numbers come back the same and only finite ones go out") {
  const double numbers[] = {0.1,
                            1.0 / 3.0,
                            100.0,
                            1e22,
                            5e-324,
                            std::numeric_limits<double>::max(),
                            -2.2250738585072014e-308,
                            123456789.012345678};
  for (const double number : numbers) {
    const Tree tree = Tree::parse(json(one_section("", {fact("n", number)})));
    CHECK(tree["n"].get<double>() == number);
  }
  const std::int64_t least = std::numeric_limits<std::int64_t>::min();
  CHECK(Tree::parse(json(one_section("", {fact("n", least)})))["n"].get<std::int64_t>() == least);
  for (const double number : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
    CHECK_THROWS_AS(json(one_section("", {fact("n", number)})), std::logic_error);
  }
}

TEST_CASE("JSON strings and keys that are not UTF-8 are repaired") {
  const Tree tree = Tree::parse(json(one_section("", {fact("k", "a\xFFz"), fact("\xFF", 1)})));
  CHECK(tree["k"] == "a\uFFFDz");
  CHECK(tree["\uFFFD"] == 1);
}
