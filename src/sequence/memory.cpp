#include "basinwright/sequence/memory.hpp"

#include <algorithm>
#include <string_view>
#include <type_traits>
#include <utility>

#include "basinwright/units/unit.hpp"
#include "instance.hpp"
#include "outdoors.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

constexpr units::Duration quarter = units::minutes(15);

// Only what the search can tell apart.
ProgrammeQuestion in_quarters(const ProgrammeQuestion& given) {
  ProgrammeQuestion q = given;
  const bool etched_at_once = etch_groups(q) == 1;
  for (Work& work : q.work) {
    // An etch in groups is divided before it is rounded; at the handover one person counts.
    if (is_etch(work.task) && !etched_at_once) continue;
    const int people = work.task == "handover" ? 1 : std::max(1, work.people);
    const int quarters = std::max(1, quarters_up(work.person_hours / people));
    work.person_hours = quarter * quarters * people;
  }
  for (units::Duration& hours : q.rework.person_hours) {
    const int people = std::max(1, q.rework.people);
    hours = quarter * std::max(1, quarters_up(hours / people)) * people;
  }
  const int drained = std::max(1, quarters_up(q.water / q.drain_pump));
  const int filled = std::max(1, quarters_up(q.water / q.tap));
  q.water = units::cubic_metres(1);
  q.drain_pump = q.water / (quarter * drained);
  q.tap = q.water / (quarter * filled);
  return q;
}

/// The bytes of values one after the other, each of a length that its place or itself tells.
class Key {
 public:
  template <class T>
  requires std::is_arithmetic_v<T> || std::is_enum_v<T>
  void add(T value) { bytes_.append(reinterpret_cast<const char*>(&value), sizeof value); }
  void add(std::string_view text) {
    add(text.size());
    bytes_ += text;
  }
  void add(const std::string& text) { add(std::string_view(text)); }
  void add(dates::Date day) { add(day.time_since_epoch().count()); }
  void add(dates::Moment moment) { add(moment.quarters()); }
  void add(dates::Hours hours) {
    add(hours.from);
    add(hours.to);
  }
  void add(const dates::ClockChange& change) {
    add(change.at);
    add(change.minutes);
  }
  void add(weather::Position position) {
    add(position.latitude);
    add(position.longitude);
  }
  template <class T>
  requires requires(const T& quantity) { quantity.si(); }
  void add(const T& quantity) { add(quantity.si()); }
  void add(units::Fraction fraction) { add(fraction.share()); }
  template <class T>
  void add(const sources::Sourced<T>& constant) {
    add(constant.value);
  }
  template <class T>
  void add(const std::optional<T>& maybe) {
    add(maybe.has_value());
    if (maybe) add(*maybe);
  }
  template <class T>
  void add(const std::vector<T>& list) {
    add(list.size());
    for (const T& each : list) add(each);
  }
  template <class T, std::size_t N>
  void add(const std::array<T, N>& list) {
    for (const T& each : list) add(each);
  }
  // The bindings fail to compile when a member comes along that nobody thought of here.
  void add(const Work& work) {
    const auto& [task, section, person_hours, people, of_sections] = work;
    all(task, section, person_hours, people, of_sections);
  }
  void add(const dates::WorkCalendar& calendar) {
    const auto& [working, hours, closed, painting, by_month, first_light, changes] = calendar;
    all(working, hours, closed, painting, by_month, first_light, changes);
  }
  void add(const Waits& waits) {
    const auto& [reserve,
                 dry,
                 test,
                 within,
                 chlorine,
                 filler,
                 start_up,
                 rework_dry,
                 rework_within,
                 delivered,
                 warm,
                 cold] = waits;
    all(reserve, dry, test, within, chlorine, filler, start_up, rework_dry, rework_within);
    all(delivered, warm, cold);
  }
  void add(const WeatherRules& rules) {
    const auto& [least_rain, shell_lag, frost, heavy, within] = rules;
    all(least_rain, shell_lag, frost, heavy, within);
  }
  void add(const materials::Limits& limits) {
    const auto& [air_min, air_max, after, shell_min, shell_max, dew, humidity, rain, dry, wind] =
        limits;
    all(air_min, air_max, after, shell_min, shell_max, dew, humidity, rain, dry, wind);
  }
  void add(const materials::Primer& primer) {
    const auto& [kit, cover, least, most] = primer;
    all(kit, cover, least, most);
  }
  void add(const materials::PotLifeLine& line) {
    const auto& [at, time] = line;
    all(at, time);
  }
  // The whole sheet, whatever of it a programme reads.
  void add(const materials::CoatingSystem& system) {
    const auto& [name,
                 sheet,
                 kit,
                 cover_low,
                 cover_high,
                 recoat_min,
                 recoat_max,
                 induction_min,
                 induction_max,
                 pot_life,
                 pot_life_at,
                 pot_lives,
                 mixing,
                 tray_reserve,
                 parts_min,
                 thinner,
                 cure_warm,
                 cure_cold,
                 quiet_start,
                 least_coats,
                 strong_etch,
                 planned_rework,
                 limits,
                 primer,
                 hardeners,
                 cool_to] = system;
    all(name, sheet, kit, cover_low, cover_high, recoat_min, recoat_max, induction_min);
    all(induction_max, pot_life, pot_life_at, pot_lives, mixing, tray_reserve, parts_min, thinner);
    all(cure_warm, cure_cold, quiet_start, least_coats, strong_etch, planned_rework, limits);
    all(primer, hardeners, cool_to);
  }
  void add(const ReworkRules& rules) {
    const auto& [person_hours, people, on_purpose, clean_again] = rules;
    all(person_hours, people, on_purpose, clean_again);
  }

