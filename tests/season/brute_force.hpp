// The best season by trying everything: every set of slots that any job may work in on any crew,
// each combination of them that no crew is asked twice at once for. No bound but the best so far,
// no solver of single jobs, no windows: a task that may pause does so wherever it likes.
#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "basinwright/season/problem.hpp"

namespace basinwright::season::brute {

/// From the first to the last time somebody is there, by date.
using Stays = std::map<std::int32_t, std::pair<std::int32_t, std::int32_t>>;

/// All ways of doing one candidate, by when somebody is there; the least date of completion each.
class Ways {
 public:
  explicit Ways(const Candidate& candidate) : c_(candidate), p_(candidate.problem) {
    task(0, 0, {});
  }
  [[nodiscard]] const std::map<Stays, std::int32_t>& all() const { return found_; }

 private:
  using Kind = schedule::Kind;

  static std::size_t n(Slot slot) { return static_cast<std::size_t>(slot); }
  bool open(std::size_t calendar, Slot slot) const {
    return slot >= 0 && slot < p_.horizon && p_.calendars[calendar][n(slot)] != 0;
  }
  Stays with(Stays stays, Slot slot, Slot lead = 0) const {
    const std::int32_t time = c_.time_of[n(slot)];
    const auto [it, fresh] = stays.try_emplace(p_.date_of[n(slot)], time - lead, time + 1);
    it->second.first = std::min(it->second.first, time - lead);
    it->second.second = std::max(it->second.second, time + 1);
    return stays;
  }

  // Any `left` open slots from `slot` on; `then` gets the end and the stays.
  template <class Then>
  void any_slots(
      std::size_t calendar, Slot slot, Slot left, const Stays& stays, Slot end, Then then) {
    if (left == 0) return then(end, stays);
    for (; slot < p_.horizon; ++slot) {
      if (open(calendar, slot))
        any_slots(calendar, slot + 1, left - 1, with(stays, slot), slot + 1, then);
    }
  }

  void task(std::size_t index, Slot end, const Stays& stays) {
    if (index == p_.chain.size()) return unit(0, end, end, stays);
    const schedule::Task& t = p_.chain[index];
    const Slot least = std::max(index > 0 ? end + t.lag_min : 0, t.release);
    const Slot most = index > 0 && t.lag_max ? end + *t.lag_max : p_.horizon;
    for (Slot start = least; start <= std::min(most, p_.horizon - 1); ++start) {
      if (!open(t.calendar, start)) continue;
      const auto go_on = [&](Slot to, const Stays& s) {
        if (index == p_.anchor.task) anchor_ = to;
        task(index + 1, to, s);
      };
      if (t.kind == Kind::unattended) {
        if (start + t.slots <= p_.horizon) go_on(start + t.slots, with(stays, start));
      } else if (t.kind == Kind::attended) {
        any_slots(t.calendar, start + 1, t.slots - 1, with(stays, start), start + 1, go_on);
      } else if (Stays s = stays; unbroken(t.calendar, start, t.slots, 0, s)) {
        go_on(start + t.slots, s);
      }
    }
  }

  bool unbroken(std::size_t calendar, Slot start, Slot slots, Slot lead, Stays& stays) const {
    for (Slot slot = start; slot < start + slots; ++slot) {
      if (!open(calendar, slot)) return false;
      stays = with(stays, slot, slot == start ? lead : 0);
    }
    return true;
  }

  void unit(std::size_t coat, Slot chain_end, Slot before, const Stays& stays) {
    if (coat == p_.units.coats.size()) return after(before, stays);
    const Slot slots = p_.units.slots[coat][0];
    for (Slot start = before; start + slots <= p_.horizon; ++start) {
      if (coat == 0 && !p_.chain.empty()) {
        if (start < chain_end + p_.anchor.dry) continue;
        if (p_.anchor.limit && start > anchor_ + *p_.anchor.limit) continue;
      }
      if (coat > 0) {
        const schedule::Recoat& window = p_.units.recoat[coat - 1];
        const Slot by_start = start - last_start_;
        const Slot by_end = start + slots - before;
        if (std::min(by_start, by_end) < window.min || std::max(by_start, by_end) > window.max)
          continue;
      }
      if (p_.date_of[n(start)] != p_.date_of[n(start + slots - 1)]) continue;
      Stays s = stays;
      if (!unbroken(p_.units.calendar, start, slots, c_.ready, s)) continue;
      const Slot kept = std::exchange(last_start_, start);
      unit(coat + 1, chain_end, start + slots, s);
      last_start_ = kept;
    }
  }

