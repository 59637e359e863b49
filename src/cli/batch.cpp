#include "batch.hpp"

#include <unistd.h>
#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#ifdef __GLIBC__
#include <malloc.h>
#endif

#include "batch_work.hpp"
#include "in_order.hpp"
#include "inputs.hpp"
#include "job_stream.hpp"
#include "results_file.hpp"
#include "season.hpp"

namespace basinwright::cli {
namespace {

// From the worst to none at all.
constexpr std::array ranks{
    Status::ours, Status::file, Status::problems, Status::stop, Status::done};

Status worse(Status a, Status b) {
  for (const Status rank : ranks) {
    if (rank == a || rank == b) return rank;
  }
  return Status::ours;
}

// The status that a line of an earlier run begins with.
std::optional<Status> status_of(std::string_view line, bool csv) {
  constexpr std::string_view json_start = "{\"status\":";
  if (!csv && !line.starts_with(json_start)) return std::nullopt;
  if (!csv) line.remove_prefix(json_start.size());
  while (!line.empty() && line.front() == ' ') line.remove_prefix(1);
  int number = 0;
  if (std::from_chars(line.data(), line.data() + line.size(), number).ec != std::errc())
    return std::nullopt;
  const auto status = static_cast<Status>(number);
  return std::ranges::find(ranks, status) == ranks.end() ? std::nullopt : std::optional(status);
}

bool ends_with_digest(std::string_view line, const std::string& digest, bool csv) {
  return line.ends_with(csv ? digest + "\r" : "\"" + digest + "\"}");
}

// How far it is, on a terminal only.
class Progress {
 public:
  explicit Progress(bool wanted) : wanted_(wanted && ::isatty(STDERR_FILENO) == 1) {}
  // What an earlier run has done counts neither for the rate nor for the time left.
  void begin(std::size_t done, std::optional<double> share) {
    done_before_ = done;
    share_before_ = share.value_or(0.0);
    begin_ = last_ = Clock::now();
  }
  /// @param share_of_all asked only where something is told
  template <class ShareOfAll>
  void tell(std::size_t done, std::optional<std::size_t> total, ShareOfAll share_of_all) {
    if (!wanted_) return;
    const auto now = Clock::now();
    if (now - last_ < std::chrono::milliseconds(200)) return;
    last_ = now;
    const double seconds = std::chrono::duration<double>(now - begin_).count();
    const double rate = static_cast<double>(done - done_before_) / seconds;
    std::string line = "\r\033[K" + std::to_string(done);
    if (total) line += " of " + std::to_string(*total);
    line += " jobs, " + std::to_string(std::lround(rate)) + " a second";
    const std::optional<double> share = share_of_all();
    if (share && *share > share_before_) {
      const double left = seconds * (1.0 - *share) / (*share - share_before_);
      line += ", " + std::to_string(std::lround(left)) + " s left";
    }
    complain(line);
    told_ = true;
  }
  void over() const {
    if (told_) complain("\r\033[K");
  }

 private:
  using Clock = std::chrono::steady_clock;
  bool wanted_;
  std::size_t done_before_ = 0;
  double share_before_ = 0.0;
  Clock::time_point begin_, last_;
  bool told_ = false;
};

class Run {
 public:
  Run(const Request& r, const Inputs& shared)
      : r_(r),
        work_(r, shared),
        stream_(r.batch.jobs),
        results_(results_for(r)),
        total_(stream_.total()),
        progress_(!r.quiet) {}

  Status run() {
    if (!results_.fault().empty()) return results_failed();
    const std::string head = work_.head();
    if (!head.empty() && results_.kept() != head.substr(0, head.size() - 1)) {
      results_.unkeep();
      results_.cut();
      if (!results_.write(head)) return results_failed();
    }
    auto first = r_.batch.resume ? pass_over_done() : stream_.next();
    results_.cut();
    Source source{stream_, std::move(first), count_};
    Sink sink{*this};
    progress_.begin(count_, share());
    const auto work = [&](std::pair<std::size_t, BatchItem>& item) {
      return work_.carry_out(item.second, item.first);
    };
    if (source.first) in_order(r_.batch.threads, source, work, sink);
    progress_.over();
    if (results_.reader_left()) return Status::done;
    if (!results_.fault().empty() || !results_.finish()) {
      if (results_.reader_left()) return Status::done;
      return results_failed();
    }
    if (!r_.quiet) complain(summary());
    return worst_;
  }

 private:
  // The stream's jobs with their numbers.
  struct Source {
    JobStream& stream;
    std::optional<BatchItem> first;
    std::size_t index;

