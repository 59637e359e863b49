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

/// Takes items from a source, turns each into a result with `work` on `threads` threads, and hands
/// the results to a sink in the items' order. Only a few items a thread are held at any time.
///
/// @param source `next()`, the next item if there is one; `waits()`, whether that would wait for
///               whoever makes them; `await()`, which waits for a while and may be called beside
///               anything but the source
/// @param sink `deliver(result)`, and `pause()` when no more is to be expected for a while; either
///             ends it by returning false, and neither is called while `next` or `waits` is
template <class Source, class Work, class Sink>
void in_order(std::size_t threads, Source& source, Work work, Sink& sink) {
  using Item = typename decltype(source.next())::value_type;
  using Result = decltype(work(std::declval<Item&>()));
  constexpr std::size_t held_a_thread = 16;
  std::mutex lock;
  std::condition_variable room;
  std::map<std::size_t, Result> waiting;
  std::size_t taken = 0;
  std::size_t delivered = 0;
  bool over = false;     // no more is taken
  bool stopped = false;  // nor delivered
  bool awaiting = false;

  const auto await_next = [&](std::unique_lock<std::mutex>& hold) {
    while (!over && source.waits()) {
      if (!std::exchange(awaiting, true) && !sink.pause()) stopped = over = true;
      hold.unlock();
      source.await();
      hold.lock();
    }
    if (std::exchange(awaiting, false)) room.notify_all();
  };
  const auto take = [&]() -> std::optional<std::pair<std::size_t, Item>> {
    std::unique_lock hold(lock);
    room.wait(hold,
              [&] { return over || (!awaiting && taken < delivered + held_a_thread * threads); });
    await_next(hold);
    if (over) return std::nullopt;
    auto item = source.next();
    if (item) return std::pair{taken++, std::move(*item)};
    over = true;
    room.notify_all();
    return std::nullopt;
  };
  const auto give = [&](std::size_t index, Result result) {
    const std::scoped_lock hold(lock);
    waiting.emplace(index, std::move(result));
    for (auto it = waiting.begin(); it != waiting.end() && it->first == delivered && !stopped;
         it = waiting.erase(it)) {
      ++delivered;
      if (sink.deliver(std::move(it->second))) continue;
      stopped = over = true;
    }
    if (awaiting && !stopped && !sink.pause()) stopped = over = true;
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
