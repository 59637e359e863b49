#include "mixing_plan.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "basinwright/units/unit.hpp"
#include "basinwright/weather/conditions.hpp"

namespace basinwright::job {
namespace {

using coverage::MixingSession;
using units::Duration;
using units::Temperature;

// From when the evening before the parts stand as cold as the air.
constexpr Sourced<Duration> evening{units::hours(18),
                                    {sources::Kind::assumed, "parts-overnight", "18:00"}};

bool is_paint(std::string_view task) {
  return task == "prime" || task.starts_with("coat-");
}

class Mornings {
 public:
  Mornings(const Job& job, const RateBook& rates, const Circumstances& now, double texture)
      : job_(job), rates_(rates), texture_(texture) {
    if (now.weather != nullptr && !now.weather->empty())
      weather_.emplace(*now.weather, sequence::WeatherRules().shell_lag);
  }

  void fill(const Plan& plan, MixingPlan& out) const {
    for (const sequence::Booking& b : plan.programme.bookings) {
      if (is_paint(b.task)) out.mornings.push_back(morning_of(plan, b, out));
    }
  }

 private:
  [[nodiscard]] PaintingMorning morning_of(const Plan& plan,
                                           const sequence::Booking& b,
                                           const MixingPlan& crew) const {
    PaintingMorning m;
    m.task = b.task;
    m.section = b.section;
    m.opening = b.start;
    m.close = close_of(plan.programme, b);
    m.session = session_of(plan, b, crew);
    m.session.window = units::minutes(15) * static_cast<double>(quarters_between(b.start, m.close));
    set_temperature(plan.system, b, m);
    m.timetable = coverage::mixing_timetable(m.session);
    try_shortest_induction(plan.system, m);
    set_parts(plan.system, m);
    const auto& t = m.timetable;
    if (t.painters_for_pot_life && t.painters_for_window)
      m.painters_needed = std::max(*t.painters_for_pot_life, *t.painters_for_window);
    return m;
  }

  static std::int64_t quarters_between(dates::Moment from, dates::Moment to) {
    return std::max<std::int64_t>(0, to.quarters() - from.quarters());
  }

  [[nodiscard]] dates::Moment close_of(const sequence::Programme& programme,
                                       const sequence::Booking& b) const {
    const dates::Date day = b.start.date();
    dates::Moment close = std::max(b.end, dates::Moment(day, job_.calendar.painting_hours(day).to));
    for (const sequence::Booking& other : programme.bookings) {
      if (is_paint(other.task) && other.start > b.start) close = std::min(close, other.start);
    }
    return close;
  }

  [[nodiscard]] MixingSession session_of(const Plan& plan,
                                         const sequence::Booking& b,
                                         const MixingPlan& crew) const {
    const materials::CoatingSystem& sheet = plan.system;
    const bool primer = b.task == "prime";
    MixingSession s;
    s.area = area_of(plan, b.section);
    s.cover = primer ? sheet.primer.cover.value : sheet.expected_cover().value;
    s.rate = (primer ? rates_.productivity.prime.value : rates_.productivity.coat.value) / texture_;
    s.painters = crew.painters;
    s.mixer = crew.mixer_apart ? coverage::Mixer::apart : coverage::Mixer::painter;
    s.mixing = sheet.mixing.value;
    s.induction = sheet.induction_max.value;
    s.reserve = sheet.tray_reserve.value;
    s.pot_life.life = sheet.pot_life;
    s.pot_life.at = sheet.pot_life_at;
    for (const materials::PotLifeLine& line : sheet.pot_lives)
      s.pot_life.table.push_back({line.at, line.time});
    return s;
  }

  [[nodiscard]] static units::Area area_of(const Plan& plan, const std::string& section) {
    const coverage::Cut& cut = plan.quantities.cut;
    for (std::size_t i = 0; i < cut.sections.size(); ++i) {
      const std::string name = cut.names.empty() ? std::to_string(i + 1) : cut.names[i];
      if (section == name) return cut.sections[i];
    }
    return plan.take_off.painted;
  }

