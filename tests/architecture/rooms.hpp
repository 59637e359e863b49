// The rooms and the arrows between them, from src/rooms.txt.
#pragma once

#include <map>
#include <set>
#include <sstream>

#include "tree.hpp"

namespace architecture {

struct Room {
  int floor = 0;
  std::vector<std::string> below;  ///< The rooms it may include.
};

struct Rooms {
  std::map<std::string, Room> rooms;
  Findings findings;  ///< Lines that cannot be read.
};

inline constexpr const char* rooms_file = "src/rooms.txt";

inline Rooms rooms_of(const fs::path& root) {
  Rooms result;
  std::istringstream stream(contents(root / rooms_file));
  std::string line;
  for (std::size_t number = 1; std::getline(stream, line); ++number) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream words(line);
    std::string name;
    Room room;
    const std::string where = std::string(rooms_file) + ':' + std::to_string(number) + ": ";
    if (!(words >> name >> room.floor)) {
      result.findings.push_back(where + "not \"room floor rooms...\"; write it so");
      continue;
    }
    for (std::string below; words >> below;) room.below.push_back(below);
    if (!result.rooms.emplace(name, room).second) {
      result.findings.push_back(where + "room " + name + " comes twice; keep one line");
    }
  }
  if (result.rooms.empty()) {
    result.findings.push_back(std::string(rooms_file) + ": no rooms; list each with its arrows");
  }
  return result;
}

/// Arrows that do not go down: to no room, to the same or a higher floor.
inline Findings wrong_arrows(const Rooms& rooms) {
  Findings findings;
  for (const auto& [name, room] : rooms.rooms) {
    for (const std::string& below : room.below) {
      const std::string arrow = std::string(rooms_file) + ": arrow " + name + " -> " + below;
      const auto target = rooms.rooms.find(below);
      if (target == rooms.rooms.end()) {
        findings.push_back(arrow + " goes to no room; add the room or drop the arrow");
      } else if (target->second.floor >= room.floor) {
        findings.push_back(arrow + " goes from floor " + std::to_string(room.floor) + " to floor " +
                           std::to_string(target->second.floor) +
                           "; it must go to a lower floor: drop it and pass the values in");
      }
    }
    if (std::set(room.below.begin(), room.below.end()).size() != room.below.size()) {
      findings.push_back(std::string(rooms_file) + ": room " + name +
                         " has an arrow twice; keep one");
    }
  }
  return findings;
}

/// Follows arrows and reports each way that comes back to where it began.
class CycleSearch {
 public:
  explicit CycleSearch(const Rooms& rooms) : rooms_(rooms) {}

  Findings run() {
    for (const auto& [name, room] : rooms_.rooms) visit(name);
    return findings_;
  }

 private:
  void visit(const std::string& name) {
    const auto on_way = std::ranges::find(way_, name);
    if (on_way != way_.end()) {
      std::string circle;
      for (auto at = on_way; at != way_.end(); ++at) circle += *at + " -> ";
      findings_.push_back(std::string(rooms_file) + ": cycle " + circle + name +
                          "; drop one of these arrows");
      return;
    }
    const auto room = rooms_.rooms.find(name);
    if (room == rooms_.rooms.end() || !seen_.insert(name).second) return;
    way_.push_back(name);
    for (const std::string& below : room->second.below) visit(below);
    way_.pop_back();
  }

  const Rooms& rooms_;
  std::set<std::string> seen_;
  std::vector<std::string> way_;
  Findings findings_;
};

inline Findings cycles(const Rooms& rooms) {
  return CycleSearch(rooms).run();
}

/// Folders that hold code of a room, with how many headers and sources.
inline std::map<std::string, std::size_t> room_folders(const fs::path& root) {
  std::map<std::string, std::size_t> folders;
  for (const File& file : room_code(root)) {
    const std::string room = room_of(file.path);
    if (!room.empty()) ++folders[room];
  }
  return folders;
}

/// Names that say nothing, rooms that nobody listed, rooms too small to be one, and files in none.
inline Findings wrong_rooms(const fs::path& root, const Rooms& rooms) {
  static const std::set<std::string> empty_names = {
      "common", "util", "utils", "helper", "helpers", "manager", "managers"};
  Findings findings;
  const std::map<std::string, std::size_t> folders = room_folders(root);
  std::set<std::string> names;
  for (const auto& [name, room] : rooms.rooms) names.insert(name);
  for (const auto& [name, files] : folders) names.insert(name);
  for (const std::string& name : names) {
    if (empty_names.contains(name)) {
      findings.push_back("room " + name + ": the name says nothing; name it for what it holds");
    }
  }
  for (const auto& [name, files] : folders) {
    if (!rooms.rooms.contains(name)) {
      findings.push_back("room " + name + ": not in " + rooms_file + "; add it with its arrows");
    }
    if (files < 2) {
      findings.push_back("room " + name + ": has one file; a room has at least two, so give it " +
                         "its header and source or move it where it belongs");
    }
  }
  for (const File& file : room_code(root)) {
    if (!room_of(file.path).empty()) continue;
    findings.push_back(file.path + ": in no room; move it to src/<room> or " +
                       "include/basinwright/<room>");
  }
  return findings;
}

}  // namespace architecture
