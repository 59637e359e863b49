// The weather over the slots of one timeline, as calendars for the solver and as reasons.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/dates/calendar.hpp"
#include "basinwright/schedule/problem.hpp"
#include "basinwright/sequence/programme.hpp"
#include "basinwright/sequence/read_weather.hpp"
#include "basinwright/weather/outlook.hpp"
#include "setting.hpp"

namespace basinwright::sequence {

/// The gates of a programme held against its weather. Without weather everything is open.
class Outdoors {
 public:
  Outdoors(const ProgrammeQuestion& question,
           const dates::Timeline& timeline,
           const Setting& setting);

  [[nodiscard]] bool known() const { return setting_.conditions != nullptr; }
  [[nodiscard]] const weather::Conditions& conditions() const { return *setting_.conditions; }
  /// Gates; only where weather is known.
  [[nodiscard]] const weather::Outlook& coat() const { return *coat_; }
  /// Dry so long before a first coat that the shell is.
  [[nodiscard]] const weather::Outlook& dry_shell() const { return *dry_shell_; }
  /// The gate of a task of the chain; nothing when it has none.
  [[nodiscard]] const weather::Outlook* of_task(std::string_view task) const;

  /// Open slots of a base calendar under one of these gates (nothing: none).
  [[nodiscard]] schedule::Calendar under(const schedule::Calendar& base,
                                         const weather::Outlook* gate) const;
  /// Slots with rain, or nobody knows; empty without weather.
  [[nodiscard]] std::vector<char> wet() const;
  /// The worst of air and rain over a time; `missing` without weather.
  [[nodiscard]] weather::Quality rests_on(dates::Moment from, dates::Moment to) const;
  /// The hour the clock shows in a slot.
  [[nodiscard]] weather::HourNumber hour(schedule::Slot s) const {
    return table_->hours[static_cast<std::size_t>(s)];
  }

 private:
  [[nodiscard]] GateTable table(const dates::Timeline& timeline);
  [[nodiscard]] const std::vector<char>& open(const weather::Outlook& gate) const;
  void look_out(std::span<const weather::HourNumber> hours);
  [[nodiscard]] weather::Gate coat_gate() const;
  [[nodiscard]] weather::Gate rain_gate(units::Duration before, units::Duration after) const;

  const ProgrammeQuestion& q_;
  Setting setting_;
  std::shared_ptr<const GateTable> table_;
  std::optional<weather::Outlook> coat_, dry_shell_, dry_work_, etch_, dryness_test_;
};

/// All that a gate table follows from beside its conditions, as bytes.
[[nodiscard]] std::string gates_key(const ProgrammeQuestion& question, const Setting& setting);

/// Painting hours of each day of the timeline: the calendar's, or from first light.
[[nodiscard]] std::vector<dates::Hours> painting_hours(const ProgrammeQuestion& question, int days);

}  // namespace basinwright::sequence
