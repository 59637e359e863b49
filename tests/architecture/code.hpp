// C++ without what only people read, line by line as it was.
#pragma once

#include <cctype>
#include <string>
#include <string_view>

namespace architecture {

/// Whether a byte can stand in a name.
inline bool is_name(char byte) {
  return std::isalnum(static_cast<unsigned char>(byte)) != 0 || byte == '_';
}

enum class Literals { kept, blanked };

/// Blanks comments, and the insides of literals if asked; line breaks stay where they are.
class Stripper {
 public:
  Stripper(std::string_view code, Literals literals) : code_(code), literals_(literals) {}

  std::string stripped() {
    while (at_ < code_.size()) {
      if (ahead("//")) {
        blank_to(std::min(code_.find('\n', at_), code_.size()));
      } else if (ahead("/*")) {
        blank_to(after(code_.find("*/", at_ + 2), 2));
      } else if (code_[at_] == '"' && !result_.empty() && result_.back() == 'R') {
        raw_string();
      } else if (code_[at_] == '"' || (code_[at_] == '\'' && !in_number())) {
        literal(code_[at_]);
      } else {
        result_ += code_[at_++];
      }
    }
    return result_;
  }

 private:
  [[nodiscard]] bool ahead(std::string_view words) const {
    return code_.substr(at_).starts_with(words);
  }

  [[nodiscard]] std::size_t after(std::size_t found, std::size_t length) const {
    return found == std::string_view::npos ? code_.size() : std::min(found + length, code_.size());
  }

  void blank_to(std::size_t end) {
    for (; at_ < end; ++at_) result_ += code_[at_] == '\n' ? '\n' : ' ';
  }

  void pass_to(std::size_t end) {
    if (literals_ == Literals::blanked) return blank_to(end);
    for (; at_ < end; ++at_) result_ += code_[at_];
  }

  /// An apostrophe between digits: the word it stands in began with one.
  [[nodiscard]] bool in_number() const {
    std::size_t start = at_;
    while (start > 0 && (is_name(code_[start - 1]) || code_[start - 1] == '\'')) --start;
    return start < at_ && std::isdigit(static_cast<unsigned char>(code_[start])) != 0;
  }

  void literal(char quote) {
    result_ += code_[at_++];
    std::size_t end = at_;
    while (end < code_.size() && code_[end] != quote && code_[end] != '\n') {
      end += code_[end] == '\\' ? 2U : 1U;
    }
    pass_to(std::min(end, code_.size()));
    if (at_ < code_.size() && code_[at_] == quote) result_ += code_[at_++];
  }

  void raw_string() {
    const std::size_t open = code_.find('(', at_);
    const std::string close = ")" + std::string(code_.substr(at_ + 1, open - at_ - 1)) + "\"";
    pass_to(after(code_.find(close, at_), close.size()));
  }

  std::string_view code_;
  Literals literals_;
  std::size_t at_ = 0;
  std::string result_;
};

inline std::string code_only(std::string_view code, Literals literals = Literals::blanked) {
  return Stripper(code, literals).stripped();
}

}  // namespace architecture
