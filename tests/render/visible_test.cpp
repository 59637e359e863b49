#include "render/visible.hpp"

#include "outside.hpp"
#include "render/plain_ascii.hpp"
#include "render/utf8.hpp"
#include "sample.hpp"

using namespace basinwright::render;

// ECMA-48: C0 (00-1F), DEL (7F) and C1 (80-9F) are control characters.
TEST_CASE("control characters are shown and not sent") {
  CHECK(visible("\x1b[31mred") == "\\x1b[31mred");
  CHECK(visible("\xC2\x9B"
                "31m") == "\\x9b31m");
  CHECK(visible(std::string_view("\0", 1)) == "\\x00");
  CHECK(visible("\x7F\x07") == "\\x7f\\x07");
  CHECK(visible("a\xFFz") == "a\\xffz");
  CHECK(visible("lone\rreturn") == "lone\\x0dreturn");
}

TEST_CASE("line ends and tabs stay what they mean") {
  CHECK(visible("one\ntwo") == "one\ntwo");
  CHECK(visible("one\r\ntwo") == "one\ntwo");
  CHECK(visible("a\tb") == "a b");
}

// Unicode Standard Annex 9: embeddings, overrides and isolates.
TEST_CASE("characters that reorder a line are shown and letters are left alone") {
  CHECK(visible("\u202Edesrever") == "\\u202edesrever");
  CHECK(visible("\u2066x\u2069") == "\\u2066x\\u2069");
  CHECK(visible("שלום") == "שלום");
  CHECK(visible("a\u2028b") == "a\\u2028b");
}

TEST_CASE("no hostile text keeps a control character") {
  for (const std::string& text : sample::hostile()) {
    const std::string seen = visible(text);
    INFO(seen);
    for (std::size_t at = 0; at < seen.size();) {
      const Scalar scalar = scalar_at(seen, at);
      CHECK(scalar.valid);
      CHECK((scalar.value >= 0x20 || scalar.value == U'\n'));
      CHECK((scalar.value < 0x7F || scalar.value >= 0xA0));
      at += scalar.length;
    }
  }
}

// The spellings are common practice; "18 C" is how the job file writes a temperature.
TEST_CASE("signs have a plain spelling") {
  CHECK(plain_ascii("36.4 m²") == "36.4 m2");
  CHECK(plain_ascii("115.3 m³") == "115.3 m3");
  CHECK(plain_ascii("18 °C") == "18 C");
  CHECK(plain_ascii("64°F") == "64F");
  CHECK(plain_ascii("45°") == "45 deg");
  CHECK(plain_ascii("4 × 5 L") == "4 x 5 L");
  CHECK(plain_ascii("250 µm") == "250 um");
  CHECK(plain_ascii("RH ≥ 40 %, ≤ 85 %") == "RH >= 40 %, <= 85 %");
  CHECK(plain_ascii("07:00–16:00 → rain — “later”…") == "07:00-16:00 -> rain - \"later\"...");
  CHECK(plain_ascii("1½ in, ¾ in") == "1 1/2 in, 3/4 in");
  CHECK(plain_ascii("€120, ±3") == "EUR 120, +/-3");
}

TEST_CASE("accents come off and other letters are named by number") {
  CHECK(plain_ascii("Åse Müller-Dvořák, Straße") == "Ase Muller-Dvorak, Strasse");
  CHECK(plain_ascii("e\u0301") == "e");
  CHECK(plain_ascii("日本") == "\\u65e5\\u672c");
  CHECK(plain_ascii("🏊") == "\\u1f3ca");
}

TEST_CASE("plain spelling leaves nothing beyond ASCII but the no-break space") {
  for (const std::string& text : sample::hostile()) {
    for (const char byte : plain_ascii(visible(text)))
      CHECK(static_cast<unsigned char>(byte) < 0x80);
  }
  CHECK(plain_ascii("5\u00A0L") == "5\u00A0L");
}
