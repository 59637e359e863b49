#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/sitelog/rules.hpp"
#include "basinwright/weather/dew_point.hpp"

namespace basinwright::sitelog {
namespace {

double hours_between(dates::Minute from, dates::Minute to) {
  return units::minutes(static_cast<double>((to.minutes() - from.minutes()))).in(units::hours);
}

bool has_conditions(const Readings& r) {
  return r.air || r.shell || r.humidity;
}

// What is already known when the next entry is read, in time.
class Watch {
 public:
  Watch(const Log& log, const Rules& rules) : log_(log), rules_(rules) {}

  std::vector<Breach> watch() {
    std::vector<std::size_t> order(log_.entries.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return log_.entries[i].at; });
    for (const std::size_t i : order) take(i);
    std::ranges::stable_sort(found_, {}, &Breach::entry);
    return std::move(found_);
  }

 private:
  void take(std::size_t i) {
    const Entry& e = log_.entries[i];
    switch (e.event) {
      case Event::started:
        if (is_again(e.task)) again_.insert_or_assign({e.task, e.section}, e.at);
        holds(i);
        if (is_coat(e.task)) paint(i);
        break;
      case Event::finished:
      case Event::stopped:
        finish(i);
        break;
      case Event::reading:
        read(i);
        break;
      case Event::delivery:
        delivered(i);
        break;
      case Event::mix:
        mixed(i);
        break;
      case Event::hold_released:
        released_.insert_or_assign(e.hold, e.at);
        break;
      case Event::note:
        break;
    }
  }

  Breach& say(Broken rule, std::size_t i, double measured = 0.0, double limit = 0.0) {
    const Entry& e = log_.entries[i];
    found_.push_back({rule, i, e.task, e.section, measured, limit, {}, {}});
    return found_.back();
  }

  void paint(std::size_t i) {
    const Entry& e = log_.entries[i];
    if (!painting_) conditions_at_start(i);
    painting_ = e.section;
    painted_ = e.task;
    const auto span = std::pair(e.task, e.section);
    started_.try_emplace(span, e.at);
    window(i, e.at, started_);
    if ((e.task == "coat-1" || e.task == "prime") && etched_ &&
        hours_between(*etched_, e.at) > rules_.coat_within.in(units::hours)) {
      say(Broken::etch_expired,
          i,
          hours_between(*etched_, e.at),
          rules_.coat_within.in(units::hours));
    }
  }

  // Conditions read shortly before painting stand for its start.
  void conditions_at_start(std::size_t i) {
    const Entry& e = log_.entries[i];
    for (const Entry& other : log_.entries) {
      if (other.event != Event::reading || other.where != Where::shell) continue;
      if (!has_conditions(other.read)) continue;
      const double age = hours_between(other.at, e.at);
      if (age == 0.0) return;  // Judged when it is reached.
      if (age > 0.0 && age <= readings_hold_for.value.in(units::hours)) last_read_ = &other;
    }
    const bool fresh = last_read_ != nullptr && hours_between(last_read_->at, e.at) <=
                                                    readings_hold_for.value.in(units::hours);
    if (!fresh) {
      say(Broken::no_reading, i);
    } else {
      judge(i, last_read_->read);
    }
  }

  void judge(std::size_t i, const Readings& r) {
    constexpr double hair = 1e-9;
    const auto outside = [&](double value, double low, double high, Broken rule) {
      if (value < low - hair) say(rule, i, value, low);
      if (value > high + hair) say(rule, i, value, high);
    };
    if (r.air) {
      outside(r.air->in(units::celsius),
              rules_.air_min.in(units::celsius),
              rules_.air_max.in(units::celsius),
              Broken::air);
    }
    if (r.shell) {
      outside(r.shell->in(units::celsius),
              rules_.shell_min.in(units::celsius),
              rules_.shell_max.in(units::celsius),
              Broken::shell_temperature);
    }
    if (r.humidity && r.humidity->share() > rules_.humidity_max.share() + hair)
      say(Broken::humidity, i, r.humidity->share(), rules_.humidity_max.share());
    const auto margin = dew_margin(r);
    const double least = rules_.dew_margin.in(units::kelvins);
    if (margin && margin->in(units::kelvins) < least - hair)
      say(Broken::dew_margin, i, margin->in(units::kelvins), least);
  }

  // Starts and ends lie in the window apart, so that no point of the section is out of it.
  using Times = std::map<std::pair<std::string, std::string>, dates::Minute>;
  void window(std::size_t i, dates::Minute at, const Times& times) {
    const Entry& e = log_.entries[i];
    const std::string below = coat_below(e.task);
    const auto it = times.find({below, e.section});
    if (below.empty() || it == times.end() || reworked_.contains(e.section)) return;
    const Window& w = below == "prime" ? rules_.primer : rules_.recoat;
    const double gap = hours_between(it->second, at);
    constexpr double hair = 1e-9;
    if (gap < w.min.in(units::hours)-hair)
      say(Broken::recoat_early, i, gap, w.min.in(units::hours));
    if (gap > w.max.in(units::hours) + hair)
      say(Broken::recoat_late, i, gap, w.max.in(units::hours));
  }

  void finish(std::size_t i) {
    const Entry& e = log_.entries[i];
    if (is_coat(e.task)) {
      painting_.reset();
      if (e.event != Event::finished) return;
      const std::size_t before = found_.size();
      ended_.insert_or_assign({e.task, e.section}, e.at);
      window(i, e.at, ended_);
      drop_repeated(before);
      reworked_.erase(e.section);
    } else if (e.event == Event::finished) {
      if (e.task == rework_task) reworked_.insert(e.section);
      if (e.task == clean_again_task || e.task == "etch-floor") etched_ = e.at;
    }
  }

