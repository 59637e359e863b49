#include <array>
#include <utility>

#include "word_table.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

constexpr std::array<Entry, 53> actions{{
    {"auto-fill-off", "auto-fill, timers and sprinklers off"},
    {"equipment-locked", "pump, heater and lights isolated and locked"},
    {"fittings-bagged", "lights, caps, grates and fittings out, bagged and labelled"},
    {"run-off-turned", "downpipes and deck run-off turned away"},
    {"fence-and-ladder", "fence or cover while empty, secured ladder"},
    {"outfall-limits", "pool water out at the outfall's limits of flow and chlorine"},
    {"relief-valve-open", "relief valve opened as the water goes down"},
    {"lines-blown-out", "lines blown out"},
    {"lines-plugged", "lines plugged: a weeping fitting ruins wet paint"},
    {"pre-wet", "shell wetted first"},
    {"small-areas", "small areas, rinsed before they dry"},
    {"rinse-until-no-chlorine",
     "rinsed until a strip shows no chlorine; nothing else on the shell that day"},
    {"sweep-and-rinse", "swept, rinsed, pumped dry"},
    {"scrub-where-it-sits",
     "stiff broom, hardest under the tile band, on scum lines, corners, steps and the floor round "
     "them"},
    {"full-rinse", "full rinse"},
    {"strip-method",
     "shrouded grinder with extraction, or wet high-pressure blasting, to the bare substrate"},
    {"scrape-or-blast", "scraper or high-pressure blaster, to a firm edge"},
    {"dust-bagged", "dust and flakes bagged the same day"},
    {"dust-off", "dust vacuumed off, then wiped off with a damp cloth; dry before the coat"},
    {"shrouded-tool", "shrouded sander or grinder on extraction"},
    {"glossy-corners", "corners, steps and coves by hand"},
    {"open-to-a-v", "cracks opened to a V down to their root with a masonry disc, dust out"},
    {"cut-out-drummy", "hollow render cut out to firm edges"},
    {"mix-small",
     "equal volumes of A and B, a spatula each and a third to mix, a clean can, only what is used "
     "in 30 to 40 min"},
    {"sand-flush", "cured overnight, sanded flush with 20 to 40 grit"},
    {"mortar-by-weight", "sand and cement, two to one, weighed; kept damp while it sets"},
    {"salts-brushed-off", "white salts brushed off dry before any water"},
    {"rust-opened", "rust spots opened and cut back"},
    {"acid-in-one-shift",
     "from the first acid to the last rinse in one shift, section by section where the shell is "
     "too large"},
    {"walls-first",
     "two thirds of the solution on the walls first, from a plastic watering can, nylon broom"},
    {"floor-last", "the last third on the floor"},
    {"flush-when-quiet", "flushed when the fizzing stops, about 5 min; never left to dry on"},
    {"scrub-bicarbonate", "bicarbonate scrubbed on in small areas, rinsed before it dries"},
    {"final-clean-rinse", "a last rinse with clean water"},
    {"sump-by-reading", "the sump dosed by what the meter reads"},
    {"pump-inside-limits", "pumped out only inside the sewer's limits"},
    {"relief-valve-dry", "relief valve dry for coating"},
    {"plugs-tight", "plugs tight, no fitting weeps"},
    {"rain-pools-off", "rain pools off the new coat"},
    {"leaves-off", "leaves off"},
    {"groundwater-after-rain", "groundwater read after each rain"},
    {"plugs-out", "plugs out of the lines"},
    {"fittings-back", "lights, gaskets, caps and grates back"},
    {"relief-valve-closed", "relief valve refitted and closed before any water"},
    {"equipment-checked", "pump, heater and lights checked by who may"},
    {"hose-on-pad", "hose on a pad"},
    {"heater-and-cleaner-off", "heater and cleaner off"},
    {"quiet-days", "first days nothing but salt or chlorine"},
    {"one-chemical-at-a-time", "then one chemical at a time, pump running, away from the walls"},
    {"auto-fill-on", "auto-fill and timers on again"},
    {"readings-and-batches", "readings and batches as built"},
    {"care-and-what-voids", "care of water and coat, and what voids it"},
    {"left-over-kits", "left-over kits for touch-up"},
}};

