// Pages in HTML, read back by Python's own parser (tests/render/html_page.py), which also holds
// them against the rules of WHATWG HTML and WCAG 2.2 named there.
#include "basinwright/render/html.hpp"

#include <algorithm>

#include "outside.hpp"
#include "render/markup_text.hpp"
#include "render/visible.hpp"
#include "sample.hpp"
#include "support/catch.hpp"

namespace {

using namespace basinwright;
using namespace basinwright::document;
using sample::words;

struct Seen {
  std::vector<std::string> wrong;
  std::vector<std::pair<std::string, std::string>> texts;  ///< Element and hexadecimal text.

  [[nodiscard]] std::vector<std::string> of(const std::string& element) const {
    std::vector<std::string> out;
    for (const auto& [name, text] : texts) {
      if (name == element) out.push_back(text);
    }
    return out;
  }
  [[nodiscard]] bool has(const std::string& element, const std::string& text) const {
    const auto all = of(element);
    return std::ranges::find(all, outside::hex(text)) != all.end();
  }
};

std::optional<Seen> seen(const std::string& html) {
  if (!outside::has("python3", "html_page.py")) return std::nullopt;
  const outside::Folder folder;
  const std::string file = folder.write("page.html", html);
  const auto result = outside::run("/usr/bin/python3 '" + places::source() +
                                   "/tests/render/html_page.py' '" + file + "' 2>&1");
  INFO(result.output);
  REQUIRE(result.status == 0);
  Seen found;
  for (const std::string& line : outside::lines(result.output)) {
    const auto space = line.find(' ');
    REQUIRE(space != std::string::npos);
    const std::string element = line.substr(0, space);
    const std::string text = line.substr(space + 1);
    if (element == "wrong") {
      found.wrong.push_back(text);
    } else {
      found.texts.emplace_back(element, text);
    }
  }
  return found;
}

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

Document page_with(std::vector<Block> blocks) {
  Document page;
  page.title = "Sheet";
  Section section{"", "Part", {}, true};
  section.blocks = std::move(blocks);
  page.sections = {section};
  return page;
}

std::string trimmed(const std::string& text) {
  const auto from = text.find_first_not_of(" \n");
  if (from == std::string::npos) return "";
  return text.substr(from, text.find_last_not_of(" \n") - from + 1);
}

}  // namespace

TEST_CASE("a page keeps the rules of HTML and shows what it holds") {
  const auto found = seen(render::html(sample::page()));
  if (!found) return;
  CHECK(found->wrong.empty());
  CHECK(found->has("h1", "Job sheet for the pool at Elm Road"));
  CHECK(found->has("h2", "Take-off"));
  CHECK(found->has("dt", "Painted area"));
  CHECK(found->has("dd", "92.0 m²"));
  CHECK(found->has("caption", "What to buy, and by when"));
  CHECK(found->has("th", "Supplier and last day to order"));
  CHECK(found->has("td", "1,284.00"));
  CHECK(found->has("li", "The old coating is untested."));
  CHECK(found->has("p", "First swim on 2 April."));
  CHECK_FALSE(found->has("dt", "Hidden fact"));
  CHECK_FALSE(found->has("h2", "Unseen section"));
}

