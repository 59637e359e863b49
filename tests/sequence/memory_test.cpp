// What is remembered between jobs changes no programme: every answer of a memory is held against
// the same question asked anew.
#include "basinwright/sequence/memory.hpp"

#include <fmt/format.h>
#include <functional>
#include <random>
#include <set>
#include <thread>
#include <vector>

#include "small_job.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace basinwright;
using namespace small_job;
using namespace weather_making;

namespace {

using Question = sequence::ProgrammeQuestion;

std::string told(const sequence::Programme& p) {
  std::string out = fmt::format("{} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {}\n",
                                p.feasible,
                                dates::iso(p.start),
                                dates::iso(p.refill_done),
                                dates::iso(p.quiet_until),
                                dates::iso(p.first_swim),
                                p.split_coats,
                                p.days_on_site,
                                p.cure.si(),
                                p.cure_by_temperature,
                                p.cure_by_weather,
                                static_cast<int>(p.weather),
                                p.hardener ? static_cast<int>(p.hardener->kind) : -1,
                                p.rain_before_drain ? p.rain_before_drain->si() : -1.0,
                                p.blocked_by ? p.blocked_by->task : "",
                                dates::iso(p.fill_start),
                                dates::iso(p.weather_until),
                                p.climatology_beyond,
                                p.rain_after_test ? dates::iso(*p.rain_after_test) : "",
                                p.hardener ? p.hardener->low.si() - p.hardener->high.si() : 0.0);
  for (const sequence::Booking& b : p.bookings) {
    out += fmt::format("{} {} {} {} {} {}",
                       b.task,
                       b.section,
                       dates::iso(b.start),
                       dates::iso(b.end),
                       b.people,
                       static_cast<int>(b.rests_on));
    for (const sequence::Worked& w : b.worked)
      out += fmt::format(" {}={}", dates::iso(w.date), w.quarters);
    for (const sequence::Held& h : b.held_by)
      out += fmt::format(" {}{}{}", static_cast<int>(h.by), h.task, h.wait.si());
    out += '\n';
  }
  return out;
}

/// Showers in the first days, fine afterwards.
SmallJob showery_job() {
  SmallJob job;
  for (int h = 0; h < 40 * 24; ++h) {
    weather::Hour now = fine();
    if (h < 6 * 24 && h % 67 < 3) now.rain->value = units::millimetres(h % 5);
    now.air->value = units::celsius(14 + h % 24 / 3);
    job.record.put(hour("2027-05-09T00:00") + h, now);
  }
  return job;
}

using Change = std::function<void(SmallJob&, Question&)>;

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

// Only what a line needs: not why, nor what it rests on.
std::string told_briefly(sequence::Programme programme) {
  for (sequence::Booking& b : programme.bookings) {
    b.held_by.clear();
    b.rests_on = {};
  }
  return told(programme);
}

sequence::Programme brief_of(sequence::Memory& memory, Question question) {
  question.reasons = false;
  return memory.brief(question, question.weather.record == nullptr ? 0 : 1);
}

std::string briefly_anew(Question question) {
  question.reasons = false;
  return told_briefly(sequence::programme(question));
}

// A pool that is drained before it is washed and etched.
SmallJob drained_job() {
  SmallJob job = showery_job();
  job.work.insert(job.work.begin(),
                  {{"set-out", "", units::hours(1.5), 1, 1},
                   {"drain", "", {}, 0, 1},
                   {"degrease", "", units::hours(3), 1, 1}});
  return job;
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

TEST_CASE("one programme serves every start, drain and fill for which it is the best") {
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
      }};
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
    CHECK(different.size() >= (kind < 8 ? 20U : kind == 9 ? 1U : 3U));
  }
}

TEST_CASE("what is known is not looked for again, up to the last start and the longest drain") {
  SmallJob job = drained_job();
  const auto asked = [&](dates::Date start, std::int64_t drain) {
    Question q = job.question();
    q.weather.record = nullptr;
    q.start = start;
    q.drain_pump = q.water / (units::minutes(15) * static_cast<double>(drain));
    return q;
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
  CHECK(!is_known(asked(first - std::chrono::days{1}, drain)));
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

TEST_CASE("what fits for no drain of two fits for none between") {
  SmallJob job = drained_job();
  job.system.recoat_max.value = units::hours(13);
  const auto asked = [&](int drain, int days) {
    Question q = job.question();
    q.weather.record = nullptr;
    q.start += std::chrono::days{days};
    q.drain_pump = q.water / (units::minutes(15) * drain);
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
