#include "rework.hpp"

#include <algorithm>

#include "basinwright/job/site_rules.hpp"
#include "basinwright/sitelog/progress.hpp"
#include "dust.hpp"

namespace basinwright::job {
namespace {

units::Duration hours_to_rework(const sequence::Productivity& p, units::Area area) {
  return area / p.abrade.value + area / p.dust_removal.value;
}

constexpr std::string_view painted_part = "painted part";
constexpr std::string_view rest = "rest";

// A shell that is not cut has one section without a name.
std::size_t section_of(const std::vector<std::string>& names, const std::string& part) {
  const std::string section = whole_section(part);
  const auto it = std::ranges::find(names, section);
  if (it != names.end()) return static_cast<std::size_t>(it - names.begin());
  return section.empty() ? 0 : std::stoul(section) - 1;
}

units::Area area_of(const coverage::Cut& cut, const std::string& section) {
  return cut.sections.at(section_of(cut.names, section));
}

// How much of its section a part is, by the first coat that was left in the middle.
double share_reworked(const std::string& part, const std::optional<sequence::Past>& past) {
  const std::string whole = whole_section(part);
  if (!past || part == whole) return 1.0;
  for (const sequence::Done& d : past->done) {
    if (!sitelog::is_coat(d.task) || d.section != whole || d.running || d.share >= 1.0) continue;
    return part.ends_with(painted_part) ? d.share : 1.0 - d.share;
  }
  return 1.0;
}

// Done here, its coat comes after it on the route.
std::string coat_after(const sequence::Programme& programme, const sequence::Booking& again) {
  for (const sequence::Booking& b : programme.bookings) {
    const bool here = again.section.empty() || b.section == again.section;
    if (here && sitelog::is_coat(b.task) && b.start >= again.end) return b.task;
  }
  return "unmask";
}

void add_step(preparation::Step step, const sequence::Booking& first, Plan& plan) {
  std::vector<preparation::Step>& steps = plan.route.steps;
  const auto before =
      std::ranges::find(steps, coat_after(plan.programme, first), &preparation::Step::task);
  steps.insert(before, std::move(step));
}

}  // namespace

std::string whole_section(std::string section) {
  for (const std::string_view part : {painted_part, rest}) {
    if (section == part) return "";
    const std::string end = ", " + std::string(part);
    if (section.ends_with(end)) section.resize(section.size() - end.size());
  }
  return section;
}

sequence::ReworkRules rework_rules(const RateBook& rates, const Plan& plan) {
  sequence::ReworkRules rules;
  const sequence::Productivity& p = rates.productivity;
  for (const units::Area& area : plan.quantities.cut.sections)
    rules.person_hours.push_back(hours_to_rework(p, area));
  rules.on_purpose = plan.system.planned_rework;
  rules.clean_again = plan.take_off.painted / p.pressure_clean.value;
  for (const sequence::Work& work : plan.work) rules.people = std::max(rules.people, work.people);
  return rules;
}

void add_reworks(const RateBook& rates, const std::optional<sequence::Past>& past, Plan& plan) {
  const auto again = [](const sequence::Booking& b) {
    return b.task == sitelog::rework_task || b.task == sitelog::clean_again_task;
  };
  if (std::ranges::none_of(plan.programme.bookings, again)) return;
  const sequence::Productivity& p = rates.productivity;
  const sequence::Booking* first = nullptr;
  const sequence::Booking* cleaned = nullptr;
  units::Area all;
  for (const sequence::Booking& b : plan.programme.bookings) {
    if (b.task == sitelog::clean_again_task && cleaned == nullptr) cleaned = &b;
    if (b.task != sitelog::rework_task) continue;
    const units::Area area =
        area_of(plan.quantities.cut, b.section) * share_reworked(b.section, past);
    if (first == nullptr) first = &b;
    all += area;
    if (b.done) continue;
    plan.reworked += area;
    plan.work.push_back({b.task, b.section, hours_to_rework(p, area), b.people, 1});
  }
  for (preparation::Step& step : again_steps(plan)) {
    const bool abraded = step.task == sitelog::rework_task;
    const sequence::Booking* booked = abraded ? first : cleaned;
    step.area = abraded ? all : plan.take_off.painted;
    if (booked != nullptr) add_step(std::move(step), *booked, plan);
  }
  if (plan.reworked <= units::Area()) return;
  trace::Trace& t = plan.trace;
  t.use("productivity.abrade", p.abrade);
  t.use("productivity.dust_removal", p.dust_removal);
  const trace::Operand area{"area", plan.reworked, trace::From{"programme"}};
  t.note("labour.rework",
         hours_to_rework(p, plan.reworked),
         "area / abrading + area / cleaning",
         {area, {"abrading", p.abrade}, {"cleaning", p.dust_removal}});
  plan.quantities.dust = dust_of(
      {plan.route.stripped, plan.route.abraded + plan.reworked}, rates.thresholds, plan.trace);
}

}  // namespace basinwright::job
