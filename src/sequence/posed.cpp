#include "basinwright/sequence/posed.hpp"

#include <algorithm>
#include <optional>

#include "instance.hpp"
#include "lost.hpp"

namespace basinwright::sequence {

namespace {

Offers offers_for(const ProgrammeQuestion& question, const Lost& lost) {
  Offers offers;
  offers.no_reserve = lost.reserve;
  offers.clean_again = lost.etch;
  if (lost.sections.empty()) return offers;
  for (const std::string& section : question.sections) {
    const bool is_lost = std::ranges::find(lost.sections, section) != lost.sections.end();
    offers.rework.push_back(is_lost ? 1 : 0);
  }
  return offers;
}

}  // namespace

Lost at_stake(const ProgrammeQuestion& question) {
  return all_at_stake(question).lost;
}

struct Posed::Parts {
  Parts(const ProgrammeQuestion& question,
        const weather::Record& record,
        int days,
        const Lost& lost)
      : q(question) {
    if (!record.empty()) conditions.emplace(record, question.weather.rules.shell_lag);
    instance.emplace(
        question,
        Setting{days, conditions ? &*conditions : nullptr, {}, offers_for(question, lost)});
  }

  const ProgrammeQuestion& q;
  std::optional<weather::Conditions> conditions;
  std::optional<Instance> instance;
};

Posed::Posed(const ProgrammeQuestion& question,
             const weather::Record& record,
             int days,
             const Lost& lost)
    : parts_(std::make_unique<Parts>(question, record, days, lost)) {}
Posed::~Posed() = default;
Posed::Posed(Posed&&) noexcept = default;
Posed& Posed::operator=(Posed&&) noexcept = default;

const schedule::Problem& Posed::problem() const {
  return parts_->instance->problem();
}

dates::Moment Posed::moment(schedule::Slot slot) const {
  return parts_->instance->timeline().moment(slot);
}

dates::Moment Posed::full(schedule::Slot fill) const {
  const ProgrammeQuestion& q = parts_->q;
  return dates::Moment::of_quarters(moment(fill).quarters() +
                                    std::max(1, quarters_up(q.water / q.tap)));
}

std::pair<std::string, std::string> Posed::named(const schedule::Booking& booking) const {
  return parts_->instance->named(booking);
}

AfterCoats Posed::after_coats() const {
  const Instance& instance = *parts_->instance;
  AfterCoats after;
  const auto slots = [&](std::string_view task) {
    const Work* work = instance.find(task);
    if (work == nullptr || instance.done(task) != nullptr) return 0;
    return std::max(1, quarters_up(work->person_hours / std::max(1, work->people)));
  };
  after.unmask = slots("unmask");
  after.refit = slots("refit");
  after.filled = instance.done("fill") != nullptr;
  after.cured.push_back(std::nullopt);
  for (schedule::Slot end = 1; end <= problem().horizon; ++end) {
    const std::int32_t cured = instance.cure().done(end);
    after.cured.push_back(cured < 0 ? std::nullopt : std::optional(cured));
  }
  return after;
}

schedule::Slot Posed::vacuumed_before() const {
  return parts_->instance->ready();
}

schedule::Slot Posed::looks_ahead() const {
  const ProgrammeQuestion& q = parts_->q;
  const materials::Limits& limits = q.system.limits;
  return quarters_up(
      std::max({limits.rain_free_after.value, limits.air_after.value, q.waits.dryness_test.value}));
}

std::array<std::int64_t, Posed::rules + 1> Posed::painting_slots(schedule::Slot until) const {
  std::array<std::int64_t, rules + 1> out{};
  const Instance& instance = *parts_->instance;
  const schedule::Calendar& painting = instance.painting_calendar();
  for (schedule::Slot s = 0; s < std::min(until, instance.timeline().size()); ++s) {
    if (painting[static_cast<std::size_t>(s)] == 0) continue;
    std::size_t rule = rules;
    if (instance.outdoors().known()) {
      const weather::Verdict verdict = instance.outdoors().coat().verdict(s);
      if (verdict.closed_by) rule = static_cast<std::size_t>(*verdict.closed_by);
    }
    ++out[rule];
  }
  return out;
}

}  // namespace basinwright::sequence
