// The crews file of a season: who works when, the ways between sites, what was promised.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "basinwright/job/season.hpp"
#include "basinwright/readers/field.hpp"
#include "basinwright/readers/read.hpp"

namespace basinwright::readers {

/// The keys of a crews file.
[[nodiscard]] std::span<const Field> crews_fields();

/// A job of the season as its command line has it.
struct NamedJob {
  std::string file;    ///< The path.
  std::string number;  ///< In its heading; may be empty.
};

/// Reads a crews file into a question whose jobs are `jobs` in their order, without what the job
/// files hold. A job is named by its number, its path or its file's name; names that are no job's,
/// or more than one's, are refused. Nothing comes back when there is an error.
/// @param currency of amounts
[[nodiscard]] std::optional<job::SeasonQuestion> read_crews(const Input& input,
                                                            const std::vector<NamedJob>& jobs,
                                                            const money::Currency& currency,
                                                            diagnostics::Problems& problems);

}  // namespace basinwright::readers
