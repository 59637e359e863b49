#include "basinwright/render/csv.hpp"

#include <algorithm>
#include <stdexcept>

#include "csv_cell.hpp"
#include "table_rows.hpp"
#include "utf8.hpp"

namespace basinwright::render {
namespace {

using document::Document;
using document::Row;
using document::Table;

struct NamedTable {
  std::string path;
  const Table* table = nullptr;
};

/// The tables that machines can name, in the order of the page.
std::vector<NamedTable> named_tables(const Document& document) {
  std::vector<NamedTable> tables;
  for (const document::Section& section : document.sections) {
    for (const document::Block& block : section.blocks) {
      const auto* const table = std::get_if<Table>(&block);
      if (table == nullptr || keyed_columns(*table).empty()) continue;
      std::string path = key_path(section.key, table->key);
      if (!path.empty()) tables.push_back({std::move(path), table});
    }
  }
  return tables;
}

bool has_rows(const Table& table) {
  return std::ranges::any_of(table.rows, &Row::machine);
}

std::string record(const std::vector<std::string>& fields) {
  // A single empty field would be an empty line, which readers skip.
  if (fields.size() == 1 && fields.front().empty()) return "\"\"\r\n";
  std::string line;
  for (const std::string& field : fields) {
    if (&field != &fields.front()) line += ',';
    line += quoted(field);
  }
  return line += "\r\n";
}

std::string block(const Table& table) {
  require_full_rows(table);
  const std::vector<std::size_t> columns = keyed_columns(table);
  std::vector<std::string> fields;
  fields.reserve(columns.size());
  for (const std::size_t i : columns) fields.push_back(guarded(repaired(table.columns[i].key)));
  std::string lines = record(fields);
  for (const Row& row : table.rows) {
    if (!row.machine) continue;
    fields.clear();
    for (const std::size_t i : columns) fields.push_back(csv_field(row.cells[i].value));
    lines += record(fields);
  }
  return lines;
}

}  // namespace

std::vector<std::string> csv_tables(const Document& document) {
  std::vector<std::string> keys;
  for (const NamedTable& placed : named_tables(document)) {
    if (has_rows(*placed.table)) keys.push_back(placed.path);
  }
  return keys;
}

std::string csv(const Document& document, std::string_view table_key) {
  for (const NamedTable& placed : named_tables(document)) {
    if (placed.path == table_key) return block(*placed.table);
  }
  throw std::logic_error("no table \"" + std::string(table_key) + "\" for CSV");
}

std::string csv(const Document& document) {
  std::string lines;
  for (const NamedTable& placed : named_tables(document)) {
    if (!has_rows(*placed.table)) continue;
    if (!lines.empty()) lines += "\r\n";
    lines += block(*placed.table);
  }
  return lines;
}

}  // namespace basinwright::render
