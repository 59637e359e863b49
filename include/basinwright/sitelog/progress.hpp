// What the entries prove: how far each task is, and which of them cannot be.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/sitelog/entry.hpp"

namespace basinwright::sitelog {

/// Abrading and cleaning a section whose recoat window was lost, and cleaning an etched shell
/// again: the tasks of a log that no route has, and that may be done more than once.
inline constexpr std::string_view rework_task = "rework";
inline constexpr std::string_view clean_again_task = "clean-again";
[[nodiscard]] bool is_again(std::string_view task);

/// One task, or one section of it.
struct Progress {
  std::string task, section;
  dates::Minute start;
  std::optional<dates::Minute> end;  ///< Of the last work on it; nothing while it goes on.
  double share = 0.0;                ///< Done, 0 to 1; 1: finished.
  bool finished = false;
  [[nodiscard]] bool running() const { return !end; }
};

/// In the order of their first start.
[[nodiscard]] std::vector<Progress> progress(const Log& log);

/// The progress of one task and section; of several, the last.
[[nodiscard]] const Progress* find(const std::vector<Progress>& all,
                                   std::string_view task,
                                   std::string_view section);

/// The coat under a coat: `coat-1` or `prime` under `coat-2`'s and `coat-1`'s; empty when nothing
/// is painted under it.
[[nodiscard]] std::string coat_below(std::string_view task);
[[nodiscard]] bool is_coat(std::string_view task);

/// An entry that cannot be, and the one that it contradicts.
struct Impossible {
  std::size_t entry = 0;  ///< Index in the log.
  std::optional<std::size_t> other = {};
  std::string what, hint;
};

/// Ten years in minutes: no pool is so long in painting, and a slip of a year is common.
inline constexpr std::int64_t longest_job = 10LL * 366 * 24 * 60;

/// Every entry that cannot have happened: finished before it started, started twice, a coat on a
/// section whose coat below is not finished, less done than before, years after the first.
[[nodiscard]] std::vector<Impossible> impossible(const Log& log);

}  // namespace basinwright::sitelog
