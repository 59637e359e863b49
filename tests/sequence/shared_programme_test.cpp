// One programme for many starts, drains and fills, held against the same questions asked anew, and
// how far each reaches.
#include <algorithm>
#include <random>
#include <set>
#include <vector>

#include "remembered.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace remembered;

namespace {

// So late in the week or so long that no window holds, now in two sections.
void leave_no_dates(SmallJob& job, Question& q) {
  q.weather.record = nullptr;
  job.system.recoat_max.value = units::hours(13);
  q.most_days = 90;
}

/// What may decide which programmes are shared. From the ninth on they have no dates, or none on
/// some days.
const std::vector<Change> kinds{
    [](SmallJob&, Question& q) { q.weather.record = nullptr; },
    [](SmallJob&, Question&) {},
    // Washed on the day of the drain, if that is short.
    [](SmallJob&, Question& q) { q.weight_of_attendance = 1'000'000; },
    [](SmallJob&, Question& q) {
      q.weather.record = nullptr;
      q.work.erase(q.work.begin() + 2);
    },
    [](SmallJob&, Question& q) {
      q.calendar.clock_changes = {{dates::Moment(day("2027-05-11"), 8), 60}};
    },
    [](SmallJob&, Question& q) { q.cement_wait = units::days(5); },
    // Painted soon after the start: a late start does not see the rain of the evening before.
    [](SmallJob& job, Question& q) {
      job.system.limits.dry_before.value = units::hours(1);
      q.waits.dry.value = units::hours(60);
      for (int h = 0; h < 6 * 24; ++h) {
        weather::Hour now = fine();
        now.rain->value = units::millimetres(h == 42 ? 3 : 0);
        job.record.put(hour("2027-05-09T00:00") + h, now);
      }
      std::erase_if(q.work, [](const sequence::Work& w) {
        return w.task == "dryness-test" || w.task == "degrease";
      });
    },
    // Nothing between the drain and the coats, which are vacuumed before.
    [](SmallJob&, Question& q) {
      q.weather.record = nullptr;
      std::erase_if(q.work, [](const sequence::Work& w) {
        return w.task == "dryness-test" || w.task == "degrease" || w.task == "etch-walls";
      });
      q.work.insert(q.work.begin() + 2, {"vacuum", "", units::hours(1), 1, 1});
    },
    // No dates, or none any more when the drain takes long.
    [](SmallJob&, Question& q) {
      q.weather.record = nullptr;
      q.most_days = 15;
    },
    [](SmallJob& job, Question& q) {
      q.weather.record = nullptr;
      job.system.recoat_max.value = units::hours(13);
    },
    // On some starts the etch and its coats are parted by Sunday, on others by nothing.
    [](SmallJob& job, Question& q) {
      q.weather.record = nullptr;
      q.waits.dry.value = units::hours(30);
      q.waits.coat_within.value = units::hours(60);
      job.system.recoat_max.value = units::hours(40);
      q.most_days = 14;
    },
    // Weeks that are alike but for a closed day, and days that are too few.
    [](SmallJob& job, Question& q) {
      leave_no_dates(job, q);
      q.calendar.closed = {day("2027-06-02")};
    },
    [](SmallJob& job, Question& q) {
      leave_no_dates(job, q);
      q.most_days = 38;
    },
    // Two coats go on in one long morning of June, or of one day off in spring; in May none do.
    [](SmallJob& job, Question& q) {
      leave_no_dates(job, q);
      job.system.recoat_min.value = units::hours(3);
      job.system.recoat_max.value = units::hours(6);
      q.waits.recoat_reserve.value = {};
      q.calendar.painting_by_month[5] = dates::Hours{7 * 4, 14 * 4};
    },
    [](SmallJob& job, Question& q) {
      leave_no_dates(job, q);
      q.waits.coat_within.value = units::hours(30);
      q.calendar.closed = {day("2027-05-17"), day("2027-05-18")};
    },
    // Under the weather what the calendar alone leaves no room for.
    [](SmallJob& job, Question& q) {
      leave_no_dates(job, q);
      q.weather.record = &job.record;
    }};

// By the calendar alone, for a first day and a drain of so many quarters.
Question by_calendar(const SmallJob& job, dates::Date start, std::int64_t drain) {
  Question q = job.question();
  q.weather.record = nullptr;
  q.start = start;
  q.drain_pump = q.water / (units::minutes(15) * static_cast<double>(drain));
  return q;
}

}  // namespace

