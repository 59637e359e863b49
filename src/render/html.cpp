#include "basinwright/render/html.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "basinwright/render/svg.hpp"
#include "html_style.hpp"
#include "html_table.hpp"
#include "html_words.hpp"
#include "markup_text.hpp"
#include "table_rows.hpp"

namespace basinwright::render {
namespace {

using document::Document;
using document::Drawing;
using document::Paper;
using document::Role;
using document::Section;

std::string with_class(std::string_view classes) {
  return classes.empty() ? "" : fmt::format(" class=\"{}\"", classes);
}

/// Whether a drawing is a sheet of the paper, and which way it lies.
std::string_view sheet_class(const Drawing& drawing, Paper paper) {
  constexpr double hair = 0.5;
  const double width = paper == Paper::letter ? 215.9 : 210.0;
  const double height = paper == Paper::letter ? 279.4 : 297.0;
  const auto is = [&](double w, double h) {
    return std::max(drawing.width - w, w - drawing.width) < hair &&
           std::max(drawing.height - h, h - drawing.height) < hair;
  };
  if (is(width, height)) return "sheet upright";
  return is(height, width) ? "sheet across" : "";
}

/// Writes the blocks of sections, counting the drawings for their identifiers.
class Body {
 public:
  using Folded = std::map<std::string, const Section*>;

  Body(const Document& document, Paper paper) : paper_(paper) {
    for (const Section& section : document.sections) {
      if (section.folded && !section.key.empty()) folded_.emplace(section.key, &section);
    }
    if (folded_.empty()) return;
    openable_.beside = [this](const std::string& key) { return beside(key); };
    openable_.place = [this](const std::string& key) {
      return folded_.contains(key) ? place(key) : std::string();
    };
  }
  Body(const Body&) = delete;
  Body& operator=(const Body&) = delete;

  std::string blocks(const Section& section) {
    name_ = section.title;
    key_ = section.key;
    std::string out;
    for (const document::Block& block : section.blocks)
      out += std::visit([this](const auto& b) { return this->of(b); }, block);
    return out;
  }

 private:
  static std::string of(const document::Paragraph& paragraph) {
    const std::string text = html_marked(paragraph.text, paragraph.role);
    if (!paragraph.shown || text.empty()) return "";
    return fmt::format("<p{}>{}</p>\n", with_class(html_class(paragraph.role)), text);
  }

  /// What a number opens to: the folded sections at its key and, for a list, below it.
  std::string beside(const std::string& key) {
    std::string out;
    const auto add = [&](const std::string& name, const Section& section) {
      std::string blocks;
      for (const document::Block& block : section.blocks) {
        const auto* table = std::get_if<document::Table>(&block);
        blocks += table != nullptr
                      ? html_table(*table, name, {}, {{}, openable_.place})
                      : std::visit([this](const auto& b) { return this->of(b); }, block);
      }
      out += fmt::format("<div id=\"{}\">\n{}</div>", place(name), blocks);
    };
    if (const auto it = folded_.find(key); it != folded_.end()) add(key, *it->second);
    const std::string below = key + ".";
    for (auto it = folded_.lower_bound(below); it != folded_.end(); ++it) {
      if (!it->first.starts_with(below)) break;
      add(it->first, *it->second);
    }
    return out;
  }
  [[nodiscard]] static std::string place(const std::string& key) { return "how-" + key; }

  std::string beside(const document::Fact& fact) {
    if (fact.key.empty()) return "";
    const std::string inner = beside(key_path(key_, fact.key));
    if (inner.empty()) return "";
    return fmt::format("<dd class=\"beside\"><details>\n<summary>{}</summary>\n{}</details></dd>",
                       words::how,
                       inner);
  }

  std::string of(const document::Facts& facts) {
    std::string rows;
    bool amounts = true;
    for (const document::Fact& fact : facts.facts) {
      if (!fact.shown) continue;
      const Role role = fact.cell.role;
      amounts = amounts && (role == Role::money || role == Role::total);
      const std::string value = html_marked(fact.cell.text, role);
      const std::string dd =
          fmt::format("<dd{}>{}</dd>{}", with_class(html_class(role)), value, beside(fact));
      // What has no label of its own says more about the one before it.
      constexpr std::string_view end = "</div>\n";
      if (fact.label.empty() && rows.ends_with(end)) {
        rows.insert(rows.size() - end.size(), dd);
        continue;
      }
      const std::string_view total = role == Role::total ? "total" : "";
      rows +=
          fmt::format("<div{}><dt>{}</dt>{}</div>\n", with_class(total), html_text(fact.label), dd);
    }
    if (rows.empty()) return "";
    return fmt::format("<dl class=\"{}\">\n{}</dl>\n", amounts ? "facts sums" : "facts", rows);
  }

  std::string of(const document::Table& table) const {
    return html_table(table, name_, key_path(key_, table.key), openable_);
  }

