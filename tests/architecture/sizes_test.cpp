#include "sizes.hpp"

#include "broken_tree.hpp"

using namespace architecture;

namespace {

std::string function_of(std::size_t length) {
  return "int f(int a) {\n" + lines(length - 2, "  a += 1;\n") + "}\n";
}

std::size_t longest(std::string_view code) {
  std::size_t most = 0;
  for (const Function& function : functions_of(code)) most = std::max(most, function.lines);
  return most;
}

}  // namespace

TEST_CASE("files over the ceiling are found") {
  const BrokenTree tree;
  tree.write("src/shell/pool.cpp", lines(400));
  tree.write("tests/reference/rows.json", lines(5000));
  require_none(long_files(tree.root()));
  for (const std::string path : {"src/a/b.cpp",
                                 "include/basinwright/a/b.hpp",
                                 "tests/a/b_test.cpp",
                                 "tests/a/read.py",
                                 "tests/CMakeLists.txt"}) {
    tree.write(path, lines(401));
    require_one(long_files(tree.root()), path + ": 401 lines");
    fs::remove(tree.root() / path);
  }
  tree.write("src/a/b.cpp", lines(400) + "no line end");
  require_one(long_files(tree.root()), "401 lines");
}

TEST_CASE("functions over the ceiling are found") {
  const BrokenTree tree;
  tree.write("src/shell/pool.cpp", "namespace a {\n\n" + function_of(60) + "}\n");
  require_none(long_functions(tree.root()));
  tree.write("src/shell/pool.cpp", "namespace a {\n\n" + function_of(61) + "}\n");
  require_one(long_functions(tree.root()), "src/shell/pool.cpp:3: 61 lines of function");
}

TEST_CASE("function lengths are counted from the first word to the closing brace") {
  CHECK(longest("int f() { return 1; }\n") == 1);
  CHECK(longest("template <class T>\nT f(T a,\n    T b) {\n  return a;\n}\n") == 5);
  CHECK(longest("struct A {\n  int x = 1;\n  int f() const {\n    return 1;\n  }\n};\n") == 3);
  CHECK(longest("class A {\n public:\n  int f() {\n    return 1;\n  }\n};\n") == 3);
  CHECK(longest("TEST_CASE(\"a\") {\n  if (x) {\n    y();\n  }\n}\n") == 5);
  CHECK(longest("#define X(a) {\nint f() {\n  return 1'000;\n}\n") == 3);
}

TEST_CASE("braces in literals, comments and tables are no functions") {
  CHECK(longest("int f() {\n  g(\"}\");\n  g('}');  // }\n  /* } */\n}\n") == 5);
  CHECK(longest("auto f() {\n  return R\"x(\n}\n)\" }\n)x\";\n}\n") == 6);
  CHECK(functions_of("int f() { return 1'000; }\nint g() { return 2'0; }\n").size() == 2);
  CHECK(longest("constexpr int a[] = {\n  1,\n  2};\n") == 0);
  CHECK(longest("const auto a = make({\n  1,\n  2});\n") == 0);
  CHECK(longest("namespace a {\nenum class B { c, d };\nstruct E {};\n}\n") == 0);
}

TEST_CASE("a thick build file and a thick main are found") {
  const BrokenTree tree;
  tree.write("CMakeLists.txt", lines(119));
  tree.write("src/cli/main.cpp", lines(29));
  require_none(thick_entries(tree.root()));
  tree.write("CMakeLists.txt", lines(120));
  require_one(thick_entries(tree.root()), "CMakeLists.txt: 120 lines");
  tree.write("CMakeLists.txt", "");
  tree.write("src/cli/main.cpp", lines(30));
  require_one(thick_entries(tree.root()), "src/cli/main.cpp: 30 lines");
}

TEST_CASE("what does not belong at the top is found") {
  const BrokenTree tree;
  for (const char* path : {"CMakeLists.txt",
                           "README.md",
                           "DEVELOPERS.md",
                           "LICENSE",
                           "src/a",
                           "include/a",
                           "tests/a",
                           "examples/a",
                           "docs/a",
                           ".ci/run",
                           "build/a",
                           "build-debug/a",
                           ".gitignore"}) {
    tree.write(path, "");
  }
  require_none(wrong_top_level(tree.root()));
  tree.write("notes.txt", "");
  require_one(wrong_top_level(tree.root()), "notes.txt: does not belong");
  fs::remove(tree.root() / "notes.txt");
  tree.write("scripts/a", "");
  require_one(wrong_top_level(tree.root()), "scripts: does not belong");
}
