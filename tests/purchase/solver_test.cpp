// Outside source: the integer-programming solver of GLPK (Debian's glpk-utils) on random purchases,
// through solver.py; skipped, and says so, where it is absent. A deep run asks for more cases:
// BASINWRIGHT_ORACLE_CASES.
#include <sstream>
#include <string>
#include <vector>

#include "basinwright/purchase/packs.hpp"
#include "support/catch.hpp"
#include "units/outside.hpp"

using namespace basinwright;
using purchase::Pack;
using purchase::Request;

namespace {

struct Case {
  Request request;
  std::vector<Pack> packs;
  std::string expected;
};

std::vector<std::string> parts_of(const std::string& text, char separator) {
  std::vector<std::string> parts;
  std::istringstream stream(text);
  for (std::string part; std::getline(stream, part, separator);) parts.push_back(part);
  return parts;
}

Case read(const std::string& line) {
  Case out;
  const std::size_t bar = line.find(" | ");
  const std::size_t equals = line.find(" = ");
  out.expected = line.substr(equals + 3);
  std::istringstream head(line.substr(0, bar));
  std::string mode;
  head >> mode;
  for (std::int64_t need = 0; head >> need;) out.request.needs.push_back(need);
  // Kits of one batch for several coats are the trade's own case.
  out.request.apart = mode != "pooled";
  out.request.one_batch = mode == "batch";
  for (const std::string& text : parts_of(line.substr(bar + 3, equals - bar - 3), ' ')) {
    const auto fields = parts_of(text, ':');
    Pack pack;
    pack.id = fields.at(0);
    pack.size = std::stoll(fields.at(1));
    pack.price = money::Money::of_minor(std::stoll(fields.at(2)));
    if (fields.at(3) != "-") pack.stock = std::stoll(fields.at(3));
    if (fields.at(4) != "-") pack.batch = fields.at(4);
    out.packs.push_back(pack);
  }
  return out;
}

std::string ours(const Case& c) {
  const auto basket = purchase::cheapest(c.request, c.packs);
  if (!basket) return "none";
  return std::to_string(basket->cost.minor()) + " " + std::to_string(basket->size) + " " +
         std::to_string(basket->packs);
}

}  // namespace

TEST_CASE("the cheapest packs agree with an integer-programming solver") {
  if (!outside::has_python() || !outside::present("glpsol --version", "glpsol (glpk-utils)"))
    return;
  const std::string cases = outside::cases("100");
  const auto lines = outside::python_lines("purchase/solver.py", cases);
  REQUIRE(lines.has_value());
  REQUIRE(lines->size() == std::stoul(cases));
  std::size_t none = 0;
  for (const std::string& line : *lines) {
    INFO(line);
    const Case c = read(line);
    REQUIRE(ours(c) == c.expected);
    if (c.expected == "none") ++none;
  }
  CHECK(none > 0);
  CHECK(none < lines->size() / 2);
}
