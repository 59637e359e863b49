// Words on the drawing: on the sheet, clear of one another, none lost.
#include "report/drawing_labels.hpp"
#include "drawing_rows.hpp"
#include "drawing_shapes.hpp"

using namespace drawn;

namespace {

void check_on_sheet(const Drawing& drawing) {
  Extent extent;
  for (const auto& mark : drawing.marks) {
    if (const auto* label = std::get_if<Label>(&mark)) {
      const Extent ink = ink_of(*label);
      extent.add(ink.left, ink.top);
      extent.add(ink.right, ink.bottom);
      continue;
    }
    const auto& shape = std::get<Shape>(mark);
    for (const Trail& trail : shape.trails) reach(extent, trail);
    for (const Trail& trail : shape.within) reach(extent, trail);
  }
  CHECK(extent.left >= 5.0);  // most printers leave 5 mm
  CHECK(extent.top >= 5.0);
  CHECK(extent.right <= drawing.width - 5.0);
  CHECK(extent.bottom <= drawing.height - 5.0);
}

void check_apart(const Drawing& drawing) {
  std::vector<Label> labels;
  for (const auto& mark : drawing.marks) {
    if (const auto* label = std::get_if<Label>(&mark)) labels.push_back(*label);
  }
  for (std::size_t i = 0; i < labels.size(); ++i) {
    for (std::size_t k = i + 1; k < labels.size(); ++k) {
      if (!overlap(ink_of(labels[i]), ink_of(labels[k]))) continue;
      INFO(labels[i].text << " over " << labels[k].text);
      CHECK(false);
    }
  }
}

/// Short walls round a ring, in and out.
shell::Pool star(int walls, double bulge = 0.1) {
  shell::Path path;
  for (int i = 0; i < walls; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / walls;
    const double r = i % 2 == 0 ? 6.0 : 5.2;
    path.points.push_back(
        {units::metres(r * std::cos(angle)), units::metres(0.7 * r * std::sin(angle)), bulge});
  }
  shell::Pool pool;
  pool.outline.shape = path;
  pool.floor = shell::ConstantFloor{units::metres(1.4)};
  return pool;
}

}  // namespace

TEST_CASE("no word or line leaves the sheet and no two words meet") {
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    for (const bool us : {false, true}) {
      for (const bool cut : {false, true}) {
        INFO(row.at("name") << (us ? " us" : "") << (cut ? " cut" : ""));
        Sketchbook book({rows::pool(row.at("pool"))});
        book.system = us ? units::System::us : units::System::metric;
        book.paper = us ? document::Paper::letter : document::Paper::a4;
        const double third = book.plan.take_off.painted.si() / 3.0;
        if (cut) book.cut({third, third, third});
        const auto drawing = book.drawing();
        check_on_sheet(drawing);
        check_apart(drawing);
      }
    }
  }
}

TEST_CASE("many short walls have their lengths in the notes") {
  const Sketchbook book({star(60)});
  const auto drawing = book.drawing();
  check_on_sheet(drawing);
  check_apart(drawing);
  CHECK(texts(drawing, "wall-length").empty());
  std::string notes;
  for (const std::string& line : texts(drawing, "note")) notes += line + " ";
  CHECK(notes.find("Wall lengths: (0)") != std::string::npos);
  CHECK(notes.find("(59)") != std::string::npos);
}

TEST_CASE("names without end are cut short and stay on the sheet") {
  Sketchbook book = of_row("rect_flight_bench");
  std::string controls;
  for (char c = 1; c < 0x20; ++c) controls += c;
  for (const std::string& name : {std::string(3000, 'W'), controls + controls + controls}) {
    book.job.heading.number = book.job.heading.revision = name;
    book.job.heading.client.name = book.job.heading.contractor.name = name;
    book.job.bodies[0].pool.name = name;
    book.job.bodies[0].adjust = {{name, units::square_metres(2)}};
    check_on_sheet(book.drawing());
    check_apart(book.drawing());
  }
  Sketchbook two({star(12), star(8)});
  two.job.bodies[0].pool.name = std::string(500, 'M') + " pool";
  check_on_sheet(two.drawing(0));
  check_apart(two.drawing(0));
}

TEST_CASE("hundreds of features and walls still leave a sheet") {
  auto pool = star(400, 0.0);
  for (int i = 0; i < 60; ++i) {
    const double x = -3.0 + 0.1 * i;
    const auto at = [](double a, double b) {
      return shell::PathPoint{units::metres(a), units::metres(b), 0.0};
    };
    pool.features.push_back(shell::Block{
        {at(x, 0.0), at(x + 0.05, 0.0), at(x + 0.05, 0.5), at(x, 0.5)}, units::metres(0.5)});
  }
  const auto drawing = Sketchbook({pool}).drawing();
  check_on_sheet(drawing);
  check_apart(drawing);
}

// The widths the words are given are never under those of the font's own table.
TEST_CASE("words are given room enough") {
  for (char c = ' '; c < 0x7B; ++c) {
    INFO(c);
    Label label;
    label.text = std::string(10, c);
    label.size = 1.0;
    CHECK(report::text_width(label.text, 1.0) >= width_of(label));
    label.bold = true;
    CHECK(report::text_width(label.text, 1.0, true) >= width_of(label));
  }
}

TEST_CASE("words are cut and broken between letters, never inside one") {
  CHECK(report::fitted("short", 2.5, 100.0) == "short");
  const std::string cut =
      report::fitted("\u00E4\u00E4\u00E4\u00E4\u00E4\u00E4\u00E4\u00E4", 2.5, 12.0);
  CHECK(cut.size() % 2 == 1);  // whole pairs of bytes and the three of the ellipsis
  CHECK(report::text_width(cut, 2.5) <= 12.0);
  const auto lines = report::broken("one two three four", 2.5, 14.0);
  REQUIRE(lines.size() > 1);
  std::string joined;
  for (const std::string& line : lines) {
    CHECK(report::text_width(line, 2.5) <= 14.0);
    joined += (joined.empty() ? "" : " ") + line;
  }
  CHECK(joined == "one two three four");
}