TEST_CASE("one programme serves every start, drain and fill for which it is the best") {
  std::mt19937 dice(7);
  const int questions = places::some_of(90);
  for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
    sequence::Memory memory;
    std::set<std::string> different;
    for (int i = 0; i < questions; ++i) {
      SmallJob job = drained_job();
      Question q = job.question();
      kinds[kind](job, q);
      q.drain_pump = q.water / units::minutes(1 + static_cast<int>(dice() % 1800));
      q.start += std::chrono::days{dice() % (kind % 2 == 0 ? 4 : 16)};
      if (dice() % 4 == 0) q.temperatures[4] = units::celsius(10);
      q.tap = q.water / units::minutes(1 + static_cast<int>(dice() % 6000));
      INFO("kind " << kind << ", start " << dates::iso(q.start) << ", drained in "
                   << (q.water / q.drain_pump).in(units::hours) << " h, filled in "
                   << (q.water / q.tap).in(units::hours) << " h");
      const std::string anew = briefly_anew(q);
      CHECK(told(brief_of(memory, q)) == anew);
      different.insert(anew);
    }
    INFO(different.size() << " programmes");
    // Of those without dates on most days there are few.
    const auto some = static_cast<std::size_t>(questions) / 5;
    CHECK(different.size() > (kind < 8 ? some : 0));
  }
}

TEST_CASE("what like jobs met changes no programme") {
  std::mt19937 dice(11);
  const int questions = places::some_of(40);
  std::set<std::string> different;
  for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
    for (int i = 0; i < questions; ++i) {
      SmallJob job = drained_job();
      Question q = job.question();
      kinds[kind](job, q);
      q.drain_pump = q.water / units::minutes(1 + static_cast<int>(dice() % 1800));
      q.start += std::chrono::days{dice() % 16};
      q.reasons = dice() % 3 == 0;
      INFO("kind " << kind << ", start " << dates::iso(q.start));
      const std::string anew = told(sequence::programme(q));
      q.likely.calendar_after = static_cast<int>(dice() % 3);
      q.likely.fill_start =
          dates::Moment(q.start, static_cast<int>(dice() % (i % 2 == 0 ? 4000 : 40000)) - 100);
      INFO("likely to be filled from " << dates::iso(*q.likely.fill_start));
      CHECK(told(sequence::programme(q)) == anew);
      different.insert(anew);
    }
  }
  CHECK(different.size() > kinds.size() * static_cast<std::size_t>(questions) / 4);
}

