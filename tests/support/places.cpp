#include "support/places.hpp"

namespace places {
std::string source() {
  return BASINWRIGHT_SOURCE_DIR;
}
std::string binary() {
  return BASINWRIGHT_BINARY_DIR;
}
std::string compiler() {
  return BASINWRIGHT_CXX;
}
}  // namespace places
