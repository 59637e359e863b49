#include "season.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <utility>
#include <variant>

#include "basinwright/job/season.hpp"
#include "basinwright/job/site_past.hpp"
#include "basinwright/job/site_rules.hpp"
#include "basinwright/readers/crews_file.hpp"
#include "basinwright/readers/site_log.hpp"
#include "basinwright/report/season.hpp"
#include "batch_work.hpp"
#include "files.hpp"
#include "inputs.hpp"
#include "job_stream.hpp"
#include "output.hpp"
#include "record.hpp"

namespace basinwright::cli {
namespace {

/// A file that only a season has, with the job its log belongs to.
struct Extra {
  readers::Input input;
  std::size_t job = 0;
};

class SeasonRun {
 public:
  SeasonRun(const Request& r, Inputs inputs)
      : r_(r), inputs_(std::move(inputs)), now_at_(r.now.value_or(clock_now())) {}

  Status run() {
    if (const Status read = read_files(); read != Status::done) return read;
    read_jobs();
    read_crews();
    read_logs();
    if (tell()) return Status::problems;
    settle();
    const job::Season season = job::season_of(question_, *inputs_.rates, now_);
    if (!season.broken.empty()) {
      complain("basinwright: this is our fault, not yours: the season does not hold: " +
               season.broken.front() + "\n");
      return Status::ours;
    }
    return pages(season);
  }

 private:
  Status read_files() {
    JobStream stream(r_.batch.jobs);
    while (auto item = stream.next()) {
      BatchWork::load(*item);
      if (!item->fault.empty()) {
        complain("basinwright: " + item->name + ": " + item->fault + "\n");
        return Status::file;
      }
      inputs_.jobs.push_back({{item->name, std::move(*item->bytes)}, {}});
    }
    if (inputs_.jobs.empty()) {
      complain("basinwright: there is no job in what was given\n");
      return Status::misuse;
    }
    if (!load(r_.batch.crews, crews_)) return Status::file;
    for (const auto& [job, path] : r_.batch.logs) {
      const auto at =
          std::ranges::find(inputs_.jobs, job, [](const JobFile& file) { return file.input.name; });
      logs_.push_back({{}, static_cast<std::size_t>(at - inputs_.jobs.begin())});
      if (!load(path, logs_.back().input)) return Status::file;
      log_names_.push_back(job);
    }
    return Status::done;
  }

  static bool load(const std::string& path, readers::Input& input) {
    auto read = read_file(path);
    if (const auto* error = std::get_if<FileError>(&read)) {
      complain("basinwright: " + path + ": " + error->message + "\n");
      return false;
    }
    input = {path, std::move(std::get<std::string>(read))};
    return true;
  }

  void read_jobs() {
    for (JobFile& file : inputs_.jobs) {
      diagnostics::Problems found;
      file.job = readers::read_job(file.input, found);
      if (file.job && inputs_.rates) add_mismatches(file, *inputs_.rates, found);
      say(found, file.input.bytes);
      const std::string number = file.job ? file.job->heading.number : "";
      named_.push_back({file.input.name, number});
    }
    sound_ = std::ranges::all_of(inputs_.jobs, [](const JobFile& f) { return f.job.has_value(); });
  }

  // Names of jobs that could not be read would only be missed twice.
  void read_crews() {
    diagnostics::Problems found;
    const money::Currency currency = inputs_.rates ? inputs_.rates->currency : money::Currency();
    if (auto question = readers::read_crews(crews_, named_, currency, found))
      question_ = std::move(*question);
    say(found, crews_.bytes);
  }

  void read_logs() {
    for (std::size_t i = 0; i < logs_.size(); ++i) {
      Extra& log = logs_[i];
      if (log.job == inputs_.jobs.size()) log.job = by_number(log_names_[i]);
      if (log.job == inputs_.jobs.size()) {
        misnamed_ = log_names_[i];
        continue;
      }
      diagnostics::Problems found;
      auto read = readers::read_site_log(log.input, found);
      say(found, log.input.bytes);
      if (read) entries_.emplace(log.job, until_now(*read));
    }
  }

  [[nodiscard]] std::size_t by_number(const std::string& name) const {
    const auto at = std::ranges::find_if(named_, [&](const readers::NamedJob& job) {
      return job.number == name || job.file.ends_with("/" + name);
    });
    return static_cast<std::size_t>(at - named_.begin());
  }

  // What was written later than now is not known yet.
  [[nodiscard]] sitelog::Log until_now(const sitelog::Log& log) const {
    sitelog::Log known;
    for (const sitelog::Entry& e : log.entries) {
      if (e.at <= now_at_) known.entries.push_back(e);
    }
    return known;
  }

  void say(const diagnostics::Problems& problems, const std::string& text) {
    for (const diagnostics::Diagnostic& d : problems.sorted()) {
      if (r_.quiet && d.severity != diagnostics::Severity::error) continue;
      complain(worded_problem(r_, d, text));
    }
    refused_ = refused_ || problems.has_errors() || (r_.strict && problems.has_warnings());
  }

  [[nodiscard]] bool tell() {
    complain(worded_problems(r_, inputs_));
    if (misnamed_)
      complain("basinwright: --log names \"" + *misnamed_ + "\", which is no job of this season\n");
    return refused_ || misnamed_ || refused(r_, inputs_) || !sound_;
  }

