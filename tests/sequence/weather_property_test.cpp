// Programmes under made-up weather: against every start there is on a small job, with the rules
// read literally from the record; and properties that hold whatever the weather.
#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <variant>

#include "basinwright/schedule/solve.hpp"
#include "sequence/instance.hpp"
#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;
using namespace weather_making;

namespace {

using Random = std::mt19937;

double share(Random& random) {
  return static_cast<double>(random()) / 4294967295.0;
}

constexpr int days = 21;

/// Showers, warm afternoons and damp mornings, in steps of a degree, so that no value lies near a
/// limit's hundredth. The shell is measured.
weather::Record showery(Random& random, double rain_share, int count = days + 1) {
  weather::Record record;
  double drift = 0;
  int wet_hours = 0;
  for (int h = 0; h < count * 24; ++h) {
    if (h % 24 == 0) drift = std::floor(share(random) * 9) - 4;
    weather::Hour now = fine();
    const int of_day = h % 24;
    now.air->value = units::celsius(19 + drift + (of_day > 8 && of_day < 18 ? 8 : 0));
    now.shell = {units::celsius(18 + drift), weather::Quality::forecast};
    now.dew_point = {units::celsius(9 + drift + (of_day < 9 ? std::floor(share(random) * 9) : 0)),
                     weather::Quality::forecast};
    now.humidity->value = 0.6;
    if (wet_hours == 0 && share(random) < rain_share)
      wet_hours = 1 + static_cast<int>(random() % 5);
    if (wet_hours > 0) {
      --wet_hours;
      now.rain->value = units::millimetres(1);
    }
    if (share(random) < rain_share / 20) now.rain.reset();
    record.put(hour("2027-05-09T00:00") + h, now);
  }
  return record;
}

/// The rules of the small job read from the record quarter by quarter; no clock change.
class Literal {
 public:
  explicit Literal(const SmallJob& job) {
    const auto midnight = dates::Moment(job.start, 0).quarters();
    for (int q = -300; q < days * 96 + 100; ++q) {
      const auto at = dates::Moment::of_quarters(midnight + q);
      const weather::Hour& h = job.record.at(weather::hour_of(at));
      const bool covered = weather::hour_of(at) < job.record.covered_until();
      wet_.push_back(covered && (!h.rain || h.rain->value.in(units::millimetres) > 0.05));
      hot_or_cold_.push_back(covered && (h.air->value.in(units::celsius) > 30.5 ||
                                         h.air->value.in(units::celsius) < 9.5));
      const double margin =
          covered ? (h.shell->value - h.dew_point->value).in(units::kelvins) : 9.0;
      dewy_.push_back(margin < 2.5);
      cold_shell_.push_back(covered && h.shell->value.in(units::celsius) < 9.5);
      frost_.push_back(covered && h.air->value.in(units::celsius) < -0.5);
      const int of_day = at.quarter();
      const bool working = dates::weekday(at.date()) < 5;
      work_.push_back(working && of_day >= 28 && of_day < 64);
      morning_.push_back(working && of_day >= 32 && of_day < 44);
    }
  }
  bool any(const std::vector<bool>& what, int from, int to) const {
    for (int q = from; q < to; ++q) {
      if (what[static_cast<std::size_t>(q + 300)]) return true;
    }
    return false;
  }
  bool all(const std::vector<bool>& what, int from, int to) const {
    for (int q = from; q < to; ++q) {
      if (!what[static_cast<std::size_t>(q + 300)]) return false;
    }
    return true;
  }
  // An hour of etch in working hours without frost.
  bool etch(int q) const { return all(work_, q, q + 4) && !any(frost_, q, q + 4); }
  // Sheets of 16 h after 48 dry hours, laid in working hours and dry themselves.
  bool sheets(int q) const { return work(q) && !any(wet_, q - 192, q + 64); }
  bool work(int q) const { return all(work_, q, q + 1); }
  // Two hours of a morning, each quarter with its own six and twelve hours after.
  bool coat(int q) const {
    return all(morning_, q, q + 8) && !any(hot_or_cold_, q, q + 8 + 24) &&
           !any(dewy_, q, q + 8 + 24) && !any(cold_shell_, q, q + 8) &&
           !any(wet_, q - 12, q + 8 + 48);
  }
  bool dry_shell(int q) const { return !any(wet_, q - 192, q); }

