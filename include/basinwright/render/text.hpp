// Pages for a terminal, a log or a printer without a layout.
#pragma once

#include <string>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// How a terminal page may look.
struct TextOptions {
  int width = 80;       ///< Columns of the page; less than 20 counts as 20.
  bool colour = false;  ///< Terminal colours, for what a text means and nothing else.
  bool ascii = false;   ///< Nothing beyond ASCII.
};

/// The page in UTF-8 text. No line is wider than the options allow unless it holds a single number
/// that is; combining marks take no column and East Asian wide characters two. Numbers are never
/// cut. The title stands over a rule, then the notices, the sections, and the bottom line last.
/// Control characters and bytes that are not UTF-8 are shown as `\xNN`. Values and keys are
/// ignored.
/// @throws std::logic_error if a table's row has not one cell a column
[[nodiscard]] std::string text(const document::Document& document, const TextOptions& options = {});

}  // namespace basinwright::render
