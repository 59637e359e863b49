#include "cells.hpp"

namespace basinwright::report {

std::string grouped(std::string_view text) {
  constexpr std::size_t group = 3;
  const std::size_t first = !text.empty() && text.front() == '-' ? 1 : 0;
  const std::size_t end = std::min(text.find_first_not_of("0123456789", first), text.size());
  std::string out(text.substr(0, first));
  for (std::size_t i = first; i < end; ++i) {
    if (i > first && (end - i) % group == 0) out += ',';
    out += text[i];
  }
  return out.append(text.substr(end));
}

}  // namespace basinwright::report
