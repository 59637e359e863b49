#include "mixing_work.hpp"

namespace basinwright::coverage {
namespace {

using units::Area;
using units::Duration;

Obstacle unknown_pot_life(const MixingSession& session) {
  Obstacle obstacle;
  obstacle.what = Hindrance::pot_life_unknown;
  const std::vector<PotLifePoint>& table = session.pot_life.table;
  if (session.temperature > table.back().temperature) {
    obstacle.no_warmer_than = table.back().temperature;
  } else {
    obstacle.no_colder_than = table.front().temperature;
  }
  return obstacle;
}

void ask_for_painters(Obstacle& obstacle,
                      const MixingSession& session,
                      std::int64_t kits,
                      const std::optional<std::int64_t>& painters) {
  obstacle.painters = painters;
  if (painters) obstacle.mixers = mixers_for(session, kits, *painters);
}

/// The largest kit the crew rolls out in the time, if its mixer keeps up with kits of that size.
std::optional<Area> largest_cover(const MixingSession& session, Duration usable) {
  const Area cover =
      session.rate * static_cast<double>(session.painters) * usable - lost_to_mixing(session);
  const bool keeps_up = session.mixer == Mixer::painter || session.mixing <= usable;
  if (!(cover > Area()) || !keeps_up) return std::nullopt;
  return cover;
}

Obstacle short_pot_life(const MixingSession& session, const MixingTimetable& timetable) {
  Obstacle obstacle;
  const Duration needed = timetable.worst_age + session.reserve;
  obstacle.short_by = needed - *timetable.pot_life;
  obstacle.no_warmer_than = warmest_for(session.pot_life, needed);
  if (!(*timetable.usable > Duration())) {
    obstacle.what = Hindrance::pot_life_gone;
    return obstacle;
  }
  obstacle.what = Hindrance::pot_life_short;
  ask_for_painters(obstacle, session, timetable.kits, timetable.painters_for_pot_life);
  obstacle.cover = largest_cover(session, *timetable.usable);
  return obstacle;
}

Obstacle short_window(const MixingSession& session, const MixingTimetable& timetable) {
  Obstacle obstacle;
  obstacle.what = Hindrance::window_short;
  obstacle.short_by = timetable.finish - session.window;
  ask_for_painters(obstacle, session, timetable.kits, timetable.painters_for_window);
  return obstacle;
}

Obstacle short_mixer(const MixingSession& session, const MixingTimetable& timetable) {
  Obstacle obstacle;
  obstacle.what = Hindrance::mixer_short;
  obstacle.short_by = session.mixing - timetable.kit_time;
  obstacle.mixers = timetable.mixers;
  return obstacle;
}

}  // namespace

std::vector<Obstacle> obstacles_of(const MixingSession& session, const MixingTimetable& timetable) {
  std::vector<Obstacle> found;
  if (!timetable.pot_life) {
    found.push_back(unknown_pot_life(session));
  } else if (!timetable.pot_life_ok) {
    found.push_back(short_pot_life(session, timetable));
  }
  if (!timetable.window_ok) found.push_back(short_window(session, timetable));
  // Painters who mix themselves send a second one; their loss is in the rate already.
  if (!timetable.one_mixer_ok && session.mixer == Mixer::apart) {
    found.push_back(short_mixer(session, timetable));
  }
  return found;
}

}  // namespace basinwright::coverage
