#include "render/wrap.hpp"

#include "render/display_width.hpp"
#include "sample.hpp"
#include "support/catch.hpp"

using namespace basinwright::render;
using Lines = std::vector<std::string>;

// Common practice: greedy lines broken at spaces.
TEST_CASE("lines are filled word by word") {
  CHECK(wrapped("the wall and the floor", 8) == Lines{"the wall", "and the", "floor"});
  CHECK(wrapped("one\ntwo three", 20) == Lines{"one", "two three"});
  CHECK(wrapped("  spaces   inside  ", 20) == Lines{"spaces inside"});
  CHECK(wrapped("", 10) == Lines{""});
  CHECK(wrapped("ends\n", 10) == Lines{"ends"});
}

TEST_CASE("a long word is cut but a number never") {
  CHECK(wrapped("polyurethane", 5) == Lines{"polyu", "retha", "ne"});
  CHECK(wrapped("about 1,234,567.89 now", 5) == Lines{"about", "1,234,567.89", "now"});
  CHECK(wrapped("-12.5", 2) == Lines{"-12.5"});
  CHECK(wrapped("2025-03-04", 4) == Lines{"2025-03-04"});
}

TEST_CASE("a long name is cut at its joints") {
  CHECK(wrapped("mean_depth_at_centroid", 12) == Lines{"mean_depth_", "at_centroid"});
  CHECK(wrapped("examples/pool.json:48:20", 18) == Lines{"examples/pool.", "json:48:20"});
  CHECK(wrapped("a half_mask b", 9) == Lines{"a", "half_mask", "b"});
  CHECK(wrapped("area_m2.wall_0", 6) == Lines{"area_", "m2.", "wall_0"});
  CHECK(wrapped("half_polyurethane", 8) == Lines{"half_pol", "yurethan", "e"});
}

TEST_CASE("what is indented stays so on every line") {
  CHECK(wrapped("\u00A0\u00A0mean depth of it", 12) ==
        Lines{"\u00A0\u00A0mean depth", "\u00A0\u00A0of it"});
  CHECK(wrapped("\u00A0\u00A0mean_depth", 10) == Lines{"\u00A0\u00A0mean_", "\u00A0\u00A0depth"});
  // Where it leaves no room it is kept on the first line only.
  CHECK(wrapped("\u00A0\u00A0\u00A0\u00A0a b c d e f", 6) ==
        Lines{"\u00A0\u00A0\u00A0\u00A0a", "b c d", "e f"});
}

TEST_CASE("wide characters break without spaces and marks stay on their letter") {
  CHECK(wrapped("水槽塗装", 4) == Lines{"水槽", "塗装"});
  CHECK(wrapped("a 水槽塗装", 6) == Lines{"a 水槽", "塗装"});
  CHECK(wrapped("水槽塗装", 5) == Lines{"水槽", "塗装"});
  CHECK(wrapped("aae\u0301e\u0301", 3) == Lines{"aae\u0301", "e\u0301"});
  CHECK(wrapped("5\u00A0L of acid", 4) == Lines{"5\u00A0L", "of", "acid"});
}

TEST_CASE("widths of lines, words and wholes") {
  CHECK(widest_line("two words\nx") == 9);
  CHECK(widest_word("two words") == 5);
  CHECK(widest_whole("word 1,234.5 m") == 7);
  CHECK(widest({"ab", "水槽"}) == 4);
}

TEST_CASE("no line is wider than asked and no text is lost") {
  const auto without_blanks = [](std::string text) {
    std::erase_if(text, [](char byte) { return byte == ' ' || byte == '\n'; });
    for (std::size_t at = 0; (at = text.find("\u00A0")) != std::string::npos;) text.erase(at, 2);
    return text;
  };
  for (const std::string& text : sample::hostile()) {
    for (std::size_t width = 2; width <= 40; ++width) {
      std::string all;
      for (const std::string& line : wrapped(text, width)) {
        INFO(text << " at " << width);
        CHECK(display_width(line) <= std::max(width, widest_whole(text)));
        all += line;
      }
      CHECK(without_blanks(all) == without_blanks(text));
    }
  }
}
