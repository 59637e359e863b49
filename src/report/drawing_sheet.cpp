#include "drawing_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/units/show.hpp"
#include "wording/drawing.hpp"

namespace basinwright::report {
namespace {

using document::Label;
using document::Paper;
using document::Pen;
using document::Shape;

constexpr double drawing_margin = 10.0;

// ISO 216 and the North American letter sheet, upright.
Box drawing_page(Paper paper) {
  return paper == Paper::letter ? Box{0.0, 0.0, 215.9, 279.4} : Box{0.0, 0.0, 210.0, 297.0};
}

/// A short stroke across the end of a dimension.
void tick(Sheet& sheet, Spot at) {
  constexpr double reach = 0.9;
  sheet.line({at.x - reach, at.y + reach}, {at.x + reach, at.y - reach}, pens::edge, "tick");
}

}  // namespace

Sheet::Sheet(Paper paper) : page_(drawing_page(paper)), content_(page_.grown(-drawing_margin)) {
  taken_.bounds(content_);
}

void Sheet::line(Spot from, Spot to, Pen pen, std::string_view name) {
  Shape shape;
  shape.name = std::string(name);
  shape.trails = {segment(from, to)};
  shape.pen = pen;
  draw(std::move(shape));
}

void Sheet::soften(Spot from, Spot to) {
  constexpr double apart = 0.5;
  const int count = 1 + static_cast<int>(std::hypot(to.x - from.x, to.y - from.y) / apart);
  for (int i = 0; i <= count; ++i) {
    const double share = static_cast<double>(i) / count;
    taken_.soft({from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)});
  }
}

void Sheet::mark(Trail trail, std::string_view name) {
  Shape shape;
  shape.name = std::string(name);
  shape.trails = {std::move(trail)};
  shape.pen = pens::fine;
  shape.fill = document::Fill::paper;
  words_.emplace_back(std::move(shape));
}

void Sheet::blank(const Box& b) {
  Shape paper;
  paper.trails = {
      polygon({{b.left, b.top}, {b.right, b.top}, {b.right, b.bottom}, {b.left, b.bottom}})};
  paper.fill = document::Fill::paper;
  words_.emplace_back(std::move(paper));
}

void Sheet::write(Label label, Behind behind) {
  const Box box = box_of(label);
  taken_.take(box);
  if (behind == Behind::paper) blank(box.grown(0.2));
  words_.emplace_back(std::move(label));
}

void Sheet::write(std::string text, Spot at, double size) {
  Label label;
  label.text = std::move(text);
  label.at = at;
  label.size = size;
  write(std::move(label));
}

document::Drawing Sheet::finished(std::string title, std::string description) const {
  document::Drawing drawing{
      std::move(title), std::move(description), page_.width(), page_.height(), lines_};
  drawing.marks.insert(drawing.marks.end(), words_.begin(), words_.end());
  return drawing;
}

void dimensions_across(Sheet& sheet, const std::vector<Measure>& chain, double y, double from_y) {
  const auto stop = [&](double x) {
    sheet.line({x, from_y}, {x, y}, pens::fine, "extension");
    sheet.soften({x, from_y}, {x, y});
    tick(sheet, {x, y});
  };
  for (const Measure& m : chain) {
    if (&m == &chain.front()) stop(m.from);
    sheet.line({m.from, y}, {m.to, y}, pens::fine, "dimension");
    sheet.soften({m.from, y}, {m.to, y});
    stop(m.to);
  }
  constexpr double apart = 1.0;
  constexpr double half = 0.5 * letters::label;
  for (const Measure& m : chain) {
    std::vector<Label> ways;
    std::vector<Box> boxes;
    for (const double row : {-half - 0.7, half + 1.1}) {
      ways.push_back(centred(m.text, {0.5 * (m.from + m.to), y + row}, letters::label));
      ways.back().name = "dimension";
      boxes.push_back(box_of(ways.back()));
      boxes.back().left -= apart;
      boxes.back().right += apart;
    }
    const auto way =
        std::ranges::find_if(boxes, [&sheet](const Box& box) { return sheet.taken().free(box); });
    if (way != boxes.end()) sheet.write(ways[static_cast<std::size_t>(way - boxes.begin())]);
  }
}

void dimension_up(Sheet& sheet, const Measure& m, double x, double from_x) {
  sheet.line({x, m.from}, {x, m.to}, pens::fine, "dimension");
  sheet.soften({x, m.from}, {x, m.to});
  for (const double y : {m.from, m.to}) {
    sheet.line({from_x, y}, {x, y}, pens::fine, "extension");
    sheet.soften({from_x, y}, {x, y});
    tick(sheet, {x, y});
  }
  Label label;
  label.name = "dimension";
  label.text = m.text;
  label.size = letters::label;
  label.at = {x - 0.8, 0.5 * (m.from + m.to)};
  label.anchor = document::Anchor::middle;
  label.upwards = true;
  sheet.write(std::move(label));
}

double scale_bar(Sheet& sheet, Spot at, double scale, units::System system) {
  constexpr int parts = 4;
  constexpr double least = 10.0;  // millimetres of one part
  constexpr double height = 1.4;
  const bool us = system == units::System::us;
  const double unit = scale * (us ? units::feet(1.0) : units::metres(1.0)).si();
  // In hundredths 1, 2, 5, 10 ...: the first that is long enough.
  long hundredths = 1;
  for (int i = 0; static_cast<double>(hundredths) * unit < 100.0 * least; ++i) {
    hundredths = i % 3 == 1 ? hundredths * 5 / 2 : hundredths * 2;
  }
  const double part = static_cast<double>(hundredths) / 100.0;
  for (int i = 0; i < parts; ++i) {
    const double left = at.x + i * part * unit;
    const double right = left + part * unit;
    Shape block;
    block.name = "scale-bar";
    block.trails = {
        polygon({{left, at.y}, {right, at.y}, {right, at.y + height}, {left, at.y + height}})};
    block.pen = pens::fine;
    block.fill = i % 2 == 0 ? document::Fill::ink : document::Fill::paper;
    sheet.draw(std::move(block));
  }
  for (int i = 0; i <= parts; ++i) {
    const double value = i * part;
    const int decimals = hundredths % 100 == 0 ? 0 : (hundredths % 10 == 0 ? 1 : 2);
    std::string text = i == 0 ? "0" : units::fixed(value, decimals);
    if (i == parts) text += us ? say::ft : " m";
    Label label = centred(std::move(text), {at.x + value * unit, at.y - 1.6}, letters::small);
    label.name = "scale-bar";
    sheet.write(std::move(label));
  }
  return at.x + parts * part * unit;
}

}  // namespace basinwright::report
