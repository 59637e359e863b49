// The job file and the rate book key by key, made from the table the readers use.
#pragma once

#include <string>

namespace basinwright::readers {

/// docs/jobfile.md: every key with its kind, limits, default and meaning, in Markdown.
[[nodiscard]] std::string key_page();

}  // namespace basinwright::readers
