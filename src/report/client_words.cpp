#include "client_words.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <utility>

#include "basinwright/job/water_care.hpp"
#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::report {
namespace {

struct Promise {
  std::string_view task, words;
};

// In the order of the work; a task that the route lacks is left out.
constexpr std::array<Promise, 16> promises{{
    {"set-out", "Setting up: pool circuits off and locked, fence, fittings out and kept safe"},
    {"drain", "Emptying the pool where the water authority allows"},
    {"coating-test", "Testing what the old coat is, in several places"},
    {"chlorine-wash", "Washing off algae, rinsed until no chlorine is left"},
    {"degrease", "Washing off grease and sunscreen"},
    {"loose-paint", "Taking off loose paint"},
    {"repair", "Filling the cracks and hollows found when we measured"},
    {"strip", "Taking the old coat off whole where the table above says so"},
    {"abrade", "Grinding the old coat dull, with dust extraction, and taking the dust away"},
    {"etch-walls", "Etching with dilute acid, neutralised and rinsed; the wash water dealt with"},
    {"dry", "Drying, with a dryness test before any paint"},
    {"prime", "A primer on bare surfaces"},
    {"cure", "Hardening time before the pool is filled, as the data sheet asks"},
    {"refit", "Fittings back, relief valve closed"},
    {"fill", "Watching over the refill"},
    {"start-up", "Bringing the water into balance"},
}};

constexpr std::array<std::string_view, 6> exclusions{
    "Structural repairs, leaks, and damage from groundwater",
    "Pipes, pumps, heaters, lights and other equipment, beyond taking fittings out and back",
    "Tiles, grout, coping and joint sealant",
    "Permits and fees, unless they are listed",
    "Old paint that turns out to hold lead, and any other hazardous material",
    "Work on a surface that could not be seen while the pool was full"};

constexpr std::array<std::pair<std::string_view, std::string_view>, 4> question_words{{
    {"coating-untested",
     "Nobody has tested yet whether the old coat is epoxy. New epoxy holds on nothing else. The "
     "test "
     "is the first thing we do; both ways it can turn out are priced below."},
    {"lead-untested",
     "The old paint has not been tested for lead. We test before any dust is raised; lead would be "
     "licensed work and a price of its own."},
    {"no-data-sheet",
     "No coating system has been chosen yet. Kit, hours and hardening time are the usual ones; the "
     "price is confirmed once the system is."},
    {"no-dates", "No dates have been found yet, so the price is not final."},
}};

}  // namespace

std::string_view substrate_words(preparation::Substrate substrate) {
  using preparation::Substrate;
  switch (substrate) {
    case Substrate::render:
      return "cement render";
    case Substrate::concrete:
      return "concrete";
    case Substrate::plaster_hard:
      return "hard plaster";
    case Substrate::plaster_soft:
      return "soft plaster";
    case Substrate::pebble:
      return "exposed aggregate";
    case Substrate::fibreglass:
      return "fibreglass";
  }
  return "";
}

std::string_view treatment_words(preparation::Treatment treatment) {
  using preparation::Treatment;
  switch (treatment) {
    case Treatment::bare:
      return "bare: cleaned and etched";
    case Treatment::abraded:
      return "old coat ground dull, cleaned and etched";
    case Treatment::stripped:
      return "old coat taken off, cleaned and etched";
  }
  return "";
}

std::string surface_words(std::string_view where) {
  std::string words(where);
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::vector<std::string> included(const job::Plan& plan, bool with_water) {
  std::vector<std::string> out;
  for (const Promise& promise : promises) {
    if (promise.task == "cure") {
      out.push_back(
          fmt::format("{} coats over the whole painted surface", plan.quantities.coats.size()));
    }
    if (plan.route.has(promise.task)) out.emplace_back(promise.words);
  }
  if (with_water) out.emplace_back("The water for the refill");
  out.emplace_back("Whole kits of paint: any left unopened stay with you for touching up");
  out.emplace_back("Waste taken away: dust, rags, empty cans");
  return out;
}

std::vector<std::string> never_included(bool with_water) {
  std::vector<std::string> out(exclusions.begin(), exclusions.end());
  if (!with_water) out.emplace_back("The water for the refill, and electricity");
  return out;
}

std::string ph_range(const job::Job& job) {
  const double aim = job::ph_aim(job.refill);
  return fmt::format("{} to {}",
                     units::fixed(aim - job::ph_margin.value, 1),
                     units::fixed(aim + job::ph_margin.value, 1));
}

std::vector<std::string> care(const Subject& s) {
  std::vector<std::string> out;
  if (const auto life = materials::expected_life(s.plan.quantities.coats.size())) {
    out.push_back(fmt::format(
        "With good care of the water a coat like this may last {} to {} years. That is what the "
        "trade sees, not a promise.",
        life->from,
        life->to));
  }
  out.emplace_back(
      "Epoxy chalks in sunlight and in water: a fine pale powder comes off, and the colour fades. "
      "That is the nature of the paint, not a fault in the work.");
  out.emplace_back(
      "Nothing but salt or chlorine goes into the water in the first days; after that one chemical "
      "at a time, dissolved first, away from the walls.");
  out.push_back(fmt::format("Keep pH at {}, and no chlorine tablets on the floor or the steps.",
                            ph_range(s.job)));
  out.emplace_back("First swim when the readings are right, not before the day given above.");
  return out;
}

std::string_view open_question(std::string_view code) {
  const auto* const it =
      std::ranges::find_if(question_words, [&](const auto& row) { return row.first == code; });
  return it == question_words.end() ? std::string_view() : it->second;
}

std::vector<std::string> assumptions(const job::Plan& plan) {
  std::vector<std::string> out;
  out.emplace_back("The measurements taken when we looked at the pool.");
  out.emplace_back(
      "The shell is sound under the paint, and what was hidden by water turns out as expected.");
  out.emplace_back("You provide power and a tap at the pool, and a way in for the crew.");
  if (plan.programme.feasible) {
    out.emplace_back(
        "Paint waits for the weather: rain, cold, heat or dew move the dates, and we tell you at "
        "once.");
  }
  out.emplace_back(
      "Anything else found on the way is priced in writing as a variation and done only once you "
      "have agreed to it.");
  return out;
}

}  // namespace basinwright::report
