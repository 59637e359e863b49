#include "exact.hpp"

#include <algorithm>
#include <queue>
#include <utility>

#include "conflict.hpp"

namespace basinwright::season {
namespace {

/// What a job may do: where, and when there. Its best on each crew, and over all.
struct Freedom {
  std::vector<char> crews;
  std::vector<Windows> windows;  ///< One a crew.
  SinglePtr best;
};
using FreedomPtr = std::shared_ptr<const Freedom>;

struct Node {
  Value bound;
  std::size_t number = 0;  ///< In the order in which they are made.
  std::vector<FreedomPtr> jobs;
};

// The least bound first; of equal ones the one made last, which is the deepest.
struct Later {
  bool operator()(const Node& a, const Node& b) const {
    if (a.bound != b.bound) return a.bound > b.bound;
    return a.number < b.number;
  }
};

class Search {
  static constexpr std::size_t nodes_a_single = 20;

 public:
  Search(Singles& singles, const Bound& bound, const Value& known, std::size_t most)
      : singles_(singles),
        p_(singles.problem()),
        bound_(bound),
        known_(known),
        last_(singles.solved() + most),
        most_nodes_(nodes_a_single * most) {}

  Proof run() {
    push(root());
    while (!open_.empty()) {
      if (open_.top().bound >= known_) return {known_, std::move(better_)};
      if (singles_.solved() >= last_ || made_ >= most_nodes_)
        return {open_.top().bound, std::move(better_)};
      const Node node = open_.top();
      open_.pop();
      std::vector<SinglePtr> all;
      for (const FreedomPtr& job : node.jobs) all.push_back(job->best);
      if (const auto conflict = first_conflict(p_, all)) {
        branch(node, *conflict);
        continue;
      }
      // Without a conflict it is a season of its own value, which may be over the node's bound of
      // old; no node that is still open can hold a better one than its own bound.
      Value value;
      for (const SinglePtr& job : all) value = value + job->value;
      if (value < known_) {
        known_ = value;
        better_ = std::move(all);
      }
    }
    return {known_, std::move(better_)};
  }

 private:
  [[nodiscard]] Node root() {
    Node node;
    std::vector<int> before;
    for (std::size_t j = 0; j < p_.jobs.size(); ++j) {
      Freedom job;
      for (std::size_t c = 0; c < p_.crews; ++c)
        job.crews.push_back(p_.jobs[j].by_crew[c] != nullptr && !is_copy(j, c) ? 1 : 0);
      job.windows.resize(p_.crews);
      node.jobs.push_back(settled(j, std::move(job)));
    }
    return node;
  }

  // Of crews that are alike the n-th is only begun with when the ones before it are: the first job
  // may only have the first, the second the first two.
  [[nodiscard]] bool is_copy(std::size_t job, std::size_t crew) const {
    if (p_.alike.empty()) return false;
    std::size_t before = 0;
    for (std::size_t c = 0; c < crew; ++c) before += p_.alike[c] == p_.alike[crew] ? 1U : 0U;
    return before > job;
  }

  // Each job's best on the crews it may have; of equals the first crew's.
  FreedomPtr settled(std::size_t job, Freedom freedom) {
    freedom.best = std::make_shared<const Single>(Single{{1, 0, 0, 0}, std::nullopt});
    for (std::size_t c = 0; c < p_.crews; ++c) {
      if (freedom.crews[c] == 0) continue;
      SinglePtr single = singles_.best(job, c, freedom.windows[c]);
      if (single->value < freedom.best->value) freedom.best = std::move(single);
    }
    return std::make_shared<const Freedom>(std::move(freedom));
  }

  void push(Node node) {
    std::vector<Value> alone;
    Value sum;
    for (const FreedomPtr& job : node.jobs) {
      alone.push_back(job->best->value);
      sum = sum + job->best->value;
    }
    node.bound = std::max({node.bound, sum, bound_.of(alone)});
    if (node.bound >= known_) return;
    node.number = ++made_;
    open_.push(std::move(node));
  }

  void give_up_crew(const Node& node, std::size_t job, std::size_t crew) {
    Node child = node;
    Freedom freedom = *child.jobs[job];
    freedom.crews[crew] = 0;
    child.jobs[job] = settled(job, std::move(freedom));
    push(std::move(child));
  }

  // Both on the crew, with one concession.
  void concede(const Node& node, const Conflict& conflict, const Concession& way) {
    Node child = node;
    for (const std::size_t job : conflict.jobs) {
      Freedom freedom = *child.jobs[job];
      std::ranges::fill(freedom.crews, 0);
      freedom.crews[conflict.crew] = 1;
      if (job == way.job) narrow(freedom.windows[conflict.crew], way.stretch);
      child.jobs[job] = settled(job, std::move(freedom));
    }
    push(std::move(child));
  }

  void branch(const Node& node, const Conflict& conflict) {
    const auto only = [&](std::size_t job) {
      return std::ranges::count(node.jobs[job]->crews, 1) == 1;
    };
    for (const std::size_t job : conflict.jobs) {
      if (!only(job)) give_up_crew(node, job, conflict.crew);
    }
    for (const Concession& way : conflict.ways) concede(node, conflict, way);
  }

  Singles& singles_;
  const Problem& p_;
  const Bound& bound_;
  Value known_;
  std::size_t last_;
  std::size_t most_nodes_;  ///< Nodes cost memory, and most of them nothing new to solve.
  std::size_t made_ = 0;
  std::optional<std::vector<SinglePtr>> better_;
  std::priority_queue<Node, std::vector<Node>, Later> open_;
};

}  // namespace

Proof prove(Singles& singles, const Bound& bound, const Value& known, std::size_t most) {
  return Search(singles, bound, known, most).run();
}

}  // namespace basinwright::season
