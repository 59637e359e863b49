// Characters that a terminal or a viewer would obey, made into text that people can see.
#pragma once

#include <string>
#include <string_view>

namespace basinwright::render {

/// The text with control characters and bytes that are not UTF-8 as `\xNN`, and bidirectional
/// overrides and Unicode line separators as `\uNNNN`. A line feed (also after CR) stays a line
/// feed, a tab becomes a space.
[[nodiscard]] std::string visible(std::string_view text);

}  // namespace basinwright::render
