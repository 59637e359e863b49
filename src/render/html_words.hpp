// What an HTML page says of itself; all else it says comes from the document.
#pragma once

#include <string_view>

namespace basinwright::render::words {

inline constexpr std::string_view past_the_contents = "Past the contents";
inline constexpr std::string_view on_this_page = "On this page";
inline constexpr std::string_view how = "how";
inline constexpr std::string_view to_tick = "to tick";
inline constexpr std::string_view to_fill_in = "to fill in";

}  // namespace basinwright::render::words
