#include "basinwright/job/site_rules.hpp"

#include <algorithm>
#include <array>

#include "basinwright/chemistry/waste_water.hpp"
#include "basinwright/sitelog/progress.hpp"

namespace basinwright::job {
namespace {

// Read before the step it stands at; the others before anything after it.
bool is_before(std::string_view hold) {
  constexpr std::array before{
      "groundwater", "leak-test", "leak-found", "lead-test", "touch-dry", "cured"};
  return hold == makers_advice || std::ranges::find(before, hold) != before.end();
}

// Read with the instruments, and judged as readings.
bool is_reading(std::string_view hold) {
  return hold == "conditions" || hold == "water-readings";
}

void add_once(std::vector<std::string>& words, const std::string& word) {
  if (std::ranges::find(words, word) == words.end()) words.push_back(word);
}

// Whoever painted the coat knows what it takes; a sheet that gives leave has said it.
preparation::Step rework_step(bool allowed) {
  preparation::Step step{std::string(sitelog::rework_task), "window-missed", {}, {}, {}};
  if (!allowed) step.holds.push_back({std::string(makers_advice)});
  step.holds.push_back({"no-gloss"});
  step.actions = {"shrouded-tool", "glossy-corners", "dust-bagged", "dust-off"};
  return step;
}

}  // namespace

std::vector<preparation::Step> again_steps(const Plan& plan) {
  return {{std::string(sitelog::clean_again_task),
           "etch-lost",
           {},
           {{"plastic-sheet"}},
           {"sweep-and-rinse", "relief-valve-dry", "plugs-tight"}},
          rework_step(plan.system.planned_rework)};
}

sitelog::Rules site_rules(const Job& job, const RateBook& rates, const Plan& plan) {
  const materials::CoatingSystem& sheet = plan.system;
  sitelog::Rules r;
  r.air_min = sheet.limits.air_min.value;
  r.air_max = sheet.limits.air_max.value;
  r.shell_min = sheet.limits.shell_min.value;
  r.shell_max = sheet.limits.shell_max.value;
  r.dew_margin = sheet.limits.dew_margin.value;
  r.humidity_max = sheet.limits.humidity_max.value;
  r.recoat = {sheet.recoat_min.value, sheet.recoat_max.value};
  r.primer = {sheet.primer.window_min.value, sheet.primer.window_max.value};
  r.coat_within = rates.waits.coat_within.value;
  r.pot_life = sheet.pot_life.value;
  const chemistry::SewerLimits usual;
  r.ph_min = job.site.ph_min.value_or(usual.lowest.value.value());
  r.ph_max = job.site.ph_max.value_or(usual.highest.value.value());
  // Chlorine is taken out until a strip shows none.
  r.chlorine_max = units::Concentration();
  for (const preparation::Step& step : plan.route.steps) {
    sitelog::HoldRule rule{step.task, {}, {}};
    for (const preparation::HoldPoint& hold : step.holds) {
      if (is_reading(hold.code)) continue;
      (is_before(hold.code) ? rule.before : rule.after).push_back(hold.code);
    }
    r.route.push_back(std::move(rule));
  }
  return r;
}

std::vector<std::string> site_tasks(const Plan& plan) {
  std::vector<std::string> tasks;
  for (const preparation::Step& step : plan.route.steps) add_once(tasks, step.task);
  add_once(tasks, std::string(sitelog::rework_task));
  add_once(tasks, std::string(sitelog::clean_again_task));
  return tasks;
}

std::vector<std::string> site_sections(const Plan& plan) {
  const coverage::Cut& cut = plan.quantities.cut;
  if (!cut.names.empty()) return cut.names;
  std::vector<std::string> sections;
  if (cut.sections.size() < 2) return sections;
  for (std::size_t s = 1; s <= cut.sections.size(); ++s) sections.push_back(std::to_string(s));
  return sections;
}

std::vector<std::string> site_holds(const Plan& plan) {
  std::vector<std::string> holds;
  for (const preparation::Step& step : plan.route.steps) {
    for (const preparation::HoldPoint& hold : step.holds) add_once(holds, hold.code);
  }
  add_once(holds, std::string(makers_advice));
  return holds;
}

}  // namespace basinwright::job
