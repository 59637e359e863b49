#include <algorithm>
#include <optional>
#include <utility>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "command_line.hpp"

namespace basinwright::cli {
namespace {

Format format_of(const std::string& name) {
  return static_cast<Format>(std::ranges::find(formats, name) - formats.begin());
}

using Trouble = std::optional<Leave>;

Trouble settle_times(const Texts& t, Request& r) {
  const std::array<std::pair<const std::string*, std::optional<dates::Date>*>, 3> days{
      {{&t.start, &r.start}, {&t.today, &r.today}, {&t.by, &r.by}}};
  for (const auto& [text, day] : days) {
    if (text->empty()) continue;
    *day = dates::parse_date(*text);
    if (!*day)
      return misuse("\"" + *text + "\" is no day of the calendar; write it as 2027-05-31.");
  }
  if (t.now.empty()) return {};
  r.now = dates::parse_minute(t.now);
  if (!r.now) return misuse("\"" + t.now + "\" is no time; write it as 2027-05-31T06:00.");
  return {};
}

Trouble settle_comparison(const Texts& t, Request& r) {
  if (!t.other.empty()) r.other = t.other;
  for (const std::string& set : t.sets) {
    const std::size_t equals = set.find('=');
    if (!set.starts_with('/') || equals == std::string::npos)
      return misuse("--set takes a place and a value, such as --set /coating/coats=3.");
    r.sets.push_back({set.substr(0, equals), set.substr(equals + 1)});
  }
  if (r.command == Command::compare && r.other.has_value() != r.sets.empty())
    return misuse("compare takes a second job file or --set, one of the two.");
  return {};
}

Trouble settle_batch(const Texts& t, Request& r) {
  if (r.command != Command::batch) return {};
  if (r.format == Format::text) r.format = Format::json;
  r.batch = {t.jobs,
             std::nullopt,
             row_of(t.document)->command,
             format_of(t.document_format),
             t.threads,
             t.fail_fast,
             t.resume};
  if (!t.folder.empty()) r.batch.folder = t.folder;
  if (t.resume && !r.batch.folder && !r.output)
    return misuse("--resume needs --output or --output-dir: what was done must stand in a file.");
  return {};
}

Trouble settle_output(const Texts& t, Request& r) {
  if (!t.output.empty()) r.output = t.output;
  r.both_units = t.units == "both";
  if (!t.units.empty() && !r.both_units)
    r.units = t.units == "us" ? units::System::us : units::System::metric;
  if (t.paper == "letter") r.paper = document::Paper::letter;
  r.format = format_of(t.format);
  r.table = t.table;
  if (!r.table.empty() && r.format != Format::csv) return misuse("--table goes with --format csv.");
  r.json_diagnostics = t.diagnostics == "json";
  r.strict = t.strict;
  r.no_color = t.no_color;
  r.quiet = t.quiet;
  return {};
}

}  // namespace

Leave misuse(std::string text) {
  return {Status::misuse, "basinwright: " + std::move(text) + "\n"};
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
  r.log = t.log;
  r.entry = t.entry;
  if (!t.was.empty()) r.was = t.was;
  r.starter = t.starter;
  r.force = t.force;
  r.topic = t.topic;
  r.draft = t.draft;
  for (auto* part : {settle_output, settle_comparison, settle_times, settle_batch}) {
    if (Trouble trouble = part(t, r)) return *std::move(trouble);
  }
  return r;
}

}  // namespace basinwright::cli