TEST_CASE("hostile texts are text in every place of a page") {
  for (const std::string& name : sample::hostile()) {
    Document page = page_with({});
    page.title = name;
    page.subtitle = name;
    page.notices = {name};
    page.bottom_line = words(name, Role::stop);
    Table table;
    table.caption = name;
    table.columns = {{"", name}, {"", name}, {"", name}};
    table.rows = {{{words(name), words(name), words(name, Role::blank)}},
                  {{words(name), words(""), words("")}, Role::heading}};
    Drawing drawing{name, name, 100, 100, {Label{name, name, {10, 10}}}};
    page.sections.front().title = name;
    page.sections.front().blocks = {sample::said(name),
                                    Facts{{{"", name, words(name)}}},
                                    List{{words(name), words(name, Role::tick)}, false},
                                    table,
                                    drawing};
    INFO(name);
    const auto found = seen(render::html(page));
    if (!found) return;
    CHECK(found->wrong.empty());
    const std::string whole = outside::hex(trimmed(render::visible(name)));
    for (const std::string element :
         {"h1", "h2", "p", "li", "dt", "dd", "caption", "th", "td", "figcaption"}) {
      const auto texts = found->of(element);
      INFO(element);
      CHECK_FALSE(texts.empty());
      const auto same = std::ranges::count_if(
          texts, [&](const std::string& text) { return text == whole || text == "-"; });
      CHECK(same == static_cast<std::ptrdiff_t>(texts.size()));
    }
  }
}

TEST_CASE("nothing is run and nothing is fetched") {
  const std::string html = render::html(sample::page());
  CHECK(contains(html, "default-src 'none'; style-src 'unsafe-inline'"));
  for (const char* never :
       {"<script", "<link", "<img", "<iframe", "http:", "https:", "@import", "url("})
    CHECK_FALSE(contains(html, never));
}

TEST_CASE("the paper is the one asked for") {
  CHECK(contains(render::html(sample::page()), "@page{size:A4;"));
  CHECK(contains(render::html(sample::page(), {Paper::letter}), "@page{size:letter;"));
}

TEST_CASE("every printed sheet says which page it belongs to") {
  // A name stands in the style sheet by numbers (CSS Syntax 4.3.7) and can end nothing there.
  Document page = sample::page();
  page.title = "Sheet";
  page.subtitle = "A\"}</style>\n" + std::string(200, 'x');
  const std::string html = render::html(page);
  const std::string foot =
      "@bottom-left{content:\"Sheet \\0000b7\\000020A\\000022\\00007d\\00003c\\00002fstyle";
  CHECK(contains(html, foot));
  CHECK(contains(html, "xxx\\002026\";"));
  CHECK(html.find("</style>") == html.rfind("</style>"));
}

TEST_CASE("a drawing as large as the paper takes a page of its own") {
  // ISO 216: A4 is 210 x 297 mm; ANSI Y14.1: letter is 8.5 x 11 in.
  const auto made = [](double w, double h, Paper paper) {
    return render::html(page_with({Drawing{"Plan", "A plan.", w, h, {}}}), {paper});
  };
  CHECK(contains(made(210, 297, Paper::a4), "<figure class=\"sheet upright\">"));
  CHECK(contains(made(297, 210, Paper::a4), "<figure class=\"sheet across\">"));
  CHECK(contains(made(8.5 * 25.4, 11 * 25.4, Paper::letter), "<figure class=\"sheet upright\">"));
  CHECK(contains(made(180, 100, Paper::a4), "<figure>"));
}

TEST_CASE("boxes and lines are there to be ticked and filled in, and said") {
  Table form;
  form.caption = "Readings";
  form.columns = {{"", "What"}, {"", "Read"}, {"", "Inside"}};
  form.rows = {{{words("Air"), words("°C", Role::blank), words("", Role::tick)}}};
  const std::string html =
      render::html(page_with({form, List{{words("Done", Role::tick)}, false}}));
  CHECK(contains(html, "<span class=\"line\"></span> °C"));
  CHECK(contains(html, "<span class=\"box\"></span><span class=\"unseen\">to tick</span>"));
  CHECK(contains(html,
                 "<ul class=\"ticks\">\n<li class=\"tick\"><span class=\"box\"></span><span>Done"));
}

TEST_CASE("a table without words in its head has none, and a group has a body of its own") {
  Table table;
  table.columns = {{"", ""}, {"", ""}};
  table.rows = {{{words("One"), words("")}, Role::heading},
                {{words("a"), words("b")}},
                {{words("Two"), words("")}, Role::heading},
                {{words("c"), words("d")}}};
  const std::string html = render::html(page_with({table}));
  CHECK_FALSE(contains(html, "<thead>"));
  CHECK(contains(
      html, "</tbody>\n<tbody>\n<tr class=\"group\"><th colspan=\"2\" scope=\"rowgroup\">Two"));
  CHECK(contains(html, "<caption class=\"unseen\">Part</caption>"));
}

