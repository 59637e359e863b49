#include "chain_cost.hpp"

#include <functional>
#include <stdexcept>

#include "window_best.hpp"

namespace basinwright::schedule {

ChainCost::ChainCost(const Setting& setting,
                     const ChainReach& reach,
                     const Goals& goals,
                     Slot finish)
    : setting_(setting),
      reach_(reach),
      goals_(goals),
      finish_(finish),
      links_(setting.standing.links.size()),
      anchor_(setting.standing.anchor_link == no_link ? 0 : setting.standing.anchor_link),
      by_class_(goals.classes()),
      layers_(links_) {
  if (links_ == 0) {
    return;
  }
  const bool anchored = setting.standing.anchor_link == no_link;
  for (std::size_t one = 0; one < goals.classes(); ++one) {
    if (!anchored || one == 0 || one == goals.class_of(setting.standing.anchor)) {
      by_class_[one] = after_anchor(one);
    }
  }
  layers_[anchor_] = merged(anchor_);
  for (std::size_t link = anchor_; link-- > 0;) {
    layers_[link] = layer_before(link, layers_[link + 1], {reach.earliest[link], setting.length});
  }
}

ChainCost::Layers ChainCost::after_anchor(std::size_t anchor_class) const {
  Layers layers(links_);
  const Onwards& after = goals_.after_chain(anchor_class);
  for (std::size_t link = links_; link-- > anchor_;) {
    const Span span = span_of(link, anchor_class);
    layers[link] =
        link + 1 == links_ ? last_layer(after, span) : layer_before(link, layers[link + 1], span);
  }
  return layers;
}

// The anchor's own starts by its class, those after it by the continuations that there are.
ChainCost::Span ChainCost::span_of(std::size_t link, std::size_t anchor_class) const {
  Span span{reach_.earliest[link], setting_.length};
  if (anchor_class == 0 || setting_.standing.anchor_link == no_link) {
    return span;
  }
  if (link > anchor_) {
    span.from = std::max(span.from, goals_.anchor_from(anchor_class));
    span.until = std::min(span.until, goals_.after_chain(anchor_class).until());
    return span;
  }
  Slot first = never;
  Slot last = no_slot;
  for_starts(link, span, [&](const Stretch& stretch) {
    if (goals_.class_of(stretch.end) == anchor_class) {
      first = std::min(first, stretch.start);
      last = stretch.start;
    }
  });
  return {first, last + 1};
}

Onward ChainCost::with_work(std::size_t link, const Stretch& stretch, const Onward& next) const {
  Onward result = next;
  if (stretch.dates > 0) {
    result.any = next.best(setting_.problem.attendance);
    if (result.any < no_tally) {
      result.any.cost += stretch.labour + setting_.problem.attendance * stretch.dates;
    }
    result.same_date = result.any;
  }
  for (Tally* tally : {&result.any, &result.same_date}) {
    tally->empty += *tally < no_tally ? empty(link, stretch) : 0;
  }
  return result;
}

std::int64_t ChainCost::empty(std::size_t link, const Stretch& stretch) const {
  return link == setting_.standing.emptied_link ? finish_ - stretch.end : 0;
}

Onwards ChainCost::last_layer(const Onwards& after, Span span) const {
  Onwards layer{span.from, std::vector<Onward>(at(std::max<Slot>(0, span.until - span.from)))};
  for_starts(links_ - 1, span, [&](const Stretch& stretch) {
    Onward next = after.at_slot(stretch.end);
    // What an idle link passes on is by its start's date.
    if (stretch.dates == 0 &&
        (stretch.end == 0 || setting_.date(stretch.end - 1) != setting_.date(stretch.start))) {
      next.same_date = no_tally;
    }
    layer.slots[at(stretch.start - layer.from)] = with_work(links_ - 1, stretch, next);
  });
  return layer;
}

Onwards ChainCost::layer_before(std::size_t link, const Onwards& next, Span span) const {
  Onwards layer{span.from, std::vector<Onward>(at(std::max<Slot>(0, span.until - span.from)))};
  const Link& after = setting_.standing.links[link + 1];
  WindowBest<Tally, std::less<>> any;
  WindowBest<Tally, std::less<>> same_date;
  Slot any_entered = next.from;
  Slot same_entered = next.from;
  for_starts(link, span, [&](const Stretch& stretch) {
    const Slot from = stretch.end + after.lag_min;
    const Slot until = std::min(stretch.end + after.lag_max, next.until() - 1);
    const std::int32_t date = setting_.date(stretch.dates > 0 ? stretch.end - 1 : stretch.start);
    // Most slots are closed and lead nowhere: only what leads on enters.
    for (; any_entered <= until; ++any_entered) {
      const Tally& here = next.slots[at(any_entered - next.from)].any;
      if (here < no_tally) any.enter(any_entered, here);
    }
    for (; same_entered <= until && setting_.date(same_entered) <= date; ++same_entered) {
      const Tally& here = next.slots[at(same_entered - next.from)].same_date;
      if (here < no_tally) same_date.enter(same_entered, here);
    }
    any.leave_before(from);
    same_date.leave_before(from);
    Onward onward;
    onward.any = any.empty() ? no_tally : any.best();
    onward.same_date = same_date.empty() ? no_tally : same_date.best();
    layer.slots[at(stretch.start - layer.from)] = with_work(link, stretch, onward);
  });
  return layer;
}

template <class Visit>
void ChainCost::for_starts(std::size_t link, Span span, Visit visit) const {
  const Link& rule = setting_.standing.links[link];
  const Openings& openings = setting_.calendars[setting_.problem.chain[rule.task].calendar];
  const Slot last = std::min(span.until - 1, rule.until);
  for (Slot start = openings.next(std::max(span.from, reach_.earliest[link])); start <= last;
       start = openings.next(start + 1)) {
    const Stretch stretch = setting_.stretch(rule, start);
    if (stretch.possible()) {
      visit(stretch);
    }
  }
}

// From the anchor's own end follows its class.
Onwards ChainCost::merged(std::size_t anchor) const {
  const Span span{reach_.earliest[anchor], setting_.length};
  Onwards layer{span.from, std::vector<Onward>(at(span.until - span.from))};
  for_starts(anchor, span, [&](const Stretch& stretch) {
    const bool is_anchor = setting_.standing.anchor_link != no_link;
    const Slot end = is_anchor ? stretch.end : setting_.standing.anchor;
    layer.slots[at(stretch.start - layer.from)] =
        onward(anchor, goals_.class_of(end), stretch.start);
  });
  return layer;
}

Onward ChainCost::onward(std::size_t link, std::size_t anchor_class, Slot start) const {
  return by_class_[0][link].at_slot(start).or_else(by_class_[anchor_class][link].at_slot(start));
}

Tally ChainCost::from_start(const Onward& onward, Slot start, std::int32_t last_date) const {
  return setting_.date(start) == last_date ? onward.best(setting_.problem.attendance) : onward.any;
}

Tally ChainCost::best() const {
  const Standing& standing = setting_.standing;
  Tally result = no_tally;
  if (links_ == 0) {
    const Onward onward =
        goals_.after_chain(0)
            .at_slot(standing.clock)
            .or_else(goals_.after_chain(goals_.class_of(standing.anchor)).at_slot(standing.clock));
    return standing.clock > 0 ? from_start(onward, standing.clock - 1, standing.free_date)
                              : onward.any;
  }
  for_starts(0, {reach_.earliest[0], setting_.length}, [&](const Stretch& stretch) {
    result = std::min(
        result, from_start(layers_[0].at_slot(stretch.start), stretch.start, standing.free_date));
  });
  return result;
}

// The last up to the link that empties, the first after it.
template <class Fits>
Slot ChainCost::chosen_start(std::size_t link, Span span, Fits fits) const {
  const Openings& openings =
      setting_.calendars[setting_.problem.chain[setting_.standing.links[link].task].calendar];
  const std::size_t emptied = setting_.standing.emptied_link;
  const bool last = emptied != no_link && link <= emptied;
  Slot start = last ? openings.last_before(span.until) : openings.next(span.from);
  while (start >= span.from && start < span.until) {
    if (fits(start)) {
      return start;
    }
    start = last ? openings.last_before(start) : openings.next(start + 1);
  }
  throw std::logic_error("schedule: no chain at the price found");
}

std::vector<Booking> ChainCost::first(Tally& rest) const {
  const Standing& standing = setting_.standing;
  std::vector<Booking> bookings;
  rest = best();
  std::size_t anchor_class = goals_.class_of(standing.anchor);
  std::int32_t last_date = standing.free_date;
  Slot end = standing.clock;
  for (std::size_t link = 0; link < links_; ++link) {
    const Link& rule = standing.links[link];
    const Span span{std::max(rule.from, end + rule.lag_min),
                    std::min({rule.until, end + rule.lag_max, setting_.length - 1}) + 1};
    const Slot start = chosen_start(link, span, [&](Slot from) {
      const Onward here =
          link <= anchor_ ? layers_[link].at_slot(from) : onward(link, anchor_class, from);
      return from_start(here, from, last_date) == rest;
    });
    const Stretch stretch = setting_.stretch(rule, start);
    bookings.push_back({Booking::What::task, rule.task, 0, start, stretch.end});
    rest.empty -= empty(link, stretch);
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
