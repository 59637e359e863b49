#include "checklist_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"
#include "word_figures.hpp"

namespace basinwright::report {
namespace {

struct TaskWords {
  std::string_view task;
  std::array<std::string_view, 6> hazards;  ///< Empty ones are none.
  std::string_view worn;
};

constexpr std::string_view mask =
    "Goggles and shield, mask with acid-gas filters, thick nitrile gloves, boots, coverall; hose "
    "running, eyewash at hand.";
constexpr std::string_view dust_worn =
    "Mask with dust filters, goggles, ear protection, gloves, coverall; the tool's shroud on and "
    "its extraction running.";
constexpr std::string_view paint =
    "Mask with organic-vapour filters, goggles, thick nitrile gloves (not latex), sleeves down, "
    "clean shoe covers.";

// Common practice and the safety sheets' usual sections; the data sheet at hand goes first.
constexpr std::array<TaskWords, 23> task_words{{
    {"set-out", {"electricity", "falls"}, ""},
    {"drain", {"empty-shell-floats", "rain-before-drain", "falls", "electricity"}, ""},
    {"coating-test", {"no-flame", "falls"}, "Butyl gloves and goggles with acetone."},
    {"chlorine-wash",
     {"acid-and-chlorine", "acid-and-granules", "deep-shell", "wash-water"},
     "Goggles and shield, thick nitrile gloves, boots, coverall; nothing acid on site that day."},
    {"degrease", {"noise-heat-and-slips", "wash-water"}, "Non-slip boots, gloves, goggles."},
    {"strip", {"lead", "silica", "electricity", "noise-heat-and-slips"}, dust_worn},
    {"loose-paint", {"lead", "silica", "noise-heat-and-slips"}, dust_worn},
    {"repair",
     {"epoxy-on-skin", "silica", "rust", "blisters"},
     "Thick nitrile gloves (not latex) with filler; mask and goggles while cutting."},
    {"abrade", {"lead", "silica", "electricity", "noise-heat-and-slips"}, dust_worn},
    {"dust-removal", {"lead", "silica"}, "Mask with dust filters, goggles, gloves."},
    {"rework", {"silica", "epoxy-on-skin", "electricity", "noise-heat-and-slips"}, dust_worn},
    {"clean-again",
     {"electricity", "noise-heat-and-slips", "wash-water"},
     "Boots, goggles and shield, ear protection; nobody in front of the lance."},
    {"pressure-clean",
     {"electricity", "noise-heat-and-slips", "wash-water"},
     "Boots, goggles and shield, ear protection; nobody in front of the lance."},
    {"etch-walls",
     {"acid-into-water",
      "neat-acid",
      "strong-etch",
      "acid-and-chlorine",
      "acid-and-granules",
      "deep-shell"},
     mask},
    {"etch-floor",
     {"acid-into-water",
      "neat-acid",
      "vapours-sink",
      "acid-and-chlorine",
      "acid-and-granules",
      "deep-shell"},
     mask},
    {"neutralise",
     {"vapours-sink", "wash-water", "sewer-floor", "deep-shell"},
     "Goggles, gloves, boots; air drawn from the lowest point while the sump fizzes."},
    {"dry", {"efflorescence", "empty-shell-floats"}, ""},
    {"prime", {"epoxy-on-skin", "no-flame", "vapours-sink", "deep-shell"}, paint},
    {"unmask", {"epoxy-on-skin", "no-flame"}, "Thick nitrile gloves (not latex)."},
    {"cure", {"empty-shell-floats", "falls"}, ""},
    {"refit", {"electricity"}, ""},
    {"start-up",
     {"acid-and-chlorine", "acid-and-granules"},
     "Goggles and gloves; one chemical at a time, each in its own clean bucket."},
    {"coat-", {"epoxy-on-skin", "no-flame", "vapours-sink", "deep-shell", "electricity"}, paint},
}};

const TaskWords* words_of(std::string_view task) {
  const auto* const it = std::ranges::find_if(task_words, [task](const TaskWords& words) {
    return words.task == task || (words.task == "coat-" && task.starts_with("coat-"));
  });
  return it == task_words.end() ? nullptr : it;
}

// The usual words of safety data sheets (UN GHS, annex 4), shortened.
constexpr std::array<Aid, 7> aids{{
    {"In the eyes",
     "Water, at once, for at least {minutes} minutes, eyelids held open. Then a doctor."},
    {"Acid or chlorine on the skin", "Clothes off, water, at once, for a long time."},
    {"Epoxy or hardener on the skin",
     "Wiped off, then soapy water, never solvent. Skin that itches or reddens: off this work, and "
     "a "
     "doctor."},
    {"Breathed in", "Fresh air, at rest, half sitting. Nobody goes down after them without air."},
    {"Swallowed", "Mouth rinsed. They are not made to vomit. Call for help, label in hand."},
    {"Somebody lies in the shell",
     "Call for help first. Fumes may fill the deep end: nobody goes in without breathing air."},
    {"Electric shock", "Power off before anybody is touched. Call for help."},
}};

constexpr std::array<Aid, 7> licences{{
    {"Pool circuits, lights, bonding", "a licensed electrician"},
    {"Cracks that move, rust in the shell, a shell that may float", "a licensed engineer"},
    {"Lead in the old paint", "licensed lead work under the local code"},
    {"Water to the sewer or the street", "the water authority's leave, in writing"},
    {"Going into a deep, tented or covered shell", "the local rule for confined spaces"},
    {"Chlorine, acid, solvent, dust as waste", "the local code for hazardous waste"},
    {"Pipes, gas heaters, drain covers", "the licensed trade for each"},
}};

constexpr std::array<std::string_view, 11> morning_words{
    "Rain radar and forecast read: dry until the coat can take rain",
    "Parts A and B shaded or warmed, their temperature read",
    "Air, shell, humidity and dew point read, the margin inside its limit",
    "Coat below hard to the thumb, no sticky film, no dew",
    "Shell vacuumed, masking tight, plugs tight, no fitting weeps",
    "Batch numbers of today's kits read and written down",
    "Who cuts in and who rolls is agreed; who mixes is agreed",
    "Kit marks on the wall: how far each kit has to reach",
    "Last time a kit may be started is agreed",
    "Air drawn from the lowest point; ladder, second person, way to call help",
    "Nobody smokes, no flame, no spark"};

constexpr std::array<std::string_view, 9> evening{
    "Coat looked over for misses, runs and soft patches: after {tacky} nothing is tacky",
    "Rain plan: run-off turned away, nothing stands on the new coat",
    "Shade cloth up where it was agreed, nobody below it without extraction",
    "Tools cleaned as the data sheet says, rags in the closed metal bin with water",
    "Left-over mixed paint cured in the open, never in a closed can",
    "Tomorrow's kits indoors, parts of one batch counted",
    "Tomorrow's window read: the next coat starts before the recoat window closes",
    "Relief valve and groundwater looked at",
    "Fence locked, ladder up, power off"};

constexpr std::array<std::string_view, 8> acid{
    "Shield, goggles, acid-gas mask, gloves and boots on; hose running, eyewash at hand",
    "Inside the shell, shallow end, upwind; two people, a ladder, air drawn from the deep end",
    "Plastic bucket or can only. Water in first, as much as the card says",
    "Acid slowly into the water. Never water into acid",
    "Stirred with plastic; it warms: that is normal, boiling is not",
    "Walls first, from a can not filled to the brim; then the floor",
    "Flushed when the fizzing stops; it never dries on",
    "Caps back on, acid locked away from anything with chlorine"};

std::string tacky_hours() {
  return fmt::format("{} to {} hours",
                     units::fixed(figures::tacky_from.value.in(units::hours), 0),
                     units::fixed(figures::tacky_to.value.in(units::hours), 0));
}

}  // namespace

std::vector<std::string_view> hazards_of(std::string_view task) {
  std::vector<std::string_view> codes;
  const TaskWords* words = words_of(task);
  if (words == nullptr) return codes;
  for (const std::string_view code : words->hazards) {
    if (!code.empty()) codes.push_back(code);
  }
  return codes;
}

std::string_view worn_for(std::string_view task) {
  const TaskWords* words = words_of(task);
  return words == nullptr ? std::string_view() : words->worn;
}

std::vector<FirstAid> first_aid() {
  const std::string minutes = units::fixed(figures::eye_rinse.value.in(units::minutes), 0);
  std::vector<FirstAid> lines;
  for (const Aid& aid : aids) {
    lines.push_back({std::string(aid.what),
                     fmt::format(fmt::runtime(aid.what_to_do), fmt::arg("minutes", minutes))});
  }
  return lines;
}
std::span<const Aid> licensed_work() {
  return licences;
}
std::span<const std::string_view> morning_rounds() {
  return morning_words;
}
std::vector<std::string> evening_rounds() {
  std::vector<std::string> lines;
  for (const std::string_view line : evening)
    lines.push_back(fmt::format(fmt::runtime(line), fmt::arg("tacky", tacky_hours())));
  return lines;
}
std::span<const std::string_view> acid_steps() {
  return acid;
}

std::vector<std::string> kit_steps(const std::string& induction, const std::string& pot_life) {
  return {
      "Whole kits, one at a time, inside the shell: all of B into A",
      fmt::format("{} turns with a flat metal stirrer, sides and bottom scraped",
                  figures::stirrer_turns.value),
      "B's can left to drain, then stirred again; nothing is added",
      fmt::format("It stands {}, then it is stirred once more", induction),
      fmt::format("Used up within {} of the start of mixing; warm paint goes off sooner", pot_life),
      fmt::format("Tacky after {}: undermixed; it comes off and is never coated over",
                  tacky_hours())};
}

}  // namespace basinwright::report
