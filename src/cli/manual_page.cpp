// The manual page in man(7) form, made from the command tree.
#include <fmt/format.h>
#include <algorithm>

#include "basinwright/report/pages.hpp"
#include "command_line.hpp"

namespace basinwright::cli {
namespace {

/// The day of this version in docs/CHANGELOG.md; a page must not change with the clock.
constexpr std::string_view released = "2026-11-26";

// Hyphens that are typed, and what troff would take for itself.
std::string escaped(std::string_view text, bool typed = false) {
  std::string out;
  if (text.starts_with('.') || text.starts_with('\'')) out += "\\&";
  for (const char c : text) {
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-' && typed) {
      out += "\\-";
    } else if (c == '"' && typed) {
      out += "\\(dq";
    } else if (c == '\'' && typed) {
      out += "\\(aq";
    } else {
      out += c;
    }
  }
  return out;
}

std::string paragraph(const OptionPage& page) {
  std::string out = ".TP\n\\fB" + escaped(page.name, true) + "\\fR";
  if (!page.value.empty()) out += " \\fI" + escaped(page.value, true) + "\\fR";
  std::string help = page.help;
  if (page.required) help += "; needed";
  if (page.many && help.find("given again") == std::string::npos) help += "; may be given again";
  return out + "\n" + escaped(help) + ".\n";
}

std::string examples(std::string lines) {
  std::string out = ".nf\n";
  while (!lines.empty()) {
    const std::size_t end = std::min(lines.find('\n'), lines.size());
    out += escaped(lines.substr(0, end), true) + "\n";
    lines.erase(0, std::min(end + 1, lines.size()));
  }
  return out + ".fi\n";
}

bool same(const OptionPage& a, const OptionPage& b) {
  return a.name == b.name && a.value == b.value && a.help == b.help;
}

// Options that mean the same in three commands or more are told once.
std::vector<OptionPage> shared_options(const std::vector<CommandPage>& tree) {
  constexpr int few = 3;
  std::vector<OptionPage> out;
  for (const CommandPage& command : tree) {
    for (const OptionPage& option : command.options) {
      const auto is_it = [&](const OptionPage& other) { return same(option, other); };
      if (std::ranges::any_of(out, is_it)) continue;
      const auto count = std::ranges::count_if(
          tree, [&](const CommandPage& c) { return std::ranges::any_of(c.options, is_it); });
      if (count >= few) out.push_back(option);
    }
  }
  return out;
}

std::string section_of(const CommandPage& command, const std::vector<OptionPage>& shared) {
  std::string out = ".SS basinwright " + escaped(command.name, true);
  for (const OptionPage& operand : command.operands)
    out += operand.required ? " " + operand.name : " [" + operand.name + "]";
  out += "\n" + escaped(command.help) + ".\n";
  for (const OptionPage& operand : command.operands) {
    OptionPage plain = operand;
    plain.value = "";
    plain.required = false;
    if (operand.name != "JOB" || operand.many) out += paragraph(plain);
  }
  for (const OptionPage& option : command.options) {
    const auto is_it = [&](const OptionPage& other) { return same(option, other); };
    if (!std::ranges::any_of(shared, is_it)) out += paragraph(option);
  }
  return out + ".PP\n" + examples(command.examples);
}

constexpr std::string_view statuses = R"(.SH EXIT STATUS
.TP
0
Done.
.TP
1
The job file, rate book, weather or log has problems; each was printed with its place.
.TP
2
The command line was misused.
.TP
3
The job must stop, no dates fit, or the day is a no\-go; the page says why.
.TP
4
A file could not be read or written.
.TP
70
A fault of the program.
.SH ENVIRONMENT
.TP
.B NO_COLOR
No colour, whatever it is set to.
.SH CAUTIONS
Acid, chlorine, epoxy and empty shells hurt people.
Product data sheets, local codes, the water authority and licensed trades decide; this program does not replace them.
.SH SEE ALSO
The manual, the job file key by key and the method with its sources are in the folder docs of the project and in
/usr/share/doc/basinwright.
)";

}  // namespace

std::string manual_page(const std::vector<CommandPage>& tree) {
  std::string out = fmt::format(
      ".TH BASINWRIGHT 1 {} \"basinwright {}\" \"User Commands\"\n"
      ".SH NAME\nbasinwright \\- plan the repainting of a swimming pool\n"
      ".SH SYNOPSIS\n.B basinwright\n.I COMMAND JOB\n[\\fIOPTIONS\\fR]\n.br\n.B basinwright\n.I "
      "JOB\n"
      ".SH DESCRIPTION\n"
      "From the tape measurements and the state of the surface, basinwright works out areas, "
      "washes, "
      "etch, primer and kits,\nprices the job and lays out the days from drain to refill.\n"
      "A job file (JSON) goes in, a page comes out; a job file alone is a job sheet.\n"
      ".SH EXAMPLES\n",
      released,
      report::version());
  std::string first = first_examples();
  out += examples(first.substr(first.find('\n') + 1));
  const std::vector<OptionPage> shared = shared_options(tree);
  out += ".SH OPTIONS\nThose that mean the same in every command that takes them:\n";
  for (const OptionPage& option : shared) out += paragraph(option);
  out += ".SH COMMANDS\n";
  for (const CommandPage& command : tree) out += section_of(command, shared);
  return out + std::string(statuses);
}

}  // namespace basinwright::cli
