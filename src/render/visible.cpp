#include "visible.hpp"

#include <fmt/format.h>

#include "utf8.hpp"

namespace basinwright::render {
namespace {

constexpr bool is_control(char32_t scalar) {
  return scalar < 0x20 || (scalar >= 0x7F && scalar < 0xA0);
}

/// Embeddings, overrides and isolates reorder what stands beside them; U+2028 and U+2029 end lines.
constexpr bool rearranges(char32_t scalar) {
  return (scalar >= 0x2028 && scalar <= 0x202E) || (scalar >= 0x2066 && scalar <= 0x2069);
}

std::string bytes_shown(std::string_view bytes) {
  std::string result;
  for (const char byte : bytes) {
    result += fmt::format("\\x{:02x}", static_cast<unsigned char>(byte));
  }
  return result;
}

}  // namespace

std::string visible(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Scalar scalar = scalar_at(text, at);
    const std::string_view bytes = text.substr(at, scalar.length);
    at += scalar.length;
    if (!scalar.valid) {
      result += bytes_shown(bytes);
    } else if (scalar.value == U'\r' && at < text.size() && text[at] == '\n') {
      continue;
    } else if (scalar.value == U'\t') {
      result += ' ';
    } else if (is_control(scalar.value) && scalar.value != U'\n') {
      result += fmt::format("\\x{:02x}", static_cast<unsigned>(scalar.value));
    } else if (rearranges(scalar.value)) {
      result += fmt::format("\\u{:04x}", static_cast<unsigned>(scalar.value));
    } else {
      result += bytes;
    }
  }
  return result;
}

}  // namespace basinwright::render
