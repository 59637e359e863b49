#include <map>
#include <set>
#include <string>
#include <string_view>
#include <variant>

#include "basinwright/units/parse.hpp"
#include "support/catch.hpp"
#include "units/names.hpp"

using namespace basinwright::units;

namespace {

constexpr Kind every_kind[] = {
    Kind::length, Kind::area, Kind::volume, Kind::mass, Kind::duration, Kind::degree, Kind::share};

template <class Visit>
void for_each_spelling(Visit visit) {
  for (const Kind kind : every_kind) {
    for (const UnitName& name : names_of(kind)) {
      std::string_view rest = name.spellings;
      while (!rest.empty()) {
        const std::size_t bar = rest.find('|');
        visit(kind, name, rest.substr(0, bar));
        rest.remove_prefix(bar == std::string_view::npos ? rest.size() : bar + 1);
      }
    }
  }
}

}  // namespace

TEST_CASE("no spelling stands twice in the tables, blanks and capitals aside") {
  std::set<std::string> seen;
  for_each_spelling([&](Kind, const UnitName&, std::string_view spelling) {
    const bool strict = spelling.starts_with('=');
    std::string key;
    for (const char c : spelling.substr(strict ? 1 : 0)) {
      if (c != ' ') key += c >= 'A' && c <= 'Z' && !strict ? static_cast<char>(c + 32) : c;
    }
    INFO(spelling);
    CHECK(seen.insert(key).second);
  });
  CHECK(seen.size() > 150);
}

TEST_CASE("every spelling is found whole and means its own unit") {
  for_each_spelling([](Kind kind, const UnitName& name, std::string_view spelling) {
    if (spelling.starts_with('=')) spelling.remove_prefix(1);
    for (const std::string& after : {std::string(), std::string(" 5"), std::string("/x")}) {
      INFO(spelling << after);
      const NameMatch match = match_name(std::string(spelling) + after, kind, Case::as_listed);
      CHECK(match.name == &name);
      CHECK(match.length == spelling.size());
    }
  });
}

TEST_CASE("every symbol is one of its own spellings") {
  for (const Kind kind : every_kind) {
    for (const UnitName& name : names_of(kind)) {
      INFO(name.symbol);
      CHECK(match_name(name.symbol, kind, Case::as_listed).name == &name);
    }
  }
}
