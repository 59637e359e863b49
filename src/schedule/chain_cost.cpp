#include "chain_cost.hpp"

#include <algorithm>
#include <stdexcept>

#include "chain_window.hpp"

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
  own_.resize(anchor_);
  for (std::size_t link = anchor_; link-- > 0;) {
    const Layer& next = layers_[link + 1];
    if (reach.ways[link].empty() && !next.prices.empty()) {
      const Slot last = ways(link + 1)[next.until() - 1].start;
      own_[link] =
          ways_until(setting, reach, link, last - setting.standing.links[link + 1].lag_min);
    }
    layers_[link] = layer_before(link, next, {0, ways(link).size()});
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

// What leads nowhere at either end is left out.
void ChainCost::Layer::trim() {
  const auto leads = [](const Onward& onward) { return onward.any < no_tally; };
  const auto last = std::find_if(prices.rbegin(), prices.rend(), leads).base();
  prices.erase(last, prices.end());
  const auto first = std::find_if(prices.begin(), prices.end(), leads);
  from += static_cast<std::size_t>(first - prices.begin());
  prices.erase(prices.begin(), first);
}

// The anchor's own ways by its class, those after it by its least anchor.
ChainCost::Span ChainCost::span_of(std::size_t link, std::size_t anchor_class) const {
  const std::vector<Stretch>& ways = this->ways(link);
  if (anchor_class == 0 || setting_.standing.anchor_link == no_link) {
    return {0, ways.size()};
  }
  const Slot from = goals_.anchor_from(anchor_class);
  const auto before = [&](Slot slot, Slot Stretch::*moment) {
    const auto first = std::partition_point(
        ways.begin(), ways.end(), [&](const Stretch& way) { return way.*moment < slot; });
    return static_cast<std::size_t>(first - ways.begin());
  };
  if (link > anchor_) {
    return {before(from, &Stretch::start), ways.size()};
  }
  return {before(from, &Stretch::end), before(goals_.anchor_until(anchor_class), &Stretch::end)};
}

// Parts are written whole and then changed: a part that is read whole right after it was written in
// pieces keeps the processor waiting.
void ChainCost::put_price(std::size_t link,
                          const Stretch& stretch,
                          const Tally& any,
                          const Tally& same_date,
                          Onward& price) const {
  if (stretch.dates > 0) {
    const std::int64_t attendance = setting_.problem.attendance;
    const Tally beside = same_date < no_tally ? same_date.costing(-attendance) : no_tally;
    const Tally& best = beside < any ? beside : any;
    price = {best, best};
    if (best < no_tally) {
      const std::int64_t cost = stretch.labour + attendance * stretch.dates;
      price.any.cost += cost;
      price.same_date.cost += cost;
    }
  } else {
    price = {any, same_date};
  }
  if (link != setting_.standing.emptied_link) {
    return;
  }
  for (Tally* tally : {&price.any, &price.same_date}) {
    tally->empty += *tally < no_tally ? empty(link, stretch) : 0;
  }
}

std::int64_t ChainCost::empty(std::size_t link, const Stretch& stretch) const {
  return link == setting_.standing.emptied_link ? finish_ - stretch.end : 0;
}

ChainCost::Layer ChainCost::last_layer(const Onwards& after, Span span) const {
  Layer layer{span.from, {}};
  const std::vector<Stretch>& ways = this->ways(links_ - 1);
  for (std::size_t way = span.from; way < span.until && ways[way].end < after.until(); ++way) {
    const Stretch& stretch = ways[way];
    Onward next = after.at_slot(stretch.end);
    // What an idle link passes on is by its start's date.
    if (stretch.dates == 0 &&
        (stretch.end == 0 || setting_.date(stretch.end - 1) != setting_.date(stretch.start))) {
      next.same_date = no_tally;
    }
    put_price(links_ - 1, stretch, next.any, next.same_date, layer.prices.emplace_back());
  }
  layer.trim();
  return layer;
}

ChainCost::Layer ChainCost::layer_before(std::size_t link, const Layer& next, Span span) const {
  Layer layer{span.from, {}};
  if (next.prices.empty() || span.from >= span.until) {
    return layer;
  }
  const Link& after = setting_.standing.links[link + 1];
  if (after.lag_max == never) {
    return layer_before_endless(link, next, span);
  }
  const std::vector<Stretch>& ways = this->ways(link);
  const std::vector<Stretch>& onwards = this->ways(link + 1);
  ChainWindow window(setting_, {&onwards[next.from], next.prices});
  const Slot last = onwards[next.until() - 1].start;
  layer.prices.reserve(span.until - span.from);
  for (std::size_t way = span.from; way < span.until; ++way) {
    const Stretch& stretch = ways[way];
    if (stretch.end + after.lag_min > last) {
      break;
    }
    const std::int32_t date = setting_.date(stretch.dates > 0 ? stretch.end - 1 : stretch.start);
    const Reach starts{stretch.end + after.lag_min, stretch.end + after.lag_max};
    const Onward next = window.best(starts, date);
    put_price(link, stretch, next.any, next.same_date, layer.prices.emplace_back());
  }
  layer.trim();
  return layer;
}

// Where the next link waits without end: from the back, with what is best of its ways from one on.
ChainCost::Layer ChainCost::layer_before_endless(std::size_t link,
                                                 const Layer& next,
                                                 Span span) const {
  const Slot lag = setting_.standing.links[link + 1].lag_min;
  const std::vector<Stretch>& ways = this->ways(link);
  const std::vector<Stretch>& onwards = this->ways(link + 1);
  const auto date = [&](std::size_t onward) { return setting_.date(onwards[onward].start); };
  const Slot last = onwards[next.until() - 1].start;
  const auto first = ways.begin() + static_cast<std::ptrdiff_t>(span.from);
  const auto end = std::partition_point(first,
                                        ways.begin() + static_cast<std::ptrdiff_t>(span.until),
                                        [&](const Stretch& way) { return way.end + lag <= last; });
  Layer layer{span.from, std::vector<Onward>(static_cast<std::size_t>(end - first))};
  std::size_t entered = next.until();
  Tally any = no_tally;
  Tally same_date = no_tally;
  for (std::size_t place = layer.prices.size(); place-- > 0;) {
    const Stretch& way = ways[span.from + place];
    while (entered > next.from && onwards[entered - 1].start >= way.end + lag) {
      const Onward& here = next.prices[--entered - next.from];
      const bool goes_on = entered + 1 < next.until() && date(entered) == date(entered + 1);
      if (here.any < any) any = here.any;
      if (!goes_on || here.same_date < same_date) same_date = here.same_date;
    }
    const bool same = date(entered) == setting_.date(way.dates > 0 ? way.end - 1 : way.start);
    put_price(link, way, any, same ? same_date : no_tally, layer.prices[place]);
  }
  layer.trim();
  return layer;
}

// From the anchor's own end follows its class.
ChainCost::Layer ChainCost::merged(std::size_t anchor) const {
  Layer layer = by_class_[0][anchor];
  const auto take = [&](const Layer& of_class) {
    if (of_class.prices.empty()) return;
    // No class leads on from an earlier way than those before it: windows only move forward.
    if (layer.prices.empty()) layer.from = of_class.from;
    layer.prices.resize(std::max(layer.prices.size(), of_class.until() - layer.from));
    for (std::size_t way = of_class.from; way < of_class.until(); ++way) {
      Onward& here = layer.prices[way - layer.from];
      here = here.or_else(of_class.prices[way - of_class.from]);
    }
  };
  if (setting_.standing.anchor_link == no_link) {
    const std::size_t one = goals_.class_of(setting_.standing.anchor);
    if (one > 0) take(by_class_[one][anchor]);
    return layer;
  }
  // Each class has only the ways whose end is of it.
  for (std::size_t one = 1; one < by_class_.size(); ++one) take(by_class_[one][anchor]);
  return layer;
}

Onward ChainCost::onward(std::size_t link, std::size_t anchor_class, std::size_t way) const {
  return by_class_[0][link].of(way).or_else(by_class_[anchor_class][link].of(way));
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
  for (std::size_t way = layers_[0].from; way < layers_[0].until(); ++way) {
    const Slot start = ways(0)[way].start;
    const Onward& here = layers_[0].prices[way - layers_[0].from];
    result = std::min(result, from_start(here, start, standing.free_date));
  }
  return result;
}

// The last up to the link that empties, the first after it.
template <class Fits>
std::size_t ChainCost::chosen_way(std::size_t link, Reach starts, Fits fits) const {
  const std::vector<Stretch>& ways = this->ways(link);
  const auto number = [&](Slot slot) {
    const auto first = std::partition_point(
        ways.begin(), ways.end(), [&](const Stretch& way) { return way.start < slot; });
    return static_cast<std::size_t>(first - ways.begin());
  };
  const std::size_t emptied = setting_.standing.emptied_link;
  const std::size_t from = number(starts.from);
  const std::size_t until = number(starts.until + 1);
  if (emptied != no_link && link <= emptied) {
    for (std::size_t way = until; way-- > from;) {
      if (fits(way)) return way;
    }
  } else {
    for (std::size_t way = from; way < until; ++way) {
      if (fits(way)) return way;
    }
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
    const std::vector<Stretch>& ways = this->ways(link);
    const Reach starts{std::max(rule.from, end + rule.lag_min),
                       std::min({rule.until, end + rule.lag_max, setting_.length - 1})};
    const std::size_t chosen = chosen_way(link, starts, [&](std::size_t way) {
      const Onward here = link <= anchor_ ? layers_[link].of(way) : onward(link, anchor_class, way);
      return from_start(here, ways[way].start, last_date) == rest;
    });
    const Stretch& stretch = ways[chosen];
    bookings.push_back({Booking::What::task, rule.task, 0, stretch.start, stretch.end});
    rest.empty -= empty(link, stretch);
    if (stretch.dates > 0) {
      const int paid = setting_.date(stretch.start) == last_date ? 1 : 0;
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
