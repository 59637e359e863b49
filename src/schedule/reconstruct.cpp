#include "reconstruct.hpp"

#include <stdexcept>

namespace basinwright::schedule {
namespace {

// Adds one booking after the other, always the first after which the price can still be met.
class Painter {
 public:
  Painter(const Setting& setting, const UnitStarts& starts, const Goals& goals, Endings& suffixes)
      : setting_(setting), starts_(starts), goals_(goals), suffixes_(suffixes) {}

  std::vector<Booking> run(std::vector<Booking> chain, const Tally& rest) {
    bookings_ = std::move(chain);
    rest_ = rest;
    begin();
    while (!finished()) {
      next();
    }
    return bookings_;
  }

 private:
  void begin() {
    const Standing& standing = setting_.standing;
    prefix_.clock = standing.clock;
    prefix_.wet = standing.wet;
    prefix_.anchor = std::max<Slot>(standing.anchor, 0);
    prefix_.last_date = standing.free_date;
    for (const SectionStanding& section : standing.sections) {
      prefix_.done.push_back(section.done);
      prefix_.sections.push_back({section.done, section.start, section.end, no_slot});
    }
    prefix_.dates.assign(setting_.coats(), no_date);
    for (const Booking& task : bookings_) {
      prefix_.clock = task.end;
      prefix_.wet = std::max(prefix_.wet, task.end);
      if (task.index == setting_.problem.anchor.task) {
        prefix_.anchor = task.end;
      }
      if (setting_.problem.chain[task.index].kind != Kind::unattended && task.end > task.start) {
        prefix_.last_date = setting_.date(task.end - 1);
      }
    }
    can_reclean_ = setting_.may_reclean();
  }

  bool finished() const {
    for (const std::size_t done : prefix_.done) {
      if (done < setting_.coats()) {
        return false;
      }
    }
    return true;
  }

  void next() {
    for (Slot slot = prefix_.clock; slot < setting_.length; ++slot) {
      if (try_units(slot) || try_reworks(slot) || try_reclean(slot)) {
        return;
      }
    }
    throw std::logic_error("schedule: no programme at the price found");
  }

  bool try_units(Slot slot) {
    if (!setting_.painting().open(slot)) {
      return false;
    }
    for (std::size_t coat = 0; coat < setting_.coats(); ++coat) {
      for (std::size_t section = 0; section < setting_.sections(); ++section) {
        if (prefix_.done[section] == coat && (section == 0 || prefix_.done[section - 1] > coat) &&
            allows(coat, section, slot) && take_unit(coat, section, slot)) {
          return true;
        }
      }
    }
    return false;
  }

  bool allows(std::size_t coat, std::size_t section, Slot start) const {
    if (!starts_.of(coat, section).has(start)) {
      return false;
    }
    if (coat == 0) {
      const Slot dry = prefix_.wet == no_slot ? 0 : capped(setting_.problem.anchor.dry);
      return prefix_.wet + dry <= start && start <= setting_.deadline(prefix_.anchor);
    }
    const SectionStanding& booked = prefix_.sections[section];
    const SectionStanding& fact = setting_.standing.sections[section];
    Slot rework_end = booked.rework_end;
    if (rework_end == no_slot && fact.done == coat) {
      rework_end = fact.rework_end;
    }
    if (rework_end != no_slot) {
      const Rework& rule = *setting_.problem.units.rework;
      return rework_end + capped(rule.dry) <= start && start <= rework_end + setting_.rework_max();
    }
    const Reach window = after_coat(setting_, coat, section, booked);
    return window.from <= start && start <= window.until;
  }

