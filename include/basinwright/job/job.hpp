// A job as given: everything the user said, settled, with the stated default where they did not.
#pragma once

#include <array>
#include <deque>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/calendar.hpp"
#include "basinwright/dates/date.hpp"
#include "basinwright/job/refill.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/preparation/findings.hpp"
#include "basinwright/quote/price.hpp"
#include "basinwright/sequence/programme.hpp"
#include "basinwright/shell/pool.hpp"
#include "basinwright/shell/take_off.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/parse.hpp"

namespace basinwright::job {

using sources::Sourced;

struct Party {
  std::string name, address, registration, insurance;
};

struct Heading {
  std::string number, revision;
  Party client, contractor;
  std::optional<dates::Date> quoted_on, start;
  std::optional<int> valid_days;
};

struct Permit {
  std::string what;
  std::optional<units::Duration> lead;
};

struct Groundwater {
  units::Length below_rim;
  std::optional<dates::Date> measured_on;
};

/// A jump of the local clock: at `at`, it moves by `minutes`.
struct Site {
  std::optional<double> latitude, longitude;
  std::optional<double> utc_offset;  ///< Hours the local clock is ahead on the first day.
  std::optional<units::Length> elevation, access_width, access_carry;
  std::string parking, emergency, hours;
  std::optional<bool> residual_current_device;
  std::optional<units::Flow> tap_flow, gully_flow;
  std::string gully;
  std::optional<double> ph_min, ph_max;
  std::optional<double> sump_ph;             ///< What the collected etch water reads.
  std::optional<units::Volume> sump_volume;  ///< How much of it there is; nothing: all of it.
  std::vector<Permit> permits;
  std::optional<Groundwater> groundwater;
  std::vector<dates::ClockChange> clock_changes;
  sequence::MeanTemperatures temperatures;
};

/// A named area added to (or, negative, taken off) the painted area of a surface.
struct Adjustment {
  std::string name;
  units::Area area;
  std::string where = "walls";  ///< `walls`, `floor` or `steps`.
};

struct Body {
  shell::Pool pool;
  std::vector<Adjustment> adjust;
  std::string pointer;  ///< Where it stands in the job file.
  bool rim_to_water_given = false, tape_tolerance_given = false;
  std::optional<shell::TakeOff> taken_off;  ///< When its geometry was checked; nothing: not yet.
};

/// What was found on a part of the shell; the first that matches a part holds.
struct Surface {
  std::string where = "all";
  preparation::Substrate substrate = preparation::Substrate::render;
  preparation::ExistingCoating coating = preparation::ExistingCoating::epoxy;
  preparation::AcetoneTest acetone_test = preparation::AcetoneTest::not_done;
  std::optional<dates::Date> laid_on, tested_on;
  std::optional<int> painted_year;
  std::string places;
  Sourced<units::Fraction> bare_share{
      units::Fraction(), {sources::Kind::assumed, "surface-defaults", "no bare patches"}};
  Sourced<units::Fraction> loose_share{
      units::Fraction(), {sources::Kind::assumed, "surface-defaults", "no loose paint"}};
  bool gloss = true;
};

struct Coating {
  std::string system;
  std::string system_pointer;  ///< Where its name stands in the job file.
  std::string colour;
  std::optional<int> coats;
  bool colour_change = false;
  std::vector<std::string> slip_resistant;
  struct Section {
    std::string name;
    units::Length to;
  };
  std::vector<Section> sections;
};

struct CrewTerms {
  Sourced<double> people{3.0, {sources::Kind::assumed, "crew", "people"}};
  Sourced<double> painters{2.0, {sources::Kind::assumed, "crew", "painters"}};
  bool hours_given = false, days_given = false;
};

struct Terms {
  std::optional<money::Percentage> deposit, discount;
  std::vector<quote::Stage> stages;
  std::optional<std::string> rounding;
  std::optional<units::Duration> validity;
  std::vector<std::string> allowances, exclusions, notes;
  std::string warranty, cancellation;
};

struct Job {
  units::System units = units::System::metric;
  Heading heading;
  Site site;
  std::vector<Body> bodies;
  std::vector<Surface> surfaces;  ///< Empty: the stated default, untested.
  bool surfaces_given = false;
  preparation::Condition condition;
  std::optional<std::size_t> leak_test;  ///< 0 holds, 1 leaks, 2 not done.
  Coating coating;
  CrewTerms crew;
  dates::WorkCalendar calendar;
  Refill refill;
  Terms terms;
  Sourced<units::Length> rim_to_water{units::metres(0.1),
                                      {sources::Kind::assumed, "rim-to-water", "0.1 m"}};
  Sourced<units::Fraction> tape_tolerance{units::percent(1),
                                          {sources::Kind::assumed, "tape-tolerance", "1 %"}};
  /// Owns the texts that sources of given values point to.
  std::shared_ptr<const std::deque<std::string>> places;
};

}  // namespace basinwright::job
