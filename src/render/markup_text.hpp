// Numbers and texts as SVG spells them.
#pragma once

#include <string>
#include <string_view>

namespace basinwright::render {

/// Three decimals, zero without a sign. @throws std::logic_error if it is not finite
[[nodiscard]] std::string svg_number(double value);

/// Text for an element or a quoted attribute: markup escaped, control characters made visible, what
/// XML 1.0 has no character for as U+FFFD, line ends as spaces.
[[nodiscard]] std::string markup_text(std::string_view text);

/// ` name="value"`, the value escaped.
[[nodiscard]] std::string markup_attribute(std::string_view name, std::string_view value);

}  // namespace basinwright::render
