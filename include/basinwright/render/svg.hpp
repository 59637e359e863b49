// Drawings as scalable pictures.
#pragma once

#include <string>
#include <string_view>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// Every drawing of the page, in one SVG file (W3C, Scalable Vector Graphics): one sheet under
/// the other, in millimetres. Arcs stay arcs and texts stay texts; lengths have three decimals.
/// Nothing is fetched and no script is run; control characters are shown as `\xNN`.
/// @throws std::logic_error if the page has no drawing or a number is not finite
[[nodiscard]] std::string svg(const document::Document& document);

/// One drawing as an `svg` element, to stand inside another page.
/// @param prefix  Begins every identifier in it; different for each drawing of a page.
/// @throws std::logic_error if a number is not finite
[[nodiscard]] std::string svg_element(const document::Drawing& drawing, std::string_view prefix);

}  // namespace basinwright::render
