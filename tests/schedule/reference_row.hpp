// Rows of reference/schedules.json as problems; the wording of the rules is the file's own
// `description`. Header only, so that a runner outside the test programs can compile it too.
#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::schedule::reference {

/// What a row expects; nothing when it is infeasible.
struct Row {
  std::string name;
  Problem problem;
  std::optional<Objective> expected;
};

/// The calendars of a row's problem, in this order.
enum RowCalendar : std::size_t { work_slots, dry_work_slots, paint_slots };

/// A row's clock: civil date, weekday (0 = Monday), month and hour of a slot of one hour.
class Clock {
 public:
  explicit Clock(const std::string& start)
      : first_(std::chrono::year(std::stoi(start.substr(0, 4))) / std::stoi(start.substr(5, 2)) /
               std::stoi(start.substr(8, 2))),
        hour_(std::stoi(start.substr(11, 2))) {}
  [[nodiscard]] int hour(Slot slot) const { return (hour_ + slot) % 24; }
  [[nodiscard]] std::chrono::sys_days day(Slot slot) const {
    return first_ + std::chrono::days((hour_ + slot) / 24);
  }
  [[nodiscard]] int weekday(Slot slot) const {
    return static_cast<int>(std::chrono::weekday(day(slot)).iso_encoding()) - 1;
  }
  [[nodiscard]] std::string month(Slot slot) const {
    const std::chrono::year_month_day date(day(slot));
    return std::to_string(static_cast<unsigned>(date.month()));
  }

 private:
  std::chrono::sys_days first_;
  int hour_;
};

inline std::int64_t hundredths(const nlohmann::json& value) {
  return std::llround(value.get<double>() * 100);
}

inline std::size_t place(Slot slot) {
  return static_cast<std::size_t>(slot);
}

/// Reads the calendars, gates, costs and finishes of one row; the paint gates in `dropped` hold
/// always ("rain" for dry work too).
class RowReader {
 public:
  explicit RowReader(const nlohmann::json& row, std::vector<std::string> dropped = {})
      : row_(row),
        dropped_(std::move(dropped)),
        clock_(row.at("start").get<std::string>()),
        hours_(row.at("hours").get<Slot>()) {
    for (const auto& date : row.at("calendar").at("holidays")) {
      holidays_.push_back(Clock(date.get<std::string>() + "T00:00").day(0));
    }
  }

  [[nodiscard]] Problem problem() const {
    Problem result;
    result.horizon = hours_;
    result.calendars.assign(3, Calendar(place(hours_), 0));
    for (Slot h = 0; h < hours_; ++h) {
      result.date_of.push_back(static_cast<std::int32_t>(clock_.day(h).time_since_epoch().count()));
      result.wet.push_back(static_cast<char>(rain(h)));
      result.cost_of.push_back(cost(h));
      result.calendars[work_slots][place(h)] = static_cast<char>(work(h));
      result.calendars[dry_work_slots][place(h)] = static_cast<char>(work(h) && !rain(h));
      result.calendars[paint_slots][place(h)] = static_cast<char>(paint(h));
    }
    result.attendance = row_.at("cost").at("attendance_cents").get<std::int64_t>();
    read_chain(result);
    read_units(result.units);
    read_finish(result);
    read_facts(result);
    return result;
  }

 private:
  using Json = nlohmann::json;

