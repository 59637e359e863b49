// Comma-separated values row by row (RFC 4180), each cell with its place.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "node.hpp"

namespace basinwright::readers {

/// A cell without its quotes and, when it had none, without the blanks round it.
struct CsvCell {
  std::string_view text;
  Span at;  ///< With the quotes.
};

/// A row with more cells than this ends with one more; the rest of its line is passed over.
inline constexpr std::size_t most_cells = 256;

/// Goes through a text row by row. Lines end with LF or CRLF; empty lines are passed over.
class CsvRows {
 public:
  CsvRows(std::string_view bytes, std::size_t begin) : bytes_(bytes), at_(begin) {}

  /// Moves to the next row; false at the end of the text.
  bool next();
  /// Passes over a line as it is, quotes and all.
  void skip_line();
  /// Of the present row; the texts live until the next call of `next`.
  [[nodiscard]] const std::vector<CsvCell>& cells() const { return cells_; }
  [[nodiscard]] Span row() const { return {row_begin_, at_end_of_row_}; }
  /// A quotation mark of the present row that is never closed or stands where none may.
  [[nodiscard]] std::optional<Span> bad_quote() const { return bad_quote_; }

 private:
  void read_cell();
  void read_bare();
  void read_quoted();
  void end_row();
  [[nodiscard]] bool is_at_line_end() const;

  std::string_view bytes_;
  std::size_t at_;
  std::size_t row_begin_ = 0;
  std::size_t at_end_of_row_ = 0;
  std::vector<CsvCell> cells_;
  std::deque<std::string> unescaped_;
  std::optional<Span> bad_quote_;
};

}  // namespace basinwright::readers
