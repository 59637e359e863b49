#include "rework.hpp"

#include <algorithm>

namespace basinwright::job {

sequence::ReworkRules rework_rules(const RateBook& rates, const Plan& plan) {
  sequence::ReworkRules rules;
  const sequence::Productivity& p = rates.productivity;
  for (const units::Area& area : plan.quantities.cut.sections) {
    rules.person_hours.push_back(area / p.abrade.value + area / p.dust_removal.value);
  }
  rules.clean_again = plan.take_off.painted / p.pressure_clean.value;
  for (const sequence::Work& work : plan.work) rules.people = std::max(rules.people, work.people);
  return rules;
}

}  // namespace basinwright::job
