// What the people on site write down while the job runs, one entry after the other.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/minute.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::sitelog {

/// In the order of the file's words for them.
enum class Event {
  started,
  finished,
  stopped,  ///< Work broken off with a share of it done.
  reading,
  delivery,
  mix,
  hold_released,
  note
};
/// What was read: the shell, the water of the last rinse, what is pumped out, the filled pool.
enum class Where { shell, rinse, outflow, pool };

/// What instruments showed.
struct Readings {
  std::optional<units::Temperature> air, shell;
  std::optional<units::Fraction> humidity;
  std::optional<double> ph;
  std::optional<units::Concentration> chlorine;
  std::optional<units::Length> groundwater;  ///< Below the rim.
  std::optional<units::Length> wet_film, dry_film;
};

struct Entry {
  std::size_t line = 0;  ///< Of the file, from 1; 0: of none yet.
  dates::Minute at;
  Event event = Event::note;
  std::string task, section;  ///< Empty section: the whole shell.
  std::string by;             ///< Who says so.
  std::string text;
  std::optional<double> share;  ///< Done in all when work was broken off, 0 to 1.
  std::optional<int> people;    ///< Who worked.
  Where where = Where::shell;
  Readings read;
  std::string item, batch, kind, amount;  ///< Of a delivery.
  std::optional<int> kits;                ///< Delivered, or mixed (1 when not said).
  std::string batch_a, batch_b, part_b;   ///< Of a mix; `part_b` is the kind of hardener.
  std::optional<dates::Minute> emptied;   ///< When a mixed kit was rolled out.
  std::string hold;                       ///< The code of a hold point.
};

struct Log {
  std::vector<Entry> entries;  ///< In the order of the file.
  bool torn = false;           ///< Its last line was cut off and is left out.
};

/// The entries in the order of their times; of equal times in the order of the file. Somebody may
/// write down in the evening what happened at noon.
[[nodiscard]] std::vector<Entry> in_time(const Log& log);

}  // namespace basinwright::sitelog
