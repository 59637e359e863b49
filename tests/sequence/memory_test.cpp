// What is remembered between jobs changes no programme: every answer of a memory is held against
// the same question asked anew.
#include <set>
#include <thread>
#include <vector>

#include "remembered.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace remembered;

namespace {

/// One change each of everything a programme may follow from: the work, the site,
const std::vector<Change> of_the_job{
    [](SmallJob&, Question&) {},
    [](SmallJob&, Question& q) { q.start += std::chrono::days{1}; },
    [](SmallJob&, Question& q) { q.start += std::chrono::days{7}; },
    [](SmallJob&, Question& q) { q.work[0].person_hours += units::minutes(-3); },
    [](SmallJob&, Question& q) { q.work[0].person_hours += units::minutes(20); },
    [](SmallJob&, Question& q) { q.work[2].person_hours += units::minutes(20); },
    [](SmallJob&, Question& q) { q.work[2].people = 2; },
    [](SmallJob&, Question& q) { q.work[0].person_hours = units::minutes(10); },
    [](SmallJob&, Question& q) { q.work[0].person_hours = units::hours(14); },
    [](SmallJob&, Question& q) { q.work[0].person_hours = units::hours(14.2); },
    [](SmallJob&, Question& q) {
      q.work.push_back({"handover", "", units::hours(2), 2, 1});
    },
    [](SmallJob&, Question& q) {
      q.work.push_back({"unmask", "", units::hours(2), 2, 1});
    },
    [](SmallJob&, Question& q) {
      q.work.insert(q.work.begin(), {"drain", "", {}, 0, 1});
    },
    [](SmallJob&, Question& q) { q.sections = {"deep"}; },
    [](SmallJob&, Question& q) { q.water *= 1.0001; },
    [](SmallJob&, Question& q) { q.water *= 1.5; },
    [](SmallJob&, Question& q) { q.tap *= 0.5; },
    [](SmallJob&, Question& q) { q.water_visits = 4; },
    [](SmallJob&, Question& q) { q.clean_up = units::minutes(45); },
    [](SmallJob&, Question& q) { q.cement_wait = units::days(12); },
    [](SmallJob&, Question& q) { q.most_days = 5; },
    [](SmallJob&, Question& q) { q.most_days = 5, q.reasons = false; },
    [](SmallJob&, Question& q) { q.weight_of_quarter[2] = 1'000'000; },
    [](SmallJob&, Question& q) { q.weight_of_attendance = 1'000'000; },
};

/// the calendar, the waits and the weather,
const std::vector<Change> of_the_days{
    [](SmallJob&, Question& q) { q.calendar.working[5] = true; },
    [](SmallJob&, Question& q) { q.calendar.hours.from = 6 * 4; },
    [](SmallJob&, Question& q) { q.calendar.closed = {day("2027-05-17")}; },
    [](SmallJob&, Question& q) { q.calendar.painting.from += 2; },
    [](SmallJob&, Question& q) {
      q.calendar.painting_by_month[4] = dates::Hours{40, 60};
    },
    [](SmallJob&, Question& q) {
      q.calendar.clock_changes = {{dates::Moment(day("2027-05-12"), 8), 60}};
    },
    [](SmallJob&, Question& q) {
      q.calendar.from_first_light[4] = true;
      q.weather.position = weather::Position{51.5, 0.0};
      q.weather.clock_offset = units::hours(1);
    },
    [](SmallJob&, Question& q) { q.waits.dry.value = units::hours(12); },
    [](SmallJob&, Question& q) { q.waits.dryness_test.value = units::hours(24); },
    [](SmallJob&, Question& q) { q.waits.coat_within.value = units::days(3); },
    [](SmallJob&, Question& q) { q.waits.start_up.value = units::days(9); },
    [](SmallJob&, Question& q) { q.waits.recoat_reserve.value = units::hours(1); },
    [](SmallJob&, Question& q) { q.weather.rules.least_rain.value = units::millimetres(3.5); },
    [](SmallJob&, Question& q) { q.weather.rules.frost.value = units::celsius(17); },
    [](SmallJob&, Question& q) { q.weather.rules.shell_lag.value = units::hours(1); },
    [](SmallJob&, Question& q) { q.weather.record = nullptr; },
    [](SmallJob&, Question& q) {
      q.weather.record = nullptr;
      q.temperatures.fill(units::celsius(12));
    },
};

/// and the data sheet.
const std::vector<Change> of_the_sheet{
    [](SmallJob& job, Question&) { job.system.recoat_min.value = units::hours(26); },
    [](SmallJob& job, Question&) { job.system.recoat_max.value = units::hours(80); },
    [](SmallJob& job, Question&) { job.system.cure_warm.value = units::days(3); },
    [](SmallJob& job, Question&) { job.system.cure_cold.value = units::days(21); },
    [](SmallJob& job, Question&) { job.system.quiet_start.value = units::days(8); },
    [](SmallJob& job, Question&) { job.system.limits.air_min.value = units::celsius(16); },
    [](SmallJob& job, Question&) { job.system.limits.rain_free_after.value = units::hours(60); },
    [](SmallJob& job, Question&) { job.system.limits.wind_max = {units::metres_per_second(0.1)}; },
    [](SmallJob& job, Question&) {
      job.system.hardeners = {"cool", "standard"};
    },
    [](SmallJob& job, Question&) {
      job.system.hardeners = {"cool", "standard"};
      job.system.cool_hardener_to.value = units::celsius(25);
    },
    [](SmallJob& job, Question& q) {
      job.system.recoat_max.value = units::hours(21.5);
      q.rework.on_purpose = true;
      q.rework.person_hours = {units::hours(1.1)};
    },
    [](SmallJob& job, Question& q) {
      job.system.recoat_max.value = units::hours(21.5);
      q.rework.on_purpose = true;
      q.rework.person_hours = {units::hours(5)};
    },
    [](SmallJob& job, Question& q) {
      job.system.recoat_max.value = units::hours(21.5);
      q.rework.on_purpose = true;
      q.rework.person_hours = {units::hours(5)};
      q.waits.rework_dry.value = units::hours(20);
    },
};

std::vector<Change> all_changes() {
  std::vector<Change> all;
  for (const auto* some : {&of_the_job, &of_the_days, &of_the_sheet})
    all.insert(all.end(), some->begin(), some->end());
  return all;
}

}  // namespace

