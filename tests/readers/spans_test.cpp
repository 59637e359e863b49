// Where each value stands: the bytes of every node and key, parsed alone by an outside library
// (nlohmann-json), give the value back; lines and columns are counted again byte by byte.
#include "random_json.hpp"
#include "reading.hpp"

using namespace reading;

namespace {

struct Count {
  int values = 0;
  int keys = 0;
};

json span_value(const Node& node) {
  switch (node.kind) {
    case Node::Kind::null:
      return nullptr;
    case Node::Kind::boolean:
      return node.truth;
    case Node::Kind::number:
      return json::parse(node.text);
    case Node::Kind::text:
      return node.text;
    case Node::Kind::list: {
      json out = json::array();
      for (const Node& item : node.items) out.push_back(span_value(item));
      return out;
    }
    case Node::Kind::object: {
      json out = json::object();
      for (const readers::Member& m : node.members) out[m.key] = span_value(m.value);
      return out;
    }
  }
  return {};
}

// Line and column of a byte, from the start of the text: a lead byte says how long its scalar is.
std::pair<std::size_t, std::size_t> counted(const std::string& text, std::size_t offset) {
  std::size_t line = 1;
  std::size_t column = 1;
  std::size_t i = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  while (i < offset) {
    const auto lead = static_cast<unsigned char>(text[i]);
    i += lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    ++column;
    if (lead == '\n') {
      ++line;
      column = 1;
    }
  }
  return {line, column};
}

void check_place(const Tree& tree, std::size_t begin, std::size_t end) {
  const std::string& text = tree.source.bytes();
  const auto at = tree.source.at(begin, end);
  const auto [line, column] = counted(text, begin);
  const auto [last_line, last_column] = counted(text, end);
  if (at.line == line && at.column == column && at.file == "test.json") {
    if (last_line != line || at.width == last_column - column) return;
  }
  INFO("byte " << begin << " of " << text);
  CHECK(at.line == line);
  CHECK(at.column == column);
  CHECK(at.width == last_column - column);
}

void check_node(const Tree& tree, const Node& node, Count& count) {
  const std::string bytes = tree.source.bytes().substr(node.begin, node.end - node.begin);
  const json alone = json::parse(bytes, nullptr, false);
  ++count.values;
  if (alone != span_value(node)) {
    INFO(bytes);
    CHECK(alone == span_value(node));
  }
  check_place(tree, node.begin, node.end);
  for (const Node& item : node.items) check_node(tree, item, count);
  for (const readers::Member& m : node.members) {
    const std::string key = tree.source.bytes().substr(m.key_begin, m.key_end - m.key_begin);
    ++count.keys;
    if (json::parse(key, nullptr, false) != json(m.key)) {
      INFO(key);
      CHECK(json::parse(key, nullptr, false) == json(m.key));
    }
    check_place(tree, m.key_begin, m.key_end);
    check_node(tree, m.value, count);
  }
}

Count check_text(const std::string& text) {
  const Tree tree(text);
  INFO(text);
  Count count;
  REQUIRE(tree.whole);
  check_node(tree, tree.root, count);
  return count;
}

}  // namespace

TEST_CASE("every span of generated texts gives its value back") {
  Count all;
  random_json::Generator generator(20270501);
  for (int i = 0; i < 600; ++i) {
    const Count one = check_text(generator.text());
    all.values += one.values;
    all.keys += one.keys;
  }
  CHECK(all.values > 5'000);
  CHECK(all.keys > 1'000);
}

TEST_CASE("spans of texts that are awkward to cut") {
  for (const std::string text : {"\xEF\xBB\xBF{\"a\":1}",
                                 "\xEF\xBB\xBF[\r\n\t\"\xC3\xA9\",\r\n\t\"\xF0\x9F\x8F\x8A\" ]\r\n",
                                 R"({"a:b":",:,","c,d":"\"]}","e":[",",":",{":":","}]})",
                                 R"(["\\","\\\"","\u0022",""])",
                                 "[-0,0.0,1E+2,1e-2,-1.5e3]",
                                 "\"\"",
                                 "0",
                                 " \t\r\n null \t\r\n ",
                                 "[[],{},[{}],{\"\":[]}]",
                                 "{\"\":0,\"\\u0000\":1,\"\\uD83C\\uDFCA\":2}"}) {
    check_text(text);
  }
}

TEST_CASE("columns past the first blocks of a long line") {
  // Two scalars of three and four bytes, so that blocks of bytes cut through some of them.
  std::string text = "[";
  for (int i = 0; i < 1000; ++i)
    text += (i == 0 ? "\"" : ",\"") + std::string("\xE2\x82\xAC\xF0\x9F\x8F\x8A\"");
  check_text(text + "]");
}

TEST_CASE("an underline ends with its line") {
  const Tree tree("{\r\n  \"a\": [\r\n    1\r\n  ]\r\n}");
  const Node& list = *tree.root.find("a");
  const auto at = tree.source.at(list.begin, list.end);
  CHECK(at.line == 2);
  CHECK(at.column == 8);
  CHECK(at.width == 1);
  CHECK(tree.source.at(0, tree.source.bytes().size()).width == 1);
}
