// Numbers and texts one after the other in few bytes; private to the room.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

namespace basinwright::sequence {

/// Writes what `ByteReader` reads back in the same order.
class ByteWriter {
 public:
  ByteWriter() { bytes_.reserve(usual); }
  /// Small numbers of either sign take one byte.
  void number(std::int64_t value) {
    auto rest = static_cast<std::uint64_t>(value) << 1U;
    if (value < 0) rest = ~rest;
    for (; rest >= more; rest >>= bits) bytes_ += static_cast<char>((rest & (more - 1)) | more);
    bytes_ += static_cast<char>(rest);
  }
  void real(double value) { bytes_.append(reinterpret_cast<const char*>(&value), sizeof value); }
  void text(std::string_view value) {
    number(static_cast<std::int64_t>(value.size()));
    bytes_ += value;
  }
  [[nodiscard]] std::string take() { return std::move(bytes_); }

  static constexpr std::size_t usual = 256;
  static constexpr unsigned bits = 7;
  static constexpr std::uint64_t more = 1U << bits;

 private:
  std::string bytes_;
};

/// Reads only what a `ByteWriter` wrote.
class ByteReader {
 public:
  explicit ByteReader(std::string_view bytes) : left_(bytes) {}

  [[nodiscard]] std::int64_t number() {
    std::uint64_t value = 0;
    for (unsigned shift = 0;; shift += ByteWriter::bits) {
      const auto byte = static_cast<unsigned char>(left_.front());
      left_.remove_prefix(1);
      value |= (byte & (ByteWriter::more - 1)) << shift;
      if (byte < ByteWriter::more) break;
    }
    return static_cast<std::int64_t>((value & 1U) != 0 ? ~(value >> 1U) : value >> 1U);
  }
  [[nodiscard]] int small() { return static_cast<int>(number()); }
  [[nodiscard]] double real() {
    double value = 0;
    std::memcpy(&value, left_.data(), sizeof value);
    left_.remove_prefix(sizeof value);
    return value;
  }
  [[nodiscard]] std::string_view text() {
    const auto size = static_cast<std::size_t>(number());
    const std::string_view value = left_.substr(0, size);
    left_.remove_prefix(size);
    return value;
  }
  [[nodiscard]] bool at_end() const { return left_.empty(); }

 private:
  std::string_view left_;
};

}  // namespace basinwright::sequence
