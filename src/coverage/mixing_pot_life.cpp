#include <algorithm>
#include <cmath>
#include <iterator>
#include <stdexcept>

#include "basinwright/coverage/pot_life.hpp"

namespace basinwright::coverage {
namespace {

using units::Duration;
using units::Temperature;
using units::TemperatureDifference;

// 68 F is 20 C, but not in the last bit.
constexpr TemperatureDifference hair_of_warmth = units::kelvins(1e-9);

bool is_life(Duration life) {
  return life > Duration() && std::isfinite(life.si());
}

bool in_order(const PotLifePoint& colder, const PotLifePoint& warmer) {
  return colder.temperature < warmer.temperature && colder.life >= warmer.life;
}

void check_paint(const PotLife& paint) {
  const auto& table = paint.table;
  if (table.empty()) {
    if (is_life(paint.life.value) && paint.halved_by.value > TemperatureDifference()) return;
    throw std::invalid_argument("pot life: a positive life and a positive halving step");
  }
  bool sound = table.size() > 1;
  for (std::size_t i = 0; i < table.size() && sound; ++i) {
    sound = is_life(table[i].life) && (i == 0 || in_order(table[i - 1], table[i]));
  }
  if (!sound) {
    throw std::invalid_argument(
        "pot life: a table of two points or more, coldest first, of lives that do not grow");
  }
}

Duration between(const PotLifePoint& colder, const PotLifePoint& warmer, Temperature temperature) {
  const double part =
      (temperature - colder.temperature) / (warmer.temperature - colder.temperature);
  return colder.life * std::pow(warmer.life / colder.life, part);
}

std::optional<Duration> in_table(const std::vector<PotLifePoint>& table, Temperature temperature) {
  if (!(temperature >= table.front().temperature - hair_of_warmth)) return std::nullopt;
  if (!(temperature <= table.back().temperature + hair_of_warmth)) return std::nullopt;
  const Temperature held =
      std::clamp(temperature, table.front().temperature, table.back().temperature);
  const auto warmer = std::find_if(std::next(table.begin()), table.end(), [&](const auto& point) {
    return point.temperature >= held;
  });
  if (warmer->temperature == held) return warmer->life;
  return between(*std::prev(warmer), *warmer, held);
}

std::optional<Temperature> warmest_in(const std::vector<PotLifePoint>& table, Duration least) {
  const auto warmer = std::find_if(
      table.begin(), table.end(), [&](const auto& point) { return point.life < least; });
  if (warmer == table.begin()) return std::nullopt;
  const PotLifePoint& colder = *std::prev(warmer);
  if (warmer == table.end()) return colder.temperature;
  const double part = std::log(colder.life / least) / std::log(colder.life / warmer->life);
  return colder.temperature + (warmer->temperature - colder.temperature) * part;
}

}  // namespace

std::optional<Duration> pot_life_at(const PotLife& paint, Temperature temperature) {
  check_paint(paint);
  if (!paint.table.empty()) return in_table(paint.table, temperature);
  const double halvings = (temperature - paint.at.value) / paint.halved_by.value;
  if (!std::isfinite(halvings)) throw std::invalid_argument("pot life: a temperature is missing");
  return paint.life.value * std::exp2(-std::max(0.0, halvings));
}

std::optional<Temperature> warmest_for(const PotLife& paint, Duration least) {
  check_paint(paint);
  if (!is_life(least)) throw std::invalid_argument("warmest_for: a time above 0");
  if (!paint.table.empty()) return warmest_in(paint.table, least);
  if (least > paint.life.value) return std::nullopt;
  return paint.at.value + paint.halved_by.value * std::log2(paint.life.value / least);
}

}  // namespace basinwright::coverage
