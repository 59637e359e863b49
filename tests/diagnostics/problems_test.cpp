#include <algorithm>
#include <string>
#include <vector>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "support/catch.hpp"

using namespace basinwright::diagnostics;

namespace {

Diagnostic at(const std::string& file,
              std::size_t line,
              std::size_t column,
              const std::string& text) {
  return {"word", Severity::note, {file, line, column, 1}, "", text, "", {}};
}

std::string order(const Problems& problems) {
  std::string out;
  for (const Diagnostic& d : problems.sorted()) out += d.message;
  return out;
}

}  // namespace

TEST_CASE("problems are sorted by place and keep their order at one place") {
  Problems problems;
  CHECK(problems.empty());
  for (const Diagnostic& d : {at("b", 1, 1, "G"),
                              at("a", 10, 2, "E"),
                              at("a", 9, 30, "C"),
                              at("a", 10, 2, "F"),
                              at("a", 9, 4, "B"),
                              at("a", 10, 1, "D"),
                              at("a", 0, 0, "A")}) {
    problems.add(d);
  }
  CHECK(order(problems) == "ABCDEFG");
  CHECK(problems.size() == 7);
  CHECK(problems.all().front().message == "G");
}

TEST_CASE("errors and warnings are told apart") {
  Problems problems;
  problems.add(at("a", 1, 1, "n"));
  CHECK_FALSE(problems.has_errors());
  CHECK_FALSE(problems.has_warnings());
  Diagnostic worse = at("a", 1, 1, "w");
  worse.severity = Severity::warning;
  problems.add(worse);
  CHECK_FALSE(problems.has_errors());
  CHECK(problems.has_warnings());
  worse.severity = Severity::error;
  problems.add(worse);
  CHECK(problems.has_errors());
}

TEST_CASE("problems of another list join, even its own") {
  Problems a;
  Problems b;
  a.add(at("a", 2, 1, "2"));
  b.add(at("a", 1, 1, "1"));
  a.append(b);
  CHECK(order(a) == "12");
  a.append(a);
  CHECK(order(a) == "1122");
}
