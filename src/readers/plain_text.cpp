#include "plain_text.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstring>

namespace basinwright::readers {
namespace {

/// A row of table 3-7 of the Unicode standard: the first bytes, the limits of the second byte, and
/// how many bytes there are.
struct Sequence {
  unsigned char first_low, first_high, second_low, second_high;
  std::size_t size;
};

constexpr std::array<Sequence, 8> sequences{{{0xC2, 0xDF, 0x80, 0xBF, 2},
                                             {0xE0, 0xE0, 0xA0, 0xBF, 3},
                                             {0xE1, 0xEC, 0x80, 0xBF, 3},
                                             {0xED, 0xED, 0x80, 0x9F, 3},
                                             {0xEE, 0xEF, 0x80, 0xBF, 3},
                                             {0xF0, 0xF0, 0x90, 0xBF, 4},
                                             {0xF1, 0xF3, 0x80, 0xBF, 4},
                                             {0xF4, 0xF4, 0x80, 0x8F, 4}}};

bool is_within(char c, unsigned char low, unsigned char high) {
  const auto byte = static_cast<unsigned char>(c);
  return low <= byte && byte <= high;
}

/// Bytes of the good multi-byte sequence at the front; 0 when it is bad.
std::size_t sequence_size(std::string_view rest) {
  for (const Sequence& s : sequences) {
    if (!is_within(rest[0], s.first_low, s.first_high)) continue;
    if (rest.size() < s.size || !is_within(rest[1], s.second_low, s.second_high)) return 0;
    const std::string_view tail = rest.substr(2, s.size - 2);
    return std::ranges::all_of(tail, [](char c) { return is_within(c, 0x80, 0xBF); }) ? s.size : 0;
  }
  return 0;
}

/// Whether none of the next eight bytes is NUL or above 0x7F: nearly all of a weather file.
bool are_plain(const char* bytes) {
  constexpr std::uint64_t tops = 0x8080808080808080ULL;
  constexpr std::uint64_t ones = 0x0101010101010101ULL;
  std::uint64_t word = 0;
  std::memcpy(&word, bytes, sizeof word);
  // A zero byte borrows into its top bit; plain bytes cannot.
  return ((word | (word - ones)) & tops) == 0;
}

}  // namespace

std::size_t mark_size(std::string_view bytes) {
  constexpr std::string_view mark = "\xEF\xBB\xBF";
  return bytes.starts_with(mark) ? mark.size() : 0;
}

std::optional<std::size_t> first_bad_byte(std::string_view bytes) {
  constexpr std::size_t word = sizeof(std::uint64_t);
  for (std::size_t at = 0; at < bytes.size();) {
    if (at + word <= bytes.size() && are_plain(bytes.data() + at)) {
      at += word;
      continue;
    }
    if (is_within(bytes[at], 0x01, 0x7F)) {
      ++at;
      continue;
    }
    const std::size_t size = sequence_size(bytes.substr(at));
    if (size == 0) return at;
    at += size;
  }
  return {};
}

}  // namespace basinwright::readers
