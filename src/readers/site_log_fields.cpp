#include <array>

#include "basinwright/readers/site_log.hpp"
#include "field_parts.hpp"

namespace basinwright::readers {
namespace tables {

inline constexpr double deepest_water = 50.0;
inline constexpr double thickest_film = 0.01;
inline constexpr double most_chlorine = 100.0;  // kg/m3

inline constexpr Field film(std::string_view key, std::string_view doc) {
  return {.key = key,
          .type = Type::length,
          .doc = doc,
          .low = 0,
          .high = thickest_film,
          .fallback = "not read"};
}

inline constexpr std::array site_log{
    Field{.key = "at",
          .type = Type::text,
          .doc = "When it happened, to the minute, such as 2027-05-31T08:10",
          .required = true},
    Field{.key = "event",
          .type = Type::choice,
          .doc = "What happened; `stopped` is work broken off with a share of it done",
          .choices = "started finished stopped reading delivery mix hold_released note",
          .required = true},
    words("task", "The task, by its name on the job sheet's JSON; `rework` and `clean-again` too"),
    words("section", "The section, where the task has any"),
    words("by", "Who says so; for `hold_released` who signed"),
    words("text", "Anything else"),
    share("share", "For `stopped`: how much of the task or section is done in all", "not said"),
    Field{.key = "people",
          .type = Type::whole,
          .doc = "Who worked on it",
          .low = 1,
          .high = 1000,
          .fallback = "as planned"},
    Field{.key = "where",
          .type = Type::choice,
          .doc = "For `reading`: the shell, the rinse water, what is pumped out, the filled pool",
          .choices = "shell rinse outflow pool",
          .fallback = "shell"},
    Field{.key = "air",
          .type = Type::temperature,
          .doc = "Air in the shade",
          .low = coldest,
          .high = hottest,
          .fallback = "not read"},
    Field{.key = "shell",
          .type = Type::temperature,
          .doc = "Surface of the shell",
          .low = coldest,
          .high = hottest,
          .fallback = "not read"},
    share("humidity", "Relative humidity of the air", "not read"),
    ph("ph", "pH of what `where` says", "not read"),
    Field{.key = "chlorine",
          .type = Type::concentration,
          .doc = "Free chlorine of what `where` says",
          .low = 0,
          .high = most_chlorine,
          .fallback = "not read"},
    Field{.key = "groundwater",
          .type = Type::length,
          .doc = "Groundwater below the rim",
          .low = 0,
          .high = deepest_water,
          .fallback = "not read"},
    film("wet_film", "Wet film by the comb"),
    film("dry_film", "Dry film by the gauge, all coats"),
    words("item", "For `delivery`: part-a, part-b, primer, filler, acid ..."),
    words("batch", "For `delivery`: the batch number on the label"),
    words("kind", "For `delivery` of Part B: the kind of hardener"),
    words("amount", "For `delivery`: how much, where it is not in kits"),
    Field{.key = "kits",
          .type = Type::whole,
          .doc = "Kits delivered or mixed",
          .low = 1,
          .high = 10'000,
          .fallback = "1 for a mix"},
    words("batch_a", "For `mix`: batch of Part A"),
    words("batch_b", "For `mix`: batch of Part B"),
    words("part_b", "For `mix`: kind of Part B"),
    words("emptied", "For `mix`: when the kit was rolled out"),
    words("hold", "For `hold_released`: the code of the hold point")};

}  // namespace tables

std::span<const Field> site_log_fields() {
  return tables::site_log;
}

}  // namespace basinwright::readers
