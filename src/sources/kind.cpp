#include "basinwright/sources/source.hpp"

namespace basinwright::sources {

std::string_view name(Kind kind) {
  switch (kind) {
    case Kind::published:
      return "published";
    case Kind::common_practice:
      return "common practice";
    case Kind::from_memory:
      return "from memory";
    case Kind::assumed:
      return "assumed";
    case Kind::data_sheet:
      return "data sheet";
    case Kind::given:
      return "given";
  }
  return "";
}

}  // namespace basinwright::sources
