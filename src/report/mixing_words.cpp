#include "mixing_words.hpp"

#include <fmt/format.h>
#include <cmath>

#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::report {
namespace {

using coverage::Hindrance;
using job::KitMark;

constexpr std::int64_t minutes_in_quarter = 15;
constexpr std::int64_t minutes_in_hour = 60;
constexpr std::int64_t minutes_in_day = 1440;

std::string minutes(units::Duration time) {
  return units::fixed(time.in(units::minutes), 0) + " min";
}

// Minutes since 1970, the nearest.
std::int64_t minutes_at(dates::Moment opening, units::Duration after) {
  return opening.quarters() * minutes_in_quarter +
         static_cast<std::int64_t>(std::floor(after.in(units::minutes) + 0.5));
}

std::string people(std::int64_t n, const char* what) {
  return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s");
}

std::string why_hindered(const coverage::Obstacle& o) {
  switch (o.what) {
    case Hindrance::pot_life_unknown:
      return "The sheet's table of pot lives does not reach this temperature.";
    case Hindrance::pot_life_gone:
      return fmt::format(
          "Mixing, standing and what stays in the tray use up the pot life: {} are "
          "missing.",
          minutes(o.short_by));
    case Hindrance::pot_life_short:
      return fmt::format("A kit is not on the wall when its pot life ends: {} are missing.",
                         minutes(o.short_by));
    case Hindrance::window_short:
      return fmt::format("The coat lasts {} longer than the morning.", minutes(o.short_by));
    case Hindrance::mixer_short:
      return fmt::format("The roller waits: a kit is painted out {} before the next can be mixed.",
                         minutes(o.short_by));
  }
  return "";
}

void add_item(std::string& list, std::string item) {
  if (!list.empty()) list += "; or ";
  list += std::move(item);
}

std::string what_helps(const coverage::Obstacle& o, units::System system) {
  std::string out;
  if (o.painters) {
    std::string crew = people(*o.painters, "painter");
    if (o.mixers && *o.mixers > 1) crew += " with " + people(*o.mixers, "mixer");
    add_item(out, std::move(crew));
  } else if (o.mixers) {
    add_item(out, people(*o.mixers, "mixer"));
  }
  if (o.what == Hindrance::window_short)
    add_item(out, fmt::format("an opening {} earlier", minutes(o.short_by)));
  if (o.cover)
    add_item(out, fmt::format("a smaller kit, for at most {}", units::show(*o.cover, system, 1)));
  if (o.no_warmer_than)
    add_item(out,
             fmt::format("an earlier hour or cooler parts, the mixed paint no warmer than {}",
                         units::show(*o.no_warmer_than, system, 1)));
  if (o.no_colder_than)
    add_item(out,
             fmt::format("a later hour or warmer parts, the mixed paint no colder than {}",
                         units::show(*o.no_colder_than, system, 1)));
  return out;
}

std::string on_end_wall(const KitMark& mark, const char* wall, units::System system) {
  if (!(mark.from_corner > units::Length()))
    return fmt::format("{}, {} % of its area", wall, units::fixed(mark.face_share * 100.0, 0));
  return fmt::format("{}, {} from the corner, or from the top down to {} below the rim",
                     wall,
                     units::show(mark.from_corner, system, 2),
                     units::show(mark.below_rim, system, 2));
}

}  // namespace

std::string mark_words(const KitMark& mark, const job::Plan& plan, units::System system) {
  std::string words;
  switch (mark.place) {
    case KitMark::Place::deep_wall:
      words = on_end_wall(mark, "deep wall", system);
      break;
    case KitMark::Place::shallow_wall:
      words = on_end_wall(mark, "shallow wall", system);
      break;
    case KitMark::Place::inner_face:
      words = fmt::format("upright face {} from the deep end, {} % of it",
                          units::show(mark.along, system, 2),
                          units::fixed(mark.face_share * 100.0, 0));
      break;
    case KitMark::Place::across:
      words = fmt::format("across walls and floor, {} from the deep end",
                          units::show(mark.along, system, 2));
      break;
  }
  const auto& bodies = plan.take_off.bodies;
  if (bodies.size() > 1 && !bodies[mark.body].name.empty())
    words = bodies[mark.body].name + ": " + words;
  return words;
}

std::string crew_words(const job::MixingPlan& mixing) {
  if (mixing.painters <= 1)
    return mixing.mixer_apart ? "one cuts in and rolls, another mixes"
                              : "one cuts in, rolls and mixes";
  const int pairs = mixing.painters / 2;
  const bool odd = mixing.painters % 2 != 0;
  std::string words = pairs == 1 ? "one cuts in, one rolls"
                                 : fmt::format("{} pairs: in each one cuts in, one rolls", pairs);
  if (odd) words += ", one more helps the rollers";
  return words + (mixing.mixer_apart ? "; another mixes"
                                     : "; one of them mixes, and paints nothing meanwhile");
}

std::vector<std::string> hindrances(const job::PaintingMorning& morning, units::System system) {
  std::vector<std::string> out;
  for (const coverage::Obstacle& o : morning.timetable.obstacles) {
    const std::string help = what_helps(o, system);
    out.push_back(why_hindered(o) + (help.empty() ? " Nothing at this hour would help."
                                                  : " What would help: " + help + "."));
  }
  return out;
}

std::string evening_before(const job::PaintingMorning& morning,
                           const job::Plan& plan,
                           units::System system) {
  if (morning.parts_cold) {
    return fmt::format(
        "Parts that stand outside would be at {}, too cold to mix: take both parts indoors the "
        "evening before, so that they are at {} or more.",
        units::show(*morning.parts, system, 1),
        units::show(plan.system.parts_min.value, system, 0));
  }
  for (const coverage::Obstacle& o : morning.timetable.obstacles) {
    if (!o.no_warmer_than) continue;
    return fmt::format(
        "Too warm to mix and use up: stand both parts in a cool, shaded place the evening before, "
        "so that the mixed paint is no warmer than {}.",
        units::show(*o.no_warmer_than, system, 1));
  }
  return "";
}

std::string minute_of(dates::Moment opening, units::Duration after) {
  const std::int64_t of_day =
      ((minutes_at(opening, after) % minutes_in_day) + minutes_in_day) % minutes_in_day;
  return fmt::format("{:02}:{:02}", of_day / minutes_in_hour, of_day % minutes_in_hour);
}

std::string iso_minute(dates::Moment opening, units::Duration after) {
  const std::int64_t at = minutes_at(opening, after);
  const std::int64_t day =
      (at - (((at % minutes_in_day) + minutes_in_day) % minutes_in_day)) / minutes_in_day;
  return dates::iso(dates::Date(std::chrono::days{day})) + "T" + minute_of(opening, after);
}

}  // namespace basinwright::report