    std::optional<std::pair<std::size_t, BatchItem>> next() {
      auto item = first ? std::exchange(first, std::nullopt) : stream.next();
      if (!item) return std::nullopt;
      return std::pair{++index, std::move(*item)};
    }
    [[nodiscard]] bool waits() const { return !first && stream.waits(); }
    void await() const { stream.await(); }
  };
  struct Sink {
    Run& run;

    bool deliver(const Done& done) { return run.take(done); }
    bool pause() { return run.results_.flush(); }
  };

  static ResultsFile results_for(const Request& r) {
    if (r.output && *r.output != "-") return {*r.output, r.batch.resume};
    if (!r.batch.folder || r.output) return {};
    return {*r.batch.folder + (r.format == Format::csv ? "/results.csv" : "/results.ndjson"),
            r.batch.resume};
  }

  Status results_failed() {
    complain("basinwright: the result lines could not be written: " + results_.fault() + "\n");
    return Status::file;
  }

  void count(Status status) {
    ++count_;
    ++counts_[status];
    worst_ = worse(worst_, status);
  }

  [[nodiscard]] std::optional<double> share() const {
    if (!total_) return stream_.share_read();
    return *total_ == 0 ? 1.0 : static_cast<double>(count_) / static_cast<double>(*total_);
  }

  bool take(const Done& done) {
    count(done.status);
    progress_.tell(count_, total_, [this] { return share(); });
    if (!results_.write(done.line)) return false;
    return !r_.batch.fail_fast || done.status == Status::done || done.status == Status::stop;
  }

  // The first job that an earlier run did not finish with the same inputs.
  std::optional<BatchItem> pass_over_done() {
    while (auto item = stream_.next()) {
      const auto line = results_.kept();
      if (!line) return item;
      BatchWork::load(*item);
      const bool csv = r_.format == Format::csv;
      const auto status = status_of(*line, csv);
      if (!status || *status == Status::file || *status == Status::ours ||
          !ends_with_digest(*line, work_.digest(*item), csv) ||
          (*status != Status::problems && !work_.document_there(*item, count_ + 1))) {
        results_.unkeep();
        return item;
      }
      count(*status);
      ++kept_;
    }
    return std::nullopt;
  }

  std::string summary() const {
    std::string line = std::to_string(count_) + (count_ == 1 ? " job" : " jobs");
    const std::array<std::pair<Status, std::string_view>, 5> words{
        {{Status::done, "planned"},
         {Status::stop, "stopped or without dates"},
         {Status::problems, "with problems"},
         {Status::file, "with files that could not be read or written"},
         {Status::ours, "broken by a fault of ours"}}};
    char before = ':';
    for (const auto& [status, what] : words) {
      const auto it = counts_.find(status);
      if (it == counts_.end()) continue;
      line += std::string(1, before) + " " + std::to_string(it->second) + " " + std::string(what);
      before = ',';
    }
    if (kept_ > 0) line += "; " + std::to_string(kept_) + " of them done before";
    return "basinwright: " + line + "\n";
  }

  const Request& r_;
  BatchWork work_;
  JobStream stream_;
  ResultsFile results_;
  std::optional<std::size_t> total_;
  Progress progress_;
  std::size_t count_ = 0, kept_ = 0;
  std::map<Status, std::size_t> counts_;
  Status worst_ = Status::done;
};

Status folder_made(const Request& r) {
  if (!r.batch.folder) return Status::done;
  std::error_code failed;
  std::filesystem::create_directories(*r.batch.folder, failed);
  if (!failed) return Status::done;
  complain("basinwright: " + *r.batch.folder + ": " + failed.message() + "\n");
  return Status::file;
}

// What a job gives back, the next one takes. Giving it to the system in between, as glibc does by
// itself, took a twentieth of the time.
void keep_freed_memory() {
#ifdef __GLIBC__
  constexpr int kept = 64 << 20;
  constexpr int in_one_piece = 16 << 20;
  ::mallopt(M_TRIM_THRESHOLD, kept);
  ::mallopt(M_MMAP_THRESHOLD, in_one_piece);
#endif
}

}  // namespace

Status batch(const Request& request) {
  if (request.batch.programme) return season(request);
  auto read = read_shared_inputs(request);
  if (const auto* status = std::get_if<Status>(&read)) return *status;
  const Inputs& shared = std::get<Inputs>(read);
  complain(worded_problems(request, shared));
  if (refused(request, shared)) return Status::problems;
  if (const Status made = folder_made(request); made != Status::done) return made;
  keep_freed_memory();
  return Run(request, shared).run();
}

}  // namespace basinwright::cli
