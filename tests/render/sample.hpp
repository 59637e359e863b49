// A made-up page with every kind of block, and texts that mean harm.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "basinwright/document/document.hpp"

namespace sample {

using namespace basinwright::document;

inline Cell words(std::string text, Role role = Role::plain) {
  return {text, text, role};
}
inline Cell measure(std::string text, double value) {
  return {std::move(text), value, Role::quantity};
}
inline Paragraph said(std::string text, Role role = Role::plain) {
  return {"", std::move(text), {}, role, true};
}
inline Cell amount(std::string text, const char* value) {
  return {std::move(text), value, Role::money};
}

inline Table purchases() {
  Table table;
  table.key = "purchases";
  table.caption = "What to buy, and by when";
  table.columns = {{"item", "Item"},
                   {"need_l", "Need", Align::right},
                   {"", "Packs"},
                   {"supplier", "Supplier and last day to order"},
                   {"total", "Price", Align::right}};
  table.rows = {{{words("Hydrochloric acid, thirty-three per cent"),
                  measure("24.6 L", 24.6),
                  words("4 × 5 L and 5 × 1 L"),
                  words("Trade counter, to be ordered by Tuesday 4 March"),
                  amount("61.40", "61.40")}},
                {{words("Two-part epoxy finish, mid blue"),
                  measure("31.0 L", 31.0),
                  words("6 kits of 5.2 L"),
                  words("Coating supplier"),
                  amount("1,284.00", "1284.00")}},
                {{words("Bicarbonate of soda"),
                  measure("100.25 L", 100.25),
                  words("1 sack"),
                  words("Any"),
                  amount("-3.00", "-3.00")}},
                {{words("Total"), words(""), words(""), words(""), amount("1,342.40", "1342.40")},
                 Role::total,
                 false}};
  return table;
}

inline Document page() {
  Document document;
  document.title = "Job sheet for the pool at Elm Road";
  document.subtitle = "Number 17, revision 2";
  document.notices = {
      "No weather file: the dates follow the calendar only, and rain will move them all.",
      "The old coating is untested."};
  Section take_off{"takeoff", "Take-off", {}, true};
  take_off.blocks = {
      Facts{{{"painted_area_m2", "Painted area", measure("92.0 m²", 92.04)},
             {"cove.length_m", "Cove", measure("31.4 m", 31.4)},
             {"rim_to_water_m", "Rim to water", {"100 mm (assumed)", 0.1, Role::assumed}},
             {"hidden", "Hidden fact", words("never shown"), false}}},
      Paragraph{"note",
                "Areas follow the tape measurements within their tolerance of one per cent; cut in "
                "the cove before the walls.",
                "as measured"}};
  Section materials{"", "Materials", {}, true};
  materials.blocks = {purchases(),
                      List{{words("Add acid to water, never water to acid.", Role::caution),
                            words("Rinse twice before anyone goes in without boots and gloves."),
                            words("Stop when rain is due.", Role::stop)},
                           false},
                      List{{words("Drain."), words("Wash.", Role::good)}, true}};
  Section unseen{"unseen", "Unseen section", {}, false};
  unseen.blocks = {Facts{{{"answer", "Unseen", {"forty-two", 42, Role::plain}}}}};
  document.sections = {take_off, materials, unseen};
  document.bottom_line = words("First swim on 2 April.", Role::good);
  return document;
}

/// Names and notes as nobody should write them.
inline std::vector<std::string> hostile() {
  using namespace std::string_literals;
  return {"plain \"quoted\", with a comma",
          "two\nlines",
          "carriage\r\nreturn",
          "lone\rreturn",
          "tab\there",
          "escape \x1b[31mred\x1b[0m and \x1b]0;title\x07",
          "C1 \xC2\x9B"
          "31m",
          "nul \0 inside"s,
          "\x7F"
          "delete",
          "not UTF-8: \xFF\xC3(\xED\xA0\x80",
          "right to left: שלום and \xE2\x80\xAE"
          "desrever",
          "عمق المسبح ٢٫٥ م",
          "emoji 🏊‍♀️ and 👩🏽‍🎨",
          "combining e\xCC\x81 a\xCC\x8A\xCC\x81",
          "全角文字で書かれたとても長いプールの名前",
          "=1+1",
          "+49 30 1234",
          "-2+3",
          "@SUM(A1)",
          "\t=1",
          "<script>alert(1)</script>",
          "<!-- comment --> & &lt; &#65;",
          "![image](javascript:alert(1)) [link](http://example.com/a_b_c)",
          "www.example.com/x_y_z or https://example.com/a|b",
          "*bold* _under_ ~~gone~~ `code` ``a`b``",
          "# heading",
          "trailing #",
          "- item",
          "--- ",
          "=====",
          "1. first",
          "12) twelfth",
          "> quote",
          "a | b \\| c \\",
          "    four spaces in front",
          "back\\slash \\n \\* \\\\",
          "{{template}} ${HOME} `id` %s %n",
          "'; DROP TABLE pools; --",
          "\xEF\xBB\xBF"
          "byte order mark",
          "line\xE2\x80\xA8separator"};
}

}  // namespace sample
