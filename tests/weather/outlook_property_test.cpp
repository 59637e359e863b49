// The swept calendar of a gate against its verdicts, and against the rules read literally.
#include <cstdint>
#include <random>

#include "basinwright/weather/outlook.hpp"
#include "making.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace weather_making;
using weather::Gate;
using weather::Outlook;
using weather::Quality;

namespace {

using Random = std::mt19937;

double between(Random& random, double low, double high) {
  return low + (high - low) * (static_cast<double>(random()) / 4294967295.0);
}

bool chance(Random& random, double share) {
  return between(random, 0, 1) < share;
}

weather::Record some_weather(Random& random, int hours) {
  weather::Record record;
  for (int h = 0; h < hours; ++h) {
    weather::Hour now = fine(chance(random, 0.9) ? Quality::forecast : Quality::observed);
    now.air->value = units::celsius(std::round(between(random, 6, 33)));
    now.shell = {units::celsius(std::round(between(random, 8, 34))), Quality::forecast};
    now.humidity->value = std::round(between(random, 30, 95)) / 100;
    if (chance(random, 0.05)) now.rain->value = units::millimetres(1);
    if (chance(random, 0.03)) now.rain.reset();
    record.put(hour("2027-05-11T00:00") + h, now);
  }
  return record;
}

Gate some_gate(Random& random) {
  Gate g;
  if (chance(random, 0.8)) g.air_min = units::celsius(8);
  if (chance(random, 0.8)) g.air_max = units::celsius(32);
  g.air_after = units::hours(std::floor(between(random, 0, 4)));
  if (chance(random, 0.5)) g.shell_min = units::celsius(9);
  if (chance(random, 0.5)) g.humidity_max = units::percent(94);
  g.first_cure = units::hours(std::floor(between(random, 0, 3)));
  g.no_rain = chance(random, 0.8);
  g.rain_free_after = units::hours(std::floor(between(random, 0, 5)));
  g.dry_before = units::hours(std::floor(between(random, 0, 4)));
  return g;
}

// The rules by the words of the data sheet, hour by hour, for whole hours.
bool literally_open(const weather::Record& record, const Gate& g, weather::HourNumber at) {
  const auto in_span = [&](weather::HourNumber h) {
    return h >= record.covered_from() && h < record.covered_until();
  };
  const auto celsius = [&](weather::HourNumber h) {
    return record.at(h).air->value.in(units::celsius);
  };
  const auto wet = [&](weather::HourNumber h) {
    const auto& rain = record.at(h).rain;
    return in_span(h) && (!rain || rain->value.in(units::millimetres) > 0.099);
  };
  for (int k = 0; k <= g.air_after.in(units::hours) + 0.5; ++k) {
    if (!in_span(at + k)) continue;
    if (g.air_min && celsius(at + k) < 7.999) return false;
    if (g.air_max && celsius(at + k) > 32.001) return false;
  }
  if (g.shell_min && record.at(at).shell->value.in(units::celsius) < 8.999) return false;
  for (int k = 0; k <= g.first_cure.in(units::hours) + 0.5; ++k) {
    if (in_span(at + k) && g.humidity_max && record.at(at + k).humidity->value > 0.9401)
      return false;
  }
  for (int k = 0; g.no_rain && k <= g.rain_free_after.in(units::hours) + 0.5; ++k) {
    if (wet(at + k)) return false;
  }
  for (int k = 1; k < g.dry_before.in(units::hours) + 0.5; ++k) {
    if (wet(at - k)) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("swept hours are the verdicts and the rules read literally") {
  Random random(20270511);
  int open_hours = 0;
  for (int round = 0; round < 60; ++round) {
    const int count = 72;
    const weather::Record record = some_weather(random, count);
    const weather::Conditions conditions(record);
    const Gate gate = some_gate(random);
    const auto hours = hours_of("2027-05-11T00:00", count);
    const Outlook outlook(conditions, gate, {hours, 1});
    const std::vector<char> swept = outlook.calendar();
    for (int h = 0; h < count; ++h) {
      INFO("round " << round << " hour " << h);
      const bool open = swept[static_cast<std::size_t>(h)] != 0;
      open_hours += open ? 1 : 0;
      REQUIRE(outlook.verdict(h).open() == open);
      REQUIRE(outlook.failures(h).empty() == open);
      REQUIRE(literally_open(record, gate, hours[static_cast<std::size_t>(h)]) == open);
    }
  }
  CHECK(open_hours > 300);
  CHECK(open_hours < 4000);
}

TEST_CASE("quarter steps of whole-hour rules say what their hour says") {
  Random random(7);
  for (int round = 0; round < 20; ++round) {
    const weather::Record record = some_weather(random, 48);
    const weather::Conditions conditions(record);
    Gate gate = some_gate(random);
    // A quarter inside an hour looks back less far than the hour does.
    gate.dry_before = units::Duration();
    const auto hours = hours_of("2027-05-11T00:00", 48);
    std::vector<weather::HourNumber> quarters;
    for (const auto h : hours) quarters.insert(quarters.end(), 4, h);
    const auto by_hour = Outlook(conditions, gate, {hours, 1}).calendar();
    const auto by_quarter = Outlook(conditions, gate, {quarters, 4}).calendar();
    for (std::size_t q = 0; q < quarters.size(); ++q) {
      INFO("round " << round << " quarter " << q);
      REQUIRE(by_quarter[q] == by_hour[q / 4]);
    }
  }
}

TEST_CASE("an hour nobody knows never opens a gate") {
  Random random(99);
  for (int round = 0; round < 40; ++round) {
    const weather::Record known = some_weather(random, 72);
    const Gate gate = some_gate(random);
    weather::Record holed;
    for (weather::HourNumber h = known.from(); h < known.until(); ++h) {
      weather::Hour now = known.at(h);
      const bool edge = h == known.from() || h + 1 == known.until();
      if (!edge && chance(random, 0.2)) now.rain.reset();
      if (!edge && chance(random, 0.1)) now.air.reset();
      holed.put(h, now);
    }
    const auto hours = hours_of("2027-05-11T00:00", 72);
    const weather::Conditions before(known);
    const weather::Conditions after(holed);
    const auto open_before = Outlook(before, gate, {hours, 1}).calendar();
    const auto open_after = Outlook(after, gate, {hours, 1}).calendar();
    for (std::size_t h = 0; h < hours.size(); ++h) {
      INFO("round " << round << " hour " << h);
      REQUIRE(open_after[h] <= open_before[h]);
    }
  }
}
