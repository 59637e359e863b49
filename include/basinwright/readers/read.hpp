// Files into values, with every problem in its place.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/job/job.hpp"
#include "basinwright/job/rate_book.hpp"
#include "basinwright/shell/pool.hpp"

namespace basinwright::readers {

/// A file already in memory; `name` is what its problems are reported under.
struct Input {
  std::string name;
  std::string bytes;
};

/// Reads a job file (JSON, UTF-8). Syntax, keys, types, units, limits, facts that clash and
/// geometry are all checked in one go; nothing comes back when there is an error.
[[nodiscard]] std::optional<job::Job> read_job(const Input& input, diagnostics::Problems& problems);

/// Reads a rate book; nothing comes back when there is an error.
[[nodiscard]] std::optional<job::RateBook> read_rate_book(const Input& input,
                                                          diagnostics::Problems& problems);

/// The built-in demonstration rate book: invented figures, and every page printed from it says so.
[[nodiscard]] Input demonstration_rates();

/// Reads one `pool` object standing alone, as in the reference rows.
[[nodiscard]] std::optional<shell::Pool> read_pool(const Input& input,
                                                   diagnostics::Problems& problems);

/// The place of the value at a JSON Pointer (RFC 6901); line 0 when there is none.
[[nodiscard]] diagnostics::Position place_of(const Input& input, std::string_view pointer);

}  // namespace basinwright::readers
