#include "drawing.hpp"

#include <fmt/format.h>

#include <optional>

#include "drawing_layout.hpp"
#include "drawing_notes.hpp"
#include "wording/drawing.hpp"

namespace basinwright::report {
namespace {

using document::Anchor;
using document::Label;

std::string job_line(const job::Heading& h) {
  std::string line;
  const auto add = [&line](const std::string& part) {
    if (!part.empty()) line += (line.empty() ? "" : " \u00B7 ") + part;
  };
  add(h.number.empty() ? "" : say::job_before + h.number);
  add(h.revision.empty() ? "" : say::revision_before + h.revision);
  add(h.client.name);
  add(h.client.address);
  return line;
}

std::string measures_line(const Scene& scene, int denominator) {
  const bool us = scene.subject.units == units::System::us;
  const bool letter = scene.subject.paper == document::Paper::letter;
  return fmt::format(say::measures_in_scale_1_on_paper_at_full,
                     us ? say::feet_and_inches : say::metres,
                     denominator,
                     letter ? say::letter : "A4");
}

/// A line of the head with something at its right end.
void head_line(Sheet& sheet, Label left, const std::string& right) {
  constexpr double gap = 5.0;
  const Box& content = sheet.content();
  Label label;
  label.name = left.name;
  label.text = fitted(right, letters::text, 0.5 * content.width());
  label.at = {content.right, left.at.y};
  label.size = letters::text;
  label.anchor = Anchor::end;
  const double room = content.width() - text_width(label.text, label.size) - gap;
  left.text = fitted(left.text, left.size, left.bold ? room / heavier : room);
  left.at.x = content.left;
  for (Label* words : {&left, &label}) {
    if (!words->text.empty()) sheet.write(std::move(*words));
  }
}

void draw_head(Sheet& sheet, const Scene& scene, int denominator) {
  const job::Job& job = scene.subject.job;
  const Box& content = sheet.content();
  const std::size_t bodies = job.bodies.size();
  Label title;
  title.name = "title";
  title.text = title_of(scene);
  title.size = letters::title;
  title.bold = true;
  title.at.y = content.top + 4.5;
  head_line(sheet, title, bodies > 1 ? fmt::format(say::sheet_of, scene.number + 1, bodies) : "");
  Label line;
  line.name = "job";
  line.text = job_line(job.heading);
  line.size = letters::text;
  line.at.y = content.top + 10.0;
  head_line(sheet, line, job.heading.contractor.name);
  line.name = "scale";
  line.text = measures_line(scene, denominator);
  line.at.y = content.top + 14.3;
  head_line(sheet, line, "");
  const double y = content.top + 16.3;
  sheet.line({content.left, y}, {content.right, y}, pens::edge, "rule");
}

void draw_scale(Sheet& sheet, const Scene& scene, const Layout& layout) {
  const bool us = scene.subject.units == units::System::us;
  const double left = sheet.content().left;
  const double end =
      scale_bar(sheet, {left + 1.0, layout.bar}, layout.view.scale, scene.subject.units);
  const Length on_sheet = us ? units::inches(1.0) : units::centimetres(1.0);
  Label words;
  words.name = "scale";
  words.text = fmt::format(say::scale_1_on_the_sheet_is,
                           layout.denominator,
                           us ? say::one_inch : say::one_centimetre,
                           scene.cells.length(on_sheet * layout.denominator).text);
  words.size = letters::text;
  words.at = {end + 10.0, layout.bar + 1.4};
  sheet.write(std::move(words));
}

/// The sheet, or nothing when a wall's length found no room on the plan.
std::optional<document::Drawing> drawn(const Scene& scene, WallLengths lengths) {
  Sheet sheet(scene.subject.paper);
  const Foot foot = foot_of(scene, sheet, lengths);
  const Layout layout = layout_of(scene, sheet, foot.height);
  draw_head(sheet, scene, layout.denominator);
  draw_foot(sheet, layout, foot);
  draw_scale(sheet, scene, layout);
  draw_long_section(sheet, scene, layout);
  draw_plan(sheet, scene, layout);
  if (!label_plan(sheet, scene, layout, lengths)) return std::nullopt;
  return sheet.finished(title_of(scene), description_of(scene, layout));
}

}  // namespace

document::Drawing take_off_drawing(const Subject& subject, std::size_t body) {
  const Scene scene = scene_of(subject, body);
  const auto sheet = drawn(scene, WallLengths::on_plan);
  return sheet ? *sheet : *drawn(scene, WallLengths::in_notes);
}

}  // namespace basinwright::report
