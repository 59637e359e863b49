// A record made ready once, for many questions under it.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "basinwright/weather/conditions.hpp"

namespace basinwright::sequence {

/// The slots that the gates of a programme leave open over one timeline, whatever the crew's hours:
/// 1 open, 0 closed.
struct GateTable {
  std::vector<weather::HourNumber> hours;  ///< What the clock shows in each slot.
  std::vector<char> coat, etch, dry_work, dryness_test, dry_shell;
};

/// The conditions of a record, and the gate tables asked for under them. May be asked by several
/// threads at once.
class ReadWeather {
 public:
  explicit ReadWeather(const weather::Record& record,
                       const sources::Sourced<units::Duration>& shell_lag)
      : conditions_(record, shell_lag) {}

  [[nodiscard]] const weather::Conditions& conditions() const { return conditions_; }
  /// The table remembered under a key, made when there is none.
  /// @param key everything beside the conditions that the table follows from
  [[nodiscard]] std::shared_ptr<const GateTable> gates(
      const std::string& key, const std::function<GateTable()>& make) const;

 private:
  static constexpr std::size_t most = 300;  // tables; 14 to 60 kB each

  weather::Conditions conditions_;
  mutable std::mutex lock_;
  mutable std::map<std::string, std::shared_ptr<const GateTable>> tables_;
};

}  // namespace basinwright::sequence
