// What entries prove. Expected: the order of things on a site (common practice) and arithmetic.
#include "log.hpp"

using namespace log_of;

namespace {

std::vector<std::string> what(const std::vector<Entry>& entries) {
  std::vector<std::string> out;
  for (const Impossible& i : impossible({entries, false})) out.push_back(i.what);
  return out;
}

}  // namespace

TEST_CASE("a task is running until it is finished or stopped") {
  const auto all = progress({{started("0T07:00", "abrade"),
                              stopped("0T09:30", 0.25, "abrade"),
                              started("1T07:00", "abrade")},
                             false});
  REQUIRE(all.size() == 1);
  CHECK(all[0].running());
  CHECK(all[0].share == 0.25);
  CHECK(all[0].start == at("0T07:00"));
  const auto later =
      progress({{started("0T07:00", "abrade"), finished("0T12:00", "abrade")}, false});
  CHECK(later[0].finished);
  CHECK(later[0].share == 1.0);
  CHECK(later[0].end == at("0T12:00"));
}

TEST_CASE("entries count in the order of their times, not of the file") {
  const std::vector<Entry> evening{finished("0T12:00", "abrade"), started("0T07:00", "abrade")};
  CHECK(what(evening).empty());
  CHECK(progress({evening, false})[0].finished);
}

TEST_CASE("an entry ten years after the first is a slip of the year") {
  // The longest decade of the calendar has 3653 days; both entries are named.
  std::vector<Entry> entries{started("0T07:00", "abrade"), finished("0T07:00", "abrade")};
  entries[1].at = dates::Minute(entries[0].at.minutes() + 3653LL * 1440);
  CHECK(what(entries).empty());
  entries[1].at = dates::Minute(entries[0].at.minutes() + 3661LL * 1440);
  CHECK(what(entries) == std::vector<std::string>{"no job is ten years in hand"});
}

TEST_CASE("sections go their own ways") {
  const auto all = progress({{started("0T08:00", "coat-1", "deep"),
                              finished("0T09:00", "coat-1", "deep"),
                              started("0T09:00", "coat-1", "shallow")},
                             false});
  REQUIRE(all.size() == 2);
  CHECK(find(all, "coat-1", "deep")->finished);
  CHECK(find(all, "coat-1", "shallow")->running());
  CHECK(find(all, "coat-2", "deep") == nullptr);
}

TEST_CASE("a rework may be done more than once") {
  const std::vector<Entry> twice{started("0T08:00", "rework", "1"),
                                 finished("0T09:00", "rework", "1"),
                                 started("2T08:00", "rework", "1"),
                                 finished("2T09:00", "rework", "1")};
  CHECK(what(twice).empty());
  CHECK(progress({twice, false}).size() == 2);
}

TEST_CASE("what cannot have happened is said") {
  CHECK(what({finished("0T08:00", "abrade")}).size() == 1);
  CHECK(what({finished("0T08:00", "abrade")})[0] == "abrade finished, yet never started");
  const auto before = what({started("0T09:00", "abrade"), finished("0T08:00", "abrade")});
  REQUIRE(before.size() == 1);
  CHECK(before[0] == "abrade finished before it was started");
  CHECK(what({started("0T08:00", "abrade"), started("0T09:00", "abrade")}).size() == 1);
  CHECK(what({started("0T08:00", "abrade"),
              finished("0T09:00", "abrade"),
              started("0T10:00", "abrade")})
            .size() == 1);
  CHECK(what({started("0T08:00", "coat-2", "1")}).size() == 1);
  CHECK(what({started("0T08:00", "abrade"),
              stopped("0T09:00", 0.5, "abrade"),
              started("0T10:00", "abrade"),
              stopped("0T11:00", 0.4, "abrade")})
            .size() == 1);
}

TEST_CASE("a coat may follow the coat below on a part of the section") {
  CHECK(what({started("0T08:00", "coat-1", "1"),
              stopped("0T09:00", 0.5, "coat-1", "1"),
              started("1T08:00", "coat-2", "1")})
            .empty());
  CHECK(coat_below("coat-1") == "prime");
  CHECK(coat_below("coat-3") == "coat-2");
  CHECK(coat_below("abrade").empty());
  CHECK(coat_below("coat-x").empty());
}
