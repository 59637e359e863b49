// Where functions begin and end, by their braces.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "code.hpp"

namespace architecture {

struct Function {
  std::size_t line = 0;   ///< Of its first word.
  std::size_t lines = 0;  ///< To its closing brace, both counted.
};

/// Walks through braces; a brace opened at namespace or class scope after something with
/// parentheses opens a function.
class FunctionScan {
 public:
  explicit FunctionScan(std::string_view text) : code_(code_only(text)) {}

  std::vector<Function> functions() {
    for (at_ = 0; at_ < code_.size(); ++at_) {
      const char byte = code_[at_];
      if (byte == '\n') ++line_;
      if (byte == '#' && blank_so_far()) {
        skip_directive();
      } else if (byte == '{') {
        open();
      } else if (byte == '}') {
        close();
      } else if (byte == ';' && at_scope()) {
        restart();
      } else if (at_scope()) {
        read(byte);
      }
    }
    return functions_;
  }

 private:
  enum class Brace { scope, function, other };

  struct Open {
    Brace kind = Brace::other;
    std::size_t line = 0;
  };

  [[nodiscard]] bool at_scope() const { return open_.empty() || open_.back().kind == Brace::scope; }

  [[nodiscard]] bool blank_so_far() const {
    const std::size_t start = code_.rfind('\n', at_);
    const std::size_t first =
        code_.find_first_not_of(" \t\n", start == std::string::npos ? 0 : start);
    return first == at_;
  }

  void skip_directive() {
    while (at_ + 1 < code_.size() && (code_[at_ + 1] != '\n' || code_[at_] == '\\')) {
      if (code_[++at_] == '\n') ++line_;
    }
  }

  void read(char byte) {
    if (head_.empty() && (byte == ' ' || byte == '\n')) return;
    if (head_.empty()) head_line_ = line_;
    head_ += byte == '\n' ? ' ' : byte;
    if (head_ == "public:" || head_ == "protected:" || head_ == "private:") restart();
  }

  void restart() { head_.clear(); }

  void open() {
    open_.push_back({at_scope() ? kind_of_head() : Brace::other, head_line_});
    if (open_.back().kind == Brace::scope) restart();
  }

  void close() {
    if (open_.empty()) return;
    const Open closed = open_.back();
    open_.pop_back();
    if (closed.kind == Brace::function)
      functions_.push_back({closed.line, line_ - closed.line + 1});
    if (closed.kind != Brace::other) restart();
  }

  /// What a brace after the words read so far opens.
  [[nodiscard]] Brace kind_of_head() const {
    static const std::set<std::string> scopes = {
        "namespace", "class", "struct", "union", "enum", "extern"};
    const std::string words = without_template(head_);
    std::string word;
    for (const char byte : words + ' ') {
      if (is_name(byte)) {
        word += byte;
        continue;
      }
      if (scopes.contains(word)) return Brace::scope;
      if (byte == '(') break;
      word.clear();
    }
    const std::size_t last = words.find_last_not_of(' ');
    const bool value = last != std::string::npos &&
                       std::string_view("=,(<").find(words[last]) != std::string_view::npos;
    return words.find('(') != std::string::npos && !value ? Brace::function : Brace::other;
  }

  /// The words after any `template <...>`, whose `class` opens nothing.
  static std::string without_template(std::string words) {
    while (true) {
      const std::size_t at = words.find("template");
      const std::size_t open = words.find('<', at);
      if (at == std::string::npos || open == std::string::npos) return words;
      std::size_t end = open;
      for (int depth = 0; end < words.size(); ++end) {
        depth += words[end] == '<' ? 1 : 0;
        depth -= words[end] == '>' ? 1 : 0;
        if (depth == 0) break;
      }
      words.erase(at, end + 1 - at);
    }
  }

  std::string code_;
  std::size_t at_ = 0;
  std::size_t line_ = 1;
  std::string head_;
  std::size_t head_line_ = 1;
  std::vector<Open> open_;
  std::vector<Function> functions_;
};

inline std::vector<Function> functions_of(std::string_view text) {
  return FunctionScan(text).functions();
}

}  // namespace architecture
