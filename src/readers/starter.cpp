#include "basinwright/readers/starter.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <utility>

#include "basinwright/readers/field.hpp"
#include "basinwright/shell/parts.hpp"
#include "basinwright/units/unit.hpp"
#include "json_text.hpp"

namespace basinwright::readers {
namespace {

/// A question whose row is found by its pointer; words of its own where the row's are too short.
struct AnswerRow {
  std::string_view key, pointer, words;
};
constexpr std::array before_sizes{
    AnswerRow{"units", "/units", "Units of the tape"},
    AnswerRow{"outline", "/pool/outline/kind", "Shape of the pool, seen from above"}};
constexpr std::array after_sizes{
    AnswerRow{"depth", "", "Depth of a level floor, from the rim down"},
    AnswerRow{"shallow", "", "Depth at the shallow end, from the rim down"},
    AnswerRow{"deep", "", "Depth at the deep end, from the rim down"},
    AnswerRow{"tile-band", "/pool/rim_to_paint", ""},
    AnswerRow{"surface", "/surfaces/0/coating", "What is on the shell now"},
    AnswerRow{"acetone-test", "/surfaces/0/acetone_test", "What acetone did to the old coat"},
    AnswerRow{"lead-test", "/condition/lead_test", ""},
    AnswerRow{"coating", "/coating/system", ""},
    AnswerRow{"coats", "/coating/coats", "How many coats"},
    AnswerRow{"number", "/job/number", ""},
    AnswerRow{"client", "/job/client/name", ""},
    AnswerRow{"address", "/job/client/address", ""},
    AnswerRow{"contractor", "/job/contractor/name", "Contractor's trading name"},
    AnswerRow{"start", "/job/start", ""}};

const Field& field_named(std::span<const Field> fields, std::string_view key) {
  return *std::ranges::find(fields, key, &Field::key);
}

std::span<const Alternative> outlines() {
  return field_named(pool_fields(), "outline").alternatives;
}

bool is_few_lengths(const Alternative& outline) {
  return std::ranges::all_of(outline.fields, [](const Field& f) { return f.type == Type::length; });
}

std::vector<std::string> words_in(std::string_view words) {
  std::vector<std::string> out;
  while (!words.empty()) {
    const std::size_t space = std::min(words.find(' '), words.size());
    out.emplace_back(words.substr(0, space));
    words.remove_prefix(std::min(space + 1, words.size()));
  }
  return out;
}

// The row of a key below objects and lists of objects; nothing where the way ends.
const Field* field_at(std::string_view pointer) {
  std::span<const Field> fields = job_fields();
  const Field* found = nullptr;
  while (!pointer.empty()) {
    const std::size_t end = std::min(pointer.find('/', 1), pointer.size());
    const std::string_view key = pointer.substr(1, end - 1);
    pointer.remove_prefix(end);
    if (key == "0") continue;
    const auto it = std::ranges::find(fields, key, &Field::key);
    if (it == fields.end()) return nullptr;
    found = &*it;
    fields = key == "pool" ? pool_fields() : found->fields;
  }
  return found;
}

std::string option_of(std::string_view key) {
  std::string out(key);
  std::ranges::replace(out, '_', '-');
  return out;
}

StarterQuestion question_of(const AnswerRow& row) {
  StarterQuestion q{std::string(row.key), std::string(row.words), std::string(row.pointer), {}};
  if (row.key == "outline") {
    for (const Alternative& a : outlines()) {
      if (is_few_lengths(a)) q.choices.emplace_back(a.kind);
    }
  } else if (const Field* field = field_at(row.pointer)) {
    if (q.words.empty()) q.words = field->doc;
    q.choices = words_in(field->choices);
    q.is_measure = field->type == Type::length;
  }
  if (row.pointer.empty()) {  // A depth: its place depends on the other.
    q.pointer = row.key == "depth"
                    ? "/pool/floor/depth"
                    : std::string("/pool/floor/points/") + (row.key == "deep" ? "1/1" : "0/1");
    q.is_measure = true;
  }
  return q;
}

StarterQuestion question_of(const Field& size) {
  return {.key = option_of(size.key),
          .words = std::string(size.doc),
          .pointer = "/pool/outline/" + std::string(size.key),
          .choices = {},
          .is_measure = true,
          .is_size = true};
}

// The answers as JSON.
class Given {
 public:
  explicit Given(const Answers& answers) : answers_(answers) {}

  [[nodiscard]] std::string plain(std::string_view key, std::string_view fallback = "") const {
    const auto it = answers_.find(std::string(key));
    return it == answers_.end() || it->second.empty() ? std::string(fallback) : it->second;
  }
  [[nodiscard]] bool has(std::string_view key) const { return !plain(key).empty(); }
  [[nodiscard]] std::string text(std::string_view key, std::string_view fallback = "") const {
    return in_quotes(plain(key, fallback));
  }
  /// A number stays one, so that it is read in the file's units.
  [[nodiscard]] std::string measure(std::string_view key) const {
    const auto number = units::parse_number(plain(key));
    if (const double* bare = std::get_if<double>(&number)) return fmt::format("{}", *bare);
    return text(key);
  }
  /// `, "name": value` when it was answered.
  [[nodiscard]] std::string more(std::string_view name, std::string_view key, bool is_text) const {
    if (!has(key)) return "";
    return fmt::format(", {}: {}", in_quotes(name), is_text ? text(key) : measure(key));
  }

