#include "basinwright/render/markdown.hpp"

#include <stdexcept>

#include "outside.hpp"
#include "render/markdown_text.hpp"
#include "render/visible.hpp"
#include "sample.hpp"

using namespace sample;
using namespace basinwright::render;

namespace {

/// What cmark-gfm with its extensions makes of a page, element by element in hexadecimal.
std::optional<std::string> as_read(const std::string& page_text) {
  if (!outside::has("cmark-gfm", "Markdown")) return std::nullopt;
  const outside::Folder folder;
  const std::string file = folder.write("page.md", page_text);
  const outside::Result html = outside::run(
      "/usr/bin/cmark-gfm --unsafe -e table -e strikethrough -e autolink -e tasklist '" + file +
      "'");
  REQUIRE(html.status == 0);
  return outside::read_back("html", html.output);
}

std::string element(const std::string& name, const std::string& words) {
  return name + ' ' + outside::hex(words) + '\n';
}

/// A text as people read it: trimmed, breaks kept.
std::string shown(const std::string& name) {
  std::string seen = visible(name);
  seen.erase(0, seen.find_first_not_of(" \n"));
  seen.erase(seen.find_last_not_of(" \n") + 1);
  return seen;
}

}  // namespace

// CommonMark 0.29, sections 2.4 (backslash escapes), 4 (blocks) and 6 (inlines); GFM tables.
TEST_CASE("signs that make markup are escaped inside a line") {
  CHECK(markdown_inline("a|b") == "a\\|b");
  CHECK(markdown_inline("\\ ` * _ < > [ ]") == "\\\\ \\` \\* \\_ \\< \\> \\[ \\]");
  CHECK(markdown_inline("one\ntwo") == "one<br>two");
  CHECK(markdown_inline("R&D &amp; &#65;") == "R\\&D \\&amp; \\&#65;");
  CHECK(markdown_inline("salt & water") == "salt & water");
  CHECK(markdown_inline("  trimmed  ") == "trimmed");
  CHECK(markdown_inline("12.5 - 3, 50 %") == "12.5 - 3, 50 %");
}

TEST_CASE("a line does not begin a block") {
  CHECK(markdown_line("# x") == "\\# x");
  CHECK(markdown_line("- x") == "\\- x");
  CHECK(markdown_line("---") == "\\---");
  CHECK(markdown_line("+ x") == "\\+ x");
  CHECK(markdown_line("1. x") == "1\\. x");
  CHECK(markdown_line("12) x") == "12\\) x");
  CHECK(markdown_line("-5 C") == "-5 C");
  CHECK(markdown_line("1.5 L") == "1.5 L");
}

TEST_CASE("emphasis follows the role where it would hold") {
  CHECK(emphasised("x", Role::total) == "**x**");
  CHECK(emphasised("x", Role::stop) == "**x**");
  CHECK(emphasised("x", Role::assumed) == "*x*");
  CHECK(emphasised("x", Role::quantity) == "x");
  CHECK(emphasised("", Role::total).empty());
  CHECK(emphasised("\u00A0x", Role::total) == "\u00A0x");
}

TEST_CASE("tables read well as they stand") {
  Table table{"", "", {{"", "Item"}, {"", "Price", Align::right}}, {}, true};
  table.rows = {{{words("Acid"), amount("61.40", "")}},
                {{words("Two-part epoxy"), amount("1,284.00", "")}},
                {{words("Total"), amount("1,345.40", "")}, Role::total}};
  Document document;
  document.title = "Materials";
  document.sections = {{"", "To buy", {table}, true}};
  CHECK(markdown(document) ==
        "# Materials\n"
        "\n"
        "## To buy\n"
        "\n"
        "| Item           |        Price |\n"
        "| -------------- | -----------: |\n"
        "| Acid           |        61.40 |\n"
        "| Two-part epoxy |     1,284.00 |\n"
        "| **Total**      | **1,345.40** |\n");
}

// Outside reader: cmark-gfm, with the page's elements written out by hand.
TEST_CASE("another reader finds the elements of the page") {
  Document document = page();
  std::get<Table>(document.sections[1].blocks[0]).rows.resize(1);
  const auto read = as_read(markdown(document));
  if (!read) return;
  std::string expected = element("h1", "Job sheet for the pool at Elm Road") +
                         element("p", "Number 17, revision 2") + element("p", document.notices[0]) +
                         element("p", document.notices[1]) + element("h2", "Take-off") +
                         element("li", "Painted area: 92.0 m²") + element("li", "Cove: 31.4 m") +
                         element("li", "Rim to water: 100 mm (assumed)");
  expected += element("p", std::get<Paragraph>(document.sections[0].blocks[1]).text) +
              element("h2", "Materials") + element("h3", "What to buy, and by when");
  const Table table = purchases();
  for (const Column& column : table.columns) expected += element("th", column.title);
  for (const Cell& cell : table.rows[0].cells) expected += element("td", cell.text);
  for (const Block& block : {document.sections[1].blocks[1], document.sections[1].blocks[2]}) {
    for (const Cell& item : std::get<List>(block).items) expected += element("li", item.text);
  }
  expected += element("p", "First swim on 2 April.");
  CHECK(outside::lines(*read) == outside::lines(expected));
}

// Outside reader: cmark-gfm; no text may come out as anything but itself.
TEST_CASE("hostile texts are text in every place") {
  for (const std::string& name : hostile()) {
    Document document;
    document.title = name;
    document.subtitle = name;
    document.notices = {name};
    Table table{"", name, {{"", name}, {"", "End"}}, {{{words(name), words("end")}}}, true};
    document.sections = {{"",
                          name,
                          {said(name),
                           table,
                           List{{words(name), words(name, Role::stop)}, true},
                           Facts{{{"", name, words(name, Role::assumed)}, {"", "", words(name)}}}},
                          true}};
    document.bottom_line = words(name);
    const std::string page_text = markdown(document);
    const auto read = as_read(page_text);
    if (!read) return;
    const std::string text = shown(name);
    std::string expected = element("h1", text) + element("p", text) + element("p", text) +
                           element("h2", text) + element("p", text) + element("h3", text);
    expected += element("th", text) + element("th", "End") + element("td", text) +
                element("td", "end") + element("li", text) + element("li", text) +
                element("li", text + ": " + text) + element("li", text) + element("p", text);
    INFO(page_text);
    CHECK(outside::lines(*read) == outside::lines(expected));
  }
}

// CommonMark 0.29, section 5.3: a list ends where the marker changes.
TEST_CASE("a list that follows a list is one of its own") {
  const List bulleted{{words("one")}, false};
  const List numbered{{words("two")}, true};
  Document document;
  document.sections = {{"", "", {bulleted, bulleted, bulleted, numbered, numbered}, true}};
  CHECK(markdown(document) == "- one\n\n* one\n\n- one\n\n1. two\n\n1) two\n");
}

TEST_CASE("what is not shown is not in Markdown and a broken table is our fault") {
  const std::string page_text = markdown(page());
  CHECK(page_text.find("Hidden") == std::string::npos);
  CHECK(page_text.find("Unseen") == std::string::npos);
  CHECK(markdown(Document{}).empty());
  Document broken;
  broken.sections = {
      {"", "", {Table{"t", "", {{"k", "K"}, {"l", "L"}}, {{{words("x")}}}, true}}, true}};
  CHECK_THROWS_AS(markdown(broken), std::logic_error);
}
