#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <filesystem>
#include <string_view>
#include <utility>

#include "basinwright/cli/request.hpp"
#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/report/pages.hpp"

namespace basinwright::cli {
namespace {

struct CommandRow {
  std::string_view name;
  Command command;
  std::string_view help;
};

constexpr std::array<CommandRow, 14> commands{{
    {"jobsheet", Command::jobsheet, "Priced materials list, day-by-day programme, cautions"},
    {"quote", Command::quote, "The client's quotation, or a variation to it"},
    {"takeoff", Command::takeoff, "Areas, perimeter and water volume, with a drawing (svg)"},
    {"checklist",
     Command::checklist,
     "The crew's sheets: steps, hold points, readings, cautions, sign-off; day cards"},
    {"handover", Command::handover, "What the client keeps: as built, care, what voids it"},
    {"compare", Command::compare, "Two ways of doing the job, side by side"},
    {"odds", Command::odds, "How sure the dates are: the job replayed over past years of weather"},
    {"check", Command::check, "Every problem in the files, and nothing else"},
    {"batch", Command::batch, "Many jobs, one result line each, in their order"},
    {"explain", Command::explain, "How a number was reached: formula, inputs, source"},
    {"record", Command::record, "Add an entry to the site log"},
    {"replan", Command::replan, "The rest of the programme from what has really been done"},
    {"today", Command::today, "Go or no-go for the next 48 hours, task by task"},
    {"coating-record",
     Command::coating_record,
     "Conditions, batches, areas and readings against their limits"},
}};

/// In the order of `Format`.
constexpr std::array<std::string_view, 7> formats{
    "text", "markdown", "json", "csv", "svg", "html", "ics"};

/// The formats a command can make.
std::vector<std::string> formats_of(Command command) {
  std::vector<std::string> forms(formats.begin(), formats.end());
  const bool draws = command == Command::takeoff || command == Command::jobsheet;
  const bool dates =
      command == Command::jobsheet || command == Command::checklist || command == Command::replan;
  if (!draws) std::erase(forms, "svg");
  if (!dates) std::erase(forms, "ics");
  return forms;
}

constexpr std::string_view examples = R"(Try:
  basinwright jobsheet examples/plain-pool.json
  basinwright takeoff examples/plain-pool.json --units us
  basinwright takeoff examples/plain-pool.json --format svg --output plan.svg
  basinwright explain examples/plain-pool.json quantities.etch.acid_l

basinwright --help lists the commands.
)";

// The options as text; turned into a Request once CLI11 has accepted them.
struct Texts {
  std::string job, quantity, rates, output, start, today, units, paper = "A4", format = "text",
                                                                 diagnostics = "text";
  std::string other, table;
  std::string by;
  std::vector<std::string> weather, sets, years;
  int weeks = 0;
  std::string log, now, was;
  std::vector<std::string> entry;
  bool strict = false, no_color = false, quiet = false;
  std::vector<std::string> jobs;
  std::string folder, document = "jobsheet", document_format = "text";
  std::size_t threads = 1;
  bool fail_fast = false, resume = false;
};

bool has_log(Command command) {
  return command == Command::record || command == Command::replan || command == Command::today ||
         command == Command::coating_record || command == Command::handover;
}

void add_log_options(CLI::App& sub, Command command, Texts& t) {
  auto* log = sub.add_option("--log", t.log, "The site log, one JSON object a line");
  log->type_name("FILE");
  if (command != Command::handover) log->required();
  sub.add_option("--now", t.now, "The time now, instead of the clock's, such as 2027-05-31T06:00")
      ->type_name("TIME");
  if (command == Command::record) {
    sub.add_option("ENTRY",
                   t.entry,
                   "What happened (started, finished, stopped, reading, delivery, mix, "
                   "hold_released, note) and its values as KEY=VALUE, such as task=coat-1; or - "
                   "for entries as JSON lines from standard input")
        ->required();
  }
  if (command == Command::replan) {
    sub.add_option("--was", t.was, "The programme until now, as jobsheet or replan gave it in JSON")
        ->type_name("FILE");
  }
}

// Past years, for the pages that say how sure a date is.
void add_years(CLI::App& sub, Command command, Texts& t) {
  const bool shows_dates = command == Command::jobsheet || command == Command::quote;
  if (!shows_dates && command != Command::odds && command != Command::check) return;
  auto* years = sub.add_option("--years",
                               t.years,
                               "Hours or days of past years: the job is replayed over each; may be "
                               "given again")
                    ->type_name("FILE")
                    ->expected(1)
                    ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  if (command != Command::odds) return;
  constexpr int most_weeks = 53;
  years->required();
  sub.add_option("--by", t.by, "A promised day: in how many years it was met")->type_name("DATE");
  sub.add_option("--weeks", t.weeks, "Compare so many start weeks from the start on")
      ->check(CLI::Range(0, most_weeks))
      ->type_name("NUMBER");
}

void add_batch_options(CLI::App& sub, Texts& t) {
  sub.add_option(
         "JOB", t.jobs, "Job files, folders of them, or - for one job a line on standard input")
      ->required();
  sub.add_option("--jobs", t.threads, "How many are worked on at a time; the output is the same")
      ->check(CLI::Range(1, 256))
      ->type_name("N");
  sub.add_option("--output-dir", t.folder, "Write a document for each job into this folder too")
      ->type_name("FOLDER");
  sub.add_option("--document", t.document, "Which document")
      ->check(CLI::IsMember({"jobsheet", "quote", "takeoff", "checklist"}))
      ->type_name("jobsheet|quote|takeoff|checklist");
  sub.add_option("--document-format", t.document_format, "Form of the documents")
      ->check(CLI::IsMember({"text", "markdown", "html", "json", "csv"}))
      ->type_name("text|markdown|html|json|csv");
  sub.add_option("--format", t.format, "Form of the result lines: one object a line, or a table")
      ->check(CLI::IsMember({"json", "csv"}))
      ->type_name("json|csv");
  sub.add_option("--output", t.output, "Write the result lines here, whole or not at all")
      ->type_name("FILE|-");
  sub.add_flag("--fail-fast", t.fail_fast, "End at the first job that has problems");
  sub.add_flag("--resume", t.resume, "Pass over what an earlier run with the same inputs has done");
}

void add_options(CLI::App& sub, Command command, Texts& t) {
  if (command == Command::batch) {
    add_batch_options(sub, t);
  } else {
    sub.add_option("JOB", t.job, "Job file (JSON), or - for standard input")->required();
  }
  if (has_log(command)) add_log_options(sub, command, t);
  if (command == Command::explain)
    sub.add_option("QUANTITY", t.quantity, "What to explain, such as quantities.kits");
  if (command == Command::compare) {
    sub.add_option("OTHER", t.other, "The job file it is compared with");
    sub.add_option("--set",
                   t.sets,
                   "Compare with the same job changed at a place, such as /coating/coats=3; may be "
                   "given again")
        ->type_name("/PLACE=VALUE")
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  }
  if (command == Command::quote) {
    sub.add_option("--variation-from", t.other, "The job file as it was quoted: what changes since")
        ->type_name("FILE");
  }
  sub.add_option("--rates", t.rates, "Rate book; without one, demonstration rates")
      ->type_name("FILE");
  sub.add_option("--weather",
                 t.weather,
                 "Hours of weather: forecast, table or typical year; may be given again")
      ->type_name("FILE")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  add_years(sub, command, t);
  sub.add_option("--start", t.start, "First working day, over the job's own")->type_name("DATE");
  sub.add_option("--today", t.today, "Day to plan from, instead of the clock's")->type_name("DATE");
  std::vector<std::string> systems{"metric", "us"};
  if (command == Command::takeoff) systems.emplace_back("both");
  sub.add_option("--units", t.units, "Units of the output")
      ->check(CLI::IsMember(systems))
      ->type_name(CLI::detail::join(systems, "|"));
  if (command != Command::check && command != Command::batch && command != Command::record) {
    const std::vector<std::string> forms = formats_of(command);
    sub.add_option("--format", t.format, "Form of the output")
        ->check(CLI::IsMember(forms))
        ->type_name(CLI::detail::join(forms, "|"));
    sub.add_option("--table", t.table, "The one table that csv is to hold, such as purchases")
        ->type_name("NAME");
    sub.add_option("--output", t.output, "Write here, whole or not at all")->type_name("FILE|-");
  }
  if (command != Command::check) {
    sub.add_option("--paper", t.paper, "What pages and drawings are laid out on (html, svg)")
        ->check(CLI::IsMember({"A4", "letter"}))
        ->type_name("A4|letter");
  }
  sub.add_option("--diagnostics", t.diagnostics, "Form of problems")
      ->check(CLI::IsMember({"text", "json"}))
      ->type_name("text|json");
  sub.add_flag("--strict", t.strict, "Warnings are errors");
  sub.add_flag("--no-color", t.no_color, "No colour on a terminal");
  sub.add_flag("--quiet", t.quiet, "No warnings");
}

bool is_command(std::string_view word) {
  return std::ranges::find(commands, word, &CommandRow::name) != commands.end();
}

Leave misuse(std::string text) {
  return {Status::misuse, "basinwright: " + std::move(text) + "\n"};
}

// A first word that is neither command nor file was meant as one of the two.
Leave unknown_word(const std::string& word) {
  std::vector<std::string_view> names;
  names.reserve(commands.size());
  for (const CommandRow& row : commands) names.push_back(row.name);
  const std::string_view near = diagnostics::nearest(word, names);
  std::string text = "there is no command and no file \"" + word + "\".";
  if (!near.empty()) text += " Did you mean \"" + std::string(near) + "\"?";
  return misuse(std::move(text) + " See basinwright --help.");
}

std::variant<Request, Leave> settle(Command command, const Texts& t) {
  Request r;
  r.command = command;
  r.job = t.job;
  r.quantity = t.quantity;
  if (!t.rates.empty()) r.rates = t.rates;
  r.weather = t.weather;
  r.years = t.years;
  r.weeks = t.weeks;
  if (!t.other.empty()) r.other = t.other;
  for (const std::string& set : t.sets) {
    const std::size_t equals = set.find('=');
    if (!set.starts_with('/') || equals == std::string::npos)
      return misuse("--set takes a place and a value, such as --set /coating/coats=3.");
    r.sets.push_back({set.substr(0, equals), set.substr(equals + 1)});
  }
  if (command == Command::compare && r.other.has_value() != r.sets.empty())
    return misuse("compare takes a second job file or --set, one of the two.");
  if (!t.output.empty()) r.output = t.output;
  const std::array<std::pair<const std::string*, std::optional<dates::Date>*>, 3> days{
      {{&t.start, &r.start}, {&t.today, &r.today}, {&t.by, &r.by}}};
  for (const auto& [text, day] : days) {
    if (text->empty()) continue;
    *day = dates::parse_date(*text);
    if (!*day)
      return misuse("\"" + *text + "\" is no day of the calendar; write it as 2027-05-31.");
  }
  r.log = t.log;
  r.entry = t.entry;
  if (!t.was.empty()) r.was = t.was;
  if (!t.now.empty()) {
    r.now = dates::parse_minute(t.now);
    if (!r.now) return misuse("\"" + t.now + "\" is no time; write it as 2027-05-31T06:00.");
  }
  r.both_units = t.units == "both";
  if (!t.units.empty() && !r.both_units)
    r.units = t.units == "us" ? units::System::us : units::System::metric;
  if (t.paper == "letter") r.paper = document::Paper::letter;
  r.format = static_cast<Format>(std::ranges::find(formats, t.format) - formats.begin());
  r.table = t.table;
  if (!r.table.empty() && r.format != Format::csv) return misuse("--table goes with --format csv.");
  if (command == Command::batch) {
    if (r.format == Format::text) r.format = Format::json;
    r.batch = {t.jobs,
               std::nullopt,
               std::ranges::find(commands, t.document, &CommandRow::name)->command,
               static_cast<Format>(std::ranges::find(formats, t.document_format) - formats.begin()),
               t.threads,
               t.fail_fast,
               t.resume};
    if (!t.folder.empty()) r.batch.folder = t.folder;
    if (t.resume && !r.batch.folder && !r.output)
      return misuse("--resume needs --output or --output-dir: what was done must stand in a file.");
  }
  r.json_diagnostics = t.diagnostics == "json";
  r.strict = t.strict;
  r.no_color = t.no_color;
  r.quiet = t.quiet;
  return r;
}

// CLI11 takes the words from the back.
std::vector<std::string> reversed(std::vector<std::string> words) {
  std::ranges::reverse(words);
  return words;
}

std::string first_line(const std::string& text) {
  return text.substr(0, text.find('\n'));
}

}  // namespace

