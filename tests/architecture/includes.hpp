// Who includes whom.
#pragma once

#include "code.hpp"
#include "rooms.hpp"

namespace architecture {

struct Include {
  std::string target;  ///< What stands between the quotes or brackets.
  bool quoted = false;
  std::size_t line = 0;
};

inline std::vector<Include> includes_of(const File& file) {
  std::vector<Include> includes;
  const std::string code = code_only(file.text, Literals::kept);
  std::size_t number = 0;
  for (const std::string& line : split(code, '\n')) {
    ++number;
    std::size_t at = line.find_first_not_of(" \t");
    if (at == std::string::npos || line[at] != '#') continue;
    at = line.find_first_not_of(" \t", at + 1);
    if (at == std::string::npos || line.compare(at, 7, "include") != 0) continue;
    const std::size_t open = line.find_first_of("\"<", at);
    if (open == std::string::npos) continue;
    const std::size_t close = line.find(line[open] == '<' ? '>' : '"', open + 1);
    includes.push_back({line.substr(open + 1, close - open - 1), line[open] == '"', number});
  }
  return includes;
}

/// What is wrong with one include of a room's file; empty if nothing.
inline std::string include_fault(const fs::path& root,
                                 const Rooms& rooms,
                                 const File& file,
                                 const Include& include) {
  const std::string room = room_of(file.path);
  const std::vector<std::string> parts = split(include.target, '/');
  if (parts.front() == "basinwright") {
    const std::string target = parts.size() > 2 ? parts[1] : "";
    const auto known = rooms.rooms.find(room);
    const bool allowed = target == room || (known != rooms.rooms.end() &&
                                            std::ranges::count(known->second.below, target) > 0);
    if (allowed) return "";
    return "room " + room + " may not include " + include.target + "; drop it, or add " + target +
           " to the line of " + room + " in " + rooms_file + " if it is on a lower floor";
  }
  if (!include.quoted) return "";
  if (file.path.starts_with("include/")) {
    return "a public header includes \"" + include.target +
           "\"; it may only include public headers, as \"basinwright/<room>/...\"";
  }
  const fs::path target = root / "src" / room / include.target;
  // The build makes a header from a template of its name.
  const bool beside = fs::exists(target) || fs::exists(target.string() + ".in");
  const bool climbs = std::ranges::count(parts, "..") > 0;
  if (beside && !climbs) return "";
  return "\"" + include.target + "\" is not beside it in src/" + room +
         "; include another room by its public header";
}

/// Includes that no arrow allows, and private headers of other rooms.
inline Findings wrong_includes(const fs::path& root, const Rooms& rooms) {
  Findings findings;
  for (const File& file : room_code(root)) {
    if (room_of(file.path).empty()) continue;
    for (const Include& include : includes_of(file)) {
      const std::string fault = include_fault(root, rooms, file, include);
      if (!fault.empty()) findings.push_back(place(file, include.line) + fault);
    }
  }
  return findings;
}

/// The libraries from outside stay where they are: CLI11 in one file of cli, nlohmann's JSON in the
/// sources of readers and render; no header pulls in <iostream>.
inline Findings wrong_libraries(const fs::path& root) {
  Findings findings;
  std::string first_cli;
  for (const File& file : all_code(root)) {
    const std::string room = room_of(file.path);
    for (const Include& include : includes_of(file)) {
      const std::string where = place(file, include.line);
      if (include.target.starts_with("CLI/")) {
        if (room != "cli" || is_header(file.path)) {
          findings.push_back(where + "CLI11 belongs in one source of src/cli; move its use there");
        } else if (!first_cli.empty()) {
          findings.push_back(where + "CLI11 is already included in " + first_cli +
                             "; keep it there");
        } else {
          first_cli = file.path;
        }
      }
      if (include.target.starts_with("nlohmann/") && !room.empty()) {
        if (file.path.starts_with("include/")) {
          findings.push_back(where +
                             "a public header includes nlohmann's JSON; hide it in a source");
        } else if (room != "readers" && room != "render") {
          findings.push_back(where +
                             "nlohmann's JSON belongs in src/readers and src/render; pass " +
                             "values instead");
        }
      }
      if (include.target == "iostream" && is_header(file.path)) {
        findings.push_back(where + "a header includes <iostream>; include <iosfwd> or <ostream>");
      }
    }
  }
  return findings;
}

}  // namespace architecture
