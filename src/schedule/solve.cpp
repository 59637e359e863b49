#include "basinwright/schedule/solve.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>

#include "timeline.hpp"

namespace basinwright::schedule {
namespace {

constexpr Slot never = std::numeric_limits<Slot>::max() / 4;

struct Value {
  int splits = 0;
  int reworks = 0;
  std::int64_t cost = 0;
  friend auto operator<=>(const Value&, const Value&) = default;
};

struct Node {
  Booking booking;
  int parent = -1;
  Value value;
};

struct State {
  Slot t = 0;
  Slot wet = 0;                // the chain's end, until the first unit is done
  Slot deadline = 0;           // of first coats
  std::int32_t last_date = 0;  // of work, if it is the date of t
  int recleaned = 0;
  std::vector<Slot> pending;
  std::vector<Slot> done;                // per section: coats done
  std::vector<Slot> start, end, rework;  // of the last coat; rework end or no_slot
  std::vector<std::int32_t> date;        // per coat: of the last section done
  friend auto operator<=>(const State&, const State&) = default;
};

constexpr std::int32_t no_date = std::numeric_limits<std::int32_t>::min();

class Search {
 public:
  Search(const Problem& problem, Slot horizon) : p_(problem), h_(horizon) {
    for (const Calendar& calendar : p_.calendars) {
      open_.emplace_back(calendar, p_, h_);
    }
    sections_ = p_.units.sections.size();
    coats_ = p_.units.coats.size();
  }
  void run() {
    bound_.assign(p_.finish.size() + 1, never);
    for (std::size_t e = p_.finish.size(); e-- > 0;) {
      bound_[e] = std::min(bound_[e + 1], p_.finish[e] ? p_.finish[e]->slot : never);
    }
    facts();
    chain();
    paint();
  }
  bool found = false;
  Answer answer;
  std::size_t chain_reached = 0;
  std::vector<std::vector<char>> unit_reached;

 private:
  std::int32_t date(Slot s) const { return s < h_ ? p_.date_of[at(s)] : no_date; }
  static std::vector<std::tuple<Slot, int, std::size_t, std::size_t>> path(
      const std::vector<Node>& nodes, int i) {
    std::vector<std::tuple<Slot, int, std::size_t, std::size_t>> r;
    for (; i >= 0; i = nodes[static_cast<std::size_t>(i)].parent) {
      const Booking& b = nodes[static_cast<std::size_t>(i)].booking;
      r.emplace_back(b.start, static_cast<int>(b.what), b.index, b.section);
    }
    std::reverse(r.begin(), r.end());
    return r;
  }
  bool better(const Node& a, const Node& b) const {
    if (a.value != b.value) {
      return a.value < b.value;
    }
    auto pa = path(nodes_, a.parent);
    auto pb = path(nodes_, b.parent);
    pa.emplace_back(
        a.booking.start, static_cast<int>(a.booking.what), a.booking.index, a.booking.section);
    pb.emplace_back(
        b.booking.start, static_cast<int>(b.booking.what), b.booking.index, b.booking.section);
    return pa < pb;
  }

  void facts() {
    const Facts none{};
    const Facts& f = p_.facts ? *p_.facts : none;
    Slot worked = no_slot;
    clock_ = f.now;
    task_end_.assign(p_.chain.size(), no_slot);
    for (const DoneTask& d : f.tasks) {
      task_end_[d.task] = d.end;
      clock_ = std::max(clock_, d.end);
      if (p_.chain[d.task].kind != Kind::unattended && d.end > d.start) {
        worked = std::max(worked, d.end);
      }
    }
    base_.done.assign(sections_, 0);
    base_.pending.assign(sections_, 0);
    base_.start.assign(sections_, no_slot);
    base_.end.assign(sections_, no_slot);
    base_.rework.assign(sections_, no_slot);
    base_.date.assign(coats_, no_date);
    fact_date_.assign(coats_, std::vector<std::int32_t>(sections_, no_date));
    for (const DoneUnit& d : f.units) {
      clock_ = std::max(clock_, d.end);
      worked = std::max(worked, d.end);
      if (static_cast<Slot>(d.coat) + 1 > base_.done[d.section]) {
        base_.done[d.section] = static_cast<Slot>(d.coat) + 1;
        base_.start[d.section] = d.start;
        base_.end[d.section] = d.end;
      }
      fact_date_[d.coat][d.section] = p_.date_of[at(d.start)];
    }
    for (std::size_t c = 0; c < coats_; ++c) {
      for (std::size_t s = 0; s < sections_; ++s) {
        if (fact_date_[c][s] == no_date) {
          continue;
        }
        if (s > 0 && fact_date_[c][s - 1] != no_date && fact_date_[c][s - 1] != fact_date_[c][s]) {
          ++base_value_.splits;
        }
        if (s + 1 < sections_ && fact_date_[c][s + 1] == no_date) {
          base_.date[c] = fact_date_[c][s];
        }
      }
    }
    for (const DoneRework& d : f.reworks) {
      clock_ = std::max(clock_, d.end);
      worked = std::max(worked, d.end);
      ++base_value_.reworks;
      if (base_.done[d.section] == static_cast<Slot>(d.coat) + 1) {
        base_.rework[d.section] = std::max(base_.rework[d.section], d.end);
      }
    }
    for (const DoneReclean& d : f.recleans) {
      clock_ = std::max(clock_, d.end);
      worked = std::max(worked, d.end);
      reclean_end_ = std::max(reclean_end_, d.end);
      ++base_value_.reworks;
    }
    free_date_ = worked > 0 ? p_.date_of[at(worked - 1)] : no_date;
  }

