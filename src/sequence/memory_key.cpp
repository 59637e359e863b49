#include "memory_key.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <type_traits>
#include <vector>

#include "bytes.hpp"
#include "instance.hpp"
#include "outdoors.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

/// The bytes of values one after the other, each of a length that its place or itself tells.
class Key {
 public:
  Key() { bytes_.reserve(usual_bytes); }
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
  // All but the hours, which the other key has.
  void add(const Work& work) {
    const auto& [task, section, person_hours, people, of_sections] = work;
    static_cast<void>(person_hours);
    all(task, section, people, of_sections);
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
    static_cast<void>(person_hours);
    all(people, on_purpose, clean_again);
  }

  template <class... Ts>
  void all(const Ts&... values) {
    (add(values), ...);
  }
  [[nodiscard]] std::string take() { return std::move(bytes_); }

 private:
  static constexpr std::size_t usual_bytes = 2048;
  std::string bytes_;
};

// Told after a programme is found: what follows the fill, and how long it takes.
bool is_told_after(const Work& work) {
  return work.task == "fill" || work.task == "start-up" || work.task == "handover";
}

}  // namespace

std::string gates_key(const ProgrammeQuestion& q, const Setting& setting) {
  Key key;
  key.all(q.start, q.calendar.clock_changes, setting.days, setting.dropped.bits());
  key.all(q.system.limits, q.waits.dry, q.waits.dryness_test, q.weather.rules);
  return key.take();
}

std::string common_key(const ProgrammeQuestion& q, std::uint64_t weather_number) {
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
               rework,
               likely] = q;
  Key key;
  key.all(calendar, sections, system, waits, temperatures, cement, mortar, clean_up);
  key.all(weight_of_quarter, weight_of_attendance, most_days, reasons, rework, weather_number);
  key.all(weather.record != nullptr, weather.position, weather.clock_offset, weather.rules);
  key.add(work);
  // In the other key or beside it, or told after a programme is found; a past is asked anew.
  static_cast<void>(start), static_cast<void>(past), static_cast<void>(water_visits);
  static_cast<void>(water), static_cast<void>(tap), static_cast<void>(drain_pump);
  static_cast<void>(likely);
  return key.take();
}

std::string own_key(const ProgrammeQuestion& q, std::uint32_t common) {
  ByteWriter key;
  key.number(common);
  const bool etched_at_once = etch_groups(q) == 1;
  for (const Work& work : q.work) {
    if (is_told_after(work)) continue;
    // An etch in groups is divided before it is rounded.
    if (is_etch(work.task) && !etched_at_once) {
      key.real(work.person_hours.si());
    } else {
      key.number(quarters_up(work.person_hours / std::max(1, work.people)));
    }
  }
  for (const units::Duration hours : q.rework.person_hours)
    key.number(quarters_up(hours / std::max(1, q.rework.people)));
  return key.take();
}

}  // namespace basinwright::sequence
