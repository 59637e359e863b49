// Checks on what code says: impure calls, source keys, headers alone, names of tests.
#include "bare_numbers.hpp"
#include "broken_tree.hpp"
#include "prose.hpp"
#include "pure.hpp"
#include "source_keys.hpp"
#include "standalone.hpp"
#include "support/places.hpp"
#include "test_names.hpp"

using namespace architecture;

TEST_CASE("clocks, environment and locale below cli are found") {
  const BrokenTree tree;
  tree.write("src/cli/main.cpp", "auto e = std::getenv(\"HOME\");\n");
  tree.write(
      "src/weather/solar.cpp",
      "// getenv\nauto s = \"strtod\";\nauto a = solar_time(x) + hour.time(0) + p->time(&x);\n"
      "Hour time(int x);\nauto b = weather::time(0) + time(field);\nauto locale = 1;\n");
  require_none(impure_calls(tree.root()));
  for (const std::string call : {"std::getenv(\"TZ\")",
                                 "std::chrono::system_clock::now()",
                                 "std::time(nullptr)",
                                 "time(0)",
                                 "::time(0)",
                                 "localtime(&t)",
                                 "setlocale(LC_ALL, \"\")",
                                 "std::locale()",
                                 "strtod(s, 0)",
                                 "std::stod(s)",
                                 "1 + time(nullptr)"}) {
    tree.write("src/weather/gate.cpp", "\nauto x = " + call + ";\n");
    require_one(impure_calls(tree.root()), "src/weather/gate.cpp:2: uses ");
  }
  tree.write("src/weather/gate.cpp", "");
  tree.write("include/basinwright/weather/gate.hpp", "inline auto x() { return time(0); }\n");
  require_one(impure_calls(tree.root()), "gate.hpp:1: uses time");
}

TEST_CASE("source keys without an explanation are found") {
  const BrokenTree tree;
  tree.write("docs/sources.md",
             "# Sources\n\n- `etch-ratios`: common practice, what it gives\n\n## `water-density`\n"
             "text with `loose-key`: not a line of its own\n- text `late-key`: no\n");
  tree.write("src/chemistry/a.cpp",
             "S a{1, {Kind::published, \"etch-ratios\", \"x\"}};\n"
             "S b{1, {sources::Kind::from_memory,\n  \"water-density\", \"x\"}};\n"
             "S c{1, {Kind::data_sheet, \"kit\", \"x\"}};\n// Kind::assumed, \"comment\"\n"
             "case Kind::assumed: return \"assumed\";\n");
  require_none(unexplained_sources(tree.root()));
  for (const std::string kind : {"published", "common_practice", "from_memory", "assumed"}) {
    for (const std::string key : {"missing", "loose-key", "late-key"}) {
      tree.write("src/chemistry/b.cpp", "\nS d{1, {Kind::" + kind + ",\n \"" + key + "\"}};\n");
      require_one(unexplained_sources(tree.root()),
                  "src/chemistry/b.cpp:2: source key \"" + key + "\" is not in docs/sources.md");
    }
  }
  tree.write("src/chemistry/b.cpp", "S d{.kind = Kind::assumed, .key = \"named\"};\n");
  require_one(unexplained_sources(tree.root()), "source key \"named\"");
  tree.write("src/chemistry/b.cpp", "S d{Kind::assumed, ledger, \"x\"};\n");
  require_one(unexplained_sources(tree.root()), "the key after the kind is no literal");
  fs::remove(tree.root() / "src/chemistry/b.cpp");
  fs::remove(tree.root() / "docs/sources.md");
  CHECK(unexplained_sources(tree.root()).size() == 2);
}

TEST_CASE("headers that lean on others are all found") {
  const BrokenTree tree;
  tree.write("include/basinwright/a/good.hpp",
             "#pragma once\n#include <string>\ninline std::string f() { return {}; }\n");
  require_none(dependent_headers(tree.root(), places::compiler()));
  tree.write("include/basinwright/a/leans.hpp", "#pragma once\ninline std::string g();\n");
  require_one(dependent_headers(tree.root(), places::compiler()),
              "include/basinwright/a/leans.hpp: does not compile alone");
  tree.write("include/basinwright/a/open.hpp", "inline int h() { return 1; }\n");
  for (const char* name : {"b", "c", "d", "e"}) {
    tree.write("include/basinwright/" + std::string(name) + "/x.hpp", "#error no\n");
  }
  CHECK(dependent_headers(tree.root(), places::compiler()).size() == 6);
}

