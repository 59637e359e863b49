#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "basinwright/readers/site_log.hpp"
#include "basinwright/sitelog/progress.hpp"
#include "view.hpp"

namespace basinwright::readers {
namespace {

using sitelog::Entry;
using sitelog::Event;

struct Line {
  std::size_t number = 0;
  std::string text;
};

bool blank(std::string_view text) {
  return text.find_first_not_of(" \t\r") == std::string_view::npos;
}

std::vector<Line> lines_of(const std::string& bytes) {
  std::vector<Line> lines;
  std::size_t number = 0;
  for (std::size_t begin = 0; begin < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', begin), bytes.size());
    std::string text = bytes.substr(begin, end - begin);
    ++number;
    if (!text.empty() && text.back() == '\r') text.pop_back();
    if (!blank(text)) lines.push_back({number, std::move(text)});
    begin = end + 1;
  }
  return lines;
}

// Problems of one line, told where it stands in the file.
void tell_in_file(const diagnostics::Problems& found,
                  std::size_t line,
                  diagnostics::Problems& problems) {
  for (diagnostics::Diagnostic d : found.all()) {
    d.at.line = line;
    for (diagnostics::Position& p : d.also) p.line = line;
    problems.add(std::move(d));
  }
}

std::optional<dates::Minute> minute_of(View& view, std::string_view key) {
  const auto text = view.text(key);
  if (!text) return {};
  const auto minute = dates::parse_minute(*text);
  if (!minute) {
    view.context().report(codes::not_a_date,
                          *view.node(key),
                          view.pointer(key),
                          "\"" + *text + "\" is no time to the minute",
                          "Write it as 2027-05-31T08:10.");
  }
  return minute;
}

sitelog::Readings readings_of(View& view) {
  sitelog::Readings r;
  r.air = view.measure<units::Temperature>("air");
  r.shell = view.measure<units::Temperature>("shell");
  r.humidity = view.measure<units::Fraction>("humidity");
  r.ph = view.number("ph");
  r.chlorine = view.measure<units::Concentration>("chlorine");
  r.groundwater = view.measure<units::Length>("groundwater");
  r.wet_film = view.measure<units::Length>("wet_film");
  r.dry_film = view.measure<units::Length>("dry_film");
  return r;
}

// What each kind of entry is worth nothing without; of a list any one will do.
void require_keys(View& view, Event event) {
  constexpr std::array<std::string_view, 8> needed{"task",
                                                   "task",
                                                   "task share",
                                                   "air|shell|humidity|ph|chlorine|groundwater|"
                                                   "wet_film|dry_film",
                                                   "item",
                                                   "task",
                                                   "hold by",
                                                   "text"};
  std::string_view keys = needed.at(static_cast<std::size_t>(event));
  while (!keys.empty()) {
    const std::string_view group = keys.substr(0, keys.find(' '));
    keys.remove_prefix(std::min(keys.size(), group.size() + 1));
    bool there = false;
    for (std::string_view rest = group; !rest.empty();) {
      const std::string_view key = rest.substr(0, rest.find('|'));
      rest.remove_prefix(std::min(rest.size(), key.size() + 1));
      there = there || view.has(key);
    }
    if (there) continue;
    std::string wanted(group);
    std::ranges::replace(wanted, '|', ' ');
    const bool one = group.find('|') == std::string_view::npos;
    view.context().report(codes::missing_key,
                          view.raw(),
                          view.pointer(),
                          one ? "\"" + wanted + "\" is missing, and this kind of entry needs it"
                              : "A reading has nothing that was read",
                          one ? "" : "Give one or more of: " + wanted + ".");
  }
}

void check_word(View& view, std::string_view key, const std::vector<std::string>& known) {
  const Node* at = view.node(key);
  if (at == nullptr || at->kind != Node::Kind::text || at->text.empty()) return;
  if (std::ranges::find(known, at->text) != known.end()) return;
  const std::vector<std::string_view> words(known.begin(), known.end());
  const std::string_view near = diagnostics::nearest(at->text, words);
  std::string hint;
  for (const std::string& word : known)
    hint.append(hint.empty() ? "Known are: " : ", ").append(word);
  if (known.empty()) hint = "The job has none.";
  view.context().report(codes::not_a_choice,
                        *at,
                        view.pointer(key),
                        "\"" + at->text + "\" is no " + std::string(key) + " of this job",
                        near.empty() ? hint : "Did you mean \"" + std::string(near) + "\"?");
}

Entry entry_of(View& view, const KnownWords* known) {
  Entry e;
  e.at = minute_of(view, "at").value_or(dates::Minute());
  const auto event = view.choice("event");
  e.task = view.text("task").value_or("");
  e.section = view.text("section").value_or("");
  e.by = view.text("by").value_or("");
  e.text = view.text("text").value_or("");
  if (const auto share = view.measure<units::Fraction>("share")) e.share = share->share();
  e.people = view.whole("people");
  e.where = static_cast<sitelog::Where>(view.choice("where").value_or(0));
  e.read = readings_of(view);
  e.item = view.text("item").value_or("");
  e.batch = view.text("batch").value_or("");
  e.kind = view.text("kind").value_or("");
  e.amount = view.text("amount").value_or("");
  e.kits = view.whole("kits");
  e.batch_a = view.text("batch_a").value_or("");
  e.batch_b = view.text("batch_b").value_or("");
  e.part_b = view.text("part_b").value_or("");
  e.emptied = minute_of(view, "emptied");
  e.hold = view.text("hold").value_or("");
  if (event) {
    e.event = static_cast<Event>(*event);
    require_keys(view, e.event);
  }
  if (known != nullptr) {
    check_word(view, "task", known->tasks);
    check_word(view, "section", known->sections);
    check_word(view, "hold", known->holds);
  }
  view.finish();
  return e;
}

// One line that is one JSON object.
std::optional<Entry> entry_in(const SourceText& source,
                              const KnownWords* known,
                              diagnostics::Problems& problems) {
  Node root;
  if (!parse_json(source, root, problems)) return {};
  Context context{source, problems};
  if (root.kind != Node::Kind::object) {
    context.report(codes::wrong_type, root, "", "An entry of the site log is a JSON object");
    return {};
  }
  View view(root, site_log_fields(), "", context);
  return entry_of(view, known);
}

class Reader {
 public:
  explicit Reader(const Input& input) : input_(input) {}

