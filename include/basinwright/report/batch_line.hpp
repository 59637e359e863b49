// One line for each job of a batch.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "basinwright/document/document.hpp"
#include "basinwright/document/value.hpp"
#include "basinwright/report/pages.hpp"

namespace basinwright::report {

/// What became of one job of a batch.
struct Outcome {
  int status = 0;            ///< The exit status that it would have had alone.
  std::string job;           ///< Its file, or its line of the stream.
  std::size_t line = 0;      ///< Of the stream; 0 for a file.
  std::string digest;        ///< Of all that the outcome follows from.
  std::string fault;         ///< Why a file could not be read or written, or what broke.
  std::size_t problems = 0;  ///< Errors and warnings of the job file.
  /// The one to be told: the first error, else the first warning.
  std::string problem;
  std::size_t problem_line = 0, problem_column = 0;
  bool problem_is_error = false;
};

/// The outcome as an object whose members are the same for every job, null where there is nothing:
/// `status`, `outcome`, `job`, `number`, `currency`, `total`, `kits`, `start`, `refill_done`,
/// `problems`, `problem_line`, `problem_column`, `problem`, `digest`. Money is decimal text.
/// @param subject the plan, if there is one
[[nodiscard]] document::Object batch_line(const Outcome& outcome, const Subject* subject);

/// The same as a table of one row, whose column keys are the members.
[[nodiscard]] document::Document batch_row(const document::Object& line);

}  // namespace basinwright::report
