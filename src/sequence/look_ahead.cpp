#include "look_ahead.hpp"

#include <algorithm>

#include "instance.hpp"
#include "tasks.hpp"
#include "windows.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Slot;
using By = Held::By;

/// A task that may be next: its own calendar without and with weather, and between which slots.
struct Candidate {
  std::string task, section;
  schedule::Calendar base, open;
  const weather::Outlook* gate = nullptr;
  Slot slots = 1;
  bool one_stretch = true;
  Slot earliest = 0;
  std::optional<Slot> latest;
  std::optional<Held> wait;  ///< Why not before `earliest`.
};

class Looker {
 public:
  Looker(const ProgrammeQuestion& q, const Instance& in, const Programme& programme)
      : q_(q), in_(in), programme_(programme), now_(in.now()) {}

  std::vector<Chance> look() {
    if (chain_left()) return std::move(chances_);
    const schedule::Units& units = in_.problem().units;
    bool left = false;
    bool bare_seen = false;
    for (std::size_t s = 0; s < units.sections.size(); ++s) {
      const auto starts = next_starts(in_.problem(), s);
      if (!starts && !is_bare(s)) continue;
      left = true;
      if (!starts) {
        if (!bare_seen) first_coat(s);
        bare_seen = true;
      } else if (is_lost(units.sections[s]) || is_reworked_first(units.sections[s])) {
        again("rework", units.sections.size() > 1 ? units.sections[s] : "");
      } else {
        next_coat(s, *starts);
      }
    }
    if (!left) tail();
    return std::move(chances_);
  }

 private:
  [[nodiscard]] bool is_lost(const std::string& section) const {
    const auto& lost = programme_.lost;
    return !lost.together && std::ranges::find(lost.sections, section) != lost.sections.end();
  }

  // Missed on purpose: the programme abrades the section before its next coat.
  [[nodiscard]] bool is_reworked_first(const std::string& section) const {
    const std::string name = in_.problem().units.sections.size() > 1 ? section : "";
    for (const Booking& b : programme_.bookings) {
      if (b.done || b.section != name) continue;
      if (b.task == "rework") return q_.rework.on_purpose;
      if (is_paint(b.task)) return false;
    }
    return false;
  }

  [[nodiscard]] bool is_bare(std::size_t section) const {
    return std::ranges::none_of(in_.problem().facts->units, [&](const schedule::DoneUnit& unit) {
      return unit.section == section;
    });
  }

  [[nodiscard]] Slot chain_end() const {
    Slot end = 0;
    for (const schedule::DoneTask& done : in_.problem().facts->tasks) end = std::max(end, done.end);
    for (const schedule::DoneReclean& done : in_.problem().facts->recleans)
      end = std::max(end, done.end);
    return end;
  }

  bool chain_left() {
    const schedule::Problem& problem = in_.problem();
    Slot before = 0;
    for (std::size_t i = 0; i < problem.chain.size(); ++i) {
      const auto& tasks = problem.facts->tasks;
      const auto done = std::ranges::find(tasks, i, &schedule::DoneTask::task);
      if (done != tasks.end()) {
        before = done->end;
        continue;
      }
      const schedule::Task& task = problem.chain[i];
      Candidate c;
      c.task = in_.chain()[i].task;
      c.section = in_.chain()[i].section;
      c.base = in_.work_calendar();
      c.open = problem.calendars[task.calendar];
      c.gate = in_.outdoors().of_task(c.task);
      c.one_stretch = task.kind == schedule::Kind::one_shift;
      c.slots = c.one_stretch ? task.slots : 1;
      c.earliest = std::max({now_, before + task.lag_min, task.release});
      if (before + task.lag_min > now_) c.wait = Held{By::wait, last_done(), in_.chain()[i].wait};
      judge(c);
      return true;
    }
    return false;
  }

  [[nodiscard]] std::string last_done() const {
    std::string task;
    for (const Done& done : q_.past->done) {
      if (!is_outside_chain(done.task)) task = done.task;
    }
    return task;
  }

  Candidate coat(std::size_t s, std::size_t number) const {
    const schedule::Units& units = in_.problem().units;
    Candidate c;
    c.task = units.coats[number];
    if (units.sections.size() > 1) c.section = units.sections[s];
    c.base = in_.painting_calendar();
    c.open = in_.problem().calendars[units.calendar];
    if (in_.outdoors().known()) c.gate = &in_.outdoors().coat();
    c.slots = units.slots[number][s];
    return c;
  }

  void next_coat(std::size_t s, const Starts& starts) {
    Candidate c = coat(s, starts.coat);
    c.earliest = std::max(now_, starts.from);
    c.latest = starts.until;
    if (starts.from > now_) {
      const schedule::Recoat& window = in_.problem().units.recoat[starts.coat - 1];
      c.wait = starts.after_rework ? Held{By::wait, "rework", q_.waits.rework_dry.value}
                                   : Held{By::recoat_window,
                                          in_.problem().units.coats[starts.coat - 1],
                                          units::hours(window.min / quarters_in_hour)};
    }
    judge(c);
  }

