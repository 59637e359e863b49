// Programmes found before, for many jobs one after the other.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <unordered_map>

#include "basinwright/sequence/programme.hpp"
#include "basinwright/sequence/read_weather.hpp"

namespace basinwright::sequence {

/// Remembers programmes by everything they follow from. Amounts of work and water count only as the
/// whole quarter hours that they come to, so that pools of about one size share a programme. May be
/// asked by several threads at once; what it answers never depends on what it remembers.
class Memory {
 public:
  /// @param most programmes held at once, 1 or more; about 10 kB each
  explicit Memory(std::size_t most = 500) : most_(most) {}

  /// What `programme(question)` returns. A job that has begun is not remembered.
  /// @param weather the number of the question's record: of all records that this memory is asked
  ///                about no two may share one; 0 without a record
  [[nodiscard]] Programme programme(const ProgrammeQuestion& question, std::uint64_t weather);

 private:
  [[nodiscard]] std::shared_ptr<const ReadWeather> read(const SiteWeather& weather,
                                                        std::uint64_t number);

  std::size_t most_;
  std::mutex lock_;
  /// Those asked for lately, and those before them: when the first are too many the others go.
  std::unordered_map<std::string, Programme> late_, early_;
  std::map<std::string, std::shared_ptr<const ReadWeather>> read_;  ///< By number and rules.
};

}  // namespace basinwright::sequence