  // The warmest and the coldest known air of the hours [from, to); nothing where one is unknown.
  struct Air {
    Temperature low, high;
  };
  [[nodiscard]] std::optional<Air> air(dates::Moment from, dates::Moment to) const {
    std::optional<Air> out;
    if (!weather_) return out;
    const auto until = dates::Moment::of_quarters(to.quarters() - 1);
    for (auto h = weather::hour_of(from); h <= weather::hour_of(until); ++h) {
      const weather::State& state = weather_->at(h);
      if (!state.air) return {};
      const Temperature t = state.air->value;
      out = out ? Air{std::min(out->low, t), std::max(out->high, t)} : Air{t, t};
    }
    return out;
  }

  void set_temperature(const materials::CoatingSystem& sheet,
                       const sequence::Booking& b,
                       PaintingMorning& m) const {
    const auto mean = job_.site.temperatures[dates::month(b.start.date()) - 1];
    if (const auto known = air(b.start, b.end)) {
      m.session.temperature = known->high;
      m.rests_on = PaintTemperature::weather;
    } else if (mean) {
      m.session.temperature = *mean;
      m.rests_on = PaintTemperature::month_mean;
    } else {
      m.session.temperature = sheet.pot_life_at.value;
    }
  }

  // The longest standing time is the safe one for the paint; where it leaves too little pot life
  // the sheet's shortest is tried.
  static void try_shortest_induction(const materials::CoatingSystem& sheet, PaintingMorning& m) {
    if (m.timetable.pot_life_ok || !(sheet.induction_min.value < m.session.induction)) return;
    MixingSession shorter = m.session;
    shorter.induction = sheet.induction_min.value;
    coverage::MixingTimetable timetable = coverage::mixing_timetable(shorter);
    if (!timetable.pot_life_ok) return;
    m.session = shorter;
    m.timetable = std::move(timetable);
    m.shortest_induction = true;
  }

  void set_parts(const materials::CoatingSystem& sheet, PaintingMorning& m) const {
    const dates::Date before = m.opening.date() - std::chrono::days{1};
    constexpr int quarters_in_hour = 4;
    const dates::Moment night(before,
                              static_cast<int>(evening.value.in(units::hours)) * quarters_in_hour);
    if (const auto known = air(night, m.opening)) {
      m.parts = known->low;
    } else if (m.rests_on == PaintTemperature::month_mean) {
      m.parts = m.session.temperature;
    }
    m.parts_cold = m.parts && *m.parts < sheet.parts_min.value;
  }

  const Job& job_;
  const RateBook& rates_;
  double texture_;
  std::optional<weather::Conditions> weather_;
};

void use_mixing(const Plan& plan, trace::Trace& t) {
  const materials::CoatingSystem& sheet = plan.system;
  t.use("coating.mixing", sheet.mixing);
  t.use("coating.induction_max", sheet.induction_max);
  t.use("coating.tray_reserve", sheet.tray_reserve);
  t.use("coating.parts_min", sheet.parts_min);
  if (!sheet.pot_lives.empty()) return;
  t.use("coating.pot_life", sheet.pot_life);
  t.use("coating.pot_life_at", sheet.pot_life_at);
}

}  // namespace

bool MixingPlan::works() const {
  return std::ranges::all_of(mornings,
                             [](const PaintingMorning& m) { return m.timetable.works(); });
}

std::optional<std::int64_t> MixingPlan::painters_needed() const {
  std::optional<std::int64_t> most;
  for (const PaintingMorning& m : mornings) {
    if (!m.painters_needed) return {};
    most = std::max(most.value_or(1), *m.painters_needed);
  }
  return most;
}

MixingPlan mixing_plan(
    const Job& job, const RateBook& rates, const Circumstances& now, Plan& plan, double texture) {
  MixingPlan out;
  out.painters = static_cast<int>(std::lround(job.crew.painters.value));
  out.mixer_apart = job.crew.people.value > job.crew.painters.value;
  out.marks = kit_marks(job, plan);
  if (!plan.programme.feasible) return out;
  Mornings(job, rates, now, texture).fill(plan, out);
  if (!out.mornings.empty()) use_mixing(plan, plan.trace);
  return out;
}

}  // namespace basinwright::job