  void first_coat(std::size_t s) {
    if (programme_.lost.etch) return again("clean-again", "");
    Candidate c = coat(s, 0);
    const schedule::Anchor& anchor = in_.problem().anchor;
    c.earliest = std::max(now_, chain_end() + anchor.dry);
    c.latest = etch_holds_until(in_.problem());
    if (in_.problem().facts->units.empty() && in_.outdoors().known()) {
      const schedule::Calendar dry = in_.outdoors().under(c.open, &in_.outdoors().dry_shell());
      if (dry != c.open) {
        c.open = dry;
        dry_shell_ = true;
      }
    }
    judge(c);
    dry_shell_ = false;
  }

  // Work that makes good what was lost.
  void again(std::string task, std::string section) {
    Candidate c;
    c.task = std::move(task);
    c.section = std::move(section);
    c.one_stretch = false;
    c.base = in_.work_calendar();
    c.gate = in_.outdoors().of_task("abrade");  // Both want dry hours.
    c.open = in_.outdoors().under(c.base, c.gate);
    c.earliest = now_;
    judge(c);
  }

  // The rest has no weather to wait for: as the programme has it.
  void tail() {
    for (const Booking& b : programme_.bookings) {
      if (b.done || b.task == "cure" || b.end <= q_.past->now) continue;
      Chance chance{b.task, b.section, b.start, b.end, {}};
      if (b.start > q_.past->now && !b.held_by.empty()) chance.gate = b.held_by.front();
      if (curing()) chance.gate = Held{By::task, "cure"};
      chances_.push_back(std::move(chance));
      return;
    }
  }

  [[nodiscard]] bool curing() const {
    return std::ranges::any_of(programme_.bookings, [&](const Booking& b) {
      return b.task == "cure" && b.start <= q_.past->now && b.end > q_.past->now;
    });
  }

  [[nodiscard]] bool is_open(const schedule::Calendar& calendar, Slot s) const {
    return static_cast<std::size_t>(s) < calendar.size() &&
           calendar[static_cast<std::size_t>(s)] != 0;
  }

  void judge(const Candidate& c) {
    Chance chance{c.task, c.section, {}, {}, {}};
    const Slot horizon = in_.problem().horizon;
    const Slot last = std::min(c.latest.value_or(horizon), horizon - c.slots);
    std::optional<Slot> wanted;  // where the calendar alone would begin
    for (Slot s = c.earliest; s <= last && !chance.opens; ++s) {
      const bool first = !wanted && fits(c.base, s, c.slots);
      if (first) wanted = s;
      if (fits(c.open, s, c.slots)) {
        chance.opens = in_.timeline().moment(s);
        if (c.one_stretch) chance.until = in_.timeline().moment(s + c.slots);
        if (wanted && *wanted < s) chance.gate = closed(c, *wanted);
      }
    }
    if (!chance.opens && wanted) chance.gate = closed(c, *wanted);
    if (!wanted) chance.gate = Held{c.latest ? By::recoat_window : By::working_hours};
    if (!chance.gate && c.wait) chance.gate = c.wait;
    if (!chance.gate && wanted && *wanted > now_ &&
        in_.timeline().date(*wanted) > q_.past->now.date()) {
      chance.gate =
          Held{q_.calendar.works_on(q_.past->now.date()) ? By::working_hours : By::closed_day};
    }
    if (c.latest) {
      chance.latest = in_.timeline().moment(std::min(*c.latest, horizon - 1));
      look_on(c, last, chance);
    }
    chances_.push_back(std::move(chance));
  }

  // How long the window goes on to be of use.
  void look_on(const Candidate& c, Slot last, Chance& chance) const {
    if (!chance.opens) return;
    for (Slot s = c.earliest; s <= last; ++s) {
      if (!fits(c.open, s, c.slots)) continue;
      const dates::Moment at = in_.timeline().moment(s);
      chance.last = at;
      if (!chance.again && at.date() > chance.opens->date()) chance.again = at;
    }
  }

  [[nodiscard]] bool fits(const schedule::Calendar& calendar, Slot s, Slot slots) const {
    for (Slot k = s; k < s + slots; ++k) {
      if (!is_open(calendar, k)) return false;
    }
    return true;
  }

  // The first rule that fails in a stretch the calendar would allow.
  [[nodiscard]] Held closed(const Candidate& c, Slot from) const {
    for (Slot s = from; s < from + c.slots; ++s) {
      if (is_open(c.open, s)) continue;
      const weather::Outlook* gate = c.gate;
      if (gate != nullptr && gate->verdict(s).open() && dry_shell_)
        gate = &in_.outdoors().dry_shell();
      if (gate == nullptr) continue;
      Held held{By::weather};
      held.weather = gate->verdict(s);
      return held;
    }
    return Held{By::working_hours};
  }

  const ProgrammeQuestion& q_;
  const Instance& in_;
  const Programme& programme_;
  Slot now_;
  bool dry_shell_ = false;
  std::vector<Chance> chances_;
};

}  // namespace

std::vector<Chance> look_ahead(const ProgrammeQuestion& q,
                               const weather::Conditions* conditions,
                               const Programme& programme) {
  const int days = days_in_hand(q.start, q.past) + days_looked_at;
  const Instance instance(q, {days, conditions, {}, {{}, false, true}});
  return Looker(q, instance, programme).look();
}

}  // namespace basinwright::sequence
