// Drawings as SVG, held against the W3C's recommendation (path data, section 9.3 of SVG 2), XML 1.0
// and what xmllint reads back.
#include "basinwright/render/svg.hpp"

#include <limits>
#include <regex>
#include <set>

#include "basinwright/render/csv.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/render/markdown.hpp"
#include "basinwright/render/text.hpp"
#include "outside.hpp"
#include "support/catch.hpp"

namespace {

using namespace basinwright;
using document::Drawing;
using document::Fill;
using document::Label;
using document::Leg;
using document::Shape;

bool svg_has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

Shape square(Fill fill) {
  Shape shape;
  shape.name = "square";
  shape.trails = {{{10, 10}, {{{30, 10}}, {{30, 30}}, {{10, 30}}}, true}};
  shape.pen.width = 0.5;
  shape.fill = fill;
  return shape;
}

Label label(std::string text) {
  Label made;
  made.text = std::move(text);
  made.at = {20, 20};
  return made;
}

Drawing drawing(std::vector<document::Mark> marks) {
  return {"Plan", "A square.", 210, 297, std::move(marks)};
}

document::Document page(std::vector<Drawing> drawings) {
  document::Document made;
  made.title = "Take-off";
  document::Section section{"", "Drawing", {}, true};
  for (Drawing& d : drawings) section.blocks.emplace_back(std::move(d));
  made.sections.push_back(section);
  return made;
}

std::string svg_of(std::vector<document::Mark> marks) {
  return render::svg(page({drawing(std::move(marks))}));
}

/// What xmllint says to an XPath; nothing when it is not there.
std::optional<std::string> xpath(const std::string& svg, const std::string& path) {
  if (!outside::has("xmllint", "the SVG")) return std::nullopt;
  const outside::Folder folder;
  const auto result = outside::run("/usr/bin/xmllint --nonet --xpath '" + path + "' '" +
                                   folder.write("drawing.svg", svg) + "' 2>&1");
  INFO(result.output);
  CHECK(result.status == 0);
  return result.output;
}

/// Every `url(#…)` and `aria-labelledby` points to an identifier that is there once.
void check_references(const std::string& svg) {
  const auto all = [&svg](const std::regex& wanted) {
    std::vector<std::string> found;
    for (std::sregex_iterator i(svg.begin(), svg.end(), wanted), end; i != end; ++i) {
      found.push_back((*i)[1]);
    }
    return found;
  };
  const auto ids = all(std::regex(" id=\"([^\"]*)\""));
  const std::set<std::string> unique(ids.begin(), ids.end());
  CHECK(unique.size() == ids.size());
  for (const std::string& used : all(std::regex("url\\(#([^)]*)\\)"))) {
    INFO(used);
    CHECK(unique.contains(used));
  }
}

}  // namespace

TEST_CASE("a drawing is one picture with a name, a description and its size in millimetres") {
  const std::string svg = svg_of({square(Fill::none)});
  CHECK(svg.starts_with("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns="));
  CHECK(svg_has(svg, "width=\"210.000mm\" height=\"297.000mm\" role=\"img\""));
  CHECK(svg_has(svg, "viewBox=\"0 0 210.000 297.000\""));
  CHECK(svg_has(svg, "<title id=\"sheet-title\">Plan</title>"));
  CHECK(svg_has(svg, "<desc id=\"sheet-desc\">A square.</desc>"));
  CHECK(svg_has(svg, "d=\"M10.000 10.000L30.000 10.000L30.000 30.000L10.000 30.000Z\""));
  CHECK(svg_has(svg, "<style>@page{size:210.000mm 297.000mm;margin:0}</style>"));
  CHECK_FALSE(svg_has(svg, "<defs>"));
  CHECK(svg == svg_of({square(Fill::none)}));
}

TEST_CASE("arcs stay arcs with radii, turn and the two flags") {
  Shape shape;
  shape.trails = {
      {{0, 0},
       {Leg{{10, 0}, 5, 5, 0, false, true}, Leg{{20, 0}, 8, 4, 30, true, false}, Leg{{30, 0}}},
       false}};
  CHECK(svg_has(svg_of({shape}),
                "d=\"M0.000 0.000A5.000 5.000 0.000 0 1 10.000 0.000"
                "A8.000 4.000 30.000 1 0 20.000 0.000L30.000 0.000\""));
}

TEST_CASE("numbers have three decimals and no minus before nothing") {
  Shape shape;
  shape.trails = {{{-0.0001, 1e-9}, {{{1.0 / 3.0, 1234.56789}}}, false}};
  CHECK(svg_has(svg_of({shape}), "d=\"M0.000 0.000L0.333 1234.568\""));
  shape.trails[0].from.x = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(svg_of({shape}), std::logic_error);
  Label text = label("a");
  text.at.y = std::numeric_limits<double>::infinity();
  CHECK_THROWS_AS(svg_of({text}), std::logic_error);
}

