#include "batch_work.hpp"

#include <algorithm>
#include <chrono>
#include <exception>
#include <utility>
#include <variant>

#include "basinwright/job/offer.hpp"
#include "basinwright/render/csv.hpp"
#include "basinwright/render/json.hpp"
#include "files.hpp"
#include "output.hpp"

namespace basinwright::cli {
namespace {

constexpr std::uint64_t fnv_offset = 14695981039346656037ULL;

std::uint64_t fnv(std::string_view bytes, std::uint64_t hash) {
  constexpr std::uint64_t prime = 1099511628211ULL;
  for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * prime;
  // The end counts too, so that "ab" and "c" differ from "a" and "bc".
  return (hash ^ bytes.size()) * prime;
}

std::string hexadecimal(std::uint64_t hash) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out(16, '0');
  for (auto it = out.rbegin(); it != out.rend(); ++it, hash /= 16) *it = digits[hash % 16];
  return out;
}

std::string_view suffix(Format format) {
  switch (format) {
    case Format::markdown:
      return "md";
    case Format::json:
      return "json";
    case Format::csv:
      return "csv";
    case Format::svg:
      return "svg";
    case Format::html:
      return "html";
    case Format::ics:
      return "ics";
    case Format::text:
      break;
  }
  return "txt";
}

std::string day_or_none(const std::optional<dates::Date>& day) {
  return day ? dates::iso(*day) : "-";
}

// All options that a line or a document follows from.
std::string settings_of(const Request& r, dates::Date today) {
  return std::string(report::version()) + ' ' + dates::iso(today) + ' ' + day_or_none(r.start) +
         ' ' + std::to_string(r.units ? 1 + static_cast<int>(*r.units) : 0) + ' ' +
         std::to_string(r.strict ? 1 : 0) + ' ' + std::to_string(static_cast<int>(r.format)) + ' ' +
         std::to_string(r.batch.folder ? 1 : 0) + ' ' +
         std::to_string(static_cast<int>(r.batch.document)) + ' ' +
         std::to_string(static_cast<int>(r.batch.document_format));
}

// The first error, else the first warning.
void note_problems(const diagnostics::Problems& problems, report::Outcome& outcome) {
  const auto all = problems.sorted();
  outcome.problems = all.size();
  if (all.empty()) return;
  auto told =
      std::ranges::find(all, diagnostics::Severity::error, &diagnostics::Diagnostic::severity);
  outcome.problem_is_error = told != all.end();
  if (!outcome.problem_is_error) told = all.begin();
  outcome.problem = told->code + ": " + told->message;
  outcome.problem_line = told->at.line;
  outcome.problem_column = told->at.column;
}

}  // namespace

std::string digest_of(std::string_view bytes, std::uint64_t from) {
  return hexadecimal(fnv(bytes, from));
}

std::string safe_name(std::string_view text) {
  constexpr std::size_t longest = 80;
  constexpr std::string_view kept =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-";
  std::string out;
  for (const char c : text.substr(0, longest)) {
    const bool safe = kept.find(c) != std::string_view::npos;
    if (safe || out.empty() || out.back() != '-') out += safe ? c : '-';
  }
  return out;
}

BatchWork::BatchWork(const Request& request, const Inputs& shared)
    : r_(request),
      shared_(shared),
      for_documents_(request),
      today_(request.today.value_or(
          std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now()))) {
  for_documents_.command = request.batch.document;
  for_documents_.format = request.batch.document_format;
  for_documents_.output.emplace("file");  // Neither as wide nor as coloured as a terminal.
  shared_digest_ = fnv(settings_of(request, today_), fnv_offset);
  shared_digest_ = fnv(shared.rates_input.bytes, shared_digest_);
  for (const readers::Input& file : shared.weather)
    shared_digest_ = fnv(file.bytes, shared_digest_);
}

void BatchWork::load(BatchItem& item) {
  if (item.bytes) return;
  auto read = read_file(item.name);
  if (auto* error = std::get_if<FileError>(&read)) {
    item.fault = std::move(error->message);
    item.bytes.emplace();
  } else {
    item.bytes = std::move(std::get<std::string>(read));
  }
}

std::string BatchWork::digest(const BatchItem& item) const {
  return digest_of(*item.bytes, fnv(item.name, shared_digest_));
}

std::shared_ptr<const BatchWork::Near> BatchWork::weather_near(const job::Job& job,
                                                               dates::Date day) {
  // A record of years takes megabytes.
  constexpr std::size_t most = 16;
  // Where no typical year is laid round a start, one record serves every start.
  std::string key;
  if (std::ranges::any_of(shared_.hours, &readers::WeatherFile::is_typical_year)) {
    key = dates::iso(day);
    if (job.site.utc_offset) key += ' ' + std::to_string(*job.site.utc_offset);
    for (const dates::ClockChange& change : job.site.clock_changes)
      key += ' ' + dates::iso(change.at) + ' ' + std::to_string(change.minutes);
  }
  const std::scoped_lock hold(lock_);
  if (const auto it = near_.find(key); it != near_.end()) return it->second;
  if (near_.size() == most) near_.clear();
  return near_[key] =
             std::make_shared<const Near>(Near{weather_record(shared_, job, day), ++records_made_});
}

