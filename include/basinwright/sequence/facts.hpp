// What has really been done, for a programme of the rest.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::sequence {

/// One task, or one section of it.
struct Done {
  std::string task, section;
  dates::Moment start;
  dates::Moment end;     ///< Of the last work on it; of work going on, ignored.
  double share = 1.0;    ///< Of it, 0 to 1; 1: finished.
  bool running = false;  ///< Going on: taken to be finished as long as planned.
  bool assumed = false;  ///< Nobody recorded it, but later work shows that it was done.
};

/// Where a task stood in the programme until now.
struct Before {
  std::string task, section;
  dates::Moment start;
};

struct Past {
  dates::Moment now;
  std::vector<Done> done;
  std::vector<Before> before;  ///< The programme until now; may be empty.
  bool look_ahead = false;     ///< Find out what may be begun next.
  bool rounded = false;        ///< Some time of a coat was no quarter hour and was rounded up.
};

/// Days that a job first worked on at `start` has been in hand; none without a past, and ten years
/// at most: longer is a slip of a date, and has no dates.
[[nodiscard]] inline int days_in_hand(dates::Date start, const std::optional<Past>& past) {
  constexpr std::int64_t most = 3653;
  if (!past) return 0;
  return static_cast<int>(std::clamp<std::int64_t>((past->now.date() - start).count(), 0, most));
}

/// What a lost recoat window costs: abrading and cleaning a section. How soon after it the next
/// coat may and must follow is a wait.
struct ReworkRules {
  std::vector<units::Duration> person_hours;  ///< One a section.
  int people = 1;
  bool on_purpose = false;  ///< The data sheet allows a window to be missed for an earlier refill.
  units::Duration clean_again;  ///< Person-hours to clean an etched shell again.
};

/// What the past made necessary.
struct Lost {
  std::vector<std::string> sections;  ///< Whose recoat window is lost: abraded and cleaned first.
  bool etch = false;                  ///< The etch holds no longer: cleaned again.
  bool reserve = false;   ///< A window is only met without the half hour kept in hand at its ends.
  bool together = false;  ///< Each window could be kept alone, not all of them together.
  [[nodiscard]] bool anything() const { return etch || !sections.empty(); }
};

}  // namespace basinwright::sequence
