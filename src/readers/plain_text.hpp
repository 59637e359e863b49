// What holds for every text file before its form is looked at.
#pragma once

#include <optional>
#include <string_view>

#include "node.hpp"

namespace basinwright::readers {

/// Bytes that begin a file without being part of it: 3 for a byte order mark, else 0.
[[nodiscard]] std::size_t mark_size(std::string_view bytes);

/// The first byte that is NUL or breaks UTF-8 (RFC 3629: no overlong form, no surrogate, nothing
/// past U+10FFFF).
[[nodiscard]] std::optional<std::size_t> first_bad_byte(std::string_view bytes);

}  // namespace basinwright::readers