  std::optional<sitelog::Log> read(diagnostics::Problems& problems) {
    const std::size_t whole = whole_bytes(input_.bytes);
    lines_ = lines_of(input_.bytes.substr(0, whole));
    for (const Line& line : lines_) read_line(line);
    if (whole < input_.bytes.size()) tell_torn(input_.bytes.substr(whole));
    if (!found_.has_errors()) tell_impossible();
    const bool sound = !found_.has_errors();
    problems.append(found_);
    return sound ? std::optional(std::move(log_)) : std::nullopt;
  }

 private:
  void read_line(const Line& line) {
    diagnostics::Problems found;
    if (auto entry = entry_in(SourceText(input_.name, line.text), nullptr, found)) {
      log_.entries.push_back(std::move(*entry));
      log_.entries.back().line = line.number;
    }
    tell_in_file(found, line.number, found_);
  }

  void tell_torn(const std::string& rest) {
    log_.torn = true;
    const SourceText source(input_.name, rest);
    diagnostics::Problems found;
    tell(source,
         found,
         {.code = codes::torn_line,
          .at = {0, rest.size()},
          .message = "The last line was cut off in writing; it is left out",
          .hint = "Whoever wrote it was not told that it is kept. Record it again if it is missed.",
          .severity = diagnostics::Severity::warning});
    const auto before = static_cast<std::size_t>(
        std::ranges::count(input_.bytes.substr(0, input_.bytes.size() - rest.size()), '\n'));
    tell_in_file(found, before + 1, found_);
  }

  void tell_impossible() {
    for (const sitelog::Impossible& fault : sitelog::impossible(log_)) {
      const Line& line = *std::ranges::find(lines_, log_.entries[fault.entry].line, &Line::number);
      const SourceText source(input_.name, line.text);
      diagnostics::Problems found;
      tell(source,
           found,
           {.code = codes::impossible_entry,
            .at = {0, line.text.size()},
            .message = "This cannot be: " + fault.what,
            .hint = fault.hint});
      diagnostics::Diagnostic d = found.all().front();
      d.at.line = line.number;
      if (fault.other) d.also.push_back({input_.name, log_.entries[*fault.other].line, 1, 1});
      found_.add(std::move(d));
    }
  }

