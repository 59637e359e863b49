// What a file may hold at most. The limits are the project's own (assumed): far above any job.
#include "reading.hpp"

using namespace reading;

namespace {

std::string repeated(std::size_t n, const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < n; ++i) out += text;
  return out;
}

bool fine(const std::string& text) {
  const Tree tree(text);
  return tree.whole && tree.problems.empty();
}

std::string limit_code(const std::string& text) {
  const Tree tree(text);
  CHECK_FALSE(tree.whole);
  const Found found = codes(tree.problems);
  return found.size() == 1 ? found[0] : "not one problem";
}

}  // namespace

TEST_CASE("limits, depth") {
  CHECK(fine(repeated(64, "[") + repeated(64, "]")));
  CHECK(limit_code(repeated(65, "[") + repeated(65, "]")) == "too-deep");
  CHECK(fine(repeated(64, "{\"a\":") + "1" + repeated(64, "}")));
  CHECK(limit_code(repeated(65, "{\"a\":") + "1" + repeated(65, "}")) == "too-deep");
  CHECK(limit_code(repeated(1'000'000, "[")) == "too-deep");
  const Tree tree(repeated(65, "["));
  CHECK(tree.problems.all()[0].at.column == 65);
}

TEST_CASE("limits, the text of a number") {
  CHECK(fine("[" + repeated(64, "1") + "]"));
  CHECK(limit_code("[" + repeated(65, "1") + "]") == "too-large");
  CHECK(fine("0." + repeated(62, "1")));
  CHECK(limit_code("0." + repeated(63, "1")) == "too-large");
}

TEST_CASE("limits, a text and a key") {
  constexpr std::size_t most = 64U * 1024U;
  CHECK(fine("\"" + repeated(most, "a") + "\""));
  CHECK(limit_code("\"" + repeated(most + 1, "a") + "\"") == "too-large");
  // It is the text that counts, not how it is written.
  CHECK(fine("\"" + repeated(most, "\\u0061") + "\""));
  CHECK(limit_code("\"" + repeated(most / 2, "\xC3\xA9") + "a\"") == "too-large");
  CHECK(fine("{\"" + repeated(most, "a") + "\":1}"));
  CHECK(limit_code("{\"" + repeated(most + 1, "a") + "\":1}") == "too-large");
}

TEST_CASE("limits, values in all") {
  const auto is_whole = [](std::size_t most) {
    const readers::SourceText source("test.json", R"({"a": [1, 2, [3]], "b": {"c": null}})");
    Problems problems;
    Node root;
    const bool whole = readers::parse_json(source, root, problems, {.values = most});
    CHECK(whole == problems.empty());
    if (!whole) CHECK(problems.all()[0].code == "too-large");
    return whole;
  };
  // The list, its three, the one inside, the object and its one; the root is free.
  CHECK(is_whole(7));
  CHECK_FALSE(is_whole(6));
}

TEST_CASE("limits, entries of a list or an object") {
  CHECK(fine("[" + repeated(9'999, "1,") + "1]"));
  CHECK(limit_code("[" + repeated(10'000, "1,") + "1]") == "too-large");
  CHECK(limit_code("[" + repeated(10'000, "[],") + "[]]") == "too-large");
  std::string object = "{\"first\":0";
  for (int i = 1; i < 10'000; ++i) object += ",\"" + std::to_string(i) + "\":0";
  CHECK(fine(object + "}"));
  CHECK(limit_code(object + ",\"last\":0}") == "too-large");
}

TEST_CASE("limits, the whole file") {
  constexpr std::size_t most = 16U * 1024U * 1024U;
  CHECK(fine("{}" + std::string(most - 2, ' ')));
  const Tree tree("{}" + std::string(most - 1, ' '));
  CHECK_FALSE(tree.whole);
  CHECK(codes(tree.problems) == Found{"too-large"});
  CHECK(tree.problems.all()[0].message == "The file is larger than 16 MiB");
}

TEST_CASE("limits, problems in one file") {
  json file = plain_job();
  for (int i = 0; i < 999; ++i) file["calendar"]["closed"].push_back(0);
  CHECK(problems_of_job(file).size() == 999);
  file["calendar"]["closed"].push_back(0);
  CHECK(problems_of_job(file).size() == 1000);
  for (int i = 0; i < 5000; ++i) file["calendar"]["closed"].push_back(0);
  const Found found = problems_of_job(file);
  REQUIRE(found.size() == 1001);
  CHECK(found[0] == "too-many-problems ");
  CHECK(found[1] == "wrong-type /calendar/closed/0");
  CHECK(found[1000] == "wrong-type /calendar/closed/999");
}

TEST_CASE("limits, a hostile object is refused in a moment") {
  std::string repeated = "{\"a\":0";
  for (int i = 0; i < 9'999; ++i) repeated += ",\"a\":0";
  const Tree tree(repeated + "}");
  CHECK(tree.problems.size() == 1001);
  json file = plain_job();
  for (int i = 0; i < 9'000; ++i) file["unknown " + std::to_string(i)] = i;
  CHECK(problems_of_job(file).size() == 1001);
}

TEST_CASE("what is said about broken JSON") {
  const auto first = [](const std::string& text) { return Tree(text).problems.all()[0]; };
  CHECK(first("{\"a\": 1,\n}").hint == "Take out the last comma.");
  CHECK(first("[1, 2,  \n ]").hint == "Take out the last comma.");
  CHECK(first("[1, // one\n 2]").hint == "JSON has no comments; put the remark into \"notes\".");
  CHECK(first("{'a': 1}").hint == "Texts stand in double quotation marks.");
  CHECK(first("{'a': 1}").message == "A key in quotation marks belongs here");
  CHECK(first("{\"a\" 1}").message == "A colon belongs between a key and its value");
  CHECK(first("{\"a\": 1 \"b\": 2}").message == "A comma or } belongs here");
  CHECK(first("[1 2]").message == "A comma or ] belongs here");
  CHECK(first("[1").message == "The file ends before the JSON is complete");
  CHECK(first("[\"caf\xE9\"]").message == "This is not valid UTF-8");
  CHECK(first("[\"\\q\"]").message == "This escape is not JSON");
  CHECK(first("[1.]").message == "This is not a JSON number");
  CHECK(first("[NaN]").message == "This is neither a number nor a text in quotation marks");
  CHECK(first("{} {}").message == "Something stands after the end of the JSON");
}

TEST_CASE("where broken JSON is broken") {
  const auto at = [](const std::string& text) {
    const auto place = Tree(text).problems.all()[0].at;
    return std::vector<std::size_t>{place.line, place.column, place.width};
  };
  using Place = std::vector<std::size_t>;
  CHECK(at("{\"a\": 1\n \"second\": 2}") == Place{2, 2, 8});
  CHECK(at("[1, 2\n  345]") == Place{2, 3, 3});
  CHECK(at("[1,\n  true false]") == Place{2, 8, 5});
  CHECK(at("{\"a\": 1,\n}") == Place{2, 1, 1});
  CHECK(at("{\"a\": 1e999}") == Place{1, 7, 5});
  CHECK(at("[\"\xC3\xA9\", \"\\q\"]") == Place{1, 9, 1});
  CHECK(at("\xEF\xBB\xBF[x]") == Place{1, 2, 1});
  CHECK(at("[1,\r\n\r\n") == Place{3, 1, 1});
}
