// What follows from a job: take-off, route, needs, purchases, programme, price, cautions.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/chemistry/chlorine.hpp"
#include "basinwright/chemistry/degrease.hpp"
#include "basinwright/chemistry/etch.hpp"
#include "basinwright/chemistry/neutralise.hpp"
#include "basinwright/coverage/coats.hpp"
#include "basinwright/coverage/kit_order.hpp"
#include "basinwright/job/job.hpp"
#include "basinwright/job/mixing_plan.hpp"
#include "basinwright/job/rate_book.hpp"
#include "basinwright/job/washes.hpp"
#include "basinwright/job/water_plan.hpp"
#include "basinwright/preparation/route.hpp"
#include "basinwright/quote/labour.hpp"
#include "basinwright/quote/price.hpp"
#include "basinwright/quote/purchases.hpp"
#include "basinwright/quote/rules.hpp"
#include "basinwright/sequence/programme.hpp"
#include "basinwright/shell/flotation.hpp"
#include "basinwright/shell/parts.hpp"
#include "basinwright/shell/take_off.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::job {

/// One body of water as taken off.
struct BodyResult {
  std::string name;
  shell::TakeOff take_off;
  units::Area adjusted;  ///< Sum of its named extra and deducted areas.
  /// Nothing without groundwater or without both thicknesses.
  std::optional<shell::Flotation> flotation;
  [[nodiscard]] units::Area painted() const { return take_off.painted_area + adjusted; }
};

/// What the job adds by name, surface by surface.
struct Named {
  units::Area walls, floor, steps;
  [[nodiscard]] units::Area sum() const { return walls + floor + steps; }
};

/// What is painted of one body of water in one section.
struct SectionPart {
  std::string section;  ///< As the job calls it, else its number from 1.
  std::size_t body = 0;
  shell::Part measured;
  Named named;
  [[nodiscard]] units::Area painted() const { return measured.painted + named.sum(); }
};

/// The painted area at both ends of the tape's tolerance, and the kits of all coats for it.
struct PaintedRange {
  int coats = 0;
  units::Area low, high;
  std::int64_t kits_low = 0, kits = 0, kits_high = 0;
};

/// All bodies together.
struct TakeOffResult {
  std::vector<BodyResult> bodies;
  shell::TakeOff total;
  units::Area adjusted;
  units::Area painted;             ///< With the adjustments: what is cleaned, etched and coated.
  std::vector<SectionPart> parts;  ///< Section by section, deep end first.
  PaintedRange range;
};

struct PrimerNeed {
  units::Area area;
  std::int64_t kits = 0;
  units::Volume litres;
};

struct Neutralise {
  chemistry::SurfaceWash surface;
  units::Mass sump_worst;
};

/// Filler in batches that are used before they set.
struct FillerNeed {
  units::Volume litres, batch;
  std::int64_t batches = 0;
};

/// What has to be read on the shell before it is coated.
struct Readings {
  int surface_ph = 0;
  int dryness_sheets = 0;
};

struct Quantities {
  std::optional<chemistry::Acid> acid;  ///< What the etch is mixed from.
  std::optional<chemistry::ChlorineWash> chlorine_wash;
  std::optional<chemistry::Degrease> degrease;
  std::optional<chemistry::Etch> etch;
  std::optional<Neutralise> neutralise;
  std::optional<PrimerNeed> primer;
  FillerNeed filler;
  units::Mass mortar;
  units::Mass dust;  ///< Old paint that comes off dry.
  Readings readings;
  std::vector<coverage::Coat> coats;
  coverage::Cut cut;
  std::int64_t kits = 0;
  coverage::KitOrder order;  ///< Kits of a coat by what cover and area may be.
};

/// Packs on an order.
struct Ordered {
  std::string item;
  quote::Measure measure = quote::Measure::volume;
  quote::Bought packs;
};

/// What is ordered from one supplier, and by when so that the programme holds.
struct Order {
  std::string supplier;  ///< Empty: the rate book names none.
  std::optional<units::Duration> lead;
  std::optional<dates::Date> needed;  ///< On the yard; nothing without dates.
  std::optional<dates::Date> by;      ///< Nothing without a lead time or dates.
  bool late = false;                  ///< That day is over.
  std::vector<Ordered> packs;
  money::Money total;
};