TEST_CASE("test names that a runner would misread are found") {
  const BrokenTree tree;
  tree.write("tests/a/a_test.cpp", "TEST_CASE(\"all, (fine) - 1.5\") {}\n");
  require_none(wrong_test_names(tree.root()));
  for (const std::string name : {"a;b", "a\\\\b", "a [b]", "a*", "é", ""}) {
    tree.write("tests/a/b_test.cpp", "\nTEST_CASE(\"" + name + "\") {}\n");
    require_one(wrong_test_names(tree.root()), "tests/a/b_test.cpp:2: test name");
  }
}

TEST_CASE("numbers of the trade without a source are found") {
  const BrokenTree tree;
  tree.write("include/basinwright/sequence/waits.hpp",
             "Sourced<units::Duration> dry{units::hours(48),\n"
             "                             {sources::Kind::assumed, \"drying\", \"no rain\"}};\n"
             "// hours(12)\nauto unit = units::hours(1) + units::minutes(15) * n;\n"
             "constexpr double slack = 1e-9;\n");
  tree.write("src/render/text.cpp", "constexpr int columns = 80;\n");
  require_none(bare_numbers(tree.root()));
  tree.write("src/sequence/cure.cpp", "\nauto wait = units::hours(12);\n");
  require_one(bare_numbers(tree.root()), "src/sequence/cure.cpp:2: hours(12) has no source");
  tree.write("src/sequence/cure.cpp", "");
  tree.write("src/chemistry/etch.cpp", "constexpr double acid_share = 0.667;\n");
  require_one(bare_numbers(tree.root()), "src/chemistry/etch.cpp:1: acid_share is a constant");
  tree.write("src/chemistry/etch.cpp",
             "auto deep = units::metres(1);\nauto x = litres(2.5e1) / area;\n");
  require_one(bare_numbers(tree.root()), "src/chemistry/etch.cpp:2: litres(2.5e1) has no source");
}

TEST_CASE("prose out of its place is found") {
  const BrokenTree tree;
  tree.write("src/report/wording/sheet.hpp", "inline constexpr char a[] = \"Water first\";\n");
  require_none(words_twice(tree.root()));
  tree.write("src/report/wording/other.hpp", "\ninline constexpr char a[] = \"Acid last\";\n");
  require_one(words_twice(tree.root()), "sheet.hpp:1: a is in src/report/wording/other.hpp too");
  tree.write("src/report/task_words.cpp", "auto a = \"Abrade and clean\";\n");
  tree.write("src/report/sheet.cpp",
             "#include \"some file.hpp\"\n// \"A comment\"\n"
             "auto a = key(\"recoat-window\") + fmt::format(\"{} {:.1f} %\", b) + \" h\\n\";\n"
             "throw std::logic_error(\"no words for it\");\n"
             "if (kind == \"Other kind\") return;\n"
             "S d{1, {Kind::assumed, \"drying\", \"no rain\"}};\n");
  tree.write("src/render/html.cpp", "auto a = \" class=\\\"page start\\\"\";\n");
  tree.write("src/job/plan.cpp", "auto a = \"Not a page\";\n");
  require_none(prose_out_of_place(tree.root()));
  for (const std::string text : {"Water first", "{} people", " to ", "Total", ", section {}"}) {
    tree.write("src/report/page.cpp", "\nauto a = \"" + text + "\";\n");
    require_one(prose_out_of_place(tree.root()),
                "src/report/page.cpp:2: \"" + text + "\" is prose");
  }
  fs::remove(tree.root() / "src/report/page.cpp");
  for (const std::string text : {"Contents", "<p>how</p>", "<nav aria-label=\\\"On it\\\">"}) {
    tree.write("src/render/text.cpp", "auto a = \"" + text + "\";\n");
    require_one(prose_out_of_place(tree.root()), "src/render/text.cpp:1: ");
  }
}
