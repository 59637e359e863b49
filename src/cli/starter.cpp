#include "starter.hpp"

#include <unistd.h>
#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <utility>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/readers/starter.hpp"
#include "files.hpp"
#include "inputs.hpp"
#include "output.hpp"

namespace basinwright::cli {
namespace {

using readers::Answers;
using readers::StarterQuestion;

Status wrong(const std::string& text) {
  complain("basinwright: " + text + "\n");
  return Status::misuse;
}

std::string listed(const std::vector<std::string>& words, const std::string& before = "") {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + before + word;
  return out;
}

std::string outline_in(const Answers& answers) {
  const auto it = answers.find("outline");
  return it == answers.end() || it->second.empty() ? "rectangle" : it->second;
}

bool answered(const Answers& answers, const std::string& key) {
  const auto it = answers.find(key);
  return it != answers.end() && !it->second.empty();
}

std::vector<std::string> missing(const Answers& answers) {
  std::vector<std::string> out;
  for (const std::string& size : readers::starter_sizes(outline_in(answers))) {
    if (!answered(answers, size)) out.push_back("--" + size);
  }
  if (answered(answers, "depth")) return out;
  if (!answered(answers, "shallow")) out.emplace_back("--depth (or --shallow and --deep)");
  return out;
}

// Options that say what the others leave no room for.
std::optional<std::string> clash_in(const Answers& answers) {
  const std::string outline = outline_in(answers);
  const std::vector<std::string> sizes = readers::starter_sizes(outline);
  for (const StarterQuestion& q : readers::starter_questions()) {
    if (!q.is_size || !answered(answers, q.key)) continue;
    if (std::ranges::find(sizes, q.key) == sizes.end())
      return "--" + q.key + " is no measurement of the outline " + outline + ", which takes " +
             listed(sizes, "--") + ".";
  }
  const bool level = answered(answers, "depth");
  const bool sloping = answered(answers, "shallow") || answered(answers, "deep");
  if (level && sloping) return "--depth is for a level floor; give it, or --shallow and --deep.";
  if (answered(answers, "deep") && !answered(answers, "shallow"))
    return "--deep goes with --shallow.";
  return {};
}

// Asks on the terminal, one line an answer. What stands in the options is not asked.
class Interview {
 public:
  Interview(Answers& answers, std::vector<std::string> systems)
      : answers_(answers), systems_(std::move(systems)) {}

  /// False when the answers ended before the questions.
  [[nodiscard]] bool run() {
    complain(
        "A few measurements, and the job file is made. Lengths with their unit, such as 9.2 m or "
        "30 ft 6 in.\n");
    for (const StarterQuestion& q : readers::starter_questions()) {
      if (!answered(answers_, q.key) && !passed_over(q) && !ask(q)) return false;
    }
    return true;
  }

  [[nodiscard]] std::optional<std::string> file(const std::string& usual) {
    complain("File to write (Enter: " + usual + "): ");
    auto line = read_line();
    if (line && line->empty()) line = usual;
    return line;
  }

 private:
  [[nodiscard]] bool passed_over(const StarterQuestion& q) const {
    const std::vector<std::string> sizes = readers::starter_sizes(outline_in(answers_));
    if (q.is_size) return std::ranges::find(sizes, q.key) == sizes.end();
    if (q.key == "depth") return true;  // Asked as the shallow end's, with Enter for the deep end.
    const bool depths = q.key == "shallow" || q.key == "deep";
    return depths && answered(answers_, "depth");
  }

  [[nodiscard]] static bool needed(const StarterQuestion& q) {
    return q.is_size || q.key == "shallow";
  }

  [[nodiscard]] std::string without(const StarterQuestion& q) const {
    if (q.key == "units") return "metric";
    if (q.key == "outline") return "rectangle";
    if (q.key == "deep") return "the same, a level floor";
    return q.key == "tile-band" ? "none" : "not known yet";
  }

  [[nodiscard]] const std::vector<std::string>& choices(const StarterQuestion& q) const {
    return q.key == "coating" ? systems_ : q.choices;
  }

  [[nodiscard]] bool ask(const StarterQuestion& q) {
    for (;;) {
      const std::vector<std::string>& known = choices(q);
      complain(q.words + (known.empty() ? "" : " [" + listed(known) + "]") +
               (needed(q) ? "" : " (Enter: " + without(q) + ")") + ": ");
      const auto line = read_line();
      if (!line) return false;
      const std::string fault = line->empty() ? without_answer(q) : fault_of(q, *line);
      if (fault.empty()) {
        answers_[q.key] = *line;
        return true;
      }
      complain("  " + fault + "\n");
    }
  }

