// Who paints and mixes what when: kits, chalk marks and the timetable of each painting morning.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/coverage/mixing.hpp"
#include "basinwright/dates/date.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::job {

/// Where on the shell a kit runs out.
struct KitMark {
  /// Where the boundary falls: on side walls and floor, or inside a face across the pool.
  enum class Place { across, deep_wall, shallow_wall, inner_face };
  bool primer = false;   ///< Of the primer's kits, else of every coat's.
  std::string section;   ///< As the programme calls it.
  int kit = 1;           ///< In its section.
  std::size_t body = 0;  ///< Body of water.
  units::Area painted;   ///< Of the section, from its deep end to the mark.
  units::Length along;   ///< From the deep end of the body, level, along its axis.
  Place place = Place::across;
  double face_share = 0.0;    ///< Of the face that is painted by then; 0 with `across`.
  units::Length from_corner;  ///< The same on an end wall, level, from the corner begun at.
  units::Length below_rim;    ///< Or from the top of the paint down: the level of that share.
};

/// What the temperature of a session rests on.
enum class PaintTemperature {
  weather,     ///< The warmest air of the session.
  month_mean,  ///< The job's mean of the month.
  sheet        ///< Nothing known: the temperature of the sheet's pot life.
};

/// One coat of one section in one morning.
struct PaintingMorning {
  std::string task, section;  ///< As in the programme.
  dates::Moment opening;      ///< Painting begins.
  dates::Moment close;        ///< Painting hours end, or the next section begins.
  coverage::MixingSession session;
  coverage::MixingTimetable timetable;
  PaintTemperature rests_on = PaintTemperature::sheet;
  /// The coldest the parts get if they stand outside overnight; nothing when that is unknown.
  std::optional<units::Temperature> parts;
  bool parts_cold = false;                      ///< Colder than the sheet allows.
  bool shortest_induction = false;              ///< Only the sheet's least standing time will do.
  std::optional<std::int64_t> painters_needed;  ///< Nothing: no crew can do it.
};

struct MixingPlan {
  std::vector<KitMark> marks;
  std::vector<PaintingMorning> mornings;
  int painters = 0;
  bool mixer_apart = false;  ///< Somebody has hands free to mix.
  [[nodiscard]] bool works() const;
  /// The most any morning needs; nothing when one of them no crew can do, or there is none.
  [[nodiscard]] std::optional<std::int64_t> painters_needed() const;
};

}  // namespace basinwright::job
