// The command line as data: its commands, what was typed, and the tree that completions and the
// manual page are made from.
#pragma once

#include <array>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "basinwright/cli/request.hpp"

namespace basinwright::cli {

struct CommandRow {
  std::string_view name;
  Command command;
  std::string_view help;
  std::string_view examples;  ///< What follows the program's name, one a line.
};
[[nodiscard]] std::span<const CommandRow> commands();
[[nodiscard]] const CommandRow& row_of(Command command);
/// Nothing when there is no command of that name.
[[nodiscard]] const CommandRow* row_of(std::string_view name);

/// Three things to try, for whoever has typed nothing yet.
[[nodiscard]] std::string first_examples();
/// The examples of a command, as they are typed.
[[nodiscard]] std::string examples_of(const CommandRow& row);

/// In the order of `Format`.
inline constexpr std::array<std::string_view, 7> formats{
    "text", "markdown", "json", "csv", "svg", "html", "ics"};

// The options as text; turned into a Request once CLI11 has accepted them.
struct Texts {
  std::string job, quantity, rates, output, start, today, units, paper = "A4", format = "text",
                                                                 diagnostics = "text";
  std::string other, table;
  std::string by;
  std::vector<std::string> weather, sets, years;
  int weeks = 0;
  std::string log, now, was;
  std::vector<std::string> entry;
  bool strict = false, no_color = false, quiet = false;
  std::vector<std::string> jobs;
  std::string folder, document = "jobsheet", document_format = "text";
  std::size_t threads = 1;
  bool fail_fast = false, resume = false;
  std::map<std::string, std::string> starter;  ///< Of `new`: option -> answer.
  bool force = false;
  std::string topic, draft = "2020-12";
};

[[nodiscard]] Leave misuse(std::string text);

/// The texts as a request, or what is wrong with them.
[[nodiscard]] std::variant<Request, Leave> settle(Command command, const Texts& texts);

/// An option or operand as a page shows it.
struct OptionPage {
  std::string name;   ///< `--rates`, or an operand's `JOB`.
  std::string value;  ///< What follows it, such as FILE; empty for a flag.
  std::string help;
  std::vector<std::string> choices;  ///< The only values there are; empty: any.
  bool required = false;
  bool many = false;
};
struct CommandPage {
  std::string name;
  std::string help;
  std::string examples;
  std::vector<OptionPage> operands, options;
};
/// Every command with its options, in the order of the help.
[[nodiscard]] std::vector<CommandPage> command_tree();

/// A completion script for `bash`, `zsh` or `fish`, from the tree.
[[nodiscard]] std::string completions(std::string_view shell, const std::vector<CommandPage>& tree);
/// The manual page in man(7) form, from the tree.
[[nodiscard]] std::string manual_page(const std::vector<CommandPage>& tree);

}  // namespace basinwright::cli
