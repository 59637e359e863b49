#include "basinwright/render/svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <vector>

#include "markup_text.hpp"
#include "svg_marks.hpp"

namespace basinwright::render {
namespace {

using document::Drawing;

struct Size {
  double width = 0.0;
  double height = 0.0;
};

/// What says the same as the picture: the accessible name and description of its element.
std::string words(const std::string& title,
                  const std::string& description,
                  std::string_view prefix) {
  return fmt::format("<title id=\"{0}title\">{1}</title>\n<desc id=\"{0}desc\">{2}</desc>\n",
                     prefix,
                     markup_text(title),
                     markup_text(description));
}

/// Attributes of an element that shows a picture; `prefix` is that of its words.
std::string picture(Size size, std::string_view prefix) {
  return fmt::format(
      " role=\"img\" aria-labelledby=\"{0}title {0}desc\" lang=\"en\" viewBox=\"0 0 {1} {2}\"",
      markup_text(prefix),
      svg_number(size.width),
      svg_number(size.height));
}

std::string in_millimetres(Size size) {
  return fmt::format(
      " width=\"{}mm\" height=\"{}mm\"", svg_number(size.width), svg_number(size.height));
}

std::string content(const Drawing& drawing, std::string_view prefix) {
  SvgMarks marks(markup_text(prefix));
  for (const document::Mark& mark : drawing.marks) std::visit(marks, mark);
  return fmt::format(
      "{}{}<g font-family=\"sans-serif\" fill=\"#000\" stroke-linejoin=\"round\">\n{}</g>\n",
      words(drawing.title, drawing.description, markup_text(prefix)),
      marks.definitions(),
      marks.elements());
}

/// Printed, each sheet is a page of its own (W3C, CSS Paged Media, section 4).
std::string page_rule(Size size) {
  return fmt::format("<style>@page{{size:{}mm {}mm;margin:0}}</style>\n",
                     svg_number(size.width),
                     svg_number(size.height));
}

std::string element(Size size, std::string_view prefix, const std::string& inner) {
  return fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\"{}{}>\n{}</svg>\n",
                     in_millimetres(size),
                     picture(size, prefix),
                     inner);
}

std::vector<const Drawing*> drawings_of(const document::Document& document) {
  std::vector<const Drawing*> found;
  for (const document::Section& section : document.sections) {
    for (const document::Block& block : section.blocks) {
      if (const auto* drawing = std::get_if<Drawing>(&block)) found.push_back(drawing);
    }
  }
  if (found.empty()) throw std::logic_error("a page without a drawing for SVG");
  return found;
}

/// Several sheets in one picture, each a picture of its own one below the other.
std::string sheets_stacked(const document::Document& document,
                           const std::vector<const Drawing*>& sheets) {
  Size all;
  std::string described;
  std::string inner;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const Drawing& sheet = *sheets[i];
    const Size size{sheet.width, sheet.height};
    const std::string prefix = fmt::format("sheet{}-", i + 1);
    inner += fmt::format("<svg x=\"0\" y=\"{}\" width=\"{}\" height=\"{}\"{}>\n{}</svg>\n",
                         svg_number(all.height),
                         svg_number(size.width),
                         svg_number(size.height),
                         picture(size, prefix),
                         content(sheet, prefix));
    all = {std::max(all.width, size.width), all.height + size.height};
    described += (described.empty() ? "" : " ") + sheet.title + ": " + sheet.description;
  }
  const Size page{all.width, sheets.front()->height};
  return element(
      all, "sheets-", words(document.title, described, "sheets-") + page_rule(page) + inner);
}

}  // namespace

std::string svg_element(const Drawing& drawing, std::string_view prefix) {
  return element({drawing.width, drawing.height}, prefix, content(drawing, prefix));
}

std::string svg(const document::Document& document) {
  constexpr std::string_view prefix = "sheet-";
  const std::vector<const Drawing*> sheets = drawings_of(document);
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  if (sheets.size() > 1) return out + sheets_stacked(document, sheets);
  const Size size{sheets.front()->width, sheets.front()->height};
  return out + element(size, prefix, content(*sheets.front(), prefix) + page_rule(size));
}

}  // namespace basinwright::render
