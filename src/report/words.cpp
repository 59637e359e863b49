#include "words.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <utility>

#include "basinwright/units/show.hpp"
#include "weather_words.hpp"
#include "word_table.hpp"

namespace basinwright::report {
namespace {

constexpr std::array<Entry, 34> reasons{{
    {"set-out", "Nothing may start, leak or fall in while the pool stands empty."},
    {"next-coat", "Inside the recoat window, section by section."},
    {"empty-and-isolated", "The shell is worked on dry, and an empty shell must stay down."},
    {"coating-unknown",
     "Nobody knows yet that the old coat is epoxy, and epoxy holds on nothing else."},
    {"algae", "Algae left on weakens the start and eats up every later chemical."},
    {"oils",
     "Sunscreen and body fats left on are worked in by the sander; the new coat then lets go "
     "within "
     "months."},
    {"heavy-oils",
     "Heavy oils and scum: the wash is made twice where water still beads, or the new coat lets go "
     "within months."},
    {"loose-paint", "Loose paint comes off before repairs are made on it."},
    {"cracks-and-hollows", "Opened, filled, cured and sanded flush, or they show through."},
    {"not-epoxy", "A coat that is not epoxy comes off to the substrate."},
    {"too-loose", "Loose over more than the limit: all of it comes off."},
    {"gloss", "Glossy patches delaminate: 20 to 40 grit until dull and rough."},
    {"dull-already", "Dull already, but chalk and weak paint come off: 20 to 40 grit until rough."},
    {"dust", "Dust under paint is a release layer."},
    {"loosened-dirt", "What the washes loosened is flushed off before acid."},
    {"etch-painted", "Opens the surface and takes calcium scale off the old coat."},
    {"etch-bare", "Opens the cement so that the coat can key in."},
    {"etch-floor", "The floor last: it has had what ran down from the walls."},
    {"acid-left", "Acid left in the pores goes on working under the paint."},
    {"window-missed",
     "The coat below is past its recoat window: dulled and cleaned, or the next one peels from "
     "it."},
    {"etch-lost", "The etch grew too old under dust and weather: the bare shell is cleaned again."},
    {"wet-shell", "Water in the shell pushes the coat off."},
    {"dry-face", "A dry face does not prove a dry wall."},
    {"edges", "A straight edge at the tile band, and clean fittings."},
    {"wind", "On the day of each coat: what the wind brought in."},
    {"bare-cement", "Bare cement drinks the first coat; the primer seals it."},
    {"first-coat", "Deep end to shallow end, a section cut in and rolled at a time."},
    {"first-coat-thinned", "Thinned, since minor patches are bare; the later coats never are."},
    {"soft-edge", "While the last coat is still soft, so that the edge does not tear."},
    {"clouding", "Water let in too soon clouds the colour."},
    {"refit", "The pool is whole and tight before any water comes in."},
    {"one-fill", "Without a stop: a pause leaves a ring."},
    {"quiet-start", "The new coat is tender in its first days."},
    {"as-built", "What was done, and how to care for it."},
}};

constexpr std::array<std::pair<std::string_view, HoldWords>, 20> holds{{
    {"acetone-test",
     {"acetone on a rag, half a minute of rubbing, then a fingernail, in several places",
      "untouched everywhere, and the history agrees"}},
    {"makers-advice",
     {"the coating maker's advice in writing on the lost recoat window",
      "what to abrade and clean, and that the next coat may follow"}},
    {"no-chlorine", {"chlorine strip in the rinse water", "no chlorine left"}},
    {"water-break", {"rinse water on the surface", "runs off as a film, no beads"}},
    {"no-gloss", {"the surface against the light", "no gloss left anywhere"}},
    {"lead-test", {"lead test of the old paint", "clear, before any abrading or blasting"}},
    {"surface-ph",
     {"surface pH after the last rinse, two readings per 46 m² (500 ft²) or part",
      "within 1 unit of the rinse water"}},
    {"plastic-sheet",
     {"plastic sheets taped down for 16 to 24 h, one per 46 m² (500 ft²)",
      "no water under them, no dark patch"}},
    {"leak-test",
     {"bucket test while the pool is still full", "the pool loses no more than the bucket"}},
    {"leak-found",
     {"the pool was found to lose water", "the leak is found and what mends it is agreed"}},
    {"groundwater",
     {"groundwater level in a standpipe or through the relief valve, again after each rain",
      "below the underside of the slab before the pump starts, and while the shell is empty"}},
    {"blisters",
     {"a few blisters cut open in each place",
      "dry behind; water or a sour smell means moisture through the shell: advice first"}},
    {"filler-hard", {"filler pressed with a fingernail after a night", "hard, and sanded flush"}},
    {"mortar-age",
     {"age of the mortar on the day of the acid",
      "28 days; 7 for patches only if the data sheet allows it; published practice on pools is two "
      "months"}},
    {"rust",
     {"rust spots opened with a chisel",
      "a nail or tie, cut back; a bar of the shell: advice first"}},
    {"no-salts", {"the face after drying", "no white salts have come back"}},
    {"touch-dry",
     {"the coat below with a thumb, and wiped for blush",
      "dry, not tacky, no sticky film; a coat still tacky after 4 to 6 h comes off, it is never "
      "coated "
      "over"}},
    {"cured",
     {"days of cure counted by temperature, coin or thumbnail in a corner",
      "the data sheet's days are past, and no mark stays"}},
    {"water-readings",
     {"free chlorine and pH before each addition and before the first swim", "inside the targets"}},
    {"conditions",
     {"air, shell, humidity, dew point and its margin", "inside the data sheet's limits"}},
}};

constexpr std::array<std::pair<std::string_view, StopWords>, 9> stops{{
    {"fibreglass",
     {"The shell is fibreglass: emptying can bulge it, acid harms it, and it needs a primer of its "
      "own.",
      "the shell maker's or a licensed engineer's advice in writing"}},
    {"flotation",
     {"The empty shell can float: its weight is less than that of the water it keeps out of the "
      "ground.",
      "groundwater drawn down and read below the level given here, or a licensed engineer's advice "
      "in writing"}},
    {"young-cement",
     {"New cement is younger on the fixed first day than acid and paint may meet it.",
      "a first day on or after the date given here, or no fixed first day: the programme then "
      "waits"}},
    {"softened",
     {"The old coat softens under acetone: it is not epoxy, and epoxy does not hold on it.",
      "strip it to the substrate and say so in the job file, or the coating maker's advice in "
      "writing"}},
    {"not-epoxy",
     {"The old coat is not epoxy, and epoxy does not hold on it.",
      "strip it to the substrate and say so in the job file, or the coating maker's advice in "
      "writing"}},
    {"moving-crack",
     {"A crack or joint moves: no coat bridges that.", "a licensed engineer's advice"}},
    {"wide-crack",
     {"A crack is wider than the limit: it may be structural.", "a licensed engineer's advice"}},
    {"drummy",
     {"Hollow-sounding render is widespread: it carries no coat.",
      "advice on cutting out and re-rendering, then a job file for the repaired shell"}},
    {"lead-found",
     {"There is lead in the old paint: abrading or blasting it is licensed work.",
      "a lead work plan under the local code"}},
}};

constexpr std::array<Entry, 4> provisionals{{
    {"no-dates",
     "no dates fit this crew, so set-up, travel and hire by the day are not in the price"},
    {"coating-untested",
     "the old coat has not been tested with acetone; both ways it can turn out are priced, and the "
     "test is the first hold point"},
    {"lead-untested",
     "the old paint has not been tested for lead; test before any abrading or blasting"},
    {"no-data-sheet",
     "the job names no coating system, so kit, cover, windows and limits are the usual ones, "
     "assumed"},
}};

constexpr std::array<Entry, 2> branches{{
    {"test-passes", "the test shows epoxy"},
    {"strip", "it does not, and the old coat is stripped"},
}};

constexpr std::array<Entry, 3> flotation_verdicts{{
    {"stop", "STOP: it can float"},
    {"hold", "hold point"},
    {"clear", "clear"},
}};

constexpr std::array<Entry, 5> notes{{
    {"flotation-convention",
     "Factor: total weight of the empty shell over the weight of all water it displaces below the "
     "groundwater; no soil friction, no soil on a toe, no water inside. Other conventions give up "
     "to twice as much. Under 1.0 nobody drains, under 1.3 it is a hold point; either way a "
     "licensed engineer decides."},
    {"no-thickness",
     "Not checked against floating: the job file gives the groundwater but not both wall_thickness "
     "and slab_thickness."},
    {"no-groundwater",
     "Not checked against floating: nobody has measured the groundwater (site.groundwater)."},
    {"sections-too-large",
     "A section named in the job file does not fit a morning: the coat is cut by whole kits."},
    {"no-handbook", "No handbook short cut fits this outline."},
}};

constexpr std::array<Entry, 27> tasks{{
    {"set-out", "Set out, isolate"},
    {"drain", "Drain"},
    {"coating-test", "Test the old coat"},
    {"strip", "Strip the old coat"},
    {"chlorine-wash", "Chlorine wash"},
    {"degrease", "Degrease"},
    {"loose-paint", "Loose paint off"},
    {"repair", "Repair"},
    {"abrade", "Abrade"},
    {"dust-removal", "Remove dust"},
    {"pressure-clean", "Pressure clean"},
    {"etch-walls", "Etch walls"},
    {"etch-floor", "Etch floor"},
    {"neutralise", "Neutralise, rinse"},
    {"dry", "Dry"},
    {"dryness-test", "Dryness test"},
    {"vacuum", "Vacuum"},
    {"mask", "Mask"},
    {"prime", "Prime"},
    {"unmask", "Unmask, clean up"},
    {"cure", "Cure"},
    {"refit", "Refit"},
    {"fill", "Fill"},
    {"start-up", "Start up the water"},
    {"handover", "Hand over"},
    {"rework", "Abrade and clean"},
    {"clean-again", "Clean again"},
}};

}  // namespace

std::string_view reason(std::string_view code) {
  return look_up(reasons, code);
}
HoldWords hold(std::string_view code) {
  return look_up(holds, code);
}
StopWords stop(std::string_view code) {
  return look_up(stops, code);
}
std::string_view provisional(std::string_view code) {
  return look_up(provisionals, code);
}
std::string_view branch(std::string_view code) {
  return look_up(branches, code);
}

std::string_view flotation_verdict(std::string_view code) {
  return look_up(flotation_verdicts, code);
}
std::string_view note(std::string_view code) {
  return look_up(notes, code);
}

std::string task(std::string_view name) {
  const auto it = std::ranges::find(tasks, name, &Entry::first);
  if (it != tasks.end()) return std::string(it->second);
  if (name.starts_with("coat-")) return fmt::format("Coat {}", name.substr(5));
  return std::string(name);
}

std::string held(const sequence::Held& held, units::System system) {
  using By = sequence::Held::By;
  const std::string before = task(held.task);
  const std::string wait = units::show(held.wait, 1);
  switch (held.by) {
    case By::start_date:
      return "start date";
    case By::task:
      return held.task.empty() ? "" : fmt::format("after {}", before);
    case By::before:
      return fmt::format("right before {}", before);
    case By::fewer_days:
      return "fewer days on site, nothing later by it";
    case By::less_empty:
      return "pool empty for less long, nothing later by it";
    case By::wait:
      return fmt::format("{} after {}", wait, before);
    case By::working_hours:
      return "working hours";
    case By::closed_day:
      return "days off";
    case By::painting_hours:
      return "painting hours";
    case By::recoat_window:
      return held.task.empty() ? "placed so that the recoat window can be met"
                               : fmt::format("recoat window, {} after {}", wait, before);
    case By::new_cement:
      return "new cement";
    case By::weather: {
      std::string words = held.weather ? closed_by(*held.weather, system) : "weather";
      if (held.more_days > 0) words += fmt::format("; weather on {} more days", held.more_days);
      return words;
    }
  }
  return "";
}

namespace {

std::string together(const sequence::Blocked& blocked) {
  std::string text;
  for (const sequence::Constraint c : blocked.together) {
    text += (text.empty() ? "" : ", ") + std::string(words(c));
  }
  return text;
}

}  // namespace

std::string blocked(const sequence::Blocked& blocked) {
  using Why = sequence::Blocked::Why;
  std::string what = task(blocked.task);
  if (!blocked.section.empty()) what += ", section " + blocked.section;
  switch (blocked.why) {
    case Why::longer_than_any_window:
      return what +
             " takes longer than any stretch of hours allowed for it: more painters, or longer "
             "painting hours.";
    case Why::no_window_fits:
      return what +
             " finds no run of days: working days, painting hours, recoat window and the days an "
             "etch "
             "holds exclude one another. More painters, or more working days.";
    case Why::weather:
      return what +
             " finds no open hours: in the weather read, these leave no run of days together: " +
             together(blocked) + ".";
    case Why::horizon:
      return what + " is not reached in the time looked at.";
  }
  return what;
}

}  // namespace basinwright::report
