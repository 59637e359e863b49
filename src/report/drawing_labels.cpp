#include "drawing_labels.hpp"

#include <algorithm>

namespace basinwright::report {
namespace {

using document::Anchor;
using document::Label;

constexpr std::string_view ellipsis = "\u2026";

/// Share of the size that a letter is wide, of the widest sans-serif faces in common use.
double advance(unsigned char c) {
  constexpr std::string_view slim = "iljI.,:;'| /\\-";
  constexpr std::string_view brackets = "!()[]tfr\"";
  constexpr std::string_view wide = "wMOQGD%+=<>~^#&";
  constexpr std::string_view widest = "mW@%";
  const auto in = [c](std::string_view set) {
    return set.find(static_cast<char>(c)) != std::string_view::npos;
  };
  if (in(widest)) return 1.0;
  if (in(wide)) return 0.87;
  if (in(slim)) return 0.365;
  if (in(brackets)) return 0.46;
  return c >= 'A' && c <= 'Z' ? 0.76 : 0.64;
}

/// Which of so many squares of five millimetres; what lies off the sheet counts to the last.
std::size_t square_of(double position, std::size_t squares) {
  constexpr double millimetres = 5.0;
  const double last = static_cast<double>(squares - 1);
  return static_cast<std::size_t>(std::clamp(position / millimetres, 0.0, last));
}

bool continues(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

/// Of a character of several bytes. Controls and marks that turn the line round are spelled out.
double advance_of_many(std::string_view bytes) {
  const auto at = [&bytes](std::size_t i) {
    return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U;
  };
  if (at(0) == 0xC2 && at(1) < 0xA0) return 4.0 * advance('x');
  if (at(0) == 0xC2 && at(1) == 0xA0) return advance(' ');
  const bool line = at(1) == 0x80 && at(2) >= 0xA8 && at(2) <= 0xAE;
  const bool isolate = at(1) == 0x81 && at(2) >= 0xA6 && at(2) <= 0xA9;
  if (at(0) == 0xE2 && (line || isolate)) return 6.0 * advance('x');
  return at(0) >= 0xF0 ? 1.3 : 1.05;
}

}  // namespace

Box box_round(Spot middle, double width, double height) {
  return {middle.x - 0.5 * width,
          middle.y - 0.5 * height,
          middle.x + 0.5 * width,
          middle.y + 0.5 * height};
}

double text_width(std::string_view text, double size, bool bold) {
  double width = 0.0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if (byte < 0x20 || byte == 0x7F) {
      width += 4.0 * advance('x');  // shown as \xNN
    } else if (byte < 0x80) {
      width += advance(byte);
    } else if (!continues(text[i])) {
      width += advance_of_many(text.substr(i));
    }
  }
  return width * size * (bold ? heavier : 1.0);
}

Box box_of(const Label& label) {
  const double width = text_width(label.text, label.size, label.bold);
  double start = 0.0;
  if (label.anchor == Anchor::middle) start = 0.5 * width;
  if (label.anchor == Anchor::end) start = width;
  const double up = ascent * label.size;
  const double down = descent * label.size;
  if (label.upwards) {
    return {label.at.x - up, label.at.y + start - width, label.at.x + down, label.at.y + start};
  }
  return {label.at.x - start, label.at.y - up, label.at.x - start + width, label.at.y + down};
}

Label centred(std::string text, Spot middle, double size) {
  Label label;
  label.text = std::move(text);
  label.size = size;
  label.at = {middle.x, middle.y + 0.5 * (ascent - descent) * size};
  label.anchor = Anchor::middle;
  return label;
}

std::string fitted(const std::string& text, double size, double room) {
  if (text_width(text, size) <= room) return text;
  std::string cut = text;
  while (!cut.empty() && text_width(cut, size) + text_width(ellipsis, size) > room) {
    while (cut.size() > 1 && continues(cut.back())) cut.pop_back();
    cut.pop_back();
  }
  return cut + std::string(ellipsis);
}

std::vector<std::string> broken(const std::string& text, double size, double room) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    const double width = text_width(line, size) + text_width(" ", size) + text_width(word, size);
    if (line.empty()) {
      line = word;
    } else if (width <= room) {
      line.append(1, ' ').append(word);
    } else {
      lines.push_back(fitted(line, size, room));
      line = word;
    }
    at = end + 1;
  }
  if (!line.empty()) lines.push_back(fitted(line, size, room));
  return lines;
}

void Places::add(Spot place) {
  squares_[square_of(place.y, side) * side + square_of(place.x, side)].push_back(place);
}

int Places::count(const Box& box) const {
  std::ptrdiff_t found = 0;
  for (std::size_t y = square_of(box.top, side); y <= square_of(box.bottom, side); ++y) {
    for (std::size_t x = square_of(box.left, side); x <= square_of(box.right, side); ++x) {
      found += std::ranges::count_if(squares_[y * side + x],
                                     [&box](Spot place) { return box.holds(place); });
    }
  }
  return static_cast<int>(found);
}

bool Taken::free(const Box& box) const {
  return box.within(bounds_) &&
         std::ranges::none_of(boxes_, [&box](const Box& other) { return box.meets(other); }) &&
         !strikes(box);
}

std::optional<std::size_t> Taken::best(const std::vector<Box>& candidates) const {
  std::optional<std::size_t> found;
  int least = 0;
  for (std::size_t i = 0; i < candidates.size(); ++i) {
    if (!free(candidates[i])) continue;
    const int here = covered(candidates[i]);
    if (found && here >= least) continue;
    found = i;
    least = here;
    if (least == 0) break;
  }
  return found;
}

}  // namespace basinwright::report