TEST_CASE("what is known is not looked for again, up to the last start and the longest drain") {
  SmallJob job = drained_job();
  const auto asked = [&](dates::Date start, std::int64_t drain) {
    return by_calendar(job, start, drain);
  };
  // A start and a drain that leave something open both ways.
  dates::Date first, last;
  std::int64_t drain = 0, longest = 0;
  for (int i = 0; i < 7 * 8 && (first == last || drain == longest); ++i) {
    first = day("2027-05-10") + std::chrono::days{i % 7};
    drain = 20 + 5 * (i / 7);
    const sequence::Programme found = sequence::programme(asked(first, drain));
    last = found.start.date();
    longest =
        booking(found, "degrease").start.quarters() - booking(found, "drain").start.quarters();
  }
  REQUIRE(first < last);
  REQUIRE(drain < longest);
  const auto is_known = [&](const Question& q) {
    sequence::Memory memory;
    static_cast<void>(brief_of(memory, asked(first, drain)));
    static_cast<void>(brief_of(memory, q));
    return memory.looked_for() == 1;
  };
  CHECK(is_known(asked(first, drain)));
  CHECK(is_known(asked(last, longest)));
  CHECK(is_known(asked(first, longest)));
  CHECK(is_known(asked(last, drain)));
  CHECK(!is_known(asked(last + std::chrono::days{1}, drain)));
  CHECK(!is_known(asked(first, longest + 1)));
  dates::Date before = first - std::chrono::days{1};
  while (!job.calendar.works_on(before)) before -= std::chrono::days{1};
  CHECK(!is_known(asked(before, drain)));
  CHECK(!is_known(asked(first, drain - 1)));
  Question others = asked(first, drain);
  others.work[2].people = 2;  // As many quarters by another crew.
  others.work[2].person_hours *= 2.0;
  CHECK(!is_known(others));
  Question alike = asked(first, drain);
  alike.work[2].person_hours += units::minutes(-3);
  alike.tap *= 0.3;
  alike.water_visits = 5;
  CHECK(is_known(alike));
}

TEST_CASE("what fits in no week is not looked for again in weeks that are alike") {
  SmallJob job = drained_job();
  job.system.recoat_max.value = units::hours(13);
  const auto asked = [&](int drain, int days) {
    Question q = by_calendar(job, job.start + std::chrono::days{days}, drain);
    q.calendar.closed = {day("2027-04-30"), day("2027-08-02")};
    return q;
  };
  sequence::Memory memory;
  REQUIRE(!brief_of(memory, asked(20, 0)).feasible);
  for (const int days : {0, 1, 6, 13, 28, -1, -9}) {
    for (const int drain : {1, 20, 41, 600}) CHECK(!brief_of(memory, asked(drain, days)).feasible);
  }
  CHECK(memory.looked_for() == 1);
  // Back to the last day off, and as far ahead as there is none.
  CHECK(!brief_of(memory, asked(20, -10)).feasible);
  CHECK(memory.looked_for() == 2);
  CHECK(!brief_of(memory, asked(20, 80)).feasible);
  CHECK(memory.looked_for() == 3);
}

TEST_CASE("who starts on a day off starts with the next working day") {
  SmallJob job = drained_job();
  const auto asked = [&](const char* start) { return by_calendar(job, day(start), 10); };
  sequence::Memory memory;
  const auto monday = told_briefly(brief_of(memory, asked("2027-05-17")));
  for (const char* start : {"2027-05-16", "2027-05-15"})
    CHECK(told_briefly(brief_of(memory, asked(start))) == monday);
  CHECK(memory.looked_for() == 1);
  static_cast<void>(brief_of(memory, asked("2027-05-14")));
  CHECK(memory.looked_for() == 2);
}

TEST_CASE("what fits for no drain of two fits for none between") {
  SmallJob job = drained_job();
  job.system.recoat_max.value = units::hours(13);
  const auto asked = [&](int drain, int days) {
    Question q = by_calendar(job, job.start + std::chrono::days{days}, drain);
    q.most_days = 20;  // too few for the weeks to tell
    return q;
  };
  sequence::Memory memory;
  REQUIRE(!brief_of(memory, asked(20, 0)).feasible);
  REQUIRE(!brief_of(memory, asked(40, 0)).feasible);
  CHECK(memory.looked_for() == 2);
  CHECK(!brief_of(memory, asked(33, 0)).feasible);
  CHECK(memory.looked_for() == 2);
  CHECK(!brief_of(memory, asked(41, 0)).feasible);
  CHECK(memory.looked_for() == 3);
  CHECK(!brief_of(memory, asked(33, 1)).feasible);
  CHECK(memory.looked_for() == 4);
}
