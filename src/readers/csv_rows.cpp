#include "csv_rows.hpp"

#include <algorithm>

namespace basinwright::readers {
namespace {

bool is_blank(char c) {
  return c == ' ' || c == '\t';
}

std::string halved_quotes(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    out += text[i];
    if (text[i] == '"') ++i;
  }
  return out;
}

}  // namespace

bool CsvRows::is_at_line_end() const {
  if (at_ >= bytes_.size() || bytes_[at_] == '\n') return true;
  return bytes_[at_] == '\r' && (at_ + 1 == bytes_.size() || bytes_[at_ + 1] == '\n');
}

void CsvRows::end_row() {
  at_end_of_row_ = at_;
  if (at_ < bytes_.size() && bytes_[at_] == '\r') ++at_;
  if (at_ < bytes_.size()) ++at_;
}

void CsvRows::skip_line() {
  at_ = std::min(bytes_.find('\n', at_), bytes_.size());
  if (at_ < bytes_.size()) ++at_;
}

bool CsvRows::next() {
  cells_.clear();
  unescaped_.clear();
  bad_quote_.reset();
  while (at_ < bytes_.size() && is_at_line_end()) end_row();
  if (at_ >= bytes_.size()) return false;
  row_begin_ = at_;
  read_cell();
  while (at_ < bytes_.size() && bytes_[at_] == ',' && cells_.size() <= most_cells) {
    ++at_;
    read_cell();
  }
  while (!is_at_line_end()) ++at_;
  end_row();
  return true;
}

void CsvRows::read_cell() {
  std::size_t first = at_;
  while (first < bytes_.size() && is_blank(bytes_[first])) ++first;
  if (first < bytes_.size() && bytes_[first] == '"') {
    at_ = first;
    read_quoted();
  } else {
    read_bare();
  }
}

void CsvRows::read_bare() {
  const std::size_t begin = at_;
  while (!is_at_line_end() && bytes_[at_] != ',') {
    if (bytes_[at_] == '"' && !bad_quote_) bad_quote_ = Span{at_, at_ + 1};
    ++at_;
  }
  std::size_t first = begin;
  std::size_t last = at_;
  while (first < last && is_blank(bytes_[first])) ++first;
  while (last > first && is_blank(bytes_[last - 1])) --last;
  // An empty cell is shown by the comma after it.
  cells_.push_back({bytes_.substr(first, last - first), {first, std::max(last, first + 1)}});
}

void CsvRows::read_quoted() {
  const std::size_t open = at_++;
  bool doubled = false;
  std::size_t close = bytes_.find('"', at_);
  while (close != std::string_view::npos && close + 1 < bytes_.size() && bytes_[close + 1] == '"') {
    doubled = true;
    close = bytes_.find('"', close + 2);
  }
  if (close == std::string_view::npos) {
    if (!bad_quote_) bad_quote_ = Span{open, open + 1};
    cells_.push_back({bytes_.substr(at_), {open, bytes_.size()}});
    at_ = bytes_.size();
    return;
  }
  std::string_view text = bytes_.substr(at_, close - at_);
  if (doubled) text = unescaped_.emplace_back(halved_quotes(text));
  at_ = close + 1;
  cells_.push_back({text, {open, at_}});
  while (at_ < bytes_.size() && is_blank(bytes_[at_])) ++at_;
  const std::size_t after = at_;
  while (!is_at_line_end() && bytes_[at_] != ',') ++at_;
  if (at_ > after && !bad_quote_) bad_quote_ = Span{after, at_};
}

}  // namespace basinwright::readers
