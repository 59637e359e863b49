#include "chain_cost.hpp"

#include <functional>
#include <stdexcept>

#include "window_best.hpp"

namespace basinwright::schedule {

ChainCost::ChainCost(const Setting& setting, const ChainReach& reach, const Goals& goals)
    : setting_(setting), reach_(reach), goals_(goals) {
  const Standing& standing = setting.standing;
  const std::size_t links = standing.links.size();
  const bool anchored = standing.anchor_link == no_link;
  const std::size_t anchor = anchored ? 0 : standing.anchor_link;
  by_class_.resize(goals.classes());
  layers_.resize(links);
  if (links == 0) {
    return;
  }
  for (std::size_t one = 0; one < goals.classes(); ++one) {
    by_class_[one].resize(links);
    if (anchored && one != goals.class_of(standing.anchor)) {
      continue;
    }
    for (std::size_t link = links; link-- > anchor;) {
      by_class_[one][link] =
          link + 1 == links ? last_layer(link, one) : layer_before(link, by_class_[one][link + 1]);
    }
  }
  if (!anchored) {
    layers_[anchor] = merged(anchor);
    for (std::size_t link = anchor; link-- > 0;) {
      layers_[link] = layer_before(link, layers_[link + 1]);
    }
  }
}

ChainCost::Layer ChainCost::empty_layer(std::size_t link) const {
  const Slot from = reach_.earliest[link];
  return {from, std::vector<Onward>(at(setting_.length - from))};
}

Onward ChainCost::with_work(const Stretch& stretch, Onward next) const {
  if (stretch.dates == 0) {
    return next;
  }
  Tally total = next.best(setting_.problem.attendance);
  if (total < no_tally) {
    total.cost += stretch.labour + setting_.problem.attendance * stretch.dates;
  }
  return {total, total};
}

ChainCost::Layer ChainCost::last_layer(std::size_t link, std::size_t anchor_class) const {
  Layer layer = empty_layer(link);
  for_starts(link, [&](const Stretch& stretch) {
    Onward next = goals_.after(anchor_class, stretch.end);
    // What an idle link passes on is by its start's date.
    if (stretch.dates == 0 &&
        (stretch.end == 0 || setting_.date(stretch.end - 1) != setting_.date(stretch.start))) {
      next.same_date = no_tally;
    }
    layer.starts[at(stretch.start - layer.from)] = with_work(stretch, next);
  });
  return layer;
}

ChainCost::Layer ChainCost::layer_before(std::size_t link, const Layer& next) const {
  Layer layer = empty_layer(link);
  const Link& after = setting_.standing.links[link + 1];
  WindowBest<Tally, std::less<>> any;
  WindowBest<Tally, std::less<>> same_date;
  Slot any_entered = next.from;
  Slot same_entered = next.from;
  for_starts(link, [&](const Stretch& stretch) {
    const Slot from = stretch.end + after.lag_min;
    const Slot until = std::min(stretch.end + after.lag_max, next.until() - 1);
    const std::int32_t date = setting_.date(stretch.dates > 0 ? stretch.end - 1 : stretch.start);
    for (; any_entered <= until; ++any_entered) {
      any.enter(any_entered, next.at_start(any_entered).any);
    }
    for (; same_entered <= until && setting_.date(same_entered) <= date; ++same_entered) {
      same_date.enter(same_entered, next.at_start(same_entered).same_date);
    }
    any.leave_before(from);
    same_date.leave_before(from);
    Onward onward;
    onward.any = any.empty() ? no_tally : any.best();
    onward.same_date = same_date.empty() ? no_tally : same_date.best();
    layer.starts[at(stretch.start - layer.from)] = with_work(stretch, onward);
  });
  return layer;
}

template <class Visit>
void ChainCost::for_starts(std::size_t link, Visit visit) const {
  const Link& rule = setting_.standing.links[link];
  const Openings& openings = setting_.calendars[setting_.problem.chain[rule.task].calendar];
  const Slot last = std::min(setting_.length - 1, rule.until);
  for (Slot start = openings.next(reach_.earliest[link]); start <= last;
       start = openings.next(start + 1)) {
    const Stretch stretch = setting_.stretch(rule, start);
    if (stretch.possible()) {
      visit(stretch);
    }
  }
}

// From the anchor's own end follows its class.
ChainCost::Layer ChainCost::merged(std::size_t anchor) const {
  Layer layer = empty_layer(anchor);
  for_starts(anchor, [&](const Stretch& stretch) {
    layer.starts[at(stretch.start - layer.from)] =
        by_class_[goals_.class_of(stretch.end)][anchor].at_start(stretch.start);
  });
  return layer;
}

Tally ChainCost::from_start(const Onward& onward, Slot start, std::int32_t last_date) const {
  return setting_.date(start) == last_date ? onward.best(setting_.problem.attendance) : onward.any;
}

Tally ChainCost::best() const {
  const Standing& standing = setting_.standing;
  if (standing.links.empty()) {
    const Onward& onward = goals_.after(goals_.class_of(standing.anchor), standing.clock);
    return standing.clock > 0 ? from_start(onward, standing.clock - 1, standing.free_date)
                              : onward.any;
  }
  const bool anchored = standing.anchor_link == no_link;
  const Layer& first =
      anchored ? by_class_[goals_.class_of(standing.anchor)].front() : layers_.front();
  Tally result = no_tally;
  for_starts(0, [&](const Stretch& stretch) {
    result = std::min(result,
                      from_start(first.at_start(stretch.start), stretch.start, standing.free_date));
  });
  return result;
}

std::vector<Booking> ChainCost::first(Tally& rest) const {
  const Standing& standing = setting_.standing;
  std::vector<Booking> bookings;
  rest = best();
  std::size_t anchor_class = goals_.class_of(standing.anchor);
  std::int32_t last_date = standing.free_date;
  Slot end = standing.clock;
  for (std::size_t link = 0; link < standing.links.size(); ++link) {
    const Link& rule = standing.links[link];
    const bool before = standing.anchor_link != no_link && link <= standing.anchor_link;
    const Layer& layer = before ? layers_[link] : by_class_[anchor_class][link];
    const Openings& openings = setting_.calendars[setting_.problem.chain[rule.task].calendar];
    Slot start = openings.next(std::max({layer.from, rule.from, end + rule.lag_min}));
    while (start < layer.until() && from_start(layer.at_start(start), start, last_date) != rest) {
      start = openings.next(start + 1);
    }
    if (start >= layer.until()) {
      throw std::logic_error("schedule: no chain at the price found");
    }
    const Stretch stretch = setting_.stretch(rule, start);
    bookings.push_back({Booking::What::task, rule.task, 0, start, stretch.end});
    if (stretch.dates > 0) {
      const int paid = setting_.date(start) == last_date ? 1 : 0;
      rest.cost -= stretch.labour + setting_.problem.attendance * (stretch.dates - paid);
      last_date = setting_.date(stretch.end - 1);
    }
    end = stretch.end;
    if (link == standing.anchor_link) {
      anchor_class = goals_.class_of(end);
    }
  }
  return bookings;
}

}  // namespace basinwright::schedule
