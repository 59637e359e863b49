// JSON texts with everything in them that makes a place hard to find.
#pragma once

#include <array>
#include <cstdint>
#include <random>
#include <string>

namespace random_json {

class Generator {
 public:
  explicit Generator(std::uint32_t seed) : random_(seed) {}

  std::string text() {
    keys_ = 0;
    const std::string mark = below(4) == 0 ? "\xEF\xBB\xBF" : "";
    return mark + gap() + value(0) + gap();
  }

 private:
  // mt19937 gives the same numbers everywhere; the distributions of the library do not.
  std::uint32_t below(std::uint32_t n) { return static_cast<std::uint32_t>(random_()) % n; }

  template <std::size_t N>
  std::string one_of(const std::array<const char*, N>& choices) {
    return choices[below(static_cast<std::uint32_t>(N))];
  }

  std::string gap() {
    static constexpr std::array<const char*, 8> gaps{
        "", "", "", " ", "\n", "\r\n", "\t", " \r\n\t  "};
    return one_of(gaps);
  }

  std::string number() {
    static constexpr std::array<const char*, 14> numbers{"0",
                                                         "-0",
                                                         "7",
                                                         "-12",
                                                         "3.25",
                                                         "-0.5",
                                                         "1e3",
                                                         "1E+3",
                                                         "2.5e-7",
                                                         "1234567890123456789",
                                                         "18446744073709551615",
                                                         "-9223372036854775808",
                                                         "123456789012345678901234567890",
                                                         "0.1e0"};
    return one_of(numbers);
  }

  std::string quoted() {
    static constexpr std::array<const char*, 22> pieces{"a",
                                                        "Pool 7",
                                                        " ",
                                                        ",",
                                                        ":",
                                                        "{",
                                                        "}",
                                                        "[",
                                                        "]",
                                                        "\\\"",
                                                        "\\\\",
                                                        "\\/",
                                                        "\\b\\f",
                                                        "\\n\\r\\t",
                                                        "\\u0041",
                                                        "\\u0000",
                                                        "\\uD83C\\uDFCA",
                                                        "\xC3\xA9",
                                                        "\xE2\x82\xAC",
                                                        "\xF0\x9F\x8F\x8A",
                                                        "\x7F",
                                                        "'"};
    std::string out;
    for (std::uint32_t n = below(5); n > 0; --n) out += one_of(pieces);
    return out;
  }

  std::string list(int depth) {
    std::string out = "[" + gap();
    for (std::uint32_t n = below(5), i = 0; i < n; ++i) {
      out += (i == 0 ? "" : "," + gap()) + value(depth + 1) + gap();
    }
    return out + "]";
  }

  // Keys end in a number of their own: repeated keys are refused.
  std::string object(int depth) {
    std::string out = "{" + gap();
    for (std::uint32_t n = below(5), i = 0; i < n; ++i) {
      const std::string key = "\"" + quoted() + std::to_string(keys_++) + "\"";
      out += (i == 0 ? "" : "," + gap()) + key + gap() + ":" + gap() + value(depth + 1) + gap();
    }
    return out + "}";
  }

  std::string value(int depth) {
    static constexpr std::array<const char*, 3> words{"true", "false", "null"};
    const std::uint32_t kind = depth == 0 ? 3 + below(2) : below(depth < 6 ? 6 : 3);
    if (kind == 0) return one_of(words);
    if (kind == 1) return number();
    if (kind == 2) return "\"" + quoted() + "\"";
    return kind == 3 ? list(depth) : object(depth);
  }

  std::mt19937 random_;
  int keys_ = 0;
};

}  // namespace random_json
