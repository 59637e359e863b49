// Working days, hours and painting hours, and elapsed time under a local clock that jumps.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "basinwright/dates/date.hpp"

namespace basinwright::dates {

/// From and to, in quarters from midnight.
struct Hours {
  int from = 0;
  int to = 0;
  friend constexpr bool operator==(const Hours&, const Hours&) = default;
};

/// A jump of the local clock: when it would show `at`, it is moved by `minutes` (60 in spring,
/// -60 in autumn).
struct ClockChange {
  Moment at;
  int minutes = 0;
};

/// When the crew works and when it may paint.
struct WorkCalendar {
  std::array<bool, 7> working{true, true, true, true, true, false, false};  ///< Monday first.
  Hours hours{7 * 4, 16 * 4};
  std::vector<Date> closed;
  Hours painting{8 * 4, 11 * 4};
  std::array<std::optional<Hours>, 12> painting_by_month;  ///< January first.
  /// Months in which painting may begin at first light, where that is known and earlier.
  std::array<bool, 12> from_first_light{};
  std::vector<ClockChange> clock_changes;

  [[nodiscard]] bool works_on(Date day) const;
  [[nodiscard]] Hours painting_hours(Date day) const;
};

/// Elapsed quarter hours from a day's midnight: slot s is [s, s+1). A day on which the clock jumps
/// has 92 or 100 of them.
class Timeline {
 public:
  /// @param days calendar days covered, at least 1
  Timeline(Date start, int days, std::span<const ClockChange> changes);
  [[nodiscard]] std::int32_t size() const { return static_cast<std::int32_t>(moments_.size()); }
  /// What the clock shows when slot `s` begins; `s` may be `size()`, the end.
  [[nodiscard]] Moment moment(std::int32_t s) const;
  /// Ascending day numbers, 0 on the first day.
  [[nodiscard]] std::int32_t day(std::int32_t s) const {
    return s >= size() ? end_day_ : days_[static_cast<std::size_t>(s)];
  }
  /// That of every slot.
  [[nodiscard]] const std::vector<std::int32_t>& days() const { return days_; }
  [[nodiscard]] Date date(std::int32_t s) const { return moment(s).date(); }
  /// The first slot at which the clock shows `when` or later.
  [[nodiscard]] std::int32_t slot(Moment when) const;

 private:
  std::vector<Moment> moments_;
  std::vector<std::int32_t> days_;
  Moment end_;
  std::int32_t end_day_ = 0;
};

/// Slots in which the crew works: its hours on its days, the last `clean_up` quarters of each day
/// left out.
[[nodiscard]] std::vector<char> work_slots(const Timeline& timeline,
                                           const WorkCalendar& calendar,
                                           int clean_up);

/// Slots in which the calendar allows painting: painting hours on working days, but not before
/// `ready` quarters from the crew's start, or from first light where painting begins before it.
[[nodiscard]] std::vector<char> painting_slots(const Timeline& timeline,
                                               const WorkCalendar& calendar,
                                               int ready);

/// The same with the painting hours of each day of the timeline, the first day's first.
[[nodiscard]] std::vector<char> painting_slots(const Timeline& timeline,
                                               const WorkCalendar& calendar,
                                               int ready,
                                               std::span<const Hours> by_day);

}  // namespace basinwright::dates
