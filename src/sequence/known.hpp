// Answers that are remembered with what they hold for; private to the room.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// The first days of jobs and the lengths of their drains, in quarters, for which an answer holds;
/// the last are included.
struct Region {
  dates::Date start, last_start;
  std::int64_t drain = 0, longest_drain = 0;

  [[nodiscard]] bool holds(dates::Date day, std::int64_t quarters) const {
    return start <= day && day <= last_start && drain <= quarters && quarters <= longest_drain;
  }
};

/// An answer, where it holds, and the start of its fill, if it has dates.
struct Known {
  Region region;
  std::string_view answer;
  std::optional<dates::Moment> fill_start;
};

/// @param bytes must outlive the answer
[[nodiscard]] Known known_in(std::string_view bytes);
[[nodiscard]] std::string bytes_of(const Known& known);

/// What the same work from other first days and with other drains came to, for the search of one.
class Like {
 public:
  Like(dates::Date start, std::int64_t drain) : start_(start), drain_(drain) {}

  void met(const Known& known);
  [[nodiscard]] Likely likely() const;

 private:
  dates::Date start_;
  std::int64_t drain_;
  std::optional<bool> dates_;
  std::optional<dates::Moment> no_sooner_, others_;  ///< Fills.
};

}  // namespace basinwright::sequence
