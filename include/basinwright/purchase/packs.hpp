// The cheapest whole packs for a need, exactly.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/money/money.hpp"
#include "basinwright/trace/trace.hpp"

namespace basinwright::purchase {

/// A pack on sale. Sizes are whole millilitres, grams or pieces: the same for all packs of an item.
struct Pack {
  std::string id;
  std::int64_t size = 0;
  money::Money price;
  std::optional<std::int64_t> stock;  ///< Nothing: as many as wanted.
  std::string batch;                  ///< Empty: any.
  std::string supplier;
};

struct Request {
  std::vector<std::int64_t> needs;  ///< One need, or one for each coat when `apart`.
  bool apart = false;      ///< Each need is covered on its own (mixed kits cannot be kept).
  bool one_batch = false;  ///< All packs from one batch.
};

struct Choice {
  std::size_t pack = 0;  ///< Index into the packs given.
  std::int64_t count = 0;
};

/// What to buy: packs with their counts (size descending, id ascending), cost, what they hold.
struct Basket {
  std::vector<Choice> choices;
  money::Money cost;
  std::int64_t size = 0;
  std::int64_t packs = 0;
  std::vector<std::vector<Choice>> by_need;  ///< What each need takes; one entry when pooled.
  std::string batch;                         ///< The batch chosen for `one_batch`; empty: any.
};

/// The basket that covers the request: least cost, then least waste, then fewest packs, then the
/// most of the larger packs; nothing when the stock does not reach. Dynamic programming over whole
/// units of the sizes' greatest common divisor. Needs that are not `apart` are pooled. With
/// `one_batch`, batches are compared by cost, waste and packs, ties to the smallest name; a pack
/// without a batch joins any.
/// @throws std::invalid_argument for a size that is not positive or a negative price or stock
/// @throws std::length_error when needs divided by that divisor, times packs, exceed 2^26
[[nodiscard]] std::optional<Basket> cheapest(const Request& request,
                                             const std::vector<Pack>& packs);

/// Whether `cheapest` takes a need of that size from these packs whatever step they have in common,
/// so that it throws for neither this need nor a smaller one.
[[nodiscard]] bool takes_surely(std::int64_t need, const std::vector<Pack>& packs);

}  // namespace basinwright::purchase
