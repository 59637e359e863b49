// A small season of one section a job as JSON, in the arrays of
// tests/deep/seasons_by_constraints.mzn.
#pragma once

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "basinwright/season/problem.hpp"

namespace basinwright::season {

class AsData {
 public:
  explicit AsData(const Problem& problem) : p_(problem) {
    for (const Job& job : p_.jobs) {
      tasks_ = std::max(tasks_, any(job).problem.chain.size());
      coats_ = std::max(coats_, any(job).problem.units.coats.size());
    }
    const schedule::Problem& one = any(p_.jobs.front()).problem;
    made_ = {{"J", p_.jobs.size()},
             {"C", p_.crews},
             {"H", one.horizon},
             {"D", one.date_of.back() + 1},
             {"N", tasks_},
             {"K", coats_},
             {"travel", p_.travel},
             {"full", any(p_.jobs.front()).full}};
    for (const Job& job : p_.jobs) add(job);
  }
  [[nodiscard]] nlohmann::json take() { return std::move(made_); }

 private:
  using Json = nlohmann::json;
  static constexpr int never = 1000;

  static const Candidate& any(const Job& job) {
    return **std::ranges::find_if(job.by_crew, [](const auto& c) { return c != nullptr; });
  }

  void add(const Job& job) {
    const Candidate& first = any(job);
    const schedule::Problem& p = first.problem;
    Json kind, calendar, lag_min, lag_max, least, most;
    for (std::size_t t = 0; t < tasks_; ++t) {
      const bool has = t < p.chain.size();
      const schedule::Task task = has ? p.chain[t] : schedule::Task{};
      kind.push_back(static_cast<int>(task.kind) + 1);
      calendar.push_back(task.calendar + 1);
      lag_min.push_back(task.lag_min);
      lag_max.push_back(task.lag_max ? *task.lag_max : never);
    }
    for (std::size_t c = 0; c < coats_; ++c) {
      const bool windowed = c > 0 && c < p.units.coats.size();
      kind.push_back(2);
      calendar.push_back(p.units.calendar + 1);
      least.push_back(windowed ? p.units.recoat[c - 1].min : 0);
      most.push_back(windowed ? p.units.recoat[c - 1].max : never);
    }
    for (int after = 0; after < 3; ++after) {
      kind.push_back(1);
      calendar.push_back(first.after.calendar + 1);
    }
    const std::pair<const char*, Json> rows[] = {
        {"tasks", p.chain.size()},
        {"coats", p.units.coats.size()},
        {"kind", kind},
        {"calendar", calendar},
        {"lag_min", lag_min},
        {"lag_max", lag_max},
        {"recoat_min", least},
        {"recoat_max", most},
        {"anchor", p.anchor.task + 1},
        {"limit", p.anchor.limit ? *p.anchor.limit : never},
        {"dry", p.anchor.dry},
        {"ready", first.ready},
        {"cure", *first.after.cured.front()},
        {"promised", job.promised ? *job.promised : never},
        {"weight", job.weight}};
    for (const auto& [key, value] : rows) made_[key].push_back(value);
    by_crew(job);
  }

  void by_crew(const Job& job) {
    Json can, slots, open, price;
    for (const auto& candidate : job.by_crew) {
      const Candidate& c = candidate ? *candidate : any(job);
      Json of_crew;
      for (std::size_t t = 0; t < tasks_; ++t)
        of_crew.push_back(t < c.problem.chain.size() ? c.problem.chain[t].slots : 0);
      for (std::size_t u = 0; u < coats_; ++u)
        of_crew.push_back(u < c.problem.units.slots.size() ? c.problem.units.slots[u][0] : 0);
      for (const Slot after : {c.after.unmask, c.after.refit, Slot{1}}) of_crew.push_back(after);
      Json calendars;
      for (const auto& calendar : c.problem.calendars) {
        Json one;
        for (const char slot : calendar) one.push_back(slot != 0);
        calendars.push_back(one);
      }
      can.push_back(candidate != nullptr);
      slots.push_back(of_crew);
      open.push_back(calendars);
      price.push_back(c.cost);
    }
    made_["can"].push_back(can);
    made_["slots"].push_back(slots);
    made_["open"].push_back(open);
    made_["price"].push_back(price);
  }

  const Problem& p_;
  std::size_t tasks_ = 1, coats_ = 1;
  Json made_;
};

inline std::int64_t weighed(const Value& value) {
  return 1'000'000 * value.unbooked + 10'000 * value.late + 100 * value.refill + value.cost;
}

/// @param number  by which it is made again
inline std::string as_data(const Problem& problem, const Answer& answer, int number) {
  nlohmann::json data = AsData(problem).take();
  data["ours"] = weighed(answer.value);
  data["bound"] = weighed(answer.bound);
  data["optimal"] = answer.optimal;
  data["number"] = number;
  return data.dump();
}

}  // namespace basinwright::season
