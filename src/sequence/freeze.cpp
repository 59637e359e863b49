#include "basinwright/sequence/posed.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

constexpr double hair = 1e-9;

bool is_partial(const Done& d) {
  return !d.running && d.share < 1.0 - hair;
}

dates::Moment between(dates::Moment from, dates::Moment to, double share) {
  const auto quarters = static_cast<double>(to.quarters() - from.quarters());
  return dates::Moment::of_quarters(from.quarters() + std::llround(quarters * share));
}

class Freezer {
 public:
  explicit Freezer(const ProgrammeQuestion& q) : q_(q) {}

  ProgrammeQuestion freeze() {
    drop_what_counts_for_nothing();
    assume_what_must_be_done();
    split_sections();
    split_tasks();
    // What is still to do has as long as if nothing were done.
    q_.most_days += days_in_hand(q_.start, q_.past);
    return std::move(q_);
  }

 private:
  std::vector<Done>& done() { return q_.past->done; }

  // Nothing done of it, an etch or a drain in part: all of it is to do.
  void drop_what_counts_for_nothing() {
    std::erase_if(done(), [](const Done& d) {
      const bool whole_or_nothing =
          is_etch(d.task) || d.task == "drain" || d.task == "dryness-test";
      return is_partial(d) && (d.share <= hair || whole_or_nothing);
    });
  }

  // Of work on the whole shell.
  [[nodiscard]] const Done* find(const Work& work) const {
    for (const Done& d : q_.past->done) {
      if (d.task == work.task) return &d;
    }
    return nullptr;
  }

  // Going back from the last task of the route that was begun.
  void assume_what_must_be_done() {
    std::optional<dates::Moment> later;
    for (const Done& d : done()) {
      if (is_paint(d.task)) later = later ? std::min(*later, d.start) : d.start;
    }
    std::vector<Done> assumed;
    for (auto work = q_.work.rbegin(); work != q_.work.rend(); ++work) {
      if (is_outside_chain(work->task)) continue;
      if (const Done* d = find(*work)) {
        later = later ? std::min(*later, d->start) : d->start;
      } else if (later) {
        assumed.push_back({work->task, work->section, *later, *later, 1.0, false, true});
      }
    }
    done().insert(done().end(), assumed.rbegin(), assumed.rend());
    std::ranges::stable_sort(done(), {}, &Done::start);
  }

  // At the first section that was left in the middle of a coat.
  void split_sections() {
    for (std::size_t s = 0; s < q_.sections.size(); ++s) {
      const std::string name = q_.sections[s];
      const auto partial = std::ranges::find_if(done(), [&](const Done& d) {
        return is_paint(d.task) && is_partial(d) && of_section(d, name);
      });
      if (partial == done().end()) continue;
      split(s, partial->share);
      ++s;
    }
    for (Done& d : done()) {
      if (is_paint(d.task) && d.section.empty()) d.section = q_.sections.front();
    }
  }

  [[nodiscard]] bool of_section(const Done& d, const std::string& name) const {
    return d.section == name || (d.section.empty() && q_.sections.size() == 1);
  }

  void split(std::size_t s, double share) {
    const std::string whole = q_.sections[s];
    const bool only = q_.sections.size() == 1;
    const std::string first = only ? "painted part" : whole + ", painted part";
    const std::string rest = only ? "rest" : whole + ", rest";
    split_done(whole, first, rest, share);
    split_work(s, share);
    q_.sections[s] = first;
    q_.sections.insert(q_.sections.begin() + static_cast<std::ptrdiff_t>(s) + 1, rest);
    auto& hours = q_.rework.person_hours;
    if (s < hours.size()) {
      hours.insert(hours.begin() + static_cast<std::ptrdiff_t>(s) + 1, hours[s] * (1.0 - share));
      hours[s] = hours[s] * share;
    }
  }

  // A coat that went over the whole section reached the mark at its share of the time.
  void split_done(const std::string& whole,
                  const std::string& first,
                  const std::string& rest,
                  double share) {
    std::vector<Done> out;
    for (const Done& d : done()) {
      const bool here = (is_paint(d.task) || d.task == "rework") && of_section(d, whole);
      if (!here) {
        out.push_back(d);
        continue;
      }
      Done painted = d;
      painted.section = first;
      painted.share = 1.0;
      if (is_partial(d)) {
        if (d.share > share - hair) out.push_back(painted);
        continue;
      }
      Done other = painted;
      other.section = rest;
      if (!d.running) painted.end = other.start = between(d.start, d.end, share);
      out.push_back(painted);
      out.push_back(other);
    }
    done() = std::move(out);
  }

  void split_work(std::size_t s, double share) {
    std::vector<Work> out;
    std::map<std::string, std::size_t> seen;  // sections of the coat so far
    std::size_t vacuumed = 0;
    for (const Work& work : q_.work) {
      const bool vacuum = work.task == "vacuum";
      if (!vacuum && !is_paint(work.task)) {
        out.push_back(work);
        continue;
      }
      const std::size_t section = vacuum ? vacuumed++ % q_.sections.size() : seen[work.task]++;
      Work part = work;
      part.of_sections = static_cast<int>(q_.sections.size()) + 1;
      part.section = std::to_string(section + 1 + (section > s ? 1 : 0));
      if (section != s) {
        out.push_back(part);
        continue;
      }
      part.person_hours = work.person_hours * share;
      out.push_back(part);
      part.section = std::to_string(section + 2);
      part.person_hours = work.person_hours * (1.0 - share);
      out.push_back(part);
    }
    q_.work = std::move(out);
  }

  void split_tasks() {
    for (std::size_t i = 0; i < q_.work.size(); ++i) {
      if (is_outside_chain(q_.work[i].task)) continue;
      const auto partial = std::ranges::find_if(
          done(), [&](const Done& d) { return is_partial(d) && d.task == q_.work[i].task; });
      if (partial == done().end()) continue;
      const double share = partial->share;
      partial->share = 1.0;
      Work rest = q_.work[i];
      rest.person_hours = rest.person_hours * (1.0 - share);
      q_.work[i].person_hours = q_.work[i].person_hours * share;
      q_.work.insert(q_.work.begin() + static_cast<std::ptrdiff_t>(i) + 1, rest);
      ++i;
    }
  }

  ProgrammeQuestion q_;
};

}  // namespace

ProgrammeQuestion frozen(const ProgrammeQuestion& question) {
  return Freezer(question).freeze();
}

}  // namespace basinwright::sequence
