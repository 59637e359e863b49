// Short ways to read a text in tests.
#pragma once

#include <algorithm>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/readers/read.hpp"
#include "readers/node.hpp"
#include "readers/view.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

namespace reading {

namespace readers = basinwright::readers;
namespace units = basinwright::units;
using basinwright::diagnostics::Diagnostic;
using basinwright::diagnostics::Problems;
using nlohmann::json;
using readers::Node;

inline std::string contents(const std::string& path) {
  std::ifstream file(places::source() + "/" + path, std::ios::binary);
  REQUIRE(file.is_open());
  return {std::istreambuf_iterator<char>(file), {}};
}

inline std::vector<std::string> codes(const Problems& problems) {
  std::vector<std::string> out;
  for (const Diagnostic& d : problems.sorted()) out.push_back(d.code);
  return out;
}

inline std::string told(const Problems& problems) {
  std::string out;
  for (const Diagnostic& d : problems.sorted()) {
    out += std::to_string(d.at.line) + ":" + std::to_string(d.at.column) + " " + d.code + " " +
           d.pointer + ": " + d.message + "\n";
  }
  return out;
}

/// A text as a tree, with what was wrong with it.
struct Tree {
  explicit Tree(std::string text) : source("test.json", std::move(text)) {
    whole = readers::parse_json(source, root, problems);
  }
  readers::SourceText source;
  Problems problems;
  Node root;
  bool whole = false;
};

/// An object read through a table.
struct Object {
  Object(std::string text, std::span<const readers::Field> fields)
      : tree(std::move(text)),
        context{tree.source, tree.problems},
        view(tree.root, fields, "", context) {
    INFO(told(tree.problems));
    REQUIRE(tree.whole);
    REQUIRE(tree.root.kind == Node::Kind::object);
  }
  Tree tree;
  readers::Context context;
  readers::View view;

  /// The problems found since the last call, as "code pointer".
  std::vector<std::string> found() {
    std::vector<std::string> out;
    const auto& all = tree.problems.all();
    for (; seen < all.size(); ++seen) out.push_back(all[seen].code + " " + all[seen].pointer);
    return out;
  }
  std::size_t seen = 0;
};

using Found = std::vector<std::string>;

inline std::optional<basinwright::job::Job> job(const std::string& text, Problems& problems) {
  return readers::read_job({"job.json", text}, problems);
}
inline std::optional<basinwright::job::RateBook> rates(const std::string& text,
                                                       Problems& problems) {
  return readers::read_rate_book({"rates.json", text}, problems);
}

/// A job file that is fine, as JSON to change.
inline json plain_job() {
  return json::parse(R"({"pool": {"outline": {"kind": "rectangle", "length": 8, "width": 4},
                                  "floor": {"kind": "constant", "depth": 1.5}}})");
}
inline json plain_rates() {
  return json::parse(R"({"currency": "EUR", "labour": {"hour": "40.00"}})");
}

/// "code pointer" of every problem of a changed file, in order of place.
inline Found problems_of_job(const json& file) {
  Problems problems;
  const bool read = job(file.dump(1), problems).has_value();
  CHECK(read == !problems.has_errors());
  Found out;
  for (const Diagnostic& d : problems.sorted()) out.push_back(d.code + " " + d.pointer);
  return out;
}
inline Found problems_of_rates(const json& file) {
  Problems problems;
  const bool read = rates(file.dump(1), problems).has_value();
  CHECK(read == !problems.has_errors());
  Found out;
  for (const Diagnostic& d : problems.sorted()) out.push_back(d.code + " " + d.pointer);
  return out;
}

}  // namespace reading
