// What a page says, before any format: sections of paragraphs, facts, tables and drawings.
//
// Every number stands here twice: as an exact `value` for machine formats and as the `text` that
// `report` made of it once for people. Human formats ignore values, machine formats ignore texts,
// and no renderer computes.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "basinwright/document/agenda.hpp"
#include "basinwright/document/drawing.hpp"
#include "basinwright/document/value.hpp"

namespace basinwright::document {

/// What a piece of text is; a renderer chooses how that looks.
enum class Role {
  plain,
  heading,   ///< A row or cell that names others.
  quantity,  ///< A measure; set right in tables.
  money,     ///< An amount; set right in tables.
  total,     ///< A sum of what stands above.
  good,      ///< A gate that is open, a check that holds.
  caution,   ///< A hazard or a limit.
  stop,      ///< The job must stop here.
  assumed,   ///< A value the user did not give.
  muted,     ///< Detail that may be passed over.
  tick,      ///< Has a box before it for somebody to tick.
  blank      ///< Has room before it for somebody to write in; the text is the unit.
};

/// One value, exact and worded. An empty `key` keeps it out of machine formats; `shown` false keeps
/// it out of human ones.
struct Cell {
  std::string text;
  Value value;
  Role role = Role::plain;
};

/// A sentence or two of its own.
struct Paragraph {
  std::string key;
  std::string text;
  Value value;
  Role role = Role::plain;
  bool shown = true;
};

/// A named value: "Painted area  92.0 m2".
struct Fact {
  std::string key;  ///< Dotted path below the section's key ("etch.acid_l").
  std::string label;
  Cell cell;
  bool shown = true;
};

/// Facts under one another, labels aligned.
struct Facts {
  std::vector<Fact> facts;
};

enum class Align { left, right };

struct Column {
  std::string key;  ///< Member name of each row's object in machine formats.
  std::string title;
  Align align = Align::left;
  bool shown = true;
};

struct Row {
  std::vector<Cell> cells;  ///< One a column.
  Role role = Role::plain;
  bool machine = true;  ///< False: a row for people only, such as a subtotal.
};

/// A table; in machine formats an array of one object a row at `key`.
struct Table {
  std::string key;  ///< Dotted path below the section's key; empty: the section's key itself.
  std::string caption;
  std::vector<Column> columns;
  std::vector<Row> rows;
  bool shown = true;
};

/// A list of short items: steps, cautions.
struct List {
  std::vector<Cell> items;
  bool numbered = false;
};

/// A drawing is seen in formats that can show one; in other human ones its title and description
/// stand for it.
using Block = std::variant<Paragraph, Facts, Table, List, Drawing>;

/// A part of the page under a title. Machine formats put its keyed content at `key` (a dotted path;
/// empty: the document's root).
struct Section {
  std::string key;
  std::string title;
  std::vector<Block> blocks;
  bool shown = true;
  bool under = false;     ///< A part of the section before it.
  bool own_page = false;  ///< Starts a page where there are pages.
  bool folded = false;    ///< Detail that a reader opens where pages can be opened.
};

/// Who reads it where.
enum class Reading { desk, site };  ///< On site: at arm's length, in the sun, with gloves on.

/// A whole page.
struct Document {
  std::string title;
  std::string subtitle;
  std::vector<std::string> notices;  ///< Said first, before any number: what this page rests on.
  std::vector<Section> sections;
  Cell bottom_line;  ///< The most important line; text formats print it last.
  Reading reading = Reading::desk;
  Agenda agenda;
};

}  // namespace basinwright::document
