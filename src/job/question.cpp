#include "question.hpp"

#include <string>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"
#include "rework.hpp"
#include "site_weather.hpp"

namespace basinwright::job {

sequence::ProgrammeQuestion question_of(const Job& job,
                                        const RateBook& rates,
                                        const Circumstances& now,
                                        const Plan& plan) {
  sequence::ProgrammeQuestion q{.start = plan.first_day,
                                .calendar = job.calendar,
                                .work = plan.work,
                                .sections = {},
                                .system = plan.system,
                                .waits = rates.waits};
  // What a programme of this plan added is not asked for again.
  std::erase_if(q.work, [](const sequence::Work& w) { return w.task == sitelog::rework_task; });
  q.sections = plan.quantities.cut.names;
  if (q.sections.empty()) {
    const std::size_t sections = plan.quantities.cut.sections.size();
    for (std::size_t s = 1; s <= sections; ++s) q.sections.push_back(std::to_string(s));
  }
  q.temperatures = job.site.temperatures;
  const bool mortar = plan.route.mortar > units::Volume();
  if (mortar) {
    q.repair_cement_wait = rates.thresholds.cement_age.value;
  } else {
    q.cement_wait = plan.route.cement_wait.value_or(units::Duration());
  }
  q.clean_up = rates.productivity.daily_set_up.value;
  q.water = plan.take_off.total.water_volume;
  q.tap = plan.tap;
  q.water_visits = plan.water.visits;
  q.drain_pump = rates.productivity.drain_pump.value;
  for (std::size_t d = 0; d < q.weight_of_quarter.size(); ++d) {
    // Only the order of costs matters to the programme: hundredths of a percent of the wage.
    q.weight_of_quarter[d] = rates.labour.hour.minor() * (rates.labour.weekday[d].millionths / 100);
  }
  q.weight_of_attendance = rates.overheads.travel_a_day.minor() * 40'000;
  q.weather = site_weather(job, rates, now);
  q.past = now.past;
  if (q.past || plan.system.planned_rework) q.rework = rework_rules(rates, plan);
  return q;
}

}  // namespace basinwright::job
