// basinwright_reference FILE...: runs every row of reference files of any subject and says which
// miss.
#include <fmt/format.h>
#include <cmath>
#include <cstdio>
#include <exception>
#include <fstream>
#include <map>

#include "chemistry/water_subjects.hpp"
#include "coverage/mixing_rows.hpp"
#include "odds/odds_rows.hpp"
#include "subjects.hpp"
#include "weather/weather_rows.hpp"

namespace {

using basinwright::reference::Json;

int passed = 0;
int failed = 0;

struct Tolerance {
  double relative = 0.0;
  double of_max_1 = 0.0;
  double absolute = 0.0;
  [[nodiscard]] bool holds(double got, double expected) const {
    const double size = std::abs(expected);
    const double room = std::max({absolute, relative * size, of_max_1 * std::max(1.0, size)});
    return std::abs(got - expected) <= room;
  }
  [[nodiscard]] std::string words() const {
    return fmt::format(
        "relative {:g}, of max(1, value) {:g}, absolute {:g}", relative, of_max_1, absolute);
  }
};

Tolerance tolerance_of(const Json& given, const std::string& key) {
  Tolerance t;
  if (given.is_number()) t.absolute = given.get<double>();
  if (!given.is_object()) return t;
  t.relative = given.value("relative", 0.0);
  t.of_max_1 = given.value("of_max_1_expected", 0.0);
  if (given.contains(key) && given.at(key).is_number()) t.absolute = given.at(key).get<double>();
  return t;
}

// Every key of `expected` must be in `got` and agree; what misses is printed.
bool agree(const Json& got, const Json& expected, const Json& tolerance, const std::string& path) {
  bool all = true;
  if (expected.is_object() || expected.is_array()) {
    for (const auto& [key, value] : expected.items()) {
      const std::string here = path + "/" + key;
      const bool there = expected.is_object() ? got.is_object() && got.contains(key)
                                              : got.is_array() && got.size() == expected.size();
      if (!there) {
        fmt::print("  {}: expected {}, not computed\n", here, value.dump());
        all = false;
        continue;
      }
      const Json& mine = expected.is_object() ? got.at(key) : got.at(std::stoul(key));
      all = agree(mine, value, tolerance, here) && all;
    }
    return all;
  }
  const std::string key = path.substr(path.rfind('/') + 1);
  const Tolerance t = tolerance_of(tolerance, key);
  const bool numbers = expected.is_number() && got.is_number();
  if (numbers ? t.holds(got.get<double>(), expected.get<double>()) : got == expected) return true;
  fmt::print("  {}: expected {}, got {} ({})\n", path, expected.dump(), got.dump(), t.words());
  return false;
}

void count(bool held, const std::string& name) {
  if (held) {
    ++passed;
  } else {
    ++failed;
    fmt::print("missed: {}\n", name);
  }
}

// A row's own part of `expected`: a schedule's is its status and the four values.
Json wanted_of(const std::string& subject, const Json& row) {
  if (subject == "shells") {
    Json wanted{{"expected", row.at("expected")}};
    if (row.contains("sections")) wanted["sections"] = row.at("sections");
    return wanted;
  }
  if (subject != "schedules") return row.at("expected");
  Json wanted{{"status", row.at("expected").at("status")}};
  for (const char* key : {"refill_slot", "split_coats", "reworks", "labour_cents"}) {
    if (row.at("expected").contains(key)) wanted[key] = row.at("expected").at(key);
  }
  return wanted;
}

Json computed(const std::string& subject, const Json& row) {
  if (subject == "shells") return basinwright::reference::shells(row);
  if (subject == "packs") return basinwright::reference::packs(row);
  if (subject == "schedules") return basinwright::reference::schedules(row);
  if (subject == "mixing") return mixing_rows::computed(row);
  if (subject == "odds") return odds_rows::computed(row);
  const auto& weather = weather_rows::by_subject();
  if (const auto row_of = weather.find(subject); row_of != weather.end()) {
    return row_of->second(row.at("input"));
  }
  const auto& chemistry = chemistry_rows::by_subject();
  const auto it = chemistry.find(subject);
  if (it == chemistry.end()) throw std::runtime_error("unknown subject \"" + subject + "\"");
  return it->second(row.at("input"));
}

void run_row(const std::string& subject, const Json& row, const Json& file_tolerance) {
  const std::string name = row.value("name", subject);
  const Json tolerance = row.contains("tolerance") ? row.at("tolerance") : file_tolerance;
  try {
    count(agree(computed(subject, row), wanted_of(subject, row), tolerance, ""), name);
  } catch (const std::exception& fault) {
    fmt::print("  {}\n", fault.what());
    count(false, name);
  }
}

// The product's code for a class of reason.
std::string code_of(std::string reason) {
  static const std::map<std::string, std::string> renamed{
      {"tin_does_not_cover", "spot-depths-do-not-cover"}, {"batter_too_large", "lean-too-large"}};
  if (const auto it = renamed.find(reason); it != renamed.end()) return it->second;
  for (char& c : reason) c = c == '_' ? '-' : c;
  return reason;
}

void run_file(const char* path) {
  std::ifstream stream(path);
  if (!stream) throw std::runtime_error(std::string("cannot read ") + path);
  const Json file = Json::parse(stream);
  const auto subject = file.at("subject").get<std::string>();
  const Json tolerance = file.value("tolerance", Json());
  for (const Json& row : file.at("rows")) run_row(subject, row, tolerance);
  if (!file.contains("refused")) return;
  for (const Json& row : file.at("refused")) {
    const std::string code = code_of(row.at("refused_because").get<std::string>());
    const Json codes = basinwright::reference::refused_codes(row);
    const bool held = std::find(codes.begin(), codes.end(), code) != codes.end();
    if (!held) fmt::print("  expected {} among {}\n", code, codes.dump());
    count(held, "refused: " + code);
  }
}

}  // namespace

int main(int argc, char** argv) {
  try {
    for (int i = 1; i < argc; ++i) run_file(argv[i]);
  } catch (const std::exception& fault) {
    fmt::print("basinwright_reference: {}\n", fault.what());
    ++failed;
  }
  fmt::print("{} passed, {} failed\n", passed, failed);
  return failed == 0 && passed > 0 ? 0 : 1;
}
