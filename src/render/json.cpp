#include "basinwright/render/json.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string_view>

#include "json_value.hpp"
#include "table_rows.hpp"
#include "utf8.hpp"

namespace basinwright::render {
namespace {

using document::Value;
using Json = nlohmann::ordered_json;

Json tree_of(const Value& value);

Json tree_of(std::nullptr_t) {
  return nullptr;
}
Json tree_of(bool yes) {
  return yes;
}
Json tree_of(std::int64_t number) {
  return number;
}
Json tree_of(const std::string& words) {
  return repaired(words);
}

Json tree_of(double number) {
  if (!std::isfinite(number)) throw std::logic_error("a number for JSON is not finite");
  return number;
}

Json tree_of(const document::Array& array) {
  Json tree = Json::array();
  for (const Value& item : array) tree.push_back(tree_of(item));
  return tree;
}

/// Adds a member; two objects merge, anything else that meets clashes.
void merge(Json& object, const std::string& key, Json value, const std::string& path) {
  const auto present = object.find(key);
  if (present == object.end()) {
    object[key] = std::move(value);
    return;
  }
  if (!present->is_object() || !value.is_object()) {
    throw std::logic_error("two values at the path \"" + path + "\"");
  }
  for (const auto& [name, member] : value.items()) {
    merge(*present, name, member, key_path(path, name));
  }
}

Json tree_of(const document::Object& object) {
  Json tree = Json::object();
  for (const auto& [key, value] : object) {
    const std::string name = repaired(key);
    if (tree.contains(name)) throw std::logic_error("the member \"" + name + "\" comes twice");
    tree[name] = tree_of(value);
  }
  return tree;
}

Json tree_of(const Value& value) {
  return std::visit([](const auto& data) { return tree_of(data); }, value.data());
}

/// Puts a value at a dotted path below the root.
void put_at(Json& root, const std::string& path, Json value) {
  Json* object = &root;
  std::size_t start = 0;
  while (true) {
    const std::size_t dot = std::min(path.find('.', start), path.size());
    const std::string part = repaired(path.substr(start, dot - start));
    if (part.empty()) throw std::logic_error("the path \"" + path + "\" has an empty part");
    if (dot == path.size()) return merge(*object, part, std::move(value), path);
    if (!object->contains(part)) (*object)[part] = Json::object();
    object = &(*object)[part];
    if (!object->is_object()) {
      throw std::logic_error("the path \"" + path + "\" leads through a value");
    }
    start = dot + 1;
  }
}

Json rows_of(const document::Table& table, const std::vector<std::size_t>& columns) {
  require_full_rows(table);
  Json rows = Json::array();
  for (const document::Row& row : table.rows) {
    if (!row.machine) continue;
    Json object = Json::object();
    for (const std::size_t i : columns) {
      const std::string& key = table.columns[i].key;
      merge(object, repaired(key), tree_of(row.cells[i].value), table.key + "[]." + key);
    }
    rows.push_back(std::move(object));
  }
  return rows;
}

/// Puts the keyed content of blocks below a section's key.
class Writer {
 public:
  Writer(Json& root, const std::string& section) : root_(root), section_(section) {}

  void operator()(const document::Paragraph& paragraph) const {
    if (!paragraph.key.empty()) at(paragraph.key, tree_of(paragraph.value));
  }

  void operator()(const document::Facts& facts) const {
    for (const document::Fact& fact : facts.facts) {
      if (!fact.key.empty()) at(fact.key, tree_of(fact.cell.value));
    }
  }

  void operator()(const document::Table& table) const {
    const std::vector<std::size_t> columns = keyed_columns(table);
    const bool placed = !section_.empty() || !table.key.empty();
    if (placed && !columns.empty()) at(table.key, rows_of(table, columns));
  }

  void operator()(const document::List&) const {}

  void operator()(const document::Drawing&) const {}

 private:
  void at(const std::string& key, Json value) const {
    put_at(root_, key_path(section_, key), std::move(value));
  }

  Json& root_;
  const std::string& section_;
};

/// A value on one line without a tree of it, since a batch writes one for each job.
class LineWriter {
 public:
  explicit LineWriter(std::string& out) : out_(out) {}

  void write(const Value& value) {
    std::visit([this](const auto& data) { put(data); }, value.data());
  }

 private:
  void put(std::nullptr_t) { out_ += "null"; }
  void put(bool yes) { out_ += yes ? "true" : "false"; }
  void put(std::int64_t number) { out_ += std::to_string(number); }
  void put(double number) { out_ += tree_of(number).dump(); }
  void put(const std::string& words) {
    constexpr char quote = '\x22', escape = '\x5c';
    const auto plain = [](char c) { return c >= ' ' && c <= '~' && c != quote && c != escape; };
    if (std::ranges::all_of(words, plain)) {
      out_ += quote;
      out_ += words;
      out_ += quote;
    } else {
      out_ += tree_of(words).dump();
    }
  }
  void put(const document::Array& array) {
    char before = '[';
    for (const Value& item : array) {
      out_ += before;
      write(item);
      before = ',';
    }
    out_ += array.empty() ? "[]" : "]";
  }
  void put(const document::Object& object) {
    char before = '{';
    for (auto member = object.begin(); member != object.end(); ++member) {
      const auto same = [&](const auto& other) { return other.first == member->first; };
      if (std::any_of(object.begin(), member, same))
        throw std::logic_error("the member \"" + member->first + "\" comes twice");
      out_ += before;
      put(member->first);
      out_ += ':';
      write(member->second);
      before = ',';
    }
    out_ += object.empty() ? "{}" : "}";
  }

  std::string& out_;
};

}  // namespace

std::string json_line(const Value& value) {
  std::string out;
  LineWriter(out).write(value);
  return out;
}

std::string json(const document::Document& document) {
  Json root = Json::object();
  for (const document::Section& section : document.sections) {
    const Writer writer(root, section.key);
    for (const document::Block& block : section.blocks) std::visit(writer, block);
  }
  return root.dump(2) + '\n';
}

}  // namespace basinwright::render
