#include <fmt/format.h>
#include <array>
#include <utility>

#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"
#include "cells.hpp"
#include "word_table.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

constexpr std::array<std::pair<std::string_view, CautionWords>, 25> cautions{{
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
      "chlorine reading of zero between. {amount} of the liquid used here gives about {figure} of "
      "chlorine gas.",
      "niosh-idlh 7782-50-5"}},
    {"acid-and-granules",
     {"Acid and chlorine never meet, in either order: different days, stored apart, rinsed to a "
      "chlorine reading of zero between. {amount} of the granules used here gives about {figure} "
      "of chlorine gas.",
      "niosh-idlh 7782-50-5"}},
    {"neat-acid",
     {"This mix fills a deep end with acid fume: about {figure} ppm in still air over it, where 45 "
      "ppm "
      "is dangerous to life. Forced air from the lowest point, acid-gas masks, nobody alone. "
      "Strong "
      "acid also warms as it meets water: slowly, acid into water.",
      "niosh-idlh 7647-01-0"}},
    {"sewer-floor",
     {"The lowest pH entered for this sewer is under 5.0, which no public sewer may take: the "
      "doses "
      "here go to 5.0.",
      "40 CFR 403.5(b)(2)"}},
    {"blisters",
     {"Blisters are counted as loose paint. Cut some open: water behind them comes through the "
      "shell "
      "and will lift the new coat too.",
      "common practice"}},
    {"rust",
     {"Rust spots: a nail or tie is cut back and filled; a bar of the shell is for a licensed "
      "engineer.",
      "common practice"}},
    {"efflorescence",
     {"White salts are brushed off dry before the etch; where they come back, water comes through "
      "the shell.",
      "mil-hdbk-1110 5.14"}},
    {"vapours-sink",
     {"Acid fume, solvent and carbon dioxide sink to the deep end: draw air from the lowest point, "
      "two people, a ladder, a way to call help.{figure}",
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
      "disc, {figure} for one of {amount}, filter 99 %. The deep end counts as enclosed: more than "
      "4 h there ask for a dust mask too.",
      "29 CFR 1926.1153 table 1"}},
    {"lead",
     {"Old paint, or paint of unknown age, may hold lead: no abrading or blasting before it has "
      "been tested.",
      "mil-hdbk-1110 6.3.2"}},
    {"empty-shell-floats",
     {"An empty shell can float or crack: measure the groundwater first, never drain soon after "
      "heavy "
      "rain, relief valve open while empty. A licensed engineer decides.",
      "em-1110-2-2100"}},
    {"rain-before-drain",
     {"{figure} of rain in the two days before the drain may have raised the groundwater: read "
      "its level first, and put the drain off when it stands above the floor.",
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

}  // namespace

CautionWords caution(std::string_view code) {
  return look_up(cautions, code);
}
std::string caution_text(const job::Caution& caution, units::System system) {
  const bool us = system == units::System::us;
  const auto gas = [&](units::Volume v) {
    return grouped(us ? units::show_in(v, units::cubic_feet, 1)
                      : units::show_in(v, units::litres, 0));
  };
  std::string_view amount;
  std::string figure = units::fixed(caution.figure, 0);
  const units::Volume volume = units::litres(caution.figure);
  if (caution.code == "acid-and-chlorine") {
    amount = us ? "A US gallon" : "A litre";
    figure = gas(us ? volume * units::us_gallons(1).in(units::litres) : volume);
  } else if (caution.code == "acid-and-granules") {
    amount = us ? "A pound" : "A kilogram";
    figure = gas(us ? volume * units::pounds(1).in(units::kilograms) : volume);
  } else if (caution.code == "vapours-sink") {
    figure = caution.figure > 0.0
                 ? fmt::format(" Neutralising all the acid gives up to {} of carbon dioxide.",
                               gas(volume))
                 : "";
  } else if (caution.code == "silica") {
    amount = us ? "5 in" : "125 mm";
    const double cfm = units::litres(1000.0 * caution.figure).in(units::cubic_feet) / 60.0;
    figure = us ? units::fixed(cfm, 0) + " cfm" : figure + " m³/h";
  } else if (caution.code == "rain-before-drain") {
    const units::Length rain = units::millimetres(caution.figure);
    figure =
        us ? units::show_in(rain, units::inches, 1) : units::show_in(rain, units::millimetres, 0);
  }
  return fmt::format(fmt::runtime(report::caution(caution.code).text),
                     fmt::arg("amount", amount),
                     fmt::arg("figure", figure));
}
std::string_view waste(std::string_view code) {
  return look_up(wastes, code);
}
std::string_view destination(std::string_view code) {
  return look_up(destinations, code);
}

}  // namespace basinwright::report
