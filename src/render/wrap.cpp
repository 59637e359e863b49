#include "wrap.hpp"

#include <algorithm>
#include <iterator>

#include "display_width.hpp"
#include "utf8.hpp"

namespace basinwright::render {
namespace {

/// A piece that stays together, and whether a space stood before it.
struct Word {
  std::string_view text;
  bool spaced = false;
};

constexpr std::string_view no_break_space = "\u00a0";
constexpr std::size_t least_beside_indentation = 8;

bool is_numeral(char32_t scalar) {
  return scalar >= U'0' && scalar <= U'9';
}

bool is_joint(char32_t scalar) {
  return scalar == U'_' || scalar == U'/' || scalar == U'.' || scalar == U':' || scalar == U'-';
}

/// Splits a text before each scalar for which `may_part(scalar before, scalar)` holds.
template <class MayPart>
std::vector<std::string_view> parted(std::string_view text, MayPart may_part) {
  std::vector<std::string_view> parts;
  std::size_t start = 0;
  char32_t before = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Scalar scalar = scalar_at(text, at);
    if (at > start && display_width(scalar.value) > 0 && may_part(before, scalar.value)) {
      parts.push_back(text.substr(start, at - start));
      start = at;
    }
    if (display_width(scalar.value) > 0) before = scalar.value;
    at += scalar.length;
  }
  if (start < text.size()) parts.push_back(text.substr(start));
  return parts;
}

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (true) {
    const std::size_t end = text.find('\n');
    lines.push_back(text.substr(0, end));
    if (end == std::string_view::npos || end + 1 == text.size()) return lines;
    text.remove_prefix(end + 1);
  }
}

std::vector<Word> words_of(std::string_view line) {
  const auto both_wide = [](char32_t before, char32_t scalar) {
    return display_width(before) == 2 && display_width(scalar) == 2;
  };
  std::vector<Word> words;
  for (std::size_t at = line.find_first_not_of(' '); at != std::string_view::npos;
       at = line.find_first_not_of(' ', at)) {
    const std::size_t end = std::min(line.find(' ', at), line.size());
    bool spaced = true;
    for (const std::string_view part : parted(line.substr(at, end - at), both_wide)) {
      words.push_back({part, spaced});
      spaced = false;
    }
    at = end;
  }
  return words;
}

std::vector<std::string_view> wholes_of(std::string_view word) {
  return parted(word, [](char32_t before, char32_t scalar) {
    return !is_numeral(before) && !is_numeral(scalar);
  });
}

// What a name or path is cut into where there is room: "half_", "mask_", "filters".
std::vector<std::string_view> limbs_of(std::string_view word) {
  return parted(word, [](char32_t before, char32_t scalar) {
    return is_joint(before) && !is_joint(scalar) && !is_numeral(scalar);
  });
}

/// Fills lines word by word.
class Filler {
 public:
  /// @param indentation what each line begins with; not part of the width
  Filler(std::size_t width, std::string_view indentation)
      : width_(width), indentation_(indentation) {}

  void add(const Word& word) {
    const std::size_t space = word.spaced && used_ > 0 ? 1 : 0;
    const std::size_t needed = display_width(word.text);
    if (used_ + space + needed <= width_) {
      put(word.text, space);
    } else if (needed <= width_) {
      end_line();
      put(word.text, 0);
    } else {
      add_cut(word.text);
    }
  }

  void end_line() {
    lines_.push_back(std::string(indentation_) + line_);
    line_.clear();
    used_ = 0;
  }

  [[nodiscard]] std::vector<std::string> take() { return std::move(lines_); }

 private:
  void add_cut(std::string_view word) {
    if (used_ > 0) end_line();
    for (const std::string_view limb : limbs_of(word)) {
      const bool fits = display_width(limb) <= width_;
      for (const std::string_view part : fits ? std::vector{limb} : wholes_of(limb)) {
        if (used_ > 0 && used_ + display_width(part) > width_) end_line();
        put(part, 0);
      }
    }
  }

  void put(std::string_view text, std::size_t space) {
    line_.append(space, ' ').append(text);
    used_ += space + display_width(text);
  }

  std::size_t width_;
  std::string_view indentation_;
  std::vector<std::string> lines_;
  std::string line_;
  std::size_t used_ = 0;
};

}  // namespace

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  for (const std::string_view line : lines_of(text)) {
    std::size_t blanks = indentation(line);
    if (blanks + least_beside_indentation > width) blanks = 0;
    const std::size_t bytes = blanks * no_break_space.size();
    Filler filler(width - blanks, line.substr(0, bytes));
    for (const Word& word : words_of(line.substr(bytes))) filler.add(word);
    filler.end_line();
    std::ranges::move(filler.take(), std::back_inserter(lines));
  }
  return lines;
}

std::size_t indentation(std::string_view line) {
  std::size_t blanks = 0;
  for (; line.starts_with(no_break_space); line.remove_prefix(no_break_space.size())) ++blanks;
  return blanks;
}

std::size_t widest_line(std::string_view text) {
  std::size_t width = 0;
  for (const std::string_view line : lines_of(text)) {
    std::size_t used = 0;
    for (const Word& word : words_of(line)) {
      used += display_width(word.text) + (word.spaced && used > 0 ? 1 : 0);
    }
    width = std::max(width, used);
  }
  return width;
}

std::size_t widest_word(std::string_view text) {
  std::size_t width = 0;
  for (const std::string_view line : lines_of(text)) {
    for (const Word& word : words_of(line)) width = std::max(width, display_width(word.text));
  }
  return width;
}

std::size_t widest_whole(std::string_view text) {
  std::size_t width = 0;
  for (const std::string_view line : lines_of(text)) {
    for (const Word& word : words_of(line)) {
      for (const std::string_view whole : wholes_of(word.text)) {
        width = std::max(width, display_width(whole));
      }
    }
  }
  return width;
}

std::size_t widest(const std::vector<std::string>& lines) {
  std::size_t width = 0;
  for (const std::string& line : lines) width = std::max(width, display_width(line));
  return width;
}

}  // namespace basinwright::render
