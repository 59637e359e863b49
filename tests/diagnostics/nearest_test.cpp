#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "diagnostics/edits.hpp"
#include "support/catch.hpp"

using namespace basinwright::diagnostics;

TEST_CASE("edit distances of the textbooks") {
  // Levenshtein's usual worked example; Wagner and Fischer 1974 (from memory).
  CHECK(edits("kitten", "sitting") == 3);
  CHECK(edits("saturday", "sunday") == 3);
  // The usual example that tells the swap of neighbours without further edits (3) from the
  // unrestricted one (2); Damerau 1964 counts a swap as one slip (from memory).
  CHECK(edits("ca", "abc") == 3);
  CHECK(edits("teh", "the") == 1);
  CHECK(edits("", "pool") == 4);
  CHECK(edits("POOL", "pool") == 0);
  CHECK(edits("\xC3\xA4", "a") == 1);
}

TEST_CASE("edit distance is a distance") {
  std::mt19937 random(11);
  const auto word = [&random] {
    std::string out;
    for (std::size_t i = random() % 7; i > 0; --i) out += static_cast<char>('a' + random() % 3);
    return out;
  };
  for (int round = 0; round < 3000; ++round) {
    const std::string a = word();
    const std::string b = word();
    REQUIRE(edits(a, b) == edits(b, a));
    REQUIRE((edits(a, b) == 0) == (a == b));
    REQUIRE(edits(a, b) <= std::max(a.size(), b.size()));
    REQUIRE(edits("x" + a, "x" + b) == edits(a, b));
  }
}

TEST_CASE("the nearest known word is found for a slip of the finger") {
  const std::vector<std::string_view> known{"jobsheet", "quote", "takeoff", "checklist", "check"};
  CHECK(nearest("qoute", known) == "quote");
  CHECK(nearest("jobshet", known) == "jobsheet");
  CHECK(nearest("Chekc", known) == "check");
  CHECK(nearest("takeof", known) == "takeoff");
}

TEST_CASE("nothing is suggested beyond a third of the word, and the earlier wins a tie") {
  CHECK(nearest("abcdef", {"abxyef"}) == "abxyef");
  CHECK(nearest("abcdef", {"axyzef"}).empty());
  CHECK(nearest("ab", {"xb"}) == "xb");
  CHECK(nearest("ab", {"xy"}).empty());
  CHECK(nearest("pool", {"fool", "tool"}) == "fool");
  CHECK(nearest("pool", {"tool", "pool"}) == "pool");
  CHECK(nearest("pool", {}).empty());
}
