#include "mornings.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/units/unit.hpp"
#include "coats.hpp"

namespace basinwright::job {
namespace {

using units::Duration;

constexpr int days_looked_at = 90;

// The shortest painting hours of the season ahead.
dates::Hours shortest_hours(const dates::WorkCalendar& calendar, dates::Date start) {
  dates::Hours shortest = calendar.painting_hours(start);
  for (int d = 1; d <= days_looked_at; ++d) {
    const dates::Hours hours = calendar.painting_hours(start + std::chrono::days{d});
    if (hours.to - hours.from < shortest.to - shortest.from) shortest = hours;
  }
  return shortest;
}

// A next-day coat must start this much earlier than the one before it.
Duration earlier_by(Duration window_max, Duration reserve) {
  return std::max(Duration(), units::days(1) - (window_max - reserve));
}

// The job's own sections where each fits a morning, else a cut by kits.
coverage::Cut cut_into(const Plan& plan,
                       const coverage::Morning& morning,
                       const std::vector<SectionPart>& named) {
  std::vector<units::Area> areas;
  areas.reserve(named.size());
  for (const SectionPart& part : named) areas.push_back(part.painted());
  auto cut = named.empty() ? std::nullopt : coverage::cut_at(areas, morning);
  if (!cut) return coverage::cut(plan.take_off.painted, morning);
  for (const SectionPart& part : named) cut->names.push_back(part.section);
  return *cut;
}

}  // namespace

coverage::Cut cut_over_mornings(const Job& job,
                                const RateBook& rates,
                                const Plan& plan,
                                const MorningQuestion& question) {
  const Duration quarter = units::minutes(15);
  const auto& system = plan.system;
  const Duration reserve = rates.waits.recoat_reserve.value;
  const int coats = coats_of(job, system);
  const bool primed = plan.route.primed > units::Area();
  Duration lost = earlier_by(system.recoat_max.value, reserve) * std::max(0, coats - 1);
  if (primed) lost += earlier_by(system.primer.window_max.value, reserve);
  const dates::Hours hours = shortest_hours(job.calendar, question.start);
  const Duration open = quarter * (hours.to - hours.from);
  // Where so many coats leave no hour of the morning they cannot all follow in their windows: the
  // programme says so.
  const Duration window = open > lost ? open - lost : open;
  const Duration before = quarter * std::max(0, hours.from - job.calendar.hours.from);

  coverage::Morning morning;
  morning.cover = system.expected_cover().value;
  morning.rate = rates.productivity.coat.value;
  if (primed) morning.rate = std::min(morning.rate, rates.productivity.prime.value);
  morning.rate /= question.texture;
  morning.painters = static_cast<int>(std::lround(job.crew.painters.value));
  morning.painting = window;
  coverage::Cut cut = cut_into(plan, morning, question.named);
  // A smaller section is vacuumed sooner: cut again until the vacuuming fits before the window.
  constexpr int most_tries = 4;
  for (int i = 0; i < most_tries && !cut.sections.empty(); ++i) {
    const bool spare_hands = job.crew.people.value > job.crew.painters.value;
    const units::Area first =
        spare_hands ? *std::ranges::max_element(cut.sections) : plan.take_off.painted;
    const Duration vacuum =
        first * question.texture / rates.productivity.vacuum.value / job.crew.people.value;
    const Duration late =
        std::max(Duration(), quarter * std::ceil((vacuum - before) / quarter - 1e-6));
    if (morning.painting == window - late) break;
    morning.painting = window - late;
    cut = cut_into(plan, morning, question.named);
  }
  return cut;
}

}  // namespace basinwright::job
