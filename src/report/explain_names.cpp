// What the numbers of a page are called: by people, and by who asks for one.
#include <algorithm>
#include <array>
#include <map>
#include <string_view>

#include "explain_tree.hpp"

namespace basinwright::report {
namespace {

using document::Document;

std::string path_to(const std::string& a, const std::string& b) {
  return a.empty() || b.empty() ? a + b : a + "." + b;
}

// "roller_cover": what a row is called, as a part of a key.
std::string part_of_key(std::string_view words) {
  std::string out;
  for (const char c : words) {
    const bool upper = c >= 'A' && c <= 'Z';
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (upper || plain) {
      out += upper ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!out.empty() && out.back() != '_') {
      out += '_';
    }
  }
  while (!out.empty() && out.back() == '_') out.pop_back();
  return out;
}

// A page's tables name their rows in the first such column; what tells rows of one name apart
// follows it.
bool is_name(std::string_view key) {
  constexpr std::array names{
      "item", "task", "what", "step", "event", "wash", "name", "water", "if", "supplier"};
  return std::ranges::find(names, key) != names.end();
}
bool tells_apart(std::string_view key) {
  constexpr std::array more{"use", "section", "where", "vessel", "method", "body"};
  return std::ranges::find(more, key) != more.end();
}

struct RowName {
  std::string alias, words;
  bool named = false;
};
RowName row_name(const document::Table& table, const document::Row& row) {
  RowName name;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const auto* text = std::get_if<std::string>(&row.cells[c].value.data());
    const std::string& key = table.columns[c].key;
    const bool first = is_name(key) && !name.named;
    if (text == nullptr || (!first && !tells_apart(key))) continue;
    const std::string part = part_of_key(*text);
    if (part.empty()) continue;
    name.named = name.named || first;
    name.alias += (name.alias.empty() ? "" : "_") + part;
    name.words +=
        (name.words.empty() ? "" : ", ") + (row.cells[c].text.empty() ? *text : row.cells[c].text);
  }
  // A bare number would be taken for the row's place.
  if (std::ranges::all_of(name.alias, [](char c) { return c >= '0' && c <= '9'; }))
    name.alias.clear();
  return name;
}

class Caller {
 public:
  std::vector<Called> call(const Document& page) {
    for (const document::Section& section : page.sections) {
      if (section.folded) continue;
      for (const document::Block& block : section.blocks) {
        if (const auto* facts = std::get_if<document::Facts>(&block)) {
          for (const document::Fact& fact : facts->facts) {
            if (!fact.key.empty())
              add(path_to(section.key, fact.key),
                  "",
                  fact.label.empty() ? fact.key : fact.label,
                  fact.cell.value,
                  fact.shown);
          }
        } else if (const auto* table = std::get_if<document::Table>(&block)) {
          rows(path_to(section.key, table->key), *table);
        } else if (const auto* text = std::get_if<document::Paragraph>(&block)) {
          if (!text->key.empty())
            add(path_to(section.key, text->key), "", text->key, text->value, false);
        }
      }
    }
    return std::move(out_);
  }

 private:
  void rows(const std::string& key, const document::Table& table) {
    std::size_t number = 0;
    std::map<std::string, int> seen;
    for (const document::Row& row : table.rows) {
      if (!row.machine) continue;
      RowName name = row_name(table, row);
      // Rows of one name are told apart by their turn.
      if (!name.alias.empty()) {
        const int turn = ++seen[name.alias];
        if (turn > 1) name.alias += "_" + std::to_string(turn);
      }
      for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const document::Column& column = table.columns[c];
        if (column.key.empty()) continue;
        const std::string alias =
            name.alias.empty() ? "" : key + "." + name.alias + "." + column.key;
        const std::string& title = column.title.empty() ? column.key : column.title;
        add(key + "." + std::to_string(number) + "." + column.key,
            alias,
            name.words.empty() ? title : name.words + ": " + title,
            row.cells[c].value,
            table.shown && column.shown);
      }
      ++number;
    }
  }

  // Lists and objects inside a value have their numbers below its key.
  void add(const std::string& key,
           const std::string& alias,
           const std::string& words,
           const Value& value,
           bool shown) {
    const auto below = [&](const std::string& part, const Value& member) {
      add(key + "." + part,
          alias.empty() ? "" : alias + "." + part,
          words + ", " + part,
          member,
          shown);
    };
    if (const auto* array = std::get_if<document::Array>(&value.data())) {
      for (std::size_t i = 0; i < array->size(); ++i) below(std::to_string(i), (*array)[i]);
    } else if (const auto* object = std::get_if<document::Object>(&value.data())) {
      for (const auto& [name, member] : *object) below(name, member);
    } else if (!value.is_null()) {
      out_.push_back({key, alias, words, shown});
    }
  }

  std::vector<Called> out_;
};

}  // namespace

std::vector<Called> numbers_of(const Document& page) {
  return Caller().call(page);
}

}  // namespace basinwright::report
