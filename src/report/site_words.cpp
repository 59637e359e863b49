#include <fmt/format.h>

#include "basinwright/report/site.hpp"
#include "basinwright/units/show.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

constexpr double percent = 100.0;

std::string place(const sitelog::Breach& b) {
  if (b.task.empty()) return b.section.empty() ? "" : "section " + b.section + ": ";
  return task(b.task) + (b.section.empty() ? ": " : ", section " + b.section + ": ");
}

std::string beyond(const sitelog::Breach& b, std::string_view what, units::System system) {
  return fmt::format("{} {}, {} the limit of {}",
                     what,
                     units::show(units::celsius(b.measured), system, 1),
                     b.measured < b.limit ? "under" : "over",
                     units::show(units::celsius(b.limit), system, 1));
}

std::string breach_said(const sitelog::Breach& b, units::System system) {
  using sitelog::Broken;
  switch (b.rule) {
    case Broken::air:
      return beyond(b, "air", system);
    case Broken::shell_temperature:
      return beyond(b, "shell", system);
    case Broken::dew_margin:
      return fmt::format("shell only {} above the dew point, {} asked: paint no further",
                         units::show(units::kelvins(b.measured), system, 1),
                         units::show(units::kelvins(b.limit), system, 1));
    case Broken::humidity:
      return fmt::format(
          "humidity {:.0f} %, over the limit of {:.0f} %", b.measured * percent, b.limit * percent);
    case Broken::no_reading:
      return "painting begun, and no air, shell and humidity read in the 4 h before";
    case Broken::part_a_batches:
      return fmt::format(
          "Part A of batch {}, after batch {}: one batch for the whole job, or the "
          "colour may differ",
          b.now,
          b.was);
    case Broken::part_b_kinds:
      return fmt::format(
          "Part B of the kind {}, after {}: one kind for the whole job", b.now, b.was);
    case Broken::recoat_early:
      return fmt::format("{:.1f} h after the coat below, {:.1f} h asked at least: ask the maker",
                         b.measured,
                         b.limit);
    case Broken::recoat_late:
      return fmt::format(
          "{:.1f} h after the coat below, {:.1f} h at most: the window is past, stop "
          "and ask the maker in writing",
          b.measured,
          b.limit);
    case Broken::etch_expired:
      return fmt::format("first coat {:.1f} h after the etch, {:.1f} h at most: clean again first",
                         b.measured,
                         b.limit);
    case Broken::pot_life:
      return fmt::format("kit in use for {:.0f} min, pot life {:.0f} min",
                         units::hours(b.measured).in(units::minutes),
                         units::hours(b.limit).in(units::minutes));
    case Broken::outflow_ph:
      return fmt::format("pumped out at pH {:.1f}, the limit is {:.1f}", b.measured, b.limit);
    case Broken::outflow_chlorine:
      return fmt::format(
          "pumped out with {:.1f} mg/L of chlorine, {:.1f} mg/L at most", b.measured, b.limit);
    case Broken::hold_open:
      return fmt::format(
          "hold point of {} not released: {} ({})", task(b.was), hold(b.now).what, b.now);
  }
  return "";
}

}  // namespace

std::string broken_rule(const sitelog::Breach& breach, units::System system) {
  return place(breach) + breach_said(breach, system);
}

}  // namespace basinwright::report
