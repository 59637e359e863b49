// From findings to the steps that will hold, each with its reason; or the reason to stop.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/preparation/findings.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"
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
  /// Depth to which a crack is opened when its own depth was not measured.
  Sourced<units::Length> crack_opening{units::millimetres(10),
                                       {sources::Kind::assumed, "cracks", "opened to a V, depth"}};
  /// Width worked over along a crack.
  Sourced<units::Length> crack_worked{units::metres(0.1),
                                      {sources::Kind::assumed, "cracks", "a hand's width"}};
  /// Thickness of render cut out where it is hollow.
  Sourced<units::Length> render_thickness{
      units::millimetres(20), {sources::Kind::assumed, "drummy-render", "cut out, thickness"}};
};

// Reasons and hold points are codes; the words for them stand in the report.

/// A limit that somebody signs for before work goes on ("no-gloss").
struct HoldPoint {
  std::string code;
};

/// One step of the route. `task` is a task name of the contract (`degrease`, `etch-walls`).
struct Step {
  std::string task;
  std::string why;   ///< A code, such as "oils".
  units::Area area;  ///< The area it covers; 0 where that has no meaning.
  std::vector<HoldPoint> holds;
};

/// What is done to one region before the washes that all regions get.
enum class Treatment {
  bare,     ///< Nothing to take off.
  abraded,  ///< The old coat stays, dulled.
  stripped  ///< The old coat comes off whole.
};
struct TreatedRegion {
  std::string where;
  units::Area area;
  Substrate substrate = Substrate::render;
  Treatment treatment = Treatment::abraded;
};

/// The step that stops the job, and why ("softened", at which part of the shell).
struct Stop {
  std::string step;
  std::string why;
  std::string where;
};

struct Route {
  std::optional<Stop> stop;
  std::vector<Step> steps;
  std::vector<TreatedRegion> regions;    ///< As the question gave them.
  std::vector<std::string> provisional;  ///< Codes of what is missing.
  bool coating_untested = false;         ///< Both branches are to be priced.
  units::Area stripped;                  ///< Area whose paint comes off whole.
  units::Area abraded;
  units::Area etched;
  units::Area primed;
  bool thin_first_coat = false;
  units::Volume filler;                        ///< Epoxy filler in cracks and shallow divots.
  units::Volume mortar;                        ///< Sand and cement in deep ones.
  std::optional<units::Duration> cement_wait;  ///< Time still to pass before the first wash acid.

  [[nodiscard]] bool has(std::string_view task) const;
};

/// A route's question: regions that share out the painted area, the condition, the thresholds.
struct Question {
  std::vector<Region> regions;
  Condition condition;
  Thresholds thresholds;
  int coats = 2;                ///< Coats of the coating, the primer not counted.
  bool strip_untested = false;  ///< Take an untested coating as one that failed its test.
};

/// The route for what was found. A stopped route ends with the step that stops it. Order: set out,
/// drain, coating test, chlorine wash, degrease, loose paint, repair, abrade, dust, pressure clean,
/// etch, neutralise, dry, test, vacuum, mask, prime, coats.
/// @source cp "preparation", mil-hdbk-1110 4.2.4, 5.14
[[nodiscard]] Route route(const Question& question, trace::Trace& trace);

}  // namespace basinwright::preparation
