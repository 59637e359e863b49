#include "glyphs.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace basinwright::diagnostics {
namespace {

/// The first two bytes of well-formed sequences: a row of table 3-7.
struct Lead {
  unsigned first, last;  ///< Of the first byte.
  unsigned second_low, second_high;
  std::size_t length;
};
constexpr std::array<Lead, 9> leads{{{0x00, 0x7F, 0x00, 0x00, 1},
                                     {0xC2, 0xDF, 0x80, 0xBF, 2},
                                     {0xE0, 0xE0, 0xA0, 0xBF, 3},
                                     {0xE1, 0xEC, 0x80, 0xBF, 3},
                                     {0xED, 0xED, 0x80, 0x9F, 3},
                                     {0xEE, 0xEF, 0x80, 0xBF, 3},
                                     {0xF0, 0xF0, 0x90, 0xBF, 4},
                                     {0xF1, 0xF3, 0x80, 0xBF, 4},
                                     {0xF4, 0xF4, 0x80, 0x8F, 4}}};

unsigned byte(std::string_view text, std::size_t i) {
  return static_cast<unsigned char>(text[i]);
}

bool within(unsigned value, unsigned low, unsigned high) {
  return low <= value && value <= high;
}

/// Length of a well-formed sequence, 0 when malformed.
std::size_t well_formed(std::string_view text) {
  if (text.empty()) return 0;
  const unsigned first = byte(text, 0);
  const auto lead = std::ranges::find_if(
      leads, [first](const Lead& row) { return within(first, row.first, row.last); });
  if (lead == leads.end() || text.size() < lead->length) return 0;
  for (std::size_t i = 1; i < lead->length; ++i) {
    const bool ok = i == 1 ? within(byte(text, 1), lead->second_low, lead->second_high)
                           : within(byte(text, i), 0x80, 0xBF);
    if (!ok) return 0;
  }
  return lead->length;
}

std::uint32_t scalar(std::string_view sequence) {
  if (sequence.size() == 1) return byte(sequence, 0);
  std::uint32_t value = byte(sequence, 0) & (0xFFU >> (sequence.size() + 1));
  for (std::size_t i = 1; i < sequence.size(); ++i) {
    value = (value << 6U) | (byte(sequence, i) & 0x3FU);
  }
  return value;
}

/// Characters that would move the cursor, end the line or reorder it.
bool disturbs(std::uint32_t c) {
  return c < 0x20 || within(c, 0x7F, 0x9F) || within(c, 0x200E, 0x200F) ||
         within(c, 0x2028, 0x202E) || within(c, 0x2066, 0x2069) || c == 0xFEFF;
}

std::string escaped(std::string_view bytes) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    out += "\\x";
    out += digits[byte(bytes, i) >> 4U];
    out += digits[byte(bytes, i) & 0xFU];
  }
  return out;
}

Glyph glyph(std::string_view sequence) {
  constexpr std::size_t tab_columns = 8;
  if (sequence == "\t") return {"\t", tab_columns};
  if (well_formed(sequence) == 0 || disturbs(scalar(sequence))) {
    std::string text = escaped(sequence);
    const std::size_t columns = text.size();
    return {std::move(text), columns};
  }
  return {std::string(sequence), 1};
}

}  // namespace

std::size_t scalar_length(std::string_view text) {
  if (text.empty()) return 0;
  return std::max<std::size_t>(well_formed(text), 1);
}

std::vector<Glyph> glyphs(std::string_view text, std::size_t limit) {
  std::vector<Glyph> out;
  while (!text.empty() && out.size() < limit) {
    const std::size_t length = scalar_length(text);
    out.push_back(glyph(text.substr(0, length)));
    text.remove_prefix(length);
  }
  return out;
}

std::string printable(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t length = scalar_length(text);
    out += text.front() == '\t' ? escaped("\t") : glyph(text.substr(0, length)).text;
    text.remove_prefix(length);
  }
  return out;
}

}  // namespace basinwright::diagnostics
