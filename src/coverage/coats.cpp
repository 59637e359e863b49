#include "basinwright/coverage/coats.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <string_view>

namespace basinwright::coverage {
namespace {

using sources::Sourced;
using units::Area;

// A take-off is good to about 1e-12: an area a hair over a whole kit must not buy another.
constexpr double whole_kit_slack = 1e-9;

std::int64_t whole_count(double count) {
  constexpr double most = 1e15;  // More than anybody buys, and still exact.
  return static_cast<std::int64_t>(std::min(std::ceil(count - whole_kit_slack), most));
}

// Mixed paint cannot be kept: what is painted apart takes whole kits of its own.
std::int64_t kits_of(const CoatPlan& plan, const Sourced<Area>& cover, trace::Trace& trace) {
  constexpr std::string_view key = "quantities.coats.kits";
  if (plan.sections.empty()) {
    const std::int64_t kits = whole_kits(plan.area, cover.value);
    trace.note(key,
               static_cast<double>(kits),
               "ceil(area / cover)",
               {{"area", plan.area, trace::From{"takeoff.painted_area_m2"}}, {"cover", cover}},
               "whole kits, coat by coat: mixed paint cannot be kept");
    return kits;
  }
  std::int64_t kits = 0;
  std::string formula;
  std::vector<std::string> names;
  std::vector<std::string> from;
  for (std::size_t i = 0; i < plan.sections.size(); ++i) {
    kits += whole_kits(plan.sections[i], cover.value);
    names.push_back("section_" + std::to_string(i + 1));
    from.push_back("takeoff.parts." + std::to_string(i) + ".painted_area_m2");
    formula += (i == 0 ? "ceil(" : " + ceil(") + names.back() + " / cover)";
  }
  std::vector<trace::Operand> operands{{"cover", cover}};
  for (std::size_t i = 0; i < plan.sections.size(); ++i) {
    operands.emplace_back(names[i], plan.sections[i], trace::From{from[i]});
  }
  trace.note_all(key, static_cast<double>(kits), formula, operands);
  return kits;
}

}  // namespace

std::int64_t whole_kits(Area area, Area cover) {
  if (!(cover > Area()) || area < Area()) {
    throw std::invalid_argument("whole_kits: the cover must be positive, the area not negative");
  }
  return whole_count(area / cover);
}

std::vector<Coat> coats(const CoatPlan& plan,
                        const materials::CoatingSystem& system,
                        trace::Trace& trace) {
  const auto cover = system.expected_cover();
  const std::int64_t kits = kits_of(plan, cover, trace);
  const units::Volume paint = system.kit.value * (plan.area / cover.value);
  std::vector<Coat> result;
  for (int number = 1; number <= plan.coats; ++number) {
    Coat coat{number, plan.area, kits, paint, units::Volume()};
    if (number == 1 && plan.thin_first) {
      coat.thinner = system.thinner_per_kit.value * static_cast<double>(kits);
    }
    result.push_back(coat);
  }
  trace.note("quantities.coats.litres",
             paint,
             "kit * area / cover",
             {{"kit", system.kit},
              {"area", plan.area, trace::From{"takeoff.painted_area_m2"}},
              {"cover", cover}});
  trace.note("quantities.kits",
             static_cast<double>(kits * plan.coats),
             "kits * coats",
             {{"kits", static_cast<double>(kits), trace::From{"quantities.coats.kits"}},
              {"coats", static_cast<double>(plan.coats), plan.coats_from}});
  if (plan.thin_first && !result.empty()) {
    trace.note("quantities.coats.thinner_l",
               result.front().thinner,
               "thinner * kits",
               {{"thinner", system.thinner_per_kit},
                {"kits", static_cast<double>(kits), trace::From{"quantities.coats.kits"}}},
               "first coat only");
  }
  return result;
}

std::optional<Cut> cut_at(const std::vector<Area>& sections, const Morning& morning) {
  if (morning.painting <= units::Duration()) return {};
  Cut result;
  const auto done_by = [&](double painters) { return morning.rate * morning.painting * painters; };
  Area all;
  for (const Area section : sections) {
    if (whole_count(section / done_by(morning.painters)) > 1) return {};
    all += section;
    result.sections.push_back(section);
    result.kits.push_back(whole_kits(section, morning.cover));
  }
  result.painters_for_one = std::max<std::int64_t>(1, whole_count(all / done_by(1.0)));
  return result;
}

Cut cut(Area area, const Morning& morning) {
  Cut result;
  if (morning.painting <= units::Duration()) return result;
  const auto done_by = [&](double painters) { return morning.rate * morning.painting * painters; };
  result.painters_for_one = std::max<std::int64_t>(1, whole_count(area / done_by(1.0)));
  const Area morning_area = done_by(morning.painters);
  if (whole_count(area / morning_area) <= 1) {
    result.sections = {area};
    result.kits = {whole_kits(area, morning.cover)};
    return result;
  }
  const auto kits = whole_kits(area, morning.cover);
  const auto kits_a_morning =
      static_cast<std::int64_t>(std::floor(morning_area / morning.cover + whole_kit_slack));
  if (kits_a_morning < 1) return result;
  const std::int64_t mornings = (kits + kits_a_morning - 1) / kits_a_morning;
  Area left = area;
  for (std::int64_t i = 0; i < mornings; ++i) {
    const std::int64_t share = kits / mornings + (i < kits % mornings ? 1 : 0);
    const Area section = std::min(left, morning.cover * static_cast<double>(share));
    result.sections.push_back(section);
    result.kits.push_back(share);
    left -= section;
  }
  return result;
}

}  // namespace basinwright::coverage
