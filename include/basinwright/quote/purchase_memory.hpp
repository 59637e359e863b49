// Purchases found before, for many jobs one after the other.
#pragma once

#include <cstddef>
#include <mutex>
#include <string>
#include <unordered_map>
#include <vector>

#include "basinwright/quote/purchases.hpp"

namespace basinwright::quote {

/// Remembers what was bought for a need from packs. May be asked by several threads at once; what
/// it answers never depends on what it remembers.
class PurchaseMemory {
 public:
  /// @param most purchases held at once; about 1 kB each
  explicit PurchaseMemory(std::size_t most = 2000) : most_(most) {}

  /// What `quote::buy` returns.
  [[nodiscard]] Purchase buy(const Need& need,
                             const std::vector<purchase::Pack>& packs,
                             money::Rounding rounding);
  [[nodiscard]] std::size_t held() const { return found_.size(); }

 private:
  std::size_t most_;
  std::mutex lock_;
  std::unordered_map<std::string, Purchase> found_;
};

}  // namespace basinwright::quote
