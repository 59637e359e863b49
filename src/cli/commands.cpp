#include "command_line.hpp"

#include <algorithm>

namespace basinwright::cli {
namespace {

constexpr std::array<CommandRow, 18> rows{{
    {"jobsheet",
     Command::jobsheet,
     "Priced materials list, day-by-day programme, cautions",
     "jobsheet pool.json\n"
     "jobsheet pool.json --weather hours.csv --start 2027-05-03\n"
     "jobsheet pool.json --format html --output pool.html"},
    {"quote",
     Command::quote,
     "The client's quotation, or a variation to it",
     "quote pool.json --rates rates.json\n"
     "quote pool.json --format html --output quotation.html"},
    {"takeoff",
     Command::takeoff,
     "Areas, perimeter and water volume, with a drawing (svg)",
     "takeoff pool.json\n"
     "takeoff pool.json --format svg --output plan.svg"},
    {"checklist",
     Command::checklist,
     "The crew's sheets: steps, hold points, readings, cautions, sign-off; day cards",
     "checklist pool.json --format html --output checklist.html\n"
     "checklist pool.json --log site.log"},
    {"handover",
     Command::handover,
     "What the client keeps: as built, care, what voids it",
     "handover pool.json"},
    {"compare",
     Command::compare,
     "Two ways of doing the job, side by side",
     "compare pool.json --set /coating/coats=3"},
    {"odds",
     Command::odds,
     "How sure the dates are: the job replayed over past years of weather",
     "odds pool.json --years years.csv --by 2027-06-12"},
    {"check",
     Command::check,
     "Every problem in the files, and nothing else",
     "check pool.json --rates rates.json"},
    {"batch",
     Command::batch,
     "Many jobs, one result line each, in their order",
     "batch pool.json spa.json --format csv"},
    {"explain",
     Command::explain,
     "How a number was reached: formula, inputs, source",
     "explain pool.json\n"
     "explain pool.json quantities.kits"},
    {"record",
     Command::record,
     "Add an entry to the site log",
     "record pool.json --log site.log started task=drain"},
    {"replan",
     Command::replan,
     "The rest of the programme from what has really been done",
     "replan pool.json --log site.log --now 2027-05-04T12:00"},
    {"today",
     Command::today,
     "Go or no-go for the next 48 hours, task by task",
     "today pool.json --log site.log --weather hours.csv --now 2027-05-04T06:00"},
    {"coating-record",
     Command::coating_record,
     "Conditions, batches, areas and readings against their limits",
     "coating-record pool.json --log site.log"},
    {"new",
     Command::starter,
     "A starter job file from a few measurements, given as options or asked for",
     "new --outline rectangle --length \"9.2 m\" --width \"4.5 m\" --shallow \"0.9 m\" --deep "
     "\"1.8 m\" "
     "--output mine.json\n"
     "new --outline circle --diameter \"16 ft\" --depth \"4 ft\" --units us\n"
     "new --help"},
    {"schema",
     Command::schema,
     "The JSON Schema of the job file, rate book, site log or crews file, for editors",
     "schema --output job.schema.json\n"
     "schema rates --draft 07"},
    {"completions",
     Command::completions,
     "What a shell needs to complete commands, options and their values",
     "completions bash"},
    {"man-page",
     Command::manual_page,
     "The manual page, for man",
     "man-page --output basinwright.1"},
}};

std::string as_typed(std::string_view lines) {
  std::string out;
  while (!lines.empty()) {
    const std::size_t end = std::min(lines.find('\n'), lines.size());
    out += "  basinwright " + std::string(lines.substr(0, end)) + "\n";
    lines.remove_prefix(std::min(end + 1, lines.size()));
  }
  return out;
}

}  // namespace

std::span<const CommandRow> commands() {
  return rows;
}

const CommandRow& row_of(Command command) {
  return *std::ranges::find(rows, command, &CommandRow::command);
}

const CommandRow* row_of(std::string_view name) {
  const auto* it = std::ranges::find(rows, name, &CommandRow::name);
  return it == rows.end() ? nullptr : &*it;
}

std::string first_examples() {
  return "Try:\n" +
         as_typed(
             "new --outline rectangle --length \"9.2 m\" --width \"4.5 m\" --shallow \"0.9 m\" "
             "--deep \"1.8 m\" --output pool.json\n"
             "jobsheet pool.json\n"
             "quote pool.json --format html --output quotation.html");
}

std::string examples_of(const CommandRow& row) {
  return as_typed(row.examples);
}

}  // namespace basinwright::cli
