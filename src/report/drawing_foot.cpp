// Table, key and notes at the foot of the sheet.
#include <algorithm>

#include "drawing_layout.hpp"
#include "drawing_notes.hpp"
#include "take_off_facts.hpp"
#include "wording/drawing.hpp"

namespace basinwright::report {
namespace {

using document::Anchor;
using document::Label;
using document::Shape;

constexpr double table_width = 80.0;
constexpr double between = 8.0;
constexpr double row = 4.3;
constexpr double line = 3.4;
constexpr double heading_height = 5.5;
constexpr double sample_width = 11.0;
constexpr double sample_gap = 2.0;
constexpr double note_size = 2.4;

double notes_left(const Sheet& sheet) {
  return sheet.content().left + table_width + between;
}

double notes_width(const Sheet& sheet) {
  return sheet.content().right - notes_left(sheet);
}

void write_heading(Sheet& sheet, std::string text, Spot at) {
  Label label;
  label.name = "heading";
  label.text = std::move(text);
  label.at = at;
  label.size = letters::text;
  label.bold = true;
  sheet.write(std::move(label));
}

void draw_table(Sheet& sheet, const Layout& layout, const Foot& foot) {
  const double left = sheet.content().left;
  const double right = left + table_width;
  write_heading(sheet, say::areas_and_water, {left, layout.foot + 4.0});
  double y = layout.foot + heading_height;
  for (const document::Fact& fact : foot.facts) {
    sheet.line({left, y}, {right, y}, pens::fine, "rule");
    const bool bold = fact.cell.role == Role::total;
    Label value;
    value.name = "value";
    value.text = fact.cell.text;
    value.at = {right, y + row - 1.2};
    value.size = letters::text;
    value.anchor = Anchor::end;
    value.bold = bold;
    Label label = value;
    label.name = "label";
    label.at.x = left;
    label.anchor = Anchor::start;
    const double room = table_width - text_width(value.text, value.size, bold) - 2.0;
    label.text = fitted(fact.label, label.size, bold ? room / heavier : room);
    sheet.write(std::move(label));
    sheet.write(std::move(value));
    y += row;
  }
  sheet.line({left, y}, {right, y}, pens::fine, "rule");
}

void draw_sample(Sheet& sheet, const KeyEntry& entry, Spot at) {
  const Spot to{at.x + sample_width, at.y};
  switch (entry.sample) {
    case Sample::rim:
      sheet.line(at, to, pens::rim, "key");
      sheet.line({at.x, at.y + 0.84}, {to.x, to.y + 0.84}, pens::fine, "key");
      return;
    case Sample::break_line:
      return sheet.line(at, to, pens::broken, "key");
    case Sample::drop:
      return sheet.line(at, to, pens::edge, "key");
    case Sample::section_line:
      return sheet.line(at, to, pens::chain, "key");
    case Sample::water_line:
      return sheet.line(at, to, pens::water, "key");
    case Sample::coat:
      break;
  }
  const Box b{at.x, at.y - 1.4, to.x, at.y + 1.4};
  Shape swatch;
  swatch.name = "key";
  swatch.trails = {
      polygon({{b.left, b.top}, {b.right, b.top}, {b.right, b.bottom}, {b.left, b.bottom}})};
  swatch.pen = pens::fine;
  swatch.fill = pattern_of(entry.part);
  sheet.draw(std::move(swatch));
}

void write_line(Sheet& sheet, const std::string& text, Spot at, std::string name) {
  Label label;
  label.name = std::move(name);
  label.text = text;
  label.at = at;
  label.size = note_size;
  sheet.write(std::move(label));
}

}  // namespace

Foot foot_of(const Scene& scene, const Sheet& sheet, WallLengths lengths) {
  constexpr std::size_t most_lines = 24;
  Foot foot;
  const shell::TakeOff& t = scene.result.take_off;
  const Measured measured{t, scene.body.adjust, t.painted_area + scene.result.adjusted};
  for (document::Fact& fact : take_off_facts(measured, scene.cells, true).facts) {
    if (fact.shown) foot.facts.push_back(std::move(fact));
  }
  const double room = notes_width(sheet);
  double height = heading_height;
  for (const KeyEntry& entry : key_of(scene)) {
    foot.key.push_back({entry, broken(entry.words, note_size, room - sample_width - sample_gap)});
    height += line * static_cast<double>(foot.key.back().lines.size());
  }
  for (const std::string& note : notes_of(scene, lengths)) {
    for (std::string& words : broken(note, note_size, room)) foot.notes.push_back(std::move(words));
  }
  if (foot.notes.size() > most_lines) {
    foot.notes.resize(most_lines - 1);
    foot.notes.emplace_back(say::the_job_file_has_the_rest);
  }
  height += 1.5 + line * static_cast<double>(foot.notes.size());
  foot.height =
      1.0 + std::max(height, heading_height + row * static_cast<double>(foot.facts.size()));
  return foot;
}

void draw_foot(Sheet& sheet, const Layout& layout, const Foot& foot) {
  draw_table(sheet, layout, foot);
  const double left = notes_left(sheet);
  write_heading(sheet, say::key_and_notes, {left, layout.foot + 4.0});
  double y = layout.foot + heading_height + 2.4;
  for (const Foot::Entry& entry : foot.key) {
    draw_sample(sheet, entry.key, {left, y - 0.9});
    for (const std::string& words : entry.lines) {
      write_line(sheet, words, {left + sample_width + sample_gap, y}, "key");
      y += line;
    }
  }
  y += 1.5;
  for (const std::string& words : foot.notes) {
    write_line(sheet, words, {left, y}, "note");
    y += line;
  }
}

}  // namespace basinwright::report