std::string BatchWork::path_of(const BatchItem& item, std::size_t index) const {
  constexpr std::size_t digits = 6;
  std::string number = std::to_string(index);
  if (number.size() < digits) number.insert(0, digits - number.size(), '0');
  std::string_view stem = item.name;
  stem.remove_prefix(stem.rfind('/') == std::string_view::npos ? 0 : stem.rfind('/') + 1);
  if (item.line == 0 && stem.ends_with(".json")) stem.remove_suffix(5);
  return *r_.batch.folder + "/" + number + "-" + safe_name(stem) + "." +
         std::string(suffix(r_.batch.document_format));
}

bool BatchWork::document_there(const BatchItem& item, std::size_t index) const {
  return !r_.batch.folder || std::holds_alternative<std::string>(read_file(path_of(item, index)));
}

std::string BatchWork::write_document(const BatchItem& item,
                                      std::size_t index,
                                      const report::Subject& subject,
                                      const job::Circumstances& now) const {
  document::Document page;
  if (r_.batch.document == Command::quote) {
    page = report::quotation(subject, job::offer_of(subject.job, subject.rates, now, subject.plan));
  } else if (r_.batch.document == Command::takeoff) {
    page = report::takeoff(subject);
  } else if (r_.batch.document == Command::checklist) {
    page = report::checklist(subject);
  } else {
    page = report::jobsheet(subject);
  }
  return write_file(path_of(item, index), rendered(for_documents_, page));
}

std::string BatchWork::worded(const document::Object& line) const {
  if (r_.format != Format::csv) return render::json_line(line) + "\n";
  const std::string table = render::csv(report::batch_row(line));
  return table.substr(table.find("\r\n") + 2);
}

std::string BatchWork::head() const {
  if (r_.format != Format::csv) return "";
  const std::string table = render::csv(report::batch_row(report::batch_line({}, nullptr)));
  return table.substr(0, table.find("\r\n") + 2);
}

void BatchWork::plan(const BatchItem& item,
                     std::size_t index,
                     report::Outcome& outcome,
                     std::string& line) {
  JobFile file{{item.name, *item.bytes}, std::nullopt};
  diagnostics::Problems problems;
  file.job = readers::read_job(file.input, problems);
  if (file.job) add_mismatches(file, *shared_.rates, problems);
  if (file.job && r_.batch.folder && r_.batch.document == Command::quote) add_gaps(file, problems);
  note_problems(problems, outcome);
  outcome.status = static_cast<int>(Status::problems);
  if (problems.has_errors() || (r_.strict && problems.has_warnings()) || !file.job) {
    line = worded(report::batch_line(outcome, nullptr));
    return;
  }
  const job::Job& job = *file.job;
  job::Circumstances now;
  now.today = today_;
  now.start = r_.start;
  now.reasons = r_.batch.folder.has_value();
  job::Among others{memory_, 0, !r_.batch.folder};
  std::shared_ptr<const Near> hours;
  if (!shared_.hours.empty()) {
    hours = weather_near(job, r_.start.value_or(job.heading.start.value_or(today_)));
    now.weather = &hours->record;
    others.weather_number = hours->number;
  }
  const job::Plan plan = job::make_plan(job, *shared_.rates, now, others);
  const report::Subject subject{
      job, *shared_.rates, plan, r_.units.value_or(job.units), r_.paper, false};
  const bool dated = !plan.stopped() && plan.programme.feasible;
  outcome.status = static_cast<int>(dated ? Status::done : Status::stop);
  if (r_.batch.folder) {
    outcome.fault = write_document(item, index, subject, now);
    if (!outcome.fault.empty()) outcome.status = static_cast<int>(Status::file);
  }
  line = worded(report::batch_line(outcome, &subject));
}

Done BatchWork::carry_out(BatchItem& item, std::size_t index) {
  report::Outcome outcome;
  outcome.job = item.name;
  outcome.line = item.line;
  Done done;
  try {
    load(item);
    outcome.digest = digest(item);
    outcome.fault = item.fault;
    if (item.fault.empty()) {
      plan(item, index, outcome, done.line);
    } else {
      outcome.status = static_cast<int>(Status::file);
      done.line = worded(report::batch_line(outcome, nullptr));
    }
  } catch (const std::exception& fault) {
    outcome.status = static_cast<int>(Status::ours);
    outcome.fault = fault.what();
    outcome.problems = 0;
    done.line = worded(report::batch_line(outcome, nullptr));
  }
  done.status = static_cast<Status>(outcome.status);
  return done;
}

}  // namespace basinwright::cli
