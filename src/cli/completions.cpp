// Completion scripts, made from the command tree so that they cannot drift from it.
#include <fmt/format.h>

#include "command_line.hpp"

namespace basinwright::cli {
namespace {

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

bool takes_file(const OptionPage& page) {
  return page.value.starts_with("FILE") || page.name == "JOB" || page.name == "OTHER";
}

// Text between single quotes, which ends at a quote only.
std::string in_quotes(std::string_view text, std::string_view quote) {
  std::string out;
  for (const char c : text) {
    if (c == '\'') {
      out += quote;
    } else {
      out += c;
    }
  }
  return "'" + out + "'";
}

std::string names(const std::vector<CommandPage>& tree) {
  std::string out;
  for (const CommandPage& command : tree) out += (out.empty() ? "" : " ") + command.name;
  return out;
}

// bash: the value of an option by the option before it, else options, choices of operands, files.
std::string bash_value(const CommandPage& command, const OptionPage& option) {
  if (option.value.empty()) return "";
  const std::string here = fmt::format("    {}:{}) ", command.name, option.name);
  if (!option.choices.empty()) return here + fmt::format("words='{}' ;;\n", joined(option.choices));
  if (takes_file(option)) return here + "files=1 ;;\n";
  return here + (option.value == "FOLDER" ? "folders=1 ;;\n" : ":;;\n");
}

std::string bash_command(const CommandPage& command) {
  std::string words;
  for (const OptionPage& option : command.options) words += option.name + " ";
  std::string operands;
  bool files = false;
  for (const OptionPage& operand : command.operands) {
    operands += joined(operand.choices);
    files = files || takes_file(operand);
  }
  return fmt::format("        {}) options='{}--help' operands='{}'{} ;;\n",
                     command.name,
                     words,
                     operands,
                     files ? " files=1" : "");
}

std::string bash(const std::vector<CommandPage>& tree) {
  std::string values;
  std::string commands;
  for (const CommandPage& command : tree) {
    for (const OptionPage& option : command.options) values += bash_value(command, option);
    commands += bash_command(command);
  }
  return fmt::format(R"(# bash completion for basinwright, made by: basinwright completions bash
_basinwright() {{
  local cur=${{COMP_WORDS[COMP_CWORD]}} prev=${{COMP_WORDS[COMP_CWORD - 1]}}
  local command=${{COMP_WORDS[1]}} words= options= operands= files= folders=
  [[ $cur == '=' ]] && cur=
  [[ $prev == '=' ]] && prev=${{COMP_WORDS[COMP_CWORD - 2]}}
  case " {0} " in
    *" $command "*) ;;
    *) command=jobsheet ;;
  esac
  if ((COMP_CWORD == 1)); then
    words='{0} --help --version' files=1
  else
    case $command:$prev in
{1}    *)
      case $command in
{2}      esac
      if [[ $cur == -* ]]; then
        words=$options files=
      else
        words=$operands
      fi
      ;;
    esac
  fi
  mapfile -t COMPREPLY < <(
    compgen -W "$words" -- "$cur"
    [[ -n $files ]] && compgen -f -- "$cur"
    [[ -n $folders ]] && compgen -d -- "$cur"
  )
  [[ -n $files$folders ]] && compopt -o filenames 2>/dev/null
  return 0
}}
complete -F _basinwright basinwright
)",
                     names(tree),
                     values,
                     commands);
}

std::string zsh_quoted(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_action(const OptionPage& page) {
  if (!page.choices.empty()) return "(" + joined(page.choices) + ")";
  if (takes_file(page)) return "_files";
  return page.value == "FOLDER" ? "_files -/" : " ";
}

std::string zsh_argument(const OptionPage& option) {
  std::string spec = (option.many ? "*" : "") + option.name + "[" + zsh_quoted(option.help) + "]";
  if (!option.value.empty()) spec += ":" + zsh_quoted(option.value) + ":" + zsh_action(option);
  return " \\\n        " + in_quotes(spec, "'\\''");
}

std::string zsh(const std::vector<CommandPage>& tree) {
  std::string list;
  std::string cases;
  for (const CommandPage& command : tree) {
    list += "    " + in_quotes(command.name + ":" + zsh_quoted(command.help), "'\\''") + "\n";
    cases += "    " + command.name + ")\n      _arguments";
    for (const OptionPage& option : command.options) cases += zsh_argument(option);
    for (const OptionPage& operand : command.operands) {
      const std::string place = operand.many ? "*" : "";
      cases +=
          " \\\n        " +
          in_quotes(place + ":" + zsh_quoted(operand.name) + ":" + zsh_action(operand), "'\\''");
    }
    cases += "\n      ;;\n";
  }
  return fmt::format(R"(#compdef basinwright
# zsh completion for basinwright, made by: basinwright completions zsh
_basinwright() {{
  local -a commands
  commands=(
{}  )
  if (( CURRENT == 2 )); then
    _describe -t commands command commands
    _files
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
{}    *) _files ;;
  esac
}}
_basinwright "$@"
)",
                     list,
                     cases);
}

std::string fish_option(const CommandPage& command, const OptionPage& option) {
  std::string out = fmt::format("complete -c basinwright -n '__fish_seen_subcommand_from {}' -l {}",
                                command.name,
                                option.name.substr(2));
  if (!option.choices.empty()) {
    out += " -x -a '" + joined(option.choices) + "'";
  } else if (!option.value.empty()) {
    out += takes_file(option) || option.value == "FOLDER" ? " -r -F" : " -x";
  }
  return out + " -d " + in_quotes(option.help, "\\'") + "\n";
}

std::string fish(const std::vector<CommandPage>& tree) {
  std::string out = "# fish completion for basinwright, made by: basinwright completions fish\n";
  for (const CommandPage& command : tree) {
    out += fmt::format("complete -c basinwright -n __fish_use_subcommand -a {} -d {}\n",
                       command.name,
                       in_quotes(command.help, "\\'"));
    for (const OptionPage& operand : command.operands) {
      if (operand.choices.empty()) continue;
      out += fmt::format("complete -c basinwright -n '__fish_seen_subcommand_from {}' -f -a '{}'\n",
                         command.name,
                         joined(operand.choices));
    }
    for (const OptionPage& option : command.options) out += fish_option(command, option);
  }
  return out;
}

}  // namespace

std::string completions(std::string_view shell, const std::vector<CommandPage>& tree) {
  if (shell == "zsh") return zsh(tree);
  return shell == "fish" ? fish(tree) : bash(tree);
}

}  // namespace basinwright::cli
