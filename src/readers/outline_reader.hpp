#pragma once

#include "basinwright/shell/pool.hpp"
#include "basinwright/shell/take_off.hpp"
#include "view.hpp"

namespace basinwright::readers {

/// The outline of a pool object; nothing when a measure is missing or wrong.
[[nodiscard]] std::optional<shell::Outline> outline_of(View& pool);

/// A list of [x, y, bulge].
[[nodiscard]] std::optional<std::vector<shell::PathPoint>> path_points(View& view,
                                                                       std::string_view key);

}  // namespace basinwright::readers