  void settle() {
    now_.today = r_.today.value_or(now_at_.date());
    std::map<std::string, int> times;
    for (const readers::NamedJob& job : named_) ++times[job.number];
    std::optional<dates::Date> first;
    for (std::size_t j = 0; j < question_.jobs.size(); ++j) {
      job::SeasonJob& job = question_.jobs[j];
      const readers::NamedJob& named = named_[j];
      job.job = &*inputs_.jobs[j].job;
      const bool own = !named.number.empty() && times[named.number] == 1;
      job.name = own ? named.number : named.file;
      const auto& start = job.job->heading.start;
      if (start && !job.not_before) job.not_before = start;
      if (job.not_before) first = first ? std::min(*first, *job.not_before) : job.not_before;
      if (const auto log = entries_.find(j); log != entries_.end()) begin(job, log->second, first);
    }
    now_.start = r_.start ? r_.start : first;
    if (!now_.start) now_.start = now_.today + std::chrono::days{1};
    weather_ = weather_record(inputs_, *inputs_.jobs.front().job, *now_.start);
    if (!inputs_.hours.empty()) now_.weather = &weather_;
    if (inputs_.past.empty()) return;
    past_ = past_record(inputs_);
    question_.past = &past_;
  }

  // A job that has begun is not held back by what it was to wait for.
  void begin(job::SeasonJob& job, const sitelog::Log& log, std::optional<dates::Date>& first) {
    job.past = job::past_of(log, now_at_);
    job.advised = std::ranges::any_of(log.entries, [](const sitelog::Entry& e) {
      return e.event == sitelog::Event::hold_released && e.hold == job::makers_advice;
    });
    for (const sitelog::Entry& e : log.entries) {
      if (e.event != sitelog::Event::started) continue;
      job.not_before.reset();
      first = first ? std::min(*first, e.at.date()) : e.at.date();
    }
  }

  Status pages(const job::Season& season) {
    const job::Job& job = *inputs_.jobs.front().job;
    job::Circumstances circumstances = now_;
    circumstances.reasons = false;
    const job::Plan plan = job::make_plan(job, *inputs_.rates, circumstances);
    report::Subject first{
        job, *inputs_.rates, plan, r_.units.value_or(job.units), r_.paper, false, now_.today};
    dates::Date last = season.start;
    for (const job::SeasonLine& line : season.lines) last = std::max(last, line.full);
    const auto strip = job::weather_strip(job, *inputs_.rates, now_, season.start, last);
    first.strip = &strip;
    report::SeasonSubject subject{first, question_, season};
    if (r_.batch.folder) {
      if (const Status written = write_all(subject); written != Status::done) return written;
    }
    if (r_.batch.crew) {
      subject.crew = crew_named(*r_.batch.crew);
      if (!subject.crew) {
        complain("basinwright: there is no crew \"" + *r_.batch.crew + "\" in " + crews_.name +
                 "\n");
        return Status::misuse;
      }
    }
    const Status printed =
        put(r_, r_.format == Format::svg ? report::season_chart(subject) : report::season(subject));
    if (printed != Status::done) return printed;
    const bool all = std::ranges::all_of(season.lines, [](const job::SeasonLine& line) {
      return line.booked || line.why_not == "filled";
    });
    return all ? Status::done : Status::stop;
  }

  [[nodiscard]] std::optional<std::size_t> crew_named(const std::string& name) const {
    const auto at = std::ranges::find(question_.crews, name, &job::SeasonCrew::name);
    if (at == question_.crews.end()) return {};
    return static_cast<std::size_t>(at - question_.crews.begin());
  }

  // A calendar a crew, and the chart.
  Status write_all(report::SeasonSubject subject) const {
    std::error_code failed;
    std::filesystem::create_directories(*r_.batch.folder, failed);
    Request request = r_;
    request.format = Format::ics;
    std::vector<std::pair<std::string, std::string>> files;
    for (std::size_t c = 0; c < question_.crews.size(); ++c) {
      subject.crew = c;
      files.emplace_back(std::to_string(c + 1) + "-" + safe_name(question_.crews[c].name) + ".ics",
                         rendered(request, report::season(subject)));
    }
    subject.crew.reset();
    request.format = Format::svg;
    files.emplace_back("season.svg", rendered(request, report::season_chart(subject)));
    for (const auto& [name, bytes] : files) {
      const std::string path = *r_.batch.folder + "/" + name;
      const std::string reason = failed ? failed.message() : write_file(path, bytes);
      if (reason.empty()) continue;
      complain("basinwright: " + path + ": " + reason + "\n");
      return Status::file;
    }
    return Status::done;
  }

  const Request& r_;
  Inputs inputs_;
  dates::Minute now_at_;
  readers::Input crews_;
  std::vector<Extra> logs_;
  std::vector<std::string> log_names_;
  std::vector<readers::NamedJob> named_;
  std::map<std::size_t, sitelog::Log> entries_;
  std::optional<std::string> misnamed_;
  job::SeasonQuestion question_;
  job::Circumstances now_;
  weather::Record weather_, past_;
  bool refused_ = false, sound_ = true;
};

}  // namespace

Status season(const Request& request) {
  auto read = read_shared_inputs(request);
  if (const auto* status = std::get_if<Status>(&read)) return *status;
  return SeasonRun(request, std::move(std::get<Inputs>(read))).run();
}

}  // namespace basinwright::cli
