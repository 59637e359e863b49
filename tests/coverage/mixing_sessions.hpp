// Random coat sessions for the mixing tests, the same on every machine.
#pragma once

#include <cstdint>
#include <random>
#include <vector>

#include "basinwright/coverage/mixing.hpp"
#include "mixing_simulation.hpp"

namespace sessions {

namespace coverage = basinwright::coverage;
namespace units = basinwright::units;

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  int whole(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }

 private:
  std::mt19937_64 engine_;
};

/// From a spa to a 50 m pool, one painter to twelve, cold mornings to hot ones.
inline coverage::MixingSession any(Random& random) {
  coverage::MixingSession s;
  s.area = units::square_metres(random.between(2, random.whole(0, 9) == 0 ? 1300 : 150));
  s.cover = units::square_metres(random.between(5, random.whole(0, 3) == 0 ? 90 : 30));
  s.rate = units::square_metres_per_hour(random.between(8, 35));
  s.painters = random.whole(1, random.whole(0, 3) == 0 ? 12 : 4);
  s.mixer = random.whole(0, 1) == 0 ? coverage::Mixer::apart : coverage::Mixer::painter;
  s.mixing = units::minutes(random.between(1, 12));
  s.induction = units::minutes(random.between(0, 20));
  s.reserve = units::minutes(random.between(0, 10));
  s.window = units::minutes(random.between(60, 300));
  s.pot_life.life.value = units::minutes(random.between(25, 120));
  s.pot_life.at.value = units::celsius(20);
  s.temperature = units::celsius(random.between(8, 36));
  return s;
}

inline simulation::Crew crew(const coverage::MixingSession& s) {
  return {s.area.in(units::square_metres),
          s.cover.in(units::square_metres),
          s.rate.in(units::square_metres_per_hour),
          s.painters,
          s.mixer == coverage::Mixer::painter,
          s.mixing.in(units::minutes),
          s.induction.in(units::minutes)};
}

inline std::vector<double> starts(const coverage::MixingTimetable& timetable) {
  std::vector<double> found;
  for (const coverage::Mix& mix : timetable.mixes) found.push_back(mix.start.in(units::minutes));
  return found;
}

}  // namespace sessions
