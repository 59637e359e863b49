// The place of a value at a JSON Pointer: RFC 6901, section 5 has the example document and what
// each pointer means.
#include "reading.hpp"

using namespace reading;

namespace {

const std::string example = R"({
  "foo": ["bar", "baz"],
  "": 0,
  "a/b": 1,
  "c%d": 2,
  "e^f": 3,
  "g|h": 4,
  "i\\j": 5,
  "k\"l": 6,
  " ": 7,
  "m~n": 8
})";

std::pair<std::size_t, std::size_t> place(const std::string& text, std::string_view pointer) {
  const auto at = readers::place_of({"f.json", text}, pointer);
  CHECK(at.file == "f.json");
  return {at.line, at.column};
}

using Place = std::pair<std::size_t, std::size_t>;

}  // namespace

TEST_CASE("place of every pointer of the example of rfc 6901") {
  CHECK(place(example, "") == Place{1, 1});
  CHECK(place(example, "/foo") == Place{2, 10});
  CHECK(place(example, "/foo/0") == Place{2, 11});
  CHECK(place(example, "/foo/1") == Place{2, 18});
  CHECK(place(example, "/") == Place{3, 7});
  CHECK(place(example, "/a~1b") == Place{4, 10});
  CHECK(place(example, "/c%d") == Place{5, 10});
  CHECK(place(example, "/e^f") == Place{6, 10});
  CHECK(place(example, "/g|h") == Place{7, 10});
  CHECK(place(example, "/i\\j") == Place{8, 11});
  CHECK(place(example, "/k\"l") == Place{9, 11});
  CHECK(place(example, "/ ") == Place{10, 8});
  CHECK(place(example, "/m~0n") == Place{11, 10});
}

TEST_CASE("place of a pointer to nothing is line 0") {
  for (const std::string pointer : {"/fo",
                                    "/foo/2",
                                    "/foo/-",
                                    "/foo/-1",
                                    "/foo/01",
                                    "/foo/1x",
                                    "/foo/",
                                    "/foo/0/a",
                                    "/a/b",
                                    "/m~n",
                                    "foo",
                                    "/foo/18446744073709551616",
                                    "/foo/1/"}) {
    INFO(pointer);
    CHECK(place(example, pointer) == Place{0, 0});
  }
  CHECK(place("{", "") == Place{0, 0});
}

TEST_CASE("every pointer of a problem leads to its place") {
  const json file = json::parse(contents("tests/readers/full-job.json"));
  const json leaves = file.flatten();
  int wrong = 0;
  for (const auto& [pointer, value] : leaves.items()) {
    if (pointer == "/$schema") continue;
    json changed = file;
    changed[json::json_pointer(pointer)] = nullptr;
    const Tree tree(changed.dump(1));
    Problems problems;
    static_cast<void>(job(tree.source.bytes(), problems));
    INFO(pointer << "\n" << told(problems));
    // A list in order is refused as a whole when one of its times is none.
    CHECK(std::ranges::any_of(problems.all(), [&, &p = pointer](const Diagnostic& d) {
      return p == d.pointer || p.substr(0, p.size() - 2) == d.pointer;
    }));
    for (const Diagnostic& d : problems.all()) {
      if (d.code == "missing-key") continue;
      const Node* node = readers::node_at(tree.root, d.pointer);
      REQUIRE(node != nullptr);
      CHECK(d.at.line == tree.source.at(node->begin, node->end).line);
      CHECK(d.at.column == tree.source.at(node->begin, node->end).column);
    }
    ++wrong;
  }
  CHECK(wrong > 200);
}