  [[nodiscard]] bool working_day(Slot h) const {
    for (const auto& weekday : row_.at("calendar").at("weekdays")) {
      if (weekday.get<int>() == clock_.weekday(h)) {
        for (const auto& holiday : holidays_) {
          if (holiday == clock_.day(h)) {
            return false;
          }
        }
        return true;
      }
    }
    return false;
  }
  [[nodiscard]] bool work(Slot h) const {
    const Json& calendar = row_.at("calendar");
    return working_day(h) && clock_.hour(h) >= calendar.at("from").get<int>() &&
           clock_.hour(h) < calendar.at("to").get<int>();
  }
  [[nodiscard]] std::int64_t weather(const char* key, Slot h) const {
    return hundredths(row_.at("weather").at(key).at(place(h)));
  }
  [[nodiscard]] bool dropped(const char* gate) const {
    return std::find(dropped_.begin(), dropped_.end(), gate) != dropped_.end();
  }
  [[nodiscard]] bool rain(Slot h) const {
    return !dropped("rain") && weather("rain_mm", h) >= hundredths(row_.at("limits").at("rain_mm"));
  }
  [[nodiscard]] bool paint_hour(Slot h) const {
    const Json& all_hours = row_.at("paint_hours");
    const std::string month = clock_.month(h);
    const Json& hours = all_hours.contains(month) ? all_hours.at(month) : all_hours.at("default");
    return working_day(h) && clock_.hour(h) >= hours.at(0).get<int>() &&
           clock_.hour(h) < hours.at(1).get<int>();
  }
  [[nodiscard]] bool paint(Slot h) const {
    const Json& limits = row_.at("limits");
    const Slot air_after = limits.at("air_after_h").get<Slot>();
    const Slot rain_after = limits.at("rain_free_after_h").get<Slot>();
    bool open = dropped("calendar") || paint_hour(h);
    open = open && (dropped("air") || h + air_after < hours_);
    open = open && (dropped("rain") || h + rain_after < hours_);
    open =
        open && (dropped("shell") || weather("shell_c", h) >= hundredths(limits.at("shell_min")));
    open = open && (dropped("dew") || weather("shell_c", h) - weather("dew_c", h) >=
                                          hundredths(limits.at("dew_margin")));
    for (Slot k = h; open && !dropped("air") && k <= h + air_after; ++k) {
      open = weather("air_c", k) >= hundredths(limits.at("air_min")) &&
             weather("air_c", k) <= hundredths(limits.at("air_max"));
    }
    for (Slot k = h; open && !dropped("rain") && k <= h + rain_after; ++k) {
      open = !rain(k);
    }
    return open;
  }
  [[nodiscard]] std::int64_t cost(Slot h) const {
    const Json& cost = row_.at("cost");
    const std::int64_t percent =
        cost.at("weekday_pct").value(std::to_string(clock_.weekday(h)), std::int64_t{100});
    return cost.at("crew").get<std::int64_t>() * cost.at("rate_cents_h").get<std::int64_t>() *
           percent / 100;
  }

