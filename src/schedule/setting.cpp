#include "setting.hpp"

namespace basinwright::schedule {

namespace {

std::shared_ptr<const std::vector<Openings>> opened(const Problem& problem, Slot length) {
  auto result = std::make_shared<std::vector<Openings>>();
  result->reserve(problem.calendars.size());
  for (const Calendar& calendar : problem.calendars) {
    result->emplace_back(calendar, problem, length);
  }
  return result;
}

}  // namespace

Setting::Setting(const Problem& given,
                 const Standing& left,
                 Slot slots,
                 const std::vector<Slot>& finish)
    : opened_(opened(given, slots)),
      problem(given),
      standing(left),
      length(slots),
      kept(0),
      best_finish(finish),
      calendars(*opened_) {}

Setting::Setting(const Setting& other,
                 const Problem& given,
                 const Standing& left,
                 const std::vector<Slot>& finish)
    : opened_(other.opened_),
      problem(given),
      standing(left),
      length(other.length),
      kept(other.kept),
      best_finish(finish),
      calendars(*opened_) {}

Setting::Setting(const Setting& other, Slot slack)
    : opened_(other.opened_),
      problem(other.problem),
      standing(other.standing),
      length(other.length),
      kept(slack),
      best_finish(other.best_finish),
      calendars(*opened_) {}

Slot Setting::deadline(Slot anchor) const {
  return has_limit() ? std::min(anchor + limit(), length) : length;
}

Reach after_coat(const Setting& setting,
                 std::size_t coat,
                 std::size_t section,
                 SectionStanding before) {
  const Recoat& window = setting.problem.units.recoat[coat - 1];
  const Slot slots = setting.slots(coat, section);
  const Slot min = capped(window.min);
  const Slot max = setting.recoat_max(coat - 1);
  return {std::max(before.start + min, before.end + min - slots),
          std::min(before.start + max, before.end + max - slots)};
}

Reach before_coat(const Setting& setting, std::size_t coat, std::size_t section, Slot start) {
  const Recoat& window = setting.problem.units.recoat[coat - 1];
  const Slot longer = setting.slots(coat, section) - setting.slots(coat - 1, section);
  return {start + std::max<Slot>(0, longer) - setting.recoat_max(coat - 1),
          start + std::min<Slot>(0, longer) - capped(window.min)};
}

}  // namespace basinwright::schedule