 private:
  const Answers& answers_;
};

std::string outline_of(const Given& given) {
  const std::string kind = given.plain("outline", "rectangle");
  std::string out = fmt::format("{{ \"kind\": {}", in_quotes(kind));
  for (const Alternative& a : outlines()) {
    if (a.kind != kind) continue;
    for (const Field& size : a.fields) out += given.more(size.key, option_of(size.key), false);
  }
  return out + " }";
}

// A place along the pool to the millimetre, as a tape gives it.
std::string along(units::Length place, bool us) {
  std::string text = fmt::format("{:.3f}", us ? place.in(units::feet) : place.in(units::metres));
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return in_quotes((text == "-0" ? "0" : text) + (us ? " ft" : " m"));
}

std::string level(const std::string& depth) {
  return fmt::format("{{ \"kind\": \"constant\", \"depth\": {} }}", depth);
}

std::string starter_floor(const Given& given,
                          const std::string& outline,
                          const std::string& units) {
  if (!given.has("deep")) return level(given.measure(given.has("depth") ? "depth" : "shallow"));
  // The ends are where the outline has them: read with a level floor, it says.
  diagnostics::Problems ignored;
  const std::string flat =
      fmt::format("{{\"units\": {}, \"pool\": {{\"outline\": {}, \"floor\": {}}}}}",
                  in_quotes(units),
                  outline,
                  level(given.measure("deep")));
  const auto job = read_job({"", flat}, ignored);
  if (!job) return level(given.measure("deep"));
  const shell::SectionAxis axis = shell::section_axis(job->bodies.front().pool);
  const bool us = units == "us";
  return fmt::format("{{ \"kind\": \"breaks\", \"points\": [[{}, {}], [{}, {}]] }}",
                     along(axis.first, us),
                     given.measure("shallow"),
                     along(axis.last, us),
                     given.measure("deep"));
}

std::string heading_of(const Given& given) {
  std::string out = fmt::format(R"(    "number": {},
    "client": {{ "name": {}, "address": {} }},
    "contractor": {{ "name": {}, "address": "", "registration": "", "insurance": "" }})",
                                given.text("number"),
                                given.text("client"),
                                given.text("address"),
                                given.text("contractor"));
  if (given.has("start")) out += ",\n    \"start\": " + given.text("start");
  return out;
}

std::string pool_of(const Given& given, const std::string& units) {
  const std::string outline = outline_of(given);
  std::string out = fmt::format(
      "    \"outline\": {},\n    \"floor\": {}", outline, starter_floor(given, outline, units));
  if (given.has("tile-band")) out += ",\n    \"rim_to_paint\": " + given.measure("tile-band");
  return out;
}

}  // namespace

std::vector<StarterQuestion> starter_questions() {
  std::vector<StarterQuestion> out;
  for (const AnswerRow& row : before_sizes) out.push_back(question_of(row));
  for (const Alternative& outline : outlines()) {
    if (!is_few_lengths(outline)) continue;
    for (const Field& size : outline.fields) {
      const bool known =
          std::ranges::find(out, option_of(size.key), &StarterQuestion::key) != out.end();
      if (!known) out.push_back(question_of(size));
    }
  }
  for (const AnswerRow& row : after_sizes) out.push_back(question_of(row));
  return out;
}

std::vector<std::string> starter_sizes(std::string_view outline) {
  std::vector<std::string> out;
  for (const Alternative& a : outlines()) {
    if (a.kind != outline || !is_few_lengths(a)) continue;
    for (const Field& size : a.fields) out.push_back(option_of(size.key));
  }
  return out;
}

std::string starter_job(const Answers& answers) {
  const Given given(answers);
  const std::string units = given.plain("units", "metric");
  return fmt::format(R"({{
  "basinwright": 1,
  "units": {},
  "job": {{
{}
  }},
  "site": {{ "access": {{ "parking": "" }}, "hours": "", "emergency": "" }},
  "pool": {{
{}
  }},
  "surfaces": [
    {{ "where": "all"{}, "painted_on": "unknown", "acetone_test": {}, "places": "" }}
  ],
  "condition": {{ "lead_test": {}, "leak_test": "not_done" }},
  "coating": {{ "colour": ""{}{} }},
  "terms": {{ "warranty": "", "cancellation": "" }}
}}
)",
                     in_quotes(units),
                     heading_of(given),
                     pool_of(given, units),
                     given.more("coating", "surface", true),
                     given.text("acetone-test", "not_done"),
                     given.text("lead-test", "not_done"),
                     given.more("system", "coating", true),
                     given.more("coats", "coats", false));
}

}  // namespace basinwright::readers
