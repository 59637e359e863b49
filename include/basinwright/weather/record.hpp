// The weather of a site hour by hour, each value with how well it is known.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::weather {

/// How well a value is known; the better beats the worse.
enum class Quality { missing, climatology, forecast, observed };

/// A value of one hour.
template <class T>
struct Reading {
  T value{};
  Quality quality = Quality::missing;
};

/// One clock hour. What nobody said is empty, and empty is never taken for dry or mild.
struct Hour {
  std::optional<Reading<units::Temperature>> air;
  std::optional<Reading<units::Temperature>> dew_point;
  std::optional<Reading<units::Temperature>> shell;  ///< Measured on the shell.
  std::optional<Reading<double>> humidity;           ///< Relative, 0 to 1.
  std::optional<Reading<units::Length>> rain;        ///< Fallen in the hour.
  std::optional<Reading<units::Speed>> wind;
  std::optional<Reading<double>> cloud;  ///< Share of the sky, 0 to 1.
};

/// Clock hours since 1970-01-01T00:00 local, as a wall clock shows them.
using HourNumber = std::int64_t;
[[nodiscard]] HourNumber hour_of(dates::Moment moment);

/// Hours in one unbroken run; an hour inside it may still be empty.
class Record {
 public:
  /// Puts in what is known of an hour: value by value, the better quality wins, and of equals the
  /// later call.
  void put(HourNumber hour, const Hour& known);
  /// An empty hour where nothing was put.
  [[nodiscard]] const Hour& at(HourNumber hour) const;
  [[nodiscard]] bool empty() const { return hours_.empty(); }
  /// First hour put in, and one past the last.
  [[nodiscard]] HourNumber from() const { return from_; }
  [[nodiscard]] HourNumber until() const { return from_ + static_cast<HourNumber>(hours_.size()); }
  /// The span of forecast and observed hours alone; empty (from == until) when there are none.
  /// Inside it an unknown value closes the hour; past it climatology may speak, or nobody.
  [[nodiscard]] HourNumber covered_from() const { return covered_from_; }
  [[nodiscard]] HourNumber covered_until() const { return covered_until_; }

 private:
  HourNumber from_ = 0;
  HourNumber covered_from_ = 0;
  HourNumber covered_until_ = 0;
  std::vector<Hour> hours_;
};

}  // namespace basinwright::weather
