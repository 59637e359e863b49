// JSON as a tree that knows where each value stands in its file.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "codes.hpp"

namespace basinwright::readers {

/// The bytes [begin, end).
struct Span {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// A text file in memory, with the starts of its lines.
class SourceText {
 public:
  SourceText(std::string file, std::string bytes);
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  /// The place of the bytes [begin, end), columns in Unicode scalars. The underline ends with the
  /// line.
  [[nodiscard]] diagnostics::Position at(std::size_t begin, std::size_t end) const;

 private:
  [[nodiscard]] std::size_t scalars_before(std::size_t offset) const;

  std::string file_;
  std::string bytes_;
  std::vector<std::size_t> line_starts_;
  std::vector<std::size_t> scalars_;  ///< Before each block of bytes: long lines stay cheap.
};

/// One problem about to be told.
struct Complaint {
  Code code;
  Span at;
  std::string pointer = {};
  std::string message = {};
  std::string hint = {};
  std::optional<Span> other = {};  ///< What it clashes with.
  diagnostics::Severity severity = diagnostics::Severity::error;
};

/// A file with more problems than this is another kind of file; the rest is left unsaid.
inline constexpr std::size_t most_problems = 1000;

/// Adds the problem in its place, or says once that there are too many.
void tell(const SourceText& source, diagnostics::Problems& problems, Complaint complaint);

struct Member;

/// One JSON value with its byte span.
struct Node {
  enum class Kind { null, boolean, number, text, list, object };
  Kind kind = Kind::null;
  bool truth = false;
  std::string text;  ///< Decoded string, or the number exactly as written.
  std::vector<Node> items;
  std::vector<Member> members;
  std::size_t begin = 0;
  std::size_t end = 0;

  /// The first member of that name.
  [[nodiscard]] const Node* find(std::string_view key) const;
  [[nodiscard]] Span span() const { return {begin, end}; }
};

struct Member {
  std::string key;
  std::size_t key_begin = 0;
  std::size_t key_end = 0;
  Node value;

  [[nodiscard]] Span key_span() const { return {key_begin, key_end}; }
};

/// What a file may hold at most; more is refused rather than risked.
struct JsonLimits {
  std::size_t bytes = 16U << 20U;
  std::size_t depth = 64;
  std::size_t text = 64U << 10U;
  std::size_t number = 64;
  std::size_t items = 10'000;      ///< In one list or object.
  std::size_t values = 4'000'000;  ///< In all.
};

/// Parses strict JSON (RFC 8259; a byte order mark is allowed). Syntax errors, repeated keys and
/// breaches of the limits go to `problems`.
/// @return true when the tree is whole (it may still have repeated keys, of which the first counts)
[[nodiscard]] bool parse_json(const SourceText& source,
                              Node& root,
                              diagnostics::Problems& problems,
                              const JsonLimits& limits = {});

/// "a text", "a number", "a list" ... for messages.
[[nodiscard]] std::string_view words(Node::Kind kind);

/// The node at a JSON Pointer; nothing when there is none.
[[nodiscard]] const Node* node_at(const Node& root, std::string_view pointer);

/// The node at a JSON Pointer, or the nearest one above it.
[[nodiscard]] const Node& nearest_node(const Node& root, std::string_view pointer);

}  // namespace basinwright::readers
