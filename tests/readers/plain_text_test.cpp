// UTF-8 as table 3-7 of the Unicode standard has it, held against the JSON library's own check.
#include "readers/plain_text.hpp"

#include "reading.hpp"

using namespace reading;

namespace {

/// What the JSON library says of the bytes inside a text.
bool library_accepts(const std::string& bytes) {
  return json::accept("\"" + bytes + "\"");
}

void hold(const std::string& bytes) {
  if (readers::first_bad_byte(bytes).has_value() != library_accepts(bytes)) return;
  std::string shown;
  for (const char c : bytes) shown += std::to_string(static_cast<unsigned char>(c)) + " ";
  INFO(shown);
  CHECK(readers::first_bad_byte(bytes).has_value() != library_accepts(bytes));
}

std::string bytes_of(std::initializer_list<int> values) {
  std::string out;
  for (const int v : values) out += static_cast<char>(static_cast<unsigned char>(v));
  return out;
}

}  // namespace

TEST_CASE("every pair of bytes above ASCII is good or bad as the library has it") {
  for (int a = 0x80; a < 0x100; ++a) {
    hold(bytes_of({a}));
    for (int b = 0x7E; b < 0x100; ++b) hold(bytes_of({a, b}));
  }
}

TEST_CASE("sequences of three and four bytes at the edges of their ranges") {
  const std::vector<int> edges{0x7F, 0x80, 0x8F, 0x90, 0x9F, 0xA0, 0xBF, 0xC0};
  for (int a = 0xDF; a < 0x100; ++a) {
    for (const int b : edges) {
      for (const int c : edges) {
        hold(bytes_of({a, b, c}));
        for (const int d : edges) hold(bytes_of({a, b, c, d}));
      }
    }
  }
}

TEST_CASE("a bad byte is found wherever it stands") {
  for (std::size_t at = 0; at < 40; ++at) {
    for (const int byte : {0x00, 0x80, 0xFF, 0xC3}) {
      std::string text(40, 'a');
      text[at] = static_cast<char>(static_cast<unsigned char>(byte));
      CHECK(readers::first_bad_byte(text) == at);
    }
  }
  CHECK_FALSE(readers::first_bad_byte(std::string(40, '\x01')));
  CHECK_FALSE(readers::first_bad_byte(std::string(40, '\x7F')));
  CHECK_FALSE(readers::first_bad_byte("18 \u00B0C \u20AC \U0001F327 18 \u00B0C"));
  CHECK_FALSE(readers::first_bad_byte(""));
}
