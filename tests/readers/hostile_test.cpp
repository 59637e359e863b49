// Every value of the full files replaced by values nobody would write: nothing may be thrown, and
// what is not refused must be whole.
#include "basinwright/sources/pointer.hpp"
#include "reading.hpp"

using namespace reading;

namespace {

const std::vector<std::string>& odd_values() {
  static const std::vector<std::string> values{"null",
                                               "true",
                                               "0",
                                               "-1",
                                               "1",
                                               "0.0005",
                                               "3.7",
                                               "1e6",
                                               "1e300",
                                               "-1e300",
                                               "1e-300",
                                               "\"\"",
                                               "\"x\"",
                                               "\"1e308 km\"",
                                               "\"-5 m\"",
                                               "\"100 %\"",
                                               "\"2027-02-31\"",
                                               "[]",
                                               "{}",
                                               "[[]]",
                                               "[0, 0, 0]",
                                               "[\"a\", 1]",
                                               "{\"kind\": 1}"};
  return values;
}

// Pointers to every value of a file, lists and objects too.
void all_pointers(const json& node, const std::string& at, std::vector<std::string>& out) {
  out.push_back(at);
  if (node.is_object()) {
    for (const auto& [key, value] : node.items()) {
      all_pointers(value, at + "/" + basinwright::sources::pointer_part(key), out);
    }
  }
  if (node.is_array()) {
    for (std::size_t i = 0; i < node.size(); ++i)
      all_pointers(node[i], at + "/" + std::to_string(i), out);
  }
}

template <class Read>
int try_all(const json& file, Read read) {
  std::vector<std::string> pointers;
  all_pointers(file, "", pointers);
  const auto& values = odd_values();
  int refused = 0;
  for (std::size_t i = 0; i < pointers.size(); ++i) {
    // Six values each, another six at the next place.
    for (std::size_t k = 0; k < 6; ++k) {
      const std::string& pointer = pointers[i];
      const std::string& value = values[(7 * i + 4 * k) % values.size()];
      json changed = file;
      changed[json::json_pointer(pointer)] = json::parse(value);
      const std::string text = changed.dump();
      Problems problems;
      bool whole = false;
      std::string thrown;
      try {
        whole = read(text, problems);
      } catch (const std::exception& e) {
        thrown = e.what();
      }
      if (thrown.empty() && whole != problems.has_errors()) {
        refused += whole ? 0 : 1;
        continue;
      }
      INFO(pointer << " = " << value << "\n" << told(problems));
      CHECK(thrown.empty());
      CHECK(whole != problems.has_errors());
    }
  }
  return refused;
}

}  // namespace

TEST_CASE("hostile values in a job file") {
  json file = json::parse(contents("tests/readers/full-job.json"));
  file["pool"] = plain_job()["pool"];
  const int refused = try_all(file, [](const std::string& text, Problems& problems) {
    return job(text, problems).has_value();
  });
  CHECK(refused > 500);
}

TEST_CASE("hostile values in a rate book") {
  const json file = json::parse(contents("tests/readers/full-rates.json"));
  const int refused = try_all(file, [](const std::string& text, Problems& problems) {
    return rates(text, problems).has_value();
  });
  CHECK(refused > 500);
}

TEST_CASE("hostile values in every kind of pool") {
  const json file = json::parse(contents("tests/readers/full-job.json"));
  int refused = 0;
  for (const json& pool : file.at("pool")) {
    refused += try_all(pool, [](const std::string& text, Problems& problems) {
      return readers::read_pool({"pool.json", text}, problems).has_value();
    });
  }
  CHECK(refused > 800);
}
