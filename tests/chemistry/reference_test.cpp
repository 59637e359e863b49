// Every row of tests/reference/chemistry_*.json: the source and the reason for the tolerance stand
// in the row.
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>
#include <vector>

#include "chemistry/water_subjects.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

namespace {

using nlohmann::json;

std::vector<std::filesystem::path> row_files() {
  std::vector<std::filesystem::path> files;
  const std::filesystem::path folder = places::source() + "/tests/reference";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().filename().string().rfind("chemistry_", 0) == 0) files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

json read(const std::filesystem::path& path) {
  std::ifstream stream(path);
  return json::parse(stream);
}

double tolerance_for(const json& row, const std::string& key) {
  const json& tolerance = row.at("tolerance");
  return tolerance.is_object() ? tolerance.at(key).get<double>() : tolerance.get<double>();
}

void hold(const json& row, const json& got) {
  REQUIRE_FALSE(row.at("expected").empty());
  for (const auto& [key, expected] : row.at("expected").items()) {
    INFO(key << " expected " << expected << " got " << got.dump());
    REQUIRE(got.contains(key));
    CHECK(std::abs(got.at(key).get<double>() - expected.get<double>()) <= tolerance_for(row, key));
  }
}

}  // namespace

TEST_CASE("chemistry agrees with every reference row") {
  std::set<std::string> subjects;
  for (const auto& path : row_files()) {
    const json file = read(path);
    const auto subject = file.at("subject").get<std::string>();
    subjects.insert(subject);
    const auto& function = chemistry_rows::by_subject().at(subject);
    REQUIRE_FALSE(file.at("rows").empty());
    for (const json& row : file.at("rows")) {
      INFO(path.filename().string() << ": " << row.at("name").get<std::string>());
      hold(row, function(row.at("input")));
    }
  }
  CHECK(subjects.size() == chemistry_rows::by_subject().size());
}

TEST_CASE("every reference row of chemistry names its source and the reason for its tolerance") {
  for (const auto& path : row_files()) {
    const json file = read(path);
    for (const json& row : file.at("rows")) {
      INFO(path.filename().string() << ": " << row.at("name").get<std::string>());
      CHECK_FALSE(row.at("source").get<std::string>().empty());
      CHECK_FALSE(row.at("place").get<std::string>().empty());
      CHECK_FALSE(row.at("because").get<std::string>().empty());
    }
  }
}
