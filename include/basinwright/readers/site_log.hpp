// The site log: one JSON object a line, in UTF-8, added to and never rewritten.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/readers/field.hpp"
#include "basinwright/readers/read.hpp"
#include "basinwright/sitelog/entry.hpp"

namespace basinwright::readers {

/// The keys of an entry.
[[nodiscard]] std::span<const Field> site_log_fields();

/// What the words of an entry may be in one job.
struct KnownWords {
  std::vector<std::string> tasks, sections, holds;
};

/// Reads a site log. Empty lines are passed over. A last line that was cut off in writing is left
/// out with a warning; a whole last line without its end counts. Entries that cannot have happened
/// are errors, both places shown. Nothing comes back when there is an error.
[[nodiscard]] std::optional<sitelog::Log> read_site_log(const Input& input,
                                                        diagnostics::Problems& problems);

/// Reads one entry by itself; tasks, sections and hold points that are none of the job's are
/// refused.
[[nodiscard]] std::optional<sitelog::Entry> read_entry(const Input& input,
                                                       const KnownWords& known,
                                                       diagnostics::Problems& problems);

/// Where a new entry stands: the time now, the name of the log, and its own line.
struct NewEntry {
  dates::Minute now;
  std::string log_name, line;
};

/// Whether an entry can follow a log: not in the future, and nothing that cannot have happened.
[[nodiscard]] bool fits_log(const sitelog::Log& log,
                            const sitelog::Entry& entry,
                            const NewEntry& at,
                            diagnostics::Problems& problems);

/// Where the whole lines of a log end: the bytes after it are a line cut off in writing. A whole
/// entry that only lacks its end of line counts as whole.
[[nodiscard]] std::size_t whole_bytes(const std::string& bytes);

/// An entry as its line of the log, without the end of line, from keys and values as texts:
/// numbers where the key takes a number, texts elsewhere.
[[nodiscard]] std::string entry_line(
    const std::vector<std::pair<std::string, std::string>>& values);

/// Whether the keys of a text that is one JSON object hold `at`; false when it is none.
[[nodiscard]] bool has_time(const std::string& line);

/// The object with `at` put first.
[[nodiscard]] std::string with_time(const std::string& line, dates::Minute at);

}  // namespace basinwright::readers
