// The limits and sizes that the route goes by.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::preparation {

using sources::Sourced;

/// Where the rules of thumb turn over.
struct Thresholds {
  Sourced<units::Length> crack_hairline{units::millimetres(1),
                                        {sources::Kind::common_practice, "cracks", "hairline"}};
  Sourced<units::Length> crack_widest{units::millimetres(5),
                                      {sources::Kind::common_practice, "cracks", "stop"}};
  Sourced<units::Length> divot_filler{
      units::millimetres(10), {sources::Kind::common_practice, "divots", "filler or mortar"}};
  Sourced<units::Fraction> strip_share{
      units::percent(25), {sources::Kind::common_practice, "loose-paint", "strip all"}};
  Sourced<units::Fraction> prime_share{units::percent(10),
                                       {sources::Kind::assumed, "minor-patches", "prime above"}};
  Sourced<units::Duration> cement_age{units::days(28),
                                      {sources::Kind::common_practice, "new-cement", "28 days"}};
  Sourced<units::Fraction> drummy_share{units::percent(5),
                                        {sources::Kind::assumed, "drummy-render", "stop above"}};
  Sourced<units::Duration> filler_cure{units::hours(12),
                                       {sources::Kind::common_practice, "filler", "overnight"}};
  /// Paint of a later year counts as free of lead: sold in the United States after 27 February
  /// 1978 it may hold none to speak of. Other countries came later, and industrial paint later
  /// still.
  Sourced<double> lead_until{1978,
                             {sources::Kind::published, "16-cfr-1303", "1303.4, paint made after"}};
  /// Depth to which a crack is opened when its own depth was not measured.
  Sourced<units::Length> crack_opening{units::millimetres(10),
                                       {sources::Kind::assumed, "cracks", "opened to a V, depth"}};
  /// Width worked over along a crack.
  Sourced<units::Length> crack_worked{units::metres(0.1),
                                      {sources::Kind::assumed, "cracks", "a hand's width"}};
  /// Thickness of render cut out where it is hollow.
  Sourced<units::Length> render_thickness{
      units::millimetres(20), {sources::Kind::assumed, "drummy-render", "cut out, thickness"}};
  /// What is mixed of the filler is used within this; 30 to 40 minutes are usual.
  Sourced<units::Duration> filler_work{units::minutes(30),
                                       {sources::Kind::common_practice, "filler", "used within"}};
  /// More than this at once heats up and sets in the can.
  Sourced<units::Volume> filler_batch{units::litres(0.5),
                                      {sources::Kind::assumed, "filler-batch", "mixed at once"}};
  /// Sand and cement as mixed and laid.
  Sourced<units::Concentration> mortar_density{
      units::kilograms_per_cubic_metre(2000),
      {sources::Kind::from_memory, "mortar-density", "2:1"}};
  /// What stripping takes off, and what abrading does.
  Sourced<units::Length> old_film{units::millimetres(0.5),
                                  {sources::Kind::assumed, "old-paint", "film stripped"}};
  Sourced<units::Length> abraded_film{units::millimetres(0.05),
                                      {sources::Kind::assumed, "old-paint", "film abraded"}};
  Sourced<units::Concentration> film_density{
      units::kilograms_per_cubic_metre(1500),
      {sources::Kind::assumed, "old-paint", "density of dry paint"}};
};

}  // namespace basinwright::preparation
