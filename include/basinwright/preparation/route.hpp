// From findings to the steps that will hold, each with its reason; or the reason to stop.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/preparation/findings.hpp"
#include "basinwright/preparation/thresholds.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::preparation {

// Reasons, actions and hold points are codes; the words for them stand in the report.

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
  std::vector<std::string> actions;  ///< What it is made of, in order ("relief-valve-open").
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
  friend bool operator==(const Stop&, const Stop&) = default;
};

struct Route {
  std::optional<Stop> stop;  ///< The first in the order of the work.
  std::vector<Stop> also;    ///< What stops it after that.
  std::vector<Step> steps;
  std::vector<TreatedRegion> regions;    ///< As the question gave them.
  std::vector<std::string> provisional;  ///< Codes of what is missing.
  bool coating_untested = false;         ///< Both branches are to be priced.
  bool lead_open = false;                ///< Nobody knows whether the old paint holds lead.
  units::Area stripped;                  ///< Area whose paint comes off whole.
  units::Area abraded;
  units::Area etched;
  units::Area primed;
  bool thin_first_coat = false;
  units::Volume filler;                        ///< Epoxy filler in cracks and shallow divots.
  units::Area filler_area;                     ///< Worked over where filler goes.
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
  bool with_actions = true;     ///< Say what is to be done in each step.
  bool start_fixed = false;     ///< The first day may not move, so that young cement stops the job.
};

/// Whether nobody knows yet that a part's old coat is epoxy.
[[nodiscard]] bool is_untested(const Region& region);
/// Share of a part's paint that is loose, its share of the blisters with it.
[[nodiscard]] units::Fraction loose_of(const Region& region, const Question& question);
/// Whether a part's paint is old enough to hold lead, or of unknown age.
[[nodiscard]] bool may_hold_lead(const Region& region, const Thresholds& thresholds);
/// Whether all paint of a part comes off: too loose, or untested and taken as failed.
[[nodiscard]] bool is_stripped(const Region& region, const Question& question);

/// The route for what was found. A stopped route ends with the step that stops it. Order: set out,
/// drain, coating test, chlorine wash, degrease, strip, loose paint, repair, abrade, dust, pressure
/// clean, etch, neutralise, dry, test, vacuum, mask, prime, coats.
/// @source cp "preparation", mil-hdbk-1110 4.2.4, 5.14
[[nodiscard]] Route route(const Question& question, trace::Trace& trace);

}  // namespace basinwright::preparation
