// Local times to the minute, as a site log writes them.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "basinwright/dates/date.hpp"

namespace basinwright::dates {

/// A local time to the minute; a `Moment` lies on quarter hours.
class Minute {
 public:
  constexpr Minute() = default;
  /// @param since_epoch minutes since 1970-01-01T00:00 local
  constexpr explicit Minute(std::int64_t since_epoch) : minutes_(since_epoch) {}
  constexpr Minute(Moment moment) : minutes_(moment.quarters() * minutes_in_quarter) {}

  /// Minutes since 1970-01-01T00:00 local.
  [[nodiscard]] constexpr std::int64_t minutes() const { return minutes_; }
  /// The quarter hour at or before it, and at or after it.
  [[nodiscard]] Moment down() const;
  [[nodiscard]] Moment up() const;
  [[nodiscard]] Date date() const { return down().date(); }
  friend constexpr auto operator<=>(Minute, Minute) = default;

 private:
  static constexpr std::int64_t minutes_in_quarter = 15;
  std::int64_t minutes_ = 0;
};

/// Reads `YYYY-MM-DDTHH:MM`; nothing when it is no such time.
[[nodiscard]] std::optional<Minute> parse_minute(std::string_view text);
/// `YYYY-MM-DDTHH:MM`.
[[nodiscard]] std::string iso(Minute minute);
/// `HH:MM`.
[[nodiscard]] std::string clock(Minute minute);

}  // namespace basinwright::dates
