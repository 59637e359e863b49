// The saturation index of a water by several published methods, each named.
#pragma once

#include <optional>
#include <string_view>

#include "basinwright/chemistry/ph.hpp"
#include "basinwright/chemistry/unfit.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::chemistry {

/// A water as the test kit reads it; alkalinity and calcium hardness as CaCO3.
struct Water {
  Ph ph{};
  units::Concentration alkalinity{};
  units::Concentration hardness{};
  units::Concentration stabiliser{};  ///< Cyanuric acid.
  units::Concentration salt{};
  std::optional<units::Concentration> dissolved_solids{};  ///< Unknown: see dissolved_solids_of.
  units::Temperature temperature{};
};

/// Dissolved solids as measured, else salt + alkalinity + hardness, an assumption on the low side.
[[nodiscard]] units::Concentration dissolved_solids_of(const Water& water);

enum class IndexMethod {
  regulation_table,     ///< pH + TF + CF + AF - 12.1, or - 12.2 above 1000 mg/L dissolved.
  standard_equations,   ///< APHA 2330 B, from ionic strength and temperature.
  corrected_equations,  ///< The same after taking the stabiliser out of the alkalinity.
  engineering_formula   ///< The approximation of 1965 printed in corrosion handbooks.
};

/// The method's name for a page: "saturation index, regulation table" ...
[[nodiscard]] std::string_view name(IndexMethod method);
/// Where the method is printed.
[[nodiscard]] sources::Source source(IndexMethod method);

/// Above 0 the water leaves scale, below 0 it dissolves lime.
struct SaturationIndex {
  double value = 0.0;
  IndexMethod method = IndexMethod::regulation_table;
};

/// The index by one method. Unfit where the water is outside the method: 0 to 53.3 C, 5 to
/// 1000 mg/L of hardness and alkalinity for the table (linear between its rows); for the others
/// 0 to 90 C and both above 0.
/// @source 10-nycrr-6-1.30, table; arm-37-115, table 7; apha-2330b; engineering-saturation
[[nodiscard]] Checked<SaturationIndex> saturation_index(const Water& water, IndexMethod method);
/// The same, its derivation recorded at `key`.
[[nodiscard]] Checked<SaturationIndex> saturation_index(const Water& water,
                                                        IndexMethod method,
                                                        std::string_view key,
                                                        trace::Trace& trace);

/// Alkalinity less what the stabiliser's ions show of it:
/// TA - CYA x (50.043 / 129.075) / (1 + 10^(6.88 - pH)).
/// @source stabiliser-correction, first dissociation
[[nodiscard]] units::Concentration carbonate_alkalinity(const Water& water);

/// First and second dissociation of carbonic acid and solubility of calcite, as minus logarithms.
struct CarbonateConstants {
  double first = 0.0;
  double second = 0.0;
  double calcite = 0.0;
};

/// Plummer and Busenberg's equations.
/// @param temperature 0 to 90 C
/// @source plummer-busenberg-1982, equations (from memory)
[[nodiscard]] CarbonateConstants carbonate_constants(units::Temperature temperature);

}  // namespace basinwright::chemistry
