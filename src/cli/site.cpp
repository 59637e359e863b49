#include "site.hpp"

#include <algorithm>

#include "basinwright/job/site_rules.hpp"
#include "basinwright/readers/programme_file.hpp"
#include "basinwright/readers/site_log.hpp"
#include "basinwright/report/site.hpp"
#include "basinwright/sitelog/progress.hpp"
#include "files.hpp"
#include "output.hpp"
#include "record.hpp"

namespace basinwright::cli {
namespace {

// A file that only these commands have.
std::optional<readers::Input> load_file(const std::string& path) {
  auto read = read_file(path);
  if (const auto* error = std::get_if<FileError>(&read)) {
    complain("basinwright: " + path + ": " + error->message + "\n");
    return {};
  }
  return readers::Input{path, std::move(std::get<std::string>(read))};
}

// Says what is wrong in one file. @return whether it keeps the request from being carried out
bool tell_all(const Request& r, const diagnostics::Problems& problems, const std::string& text) {
  for (const diagnostics::Diagnostic& d : problems.sorted()) {
    if (r.quiet && d.severity != diagnostics::Severity::error) continue;
    complain(worded_problem(r, d, text));
  }
  return problems.has_errors() || (r.strict && problems.has_warnings());
}

class RunningJob {
 public:
  RunningJob(const Request& r, const Inputs& inputs)
      : r_(r),
        job_(*inputs.jobs.front().job),
        rates_(*inputs.rates),
        now_(r.now.value_or(clock_now())),
        inputs_(inputs) {}

  Status run() {
    const auto file = load_file(r_.log);
    if (!file) return Status::file;
    diagnostics::Problems problems;
    const auto log = readers::read_site_log(*file, problems);
    if (tell_all(r_, problems, file->bytes) || !log) return Status::problems;
    log_ = until_now(*log);
    begin();
    Status status = Status::done;
    const auto was = programme_until_now(status);
    if (!was) return status;
    circumstances_.past = job::past_of(log_, now_in_reach());
    circumstances_.past->before = was->tasks;
    circumstances_.past->look_ahead = true;
    const job::Plan plan = job::make_plan(job_, rates_, circumstances_);
    return page(plan, *was);
  }

 private:
  // A job left lying for longer has no dates either way, and its days need not be counted.
  [[nodiscard]] dates::Minute now_in_reach() const {
    if (log_.entries.empty()) return now_;
    const dates::Minute last = log_.entries.back().at;
    return std::min(now_, dates::Minute(last.minutes() + sitelog::longest_job));
  }

  // Looking back at a morning: what was written later is not known yet.
  [[nodiscard]] sitelog::Log until_now(const sitelog::Log& log) const {
    sitelog::Log known;
    for (const sitelog::Entry& e : log.entries) {
      if (e.at <= now_) known.entries.push_back(e);
    }
    return known;
  }

  void begin() {
    circumstances_.today = r_.today.value_or(now_.date());
    auto start = r_.start ? r_.start : job_.heading.start;
    for (const sitelog::Entry& e : log_.entries) {
      if (e.event != sitelog::Event::started) continue;
      start = start ? std::min(*start, e.at.date()) : e.at.date();
    }
    circumstances_.start = start;
    weather_ = weather_record(inputs_, job_, start.value_or(now_.date()));
    if (!inputs_.hours.empty()) circumstances_.weather = &weather_;
  }

  std::optional<job::Promised> programme_until_now(Status& status) {
    if (!r_.was) return job::promised(job::make_plan(job_, rates_, circumstances_).programme);
    const auto file = load_file(*r_.was);
    status = Status::file;
    if (!file) return {};
    diagnostics::Problems problems;
    auto was = readers::read_programme(*file, problems);
    status = Status::problems;
    if (tell_all(r_, problems, file->bytes)) return {};
    return was;
  }

  Status page(const job::Plan& plan, const job::Promised& was) {
    const report::Subject subject{
        job_, rates_, plan, r_.units.value_or(job_.units), r_.paper, r_.both_units};
    report::Site site{.subject = subject, .log = log_, .now = now_};
    site.rules = job::site_rules(job_, rates_, plan);
    site.breaches = sitelog::breaches(log_, site.rules);
    site.deadlines = job::deadlines(plan, rates_, log_);
    site.remedies = job::remedies(plan, rates_);
    site.was = was;
    site.was_given = r_.was.has_value();
    const bool dated = !plan.stopped() && plan.programme.feasible;
    switch (r_.command) {
      case Command::today:
        return shown(report::morning(site), plan.stopped() || report::no_go(site));
      case Command::coating_record:
        return shown(report::coating_record(site), false);
      case Command::checklist:
        return shown(report::checklist(site), !dated);
      case Command::handover:
        return shown(report::handover(site), !dated);
      default:
        return shown(report::replanned(site), !dated);
    }
  }

  Status shown(const document::Document& page, bool stop) {
    const Status printed = put(r_, rendered(r_, page));
    return printed == Status::done && stop ? Status::stop : printed;
  }

  const Request& r_;
  const job::Job& job_;
  const job::RateBook& rates_;
  dates::Minute now_;
  const Inputs& inputs_;
  sitelog::Log log_;
  job::Circumstances circumstances_;
  weather::Record weather_;
};

}  // namespace

Status running_job(const Request& request, const Inputs& inputs) {
  return RunningJob(request, inputs).run();
}

}  // namespace basinwright::cli
