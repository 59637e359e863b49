// The single table of what the files may hold: readers, schema and key-by-key docs come from it.
#pragma once

#include <limits>
#include <span>
#include <string_view>

namespace basinwright::readers {

/// What kind of value stands at a key.
enum class Type {
  object,       ///< `fields` are its members.
  map,          ///< Free keys; each value is an object of `fields`, or a list of them (`many`).
  list,         ///< Items are objects of `fields`, or values of `element`.
  tuple,        ///< A list with one value for each of `fields`, in their order.
  variant,      ///< An object whose `kind` chooses one of `alternatives`.
  one_or_many,  ///< An object of `fields`, or a list of them.
  by_month,     ///< An object whose keys are months 1 to 12 (or names), values of `element`.
  text,
  number,
  whole,
  boolean,
  choice,  ///< One of the words in `choices`.
  date,
  moment,
  clock,
  length,
  area,
  volume,
  mass,
  duration,
  flow,
  temperature,
  temperature_difference,
  concentration,
  work_rate,
  edge_rate,
  speed,
  spreading_rate,
  application_rate,
  fraction,
  pack_size,  ///< A volume, a mass or a number of pieces.
  money,      ///< A decimal in the book's currency, as a text or a number.
  hours,      ///< Two clock times: ["07:00", "16:00"].
  year        ///< A year as a number or a text, a day in it, or "unknown".
};

struct Alternative;

/// One key: what stands there, its limits, what holds without it, and what it means.
struct Field {
  std::string_view key;
  Type type = Type::text;
  std::string_view doc;
  double low = -std::numeric_limits<double>::infinity();  ///< In SI (a temperature in kelvin).
  double high = std::numeric_limits<double>::infinity();
  bool above_low = false;          ///< The lower limit itself is refused.
  std::string_view choices = {};   ///< Words with spaces between.
  std::string_view fallback = {};  ///< What holds when the key is absent.
  bool required = false;
  Type element = Type::text;
  std::span<const Field> fields = {};
  std::span<const Alternative> alternatives = {};
  bool many = false;
};

/// One form of a variant: the value of its `kind` and the keys that go with it.
struct Alternative {
  std::string_view kind;
  std::span<const Field> fields;
};

/// The keys of a job file.
[[nodiscard]] std::span<const Field> job_fields();
/// The keys of a `pool` object (one body of water).
[[nodiscard]] std::span<const Field> pool_fields();
/// The keys of a rate book.
[[nodiscard]] std::span<const Field> rate_book_fields();

}  // namespace basinwright::readers
