// How much room words take on a sheet, and finding it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/document/drawing.hpp"

namespace basinwright::report {

using document::Spot;

/// An upright rectangle on the sheet.
struct Box {
  double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;
  [[nodiscard]] double width() const { return right - left; }
  [[nodiscard]] double height() const { return bottom - top; }
  [[nodiscard]] Spot middle() const { return {0.5 * (left + right), 0.5 * (top + bottom)}; }
  [[nodiscard]] bool holds(Spot s) const {
    return s.x > left && s.x < right && s.y > top && s.y < bottom;
  }
  [[nodiscard]] bool meets(const Box& o) const {
    return left < o.right && o.left < right && top < o.bottom && o.top < bottom;
  }
  [[nodiscard]] bool within(const Box& o) const {
    return left >= o.left && right <= o.right && top >= o.top && bottom <= o.bottom;
  }
  [[nodiscard]] Box grown(double by) const {
    return {left - by, top - by, right + by, bottom + by};
  }
};
[[nodiscard]] Box box_round(Spot middle, double width, double height);

/// How much wider bold letters run.
inline constexpr double heavier = 1.13;

/// Width of a line of text in a wide sans-serif face; narrower faces leave room over.
[[nodiscard]] double text_width(std::string_view text, double size, bool bold = false);

/// The letters' height above and below the base line, as shares of the size.
inline constexpr double ascent = 0.76;
inline constexpr double descent = 0.24;

/// The room a label takes.
[[nodiscard]] Box box_of(const document::Label& label);

/// The label that fills the middle of a box.
[[nodiscard]] document::Label centred(std::string text, Spot middle, double size);

/// The text, cut short with an ellipsis where it is wider than the room.
[[nodiscard]] std::string fitted(const std::string& text, double size, double room);

/// The text in lines no wider than the room, broken at spaces; a longer word is cut short.
[[nodiscard]] std::vector<std::string> broken(const std::string& text, double size, double room);

/// Places on the sheet, in squares so that those in a box are found without asking all.
class Places {
 public:
  Places() : squares_(side * side) {}
  void add(Spot place);
  [[nodiscard]] int count(const Box& box) const;

 private:
  static constexpr std::size_t side = 64;
  std::vector<std::vector<Spot>> squares_;
};

/// What is taken on the sheet. Labels may not meet one another nor hard places (walls), and cover
/// as few soft places (lines that may be crossed) as they can.
class Taken {
 public:
  void take(const Box& box) { boxes_.push_back(box); }
  void hard(Spot place) { hard_.add(place); }
  void soft(Spot place) { soft_.add(place); }
  /// Where labels may stand at all.
  void bounds(const Box& box) { bounds_ = box; }

  [[nodiscard]] bool free(const Box& box) const;
  /// Whether a hard place lies in the box.
  [[nodiscard]] bool strikes(const Box& box) const { return hard_.count(box) > 0; }
  /// How many soft places lie in it.
  [[nodiscard]] int covered(const Box& box) const { return soft_.count(box); }
  /// The free candidate that covers least, the earlier of equals; nothing when none is free.
  [[nodiscard]] std::optional<std::size_t> best(const std::vector<Box>& candidates) const;

 private:
  std::vector<Box> boxes_;
  Places hard_;
  Places soft_;
  Box bounds_{-1e9, -1e9, 1e9, 1e9};
};

}  // namespace basinwright::report
