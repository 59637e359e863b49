// Pages for a browser and a printer.
#pragma once

#include <string>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// How a page is printed.
struct HtmlOptions {
  document::Paper paper = document::Paper::a4;
};

/// The page as one HTML file (WHATWG HTML) that needs nothing else: no script is run and nothing is
/// fetched, and a policy in it forbids both. Made for WCAG 2.2 at AA: one `h1`, headings in order,
/// tables with caption and scope, nothing said by colour alone, readable at 320 px. Printed, rows
/// stay whole, headers come again on each page, and a drawing as large as the paper takes a page of
/// its own, to scale. A folded section whose key is a number's (its section's, a dot, its own)
/// opens beside that number. Every text comes out as text; control characters are shown as `\xNN`.
/// Values and keys are ignored.
/// @throws std::logic_error if a table's row has not one cell a column or a number of a drawing is
/// not finite
[[nodiscard]] std::string html(const document::Document& document, const HtmlOptions& options = {});

}  // namespace basinwright::render