std::variant<Request, Leave> parse_arguments(const std::vector<std::string>& arguments) {
  if (arguments.empty()) {
    return Leave{
        Status::done,
        "Basinwright plans the repainting of a swimming pool.\n\n" + std::string(examples)};
  }
  std::vector<std::string> words = arguments;
  const std::string first = words.front();
  const bool option = first.size() > 1 && first.front() == '-';
  const bool general = first == "--help" || first == "-h" || first == "--version";
  if (!is_command(first) && !general) {
    std::error_code ignored;
    if (!option && first != "-" && !std::filesystem::exists(first, ignored))
      return unknown_word(first);
    words.insert(words.begin(), "jobsheet");
  }
  CLI::App app{"Basinwright plans the repainting of a swimming pool.\n" + std::string(examples),
               "basinwright"};
  app.set_version_flag("--version", "basinwright " + std::string(report::version()));
  app.require_subcommand(1);
  Texts texts;
  for (const CommandRow& row : commands) {
    add_options(
        *app.add_subcommand(std::string(row.name), std::string(row.help)), row.command, texts);
  }
  try {
    app.parse(reversed(std::move(words)));
  } catch (const CLI::CallForHelp&) {
    const auto chosen = app.get_subcommands();
    return Leave{Status::done, chosen.empty() ? app.help() : chosen.front()->help("basinwright")};
  } catch (const CLI::CallForVersion& version) {
    return Leave{Status::done, std::string(version.what()) + "\n"};
  } catch (const CLI::ParseError& error) {
    return misuse(first_line(error.what()) + " See basinwright --help.");
  }
  const std::string name = app.get_subcommands().front()->get_name();
  return settle(std::ranges::find(commands, name, &CommandRow::name)->command, texts);
}

}  // namespace basinwright::cli
