// Codes, documentation and failing files agree. The expected sets come from reading the sources,
// the page and the folder, each by itself.
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "basinwright/job/offer.hpp"
#include "basinwright/readers/site_log.hpp"
#include "basinwright/readers/weather_file.hpp"
#include "readers/reading.hpp"
#include "support/places.hpp"

using namespace reading;

namespace {

namespace fs = std::filesystem;
using Names = std::set<std::string>;

// The shell guards its own interface with a wider limit than the file's: no file gets so far.
const Names guarded{"tolerance-out-of-range"};

fs::path root() {
  return places::source();
}

std::string without_comments(const std::string& code) {
  return std::regex_replace(code, std::regex("//[^\n]*"), "");
}

/// Path below the root -> text of every source in a room.
std::map<std::string, std::string> sources_of(const std::string& room) {
  std::map<std::string, std::string> out;
  for (const auto& entry : fs::directory_iterator(root() / "src" / room)) {
    const std::string extension = entry.path().extension().string();
    if (extension != ".cpp" && extension != ".hpp") continue;
    const std::string path = fs::relative(entry.path(), root()).generic_string();
    out[path] = without_comments(contents(path));
  }
  return out;
}

Names matches(const std::string& text, const std::string& pattern) {
  const std::regex expression(pattern);
  Names out;
  for (std::sregex_iterator it(text.begin(), text.end(), expression), end; it != end; ++it) {
    out.insert((*it)[1].str());
  }
  return out;
}

Names readers_codes() {
  return matches(contents("src/readers/codes.hpp"), "Code [a-z_]+\\{\"([a-z-]+)\"\\}");
}

Names shell_codes() {
  Names out;
  for (const auto& [path, text] : sources_of("shell")) {
    out.merge(matches(text, "(?:refuse|warn)\\(\\s*\"([a-z-]+)\""));
  }
  return out;
}

Names job_codes() {
  return matches(contents("src/job/mismatches.cpp"), "Mismatch\\{\"([a-z-]+)\"");
}

Names all_codes() {
  Names all = readers_codes();
  all.merge(shell_codes());
  all.merge(job_codes());
  for (const std::string& code : guarded) all.erase(code);
  return all;
}

Names documented() {
  return matches("\n" + contents("docs/errors.md"), "\n## `([a-z-]+)`\n");
}

struct File {
  std::string code, path, tail;
};

/// What follows the code in a file's name says what kind of file it is.
std::string tail_of(const std::string& name) {
  for (const std::string tail :
       {".rates.json", ".weather.json", ".weather.csv", ".years.csv", ".site.log", ".json"}) {
    if (name.ends_with(tail)) return tail;
  }
  return "";
}

std::vector<File> files() {
  std::vector<File> out;
  for (const auto& entry : fs::directory_iterator(root() / "tests/errors")) {
    const std::string name = entry.path().filename().string();
    const std::string tail = tail_of(name);
    if (tail.empty()) continue;
    out.push_back({name.substr(0, name.size() - tail.size()), "tests/errors/" + name, tail});
  }
  std::ranges::sort(out, {}, &File::path);
  return out;
}

Names named(const std::vector<File>& all) {
  Names out;
  for (const File& file : all) CHECK(out.insert(file.code).second);
  return out;
}

bool reads(const File& file, const std::string& text, Problems& problems) {
  if (file.tail == ".json") return job(text, problems).has_value();
  if (file.tail == ".site.log")
    return readers::read_site_log({file.path, text}, problems).has_value();
  if (file.tail == ".rates.json") return rates(text, problems).has_value();
  if (file.tail == ".years.csv")
    return readers::read_past_weather({file.path, text}, problems).has_value();
  return readers::read_weather({file.path, text}, problems).has_value();
}

}  // namespace

TEST_CASE("each failing file is told its own code, in its place") {
  for (const File& file : files()) {
    if (job_codes().contains(file.code)) continue;  // told against a rate book, below
    const std::string text = contents(file.path);
    Problems problems;
    const bool read = reads(file, text, problems);
    INFO(file.path << "\n" << told(problems));
    const auto& all = problems.all();
    const auto it = std::ranges::find(all, file.code, &Diagnostic::code);
    REQUIRE(it != all.end());
    CHECK(it->at.line > 0);
    CHECK(it->at.column > 0);
    CHECK(it->at.width > 0);
    CHECK_FALSE(it->message.empty());
    CHECK(problems.has_errors() == !read);
    const bool warns = it->severity == basinwright::diagnostics::Severity::warning;
    CHECK(warns == read);
    if (file.code != "too-many-problems") CHECK(all.size() == 1);
    // A small file: it is there to be read.
    CHECK(text.size() < 4000);
  }
}