  std::int64_t attendance(std::int32_t last, Slot first_slot, int dates) const {
    return p_.attendance * (dates - (dates > 0 && last == date(first_slot) ? 1 : 0));
  }

  struct ChainState {
    Slot end = 0;
    std::int32_t last_date = 0;
    Slot anchor = 0;
    friend auto operator<=>(const ChainState&, const ChainState&) = default;
  };

  void chain() {
    std::map<ChainState, int> layer;
    layer[{clock_, free_date_ == date(clock_) ? free_date_ : no_date, no_slot}] = -1;
    Slot fact_anchor = no_slot;
    wet_fact_ = no_slot;
    for (std::size_t i = 0; i < p_.chain.size(); ++i) {
      wet_fact_ = std::max(wet_fact_, task_end_[i]);
      if (i == p_.anchor.task) {
        fact_anchor = task_end_[i];
      }
    }
    bool first = true;
    for (std::size_t i = 0; i < p_.chain.size(); ++i) {
      const Task& task = p_.chain[i];
      if (task_end_[i] != no_slot) {
        chain_reached = i + 1;
        continue;
      }
      std::map<ChainState, int> next;
      for (const auto& [state, node] : layer) {
        Slot lo = std::max(state.end, task.release);
        Slot hi = never;
        if (i > 0) {
          const Slot before = task_end_[i - 1] != no_slot ? task_end_[i - 1] : state.end;
          lo = std::max(lo, before + task.lag_min);
          if (task.lag_max) {
            hi = before + *task.lag_max;
          }
        }
        const Openings& open = open_[task.calendar];
        for (Slot s = open.next(lo); s < h_ && s <= hi; s = open.next(s + 1)) {
          Stretch w = task.kind == Kind::attended    ? open.resumed(s, task.slots)
                      : task.kind == Kind::one_shift ? open.unbroken(s, task.slots)
                                                     : Stretch{s, s + task.slots, 0, 0};
          if (w.end == no_slot || w.end > h_) {
            continue;
          }
          Node n{{Booking::What::task, i, 0, w.start, w.end},
                 node,
                 node >= 0 ? nodes_[static_cast<std::size_t>(node)].value : base_value_};
          const std::int32_t last = w.dates > 0 ? date(w.end - 1) : state.last_date;
          n.value.cost += w.labour + attendance(state.last_date, w.start, w.dates);
          ChainState to{w.end,
                        last == date(w.end) ? last : no_date,
                        i == p_.anchor.task ? w.end : state.anchor};
          offer(next, to, n);
        }
      }
      layer = std::move(next);
      first = false;
      if (!layer.empty()) {
        chain_reached = i + 1;
      } else {
        return;
      }
    }
    (void)first;
    for (const auto& [state, node] : layer) {
      State s = base_;
      s.t = state.end;
      s.last_date = state.last_date;
      s.wet = wet_fact_;
      if (node >= 0) {
        s.wet = std::max(s.wet, state.end);
      }
      Slot anchor = fact_anchor != no_slot ? fact_anchor : state.anchor;
      if (reclean_end_ != no_slot) {
        anchor = s.wet = reclean_end_;
      }
      s.deadline = deadline(anchor);
      Node n{{}, node, node >= 0 ? nodes_[static_cast<std::size_t>(node)].value : base_value_};
      push(s, n, true);
    }
  }
  Slot deadline(Slot anchor) const {
    return p_.anchor.limit && anchor != no_slot ? std::min(anchor + *p_.anchor.limit, never)
                                                : never;
  }