  template <class... Ts>
  void all(const Ts&... values) {
    (add(values), ...);
  }
  [[nodiscard]] std::string take() { return std::move(bytes_); }

 private:
  std::string bytes_;
};

std::string key_of(const ProgrammeQuestion& q, std::uint64_t weather_number) {
  const auto& [start,
               calendar,
               work,
               sections,
               system,
               waits,
               temperatures,
               cement,
               mortar,
               clean_up,
               water,
               tap,
               drain_pump,
               water_visits,
               weight_of_quarter,
               weight_of_attendance,
               weather,
               most_days,
               reasons,
               past,
               rework] = q;
  static_cast<void>(past);  // Asked anew each time.
  Key key;
  key.all(start, calendar, work, sections, system, waits, temperatures, cement, mortar, clean_up);
  key.all(water, tap, drain_pump, water_visits, weight_of_quarter, weight_of_attendance);
  key.all(most_days, reasons, rework, weather_number);
  key.all(weather.record != nullptr, weather.position, weather.clock_offset, weather.rules);
  return key.take();
}

}  // namespace

std::string gates_key(const ProgrammeQuestion& q, const Setting& setting) {
  Key key;
  key.all(q.start, q.calendar.clock_changes, setting.days, setting.dropped.bits());
  key.all(q.system.limits, q.waits.dry, q.waits.dryness_test, q.weather.rules);
  return key.take();
}

std::shared_ptr<const GateTable> ReadWeather::gates(const std::string& key,
                                                    const std::function<GateTable()>& make) const {
  {
    const std::scoped_lock hold(lock_);
    if (const auto it = tables_.find(key); it != tables_.end()) return it->second;
  }
  auto made = std::make_shared<const GateTable>(make());
  const std::scoped_lock hold(lock_);
  if (tables_.size() >= most) tables_.clear();
  return tables_.emplace(key, std::move(made)).first->second;
}

std::shared_ptr<const ReadWeather> Memory::read(const SiteWeather& weather, std::uint64_t number) {
  Key key;
  key.all(number, weather.rules.shell_lag);
  const std::string place = key.take();
  const std::scoped_lock hold(lock_);
  std::shared_ptr<const ReadWeather>& found = read_[place];
  if (!found) {
    constexpr std::size_t most = 8;  // a record for all jobs, a few rate books
    if (read_.size() > most) {
      read_.clear();
    }
    read_[place] = std::make_shared<const ReadWeather>(*weather.record, weather.rules.shell_lag);
  }
  return read_[place];
}

Programme Memory::programme(const ProgrammeQuestion& question, std::uint64_t weather) {
  if (question.past) return sequence::programme(question);
  ProgrammeQuestion asked = in_quarters(question);
  std::string key = key_of(asked, weather);
  {
    const std::scoped_lock hold(lock_);
    if (const auto it = late_.find(key); it != late_.end()) return it->second;
    if (auto old = early_.extract(key)) return late_.insert(std::move(old)).position->second;
  }
  std::shared_ptr<const ReadWeather> read;
  if (asked.weather.record != nullptr && !asked.weather.record->empty()) {
    read = this->read(asked.weather, weather);
    asked.weather.read = read.get();
  }
  Programme found = sequence::programme(asked);
  const std::scoped_lock hold(lock_);
  if (late_.size() + 1 > most_ / 2) {
    early_ = std::move(late_);
    late_.clear();
  }
  late_.emplace(std::move(key), found);
  return found;
}

}  // namespace basinwright::sequence
