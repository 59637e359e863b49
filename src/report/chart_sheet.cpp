#include "chart_sheet.hpp"

#include <algorithm>
#include <utility>

#include "drawing_geometry.hpp"

namespace basinwright::report {
namespace {

using document::Label;
using document::Shape;

constexpr double chart_margin = 11.0;
constexpr double names = 40.0;  ///< Room for the names at the left.

// ISO 216 and the North American letter sheet, lying across.
Box chart_page(document::Paper paper) {
  return paper == document::Paper::letter ? Box{0.0, 0.0, 279.4, 215.9}
                                          : Box{0.0, 0.0, 297.0, 210.0};
}

}  // namespace

ChartSheet::ChartSheet(document::Paper paper, dates::Date first, std::size_t days)
    : page_(chart_page(paper)), content_(page_.grown(-chart_margin)), first_(first) {
  left_ = content_.left + names;
  day_width_ = (content_.right - left_) / static_cast<double>(std::max<std::size_t>(days, 1));
}

double ChartSheet::at(dates::Moment moment) const {
  constexpr double quarters = 4.0;
  const auto day = static_cast<std::size_t>((moment.date() - first_).count());
  return at(day, moment.quarter() / quarters);
}

double ChartSheet::at(std::size_t day, double hours) const {
  constexpr double a_day = 24.0;
  return left_ + day_width_ * (static_cast<double>(day) + hours / a_day);
}

void ChartSheet::box(Extent across, Extent down, document::Fill fill, std::string_view name) {
  Shape shape;
  shape.name = std::string(name);
  shape.trails = {polygon({{across.from, down.from},
                           {across.to, down.from},
                           {across.to, down.to},
                           {across.from, down.to}})};
  shape.fill = fill;
  areas_.emplace_back(std::move(shape));
}

void ChartSheet::line(Spot from, Spot to, document::Pen pen, std::string_view name) {
  Shape shape;
  shape.name = std::string(name);
  shape.trails = {segment(from, to)};
  shape.pen = pen;
  lines_.emplace_back(std::move(shape));
}

void ChartSheet::curve(const std::vector<Spot>& spots, document::Pen pen, std::string_view name) {
  if (spots.size() < 2) return;
  Shape shape;
  shape.name = std::string(name);
  Trail trail{spots.front(), {}, false};
  for (std::size_t i = 1; i < spots.size(); ++i) trail.legs.push_back({spots[i]});
  shape.trails = {std::move(trail)};
  shape.pen = pen;
  lines_.emplace_back(std::move(shape));
}

void ChartSheet::write(std::string text, Spot at, double size, document::Anchor anchor, bool bold) {
  Label label;
  label.text = std::move(text);
  label.at = at;
  label.size = size;
  label.anchor = anchor;
  label.bold = bold;
  words_.emplace_back(std::move(label));
}

void ChartSheet::write_over(std::string text, Spot at, double size, document::Anchor anchor) {
  Label label;
  label.text = std::move(text);
  label.at = at;
  label.size = size;
  label.anchor = anchor;
  if (label.text.empty()) return;
  const Box behind = box_of(label);
  Shape paper;
  paper.name = "paper";
  paper.trails = {polygon({{behind.left, behind.top},
                           {behind.right, behind.top},
                           {behind.right, behind.bottom},
                           {behind.left, behind.bottom}})};
  paper.fill = document::Fill::paper;
  words_.emplace_back(std::move(paper));
  words_.emplace_back(std::move(label));
}

document::Drawing ChartSheet::finished(std::string title, std::string description) const {
  document::Drawing drawing;
  drawing.title = std::move(title);
  drawing.description = std::move(description);
  drawing.width = page_.width();
  drawing.height = page_.height();
  for (const auto* marks : {&areas_, &lines_, &words_})
    drawing.marks.insert(drawing.marks.end(), marks->begin(), marks->end());
  return drawing;
}

}  // namespace basinwright::report
