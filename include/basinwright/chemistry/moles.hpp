// Amount of substance: moles, molarity and molar mass as types of their own.
#pragma once

#include <compare>

#include "basinwright/units/quantity.hpp"

namespace basinwright::chemistry {

/// An amount of substance, or of equivalents where the place that uses it says so.
class Moles {
 public:
  constexpr Moles() = default;
  [[nodiscard]] constexpr double count() const { return count_; }
  friend constexpr bool operator==(Moles, Moles) = default;
  friend constexpr std::partial_ordering operator<=>(Moles a, Moles b) {
    return a.count_ <=> b.count_;
  }
  friend constexpr Moles moles(double count);

 private:
  double count_ = 0.0;
};

/// An amount of substance in a volume, said in mol/L.
class Molarity {
 public:
  constexpr Molarity() = default;
  [[nodiscard]] constexpr double in_moles_per_litre() const { return per_litre_; }
  friend constexpr bool operator==(Molarity, Molarity) = default;
  friend constexpr std::partial_ordering operator<=>(Molarity a, Molarity b) {
    return a.per_litre_ <=> b.per_litre_;
  }
  friend constexpr Molarity moles_per_litre(double value);

 private:
  double per_litre_ = 0.0;
};

/// The mass of one mole, said in g/mol.
class MolarMass {
 public:
  constexpr MolarMass() = default;
  [[nodiscard]] constexpr double in_grams_per_mole() const { return grams_; }
  friend constexpr bool operator==(MolarMass, MolarMass) = default;
  friend constexpr std::partial_ordering operator<=>(MolarMass a, MolarMass b) {
    return a.grams_ <=> b.grams_;
  }
  friend constexpr MolarMass grams_per_mole(double value);

 private:
  double grams_ = 0.0;
};

[[nodiscard]] constexpr Moles moles(double count) {
  Moles made;
  made.count_ = count;
  return made;
}
[[nodiscard]] constexpr Molarity moles_per_litre(double value) {
  Molarity made;
  made.per_litre_ = value;
  return made;
}
[[nodiscard]] constexpr MolarMass grams_per_mole(double value) {
  MolarMass made;
  made.grams_ = value;
  return made;
}

/// n = m / M.
[[nodiscard]] constexpr Moles operator/(units::Mass mass, MolarMass molar) {
  return moles(mass.si() * 1000.0 / molar.in_grams_per_mole());
}
/// m = n M.
[[nodiscard]] constexpr units::Mass operator*(Moles amount, MolarMass molar) {
  return units::Mass::from_si(amount.count() * molar.in_grams_per_mole() / 1000.0);
}
/// n = c V.
[[nodiscard]] constexpr Moles operator*(Molarity strength, units::Volume volume) {
  return moles(strength.in_moles_per_litre() * volume.si() * 1000.0);
}
/// c = n / V.
[[nodiscard]] constexpr Molarity operator/(Moles amount, units::Volume volume) {
  return moles_per_litre(amount.count() / (volume.si() * 1000.0));
}
/// Mass concentration = c M.
[[nodiscard]] constexpr units::Concentration operator*(Molarity strength, MolarMass molar) {
  return units::Concentration::from_si(strength.in_moles_per_litre() * molar.in_grams_per_mole());
}
/// c = mass concentration / M.
[[nodiscard]] constexpr Molarity operator/(units::Concentration content, MolarMass molar) {
  return moles_per_litre(content.si() / molar.in_grams_per_mole());
}

}  // namespace basinwright::chemistry
