#include "words.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

#include "basinwright/units/show.hpp"
#include "weather_words.hpp"

namespace basinwright::report {
namespace {

using Entry = std::pair<std::string_view, std::string_view>;

template <class Table>
const auto& look_up(const Table& table, std::string_view code) {
  const auto it = std::ranges::find_if(table, [&](const auto& row) { return row.first == code; });
  if (it == table.end()) throw std::logic_error("no words for " + std::string(code));
  return it->second;
}

constexpr std::array<Entry, 30> reasons{{
    {"set-out",
     "Auto-fill, pump, heater and lights off and locked, fittings bagged, fence up, run-off turned "
     "away."},
    {"next-coat", "Inside the recoat window, section by section."},
    {"empty-and-isolated",
     "At the outfall's limit of flow and chlorine; relief valve open, lines blown out and "
     "plugged."},
    {"coating-unknown",
     "Nobody knows yet that the old coat is epoxy, and epoxy holds on nothing else."},
    {"algae", "Algae left on weakens the start and eats up every later chemical."},
    {"oils",
     "Sunscreen and body fats left on are worked in by the sander; the new coat then lets go "
     "within "
     "months."},
    {"loose-paint", "Loose paint comes off before repairs are made on it."},
    {"cracks-and-hollows", "Opened, filled, cured and sanded flush, or they show through."},
    {"not-epoxy", "A coat that is not epoxy comes off to the substrate."},
    {"too-loose", "Loose over more than the limit: all of it comes off."},
    {"gloss", "Glossy patches delaminate: 20 to 40 grit until dull and rough."},
    {"dust", "Dust under paint is a release layer."},
    {"loosened-dirt", "What the washes loosened is flushed off before acid."},
    {"etch-painted", "Opens the surface and takes calcium scale off the old coat."},
    {"etch-bare", "Opens the cement so that the coat can key in."},
    {"etch-floor", "The last third of the acid, from the deep end up."},
    {"acid-left", "Acid left in the pores goes on working under the paint."},
    {"wet-shell", "Water in the shell pushes the coat off."},
    {"dry-face", "A dry face does not prove a dry wall."},
    {"edges", "A straight edge at the tile band, and clean fittings."},
    {"wind", "On the day of each coat: what the wind brought in."},
    {"bare-cement", "Bare cement drinks the first coat; the primer seals it."},
    {"first-coat", "Deep end to shallow end, a section cut in and rolled at a time."},
    {"first-coat-thinned", "Thinned, since minor patches are bare; the later coats never are."},
    {"soft-edge", "While the last coat is still soft, so that the edge does not tear."},
    {"clouding", "Water let in too soon clouds the colour."},
    {"refit", "Lights, gaskets and grates back, relief valve closed."},
    {"one-fill", "Without a stop: a pause leaves a ring."},
    {"quiet-start", "Nothing but salt or chlorine in the first days, then one chemical at a time."},
    {"as-built", "Readings and batches as built, and how to care for the coat."},
}};

constexpr std::array<std::pair<std::string_view, HoldWords>, 9> holds{{
    {"groundwater",
     {"groundwater beside the deep end, on the day, against the flotation check",
      "a licensed engineer agrees to draining at that level"}},
    {"acetone-test",
     {"acetone on a rag, half a minute of rubbing, then a fingernail, in several places",
      "untouched everywhere, and the history agrees"}},
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
    {"conditions",
     {"air, shell, humidity, dew point and its margin", "inside the data sheet's limits"}},
}};

constexpr std::array<std::pair<std::string_view, StopWords>, 8> stops{{
    {"floats",
     {"Empty, the shell weighs less than the groundwater it displaces: it can float.",
      "a licensed engineer's advice in writing: groundwater drawn down and watched, or water left "
      "in"}},
    {"fibreglass",
     {"The shell is fibreglass: emptying can bulge it, acid harms it, and it needs a primer of its "
      "own.",
      "the shell maker's or a licensed engineer's advice in writing"}},
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

constexpr std::array<std::pair<std::string_view, CautionWords>, 19> cautions{{
    {"acid-into-water",
     {"Acid into water, never water into acid: plastic buckets, inside the shell, shallow end, "
      "upwind; goggles, shield and acid-gas mask on; hose running and eyewash at hand.",
      "common practice"}},
    {"strong-etch",
     {"This etch is stronger than published practice for painting (5 to 10 % by weight): more "
      "vapour, "
      "more care.",
      "mil-hdbk-1110 5.14"}},
    {"acid-and-chlorine",
     {"Acid and chlorine never meet, in either order: different days, stored apart, rinsed to a "
      "chlorine reading of zero between. One litre of 12.5 % liquid gives about {:.0f} L of "
      "chlorine "
      "gas.",
      "niosh-idlh 7782-50-5"}},
    {"vapours-sink",
     {"Acid fume, solvent and carbon dioxide sink to the deep end: draw air from the lowest point, "
      "two people, a ladder, a way to call help. Neutralising all the acid gives up to {:.0f} L of "
      "carbon dioxide.",
      "mil-hdbk-1110 13.6.3"}},
    {"deep-shell",
     {"A shell that is deep, tented or covered can be a confined space: test the air before going "
      "down and follow the local rule for entry.",
      "29 CFR 1926.1202"}},
    {"epoxy-on-skin",
     {"Epoxy and its hardener make skin allergic for life: thick nitrile or laminate gloves (not "
      "latex), sleeves down, and never solvent to wash it off.",
      "common practice"}},
    {"no-flame",
     {"Acetone, thinner and solvent vapour: no flame, no spark, no smoking, explosion-proof fans.",
      "mil-hdbk-1110 13.6.3"}},
    {"electricity",
     {"Residual-current protection on every lead, 12 V hand lamps in the shell, pool circuits "
      "locked "
      "off.",
      "29 CFR 1926.404 and 1926.405"}},
    {"silica",
     {"Grinding cement or old coat frees silica: shrouded tool, extraction of 25 cfm an inch of "
      "disc, "
      "filter 99 %. The deep end counts as enclosed.",
      "29 CFR 1926.1153 table 1"}},
    {"lead",
     {"Paint of unknown age may hold lead: no abrading or blasting before it has been tested.",
      "mil-hdbk-1110 6.3.2"}},
    {"empty-shell-floats",
     {"An empty shell can float or crack: measure the groundwater first, never drain soon after "
      "heavy "
      "rain, relief valve open while empty. A licensed engineer decides.",
      "em-1110-2-2100"}},
    {"rain-before-drain",
     {"{:.0f} mm of rain in the two days before the drain may have raised the groundwater: read "
      "its "
      "level first, and put the drain off when it stands above the floor.",
      "common practice"}},
    {"falls",
     {"An empty pool is an open edge: fence or cover it, fall protection from 1.8 m (6 ft), a "
      "secured "
      "ladder.",
      "29 CFR 1926.501 and 1926.1053"}},
    {"noise-heat-and-slips",
     {"Ear protection at the grinder, non-slip boots on wet floors, water, shade and breaks in "
      "heat.",
      "common practice"}},
    {"wash-water",
     {"Wash water goes to the sewer with leave, neutralised and free of chlorine; never to a storm "
      "drain.",
      "40 CFR 403.5(b)(2)"}},
    {"first-aid",
     {"Safety data sheets and the emergency number at the pool. Eyes and skin: water, at once, for "
      "a "
      "long time. Breathed in: fresh air. Swallowed: do not make them vomit. Then a doctor.",
      "UN GHS annex 4"}},
    {"chalking",
     {"Epoxy chalks outdoors and in the water; two coats with good water care may give 8 to 10 "
      "years, "
      "three 12 to 15. Tell the client.",
      "mil-hdbk-1110 5.14"}},
    {"who-decides",
     {"Product data sheets, local codes, the water authority and licensed trades decide; this "
      "sheet "
      "does not replace them.",
      "common practice"}},
    {"rain",
     {"No weather has been read: these dates follow the calendar alone. Check rain, shell and dew "
      "point on the day.",
      "common practice"}},
}};

constexpr std::array<Entry, 8> wastes{{
    {"pool-water", "Pool water"},
    {"chlorine-wash", "Chlorine wash, before rinses"},
    {"degreasing-wash", "Degreasing wash, before rinses"},
    {"etch-wash", "Spent etch, before rinses"},
    {"neutralising-wash", "Neutralising wash, before rinses"},
    {"dust", "Dust of the old coat"},
    {"rags", "Rags with solvent or epoxy"},
    {"kit-cans", "Empty cans of Part A and Part B"},
}};

constexpr std::array<Entry, 7> destinations{{
    {"outfall", "where the authority allows, at its limits of flow and chlorine"},
    {"sewer-chlorine-free", "sewer, with leave, once free of chlorine"},
    {"sewer-by-leave", "sewer, with leave"},
    {"sewer-neutralised", "sewer, with leave, once inside its pH limits"},
    {"sealed-bags", "sealed bags; as lead waste if the test says so"},
    {"closed-metal-bin", "closed metal bin with water: they can catch fire"},
    {"cured-and-dry", "waste, cured hard and dry"},
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

constexpr std::array<Entry, 25> tasks{{
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
CautionWords caution(std::string_view code) {
  return look_up(cautions, code);
}
std::string_view waste(std::string_view code) {
  return look_up(wastes, code);
}
std::string_view destination(std::string_view code) {
  return look_up(destinations, code);
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
