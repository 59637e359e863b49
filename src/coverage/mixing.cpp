#include "basinwright/coverage/mixing.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "basinwright/coverage/coats.hpp"
#include "mixing_work.hpp"

namespace basinwright::coverage {
namespace {

using units::Area;
using units::Duration;

constexpr double most_kits = 1e6;

template <class Q>
bool is_positive(Q quantity) {
  return quantity > Q() && std::isfinite(quantity.si());
}
bool is_time(Duration time) {
  return time >= Duration() && std::isfinite(time.si());
}

void check_session(const MixingSession& s) {
  if (!is_positive(s.area) || !is_positive(s.cover) || !is_positive(s.rate) || s.painters < 1) {
    throw std::invalid_argument("mixing_timetable: area, cover, rate and painters above 0");
  }
  if (!is_time(s.mixing) || !is_time(s.induction) || !is_time(s.reserve) || !is_time(s.window)) {
    throw std::invalid_argument("mixing_timetable: times of 0 or more");
  }
  if (!(s.area / s.cover <= most_kits)) {
    throw std::invalid_argument("mixing_timetable: at most 1,000,000 kits");
  }
}

std::vector<Mix> mixes_of(const MixingSession& session, const MixingTimetable& timetable) {
  std::vector<Mix> mixes;
  for (std::int64_t k = 0; k < timetable.kits; ++k) {
    const bool last = k + 1 == timetable.kits;
    const auto before = static_cast<double>(k);
    Mix mix;
    mix.number = static_cast<int>(k) + 1;
    mix.ready = timetable.kit_time * before;
    mix.start = mix.ready - timetable.lead;
    mix.stirred = mix.start + session.mixing;
    mix.empty = last ? timetable.finish : timetable.kit_time * (before + 1.0);
    if (timetable.pot_life) mix.use_by = mix.start + *timetable.pot_life;
    mix.area = last ? session.area - session.cover * before : session.cover;
    mixes.push_back(mix);
  }
  return mixes;
}

void set_conditions(MixingTimetable& timetable,
                    const MixingSession& session,
                    const MixingWork& work) {
  timetable.pot_life = pot_life_at(session.pot_life, session.temperature);
  if (timetable.pot_life) {
    timetable.usable = *timetable.pot_life - timetable.lead - session.reserve;
    timetable.painters_for_pot_life = painters_within(work.oldest, session, *timetable.usable);
  }
  timetable.painters_for_window = painters_within(work.session, session, session.window);
  // Held against the counts, so that the crew a timetable asks for always passes.
  const auto enough = [&](const std::optional<std::int64_t>& needed) {
    return needed && session.painters >= *needed;
  };
  timetable.pot_life_ok = enough(timetable.painters_for_pot_life);
  timetable.window_ok = enough(timetable.painters_for_window);
  timetable.mixers = mixers_for(session, timetable.kits, session.painters);
  timetable.one_mixer_ok = timetable.mixers == 1;
}

}  // namespace

MixingTimetable mixing_timetable(const MixingSession& session) {
  check_session(session);
  MixingTimetable result;
  // A sliver within the slack of no kit at all still takes one.
  result.kits = std::max<std::int64_t>(1, whole_kits(session.area, session.cover));
  const MixingWork work = work_of(session, result.kits);
  const units::WorkRate crew = session.rate * static_cast<double>(session.painters);
  const auto further = static_cast<double>(result.kits - 1);
  result.kit_time = work.kit / crew;
  result.lead = session.mixing + session.induction;
  result.worst_age = result.lead + work.oldest / crew;
  result.finish = work.session / crew;
  result.waste = std::max(Area(), session.cover * static_cast<double>(result.kits) - session.area);
  result.kits_in_pipeline = kits_at_once(result.lead / result.kit_time, result.kits);
  result.lazy_wait = result.lead * further;
  set_conditions(result, session, work);
  result.mixes = mixes_of(session, result);
  result.obstacles = obstacles_of(session, result);
  return result;
}

}  // namespace basinwright::coverage