/// What has to go somewhere. `amount` is in litres, kilograms or pieces as `what` says.
struct Waste {
  std::string what;     ///< A code: "pool-water", "etch-wash", "dust" ...
  double amount = 0.0;  ///< In `unit`; 0 where nobody can say.
  std::string unit;     ///< "m3", "L", "kg", "pieces" or empty.
  std::string goes_to;  ///< A code: "outfall", "sewer-by-leave" ...
};

/// A hazard that the page must name, with the figure that belongs to it where there is one.
struct Caution {
  std::string code;
  double figure = 0.0;
};

/// One way an unknown turns out, with its total and refill date.
struct Branch {
  std::string code;  ///< "test-passes", "strip".
  std::optional<money::Money> total;
  std::optional<dates::Moment> refill_done;
  std::vector<std::string> steps;  ///< Tasks of its route.
};

struct Plan {
  dates::Date first_day;
  TakeOffResult take_off;
  std::optional<shell::Flotation> flotation;  ///< Of the body nearest to floating.
  preparation::Route route;
  materials::CoatingSystem system;
  Quantities quantities;
  Mixes mixes;
  MixingPlan mixing;  ///< Empty without dates, but for the marks.
  Discharge discharge;
  WaterPlan water;
  std::vector<quote::Purchase> purchases;
  /// Last day to order each purchase, by its suppliers' leads; nothing when that is not known.
  std::vector<std::optional<dates::Date>> order_by;
  std::vector<Order> orders;  ///< In the order of the suppliers' names.
  std::vector<quote::Counted> consumables, protection;
  std::vector<quote::Hired> hire;
  std::vector<Waste> waste;
  std::vector<sequence::Work> work;
  std::vector<quote::LabourLine> labour;
  units::Area reworked;  ///< Abraded again after a window missed on purpose.
  std::optional<quote::Price> price;
  std::vector<Branch> either;  ///< Empty: nothing is open.
  sequence::Programme programme;
  std::vector<Caution> cautions;
  std::vector<std::string> provisional;  ///< Codes of what makes the price provisional.
  std::vector<std::string> unpriced;     ///< Items the rate book has no pack of.
  units::Flow tap;
  std::int64_t painters_for_one_morning = 0;
  int people_for_one_etch = 0;  ///< Who would bring the etch to its last rinse in one shift.
  trace::Trace trace;

  /// Whether paint or render is ground dry, so that there is dust.
  [[nodiscard]] bool ground_dry() const {
    return route.abraded + route.stripped + reworked > units::Area();
  }
  [[nodiscard]] bool stopped() const { return route.stop.has_value(); }
};

/// What the outside world adds to a job.
struct Circumstances {
  dates::Date today;
  std::optional<dates::Date> start;  ///< Overrides the job's own.
  bool explain = false;              ///< Record how every number came about.
  /// The weather read, if any; must outlive the call.
  const weather::Record* weather = nullptr;
  /// What the local clock is ahead of universal time on the first day, where a weather file says
  /// it; the job's own word goes before.
  std::optional<units::Duration> clock_offset;
  bool reasons = true;  ///< Find out why, when there are no dates: dear.
  /// What is done, of a job that has begun.
  std::optional<sequence::Past> past = {};
  bool take_off_only = false;  ///< Areas, sections and kits; no dates, purchases and price.
};

/// Why a job cannot be planned although each file is right on its own.
struct Mismatch {
  std::string code;     ///< "unknown-system".
  std::string pointer;  ///< Into the job file.
  std::string message, hint;
};

/// Job, rates and circumstances against each other; empty when they fit.
[[nodiscard]] std::vector<Mismatch> mismatches(const Job& job, const RateBook& rates);

/// The plan. A stopped route ends it early: no purchases, no price, no dates.
/// @throws std::logic_error when there are mismatches or no body of water
[[nodiscard]] Plan make_plan(const Job& job, const RateBook& rates, const Circumstances& now);

}  // namespace basinwright::job