  template <class Map, class Key>
  void offer(Map& map, const Key& key, const Node& n) {
    auto it = map.find(key);
    if (it == map.end()) {
      nodes_.push_back(n);
      map.emplace(key, static_cast<int>(nodes_.size()) - 1);
    } else if (better(n, nodes_[static_cast<std::size_t>(it->second)])) {
      nodes_.push_back(n);
      it->second = static_cast<int>(nodes_.size()) - 1;
    }
  }
  bool hopeless(Slot t) const {
    return found && bound_[std::min(at(t), bound_.size() - 1)] > answer.objective.finish;
  }
  void push(const State& s, const Node& n, bool root = false) {
    if (hopeless(s.t)) {
      return;
    }
    if (root) {
      auto it = labels_.find(s);
      Node at_root = n;
      if (it == labels_.end() || (at_root.value < value_of(it->second)) ||
          (at_root.value == value_of(it->second) &&
           path(nodes_, n.parent) < path(nodes_, it->second))) {
        labels_[s] = n.parent;
      }
      return;
    }
    offer(labels_, s, n);
  }
  Value value_of(int node) const {
    return node >= 0 ? nodes_[static_cast<std::size_t>(node)].value : base_value_;
  }

  void paint() {
    unit_reached.assign(coats_, std::vector<char>(sections_, 0));
    for (std::size_t s = 0; s < sections_; ++s) {
      for (Slot c = 0; c < base_.done[s]; ++c) {
        unit_reached[at(c)][s] = 1;
      }
    }
    while (!labels_.empty()) {
      auto it = labels_.begin();
      const State s = it->first;
      const int node = it->second;
      labels_.erase(it);
      if (!hopeless(s.t)) {
        expand(s, node);
      }
    }
  }
  void expand(const State& s, int node) {
    const bool all =
        std::all_of(s.done.begin(), s.done.end(), [&](Slot d) { return at(d) == coats_; });
    if (all || coats_ == 0) {
      terminal(s, node);
      return;
    }
    const bool bare = std::all_of(s.done.begin(), s.done.end(), [](Slot d) { return d == 0; });
    if (bare && p_.anchor.reclean && !s.recleaned) {
      reclean(s, node);
    }
    for (std::size_t q = 0; q < sections_; ++q) {
      if (at(s.done[q]) == coats_) {
        continue;
      }
      if (q == 0 || s.done[q - 1] > s.done[q]) {
        unit(s, node, q);
      }
      if (s.done[q] > 0 && p_.units.rework && s.pending[q] == 0) {
        rework(s, node, q);
      }
    }
  }
  void terminal(const State& s, int node) {
    Slot e = no_slot;
    for (Slot x : s.end) {
      e = std::max(e, x);
    }
    if (sections_ == 0 || coats_ == 0) {
      e = s.wet;
    }
    if (e < 0 || at(e) >= p_.finish.size() || !p_.finish[at(e)]) {
      return;
    }
    const Finish& f = *p_.finish[at(e)];
    const Value v = value_of(node);
    const Objective o{f.slot, v.splits, v.reworks, v.cost + f.cost};
    if (!found || o < answer.objective ||
        (o == answer.objective && path(nodes_, node) < path(nodes_, best_node_))) {
      found = true;
      answer.objective = o;
      best_node_ = node;
      answer.bookings.clear();
      for (int i = node; i >= 0; i = nodes_[static_cast<std::size_t>(i)].parent) {
        answer.bookings.push_back(nodes_[static_cast<std::size_t>(i)].booking);
      }
      std::reverse(answer.bookings.begin(), answer.bookings.end());
    }
  }
  void reclean(const State& s, int node) {
    const Openings& open = open_[p_.anchor.reclean->calendar];
    for (Slot r = open.next(s.t); r < h_; r = open.next(r + 1)) {
      const Stretch w = open.resumed(r, p_.anchor.reclean->slots);
      if (w.end == no_slot) {
        break;
      }
      State to = s;
      Node n = worked(s, node, w, {Booking::What::reclean, 0, 0, w.start, w.end}, to);
      to.wet = w.end;
      to.recleaned = 1;
      to.deadline = deadline(w.end);
      ++n.value.reworks;
      push(to, n);
    }
  }
  Node worked(const State& s, int node, const Stretch& w, const Booking& b, State& to) const {
    Node n{b, node, value_of(node)};
    n.value.cost += w.labour + attendance(s.last_date, w.start, w.dates);
    to.t = w.end;
    const std::int32_t last = w.dates > 0 ? date(w.end - 1) : s.last_date;
    to.last_date = last == date(w.end) ? last : no_date;
    return n;
  }
  void rework(const State& s, int node, std::size_t q) {
    const Rework& rule = *p_.units.rework;
    const std::size_t c = at(s.done[q]) - 1;
    const Openings& open = open_[rule.calendar];
    for (Slot r = open.next(std::max(s.t, s.end[q] + p_.units.recoat[c].min)); r < h_;
         r = open.next(r + 1)) {
      const Stretch w = open.resumed(r, rule.slots[q]);
      if (w.end == no_slot) {
        break;
      }
      State to = s;
      Node n = worked(s, node, w, {Booking::What::rework, c, q, w.start, w.end}, to);
      to.rework[q] = w.end;
      to.pending[q] = 1;
      ++n.value.reworks;
      push(to, n);
    }
  }
  void unit(const State& s, int node, std::size_t q) {
    const std::size_t c = at(s.done[q]);
    const Slot slots = p_.units.slots[c][q];
    Slot lo = s.t;
    Slot hi = never;
    const bool very_first =
        std::all_of(s.done.begin(), s.done.end(), [](Slot d) { return d == 0; });
    if (c == 0) {
      lo = std::max(lo, s.wet + p_.anchor.dry);
      hi = s.deadline;
    } else if (s.rework[q] != no_slot) {
      lo = std::max(lo, s.rework[q] + p_.units.rework->dry);
      hi = s.rework[q] + p_.units.rework->max;
    } else {
      const Recoat& w = p_.units.recoat[c - 1];
      lo = std::max({lo, s.start[q] + w.min, s.end[q] + w.min - slots});
      hi = std::min(s.start[q] + w.max, s.end[q] + w.max - slots);
    }
    const Openings& open = open_[p_.units.calendar];
    for (Slot b = open.next(lo); b < h_ && b <= hi; b = open.next(b + 1)) {
      const Stretch w = open.unbroken(b, slots);
      if (w.end == no_slot || date(w.start) != date(w.end - 1) || (very_first && wet_before(b))) {
        continue;
      }
      State to = s;
      Node n = worked(s, node, w, {Booking::What::unit, c, q, w.start, w.end}, to);
      if (q > 0 && s.date[c] != date(b)) {
        ++n.value.splits;
      }
      if (q + 1 < sections_ && fact_date_[c][q + 1] != no_date && fact_date_[c][q + 1] != date(b)) {
        ++n.value.splits;
      }
      to.date[c] = q + 1 < sections_ ? date(b) : no_date;
      to.done[q] = static_cast<Slot>(c) + 1;
      to.start[q] = w.start;
      to.end[q] = w.end;
      to.rework[q] = no_slot;
      to.pending[q] = 0;
      unit_reached[c][q] = 1;
      push(to, n);
    }
  }
  bool wet_before(Slot start) const {
    for (Slot s = std::max<Slot>(0, start - p_.anchor.rain_free); s < start; ++s) {
      if (at(s) < p_.wet.size() && p_.wet[at(s)] != 0) {
        return true;
      }
    }
    return false;
  }