  const Input& input_;
  std::vector<Line> lines_;
  sitelog::Log log_;
  diagnostics::Problems found_;
};

bool parses(const std::string& text, Node& root) {
  const SourceText source("", text);
  diagnostics::Problems ignored;
  return parse_json(source, root, ignored) && root.kind == Node::Kind::object;
}

std::string log_quoted(std::string_view text) {
  constexpr std::string_view hex = "0123456789abcdef";
  constexpr unsigned char first_plain = 0x20;
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < first_plain) {
      out += "\\u00";
      out += hex[byte >> 4U];
      out += hex[byte & 15U];
    } else {
      out += c;
    }
  }
  return out + '"';
}

// Bare when the key takes numbers and the value is one; the reader judges whatever comes out.
std::string value_of(const std::string& key, const std::string& value) {
  const auto fields = site_log_fields();
  const auto row = std::ranges::find(fields, std::string_view(key), &Field::key);
  const bool number =
      row != fields.end() && (row->type == Type::number || row->type == Type::whole);
  double parsed = 0.0;
  const auto read = std::from_chars(value.data(), value.data() + value.size(), parsed);
  const bool whole = read.ec == std::errc() && read.ptr == value.data() + value.size();
  return number && whole ? value : log_quoted(value);
}

}  // namespace

std::optional<sitelog::Log> read_site_log(const Input& input, diagnostics::Problems& problems) {
  return Reader(input).read(problems);
}

std::optional<Entry> read_entry(const Input& input,
                                const KnownWords& known,
                                diagnostics::Problems& problems) {
  diagnostics::Problems found;
  auto entry = entry_in(SourceText(input.name, input.bytes), &known, found);
  if (found.has_errors()) entry.reset();
  problems.append(found);
  return entry;
}

bool fits_log(const sitelog::Log& log,
              const Entry& entry,
              const NewEntry& at,
              diagnostics::Problems& problems) {
  const SourceText source("entry", at.line);
  const auto refuse = [&](const std::string& what, const std::string& hint) {
    diagnostics::Problems found;
    tell(source,
         found,
         {.code = codes::impossible_entry,
          .at = {0, at.line.size()},
          .message = "This cannot be: " + what,
          .hint = hint});
    return found.all().front();
  };
  if (entry.at > at.now) {
    problems.add(refuse("it lies in the future, since it is " + dates::iso(at.now) + " now",
                        "Mend its time, or give the time now with --now."));
    return false;
  }
  sitelog::Log longer = log;
  longer.entries.push_back(entry);
  bool fits = true;
  for (const sitelog::Impossible& fault : sitelog::impossible(longer)) {
    diagnostics::Diagnostic d = refuse(fault.what, fault.hint);
    std::size_t other = fault.other.value_or(fault.entry);
    if (other + 1 == longer.entries.size()) other = fault.entry;
    if (other + 1 < longer.entries.size())
      d.also.push_back({at.log_name, longer.entries[other].line, 1, 1});
    problems.add(std::move(d));
    fits = false;
  }
  return fits;
}

std::size_t whole_bytes(const std::string& bytes) {
  const std::size_t end = bytes.rfind('\n');
  const std::size_t begin = end == std::string::npos ? 0 : end + 1;
  const std::string rest = bytes.substr(begin);
  Node root;
  return blank(rest) || parses(rest, root) ? bytes.size() : begin;
}

std::string entry_line(const std::vector<std::pair<std::string, std::string>>& values) {
  std::string line = "{";
  for (const auto& [key, value] : values) {
    if (line.size() > 1) line.append(", ");
    line.append(log_quoted(key)).append(": ").append(value_of(key, value));
  }
  return line + "}";
}

bool has_time(const std::string& line) {
  Node root;
  return parses(line, root) && root.find("at") != nullptr;
}

std::string with_time(const std::string& line, dates::Minute at) {
  const std::size_t brace = line.find('{');
  if (brace == std::string::npos) return line;
  const std::size_t next = line.find_first_not_of(" \t", brace + 1);
  const bool empty = next != std::string::npos && line[next] == '}';
  return line.substr(0, brace + 1) + "\"at\": \"" + dates::iso(at) + "\"" + (empty ? "" : ", ") +
         line.substr(std::min(next, line.size()));
}

}  // namespace basinwright::readers
