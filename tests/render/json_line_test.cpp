// One value on one line, held against what a general library (nlohmann::json) writes of the tree it
// reads from it, and against the value itself.
#include "basinwright/render/json.hpp"

#include <limits>
#include <nlohmann/json.hpp>
#include <random>
#include <stdexcept>

#include "support/catch.hpp"

using basinwright::document::Array;
using basinwright::document::Object;
using basinwright::document::Value;
using basinwright::render::json_line;
using Tree = nlohmann::ordered_json;

namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}

  std::string words() {
    static const std::vector<std::string> pieces{"pool",
                                                 " ",
                                                 "\"",
                                                 "\\",
                                                 "/",
                                                 "\x7f",
                                                 "\n",
                                                 "\t",
                                                 "\x01",
                                                 "\u00e9",
                                                 "\u20ac",
                                                 "~",
                                                 "<",
                                                 "7"};
    std::string out;
    for (std::size_t i = below(6); i > 0; --i) out += pieces[below(pieces.size())];
    return out;
  }
  Value value(int depth) {
    switch (below(depth > 0 ? 7 : 5)) {
      case 0:
        return nullptr;
      case 1:
        return below(2) == 0;
      case 2:
        return static_cast<std::int64_t>(engine_()) - 2'000'000'000;
      case 3:
        return static_cast<double>(engine_()) / 977.0 * (below(2) == 0 ? 1e-9 : -1e9);
      case 4:
        return words();
      case 5: {
        Array array;
        for (std::size_t i = below(4); i > 0; --i) array.push_back(value(depth - 1));
        return array;
      }
      default: {
        Object object;
        for (std::size_t i = below(4); i > 0; --i)
          object.emplace_back(words() + std::to_string(i), value(depth - 1));
        return object;
      }
    }
  }

 private:
  std::size_t below(std::size_t n) { return engine_() % n; }
  std::mt19937 engine_;
};

Value value_of(const Tree& tree) {
  if (tree.is_null()) return nullptr;
  if (tree.is_boolean()) return tree.get<bool>();
  if (tree.is_number_integer()) return tree.get<std::int64_t>();
  if (tree.is_number()) return tree.get<double>();
  if (tree.is_string()) return tree.get<std::string>();
  if (tree.is_array()) {
    Array array;
    for (const Tree& item : tree) array.push_back(value_of(item));
    return array;
  }
  Object object;
  for (const auto& [key, item] : tree.items()) object.emplace_back(key, value_of(item));
  return object;
}

}  // namespace

TEST_CASE("a value on a line is read back as it was, and written as a library writes it") {
  Dice dice(11);
  for (int i = 0; i < 3000; ++i) {
    const Value value = dice.value(3);
    const std::string line = json_line(value);
    INFO(line);
    REQUIRE(line.find('\n') == std::string::npos);
    const Tree tree = Tree::parse(line);
    REQUIRE(value_of(tree) == value);
    REQUIRE(tree.dump() == line);
  }
}

TEST_CASE("what JSON cannot hold is no line") {
  CHECK_THROWS_AS(json_line(std::numeric_limits<double>::infinity()), std::logic_error);
  CHECK_THROWS_AS(json_line(Object{{"a", 1}, {"b", 2}, {"a", 3}}), std::logic_error);
  // Bytes that are no UTF-8 are replaced, by Unicode's rule (chapter 3, "maximal subpart").
  CHECK(json_line("a\xff") == "\"a\xEF\xBF\xBD\"");
}