TEST_CASE("a folded section with the key of a number opens beside it and nowhere else") {
  Document page;
  page.title = "Sheet";
  Section numbers{"quantities", "Quantities", {}, true};
  numbers.blocks.emplace_back(document::Facts{
      {{"kits", "Kits", {"8", Value(8), Role::quantity}}, {"acid_l", "Acid", {"2 L"}}}});
  Section how{"quantities.kits", "", {sample::said("area by cover")}, true};
  how.folded = true;
  page.sections = {numbers, how};
  const std::string html = render::html(page);
  CHECK(contains(html, "8</dd><dd class=\"beside\"><details>\n<summary>how</summary>"));
  CHECK(html.find("area by cover") == html.rfind("area by cover"));
  CHECK(html.find("<details>") == html.rfind("<details>"));
}

TEST_CASE(
    "a number in a table opens to how it came about, and leads on to the numbers it rests on") {
  Document page;
  page.title = "Sheet";
  document::Table table;
  table.columns = {{"item", "Item"}, {"packs", "Packs"}, {"total", "Price"}};
  table.rows = {
      {{{"acid", "acid"}, {"2 cans", Value(document::Array{Value(2)})}, {"9", Value(9)}}}};
  Section goods{"purchases", "Goods", {table}, true};
  const auto how = [](const std::string& key, Cell origin) {
    document::Table tree;
    tree.columns = {{"", "Number"}, {"", "Where from"}};
    tree.rows = {{{{"count"}, std::move(origin)}}};
    Section section{key, "", {tree}, true};
    section.folded = true;
    return section;
  };
  page.sections = {goods,
                   how("purchases.0.packs.0.count", {"given: job.json:3:4"}),
                   how("purchases.0.total", {"computed", Value("purchases.0.packs.0.count")})};
  const std::string html = render::html(page);
  CHECK(contains(
      html, "<details class=\"how\"><summary>9</summary><div><div id=\"how-purchases.0.total\">"));
  CHECK(contains(html, "<details class=\"how\"><summary>2 cans</summary>"));
  CHECK(contains(html, "<a href=\"#how-purchases.0.packs.0.count\">computed</a>"));
  CHECK(contains(html, ">acid</th>"));
  const auto found = seen(html);
  if (found) CHECK(found->wrong.empty());
  // A row named by such a number has no heading cell: nothing opens in one.
  page.sections.front() = Section{
      "purchases", "Goods", {Table{"", "", {{"total", "Price"}}, {{{{"9", Value(9)}}}}}}, true};
  const std::string first = render::html(page);
  CHECK(contains(first, "><details class=\"how\"><summary>9</summary>"));
  CHECK(!contains(first, "<th scope=\"row\"><details"));
}

TEST_CASE("a section may be folded, under another, or begin a page") {
  Document page = page_with({sample::said("above")});
  Section folded{"", "How", {sample::said("in detail")}, true};
  folded.folded = true;
  Section under{"", "Within", {sample::said("below")}, true};
  under.under = true;
  under.own_page = true;
  page.sections.push_back(folded);
  page.sections.push_back(under);
  const std::string html = render::html(page);
  CHECK(contains(html, "<details>\n<summary><h2 id=\"part-2-title\">How</h2>\n</summary>"));
  CHECK(contains(html, "<section id=\"part-3\" class=\"under page-start\""));
  CHECK(contains(html, "<h3 id=\"part-3-title\">Within</h3>"));
  CHECK_FALSE(contains(html, "<a href=\"#part-3\">"));
  const auto found = seen(html);
  if (found) CHECK(found->wrong.empty());
}
