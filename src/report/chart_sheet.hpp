// A sheet lying across with days along it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/document/drawing.hpp"
#include "drawing_labels.hpp"

namespace basinwright::report {

/// From one time to another, or one height to another.
struct Extent {
  double from = 0.0, to = 0.0;
};

class ChartSheet {
 public:
  ChartSheet(document::Paper paper, dates::Date first, std::size_t days);

  [[nodiscard]] const Box& content() const { return content_; }
  [[nodiscard]] double left() const { return left_; }
  [[nodiscard]] double day_width() const { return day_width_; }
  /// Where a moment lies; hours are shares of their day.
  [[nodiscard]] double at(dates::Moment moment) const;
  [[nodiscard]] double at(std::size_t day, double hours) const;

  void box(Extent across, Extent down, document::Fill fill, std::string_view name);
  void line(Spot from, Spot to, document::Pen pen, std::string_view name);
  void curve(const std::vector<Spot>& spots, document::Pen pen, std::string_view name);
  void write(std::string text,
             Spot at,
             double size,
             document::Anchor anchor = document::Anchor::start,
             bool bold = false);
  /// Over lines, with paper behind the words.
  void write_over(std::string text, Spot at, double size, document::Anchor anchor);

  [[nodiscard]] document::Drawing finished(std::string title, std::string description) const;

 private:
  Box page_, content_;
  double left_ = 0.0, day_width_ = 0.0;
  dates::Date first_;
  std::vector<document::Mark> areas_, lines_, words_;
};

}  // namespace basinwright::report
