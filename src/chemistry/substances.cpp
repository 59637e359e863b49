#include "basinwright/chemistry/substances.hpp"

#include <initializer_list>

#include "constants.hpp"

namespace basinwright::chemistry {
namespace {

using enum Element;

struct Atoms {
  Element element;
  double count;
};

MolarMass sum(std::initializer_list<Atoms> atoms) {
  double grams = 0.0;
  for (const Atoms& part : atoms) {
    grams += part.count * atomic_weight(part.element).value.in_grams_per_mole();
  }
  return grams_per_mole(grams);
}

double abridged(Element element) {
  switch (element) {
    case hydrogen:
      return 1.0080;
    case carbon:
      return 12.011;
    case nitrogen:
      return 14.007;
    case oxygen:
      return 15.999;
    case sodium:
      return 22.990;
    case phosphorus:
      return 30.974;
    case sulfur:
      return 32.06;
    case chlorine:
      return 35.45;
    case calcium:
      return 40.078;
  }
  return 0.0;
}

}  // namespace

sources::Sourced<MolarMass> atomic_weight(Element element) {
  return {grams_per_mole(abridged(element)), molar_masses};
}

std::string_view formula(Substance substance) {
  switch (substance) {
    case Substance::hydrogen_chloride:
      return "HCl";
    case Substance::water:
      return "H2O";
    case Substance::carbon_dioxide:
      return "CO2";
    case Substance::chlorine:
      return "Cl2";
    case Substance::sodium_chloride:
      return "NaCl";
    case Substance::sodium_bicarbonate:
      return "NaHCO3";
    case Substance::sodium_carbonate:
      return "Na2CO3";
    case Substance::sodium_bisulfate:
      return "NaHSO4";
    case Substance::sodium_hypochlorite:
      return "NaOCl";
    case Substance::calcium_hypochlorite:
      return "Ca(OCl)2";
    case Substance::calcium_carbonate:
      return "CaCO3";
    case Substance::calcium_hydroxide:
      return "Ca(OH)2";
    case Substance::calcium_chloride:
      return "CaCl2";
    case Substance::calcium_chloride_dihydrate:
      return "CaCl2.2H2O";
    case Substance::cyanuric_acid:
      return "C3H3N3O3";
    case Substance::trisodium_phosphate:
      return "Na3PO4";
    case Substance::sodium_thiosulfate_pentahydrate:
      return "Na2S2O3.5H2O";
    case Substance::sodium_bisulfite:
      return "NaHSO3";
    case Substance::sodium_sulfite:
      return "Na2SO3";
  }
  return "";
}

MolarMass molar_mass(Substance substance) {
  switch (substance) {
    case Substance::hydrogen_chloride:
      return sum({{hydrogen, 1}, {chlorine, 1}});
    case Substance::water:
      return sum({{hydrogen, 2}, {oxygen, 1}});
    case Substance::carbon_dioxide:
      return sum({{carbon, 1}, {oxygen, 2}});
    case Substance::chlorine:
      return sum({{chlorine, 2}});
    case Substance::sodium_chloride:
      return sum({{sodium, 1}, {chlorine, 1}});
    case Substance::sodium_bicarbonate:
      return sum({{sodium, 1}, {hydrogen, 1}, {carbon, 1}, {oxygen, 3}});
    case Substance::sodium_carbonate:
      return sum({{sodium, 2}, {carbon, 1}, {oxygen, 3}});
    case Substance::sodium_bisulfate:
      return sum({{sodium, 1}, {hydrogen, 1}, {sulfur, 1}, {oxygen, 4}});
    case Substance::sodium_hypochlorite:
      return sum({{sodium, 1}, {oxygen, 1}, {chlorine, 1}});
    case Substance::calcium_hypochlorite:
      return sum({{calcium, 1}, {chlorine, 2}, {oxygen, 2}});
    case Substance::calcium_carbonate:
      return sum({{calcium, 1}, {carbon, 1}, {oxygen, 3}});
    case Substance::calcium_hydroxide:
      return sum({{calcium, 1}, {oxygen, 2}, {hydrogen, 2}});
    case Substance::calcium_chloride:
      return sum({{calcium, 1}, {chlorine, 2}});
    case Substance::calcium_chloride_dihydrate:
      return sum({{calcium, 1}, {chlorine, 2}, {hydrogen, 4}, {oxygen, 2}});
    case Substance::cyanuric_acid:
      return sum({{carbon, 3}, {hydrogen, 3}, {nitrogen, 3}, {oxygen, 3}});
    case Substance::trisodium_phosphate:
      return sum({{sodium, 3}, {phosphorus, 1}, {oxygen, 4}});
    case Substance::sodium_thiosulfate_pentahydrate:
      return sum({{sodium, 2}, {sulfur, 2}, {hydrogen, 10}, {oxygen, 8}});
    case Substance::sodium_bisulfite:
      return sum({{sodium, 1}, {hydrogen, 1}, {sulfur, 1}, {oxygen, 3}});
    case Substance::sodium_sulfite:
      return sum({{sodium, 2}, {sulfur, 1}, {oxygen, 3}});
  }
  return {};
}

MolarMass calcium_carbonate_equivalent() {
  return grams_per_mole(molar_mass(Substance::calcium_carbonate).in_grams_per_mole() / 2.0);
}

}  // namespace basinwright::chemistry
