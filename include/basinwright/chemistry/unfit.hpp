// Why a figure cannot be used, in words for the person who gave it.
#pragma once

#include <string>
#include <variant>

namespace basinwright::chemistry {

/// The reason a given value is refused: one plain sentence without a full stop.
struct Unfit {
  std::string reason;
};

/// A result, or the reason there is none.
template <class T>
using Checked = std::variant<T, Unfit>;

}  // namespace basinwright::chemistry