TEST_CASE("what does not fit the rate book is told in its place") {
  int told_of = 0;
  for (const File& file : files()) {
    if (!job_codes().contains(file.code)) continue;
    INFO(file.path);
    Problems problems;
    const std::string text = contents(file.path);
    const auto read = job(text, problems);
    REQUIRE(read.has_value());
    const auto book = basinwright::readers::demonstration_rates();
    auto found =
        basinwright::job::mismatches(*read, *basinwright::readers::read_rate_book(book, problems));
    // What a quotation lacks is asked for by `quote` alone.
    if (found.empty()) found = basinwright::job::quotation_gaps(*read);
    REQUIRE(found.size() == 1);
    CHECK(found.front().code == file.code);
    // What is missing has no place of its own; what is wrong has.
    const bool missing = file.code == "quotation-incomplete";
    const auto at = basinwright::readers::place_of({file.path, text}, found.front().pointer);
    CHECK((at.line > 0) == !missing);
    ++told_of;
  }
  CHECK(told_of == static_cast<int>(job_codes().size()));
}

TEST_CASE("codes, page and files are the same") {
  const Names codes = all_codes();
  CHECK(codes.size() > 60);
  CHECK(named(files()) == codes);
  CHECK(documented() == codes);
}

TEST_CASE("the page is sorted and says something about each code") {
  const std::string page = contents("docs/errors.md");
  std::vector<std::string> order;
  const std::regex heading("\n## `([a-z-]+)`\n\n([^\n#][^\n]{15,})");
  for (std::sregex_iterator it(page.begin(), page.end(), heading), end; it != end; ++it) {
    order.push_back((*it)[1].str());
  }
  CHECK(order.size() == documented().size());
  CHECK(std::ranges::is_sorted(order));
}

TEST_CASE("no code is made where the scan does not see it") {
  for (const auto& [path, text] : sources_of("readers")) {
    INFO(path);
    const Names made = matches(text, "(\\bCode *[a-z_]*\\{[^}]*\\})");
    const bool is_list = path == "src/readers/codes.hpp";
    // A fault of the shell keeps the code that it came with.
    if (!is_list) CHECK((made.empty() || made == Names{"Code{fault.code}"}));
    CHECK(matches(text, "(\\bDiagnostic *[a-z_]*\\{ *\")").empty());
    CHECK(matches(text, "(problems_?\\.add\\(\\{)").empty());
  }
  for (const auto& [path, text] : sources_of("shell")) {
    INFO(path);
    for (const std::string& first : matches(text, "\\b(?:refuse|warn)\\(\\s*([^,)]*)")) {
      CHECK((first.starts_with('"') || first == "std::string_view code"));
    }
    if (!path.starts_with("src/shell/findings.")) CHECK(text.find("Fault{") == std::string::npos);
  }
}

TEST_CASE("what the shell guards for others is refused before, with another code") {
  json file = plain_job();
  file["pool"]["tape_tolerance"] = "100 %";
  CHECK(problems_of_job(file) == Found{"out-of-range /pool/tape_tolerance"});
  for (const std::string& code : guarded) CHECK(shell_codes().contains(code));
}

TEST_CASE("ten mistakes in one job file are ten problems in the order of their places") {
  const std::string text = R"({
  "units": "metrical",
  "job": { "start": "2027-02-30", "nmber": "7" },
  "site": { "tap_flow": "20 L" },
  "pool": {
    "outline": { "kind": "rectangle", "length": "9,2 m", "width": "4500 m" },
    "floor": { "kind": "constant" }
  },
  "surfaces": [{ "coating": "none", "acetone_test": "untouched" }],
  "crew": { "hours": ["16:00", "07:00"], "people": "three" }
})";
  Problems problems;
  CHECK_FALSE(job(text, problems));
  Found found;
  for (const Diagnostic& d : problems.sorted())
    found.push_back(std::to_string(d.at.line) + " " + d.code);
  CHECK(found == Found{"2 not-a-choice",
                       "3 not-a-date",
                       "3 unknown-key",
                       "4 wrong-unit",
                       "6 not-a-measure",
                       "6 out-of-range",
                       "7 missing-key",
                       "9 facts-clash",
                       "10 not-hours",
                       "10 wrong-type"});
}

TEST_CASE("ten mistakes in one rate book are ten problems in the order of their places") {
  const std::string text = R"({
  "currency": "euro",
  "tax": { "rate": "119 %" },
  "coating_systems": {
    "S": { "kit": "3.5 kg", "cover": ["25 m2", "20 m2"], "coats": 2.5 }
  },
  "packs": { "acid": [{ "size": "20 L" }] },
  "productivity": { "coat": "-20 m2/h", "prime": "NaN" },
  "labour": { "hour": "40 EUR" },
  "hire": [{ "item": "grinder", "task": "abrad", "day": 61 }]
})";
  Problems problems;
  CHECK_FALSE(rates(text, problems));
  Found found;
  for (const Diagnostic& d : problems.sorted())
    found.push_back(std::to_string(d.at.line) + " " + d.code);
  CHECK(found == Found{"2 not-a-choice",
                       "3 out-of-range",
                       "5 wrong-unit",
                       "5 facts-clash",
                       "5 wrong-type",
                       "7 missing-key",
                       "8 not-positive",
                       "8 not-finite",
                       "9 not-an-amount",
                       "10 not-a-choice"});
}
