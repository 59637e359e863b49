// Bytes by key in a room that never grows, held against a plain map.
#include "sequence/recent.hpp"

#include <fmt/format.h>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "support/catch.hpp"

using namespace basinwright;

namespace {

std::string_view last(const sequence::Recent& recent, const std::string& key) {
  return recent.find(key, [](std::string_view) { return true; });
}

}  // namespace

TEST_CASE("what was put last under a key is found, or nothing is") {
  for (const std::size_t room :
       {std::size_t{0}, std::size_t{100}, std::size_t{1000}, std::size_t{1} << 20U}) {
    sequence::Recent recent(room);
    std::map<std::string, std::string> all;
    std::mt19937 dice(3);
    std::size_t found = 0;
    for (int i = 0; i < 4000; ++i) {
      const std::string key = fmt::format("key {}", dice() % 200);
      if (dice() % 3 == 0) {
        const std::string value(dice() % 60, static_cast<char>('a' + dice() % 26));
        recent.put(key, value);
        all[key] = value;
      } else if (const std::string_view here = last(recent, key); !here.empty()) {
        REQUIRE(here == all[key]);
        ++found;
      } else if (room > 100'000) {
        REQUIRE(all[key].empty());
      }
    }
    CHECK((found > 0) == (room > 0));
  }
}

TEST_CASE("what was put first gives way first") {
  // Each takes 16 bytes of its own, 5 of key and 19 of value.
  constexpr std::size_t each = 40;
  sequence::Recent recent(10 * each);
  for (int i = 0; i < 25; ++i) recent.put(fmt::format("{:05}", i), std::string(19, 'x'));
  for (int i = 0; i < 25; ++i) {
    INFO(i);
    CHECK(last(recent, fmt::format("{:05}", i)).empty() == (i < 15));
  }
  recent.put("large", std::string(1000, 'x'));
  CHECK(last(recent, "large").empty());
  CHECK(!last(recent, "00024").empty());
}

TEST_CASE("a key has many values, of which the last that is wanted is found") {
  sequence::Recent recent(1000);
  for (const char* value : {"one", "two", "three", "four"}) recent.put("key", value);
  recent.put("other", "five");
  const auto of_size = [&](std::size_t size) {
    return recent.find("key", [size](std::string_view value) { return value.size() == size; });
  };
  CHECK(of_size(3) == "two");
  CHECK(of_size(5) == "three");
  CHECK(of_size(6).empty());
  CHECK(last(recent, "key") == "four");
}
