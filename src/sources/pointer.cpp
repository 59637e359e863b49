#include "basinwright/sources/pointer.hpp"

namespace basinwright::sources {

std::string pointer_part(std::string_view name) {
  if (name.find_first_of("~/") == std::string_view::npos) return std::string(name);
  std::string out;
  for (const char c : name) {
    if (c == '~') {
      out += "~0";
    } else if (c == '/') {
      out += "~1";
    } else {
      out += c;
    }
  }
  return out;
}

}  // namespace basinwright::sources
