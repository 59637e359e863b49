// One cell of a CSV file.
#pragma once

#include <string>
#include <string_view>

#include "basinwright/document/value.hpp"

namespace basinwright::render {

/// A text with an apostrophe in front if a spreadsheet would take it for a formula; decimal numbers
/// stay bare.
[[nodiscard]] std::string guarded(std::string_view text);

/// A field in quotes, with those inside it doubled, if it holds a quote, a comma or a line break.
[[nodiscard]] std::string quoted(std::string_view field);

/// A value as one field, not yet quoted.
/// @throws std::logic_error if a number is not finite
[[nodiscard]] std::string csv_field(const document::Value& value);

}  // namespace basinwright::render