 private:
  std::vector<bool> wet_, hot_or_cold_, dewy_, cold_shell_, frost_, work_, morning_;
};

/// Where a rule of one start holds, quarter by quarter.
template <class Rule>
std::vector<char> where(Rule rule, int last) {
  std::vector<char> out;
  for (int q = 0; q < last; ++q) out.push_back(rule(q) ? 1 : 0);
  return out;
}

/// The earliest start of the fill over every start of everything, in quarters from midnight.
std::optional<int> earliest_fill(const Literal& rules) {
  std::optional<int> best;
  constexpr int last = days * 96;
  const auto coat = where([&](int q) { return q + 8 <= last && rules.coat(q); }, last);
  const auto dry = where([&](int q) { return rules.dry_shell(q); }, last);
  const auto sheets_at = where([&](int q) { return rules.sheets(q); }, last);
  const auto at = [](const std::vector<char>& what, int q) {
    return what[static_cast<std::size_t>(q)] != 0;
  };
  for (int etch = 0; etch + 4 <= last; ++etch) {
    if (!rules.etch(etch)) continue;
    const int end = etch + 4;
    // The first sheets that hold; later ones only delay what follows.
    int sheets = end + 192;
    while (sheets < last && !at(sheets_at, sheets)) ++sheets;
    for (int first = sheets + 64; first <= end + 7 * 96 && first < last; ++first) {
      if (!at(coat, first) || !at(dry, first)) continue;
      for (int second = first + 82; second <= first + 94 && second < last; ++second) {
        if (!at(coat, second)) continue;
        int fill = second + 8 + 7 * 96;
        while (fill < last && !rules.work(fill)) ++fill;
        if (fill < last && (!best || fill < *best)) best = fill;
      }
    }
  }
  return best;
}

SmallJob small() {
  SmallJob job;
  job.most_days = days;
  job.system.limits.humidity_max.value = units::percent(99);
  return job;
}

// By the solver alone: the search for reasons takes longer and is asked for elsewhere.
std::string fill_of(const SmallJob& job) {
  const weather::Conditions conditions(job.record);
  const auto question = job.question();
  const sequence::Instance instance(question, {job.most_days, &conditions});
  const auto solved = schedule::solve(instance.problem());
  const auto* answer = std::get_if<schedule::Answer>(&solved);
  return answer == nullptr ? "no dates"
                           : dates::iso(instance.timeline().moment(answer->objective.finish));
}

// "no dates" sorts after any date.
bool later_or_same(const std::string& a, const std::string& b) {
  return a >= b;
}

}  // namespace

TEST_CASE("the programme is the earliest of every there is") {
  Random random(20270510);
  int found = 0;
  int none = 0;
  int moved = 0;
  for (int round = 0; round < 16; ++round) {
    SmallJob job = small();
    job.record = showery(random, 0.004 + 0.02 * share(random));
    const auto wanted = earliest_fill(Literal(job));
    INFO("round " << round);
    // Without the search for reasons: only what is asked here.
    const weather::Conditions conditions(job.record);
    const auto question = job.question();
    const sequence::Instance instance(question, {days, &conditions});
    const auto solved = schedule::solve(instance.problem());
    const auto* answer = std::get_if<schedule::Answer>(&solved);
    REQUIRE((answer != nullptr) == wanted.has_value());
    if (answer == nullptr) {
      ++none;
      continue;
    }
    ++found;
    CHECK(answer->objective.finish == *wanted);
    moved += *wanted > 11 * 96 + 40 ? 1 : 0;
    const auto complaints = schedule::verify(instance.problem(), *answer);
    CHECK(complaints.empty());
  }
  CHECK(found >= 5);
  CHECK(none >= 2);
  CHECK(moved >= 3);
}

TEST_CASE("closing hours never brings the fill forward") {
  Random random(5);
  for (int round = 0; round < 5; ++round) {
    SmallJob job = small();
    job.most_days = 40;
    job.record = showery(random, 0.004, 30);
    const std::string before = fill_of(job);
    for (int i = 0; i < 6; ++i) {
      const auto h = job.record.from() + static_cast<weather::HourNumber>(random() % 600);
      weather::Hour wet = job.record.at(h);
      wet.rain = {units::millimetres(2), weather::Quality::observed};
      job.record.put(h, wet);
    }
    INFO("round " << round);
    CHECK(later_or_same(fill_of(job), before));
  }
}

TEST_CASE("a longer horizon never hurts") {
  Random random(6);
  for (int round = 0; round < 4; ++round) {
    SmallJob job = small();
    job.record = showery(random, 0.006, 30);
    const std::string near = fill_of(job);
    job.most_days = 45;
    const std::string far = fill_of(job);
    INFO("round " << round);
    CHECK(later_or_same(near, far));
    if (near != "no dates") CHECK(near == far);
  }
}

TEST_CASE("everything a week later is the same plan a week later") {
  Random random(8);
  for (int round = 0; round < 4; ++round) {
    SmallJob job = small();
    job.most_days = 40;
    job.record = showery(random, 0.004, 30);
    const auto now = job.programme();
    SmallJob later = job;
    later.start += std::chrono::days{7};
    later.record = weather::Record();
    for (auto h = job.record.from(); h < job.record.until(); ++h)
      later.record.put(h + 7 * 24, job.record.at(h));
    const auto then = later.programme();
    INFO("round " << round);
    REQUIRE(now.feasible == then.feasible);
    REQUIRE(now.bookings.size() == then.bookings.size());
    for (std::size_t i = 0; i < now.bookings.size(); ++i) {
      CHECK(then.bookings[i].start.quarters() == now.bookings[i].start.quarters() + 7 * 96);
      CHECK(then.bookings[i].held_by.size() == now.bookings[i].held_by.size());
    }
  }
}

TEST_CASE("what nobody knows inside the span never brings the fill forward") {
  Random random(9);
  for (int round = 0; round < 5; ++round) {
    SmallJob job = small();
    job.most_days = 40;
    job.record = showery(random, 0.01, 30);
    const std::string before = fill_of(job);
    weather::Record holed;
    for (auto h = job.record.from(); h < job.record.until(); ++h) {
      weather::Hour now = job.record.at(h);
      const bool edge = h == job.record.from() || h + 1 == job.record.until();
      if (!edge && share(random) < 0.02) now.rain.reset();
      if (!edge && share(random) < 0.01) now = {};
      holed.put(h, now);
    }
    job.record = holed;
    INFO("round " << round);
    CHECK(later_or_same(fill_of(job), before));
  }
}
