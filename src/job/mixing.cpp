#include "basinwright/job/mixing.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/units/unit.hpp"

namespace basinwright::job {
namespace {

// Where a section stands in the cut; the first where it is not cut.
std::size_t index_of(const coverage::Cut& cut, const std::string& section) {
  for (std::size_t i = 0; i < cut.sections.size(); ++i) {
    const std::string name = cut.names.empty() ? std::to_string(i + 1) : cut.names[i];
    if (name == section) return i;
  }
  return 0;
}

coverage::MixingSession session_of(const Job& job, const RateBook& rates, const Plan& plan) {
  coverage::MixingSession session;
  const materials::CoatingSystem& system = plan.system;
  session.cover = system.expected_cover().value;
  session.painters = std::max(1, static_cast<int>(std::lround(job.crew.painters.value)));
  session.mixer = job.crew.people.value > job.crew.painters.value ? coverage::Mixer::apart
                                                                  : coverage::Mixer::painter;
  session.rate = rates.productivity.coat.value;
  session.induction = system.induction_max.value;
  session.pot_life = {.life = system.pot_life, .at = system.pot_life_at};
  return session;
}

}  // namespace

int MixingMorning::minute_of_day(units::Duration since_opening) const {
  constexpr int quarter = 15;
  const double minutes = since_opening.in(units::minutes);
  return opens.quarter() * quarter + static_cast<int>(std::lround(minutes));
}

std::vector<MixingMorning> mixing_mornings(const Job& job,
                                           const RateBook& rates,
                                           const Plan& plan) {
  std::vector<MixingMorning> mornings;
  const coverage::Cut& cut = plan.quantities.cut;
  if (cut.sections.empty()) return mornings;
  coverage::MixingSession session = session_of(job, rates, plan);
  for (const sequence::Booking& b : plan.programme.bookings) {
    if (!b.task.starts_with("coat-")) continue;
    MixingMorning morning{.task = b.task, .section = b.section, .opens = b.start};
    const auto& hardener = plan.programme.hardener;
    morning.paint_assumed = !hardener.has_value();
    morning.paint = hardener ? hardener->high : plan.system.pot_life_at.value;
    session.temperature = morning.paint;
    session.area = cut.sections[index_of(cut, b.section)];
    // What the programme booked holds the surface's roughness already.
    const units::Duration booked =
        units::minutes(15) * static_cast<double>(b.end.quarters() - b.start.quarters());
    session.window = booked;
    morning.timetable = coverage::mixing_timetable(session);
    mornings.push_back(std::move(morning));
  }
  return mornings;
}

}  // namespace basinwright::job
