// Text that Markdown takes for text.
#pragma once

#include <string>
#include <string_view>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// The text, trimmed, with every sign escaped that could begin markup inside a line (also the ones
/// that make bare addresses into links) and line feeds as `<br>`.
[[nodiscard]] std::string markdown_inline(std::string_view text);

/// The same where it opens a line, so that it begins no heading, list or rule.
[[nodiscard]] std::string markdown_line(std::string_view text);

/// Escaped text with the emphasis of its role: strong for stops, totals and headings, weak for what
/// was assumed.
[[nodiscard]] std::string emphasised(const std::string& escaped, document::Role role);

}  // namespace basinwright::render
