// One value of a job file changed in its text, as `--set /coating/coats=3` asks.
#pragma once

#include <optional>
#include <string>

#include "basinwright/readers/read.hpp"

namespace basinwright::readers {

/// A place as a JSON Pointer (RFC 6901) and what to put there: JSON, or else a bare text.
struct Change {
  std::string pointer;
  std::string value;
};

/// The file with the change made and everything else as it was. Objects on the way that are not
/// there are made; `-` or the index past the end adds to a list (RFC 6902, section 4.1).
/// Nothing when the file is no JSON, or the pointer leads through something that holds nothing.
[[nodiscard]] std::optional<std::string> with_change(const Input& input, const Change& change);

}  // namespace basinwright::readers
