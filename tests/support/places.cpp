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
int some_of(int all) {
  return BASINWRIGHT_SLOW_BUILD != 0 ? (all + 4) / 5 : all;
}
}  // namespace places