  bool take_unit(std::size_t coat, std::size_t section, Slot start) {
    const Standing& standing = setting_.standing;
    const Slot end = start + setting_.slots(coat, section);
    const std::int32_t date = setting_.date(start);
    Tally price;
    if (section > 0) {
      const std::int32_t before = standing.done(coat, section - 1)
                                      ? standing.dates[coat][section - 1]
                                      : prefix_.dates[coat];
      price.splits += before != date ? 1 : 0;
    }
    if (section + 1 < setting_.sections() && standing.done(coat, section + 1)) {
      price.splits += standing.dates[coat][section + 1] != date ? 1 : 0;
    }
    Prefix after = prefix_;
    ++after.done[section];
    after.sections[section] = {coat + 1, start, end, no_slot};
    after.dates[coat] = date;
    return take({Booking::What::unit, coat, section, start, end},
                price,
                setting_.painting().unbroken(start, end - start),
                after);
  }

  bool try_reworks(Slot slot) {
    if (!setting_.problem.units.rework || !setting_.reworking().open(slot)) {
      return false;
    }
    const Rework& rule = *setting_.problem.units.rework;
    std::vector<std::pair<std::size_t, std::size_t>> order;  // coat, section
    for (std::size_t section = 0; section < setting_.sections(); ++section) {
      if (prefix_.done[section] > 0 && prefix_.done[section] < setting_.coats()) {
        order.emplace_back(prefix_.done[section] - 1, section);
      }
    }
    std::sort(order.begin(), order.end());
    for (const auto& [coat, section] : order) {
      const SectionStanding& past = prefix_.sections[section];
      const Stretch stretch = setting_.reworking().resumed(slot, rule.slots[section]);
      if (!stretch.possible() || past.rework_end != no_slot ||
          slot < past.end + capped(setting_.problem.units.recoat[coat].min)) {
        continue;
      }
      Prefix after = prefix_;
      after.sections[section].rework_end = stretch.end;
      if (take({Booking::What::rework, coat, section, slot, stretch.end},
               {0, 1, 0},
               stretch,
               after)) {
        return true;
      }
    }
    return false;
  }

  bool try_reclean(Slot slot) {
    if (!can_reclean_) {
      return false;
    }
    const Reclean& rule = *setting_.problem.anchor.reclean;
    const Openings& openings = setting_.calendars[rule.calendar];
    if (!openings.open(slot)) {
      return false;
    }
    const Stretch stretch = openings.resumed(slot, rule.slots);
    if (!stretch.possible()) {
      return false;
    }
    const Tally rest = rest_ - price_of(stretch, {0, 1, 0});
    if (goals_.after_reclean(stretch.end) != rest) {
      return false;
    }
    rest_ = rest;
    prefix_.clock = prefix_.wet = prefix_.anchor = stretch.end;
    prefix_.last_date = setting_.date(stretch.end - 1);
    bookings_.push_back({Booking::What::reclean, 0, 0, slot, stretch.end});
    can_reclean_ = false;
    return true;
  }

  Tally price_of(const Stretch& stretch, const Tally& price) const {
    const int paid = setting_.date(stretch.start) == prefix_.last_date ? 1 : 0;
    return price.costing(stretch.labour + setting_.problem.attendance * (stretch.dates - paid));
  }

  bool take(const Booking& booking, const Tally& price, const Stretch& stretch, Prefix after) {
    const Tally rest = rest_ - price_of(stretch, price);
    after.clock = booking.end;
    after.last_date = setting_.date(booking.end - 1);
    if (!suffixes_.ends_for(after, rest)) {
      return false;
    }
    rest_ = rest;
    prefix_ = std::move(after);
    bookings_.push_back(booking);
    can_reclean_ = can_reclean_ && booking.what != Booking::What::unit;
    return true;
  }

  const Setting& setting_;
  const UnitStarts& starts_;
  const Goals& goals_;
  Endings& suffixes_;
  Prefix prefix_;
  Tally rest_;
  bool can_reclean_ = false;
  std::vector<Booking> bookings_;
};

}  // namespace

std::vector<Booking> first_bookings(const Setting& setting,
                                    const UnitStarts& starts,
                                    const Goals& goals,
                                    const ChainCost& chain,
                                    Endings& suffixes) {
  Tally rest;
  std::vector<Booking> bookings = chain.first(rest);
  return Painter(setting, starts, goals, suffixes).run(std::move(bookings), rest);
}

}  // namespace basinwright::schedule
