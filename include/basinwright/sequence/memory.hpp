// Programmes found before, for many jobs one after the other.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>

#include "basinwright/sequence/programme.hpp"
#include "basinwright/sequence/read_weather.hpp"

namespace basinwright::sequence {

/// Remembers programmes by everything they follow from. Amounts of work and water count only as the
/// whole quarter hours that they come to, so that pools of about one size share a programme, and
/// one programme serves every length of the fill, and every start and drain that leave it the best.
/// May be asked by several threads at once; what it answers never depends on what it remembers.
class Memory {
 public:
  /// @param room bytes for programmes, taken as soon as there are a hundred; one takes some 300
  explicit Memory(std::size_t room = usual_room);
  ~Memory();
  Memory(const Memory&) = delete;
  Memory& operator=(const Memory&) = delete;

  /// What `programme(question)` returns; only the record made ready is remembered.
  /// @param weather the number of the question's record: of all records that this memory is asked
  ///                about no two may share one; 0 without a record
  [[nodiscard]] Programme programme(const ProgrammeQuestion& question, std::uint64_t weather);

  /// The same without what kept bookings from starting earlier and what they rest on: remembered,
  /// unless the job has begun or reasons are asked for.
  [[nodiscard]] Programme brief(const ProgrammeQuestion& question, std::uint64_t weather);

  /// How many brief programmes were not remembered, and looked for.
  [[nodiscard]] std::size_t looked_for() const;

  static constexpr std::size_t usual_room = 12 << 20;

 private:
  struct Store;
  std::unique_ptr<Store> store_;
};

}  // namespace basinwright::sequence