TEST_CASE("a remembered programme is the one that would be found") {
  sequence::Memory roomy;
  sequence::Memory small(1000);
  std::set<std::string> different;
  const std::vector<Change> changes = all_changes();
  const std::size_t step = places::some_of(12) < 12 ? 3 : 1;
  for (int round = 0; round < 2; ++round) {
    for (std::size_t i = 0; i < changes.size(); i += step) {
      SmallJob job = showery_job();
      Question question = job.question();
      changes[i](job, question);
      INFO("change " << i << ", round " << round);
      const std::string remembered = told(brief_of(roomy, question));
      if (round == 0 || i % 5 == 0) {
        const std::string anew = briefly_anew(question);
        CHECK(remembered == anew);
        CHECK(told(brief_of(small, question)) == anew);
        different.insert(anew);
      }
      if (round == 0 && i % 5 == 0) {
        const std::uint64_t number = question.weather.record == nullptr ? 0 : 1;
        CHECK(told(roomy.programme(question, number)) == told(sequence::programme(question)));
      }
    }
  }
  // The test could not fail if the changes changed nothing.
  CHECK(different.size() > changes.size() / step / 2);
}

TEST_CASE("where reasons are asked for, nothing is left out") {
  SmallJob job = drained_job();
  sequence::Memory memory;
  for (const int most_days : {60, 5}) {
    job.most_days = most_days;
    for (int round = 0; round < 2; ++round) {
      Question q = job.question();
      CHECK(told(memory.brief(q, 1)) == told(sequence::programme(q)));
      q.reasons = false;
      CHECK(told(memory.brief(q, 1)) == briefly_anew(q));
    }
  }
}

TEST_CASE("two records of weather are told apart by their numbers") {
  SmallJob dry = showery_job();
  SmallJob wet = showery_job();
  for (int h = 0; h < 24 * 9; ++h) {
    weather::Hour now = fine();
    now.rain->value = units::millimetres(2);
    wet.record.put(hour("2027-05-12T00:00") + h, now);
  }
  const auto asked = [](const SmallJob& job) {
    Question q = job.question();
    q.reasons = false;
    return q;
  };
  sequence::Memory memory;
  const std::string first = told(memory.brief(asked(dry), 1));
  CHECK(told(memory.brief(asked(wet), 2)) == briefly_anew(asked(wet)));
  CHECK(told(memory.brief(asked(dry), 1)) == first);
  CHECK(first != briefly_anew(asked(wet)));
}

TEST_CASE("threads share a memory") {
  sequence::Memory memory(3000);
  const SmallJob job = showery_job();
  const auto asked = [&](int i) {
    Question q = job.question();
    q.start += std::chrono::days{i % 4};
    return q;
  };
  std::vector<std::string> anew;
  for (int i = 0; i < 4; ++i) anew.push_back(briefly_anew(asked(i)));
  std::vector<char> same(3, 1);
  {
    std::vector<std::jthread> threads;
    for (std::size_t t = 0; t < same.size(); ++t) {
      threads.emplace_back([&, t] {
        for (int i = 0; i < 24; ++i) {
          const auto expected = anew[static_cast<std::size_t>(i % 4)];
          if (told(brief_of(memory, asked(i))) != expected) same[t] = 0;
        }
      });
    }
  }
  CHECK(same == std::vector<char>(3, 1));
}
