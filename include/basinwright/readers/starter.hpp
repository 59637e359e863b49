// A first job file from a few answers, for whoever has a tape and no file yet.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/readers/read.hpp"

namespace basinwright::readers {

/// One thing a starter file is made from. Meaning, choices and limits are those of its row in the
/// field table.
struct StarterQuestion {
  std::string key;                   ///< Its name among the answers, such as `corner-radius`.
  std::string words;                 ///< What is asked.
  std::string pointer;               ///< Where the answer stands in the file (RFC 6901).
  std::vector<std::string> choices;  ///< The only answers there are; empty: any.
  bool is_measure = false;           ///< A length, with its unit or bare.
  bool is_size = false;              ///< One of the outline's measurements.
};

/// What was answered, by key. An answer left out, or empty, was not given.
using Answers = std::map<std::string, std::string>;

/// Every question, in the order in which they are best asked.
[[nodiscard]] std::vector<StarterQuestion> starter_questions();

/// The keys of the measurements that an outline needs, in order; empty for an unknown outline.
[[nodiscard]] std::vector<std::string> starter_sizes(std::string_view outline);

/// The job file: what was answered, and beside it, empty or not done, what is asked next. A floor
/// with a shallow and a deep end slopes evenly from end to end along x.
/// The answers are taken as they are; whether the file can be read, `read_job` says.
[[nodiscard]] std::string starter_job(const Answers& answers);

}  // namespace basinwright::readers
