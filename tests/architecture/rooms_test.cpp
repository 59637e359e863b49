#include "rooms.hpp"

#include "broken_tree.hpp"
#include "includes.hpp"

using namespace architecture;

namespace {

Rooms rooms_from(std::string_view list) {
  const BrokenTree tree;
  tree.write("src/rooms.txt", list);
  return rooms_of(tree.root());
}

/// A sound project of two floors.
void write_sound(const BrokenTree& tree) {
  tree.write("src/rooms.txt", "# rooms\nunits 0\nmoney 0\nshell 1 units\n");
  tree.write("include/basinwright/units/length.hpp", "#pragma once\n#include <cmath>\n");
  tree.write("src/units/length.cpp", "#include \"basinwright/units/length.hpp\"\n");
  tree.write("include/basinwright/money/money.hpp", "#pragma once\n");
  tree.write("src/money/money.cpp", "");
  tree.write("include/basinwright/shell/pool.hpp",
             "#pragma once\n#include \"basinwright/units/length.hpp\"\n");
  tree.write("src/shell/pool.cpp",
             "#include \"basinwright/shell/pool.hpp\"\n#include \"arc.hpp\"\n");
  tree.write("src/shell/arc.hpp", "#pragma once\n");
}

Findings include_findings(const BrokenTree& tree) {
  return wrong_includes(tree.root(), rooms_of(tree.root()));
}

}  // namespace

TEST_CASE("a sound tree of rooms has no findings") {
  const BrokenTree tree;
  write_sound(tree);
  const Rooms rooms = rooms_of(tree.root());
  require_none(rooms.findings);
  require_none(wrong_arrows(rooms));
  require_none(cycles(rooms));
  require_none(wrong_rooms(tree.root(), rooms));
  require_none(wrong_includes(tree.root(), rooms));
  require_none(wrong_libraries(tree.root()));
}

TEST_CASE("lines that are no room are found") {
  require_one(rooms_from("units 0\nmoney\n").findings, "src/rooms.txt:2: not");
  require_one(rooms_from("units 0\nunits 1\n").findings, "units comes twice");
  require_one(rooms_from("# nothing\n").findings, "no rooms");
}

TEST_CASE("arrows must go to a lower floor") {
  require_one(wrong_arrows(rooms_from("report 7\nrender 7 report\n")), "render -> report");
  require_one(wrong_arrows(rooms_from("units 0 job\njob 6\n")), "from floor 0 to floor 6");
  require_one(wrong_arrows(rooms_from("units 0 units\n")), "units -> units");
  require_one(wrong_arrows(rooms_from("shell 1 units\n")), "goes to no room");
  require_one(wrong_arrows(rooms_from("units 0\nshell 1 units units\n")), "has an arrow twice");
}

TEST_CASE("cycles are found whatever the floors say") {
  require_none(cycles(rooms_from("a 2 b c\nb 1 c\nc 0\n")));
  require_one(cycles(rooms_from("a 3 b\nb 2 c\nc 1 a\n")), "a -> b -> c -> a");
  require_one(cycles(rooms_from("a 1\nb 0 b\n")), "b -> b");
}

TEST_CASE("names that say nothing are refused") {
  for (const std::string name : {"common", "util", "utils", "helper", "helpers", "manager"}) {
    const BrokenTree tree;
    tree.write("src/rooms.txt", name + " 0\n");
    require_one(wrong_rooms(tree.root(), rooms_of(tree.root())), name + ": the name says nothing");
  }
}

TEST_CASE("unlisted, lonely and homeless files are found") {
  const BrokenTree tree;
  write_sound(tree);
  const Rooms rooms = rooms_of(tree.root());
  tree.write("src/paint/colour.cpp", "");
  tree.write("src/paint/colour.hpp", "");
  require_one(wrong_rooms(tree.root(), rooms), "paint: not in src/rooms.txt");
  fs::remove_all(tree.root() / "src/paint");
  fs::remove(tree.root() / "src/money/money.cpp");
  require_one(wrong_rooms(tree.root(), rooms), "money: has one file");
  tree.write("src/money/money.cpp", "");
  tree.write("src/stray.cpp", "");
  require_one(wrong_rooms(tree.root(), rooms), "src/stray.cpp: in no room");
}

TEST_CASE("an include without an arrow is found") {
  const BrokenTree tree;
  write_sound(tree);
  tree.write("src/shell/pool.cpp", "\n  #  include \"basinwright/money/money.hpp\"\n");
  require_one(include_findings(tree), "src/shell/pool.cpp:2: room shell may not include");
  tree.write("src/shell/pool.cpp", "#include <basinwright/money/money.hpp>\n");
  require_one(include_findings(tree), "may not include basinwright/money/money.hpp");
  tree.write("src/shell/pool.cpp", "/*\n#include \"basinwright/money/money.hpp\"\n*/\n");
  require_none(include_findings(tree));
}

TEST_CASE("private headers of another room are found") {
  const BrokenTree tree;
  write_sound(tree);
  tree.write("src/shell/made.hpp.in", "");
  tree.write("src/shell/pool.cpp", "#include \"made.hpp\"\n");
  require_none(include_findings(tree));
  tree.write("src/units/scan.hpp", "#pragma once\n");
  tree.write("src/shell/pool.cpp", "#include \"../units/scan.hpp\"\n");
  require_one(include_findings(tree), "not beside it");
  tree.write("src/shell/pool.cpp", "#include \"units/scan.hpp\"\n");
  require_one(include_findings(tree), "not beside it");
  tree.write("src/shell/pool.cpp", "");
  tree.write("include/basinwright/shell/pool.hpp", "#include \"arc.hpp\"\n");
  require_one(include_findings(tree), "a public header includes \"arc.hpp\"");
}

TEST_CASE("libraries out of place are found") {
  const BrokenTree tree;
  tree.write("src/cli/parse.cpp", "#include <CLI/CLI.hpp>\n");
  tree.write("src/render/json.cpp", "#include <nlohmann/json.hpp>\n");
  tree.write("src/readers/job.cpp", "#include <nlohmann/json.hpp>\n");
  tree.write("tests/render/json_test.cpp", "#include <nlohmann/json.hpp>\n#include <iostream>\n");
  require_none(wrong_libraries(tree.root()));
  const std::pair<const char*, const char*> rows[] = {
      {"src/cli/words.cpp", "#include <CLI/CLI.hpp>\n"},
      {"src/job/words.cpp", "#include <CLI/App.hpp>\n"},
      {"src/job/words.cpp", "#include <nlohmann/json.hpp>\n"},
      {"src/cli/words.cpp", "#include <nlohmann/json.hpp>\n"},
      {"include/basinwright/render/json.hpp", "#include <nlohmann/json_fwd.hpp>\n"},
      {"include/basinwright/units/length.hpp", "#include <iostream>\n"},
      {"tests/support/files.hpp", "#include <iostream>\n"}};
  for (const auto& [path, text] : rows) {
    tree.write(path, text);
    require_one(wrong_libraries(tree.root()), path);
    fs::remove(tree.root() / path);
  }
  fs::rename(tree.root() / "src/cli/parse.cpp", tree.root() / "src/cli/parse.hpp");
  require_one(wrong_libraries(tree.root()), "CLI11 belongs in one source");
}
