// The acid etch: how strong on which surface, how much, and what goes into each bucket.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/unfit.hpp"
#include "basinwright/chemistry/worked_area.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

/// What the shell's surface is made of.
enum class Substrate { render, concrete, plaster_soft, plaster_hard, pebble, fibreglass };

/// A surface as the etch sees it.
struct EtchSurface {
  Substrate substrate = Substrate::render;
  bool painted_with_epoxy = true;        ///< Abraded epoxy decides, whatever is below it.
  std::optional<units::Duration> age{};  ///< Since the cement was laid; unknown counts as old.
  bool strong_asked = false;             ///< The data sheet asks for stronger than 1 : 2.
};

inline constexpr sources::Sourced<units::Duration> youngest_cement{
    units::days(28.0), {sources::Kind::common_practice, "new-cement", "28 days"}};
inline constexpr sources::Sourced<units::Duration> render_is_old{
    units::days(90.0), {sources::Kind::common_practice, "etch-ratios", "new render"}};

/// The rows of the table of mixes. Painted epoxy goes before its substrate.
enum class EtchRow { painted, new_render, render, concrete, plaster_soft, plaster_hard, pebble };
/// The row's key in the rate book ("new_render").
[[nodiscard]] std::string_view name(EtchRow row);

/// One row: acid to water, and how much of it an area takes where that is not as everywhere.
struct EtchRule {
  sources::Sourced<Parts> parts;
  std::optional<sources::Sourced<units::ApplicationRate>> solution{};
};
using EtchRules = std::array<EtchRule, 7>;
/// In the order of EtchRow.
/// @source etch-ratios, one row a surface
inline constexpr EtchRules etch_rules{
    {{{{1, 2}, {sources::Kind::common_practice, "etch-ratios", "painted epoxy"}}},
     {{{1, 2}, {sources::Kind::common_practice, "etch-ratios", "new render"}}},
     {{{1, 3}, {sources::Kind::common_practice, "etch-ratios", "render"}}},
     {{{1, 3}, {sources::Kind::assumed, "etch-ratios", "concrete"}}},
     {{{1, 1}, {sources::Kind::common_practice, "etch-ratios", "plaster_soft"}}},
     {{{1, 0}, {sources::Kind::common_practice, "etch-ratios", "plaster_hard"}}},
     {{{1, 3}, {sources::Kind::common_practice, "etch-ratios", "pebble"}}}}};
/// What a stronger row falls back to when no data sheet asks for it.
inline constexpr sources::Sourced<Parts> strongest_unasked{
    {1, 2}, {sources::Kind::common_practice, "etch-ratios", "strong mixes"}};
/// Whether one mix holds more acid than another.
[[nodiscard]] bool stronger(Parts one, Parts other);

/// Acid : water for a surface, why, and where the rule comes from.
struct EtchRatio {
  Parts parts;
  sources::Source source;
  std::string reason;
  bool milder_than_rule = false;  ///< The rule is stronger, but no data sheet asks for it.
  EtchRow row = EtchRow::painted;
};

inline constexpr sources::Sourced<units::ApplicationRate> etch_solution_rate{
    units::litres_per_square_metre(1.05), {sources::Kind::assumed, "etch-solution-rate", "rate"}};
inline constexpr sources::Sourced<units::Fraction> etch_wall_share{
    units::fraction(2.0 / 3.0), {sources::Kind::common_practice, "etch-order", "walls"}};
inline constexpr sources::Sourced<double> pebble_area_factor{
    1.2, {sources::Kind::assumed, "pebble-area", "factor"}};

/// The area that counts: exposed aggregate 1.2 x its flat area, anything else as it is.
[[nodiscard]] units::Area counted_area(Substrate substrate, units::Area flat);

/// Which part of the shell a patch is; the whole gives walls two thirds and the floor the rest.
enum class EtchPart { whole, walls, floor };

/// One surface to etch.
struct EtchPatch {
  std::string where = "all";
  WorkedArea flat{};
  EtchPart part = EtchPart::whole;
  EtchSurface surface{};
};

/// Rates that the rate book may replace.
struct EtchRates {
  sources::Sourced<units::ApplicationRate> solution = etch_solution_rate;
  sources::Sourced<units::Fraction> wall_share = etch_wall_share;
  sources::Sourced<double> pebble_factor = pebble_area_factor;
  EtchRules rules = etch_rules;

  [[nodiscard]] const EtchRule& rule(EtchRow row) const {
    return rules[static_cast<std::size_t>(row)];
  }
  /// Solution an area of that row takes.
  [[nodiscard]] const sources::Sourced<units::ApplicationRate>& solution_on(EtchRow row) const {
    const auto& own = rule(row).solution;
    return own ? *own : solution;
  }
};

/// The mix for a surface. Unfit: fibreglass, and unpainted cement younger than 28 days.
[[nodiscard]] Checked<EtchRatio> etch_ratio(const EtchSurface& surface,
                                            const EtchRates& rates = {});

/// The mix for one patch.
struct EtchMix {
  std::string where;
  EtchRatio ratio;
  units::Area counted;
  units::Volume solution, acid, water;
  units::Volume wall_solution, floor_solution;
  Acid mixed;
  bool above_published = false;  ///< Stronger than 5 to 10 % by mass.
};

/// The whole etch.
struct Etch {
  units::Volume solution, acid, water;
  units::Volume wall_solution, floor_solution;
  std::vector<EtchMix> mixes;
};

/// solution = rate x counted area; acid = solution x parts of acid / all parts; the contraction of
/// volume (under 0.5 %) is left out. Records quantities.etch.* and one set per mix.
/// @param patches at least one; Unfit when any of them is
/// @throws std::invalid_argument without a patch, or for an area that is negative or not finite
[[nodiscard]] Checked<Etch> etch(const std::vector<EtchPatch>& patches,
                                 const Acid& stock,
                                 const EtchRates& rates,
                                 trace::Trace& trace);

/// What goes into each vessel: `full` alike, then one more with the rest when there is one. A rest
/// of a twentieth of a vessel or less is shared out over the full ones.
struct MixCard {
  units::Volume vessel;  ///< How far it is filled.
  int full = 0;
  units::Volume water, acid;  ///< Of a full one; water first.
  units::Volume last_water, last_acid;
  [[nodiscard]] int count() const { return full + (last_acid.si() > 0.0 ? 1 : 0); }
};

/// @param vessel usable volume of the bucket or watering can, above 0
/// @param solution to be mixed, not negative
/// @throws std::invalid_argument outside these
[[nodiscard]] MixCard mix_card(Parts parts, units::Volume vessel, units::Volume solution);

/// The most calcite this much acid can take off, were all of it spent there:
/// c V / 2 x M(CaCO3) / density of calcite.
/// @source calcite-density, value
[[nodiscard]] units::Length deepest_etch(const Acid& mix, units::ApplicationRate spread);

}  // namespace basinwright::chemistry
