// One value changed in a file's text. Expected texts follow RFC 6901 (JSON Pointer) and, for adding
// to a list, RFC 6902 section 4.1.
#include "basinwright/readers/change.hpp"

#include "reading.hpp"

using namespace reading;
using basinwright::readers::Change;
using basinwright::readers::with_change;

namespace {

std::string changed(const std::string& text, const Change& change) {
  return with_change({"job.json", text}, change).value_or("refused");
}

}  // namespace

TEST_CASE("change, a value that is there is replaced and nothing else moves") {
  const std::string text = "{\r\n  \"a\": { \"b\": [1, 2.50, \"x\"] },\t\"c\" : null }\n";
  CHECK(changed(text, {"/a/b/1", "3"}) ==
        "{\r\n  \"a\": { \"b\": [1, 3, \"x\"] },\t\"c\" : null }\n");
  CHECK(changed(text, {"/c", "[true]"}) ==
        "{\r\n  \"a\": { \"b\": [1, 2.50, \"x\"] },\t\"c\" : [true] }\n");
  CHECK(changed(text, {"/a", "{}"}) == "{\r\n  \"a\": {},\t\"c\" : null }\n");
  CHECK(changed("[1]", {"", "{}"}) == "{}");
}

TEST_CASE("change, what is not there is made") {
  CHECK(changed("{}", {"/a", "1"}) == R"({"a": 1})");
  CHECK(changed(R"({"a": 1 })", {"/b/c/d", "2"}) == R"({"a": 1, "b": {"c": {"d": 2}} })");
  CHECK(changed(R"({"a": []})", {"/a/0", "2"}) == R"({"a": [2]})");
  CHECK(changed(R"({"a": [1 ]})", {"/a/-", "2"}) == R"({"a": [1, 2 ]})");
  CHECK(changed(R"({"a": [1]})", {"/a/-/b", "2"}) == R"({"a": [1, {"b": 2}]})");
}

TEST_CASE("change, a value that is no JSON is a text") {
  CHECK(changed("{}", {"/a", "9.2 m"}) == R"({"a": "9.2 m"})");
  CHECK(changed("{}", {"/a", "\"9.2 m\""}) == R"({"a": "9.2 m"})");
  CHECK(changed("{}", {"/a", "say \"hi\" \\ \n"}) == R"({"a": "say \"hi\" \\ \u000a"})");
  CHECK(changed("{}", {"/a", ""}) == R"({"a": ""})");
  CHECK(changed("{}", {"/a", "1, \"b\": 2"}) == R"({"a": "1, \"b\": 2"})");
}

TEST_CASE("change, escaped names") {
  CHECK(changed(R"({"a/b": 1, "m~n": 2})", {"/a~1b", "3"}) == R"({"a/b": 3, "m~n": 2})");
  CHECK(changed(R"({"a/b": 1, "m~n": 2})", {"/m~0n", "3"}) == R"({"a/b": 1, "m~n": 3})");
  CHECK(changed("{}", {"/a~1b", "3"}) == R"({"a/b": 3})");
  CHECK(changed("{}", {"/q\"", "3"}) == R"({"q\"": 3})");
}

TEST_CASE("change, places that lead nowhere are refused") {
  for (const Change& change : {Change{"/a/b", "1"},
                               Change{"/l/3", "1"},
                               Change{"/l/01", "1"},
                               Change{"/l/x", "1"},
                               Change{"a", "1"}}) {
    INFO(change.pointer);
    CHECK(changed(R"({"a": 1, "l": [1, 2]})", change) == "refused");
  }
  CHECK(changed("{", {"/a", "1"}) == "refused");
}
