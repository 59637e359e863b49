#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// When a coat that was finished at a slot has cured.
///
/// Each quarter counts 1/warm at or above the warm mean, 1/cold at or below the cold one, in
/// proportion between, so that finishing later never cures earlier. A day's mean is that of the
/// weather where it is known, else its month's; a month whose mean nobody gave counts as cold.
class Cure {
 public:
  /// @param conditions the weather read, if any
  Cure(const ProgrammeQuestion& question,
       const dates::Timeline& timeline,
       const weather::Conditions* conditions);
  /// First slot at which the cure is complete; -1 beyond the horizon.
  [[nodiscard]] std::int32_t done(std::int32_t end) const;
  /// The same where a coat that ended before this one is cured at `since`, and not before.
  [[nodiscard]] std::int32_t done(std::int32_t end, std::int32_t since) const;
  /// Whether every day from `end` to there has a known temperature.
  [[nodiscard]] bool known(std::int32_t end, std::int32_t done) const;
  /// Whether any day between has its mean from the weather.
  [[nodiscard]] bool by_weather(std::int32_t end, std::int32_t done) const;

 private:
  struct Day {
    std::int32_t from = 0;    ///< Its first slot.
    bool known = false;       ///< Whether it has a temperature.
    bool by_weather = false;  ///< Whether that is the weather's mean.
  };
  /// The sum at which a coat that ends at a slot has cured.
  [[nodiscard]] double wanted(std::int32_t end) const;
  /// The days from one slot to before another.
  [[nodiscard]] std::span<const Day> between(std::int32_t end, std::int32_t done) const;

  std::vector<double> progress_;  ///< Sum before each slot.
  std::vector<Day> days_;
};

}  // namespace basinwright::sequence
