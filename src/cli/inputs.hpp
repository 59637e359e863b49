// The files of one request, read and checked, with everything that is wrong in them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "basinwright/cli/request.hpp"
#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/readers/read.hpp"
#include "basinwright/readers/weather_file.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::cli {

/// A job file and what was read from it.
struct JobFile {
  readers::Input input;
  std::optional<job::Job> job;
};

struct Inputs {
  std::vector<JobFile> jobs;  ///< The job, then the one it is compared with.
  readers::Input rates_input;
  std::optional<job::RateBook> rates;
  std::vector<readers::Input> weather;
  std::vector<readers::WeatherFile> hours;
  std::vector<readers::Input> years;  ///< Files of past years.
  std::vector<readers::WeatherFile> past;
  diagnostics::Problems problems;
};

/// Says something on standard error.
void complain(std::string_view text);

/// Reads every file of the request and collects their problems. A status when a file cannot be
/// opened or a change cannot be made (said).
[[nodiscard]] std::variant<Inputs, Status> read_inputs(const Request& request);

/// Reads only what the jobs of a batch share: rate book and weather.
[[nodiscard]] std::variant<Inputs, Status> read_shared_inputs(const Request& request);

/// What no file says alone, the job against the rate book.
void add_mismatches(const JobFile& file,
                    const job::RateBook& rates,
                    diagnostics::Problems& problems);
/// What a proper quotation lacks, as warnings.
void add_gaps(const JobFile& file, diagnostics::Problems& problems);
/// One problem in the request's form. @param text the whole of its file
[[nodiscard]] std::string worded_problem(const Request& request,
                                         const diagnostics::Diagnostic& problem,
                                         std::string_view text);

/// The problems in the request's form, in the order of their places.
[[nodiscard]] std::string worded_problems(const Request& request, const Inputs& inputs);
/// Whether they keep the request from being carried out.
[[nodiscard]] bool refused(const Request& request, const Inputs& inputs);

/// The weather known round a start; typical years are laid over all days that a plan may reach,
/// by the clock at the job's site.
[[nodiscard]] weather::Record weather_record(const Inputs& inputs,
                                             const job::Job& job,
                                             dates::Date start);

/// The hours of past years, as their own dates have them.
[[nodiscard]] weather::Record past_record(const Inputs& inputs);

/// Where a value of the job or the rate book stands, as file:line:column; empty when nowhere.
[[nodiscard]] std::string place_of(const Inputs& inputs, const std::string& pointer);

}  // namespace basinwright::cli
