#include "svg_marks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "markup_text.hpp"

namespace basinwright::render {
namespace {

using document::Anchor;
using document::Dash;
using document::Fill;
using document::Label;
using document::Leg;
using document::Pen;
using document::Shape;
using document::Spot;
using document::Trail;

constexpr std::string_view ink = "#000";
constexpr std::string_view paper = "#fff";

std::string spot(Spot s) {
  return svg_number(s.x) + ' ' + svg_number(s.y);
}

std::string leg(const Leg& l) {
  if (l.radius_x <= 0.0 || l.radius_y <= 0.0) return "L" + spot(l.to);
  return fmt::format("A{} {} {} {} {} {}",
                     svg_number(l.radius_x),
                     svg_number(l.radius_y),
                     svg_number(l.turn_deg),
                     l.large ? 1 : 0,
                     l.clockwise ? 1 : 0,
                     spot(l.to));
}

std::string path_data(const std::vector<Trail>& trails) {
  std::string data;
  for (const Trail& trail : trails) {
    data += "M" + spot(trail.from);
    for (const Leg& l : trail.legs) data += leg(l);
    if (trail.closed) data += 'Z';
  }
  return data;
}

std::string_view dashes(Dash dash) {
  switch (dash) {
    case Dash::dashed:
      return "2 1.2";
    case Dash::dotted:
      return "0.3 0.9";
    case Dash::chain:
      return "5 1 0.6 1";
    case Dash::solid:
      break;
  }
  return "";
}

std::string stroke(const Pen& pen) {
  if (pen.width <= 0.0) return "";
  std::string out = markup_attribute("stroke", pen.white ? paper : ink) +
                    markup_attribute("stroke-width", svg_number(pen.width));
  if (pen.dash != Dash::solid) out += markup_attribute("stroke-dasharray", dashes(pen.dash));
  return out;
}

std::string_view pattern_name(Fill fill) {
  switch (fill) {
    case Fill::shade:
      return "shade";
    case Fill::rising:
      return "rising";
    case Fill::falling:
      return "falling";
    case Fill::dots:
      return "dots";
    case Fill::upright:
      return "upright";
    case Fill::level:
      return "level";
    case Fill::crossed:
      return "crossed";
    case Fill::none:
    case Fill::paper:
    case Fill::ink:
      break;
  }
  throw std::logic_error("a fill that is no pattern");
}

/// One tile of a pattern: its side in millimetres, how it is turned, and what is drawn in it.
struct Tile {
  std::string_view side;
  std::string_view turn;
  std::string_view data;
  std::string_view width = "0.1";
};

Tile tile(Fill fill) {
  switch (fill) {
    case Fill::shade:
      return {"0.6", "", "M0 0.3H0.6", "0.3"};
    case Fill::rising:
      return {"2.5", "rotate(-45)", "M0 1.25H2.5"};
    case Fill::falling:
      return {"2.5", "rotate(45)", "M0 1.25H2.5"};
    case Fill::crossed:
      return {"3", "rotate(45)", "M0 1.5H3M1.5 0V3"};
    case Fill::dots:
      return {"2.4", "", "M0.45 0.6H0.75M1.65 1.8H1.95", "0.3"};
    case Fill::upright:
      return {"2", "", "M1 0V2"};
    default:
      return {"2", "", "M0 1H2"};
  }
}

std::string pattern(Fill fill, const std::string& prefix) {
  const Tile t = tile(fill);
  std::string out = "<pattern" + markup_attribute("id", prefix + std::string(pattern_name(fill))) +
                    " patternUnits=\"userSpaceOnUse\"" + markup_attribute("width", t.side) +
                    markup_attribute("height", t.side);
  if (!t.turn.empty()) out += markup_attribute("patternTransform", t.turn);
  return out + "><path" + markup_attribute("d", t.data) + markup_attribute("stroke", ink) +
         markup_attribute("stroke-width", t.width) + "/></pattern>\n";
}

std::string_view anchor_name(Anchor anchor) {
  switch (anchor) {
    case Anchor::middle:
      return "middle";
    case Anchor::end:
      return "end";
    case Anchor::start:
      break;
  }
  return "start";
}

}  // namespace

std::string SvgMarks::paint_of(Fill fill) {
  if (fill == Fill::none) return "none";
  if (fill == Fill::ink) return std::string(ink);
  if (fill == Fill::paper) return std::string(paper);
  if (std::ranges::find(patterns_, fill) == patterns_.end()) patterns_.push_back(fill);
  return fmt::format("url(#{}{})", prefix_, pattern_name(fill));
}

std::string SvgMarks::clip_of(const std::vector<Trail>& within) {
  std::string data = path_data(within);
  const auto known = std::ranges::find(clips_, data);
  const auto number = known - clips_.begin();
  if (known == clips_.end()) clips_.push_back(std::move(data));
  return fmt::format("url(#{}within{})", prefix_, number);
}

void SvgMarks::operator()(const Shape& shape) {
  elements_ += "<path";
  if (!shape.name.empty()) elements_ += markup_attribute("class", shape.name);
  elements_ += markup_attribute("d", path_data(shape.trails));
  elements_ += markup_attribute("fill", paint_of(shape.fill)) + stroke(shape.pen);
  if (!shape.within.empty()) elements_ += markup_attribute("clip-path", clip_of(shape.within));
  elements_ += "/>\n";
}

void SvgMarks::operator()(const Label& label) {
  elements_ += "<text";
  if (!label.name.empty()) elements_ += markup_attribute("class", label.name);
  elements_ += markup_attribute("x", svg_number(label.at.x));
  elements_ += markup_attribute("y", svg_number(label.at.y));
  elements_ += markup_attribute("font-size", svg_number(label.size));
  if (label.anchor != Anchor::start) {
    elements_ += markup_attribute("text-anchor", anchor_name(label.anchor));
  }
  if (label.bold) elements_ += markup_attribute("font-weight", "bold");
  if (label.upwards) {
    elements_ += markup_attribute(
        "transform",
        fmt::format("rotate(-90 {} {})", svg_number(label.at.x), svg_number(label.at.y)));
  }
  elements_ += '>' + markup_text(label.text) + "</text>\n";
}

std::string SvgMarks::definitions() const {
  if (patterns_.empty() && clips_.empty()) return "";
  std::string out = "<defs>\n";
  for (const Fill fill : patterns_) out += pattern(fill, prefix_);
  for (std::size_t i = 0; i < clips_.size(); ++i) {
    out += fmt::format(
        "<clipPath id=\"{}within{}\"><path d=\"{}\"/></clipPath>\n", prefix_, i, clips_[i]);
  }
  return out + "</defs>\n";
}

}  // namespace basinwright::render
