// A sheet being drawn on: lines below, words above, and what is taken.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/document/drawing.hpp"
#include "basinwright/units/parse.hpp"
#include "drawing_geometry.hpp"
#include "drawing_labels.hpp"

namespace basinwright::report {

namespace pens {
inline constexpr document::Pen rim{0.5};
inline constexpr document::Pen edge{0.25};
inline constexpr document::Pen cut{0.35};
inline constexpr document::Pen fine{0.13};
inline constexpr document::Pen broken{0.25, document::Dash::dashed};
inline constexpr document::Pen chain{0.18, document::Dash::chain};
inline constexpr document::Pen water{0.18, document::Dash::dotted};
}  // namespace pens

/// Sizes of letters.
namespace letters {
inline constexpr double title = 5.0;
inline constexpr double text = 2.7;
inline constexpr double label = 2.5;
inline constexpr double small = 2.2;
}  // namespace letters

/// Words over lines need paper behind them.
enum class Behind { nothing, paper };

class Sheet {
 public:
  explicit Sheet(document::Paper paper);

  [[nodiscard]] const Box& page() const { return page_; }
  /// The page less its margins.
  [[nodiscard]] const Box& content() const { return content_; }
  [[nodiscard]] Taken& taken() { return taken_; }

  void draw(document::Shape shape) { lines_.emplace_back(std::move(shape)); }
  void line(Spot from, Spot to, document::Pen pen, std::string_view name = "");
  /// Keeps labels off a straight line where they can be.
  void soften(Spot from, Spot to);
  /// A small closed figure among the words.
  void mark(Trail trail, std::string_view name);
  /// Clears the lines under a box.
  void blank(const Box& box);
  /// Puts words down and takes their room.
  void write(document::Label label, Behind behind = Behind::nothing);
  void write(std::string text, Spot at, double size);

  /// Everything drawn, lines first.
  [[nodiscard]] document::Drawing finished(std::string title, std::string description) const;

 private:
  Box page_;
  Box content_;
  Taken taken_;
  std::vector<document::Mark> lines_;
  std::vector<document::Mark> words_;
};

/// A measured stretch along a line of dimensions.
struct Measure {
  double from = 0.0;
  double to = 0.0;
  std::string text;
};

/// Dimensions along a level line at `y`, carried there from `from_y`.
void dimensions_across(Sheet& sheet, const std::vector<Measure>& chain, double y, double from_y);
/// One dimension along an upright line at `x`, carried there from `from_x`.
void dimension_up(Sheet& sheet, const Measure& measure, double x, double from_x);

/// A bar of a round length with its numbers; `scale` is millimetres on the sheet for a metre.
/// @return the bar's right end
double scale_bar(Sheet& sheet, Spot at, double scale, units::System system);

}  // namespace basinwright::report
