// How a page looks on a screen and on paper.
#pragma once

#include <string>

#include "basinwright/document/drawing.hpp"

namespace basinwright::render {

/// The style sheet of a page, its paper's size in it.
[[nodiscard]] std::string html_style(document::Paper paper);

}  // namespace basinwright::render
