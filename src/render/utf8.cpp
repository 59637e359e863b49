#include "utf8.hpp"

#include <array>

namespace basinwright::render {
namespace {

constexpr char32_t replacement = 0xFFFD;

unsigned byte_at(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]);
}

/// What may follow a lead byte: how many bytes, and the narrowed range of the first of them, which
/// is what keeps overlong forms, surrogates and values past U+10FFFF out (RFC 3629, section 4).
struct Lead {
  std::size_t following = 0;
  unsigned low = 0x80;
  unsigned high = 0xBF;
};

Lead lead(unsigned byte) {
  if (byte >= 0xC2 && byte <= 0xDF) return {1};
  if (byte == 0xE0) return {2, 0xA0, 0xBF};
  if (byte == 0xED) return {2, 0x80, 0x9F};
  if (byte >= 0xE1 && byte <= 0xEF) return {2};
  if (byte == 0xF0) return {3, 0x90, 0xBF};
  if (byte == 0xF4) return {3, 0x80, 0x8F};
  if (byte >= 0xF1 && byte <= 0xF3) return {3};
  return {};
}

}  // namespace

Scalar scalar_at(std::string_view text, std::size_t at) {
  const unsigned first = byte_at(text, at);
  if (first < 0x80) return {static_cast<char32_t>(first), 1, true};
  Lead rule = lead(first);
  if (rule.following == 0) return {replacement, 1, false};
  constexpr std::array<unsigned, 4> payload = {0, 0x1F, 0x0F, 0x07};
  char32_t value = first & payload.at(rule.following);
  for (std::size_t i = 1; i <= rule.following; ++i) {
    if (at + i >= text.size()) return {replacement, i, false};
    const unsigned next = byte_at(text, at + i);
    if (next < rule.low || next > rule.high) return {replacement, i, false};
    rule.low = 0x80;
    rule.high = 0xBF;
    value = (value << 6U) | (next & 0x3FU);
  }
  return {value, rule.following + 1, true};
}

void append_scalar(std::string& text, char32_t scalar) {
  const auto add = [&text](char32_t bits) { text += static_cast<char>(bits); };
  if (scalar < 0x80) {
    add(scalar);
  } else if (scalar < 0x800) {
    add(0xC0U | (scalar >> 6U));
    add(0x80U | (scalar & 0x3FU));
  } else if (scalar < 0x10000) {
    add(0xE0U | (scalar >> 12U));
    add(0x80U | ((scalar >> 6U) & 0x3FU));
    add(0x80U | (scalar & 0x3FU));
  } else {
    add(0xF0U | (scalar >> 18U));
    add(0x80U | ((scalar >> 12U) & 0x3FU));
    add(0x80U | ((scalar >> 6U) & 0x3FU));
    add(0x80U | (scalar & 0x3FU));
  }
}

std::string repaired(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Scalar scalar = scalar_at(text, at);
    append_scalar(result, scalar.value);
    at += scalar.length;
  }
  return result;
}

}  // namespace basinwright::render
