#include "recent.hpp"

#include <algorithm>
#include <cstring>
#include <functional>

namespace basinwright::sequence {
namespace {

constexpr std::size_t aligned = 8;
constexpr std::size_t bytes_a_bucket = 256;
constexpr std::size_t first_bytes = 1U << 15U;

std::size_t whole(std::size_t size) {
  return (size + aligned - 1) / aligned * aligned;
}

}  // namespace

Recent::Recent(std::size_t room)
    : room_(std::max(whole(room), whole(sizeof(Head)))),
      ring_(std::min(room_, first_bytes)),
      last_(room_ / bytes_a_bucket + 1),
      end_(room_) {}

Recent::Head Recent::head(std::uint64_t position) const {
  Head head;
  std::memcpy(&head, ring_.data() + position % room_, sizeof head);
  return head;
}

std::string_view Recent::bytes(std::uint64_t position, std::size_t size) const {
  return {ring_.data() + position % room_, size};
}

std::size_t Recent::bucket(std::string_view key) const {
  return std::hash<std::string_view>()(key) % last_.size();
}

void Recent::put(std::string_view key, std::string_view value) {
  const std::size_t size = whole(sizeof(Head) + key.size() + value.size());
  if (size > room_) return;
  // Nothing is broken over the room's end.
  const std::size_t left = room_ - end_ % room_;
  const std::uint64_t position = size <= left ? end_ : end_ + left;
  std::uint64_t& last = last_[bucket(key)];
  const Head head{
      last, static_cast<std::uint32_t>(key.size()), static_cast<std::uint32_t>(value.size())};
  if (position % room_ + size > ring_.size()) ring_.resize(room_);
  char* place = ring_.data() + position % room_;
  std::memcpy(place, &head, sizeof head);
  place = std::ranges::copy(key, place + sizeof head).out;
  std::ranges::copy(value, place);
  last = position;
  end_ = position + size;
}

}  // namespace basinwright::sequence