constexpr std::array<std::pair<std::string_view, AdditionWords>, 9> additions{{
    {"chlorine-liquid",
     {"Liquid chlorine",
      "diluted in a bucket of pool water, poured away from the walls, pump running"}},
    {"chlorine-granules",
     {"Chlorine granules", "dissolved first in a bucket, what settles left behind, pump running"}},
    {"bicarbonate",
     {"Sodium bicarbonate", "dissolved in a bucket, spread over the deep end; never with calcium"}},
    {"alkalinity-acid",
     {"Acid, against alkalinity",
      "into a bucket of pool water, acid last; poured slowly in the deep end, pump running; then "
      "air"}},
    {"ph-acid",
     {"Acid, against pH",
      "into a bucket of pool water, acid last; poured slowly in the deep end, pump running"}},
    {"ph-soda-ash",
     {"Soda ash, for pH",
      "only if air alone does not lift it: dissolved in a bucket, spread slowly"}},
    {"calcium-chloride",
     {"Calcium chloride flake",
      "a little at a time into a bucket of cold water: it heats; never with bicarbonate"}},
    {"stabiliser",
     {"Stabiliser",
      "dissolved in warm water first, or in a sock before the return; never left on the floor"}},
    {"salt",
     {"Salt",
      "dissolved in a barrel of pool water first, poured round the deep end, none left lying on "
      "the coat; cell off until it is gone"}},
}};

constexpr std::array<Entry, 3> advices{{
    {"aerate", "Air lifts the pH for nothing: return jets up, before any chemical."},
    {"drain-part-hardness",
     "The fill water is harder than any range: only softer water mixed in mends that."},
    {"drain-part-stabiliser",
     "The fill water holds more stabiliser than any range: only other water mends that."},
}};

constexpr std::array<Entry, 6> figure_words{{
    {"free_chlorine", "free chlorine"},
    {"alkalinity", "alkalinity"},
    {"ph", "pH"},
    {"hardness", "calcium hardness"},
    {"stabiliser", "stabiliser"},
    {"salt", "salt"},
}};

constexpr std::array<Entry, 4> methods{{
    {"table", "regulation table (10 NYCRR 6-1.30)"},
    {"table-corrected", "regulation table, stabiliser taken out"},
    {"equations", "standard equations (APHA 2330 B)"},
    {"equations-corrected", "standard equations (APHA 2330 B), stabiliser taken out"},
}};

constexpr std::array<Entry, 4> first_steps{{
    {"ask-leave", "ask the authority's leave"},
    {"take-out-chlorine", "take out the chlorine until a strip shows none; then by pH"},
    {"add-bicarbonate", "bicarbonate by the measured pH"},
    {"lower-ph", "with leave only, or tanked away; never mixed with acid or chlorine"},
}};

constexpr std::array<Entry, 3> uses{{
    {"chlorine-wash", "to take out its chlorine, at most"},
    {"sump", "for the sump, at most"},
    {"start-up", "for the new water"},
}};

constexpr std::array<Entry, 4> verdicts{{
    {"fits", "inside the limits"},
    {"treat", "outside the limits"},
    {"refused", "refused under pH 5.0"},
    {"hazardous", "hazardous waste until treated where it is"},
}};

}  // namespace

std::string_view action(std::string_view code) {
  return look_up(actions, code);
}
AdditionWords addition(std::string_view code) {
  return look_up(additions, code);
}
std::string_view advice(std::string_view code) {
  return look_up(advices, code);
}
std::string_view figure(std::string_view code) {
  return look_up(figure_words, code);
}
std::string_view index_method(std::string_view code) {
  return look_up(methods, code);
}
std::string_view first_step(std::string_view code) {
  return look_up(first_steps, code);
}
std::string_view purchase_use(std::string_view code) {
  return look_up(uses, code);
}
std::string_view verdict(std::string_view code) {
  return look_up(verdicts, code);
}

}  // namespace basinwright::report
