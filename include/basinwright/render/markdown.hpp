// Pages in Markdown with tables.
#pragma once

#include <string>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// The page in Markdown (CommonMark, with the tables of the GFM specification) that also reads well
/// as it stands: padded tables, one line a paragraph. Every text comes out as text: nothing in it
/// is taken for markup, and control characters are shown as `\xNN`. Values and keys are ignored.
/// @throws std::logic_error if a table's row has not one cell a column
[[nodiscard]] std::string markdown(const document::Document& document);

}  // namespace basinwright::render
