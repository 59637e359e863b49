// UTF-8 taken apart strictly: what is not UTF-8 is seen, never passed on.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace basinwright::render {

/// One Unicode scalar and the bytes it takes.
struct Scalar {
  char32_t value = 0;
  std::size_t length = 0;
  bool valid = true;  ///< False: these bytes begin no scalar; `value` is U+FFFD.
};

/// The scalar that begins at `at`. Bytes that are no UTF-8 come as the longest piece that could
/// still have become a scalar (Unicode, chapter 3, "maximal subpart"), overlong forms and
/// surrogates byte by byte.
/// @param at below text.size()
[[nodiscard]] Scalar scalar_at(std::string_view text, std::size_t at);

/// One of 0 to 9, which no byte of a longer scalar is.
[[nodiscard]] constexpr bool is_digit(char byte) {
  return byte >= '0' && byte <= '9';
}

/// Adds the UTF-8 bytes of a scalar.
void append_scalar(std::string& text, char32_t scalar);

/// The text with U+FFFD in the place of everything that is not UTF-8.
[[nodiscard]] std::string repaired(std::string_view text);

}  // namespace basinwright::render
