// JSON as a tree that knows where each value stands in its file.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/diagnostics/diagnostic.hpp"

namespace basinwright::readers {

/// A text file in memory, with the starts of its lines.
class SourceText {
 public:
  SourceText(std::string file, std::string bytes);
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  /// The place of the bytes [begin, end), columns in Unicode scalars.
  [[nodiscard]] diagnostics::Position at(std::size_t begin, std::size_t end) const;

 private:
  std::string file_;
  std::string bytes_;
  std::vector<std::size_t> line_starts_;
};

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

  [[nodiscard]] const Node* find(std::string_view key) const;
};

struct Member {
  std::string key;
  std::size_t key_begin = 0;
  std::size_t key_end = 0;
  Node value;
};

/// What a file may hold at most; more is refused rather than risked.
struct JsonLimits {
  std::size_t bytes = 16U << 20U;
  std::size_t depth = 64;
  std::size_t text = 64U << 10U;
  std::size_t number = 64;
};

/// Parses strict JSON (RFC 8259; a byte order mark is allowed). Syntax errors, repeated keys and
/// breaches of the limits go to `problems`.
/// @return true when the tree is whole (it may still have repeated keys, the last one dropped)
[[nodiscard]] bool parse_json(const SourceText& source,
                              Node& root,
                              diagnostics::Problems& problems,
                              const JsonLimits& limits = {});

/// "a text", "a number", "a list" ... for messages.
[[nodiscard]] std::string_view words(Node::Kind kind);

}  // namespace basinwright::readers
