// How a page looks on a screen and on paper.
#pragma once

#include <string>
#include <string_view>

#include "basinwright/document/drawing.hpp"

namespace basinwright::render {

/// The style sheet of a page, its paper's size in it.
/// @param foot  stands at the foot of each printed sheet, so that loose ones find home; cut where
/// it
///              would not fit on a line
[[nodiscard]] std::string html_style(document::Paper paper, std::string_view foot);

}  // namespace basinwright::render