  void after(Slot last, const Stays& stays) {
    const Aftercare& a = c_.after;
    if (!a.cured[n(last)]) return;
    any_slots(a.calendar, last, a.unmask, stays, last, [&](Slot unmasked, const Stays& s) {
      const Slot from = std::max(unmasked, *a.cured[n(last)]);
      any_slots(a.calendar, from, a.refit, s, from, [&](Slot refitted, const Stays& t) {
        for (Slot finish = refitted; finish < p_.horizon; ++finish) {
          if (!open(a.calendar, finish)) continue;
          const auto [it, fresh] = found_.try_emplace(with(t, finish), c_.full[n(finish)]);
          it->second = std::min(it->second, c_.full[n(finish)]);
        }
      });
    });
  }

  const Candidate& c_;
  const schedule::Problem& p_;
  Slot anchor_ = 0, last_start_ = 0;
  std::map<Stays, std::int32_t> found_;
};

/// One job done in one way by one crew.
struct Choice {
  Value value;
  std::size_t crew = 0;
  Stays stays;
};

class Everything {
 public:
  explicit Everything(const Problem& problem) : p_(problem) {
    for (const Job& job : p_.jobs) {
      auto& choices = choices_.emplace_back();
      for (std::size_t c = 0; c < p_.crews; ++c) {
        if (!job.by_crew[c]) continue;
        const Ways ways(*job.by_crew[c]);
        for (const auto& [stays, full] : ways.all()) {
          const std::int64_t late = job.promised ? std::max(0, full - *job.promised) : 0;
          choices.push_back({{0, late * job.weight, full, job.by_crew[c]->cost}, c, stays});
        }
      }
      choices.push_back({{1, 0, 0, 0}, p_.crews, {}});
      std::ranges::stable_sort(choices, {}, &Choice::value);
    }
    taken_.resize(p_.jobs.size());
    job(0, {});
  }
  [[nodiscard]] Value best() const { return best_; }
  /// How a job is done in the best season.
  [[nodiscard]] const Choice* chosen(std::size_t job) const { return chosen_[job]; }

 private:
  bool fits(std::size_t j, const Choice& choice) const {
    for (std::size_t other = 0; other < j; ++other) {
      if (taken_[other]->crew != choice.crew) continue;
      for (const auto& [date, at] : choice.stays) {
        const auto there = taken_[other]->stays.find(date);
        if (there == taken_[other]->stays.end()) continue;
        if (at.second + p_.travel[j][other] > there->second.first &&
            there->second.second + p_.travel[other][j] > at.first)
          return false;
      }
    }
    return true;
  }

  void job(std::size_t j, Value sum) {
    if (j == p_.jobs.size()) {
      if (sum < best_) chosen_ = taken_;
      best_ = std::min(best_, sum);
      return;
    }
    Value rest;
    for (std::size_t other = j + 1; other < p_.jobs.size(); ++other)
      rest = rest + choices_[other].front().value;
    for (const Choice& choice : choices_[j]) {
      if (sum + choice.value + rest >= best_) return;
      if (!fits(j, choice)) continue;
      taken_[j] = &choice;
      job(j + 1, sum + choice.value);
    }
  }

  const Problem& p_;
  std::vector<std::vector<Choice>> choices_;
  std::vector<const Choice*> taken_, chosen_;
  Value best_{1000, 0, 0, 0};
};

}  // namespace basinwright::season::brute
