// The tables are whole: four files use every key that they name.
// Source: the contract's list of keys, by hand; the files stand beside this test.
#include <filesystem>
#include <set>

#include "basinwright/readers/crews_file.hpp"
#include "reading.hpp"
#include "support/places.hpp"

using namespace reading;
using readers::Field;
using readers::Type;

namespace {

std::span<const Field> fields_of(const Field& field) {
  // The pool's table stands alone: its row only says that it is one or many.
  if (field.key == "pool" && field.type == Type::one_or_many) return readers::pool_fields();
  return field.fields;
}

void name_all(std::span<const Field> fields, const std::string& path, std::set<std::string>& out) {
  for (const Field& field : fields) {
    const std::string here = path + "/" + std::string(field.key);
    out.insert(here);
    if (field.alternatives.empty()) name_all(fields_of(field), here, out);
    for (const readers::Alternative& a : field.alternatives) {
      const std::string form = here + ":" + std::string(a.kind);
      out.insert(form);
      name_all(field.fields, form, out);
      name_all(a.fields, form, out);
    }
  }
}

// Marks the keys that a file uses, along the same paths as `name_all`.
class Use {
 public:
  void object(const json& node, std::span<const Field> fields, const std::string& path) {
    for (const Field& field : fields) {
      const std::string key(field.key);
      if (!node.contains(key)) continue;
      seen.insert(path + "/" + key);
      value(node.at(key), field, field.type, path + "/" + key);
    }
  }

  std::set<std::string> seen;

 private:
  void value(const json& node, const Field& field, Type type, const std::string& path) {
    switch (type) {
      case Type::list:
        for (const json& item : node) value(item, field, field.element, path);
        break;
      case Type::one_or_many:
        for (const json& item : node) object(item, fields_of(field), path);
        break;
      case Type::map:
        for (const json& item : node) {
          if (!field.many) object(item, field.fields, path);
          if (!field.many) continue;
          for (const json& one : item) object(one, field.fields, path);
        }
        break;
      case Type::tuple:
        for (std::size_t i = 0; i < node.size(); ++i) {
          seen.insert(path + "/" + std::string(field.fields[i].key));
        }
        break;
      case Type::variant:
        variant(node, field, path + ":" + node.at("kind").get<std::string>());
        break;
      case Type::object:
        object(node, field.fields, path);
        break;
      default:
        break;
    }
  }

  void variant(const json& node, const Field& field, const std::string& path) {
    seen.insert(path);
    object(node, field.fields, path);
    for (const readers::Alternative& a : field.alternatives) {
      if (a.kind == node.at("kind").get<std::string>()) object(node, a.fields, path);
    }
  }
};

void uses_all(std::span<const Field> fields, const Use& use) {
  std::set<std::string> named;
  name_all(fields, "", named);
  for (const std::string& path : named) {
    // `place` goes with any outline; one that carries it stands for all.
    const bool with_place = path.find("/place") != std::string::npos;
    const bool first = path.starts_with("/pool/outline:rectangle/");
    if (with_place && !first) continue;
    INFO(path);
    CHECK(use.seen.contains(path));
  }
  for (const std::string& path : use.seen) {
    INFO(path);
    CHECK(named.contains(path));
  }
}

void no_row_is_half_written(std::span<const Field> fields) {
  std::set<std::string_view> keys;
  for (const Field& field : fields) {
    INFO(field.key);
    CHECK(keys.insert(field.key).second);
    CHECK_FALSE(field.doc.empty());
    CHECK(field.required == field.fallback.empty());
    CHECK(field.low < field.high + (field.key.starts_with("basinwright") ? 1.0 : 0.0));
    CHECK(field.choices.empty() != (field.type == Type::choice || field.element == Type::choice));
    no_row_is_half_written(fields_of(field));
    for (const readers::Alternative& a : field.alternatives) no_row_is_half_written(a.fields);
  }
}

}  // namespace

TEST_CASE("one job file with every key is read without a problem") {
  const std::string text = contents("tests/readers/full-job.json");
  Problems problems;
  const auto read = job(text, problems);
  INFO(told(problems));
  CHECK(problems.empty());
  CHECK(read.has_value());
  Use use;
  use.object(json::parse(text), readers::job_fields(), "");
  uses_all(readers::job_fields(), use);
}

TEST_CASE("three rate books with every key are read without a problem") {
  // Mark-up and margin, and the ways to say a strength, exclude one another.
  Use use;
  for (const std::string name : {"full-rates.json", "other-rates.json", "label-rates.json"}) {
    const std::string text = contents("tests/readers/" + name);
    Problems problems;
    const auto read = rates(text, problems);
    INFO(name << "\n" << told(problems));
    CHECK(problems.empty());
    CHECK(read.has_value());
    use.object(json::parse(text), readers::rate_book_fields(), "");
  }
  uses_all(readers::rate_book_fields(), use);
}

// Minutes and dates are given; the reader is asked what it made of each.
TEST_CASE("a crews file with every key is read without a problem") {
  const std::string text = contents("tests/readers/full-crews.json");
  Problems problems;
  const auto read = readers::read_crews(
      {"crews.json", text}, {{"jobs/a-1.json", "A-1"}, {"jobs/a-2.json", ""}}, {}, problems);
  INFO(told(problems));
  CHECK(problems.empty());
  REQUIRE(read.has_value());
  CHECK(read->crews.front().hours == basinwright::dates::Hours{30, 66});
  CHECK(read->crews.front().working->at(5));
  CHECK(!read->crews.front().working->at(6));
  CHECK(read->crews.front().hour == basinwright::money::Money::of_minor(14850));
  CHECK(!read->crews.back().people);
  CHECK(read->travel.value == units::minutes(40));
  REQUIRE(read->between.size() == 1);
  CHECK(read->between.front().to == 1);
  CHECK(read->jobs.front().promised == basinwright::dates::parse_date("2027-06-30"));
  CHECK(read->jobs.front().priority == 3);
  CHECK(read->jobs.front().crew == 0);
  CHECK(read->jobs.back().priority == 1);
  Use use;
  use.object(json::parse(text), readers::crews_fields(), "");
  uses_all(readers::crews_fields(), use);
}

TEST_CASE("every row has a key of its own, a meaning, and what holds without it") {
  no_row_is_half_written(readers::job_fields());
  no_row_is_half_written(readers::rate_book_fields());
  no_row_is_half_written(readers::crews_fields());
}

TEST_CASE("every example file is read without a problem") {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(places::source() + "/examples")) {
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(".json")) continue;
    Problems problems;
    const std::string text = contents("examples/" + name);
    const bool read = name.ends_with(".rates.json") ? rates(text, problems).has_value()
                                                    : job(text, problems).has_value();
    INFO(name << "\n" << told(problems));
    CHECK(read);
    CHECK(problems.empty());
    ++count;
  }
  CHECK(count > 0);
}

TEST_CASE("the built-in rate book is read without a problem") {
  Problems problems;
  const auto book = readers::read_rate_book(readers::demonstration_rates(), problems);
  INFO(told(problems));
  CHECK(problems.empty());
  REQUIRE(book.has_value());
  CHECK(book->demonstration);
}
