#include "mistyped.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <string_view>

#include "basinwright/diagnostics/diagnostic.hpp"

namespace basinwright::cli {
namespace {

std::string meant(std::string_view word, const std::vector<std::string>& known) {
  const std::string_view near = diagnostics::nearest(word, {known.begin(), known.end()});
  return near.empty() ? "" : " Did you mean \"" + std::string(near) + "\"?";
}

}  // namespace

Leave unknown_word(const std::string& word) {
  std::vector<std::string> names;
  for (const CommandRow& row : commands()) names.emplace_back(row.name);
  return misuse("there is no command and no file \"" + word + "\"." + meant(word, names) +
                " See basinwright --help.");
}

std::optional<Leave> mistyped(const std::vector<std::string>& words, const CommandPage& page) {
  std::vector<std::string> known{"--help"};
  for (const OptionPage& option : page.options) known.push_back(option.name);
  const std::string see = " See basinwright " + page.name + " --help.";
  for (std::size_t i = 1; i < words.size() && words[i] != "--"; ++i) {
    if (!words[i].starts_with("-") && page.operands.empty())
      return misuse(page.name + " takes no \"" + words[i] + "\". Did you mean \"--output " +
                    words[i] + "\"?" + see);
    if (!words[i].starts_with("--")) continue;
    const std::size_t equals = std::min(words[i].find('='), words[i].size());
    const std::string name = words[i].substr(0, equals);
    if (name == "--help") return {};
    const auto option = std::ranges::find(page.options, name, &OptionPage::name);
    if (option == page.options.end())
      return misuse(page.name + " has no option " + name + "." + meant(name, known) + see);
    if (option->value.empty()) continue;
    if (equals == words[i].size() && ++i == words.size()) break;
    const std::string value = equals < words[i].size() && words[i].starts_with(name + "=")
                                  ? words[i].substr(equals + 1)
                                  : words[i];
    const auto& choices = option->choices;
    if (choices.empty() || std::ranges::find(choices, value) != choices.end()) continue;
    return misuse(fmt::format("{} takes {}", name, fmt::join(choices, ", ")) + ", not \"" + value +
                  "\"." + meant(value, choices) + see);
  }
  return {};
}

}  // namespace basinwright::cli
