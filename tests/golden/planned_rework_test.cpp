// A recoat window that no two mornings meet, on a sheet that allows it to be missed: the section is
// abraded and cleaned again, and that is paid for. By hand from the rates (3.5 and 60 m2 an hour).
#include <algorithm>
#include <nlohmann/json.hpp>

#include "basinwright/render/json.hpp"
#include "basinwright/render/markdown.hpp"
#include "basinwright/report/pages.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

using namespace basinwright;

namespace {

job::Plan reworked_pool(bool allowed) {
  job::Job job = test::job_of(test::file_text("examples/plain-pool.json"));
  job.coating.system = "Demo Two-Pack";
  job::RateBook rates = test::demonstration();
  materials::CoatingSystem& sheet = rates.systems.at("Demo Two-Pack");
  // Coats follow from eight to eleven in the morning: 21 h apart or more.
  sheet.recoat_min.value = units::hours(15);
  sheet.recoat_max.value = units::hours(17);
  sheet.planned_rework = allowed;
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  return job::make_plan(job, rates, now);
}

const sequence::Booking& booked(const job::Plan& plan, const std::string& task) {
  const auto& all = plan.programme.bookings;
  const auto it = std::ranges::find(all, task, &sequence::Booking::task);
  if (it == all.end()) throw std::runtime_error("no " + task);
  return *it;
}

std::int64_t hired(const job::Plan& plan, const std::string& item) {
  const auto it = std::ranges::find(plan.hire, item, &quote::Hired::item);
  return it == plan.hire.end() ? 0 : it->days;
}

std::int64_t days_of(const job::Plan& plan, const std::string& task) {
  return static_cast<std::int64_t>(booked(plan, task).worked.size());
}

}  // namespace

TEST_CASE("a window missed on purpose is dated, paid, equipped and swept up") {
  CHECK_FALSE(reworked_pool(false).programme.feasible);
  const job::Plan plan = reworked_pool(true);
  REQUIRE(plan.programme.feasible);
  const double area = plan.take_off.painted.in(units::square_metres);
  const sequence::Booking& again = booked(plan, "rework");
  CHECK(again.start >= booked(plan, "coat-1").end);
  CHECK(booked(plan, "coat-2").start.quarters() >= again.end.quarters() + 8);

  const auto line = std::ranges::find(plan.labour, "rework", &quote::LabourLine::task);
  REQUIRE(line != plan.labour.end());
  CHECK(line->person_hours.in(units::hours) == Approx(area / 3.5 + area / 60));
  // The shell was abraded once before the first coat.
  const auto discs = std::ranges::find(plan.consumables,
                                       "abrasive disc, 20 to 40 grit",
                                       [](const quote::Counted& c) { return c.rule.item; });
  REQUIRE(discs != plan.consumables.end());
  CHECK(discs->count == static_cast<std::int64_t>(std::ceil(0.31 * 2 * area)));
  CHECK(hired(plan, "shrouded grinder and class H vacuum") ==
        days_of(plan, "abrade") + days_of(plan, "rework"));
  // 0.05 mm twice, at the density of the rate book.
  const double density =
      test::demonstration().thresholds.film_density.value.in(units::kilograms_per_cubic_metre);
  CHECK(plan.quantities.dust.in(units::kilograms) == Approx(2 * area * 0.05e-3 * density));
}

TEST_CASE("the job sheet says that a window is missed on purpose") {
  const job::Job job = test::job_of(test::file_text("examples/plain-pool.json"));
  const job::RateBook rates = test::demonstration();
  const job::Plan plan = reworked_pool(true);
  const auto page = nlohmann::json::parse(
      render::json(report::jobsheet({job, rates, plan, units::System::metric})));
  CHECK(page.at("programme").at("reworks") == 1);
  const auto usual = test::plan_of(test::file_text("examples/plain-pool.json"), rates);
  const auto other = nlohmann::json::parse(
      render::json(report::jobsheet({job, rates, usual, units::System::metric})));
  CHECK(other.at("programme").at("reworks") == 0);
}

TEST_CASE("a window missed on purpose is a step on the sheet of the crew and on the route") {
  const job::Job job = test::job_of(test::file_text("examples/plain-pool.json"));
  const job::RateBook rates = test::demonstration();
  const job::Plan plan = reworked_pool(true);
  const report::Subject subject{job, rates, plan, units::System::metric};
  const auto sheet = nlohmann::json::parse(render::json(report::checklist(subject)));
  const auto& steps = sheet.at("checklist").at("steps");
  const auto named = [](const auto& step) { return step.at("task") == "rework"; };
  const auto step = std::find_if(steps.begin(), steps.end(), named);
  REQUIRE(step != steps.end());
  // Common practice: dulled until no gloss is left, dust away, the dust's hazards said at the step.
  CHECK(step->at("holds").size() == 1);
  CHECK(step->at("holds").at(0).at("code") == "no-gloss");
  CHECK(step->at("actions").size() >= 3);
  for (const char* code : {"silica", "electricity", "noise-heat-and-slips"}) {
    CAPTURE(code);
    const auto& said = step->at("cautions");
    CHECK(std::find(said.begin(), said.end(), code) != said.end());
  }
  const std::string text = render::markdown(report::checklist(subject));
  CHECK(text.find("When the next coat may go on") != std::string::npos);
  CHECK(text.find("Mask with dust filters") != std::string::npos);
  CHECK(text.find("shrouded grinder") != std::string::npos);

  std::vector<std::string> route;
  for (const preparation::Step& one : plan.route.steps) route.push_back(one.task);
  const auto at = std::ranges::find(route, "rework");
  REQUIRE(at != route.end());
  CHECK(*(at - 1) == "coat-1");
  CHECK(*(at + 1) == "coat-2");
  CHECK_FALSE(reworked_pool(false).route.has("rework"));
}
