// A stream worked on by several threads, its results in the order of the stream.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <map>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

namespace basinwright::cli {

/// Takes items from `next`, turns each into a result with `work` on `threads` threads, and hands
/// the results to `deliver` in the items' order. `next` and `deliver` are never called at the same
/// time; a `deliver` that returns false ends it. Only a few items a thread are held at any time.
template <class Next, class Work, class Deliver>
void in_order(std::size_t threads, Next next, Work work, Deliver deliver) {
  using Item = typename decltype(next())::value_type;
  using Result = decltype(work(std::declval<Item&>()));
  constexpr std::size_t held_a_thread = 16;
  std::mutex lock;
  std::condition_variable room;
  std::map<std::size_t, Result> waiting;
  std::size_t taken = 0;
  std::size_t delivered = 0;
  bool over = false;

  const auto take = [&]() -> std::optional<std::pair<std::size_t, Item>> {
    std::unique_lock hold(lock);
    room.wait(hold, [&] { return over || taken < delivered + held_a_thread * threads; });
    if (over) return std::nullopt;
    auto item = next();
    if (item) return std::pair{taken++, std::move(*item)};
    over = true;
    room.notify_all();
    return std::nullopt;
  };
  bool stopped = false;
  const auto give = [&](std::size_t index, Result result) {
    const std::scoped_lock hold(lock);
    waiting.emplace(index, std::move(result));
    for (auto it = waiting.begin(); it != waiting.end() && it->first == delivered && !stopped;
         it = waiting.erase(it)) {
      ++delivered;
      if (deliver(std::move(it->second))) continue;
      stopped = over = true;
    }
    room.notify_all();
  };
  const auto worker = [&] {
    while (auto item = take()) give(item->first, work(item->second));
  };
  std::vector<std::jthread> others;
  for (std::size_t i = 1; i < threads; ++i) others.emplace_back(worker);
  worker();
}

}  // namespace basinwright::cli
