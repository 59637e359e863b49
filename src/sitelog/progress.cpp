#include "basinwright/sitelog/progress.hpp"

#include <algorithm>
#include <charconv>
#include <map>

namespace basinwright::sitelog {
namespace {

bool is_work(const Entry& e) {
  return e.event == Event::started || e.event == Event::finished || e.event == Event::stopped;
}

// The same entries with their places in the log, by time.
std::vector<std::size_t> order_of(const Log& log) {
  std::vector<std::size_t> order(log.entries.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::ranges::stable_sort(order, {}, [&](std::size_t i) { return log.entries[i].at; });
  return order;
}

std::string name_of(const Entry& e) {
  return e.section.empty() ? e.task : e.task + ", section " + e.section;
}

// Goes through the log in time and says what cannot be.
class Judge {
 public:
  explicit Judge(const Log& log) : log_(log) {}

  std::vector<Impossible> judge() {
    const std::vector<std::size_t> order = order_of(log_);
    for (const std::size_t i : order) {
      const Entry& e = log_.entries[i];
      if (e.at.minutes() - log_.entries[order.front()].at.minutes() > longest_job) {
        say(i, order.front(), "no job is ten years in hand", "One of the two years is wrong.");
      }
      if (!is_work(e)) continue;
      Standing& s = standing_[{e.task, e.section}];
      if (e.event == Event::started) {
        start(i, s);
      } else {
        leave(i, s);
      }
    }
    std::ranges::stable_sort(found_, {}, &Impossible::entry);
    return std::move(found_);
  }

 private:
  struct Standing {
    std::optional<std::size_t> started, finished;
    double share = 0.0;
    bool running = false;
  };

  void start(std::size_t i, Standing& s) {
    const Entry& e = log_.entries[i];
    if (s.running) {
      say(i,
          s.started,
          name_of(e) + " has been started and is still going on",
          "Record that it was finished or stopped first.");
    } else if (s.finished && !is_again(e.task)) {
      say(i,
          s.finished,
          name_of(e) + " is finished",
          "A section abraded again is task rework, a shell cleaned again task clean-again.");
    }
    below(i);
    s.started = i;
    s.running = true;
    if (is_again(e.task)) s.share = 0.0;
  }

  void leave(std::size_t i, Standing& s) {
    const Entry& e = log_.entries[i];
    if (!s.running) {
      const std::string verb = e.event == Event::finished ? " finished" : " stopped";
      const auto later = start_after(e);
      say(i,
          later,
          name_of(e) + verb + (later ? " before it was started" : ", yet never started"),
          later ? "One of the two times is wrong." : "Record its start first.");
      return;
    }
    if (e.event == Event::finished) s.finished = i;
    const double share = e.event == Event::finished ? 1.0 : e.share.value_or(0.0);
    if (share < s.share) {
      say(i,
          s.started,
          "less of " + name_of(e) + " is done than before",
          "The share counts all that is done of it.");
    }
    s.share = share;
    s.running = false;
  }

  [[nodiscard]] std::optional<std::size_t> start_after(const Entry& e) const {
    for (std::size_t k = 0; k < log_.entries.size(); ++k) {
      const Entry& other = log_.entries[k];
      if (other.event == Event::started && other.task == e.task && other.section == e.section &&
          other.at > e.at)
        return k;
    }
    return {};
  }

  // A section may be painted in parts, so what was begun is enough only when it was left again.
  void below(std::size_t i) {
    const Entry& e = log_.entries[i];
    const std::string coat = coat_below(e.task);
    if (coat.empty() || coat == "prime") return;
    const auto it = standing_.find({coat, e.section});
    if (it != standing_.end() && it->second.share > 0.0) return;
    say(i,
        {},
        name_of(e) + " is started on a section whose " + coat + " is not on",
        "Record " + coat + " first, or mend the section's name.");
  }

  void say(std::size_t i, std::optional<std::size_t> other, std::string what, std::string hint) {
    found_.push_back({i, other, std::move(what), std::move(hint)});
  }

  const Log& log_;
  std::map<std::pair<std::string, std::string>, Standing> standing_;
  std::vector<Impossible> found_;
};

}  // namespace

bool is_again(std::string_view task) {
  return task == rework_task || task == clean_again_task;
}

std::vector<Entry> in_time(const Log& log) {
  std::vector<Entry> entries;
  for (const std::size_t i : order_of(log)) entries.push_back(log.entries[i]);
  return entries;
}

bool is_coat(std::string_view task) {
  return task == "prime" || task.starts_with("coat-");
}

std::string coat_below(std::string_view task) {
  if (!task.starts_with("coat-")) return "";
  const std::string_view number = task.substr(5);
  int n = 0;
  const auto read = std::from_chars(number.data(), number.data() + number.size(), n);
  if (read.ec != std::errc() || read.ptr != number.data() + number.size() || n < 1) return "";
  return n == 1 ? "prime" : "coat-" + std::to_string(n - 1);
}

std::vector<Progress> progress(const Log& log) {
  std::vector<Progress> all;
  for (const Entry& e : in_time(log)) {
    if (!is_work(e)) continue;
    Progress* at = nullptr;
    for (Progress& p : all) {
      if (p.task == e.task && p.section == e.section) at = &p;
    }
    if (e.event == Event::started) {
      if (at == nullptr || (at->finished && is_again(e.task))) {
        all.push_back({e.task, e.section, e.at});
      } else {
        at->end.reset();
      }
    } else if (at != nullptr) {
      at->end = e.at;
      at->finished = e.event == Event::finished;
      at->share = at->finished ? 1.0 : e.share.value_or(at->share);
    }
  }
  return all;
}

const Progress* find(const std::vector<Progress>& all,
                     std::string_view task,
                     std::string_view section) {
  const Progress* found = nullptr;
  for (const Progress& p : all) {
    if (p.task == task && p.section == section) found = &p;
  }
  return found;
}

std::vector<Impossible> impossible(const Log& log) {
  return Judge(log).judge();
}

}  // namespace basinwright::sitelog
