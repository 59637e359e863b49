// When each kit of a coat is mixed, and whether the crew can use it up in time.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "basinwright/coverage/pot_life.hpp"
#include "basinwright/materials/coating_system.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::coverage {

/// Who mixes: somebody who does not paint, or a painter, who paints nothing meanwhile.
enum class Mixer { apart, painter };

/// One coat of one section in one morning, and the crew that paints it.
struct MixingSession {
  units::Area area;      ///< Above 0.
  units::Area cover;     ///< Of a kit, losses taken off; above 0.
  units::WorkRate rate;  ///< Of one painter, cutting in included; above 0.
  int painters = 2;
  Mixer mixer = Mixer::apart;
  units::Duration mixing = materials::usual_mixing.value;
  units::Duration induction;
  units::Duration reserve = materials::usual_reserve.value;
  units::Duration window;  ///< From the opening, in which all must be painted.
  PotLife pot_life;
  units::Temperature temperature;  ///< Of the mixed paint, at its warmest in the session.
};

/// One kit; times count from the opening of the painting window, so the first start is negative.
struct Mix {
  int number = 1;
  units::Duration start;                  ///< Of mixing.
  units::Duration stirred;                ///< Induction begins.
  units::Duration ready;                  ///< End of induction; the kit before it has run out.
  units::Duration empty;                  ///< Rolled out.
  std::optional<units::Duration> use_by;  ///< End of its pot life; nothing when that is unknown.
  units::Area area;                       ///< What it covers.
};

/// Why a session cannot work as given.
enum class Hindrance {
  pot_life_unknown,  ///< The data sheet's table does not reach this temperature.
  pot_life_gone,     ///< Nothing is left of it after mixing, induction and reserve.
  pot_life_short,    ///< A kit lasts longer than its usable time.
  window_short,      ///< The coat lasts longer than the window.
  mixer_short        ///< A kit is painted out faster than one mixer mixes the next.
};

/// What is in the way and what would remove it, each remedy alone; a remedy that would not, or that
/// would not be enough, is nothing.
struct Obstacle {
  Hindrance what = Hindrance::pot_life_unknown;
  units::Duration short_by;              ///< Time that is missing; of a window, opening earlier.
  std::optional<std::int64_t> painters;  ///< The fewest who would do.
  std::optional<std::int64_t> mixers;    ///< Mixers those painters, or the given ones, keep busy.
  std::optional<units::Area> cover;      ///< The largest kit that would do, by what it covers.
  std::optional<units::Temperature> no_warmer_than;  ///< An earlier hour with paint no warmer.
  std::optional<units::Temperature> no_colder_than;  ///< A later hour; only off a table's cold end.
};

/// The timetable, kept whether it works or not.
struct MixingTimetable {
  std::int64_t kits = 0;
  units::Duration kit_time;                 ///< A whole kit lasts so long while the next is mixed.
  units::Duration lead;                     ///< From the start of a mix to its use.
  std::optional<units::Duration> pot_life;  ///< At the session's temperature.
  std::optional<units::Duration> usable;    ///< For rolling a kit out; may be negative.
  units::Duration worst_age;                ///< Of paint going on the wall, from its mixing.
  units::Duration finish;                   ///< Of the coat, from the opening.
  std::vector<Mix> mixes;
  units::Area waste;                  ///< What the rest of the last kit would have covered.
  std::int64_t kits_in_pipeline = 1;  ///< Most kits mixed or standing at once.
  std::int64_t mixers = 1;            ///< Most kits being mixed at once.
  std::optional<std::int64_t> painters_for_pot_life;  ///< Nothing: no crew is fast enough.
  std::optional<std::int64_t> painters_for_window;    ///< Likewise.
  bool pot_life_ok = false;
  bool window_ok = false;
  bool one_mixer_ok = false;
  units::Duration lazy_wait;        ///< Lost by mixing only when the last kit has run out.
  std::vector<Obstacle> obstacles;  ///< In the order of `Hindrance`; empty when it works.
  [[nodiscard]] bool works() const { return obstacles.empty(); }
};

/// The mixing timetable, just in time: no kit waits for the painters, no painter for a kit.
///
/// With N = ceil(area / cover) kits, n painters of rate r and rho = n r: a kit lasts
/// tau = cover / rho, its lead is mixing + induction, its usable time U = pot life - lead -
/// reserve; mix k starts at -lead + (k - 1) tau. Needed are tau <= U (a lone kit: area / rho <= U)
/// and area / rho <= window, hence n >= cover / (r U) and n >= area / (r window). ceil(lead / tau)
/// kits are in the pipeline, ceil(mixing / tau) of them being mixed. Mixing only when the last kit
/// has run out would cost (N - 1) lead. A painter who mixes loses r mixing of area for every kit
/// after the first, which counts as so much more cover and area; where lead > tau some of that
/// falls before the opening, and the steady beat then leaves it in hand.
/// @throws std::invalid_argument unless area, cover and rate are positive, painters at least 1,
///   times not negative, everything finite, and the kits at most 100,000
/// @source common practice: whole kits, mixed one after another so that the next is ready as the
///   last runs low
[[nodiscard]] MixingTimetable mixing_timetable(const MixingSession& session);

}  // namespace basinwright::coverage
