// Text as JSON writes it.
#pragma once

#include <string>
#include <string_view>

namespace basinwright::readers {

/// The text between quotes, with what must not stand there escaped (RFC 8259 section 7).
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace basinwright::readers
