// One value in JSON, for formats that have no lists of their own.
#pragma once

#include <string>

#include "basinwright/document/value.hpp"

namespace basinwright::render {

/// The value on one line.
/// @throws std::logic_error if a number is not finite or a key comes twice
[[nodiscard]] std::string json_line(const document::Value& value);

}  // namespace basinwright::render
