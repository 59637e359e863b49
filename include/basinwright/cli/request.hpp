// What was asked for on the command line.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/dates/minute.hpp"
#include "basinwright/document/drawing.hpp"
#include "basinwright/readers/change.hpp"
#include "basinwright/units/parse.hpp"

namespace basinwright::cli {

/// Exit statuses, as the manual lists them.
enum class Status { done = 0, problems = 1, misuse = 2, stop = 3, file = 4, ours = 70 };

enum class Command {
  jobsheet,
  quote,
  takeoff,
  checklist,
  handover,
  compare,
  odds,
  check,
  batch,
  explain,
  record,
  replan,
  today,
  coating_record,
  starter,
  schema,
  completions,
  manual_page
};
enum class Format { text, markdown, json, csv, svg, html, ics };

/// What only a batch asks for.
struct Batch {
  std::vector<std::string> jobs;         ///< Files, folders, or `-`.
  std::optional<std::string> folder;     ///< Where documents go; nothing: result lines alone.
  Command document = Command::jobsheet;  ///< What is written for each job.
  Format document_format = Format::text;
  std::size_t threads = 1;
  bool fail_fast = false;
  bool resume = false;
};

struct Request {
  Command command = Command::jobsheet;
  std::string job;       ///< Path, or `-` for standard input.
  std::string quantity;  ///< For explain; empty lists what can be asked.
  std::optional<std::string> rates;
  std::vector<std::string> weather;   ///< Paths, in the order given.
  std::vector<std::string> years;     ///< Files of past years, to replay the job over.
  std::optional<dates::Date> by;      ///< A promised day.
  int weeks = 0;                      ///< Start weeks to compare.
  std::optional<std::string> other;   ///< A second job: compared with, or quoted before.
  std::vector<readers::Change> sets;  ///< What is changed in the job to compare it with.
  std::optional<std::string> output;  ///< Path; nothing or `-` is standard output.
  std::optional<dates::Date> start;
  std::optional<dates::Date> today;
  std::optional<dates::Minute> now;
  std::string log;                 ///< The site log's path, for the commands that have one.
  std::vector<std::string> entry;  ///< What is recorded: an event and KEY=VALUE, or `-`.
  std::optional<std::string> was;  ///< A programme as JSON that a re-plan is compared with.
  std::optional<units::System> units;
  Format format = Format::text;
  std::string table;  ///< The one table of a page that CSV is to hold; empty: all.
  document::Paper paper = document::Paper::a4;
  bool both_units = false;  ///< The take-off in both, side by side.
  bool strict = false;
  bool no_color = false;
  bool quiet = false;
  bool json_diagnostics = false;
  Batch batch;
  std::map<std::string, std::string> starter;  ///< What `new` was told: option -> answer.
  bool force = false;                          ///< A file that is there may be written over.
  std::string topic;  ///< The shell to complete for, or what the schema is of.
  std::string draft;  ///< Of the schema.
};

/// Text to print and leave with: help, version or a misuse.
struct Leave {
  Status status = Status::done;
  std::string text;
};

/// Reads the arguments after the program's name. A first word that is a file is a job sheet's job.
[[nodiscard]] std::variant<Request, Leave> parse_arguments(
    const std::vector<std::string>& arguments);

}  // namespace basinwright::cli
