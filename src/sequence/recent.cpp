#include "recent.hpp"

#include <algorithm>
#include <cstring>
#include <functional>

namespace basinwright::sequence {
namespace {

constexpr std::size_t aligned = 8;
constexpr std::size_t bytes_a_bucket = 128;

std::size_t whole(std::size_t size) {
  return (size + aligned - 1) / aligned * aligned;
}

}  // namespace

Recent::Recent(std::size_t room)
    : ring_(std::max(whole(room), whole(sizeof(Head)))),
      last_(room / bytes_a_bucket + 1),
      end_(ring_.size()) {}

Recent::Head Recent::head(std::uint64_t position) const {
  Head head;
  std::memcpy(&head, ring_.data() + position % ring_.size(), sizeof head);
  return head;
}

std::string_view Recent::bytes(std::uint64_t position, std::size_t size) const {
  return {ring_.data() + position % ring_.size(), size};
}

std::size_t Recent::bucket(std::string_view key) const {
  return std::hash<std::string_view>()(key) % last_.size();
}

void Recent::put(std::string_view key, std::string_view value) {
  const std::size_t size = whole(sizeof(Head) + key.size() + value.size());
  if (size > ring_.size()) return;
  // Nothing is broken over the ring's end.
  const std::size_t left = ring_.size() - end_ % ring_.size();
  const std::uint64_t position = size <= left ? end_ : end_ + left;
  std::uint64_t& last = last_[bucket(key)];
  const Head head{
      last, static_cast<std::uint32_t>(key.size()), static_cast<std::uint32_t>(value.size())};
  char* place = ring_.data() + position % ring_.size();
  std::memcpy(place, &head, sizeof head);
  place = std::ranges::copy(key, place + sizeof head).out;
  std::ranges::copy(value, place);
  last = position;
  end_ = position + size;
}

}  // namespace basinwright::sequence
