// What is wrong, or doubtful, about a measured pool.
#pragma once

#include <string>

namespace basinwright::shell {

/// Why a pool cannot be taken off. `code` is a plain word or words (`self-intersection`,
/// `depth-not-below-band`); `where` is a JSON Pointer below the pool object ("/outline/width").
struct Fault {
  std::string code;
  std::string where;
  std::string message;
  std::string hint;
  bool warning = false;
};

}  // namespace basinwright::shell
