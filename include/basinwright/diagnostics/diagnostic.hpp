// What is wrong with an input, where, why, and what to write instead.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace basinwright::diagnostics {

enum class Severity { error, warning, note };

/// A place in a text file. Lines and columns count from 1; a column is a Unicode scalar, a tab
/// counts as one. Line 0 = the file as a whole.
struct Position {
  std::string file;
  std::size_t line = 0;
  std::size_t column = 0;
  std::size_t width = 1;  ///< Scalars to underline.
};

/// One problem. `code` is one or more plain words joined by hyphens (`shell-depth`).
struct Diagnostic {
  std::string code;
  Severity severity = Severity::error;
  Position at;
  std::string pointer;  ///< JSON Pointer (RFC 6901) of the value; may be empty.
  std::string message;
  std::string hint;
  std::vector<Position> also;  ///< Other places that clash with this one.
};

/// Problems as they are found; sorted by place when shown.
class Problems {
 public:
  void add(Diagnostic diagnostic);
  void append(const Problems& other);
  [[nodiscard]] bool has_errors() const;
  [[nodiscard]] bool has_warnings() const;
  [[nodiscard]] bool empty() const { return all_.empty(); }
  [[nodiscard]] std::size_t size() const { return all_.size(); }
  [[nodiscard]] const std::vector<Diagnostic>& all() const { return all_; }
  /// In order of file, line, column; as found among equals.
  [[nodiscard]] std::vector<Diagnostic> sorted() const;

 private:
  std::vector<Diagnostic> all_;
};

/// "error", "warning", "note".
[[nodiscard]] std::string_view name(Severity severity);

/// The diagnostic as `file:line:column: severity[code]: message`, then the line of `text` it stands
/// in with a caret under the value, then the hint. Control bytes show as \xNN, a long line as a
/// window round the caret, and clashing places follow as `see also`. Every line ends with a
/// newline. `text` is the whole file; empty when it could not be read. A byte order mark at its
/// start is no column.
[[nodiscard]] std::string underlined(const Diagnostic& diagnostic, std::string_view text);

/// The nearest of `known` to a mistyped `word`: fewest edits, at most a third of its length (but
/// one always), ties to the earlier; empty when none is near.
[[nodiscard]] std::string_view nearest(std::string_view word,
                                       const std::vector<std::string_view>& known);

}  // namespace basinwright::diagnostics
