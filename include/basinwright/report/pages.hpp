// Pages: what a plan says to people and to scripts, before any format.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/document/document.hpp"
#include "basinwright/job/job.hpp"
#include "basinwright/job/odds.hpp"
#include "basinwright/job/offer.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/job/rate_book.hpp"
#include "basinwright/job/weather_strip.hpp"

namespace basinwright::report {

/// What a page is made from.
struct Subject {
  const job::Job& job;
  const job::RateBook& rates;
  const job::Plan& plan;
  units::System units = units::System::metric;
  document::Paper paper = document::Paper::a4;  ///< What drawings are laid out on.
  bool both_units = false;                      ///< The take-off in metric and US units.
  std::optional<dates::Date> today = {};        ///< The day a calendar's entries are made.
  /// Days and weather for the programme's chart; without them it has none.
  const std::vector<job::StripDay>* strip = nullptr;
  const job::Odds* odds = nullptr;  ///< Where past years were given.
};

/// A place a given value was read from.
struct GivenPlace {
  std::string pointer;  ///< Below the job file, or `rates:` and below the rate book.
  std::string place;    ///< file:line:column
};

/// Version of the JSON shape.
inline constexpr int format_version = 1;
/// Version of the program.
[[nodiscard]] std::string_view version();

/// The priced materials list, the programme and the cautions.
[[nodiscard]] document::Document jobsheet(const Subject& subject);

/// The client's quotation: what is done, what it costs, what it rests on. No cost, margin, wage or
/// crew note stands in it.
[[nodiscard]] document::Document quotation(const Subject& subject, const job::Offer& offer);

/// What changes since the job was quoted, for the client to agree to before it is done.
[[nodiscard]] document::Document variation(const Subject& quoted, const Subject& now);

/// Two ways of doing a job side by side, and the way from one price to the other.
struct Names {
  std::string one, other;
};
[[nodiscard]] document::Document comparison(const Subject& one,
                                            const Subject& other,
                                            const Names& names);

/// How sure the dates are: the job replayed over past years of weather.
[[nodiscard]] document::Document odds(const Subject& subject);

/// Whether the empty shell could float, which stops the job before it is drained.
[[nodiscard]] bool floats(const job::Plan& plan);

/// Areas, perimeter and water volume, with a drawing of each body of water.
[[nodiscard]] document::Document takeoff(const Subject& subject);

/// The crew's sheets: for each day and step what to do, what to have at hand, the mix, hazards,
/// hold points, readings with their limits, batches and signatures; then a card each for acid,
/// coating, morning and evening.
[[nodiscard]] document::Document checklist(const Subject& subject);

/// What the client keeps: what was painted, batches and readings to be written in, care, what voids
/// it, the first-swim test. No cost, margin, wage or crew note stands in it.
[[nodiscard]] document::Document handover(const Subject& subject);

/// The job sheet with its drawings, the programme's chart and how the main numbers were reached
/// where the plan recorded it.
[[nodiscard]] document::Document job_pack(const Subject& subject,
                                          const std::vector<GivenPlace>& places);

/// The programme as bars over the weather, on a sheet of its own.
[[nodiscard]] document::Document programme_chart(const Subject& subject);

/// How a number was reached: formula, inputs, sources. Without a quantity, what can be asked.
/// Nothing when there is no such quantity.
[[nodiscard]] std::optional<document::Document> explain(const Subject& subject,
                                                        std::string_view quantity,
                                                        const std::vector<GivenPlace>& places);

/// The names by which a quantity can be asked for, for suggestions.
[[nodiscard]] std::vector<std::string> explainable(const Subject& subject);

}  // namespace basinwright::report
