// The project itself, held against every rule. The rules are the house's own: DEVELOPERS.md.
#include "bare_numbers.hpp"
#include "broken_tree.hpp"
#include "includes.hpp"
#include "prose.hpp"
#include "pure.hpp"
#include "rooms.hpp"
#include "sizes.hpp"
#include "source_keys.hpp"
#include "standalone.hpp"
#include "support/places.hpp"
#include "test_names.hpp"

using namespace architecture;

namespace {
const fs::path project = places::source();
}

TEST_CASE("the checks see the project") {
  CHECK(rooms_of(project).rooms.contains("units"));
  CHECK(room_code(project).size() > 20);
}

TEST_CASE("every arrow goes down and none in circles") {
  const Rooms rooms = rooms_of(project);
  require_none(rooms.findings);
  require_none(wrong_arrows(rooms));
  require_none(cycles(rooms));
}

TEST_CASE("every room is listed, well named and more than one file") {
  require_none(wrong_rooms(project, rooms_of(project)));
}

TEST_CASE("every include follows an arrow") {
  require_none(wrong_includes(project, rooms_of(project)));
}

TEST_CASE("libraries from outside stay in their rooms") {
  require_none(wrong_libraries(project));
}

TEST_CASE("every public header compiles alone") {
  // Nothing of ours runs here: once, in the plain build, is enough.
  if (places::some_of(5) < 5) return;
  require_none(dependent_headers(project, places::compiler()));
}

TEST_CASE("files keep below their ceiling") {
  require_none(long_files(project));
}

TEST_CASE("what people read is worded in one place") {
  require_none(prose_out_of_place(project));
  require_none(words_twice(project));
}

TEST_CASE("functions keep below their ceiling") {
  require_none(long_functions(project));
}

TEST_CASE("the build file and main stay thin") {
  require_none(thick_entries(project));
}

TEST_CASE("the top level holds what it should") {
  require_none(wrong_top_level(project));
}

TEST_CASE("no clock, environment or locale below cli") {
  require_none(impure_calls(project));
}

TEST_CASE("every source key is explained") {
  require_none(unexplained_sources(project));
}

TEST_CASE("no number of the trade lacks its source") {
  require_none(bare_numbers(project));
}

TEST_CASE("sentences for crew and client hold no bare number") {
  require_none(numbers_in_sentences(project));
}

TEST_CASE("every test name can be asked for") {
  require_none(wrong_test_names(project));
}
