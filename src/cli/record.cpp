#include "record.hpp"

#include <unistd.h>
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <iostream>

#include "basinwright/job/site_rules.hpp"
#include "basinwright/readers/site_log.hpp"
#include "basinwright/report/site.hpp"
#include "files.hpp"
#include "log_file.hpp"

namespace basinwright::cli {
namespace {

using diagnostics::Severity;

// Problems under the name and text of one file.
std::string worded(const Request& r, const diagnostics::Problems& problems, std::string_view text) {
  std::string out;
  for (const diagnostics::Diagnostic& d : problems.sorted()) {
    if (r.quiet && d.severity != Severity::error) continue;
    out += worded_problem(r, d, text);
  }
  return out;
}

class Recorder {
 public:
  Recorder(const Request& r, const Inputs& inputs) : r_(r), now_(r.now.value_or(clock_now())) {
    const job::Job& job = *inputs.jobs.front().job;
    job::Circumstances circumstances;
    units_ = r.units.value_or(job.units);
    circumstances.today = r.today.value_or(now_.date());
    circumstances.start = r.start;
    circumstances.take_off_only = true;
    const job::Plan plan = job::make_plan(job, *inputs.rates, circumstances);
    known_ = {job::site_tasks(plan), job::site_sections(plan), job::site_holds(plan)};
    rules_ = job::site_rules(job, *inputs.rates, plan);
  }

  Status one() {
    std::vector<std::pair<std::string, std::string>> values{{"event", r_.entry.front()}};
    for (std::size_t i = 1; i < r_.entry.size(); ++i) {
      const std::size_t equals = r_.entry[i].find('=');
      if (equals == std::string::npos || equals == 0) {
        complain("basinwright: \"" + r_.entry[i] +
                 "\" is no KEY=VALUE, such as task=coat-1 or air=\"18 C\"\n");
        return Status::misuse;
      }
      values.emplace_back(r_.entry[i].substr(0, equals), r_.entry[i].substr(equals + 1));
    }
    // The time stands first, so that a log reads like a diary.
    const auto timed = std::ranges::find(values, "at", &std::pair<std::string, std::string>::first);
    if (timed == values.end()) {
      values.insert(values.begin(), {"at", dates::iso(now_)});
    } else {
      std::rotate(values.begin(), timed, timed + 1);
    }
    return add(readers::entry_line(values));
  }

  // Each line is told as kept before the next is read.
  Status all() {
    Status worst = Status::done;
    std::string line;
    while (std::getline(std::cin, line)) {
      if (line.find_first_not_of(" \t\r") == std::string::npos) continue;
      if (line.back() == '\r') line.pop_back();
      const Status status = add(readers::has_time(line) ? line : readers::with_time(line, now_));
      if (status == Status::file) return status;
      if (status != Status::done) worst = status;
    }
    return worst;
  }

 private:
  Status add(const std::string& line) {
    LogFile file(r_.log);
    if (!file.error().empty()) return broken(file);
    diagnostics::Problems of_log;
    const auto log = readers::read_site_log({r_.log, file.bytes()}, of_log);
    complain(worded(r_, of_log, file.bytes()));
    if (!log) return Status::problems;
    diagnostics::Problems of_entry;
    const auto entry = readers::read_entry({"entry", line}, known_, of_entry);
    if (!entry || !readers::fits_log(*log, *entry, {now_, r_.log, line}, of_entry)) {
      complain(worded(r_, of_entry, line));
      return Status::problems;
    }
    sitelog::Log longer = *log;
    longer.entries.push_back(*entry);
    const std::string said = warnings(longer);
    if (r_.strict && !said.empty()) {
      complain(said + "basinwright: not recorded, since --strict makes warnings errors\n");
      return Status::problems;
    }
    if (!file.add(readers::whole_bytes(file.bytes()), line)) return broken(file);
    if (!r_.quiet) complain(said);
    const auto lines = std::ranges::count(file.bytes(), '\n');
    const std::string kept = "recorded as line " + std::to_string(lines) + ": " + line + "\n";
    std::fwrite(kept.data(), 1, kept.size(), stdout);
    return std::fflush(stdout) == 0 ? Status::done : Status::file;
  }

  [[nodiscard]] std::string warnings(const sitelog::Log& log) const {
    std::string out;
    for (const sitelog::Breach& breach : sitelog::breaches(log, rules_)) {
      if (breach.entry + 1 != log.entries.size()) continue;
      out += "basinwright: warning: " + report::broken_rule(breach, units_) + "\n";
    }
    return out;
  }

  Status broken(const LogFile& file) const {
    complain("basinwright: " + r_.log + ": " + file.error() + "\n");
    return Status::file;
  }

  const Request& r_;
  dates::Minute now_;
  readers::KnownWords known_;
  sitelog::Rules rules_;
  units::System units_ = units::System::metric;
};

}  // namespace

dates::Minute clock_now() {
  const std::time_t seconds = std::time(nullptr);
  std::tm local{};
  ::localtime_r(&seconds, &local);
  constexpr int first_year = 1900;
  const std::chrono::year_month_day day(std::chrono::year(local.tm_year + first_year),
                                        std::chrono::month(static_cast<unsigned>(local.tm_mon + 1)),
                                        std::chrono::day(static_cast<unsigned>(local.tm_mday)));
  constexpr std::int64_t minutes_in_hour = 60;
  const dates::Minute midnight(dates::Moment(dates::Date(day), 0));
  return dates::Minute(midnight.minutes() + local.tm_hour * minutes_in_hour + local.tm_min);
}

Status record(const Request& request, const Inputs& inputs) {
  Recorder recorder(request, inputs);
  return request.entry.front() == "-" ? recorder.all() : recorder.one();
}

}  // namespace basinwright::cli
