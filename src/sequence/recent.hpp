// The latest answers of many; private to the room.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace basinwright::sequence {

/// Values by key, any number to a key. What was put first gives way first, once all the room is
/// taken. The whole room is taken as soon as there are some hundred values, so that a long run
/// needs no more memory than a short one.
class Recent {
 public:
  /// @param room bytes for keys and values together
  explicit Recent(std::size_t room);

  /// The last value put under a key that `wanted` takes, as long as nothing else is put; nothing
  /// when there is none.
  template <class Wanted>
  [[nodiscard]] std::string_view find(std::string_view key, Wanted wanted) const {
    for (std::uint64_t position = last_[bucket(key)]; holds(position);) {
      const Head here = head(position);
      const std::uint64_t text = position + sizeof here;
      const std::string_view value = bytes(text + here.key, here.value);
      if (bytes(text, here.key) == key && wanted(value)) return value;
      position = here.before;
    }
    return {};
  }
  /// Takes no value that has no room beside its key.
  void put(std::string_view key, std::string_view value);

 private:
  struct Head {
    std::uint64_t before = 0;  ///< The one put before it with a like hash; 0: none.
    std::uint32_t key = 0, value = 0;
  };

  [[nodiscard]] Head head(std::uint64_t position) const;
  [[nodiscard]] std::string_view bytes(std::uint64_t position, std::size_t size) const;
  [[nodiscard]] std::size_t bucket(std::string_view key) const;
  /// Still there: what lies a whole room behind is written over.
  [[nodiscard]] bool holds(std::uint64_t position) const {
    return position != 0 && position + room_ >= end_;
  }

  std::size_t room_;
  std::vector<char> ring_;           ///< Of the room, or less while less is taken.
  std::vector<std::uint64_t> last_;  ///< Of each bucket, the position put last.
  /// Positions count on and on; their place is what is left by the room. 0 is none.
  std::uint64_t end_;
};

}  // namespace basinwright::sequence