  const Problem& p_;
  Slot h_;
  std::vector<Slot> bound_;
  std::vector<Openings> open_;
  std::size_t sections_ = 0, coats_ = 0;
  Slot clock_ = 0;
  Slot reclean_end_ = no_slot, wet_fact_ = no_slot;
  std::vector<Slot> task_end_;
  std::vector<std::vector<std::int32_t>> fact_date_;
  std::int32_t free_date_ = no_date;
  Value base_value_;
  State base_;
  std::vector<Node> nodes_;
  std::map<State, int> labels_;
  int best_node_ = -1;
};

}  // namespace

std::variant<Answer, Infeasible> solve(const Problem& problem) {
  Slot length = std::min<Slot>(problem.horizon, 256);
  while (true) {
    Search search(problem, length);
    search.run();
    Slot later = never;
    for (std::size_t e = at(length) + 1; e < problem.finish.size(); ++e) {
      if (problem.finish[e]) {
        later = std::min(later, problem.finish[e]->slot);
      }
    }
    if (length == problem.horizon || (search.found && search.answer.objective.finish < later)) {
      if (search.found) {
        return search.answer;
      }
      Infeasible why;
      if (search.chain_reached < problem.chain.size()) {
        why.index = search.chain_reached;
        return why;
      }
      for (std::size_t c = 0; c < search.unit_reached.size(); ++c) {
        for (std::size_t s = 0; s < search.unit_reached[c].size(); ++s) {
          if (search.unit_reached[c][s] == 0) {
            why.part = Infeasible::Part::unit;
            why.index = c;
            why.section = s;
            return why;
          }
        }
      }
      why.part = Infeasible::Part::finish;
      return why;
    }
    length = std::min<Slot>(problem.horizon, length * 2);
  }
}

}  // namespace basinwright::schedule
