// Work, orders and hold points as a calendar takes them.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace basinwright::document {

/// What a calendar does with an entry.
enum class EntryKind {
  work,      ///< A stretch of time.
  to_do,     ///< Done by a time, at its end.
  deadline,  ///< A moment that must not pass; rings before it.
};

/// Where an entry stands; only a job that has begun knows more than `open`.
enum class EntryState { open, done, cancelled };

/// One entry. Times are ISO 8601, local: `2027-05-03T07:00`, or `2027-05-03` for a whole day.
struct Entry {
  EntryKind kind = EntryKind::work;
  std::string uid;  ///< The same for the same thing on every run, so that it is updated.
  std::string summary;
  std::string description;
  std::string location;
  std::string start;        ///< Empty for what is to be done.
  std::string end;          ///< Of a whole day: the day after the last.
  int minutes_before = 60;  ///< Of a deadline: when it rings.
  EntryState state = EntryState::open;
};

struct Agenda {
  std::string stamp;  ///< The day the entries were made, ISO 8601.
  std::vector<Entry> entries;
  /// Of two calendars with the same entries the higher one is the newer.
  std::int64_t sequence = 0;
};

}  // namespace basinwright::document
