#include "inputs.hpp"

#include <cstdio>
#include <utility>
#include <variant>

#include "basinwright/job/offer.hpp"
#include "basinwright/readers/change.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/units/unit.hpp"
#include "files.hpp"

namespace basinwright::cli {
namespace {

using diagnostics::Severity;

bool load(const std::string& path, readers::Input& input) {
  const std::string name = path == "-" ? "standard input" : path;
  auto read = read_file(path);
  if (const auto* error = std::get_if<FileError>(&read)) {
    complain("basinwright: " + name + ": " + error->message + "\n");
    return false;
  }
  input = {name, std::move(std::get<std::string>(read))};
  return true;
}

bool load_all(const Request& r, Inputs& inputs) {
  const bool has_job = r.command != Command::batch && r.command != Command::starter;
  if (has_job && !load(r.job, inputs.jobs.emplace_back().input)) return false;
  if (r.other && !load(*r.other, inputs.jobs.emplace_back().input)) return false;
  if (!r.rates) {
    inputs.rates_input = readers::demonstration_rates();
  } else if (!load(*r.rates, inputs.rates_input)) {
    return false;
  }
  for (const std::string& path : r.weather) {
    if (!load(path, inputs.weather.emplace_back())) return false;
  }
  for (const std::string& path : r.years) {
    if (!load(path, inputs.years.emplace_back())) return false;
  }
  return true;
}

// The job with the values of --set in it, beside the one as written.
bool add_changed_job(const Request& r, Inputs& inputs) {
  if (r.sets.empty()) return true;
  readers::Input changed = inputs.jobs.front().input;
  for (const readers::Change& change : r.sets) {
    auto bytes = readers::with_change(changed, change);
    if (!bytes) {
      complain("basinwright: --set " + change.pointer + ": there is no such place in " +
               changed.name + "\n");
      return false;
    }
    changed.bytes = std::move(*bytes);
    changed.name += (changed.name == inputs.jobs.front().input.name ? " with " : ", ") +
                    change.pointer + "=" + change.value;
  }
  inputs.jobs.push_back({std::move(changed), {}});
  return true;
}

void read_all(Inputs& inputs) {
  for (JobFile& file : inputs.jobs) file.job = readers::read_job(file.input, inputs.problems);
  inputs.rates = readers::read_rate_book(inputs.rates_input, inputs.problems);
  for (const readers::Input& input : inputs.weather) {
    if (auto file = readers::read_weather(input, inputs.problems))
      inputs.hours.push_back(std::move(*file));
  }
  for (const readers::Input& input : inputs.years) {
    if (auto file = readers::read_past_weather(input, inputs.problems))
      inputs.past.push_back(std::move(*file));
  }
  if (!inputs.rates) return;
  for (const JobFile& file : inputs.jobs) {
    if (file.job) add_mismatches(file, *inputs.rates, inputs.problems);
  }
}

std::string_view text_of(const Inputs& inputs, const std::string& name) {
  for (const JobFile& file : inputs.jobs) {
    if (name == file.input.name) return file.input.bytes;
  }
  for (const readers::Input& input : inputs.weather) {
    if (name == input.name) return input.bytes;
  }
  for (const readers::Input& input : inputs.years) {
    if (name == input.name) return input.bytes;
  }
  return inputs.rates_input.bytes;
}

document::Value value_of(const diagnostics::Diagnostic& d) {
  return document::Object{{"code", d.code},
                          {"severity", diagnostics::name(d.severity)},
                          {"file", d.at.file},
                          {"line", d.at.line},
                          {"column", d.at.column},
                          {"pointer", d.pointer},
                          {"message", d.message},
                          {"hint", d.hint}};
}

}  // namespace

void complain(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
}

void add_mismatches(const JobFile& file,
                    const job::RateBook& rates,
                    diagnostics::Problems& problems) {
  for (const job::Mismatch& m : job::mismatches(*file.job, rates)) {
    problems.add({m.code,
                  Severity::error,
                  readers::place_of(file.input, m.pointer),
                  m.pointer,
                  m.message,
                  m.hint,
                  {}});
  }
}

// What a proper quotation lacks is a warning, told at the nearest place there is.
void add_gaps(const JobFile& file, diagnostics::Problems& problems) {
  for (const job::Mismatch& gap : job::quotation_gaps(*file.job)) {
    std::string pointer = gap.pointer;
    auto at = readers::place_of(file.input, pointer);
    while (at.line == 0 && !pointer.empty()) {
      pointer.resize(pointer.rfind('/'));
      at = readers::place_of(file.input, pointer);
    }
    at.width = 1;  // The object it is missing from may be long.
    problems.add({gap.code, Severity::warning, at, gap.pointer, gap.message, gap.hint, {}});
  }
}

std::variant<Inputs, Status> read_shared_inputs(const Request& request) {
  Inputs inputs;
  if (!load_all(request, inputs)) return Status::file;
  read_all(inputs);
  return inputs;
}

std::variant<Inputs, Status> read_inputs(const Request& request) {
  Inputs inputs;
  if (!load_all(request, inputs)) return Status::file;
  if (!request.sets.empty()) {
    // A file with problems of its own tells those, not the change's.
    diagnostics::Problems ignored;
    const bool sound = readers::read_job(inputs.jobs.front().input, ignored).has_value();
    if (sound && !add_changed_job(request, inputs)) return Status::misuse;
  }
  read_all(inputs);
  const JobFile& first = inputs.jobs.front();
  if (request.command == Command::quote && first.job) add_gaps(first, inputs.problems);
  return inputs;
}

std::string worded_problem(const Request& request,
                           const diagnostics::Diagnostic& d,
                           std::string_view text) {
  return request.json_diagnostics ? render::json_line(value_of(d)) + "\n"
                                  : diagnostics::underlined(d, text);
}

std::string worded_problems(const Request& request, const Inputs& inputs) {
  std::string out;
  for (const diagnostics::Diagnostic& d : inputs.problems.sorted()) {
    if (request.quiet && d.severity != Severity::error) continue;
    out += worded_problem(request, d, text_of(inputs, d.at.file));
  }
  return out;
}

bool refused(const Request& request, const Inputs& inputs) {
  return inputs.problems.has_errors() || (request.strict && inputs.problems.has_warnings());
}

weather::Record weather_record(const Inputs& inputs, const job::Job& job, dates::Date start) {
  constexpr std::chrono::days before{31};
  constexpr std::chrono::days after{600};
  const auto hour = [](dates::Date day) { return weather::hour_of(dates::Moment(day, 0)); };
  readers::SiteClock clock;
  clock.since = start;
  clock.changes = job.site.clock_changes;
  if (job.site.utc_offset) clock.ahead_of_utc = units::hours(*job.site.utc_offset);
  return readers::merge(inputs.hours, hour(start - before), hour(start + after), clock);
}

weather::Record past_record(const Inputs& inputs) {
  return readers::merge(inputs.past, 0, 0);
}

std::string place_of(const Inputs& inputs, const std::string& pointer) {
  const auto in_job = readers::place_of(inputs.jobs.front().input, pointer);
  const auto in_rates = readers::place_of(inputs.rates_input, pointer);
  const auto& at = in_job.line > 0 ? in_job : in_rates;
  if (at.line == 0) return "";
  return at.file + ":" + std::to_string(at.line) + ":" + std::to_string(at.column);
}

}  // namespace basinwright::cli