  void read_chain(Problem& result) const {
    const Json& etch = row_.at("etch");
    for (const auto& prep : row_.at("prep")) {
      Task task;
      task.name = prep.at("id").get<std::string>();
      task.kind = prep.value("unattended", false)  ? Kind::unattended
                  : prep.value("one_shift", false) ? Kind::one_shift
                                                   : Kind::attended;
      task.slots = prep.at("slots").get<Slot>();
      task.calendar = task.kind == Kind::unattended || prep.value("rain_ok", false)
                          ? work_slots
                          : dry_work_slots;
      task.lag_min = prep.value("lag_min", Slot{0});
      if (prep.contains("lag_max")) {
        task.lag_max = prep.at("lag_max").get<Slot>();
      }
      if (task.name == etch.at("anchor").get<std::string>()) {
        result.anchor.task = result.chain.size();
      }
      result.chain.push_back(task);
    }
    result.anchor.limit = 24 * etch.at("max_days").get<Slot>();
    result.anchor.dry = etch.at("dry_h").get<Slot>();
    result.anchor.rain_free = result.anchor.dry;
    if (etch.contains("reclean")) {
      result.anchor.reclean = Reclean{etch.at("reclean").at("slots").get<Slot>(), dry_work_slots};
    }
  }
  void read_units(Units& units) const {
    const Json& coats = row_.at("coats");
    units.coats = coats.at("names").get<std::vector<std::string>>();
    units.slots.resize(units.coats.size());
    units.calendar = paint_slots;
    for (const auto& section : coats.at("sections")) {
      units.sections.push_back(section.at("id").get<std::string>());
      for (std::size_t coat = 0; coat < units.coats.size(); ++coat) {
        units.slots[coat].push_back(section.at("slots").at(coat).get<Slot>());
      }
    }
    for (const auto& window : coats.at("recoat")) {
      units.recoat.push_back({window.at(0).get<Slot>(), window.at(1).get<Slot>()});
    }
    if (coats.contains("rework")) {
      const Json& rework = coats.at("rework");
      units.rework = Rework{rework.at("slots").get<std::vector<Slot>>(),
                            dry_work_slots,
                            rework.at("dry_h").get<Slot>(),
                            rework.at("max_h").get<Slot>()};
    }
  }
  void read_finish(Problem& result) const {
    const Json& fill = row_.at("fill");
    result.finish.resize(place(hours_) + 1);
    for (Slot end = 1; end <= hours_; ++end) {
      bool summer = false;
      for (const auto& month : fill.at("summer_months")) {
        summer = summer || std::to_string(month.get<int>()) == clock_.month(end - 1);
      }
      Slot slot = end + fill.at(summer ? "summer_lag_h" : "winter_lag_h").get<Slot>();
      while (slot < hours_ && !work(slot)) {
        ++slot;
      }
      if (slot < hours_) {
        result.finish[place(end)] = Finish{slot, 0};
      }
    }
  }
  void read_facts(Problem& result) const {
    if (!row_.contains("actual")) {
      return;
    }
    const Json& actual = row_.at("actual");
    Facts facts{actual.at("now").get<Slot>()};
    for (const auto& done : actual.value("prep_done", Json::array())) {
      for (std::size_t task = 0; task < result.chain.size(); ++task) {
        if (result.chain[task].name == done.at("id").get<std::string>()) {
          facts.tasks.push_back({task, done.at("start").get<Slot>(), done.at("end").get<Slot>()});
        }
      }
    }
    for (const auto& done : actual.value("units_done", Json::array())) {
      facts.units.push_back({done.at("coat").get<std::size_t>(),
                             done.at("section").get<std::size_t>(),
                             done.at("start").get<Slot>(),
                             done.at("end").get<Slot>()});
    }
    result.facts = facts;
  }

  const Json& row_;
  std::vector<std::string> dropped_;
  Clock clock_;
  Slot hours_;
  std::vector<std::chrono::sys_days> holidays_;
};

/// The row's own programme: what is left to do, in order of start.
inline std::vector<Booking> read_witness(const nlohmann::json& row, const Problem& problem) {
  std::vector<Booking> bookings;
  for (const auto& entry : row.at("expected").at("witness")) {
    const auto name = entry.at("task").get<std::string>();
    Booking booking{
        Booking::What::reclean, 0, 0, entry.at("start").get<Slot>(), entry.at("end").get<Slot>()};
    for (std::size_t task = 0; task < problem.chain.size(); ++task) {
      if (problem.chain[task].name == name) {
        booking.what = Booking::What::task;
        booking.index = task;
      }
    }
    for (const char* prefix : {"coat", "rework"}) {
      const std::size_t slash = name.find("/sec");
      if (name.rfind(prefix, 0) == 0 && slash != std::string::npos) {
        booking.what = prefix[0] == 'c' ? Booking::What::unit : Booking::What::rework;
        booking.index = std::stoul(name.substr(std::string(prefix).size()));
        booking.section = std::stoul(name.substr(slash + 4));
      }
    }
    bookings.push_back(booking);
  }
  return bookings;
}

/// A row of the file's `rows`.
inline Row read_row(const nlohmann::json& json) {
  Row row;
  row.name = json.at("name").get<std::string>();
  row.problem = RowReader(json).problem();
  const nlohmann::json& expected = json.at("expected");
  if (expected.at("status").get<std::string>() == "optimal") {
    row.expected = Objective{expected.at("refill_slot").get<Slot>(),
                             expected.at("split_coats").get<int>(),
                             expected.at("reworks").get<int>(),
                             expected.at("labour_cents").get<std::int64_t>()};
  }
  return row;
}

}  // namespace basinwright::schedule::reference