  static std::string of(const document::List& list) {
    std::string items;
    for (const document::Cell& item : list.items) {
      const std::string text =
          item.role == Role::tick
              ? fmt::format("<span class=\"box\"></span><span>{}</span>", html_text(item.text))
              : html_marked(item.text, item.role);
      items += fmt::format("<li{}>{}</li>\n", with_class(html_class(item.role)), text);
    }
    if (items.empty()) return "";
    const bool ticks = std::ranges::all_of(
        list.items, [](const document::Cell& item) { return item.role == Role::tick; });
    if (list.numbered && !ticks) return "<ol>\n" + items + "</ol>\n";
    return fmt::format("<ul{}>\n{}</ul>\n", with_class(ticks ? "ticks" : ""), items);
  }

  std::string of(const Drawing& drawing) {
    const std::string prefix = fmt::format("drawing{}-", ++drawings_);
    return fmt::format("<figure{}>\n{}<figcaption>{}</figcaption>\n</figure>\n",
                       with_class(sheet_class(drawing, paper_)),
                       svg_element(drawing, prefix),
                       html_text(drawing.title));
  }

  Paper paper_;
  Folded folded_;
  Openable openable_;
  std::string name_;
  std::string key_;
  int drawings_ = 0;
};

struct Part {
  const Section* section = nullptr;
  std::string id;
  std::string blocks;
};

/// The sections that have something to show.
std::vector<Part> parts_of(const Document& document, Paper paper) {
  Body body(document, paper);
  std::vector<Part> parts;
  for (const Section& section : document.sections) {
    if (!section.shown || (section.folded && !section.key.empty())) continue;
    std::string blocks = body.blocks(section);
    // A heading may stand for the parts under it.
    if (blocks.empty() && !section.own_page) continue;
    parts.push_back({&section, fmt::format("part-{}", parts.size() + 1), std::move(blocks)});
  }
  return parts;
}

std::string heading(const Part& part) {
  if (part.section->title.empty()) return "";
  const char level = part.section->under ? '3' : '2';
  return fmt::format(
      "<h{0} id=\"{1}-title\">{2}</h{0}>\n", level, part.id, html_text(part.section->title));
}

/// A title over nothing but sheets would take a page of its own on paper.
bool is_sheets(const std::string& blocks) {
  return blocks.starts_with("<figure class=\"sheet");
}

std::string section(const Part& part) {
  const Section& s = *part.section;
  std::string classes = s.under ? "under" : "";
  if (is_sheets(part.blocks)) classes += classes.empty() ? "sheets" : " sheets";
  if (s.own_page) classes += classes.empty() ? "page-start" : " page-start";
  // A part under another is no landmark of its own: the same step comes on many days.
  const bool landmark = !s.title.empty() && !s.under;
  const std::string label = landmark ? fmt::format(" aria-labelledby=\"{}-title\"", part.id) : "";
  const std::string inner =
      s.folded ? fmt::format(
                     "<details>\n<summary>{}</summary>\n{}</details>\n", heading(part), part.blocks)
               : heading(part) + part.blocks;
  return fmt::format(
      "<section id=\"{}\"{}{}>\n{}</section>\n", part.id, with_class(classes), label, inner);
}

std::string navigation(const std::vector<Part>& parts) {
  std::string items;
  int count = 0;
  for (const Part& part : parts) {
    if (part.section->title.empty() || part.section->under) continue;
    ++count;
    items +=
        fmt::format("<li><a href=\"#{}\">{}</a></li>\n", part.id, html_text(part.section->title));
  }
  if (count < 2) return "";
  return fmt::format(
      "<nav aria-label=\"{}\">\n<ol>\n{}</ol>\n</nav>\n", words::on_this_page, items);
}

std::string header(const Document& document) {
  std::string out = fmt::format("<header>\n<h1>{}</h1>\n", html_text(document.title));
  if (!document.subtitle.empty())
    out += fmt::format("<p class=\"subtitle\">{}</p>\n", html_text(document.subtitle));
  const document::Cell& line = document.bottom_line;
  if (!line.text.empty())
    out += fmt::format("<p class=\"bottom\">{}</p>\n", html_marked(line.text, line.role));
  std::string notices;
  for (const std::string& notice : document.notices)
    notices += "<li>" + html_text(notice) + "</li>\n";
  if (!notices.empty()) out += "<ul class=\"notices\">\n" + notices + "</ul>\n";
  return out + "</header>\n";
}

/// The browser is told as well that nothing here runs and nothing is fetched.
constexpr std::string_view policy =
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
    "'unsafe-inline'\">\n";

}  // namespace

std::string html(const Document& document, const HtmlOptions& options) {
  const std::vector<Part> parts = parts_of(document, options.paper);
  std::string sections;
  for (const Part& part : parts) sections += section(part);
  const std::string title =
      document.subtitle.empty() ? document.title : document.title + " \u00b7 " + document.subtitle;
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"UTF-8\">\n{}"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<title>{}</title>\n<style>{}</style>\n</head>\n<body{}>\n"
      "<a class=\"skip\" href=\"#content\">{}</a>\n<div class=\"page\">\n"
      "{}{}<main id=\"content\">\n{}</main>\n</div>\n</body>\n</html>\n",
      policy,
      markup_text(title),
      html_style(options.paper, title),
      document.reading == document::Reading::site ? " class=\"site\"" : "",
      words::past_the_contents,
      header(document),
      navigation(parts),
      sections);
}

}  // namespace basinwright::render
