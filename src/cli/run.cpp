#include "basinwright/cli/run.hpp"

#include <sys/ioctl.h>
#include <unistd.h>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <set>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/readers/read.hpp"
#include "basinwright/render/csv.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/render/markdown.hpp"
#include "basinwright/render/svg.hpp"
#include "basinwright/render/text.hpp"
#include "basinwright/report/pages.hpp"
#include "files.hpp"

namespace basinwright::cli {
namespace {

void complain(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
}

// Everything a request reads, and what was wrong with it.
struct Files {
  readers::Input job, rates;
  diagnostics::Problems problems;
  Status status = Status::done;
};

bool load(const std::string& path, const std::string& name, readers::Input& input) {
  auto read = read_file(path);
  if (const auto* error = std::get_if<FileError>(&read)) {
    complain("basinwright: " + name + ": " + error->message + "\n");
    return false;
  }
  input = {name, std::move(std::get<std::string>(read))};
  return true;
}

bool load_all(const Request& r, Files& files) {
  if (!load(r.job, r.job == "-" ? "standard input" : r.job, files.job)) return false;
  if (!r.rates) {
    files.rates = readers::demonstration_rates();
    return true;
  }
  return load(*r.rates, *r.rates, files.rates);
}

std::string_view text_of(const Files& files, const std::string& name) {
  return name == files.job.name ? files.job.bytes : files.rates.bytes;
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

std::string worded(const Request& r, const Files& files) {
  std::string out;
  for (const diagnostics::Diagnostic& d : files.problems.sorted()) {
    if (r.quiet && d.severity != diagnostics::Severity::error) continue;
    out += r.json_diagnostics ? render::json_line(value_of(d)) + "\n"
                              : diagnostics::underlined(d, text_of(files, d.at.file));
  }
  return out;
}

bool refused(const Request& r, const Files& files) {
  return files.problems.has_errors() || (r.strict && files.problems.has_warnings());
}

void add_mismatches(const job::Job& job, const job::RateBook& rates, Files& files) {
  for (const job::Mismatch& m : job::mismatches(job, rates)) {
    files.problems.add({m.code,
                        diagnostics::Severity::error,
                        readers::place_of(files.job, m.pointer),
                        m.pointer,
                        "The rate book has no coating system of this name",
                        m.detail.empty() ? "It has none." : "It has: " + m.detail + ".",
                        {}});
  }
}

int columns() {
  constexpr int narrow = 80;
  constexpr int widest = 140;
  winsize size{};
  if (::isatty(STDOUT_FILENO) == 0 || ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return narrow;
  return size.ws_col < narrow ? narrow : (size.ws_col > widest ? widest : size.ws_col);
}

bool wants_colour(const Request& r) {
  const char* no_color = std::getenv("NO_COLOR");
  const char* term = std::getenv("TERM");
  const bool refuses = r.no_color || (no_color != nullptr && *no_color != '\0');
  const bool dumb = term == nullptr || std::string_view(term) == "dumb";
  return !refuses && !dumb && !r.output && ::isatty(STDOUT_FILENO) == 1;
}

std::string rendered(const Request& r, const document::Document& page) {
  switch (r.format) {
    case Format::markdown:
      return render::markdown(page);
    case Format::json:
      return render::json(page);
    case Format::csv:
      return render::csv(page);
    case Format::svg:
      return render::svg(page);
    case Format::text:
      break;
  }
  return render::text(page, {columns(), wants_colour(r), false});
}

Status put(const Request& r, const std::string& bytes) {
  if (r.output && *r.output != "-") {
    for (const auto& input : {std::optional(r.job), r.rates}) {
      if (input && *input == *r.output) {
        complain("basinwright: " + *r.output +
                 " is read by this command; it is not written over\n");
        return Status::misuse;
      }
    }
    const std::string reason = write_file(*r.output, bytes);
    if (reason.empty()) return Status::done;
    complain("basinwright: " + *r.output + ": " + reason + "\n");
    return Status::file;
  }
  if (print_out(bytes) != Printed::failed) return Status::done;
  complain("basinwright: standard output could not be written\n");
  return Status::file;
}

// Where each given value of the plan stands.
std::vector<report::GivenPlace> places_of(const job::Plan& plan, const Files& files) {
  std::set<std::string> pointers;
  for (const trace::Step& step : plan.trace.steps()) {
    for (const trace::Input& input : step.inputs) {
      if (input.kind == sources::Kind::given && input.from.empty())
        pointers.insert(input.source_place);
    }
  }
  std::vector<report::GivenPlace> places;
  for (const std::string& pointer : pointers) {
    const auto in_job = readers::place_of(files.job, pointer);
    const auto in_rates = readers::place_of(files.rates, pointer);
    const auto& at = in_job.line > 0 ? in_job : in_rates;
    if (at.line == 0) continue;
    places.push_back(
        {pointer, at.file + ":" + std::to_string(at.line) + ":" + std::to_string(at.column)});
  }
  return places;
}

Status explain(const Request& r, const report::Subject& subject, const Files& files) {
  const auto page = report::explain(subject, r.quantity, places_of(subject.plan, files));
  if (page) return put(r, rendered(r, *page));
  const std::vector<std::string> keys = report::explainable(subject.plan);
  const std::vector<std::string_view> known(keys.begin(), keys.end());
  const std::string_view near = diagnostics::nearest(r.quantity, known);
  complain("basinwright: nothing called \"" + r.quantity + "\" was computed" +
           (near.empty() ? std::string() : "; did you mean \"" + std::string(near) + "\"?") + "\n");
  return Status::misuse;
}

Status present(const Request& r,
               const job::Job& job,
               const job::RateBook& rates,
               const Files& files) {
  job::Circumstances now;
  now.today =
      r.today.value_or(std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now()));
  now.start = r.start;
  now.explain = r.command == Command::explain;
  now.take_off_only =
      r.command == Command::takeoff || (now.explain && r.quantity.starts_with("takeoff."));
  const job::Plan plan = job::make_plan(job, rates, now);
  const report::Subject subject{
      job, rates, plan, r.units.value_or(job.units), r.paper, r.both_units};
  if (r.command == Command::explain) return explain(r, subject, files);
  const bool sheet = r.command == Command::jobsheet;
  const Status printed =
      put(r, rendered(r, sheet ? report::jobsheet(subject) : report::takeoff(subject)));
  if (printed != Status::done) return printed;
  if (!sheet) return report::floats(plan) ? Status::stop : Status::done;
  return plan.stopped() || !plan.programme.feasible ? Status::stop : Status::done;
}

Status carry_out(const Request& r) {
  Files files;
  if (!load_all(r, files)) return Status::file;
  const auto job = readers::read_job(files.job, files.problems);
  const auto rates = readers::read_rate_book(files.rates, files.problems);
  if (job && rates) add_mismatches(*job, *rates, files);
  if (r.command == Command::check) {
    const Status printed = put(r, worded(r, files));
    if (printed != Status::done) return printed;
    return refused(r, files) ? Status::problems : Status::done;
  }
  complain(worded(r, files));
  if (refused(r, files)) return Status::problems;
  return present(r, *job, *rates, files);
}

Status leave(const Leave& leave) {
  if (leave.status == Status::done) {
    return print_out(leave.text) == Printed::failed ? Status::file : Status::done;
  }
  complain(leave.text);
  return leave.status;
}

}  // namespace

int run(const std::vector<std::string>& arguments) {
  // A reader that leaves early is no fault; the write says so by itself.
  std::signal(SIGPIPE, SIG_IGN);
  try {
    const auto parsed = parse_arguments(arguments);
    if (const auto* words = std::get_if<Leave>(&parsed)) return static_cast<int>(leave(*words));
    return static_cast<int>(carry_out(std::get<Request>(parsed)));
  } catch (const std::exception& fault) {
    complain(std::string("basinwright: this is our fault, not yours: ") + fault.what() + "\n");
  } catch (...) {
    complain("basinwright: this is our fault, not yours\n");
  }
  return static_cast<int>(Status::ours);
}

}  // namespace basinwright::cli
