// Purchases found before, for many jobs one after the other.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <mutex>
#include <string>
#include <unordered_map>
#include <vector>

#include "basinwright/quote/purchases.hpp"

namespace basinwright::quote {

/// Remembers what was bought for a need from packs, and for which amounts that serves. May be asked
/// by several threads at once; what it answers never depends on what it remembers.
class PurchaseMemory {
 public:
  /// @param most purchases held at once; about 1 kB each
  explicit PurchaseMemory(std::size_t most = 2000) : most_(most) {}

  /// What `quote::buy` returns.
  [[nodiscard]] Purchase buy(const Need& need,
                             const std::vector<purchase::Pack>& packs,
                             money::Rounding rounding);
  [[nodiscard]] std::size_t held() const { return held_; }

 private:
  /// For amounts of at least this.
  struct Known {
    std::int64_t from = 0;
    Purchase bought;
  };

  std::size_t most_;
  std::size_t held_ = 0;
  std::mutex lock_;
  /// By all but the amount, then by the largest amount that it serves.
  std::unordered_map<std::string, std::map<std::int64_t, Known>> found_;
};

}  // namespace basinwright::quote
