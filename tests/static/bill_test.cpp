// The bill of materials (SPDX 2.3) against what the build really asks for.
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <string>

#include "support/catch.hpp"
#include "support/places.hpp"

namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(places::source() + "/" + path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::map<std::string, std::string> asked_for() {
  std::map<std::string, std::string> found;
  const std::string text = text_of("CMakeLists.txt") + text_of("tests/CMakeLists.txt");
  const std::regex declared(R"(FetchContent_Declare\((\w+)[^)]*?GIT_TAG\s+v?([0-9.]+))");
  for (auto it = std::sregex_iterator(text.begin(), text.end(), declared);
       it != std::sregex_iterator();
       ++it)
    found[(*it)[1]] = (*it)[2];
  const std::regex own(R"(project\((\w+) VERSION ([0-9.]+))");
  std::smatch project;
  if (std::regex_search(text, project, own)) found[project[1]] = project[2];
  return found;
}

}  // namespace

TEST_CASE("the bill of materials names each library with its version and nothing else") {
  const auto bill = nlohmann::json::parse(text_of("docs/sbom.spdx.json"));
  CHECK(bill.at("spdxVersion") == "SPDX-2.3");
  std::map<std::string, std::string> listed;
  for (const auto& package : bill.at("packages")) {
    listed[package.at("name")] = package.at("versionInfo");
    CHECK(package.at("licenseDeclared") != "NOASSERTION");
  }
  CHECK(listed == asked_for());
  CHECK(listed.size() == 5);
}

TEST_CASE("each package of the bill stands in a relationship") {
  const auto bill = nlohmann::json::parse(text_of("docs/sbom.spdx.json"));
  for (const auto& package : bill.at("packages")) {
    int related = 0;
    for (const auto& r : bill.at("relationships"))
      related += r.at("spdxElementId") == package.at("SPDXID") ||
                 r.at("relatedSpdxElement") == package.at("SPDXID");
    INFO(package.at("name"));
    CHECK(related > 0);
  }
}
