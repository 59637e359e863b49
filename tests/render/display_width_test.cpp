#include "render/display_width.hpp"

#include "outside.hpp"

using namespace basinwright::render;

// Unicode Standard Annex 11 (East Asian Width): W and F take two columns. Combining marks none.
TEST_CASE("display width counts marks as none and wide characters as two") {
  CHECK(display_width("pool") == 4);
  CHECK(display_width("92.0 m²") == 7);
  CHECK(display_width("e\u0301") == 1);
  CHECK(display_width("全角") == 4);
  CHECK(display_width("ﾊﾝｶｸ") == 4);
  CHECK(display_width("한글") == 4);
  CHECK(display_width("\u1112\u1161\u11AB") == 2);
  CHECK(display_width("🏊") == 2);
  CHECK(display_width("a\u200Bb") == 2);
  CHECK(display_width("שלום") == 4);
  CHECK(display_width("soft\u00ADhyphen") == 11);
}

// Outside reader: python3's unicodedata, when it carries the same version of Unicode.
TEST_CASE("display width agrees with the Unicode database for every character") {
  std::string table;
  for (char32_t scalar = 0xA0; scalar <= 0x10FFFF; ++scalar) {
    if (scalar >= 0xD800 && scalar <= 0xDFFF) continue;
    table += std::to_string(static_cast<unsigned long>(scalar)) + ' ' +
             std::to_string(display_width(scalar)) + '\n';
  }
  const auto misses = outside::read_back("widths", table);
  if (misses) CHECK(*misses == "");
}