  [[nodiscard]] static std::string without_answer(const StarterQuestion& q) {
    return needed(q) ? "Nothing can be reckoned without it; an estimate will do for now." : "";
  }

  [[nodiscard]] std::string fault_of(const StarterQuestion& q, const std::string& answer) const {
    const std::vector<std::string>& known = choices(q);
    if (!known.empty() && std::ranges::find(known, answer) == known.end()) {
      const std::string_view near = diagnostics::nearest(answer, {known.begin(), known.end()});
      return "One of: " + listed(known) + "." +
             (near.empty() ? "" : " Did you mean \"" + std::string(near) + "\"?");
    }
    if (!q.is_measure || std::holds_alternative<double>(units::parse_number(answer))) return "";
    const auto read = units::parse_length(answer);
    const auto* error = std::get_if<units::ParseError>(&read);
    return error == nullptr ? "" : error->reason + "; " + error->hint + ".";
  }

  // A line of the terminal without the blanks round it; nothing at its end.
  [[nodiscard]] static std::optional<std::string> read_line() {
    std::string line;
    for (int c = std::getchar(); c != '\n'; c = std::getchar()) {
      if (c == EOF) return {};
      line += static_cast<char>(c);
    }
    const std::size_t begin = line.find_first_not_of(" \t\r");
    if (begin == std::string::npos) return "";
    return line.substr(begin, line.find_last_not_of(" \t\r") + 1 - begin);
  }

  Answers& answers_;
  std::vector<std::string> systems_;
};

// A problem of the file is one of the answer that stands there.
std::string told(const diagnostics::Diagnostic& d) {
  std::string option;
  for (const StarterQuestion& q : readers::starter_questions()) {
    if (d.pointer == q.pointer) option = "--" + q.key + ": ";
  }
  return "basinwright: " + option + d.message + "." + (d.hint.empty() ? "" : " " + d.hint) + "\n";
}

Status write_starter(const Request& r, const std::string& name, const std::string& bytes) {
  if (name == "-") return put(r, bytes);
  std::error_code ignored;
  const bool is_there = std::filesystem::is_regular_file(name, ignored);
  if (is_there && !r.force)
    return wrong(name + " is there already; --force writes over it, --output takes another name.");
  const std::string reason = write_file(name, bytes);
  if (!reason.empty()) {
    complain("basinwright: " + name + ": " + reason + "\n");
    return Status::file;
  }
  if (!r.quiet) {
    complain(name + " is written. Fill in what is empty or not done, then: basinwright jobsheet " +
             name + "\n");
  }
  return Status::done;
}

bool on_terminal() {
  return ::isatty(STDIN_FILENO) == 1 && ::isatty(STDERR_FILENO) == 1;
}

std::vector<std::string> systems_of(const job::RateBook& rates) {
  std::vector<std::string> out;
  for (const auto& [name, system] : rates.systems) out.push_back(name);
  return out;
}

}  // namespace

Status make_starter(const Request& r) {
  Inputs inputs;
  auto read = read_shared_inputs(r);
  if (const auto* status = std::get_if<Status>(&read)) return *status;
  inputs = std::get<Inputs>(std::move(read));
  if (inputs.problems.has_errors()) {
    complain(worded_problems(r, inputs));
    return Status::problems;
  }
  Answers answers = r.starter;
  if (const auto clash = clash_in(answers)) return wrong(*clash);
  std::string name = r.output.value_or("-");
  if (const auto lacking = missing(answers); !lacking.empty()) {
    if (!on_terminal())
      return wrong("new needs " + listed(lacking) + " too; on a terminal it asks for them.");
    Interview interview(answers, systems_of(*inputs.rates));
    if (!interview.run()) return wrong("the answers ended early; nothing was written.");
    if (!r.output) name = interview.file("pool.json").value_or("-");
  }
  const std::string bytes = readers::starter_job(answers);
  JobFile file{{name, bytes}, readers::read_job({name, bytes}, inputs.problems)};
  if (file.job) add_mismatches(file, *inputs.rates, inputs.problems);
  for (const diagnostics::Diagnostic& d : inputs.problems.sorted()) complain(told(d));
  return inputs.problems.has_errors() ? Status::misuse : write_starter(r, name, bytes);
}

}  // namespace basinwright::cli