  // A coat that started out of its window ends out of it too; that is one breach, not two.
  void drop_repeated(std::size_t before) {
    if (found_.size() == before) return;
    const Breach& last = found_.back();
    for (std::size_t k = 0; k < before; ++k) {
      const Breach& b = found_[k];
      if (b.rule == last.rule && b.task == last.task && b.section == last.section) {
        found_.pop_back();
        return;
      }
    }
  }

  void read(std::size_t i) {
    const Entry& e = log_.entries[i];
    if (e.where == Where::shell && has_conditions(e.read) && (painting_ || starts_at(e.at)))
      judge(i, e.read);
    if (e.where != Where::outflow) return;
    if (e.read.ph && rules_.ph_min && *e.read.ph < *rules_.ph_min)
      say(Broken::outflow_ph, i, *e.read.ph, *rules_.ph_min);
    if (e.read.ph && rules_.ph_max && *e.read.ph > *rules_.ph_max)
      say(Broken::outflow_ph, i, *e.read.ph, *rules_.ph_max);
    if (e.read.chlorine && rules_.chlorine_max && *e.read.chlorine > *rules_.chlorine_max) {
      say(Broken::outflow_chlorine,
          i,
          e.read.chlorine->in(units::milligrams_per_litre),
          rules_.chlorine_max->in(units::milligrams_per_litre));
    }
  }

  [[nodiscard]] bool starts_at(dates::Minute at) const {
    return std::ranges::any_of(log_.entries, [&](const Entry& e) {
      return e.event == Event::started && is_coat(e.task) && e.at == at;
    });
  }

  void delivered(std::size_t i) {
    const Entry& e = log_.entries[i];
    if (e.item == "part-a") another(batch_a_, e.batch, Broken::part_a_batches, i);
    if (e.item == "part-b") another(kind_b_, e.kind, Broken::part_b_kinds, i);
  }

  void mixed(std::size_t i) {
    const Entry& e = log_.entries[i];
    another(batch_a_, e.batch_a, Broken::part_a_batches, i);
    another(kind_b_, e.part_b, Broken::part_b_kinds, i);
    if (!e.emptied) return;
    const double age = hours_between(e.at, *e.emptied);
    if (age > rules_.pot_life.in(units::hours))
      say(Broken::pot_life, i, age, rules_.pot_life.in(units::hours));
  }

  void another(std::string& known, const std::string& said, Broken rule, std::size_t i) {
    if (said.empty()) return;
    if (known.empty()) known = said;
    if (known == said) return;
    Breach& breach = say(rule, i);
    breach.was = known;
    breach.now = said;
  }

  // Work on a step with a hold point before it not released; said once for each section.
  void holds(std::size_t i) {
    const Entry& e = log_.entries[i];
    const auto here = std::ranges::find(rules_.route, e.task, &HoldRule::task);
    if (here == rules_.route.end()) return;
    for (auto step = rules_.route.begin(); step != here; ++step) {
      for (const std::string& hold : step->after) {
        if (!released_after(step->task, e.section, hold)) hold_open(i, step->task, hold);
      }
    }
    for (const std::string& hold : here->before) {
      if (!released_since_below(e, hold)) hold_open(i, e.task, hold);
    }
  }

  void hold_open(std::size_t i, const std::string& task, const std::string& hold) {
    const Entry& e = log_.entries[i];
    const std::string where = is_coat(task) ? e.section : "";
    if (!passed_.insert(task + "/" + where + "/" + hold).second) return;
    Breach& breach = say(Broken::hold_open, i);
    breach.was = task;
    breach.now = hold;
  }

  // Work done once more needs its hold point signed once more, where it was done.
  [[nodiscard]] bool released_after(const std::string& task,
                                    const std::string& section,
                                    const std::string& hold) const {
    const auto it = released_.find(hold);
    if (!is_again(task)) return it != released_.end();
    auto begun = again_.find({task, section});
    if (begun == again_.end()) begun = again_.find({task, ""});
    return begun == again_.end() || (it != released_.end() && it->second >= begun->second);
  }

  // What is felt on the coat below counts once that coat is on.
  [[nodiscard]] bool released_since_below(const Entry& e, const std::string& hold) const {
    const auto it = released_.find(hold);
    if (it == released_.end()) return false;
    const auto below = ended_.find({coat_below(e.task), e.section});
    return below == ended_.end() || it->second >= below->second;
  }

  const Log& log_;
  const Rules& rules_;
  std::vector<Breach> found_;
  Times started_, ended_, again_;
  std::set<std::string> reworked_;                 ///< Sections abraded since their last coat.
  std::map<std::string, dates::Minute> released_;  ///< Hold points, when last.
  std::set<std::string> passed_;                   ///< Said already.
  std::optional<dates::Minute> etched_;
  std::optional<std::string> painting_;
  std::string painted_, batch_a_, kind_b_;
  const Entry* last_read_ = nullptr;
};

}  // namespace

std::optional<units::TemperatureDifference> dew_margin(const Readings& r) {
  if (!r.air || !r.shell || !r.humidity) return {};
  return weather::dew_margin(*r.shell, weather::dew_point(*r.air, *r.humidity));
}

std::vector<Breach> breaches(const Log& log, const Rules& rules) {
  return Watch(log, rules).watch();
}

}  // namespace basinwright::sitelog
