// Parts of a JSON Pointer: where in a file a value is given.
#pragma once

#include <string>
#include <string_view>

namespace basinwright::sources {

/// A name as a part of a JSON Pointer: `~` as `~0` and `/` as `~1` (RFC 6901, section 3).
[[nodiscard]] std::string pointer_part(std::string_view name);

}  // namespace basinwright::sources
