// Pages of a running job: what the site log says against the plan.
#pragma once

#include <string>
#include <vector>

#include "basinwright/job/site_past.hpp"
#include "basinwright/job/site_rules.hpp"
#include "basinwright/report/pages.hpp"
#include "basinwright/sitelog/rules.hpp"

namespace basinwright::report {

/// What an entry broke, in a sentence: "Coat 1, section 2: shell only 2.1 C above the dew point".
[[nodiscard]] std::string broken_rule(const sitelog::Breach& breach, units::System system);

/// A job that has begun: its plan with the rest placed anew, and its log.
struct Site {
  const Subject& subject;
  const sitelog::Log& log;
  dates::Minute now;
  sitelog::Rules rules;
  std::vector<sitelog::Breach> breaches;
  std::vector<job::Deadline> deadlines;
  std::vector<job::Remedy> remedies;
  job::Promised was;       ///< The programme until now.
  bool was_given = false;  ///< False: the job's own plan by the same weather.
};

/// The rest of the programme: first what moved, which promise broke and which windows are alive.
[[nodiscard]] document::Document replanned(const Site& site);

/// One screen for the morning: what may go in the next 48 hours, and what is read first.
[[nodiscard]] document::Document morning(const Site& site);
/// Whether nothing may be begun within 48 hours; never when all is done.
[[nodiscard]] bool no_go(const Site& site);

/// The crew's sheets for the days from now on, with the steps that make good what was lost.
[[nodiscard]] document::Document checklist(const Site& site);

/// What the client keeps, with batches, readings and days as the log has them; what nobody recorded
/// is said. No cost, margin, wage or crew note stands in it.
[[nodiscard]] document::Document handover(const Site& site);

/// What a careful painter keeps: conditions, batches, mixes, areas, films, hold points, and what is
/// missing of them.
[[nodiscard]] document::Document coating_record(const Site& site);

}  // namespace basinwright::report