TEST_CASE("pens and patterns are ink on paper") {
  Shape dashed = square(Fill::rising);
  dashed.pen.dash = document::Dash::dashed;
  Shape white = square(Fill::paper);
  white.pen.white = true;
  const std::string svg = svg_of({dashed, white, square(Fill::dots), square(Fill::rising)});
  check_references(svg);
  CHECK(svg_has(svg, "stroke-dasharray="));
  CHECK(svg_has(svg, "stroke=\"#fff\""));
  CHECK(svg_has(svg, "fill=\"url(#sheet-dots)\""));
  // Black, white and nothing else.
  const std::regex colour("#[0-9a-f]{3,6}\"");
  for (std::sregex_iterator i(svg.begin(), svg.end(), colour), end; i != end; ++i) {
    CHECK((i->str() == "#000\"" || i->str() == "#fff\""));
  }
  CHECK(svg.find("<pattern id=\"sheet-rising\"") == svg.rfind("<pattern id=\"sheet-rising\""));
  CHECK_FALSE(svg_has(svg, "sheet-crossed"));
}

TEST_CASE("what lies outside a clip is not seen, and one clip serves all who share it") {
  Shape a = square(Fill::ink);
  a.within = {{{0, 0}, {{{20, 0}}, {{20, 20}}}, true}};
  Shape b = square(Fill::level);
  b.within = a.within;
  Shape c = square(Fill::level);
  c.within = {{{5, 5}, {{{20, 0}}, {{20, 20}}}, true}};
  const std::string svg = svg_of({a, b, c});
  check_references(svg);
  CHECK(svg_has(svg, "<clipPath id=\"sheet-within0\">"));
  CHECK(svg_has(svg, "<clipPath id=\"sheet-within1\">"));
  CHECK_FALSE(svg_has(svg, "sheet-within2"));
}

TEST_CASE("texts stay texts with anchor, size, turn and weight") {
  Label text = label("9.20 m");
  text.name = "wall-length";
  text.anchor = document::Anchor::middle;
  text.upwards = true;
  text.bold = true;
  CHECK(svg_has(svg_of({text}),
                "<text class=\"wall-length\" x=\"20.000\" y=\"20.000\" font-size=\"2.600\" "
                "text-anchor=\"middle\" font-weight=\"bold\" "
                "transform=\"rotate(-90 20.000 20.000)\">9.20 m</text>"));
}

TEST_CASE("names that mean harm are shown, not obeyed") {
  const std::string harm =
      "<script>alert(1)</script> \"&' ]]> \x01\x1b[31m\t\n\xEF\xBF\xBF \xFF \xE2\x80\xAE x";
  Drawing d = drawing({label(harm)});
  d.title = d.description = harm;
  Shape named = square(Fill::none);
  named.name = "\"><script>";
  d.marks.emplace_back(named);
  const std::string svg = render::svg(page({d}));
  CHECK_FALSE(svg_has(svg, "<script"));
  CHECK(
      svg_has(svg, "&lt;script&gt;alert(1)&lt;/script&gt; &quot;&amp;&#39; ]]&gt; \\x01\\x1b[31m"));
  CHECK(svg_has(svg, "class=\"&quot;&gt;&lt;script&gt;\""));
  for (const char c : svg) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
  // XML 1.0 gives it back: one line, controls spelled out, what is no character as U+FFFD.
  const std::string shown =
      "<script>alert(1)</script> \"&' ]]> \\x01\\x1b[31m  \xEF\xBF\xBD \\xff \\u202e x\n";
  if (const auto read = xpath(svg, "string(//*[local-name()=\"text\"])")) CHECK(*read == shown);
  if (const auto read = xpath(svg, "string(/*/*[local-name()=\"desc\"])")) CHECK(*read == shown);
}

TEST_CASE("several drawings come one under the other, each with its own names") {
  Drawing second = drawing({square(Fill::rising)});
  second.title = "Spa";
  second.description = "Round.";
  const std::string svg = render::svg(page({drawing({square(Fill::rising)}), second}));
  check_references(svg);
  CHECK(svg_has(svg, "width=\"210.000mm\" height=\"594.000mm\""));
  CHECK(svg_has(svg, "<svg x=\"0\" y=\"297.000\" width=\"210.000\" height=\"297.000\""));
  CHECK(svg_has(svg, "<desc id=\"sheets-desc\">Plan: A square. Spa: Round.</desc>"));
  if (const auto count = xpath(svg, "count(//*[local-name()=\"svg\"][@role=\"img\"])")) {
    CHECK(*count == "3\n");
  }
}

TEST_CASE("an element for another page has no head of its own") {
  const std::string svg = render::svg_element(drawing({square(Fill::dots)}), "plan7-");
  CHECK(svg.starts_with("<svg xmlns="));
  CHECK(svg_has(svg, "id=\"plan7-dots\""));
  CHECK_FALSE(svg_has(svg, "@page"));
  check_references(svg);
}

TEST_CASE("a page without a drawing is no picture") {
  CHECK_THROWS_AS(render::svg(page({})), std::logic_error);
}

TEST_CASE("other formats say what the drawing shows or leave it out") {
  const auto with = page({drawing({square(Fill::none)})});
  CHECK(render::text(with) == "Take-off\n" + [] {
    std::string rule;
    for (int i = 0; i < 80; ++i) rule += "\u2500";
    return rule;
  }() + "\n\nDrawing\n\n  Plan\n  A square.\n");
  CHECK(svg_has(render::markdown(with), "## Drawing\n\n**Plan**\n\nA square.\n"));
  CHECK(render::json(with) == render::json(page({})));
  CHECK(render::csv(with).empty());
}
