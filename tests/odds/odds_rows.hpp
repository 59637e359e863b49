// Rows of reference/odds.json: the finishes of a row in, its expected object computed. Header only,
// so that a runner outside the test programs can compile it too.
#pragma once

#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "basinwright/odds/quantiles.hpp"

namespace odds_rows {

namespace odds = basinwright::odds;
using nlohmann::json;

inline odds::Finishes<std::int64_t> finishes(const json& row) {
  odds::Finishes<std::int64_t> found;
  for (const json& day : row.at("finish_days")) {
    if (day.is_null()) {
      found.emplace_back();
    } else {
      found.emplace_back(day.get<std::int64_t>());
    }
  }
  return found;
}

inline json or_null(const std::optional<std::int64_t>& value) {
  return value ? json(*value) : json(nullptr);
}

inline json quantile(const odds::Finishes<std::int64_t>& days, std::int64_t percent) {
  const auto q = odds::quantile(days, {percent, 100}, {9, 10});
  return {{"rank", q.rank},
          {"value", or_null(q.value)},
          {"ci90_rank_lo", or_null(q.ranks.low)},
          {"ci90_rank_hi", or_null(q.ranks.high)},
          {"lo", or_null(q.low)},
          {"hi", or_null(q.high)},
          {"coverage", q.ranks.coverage}};
}

inline json ready_by(const odds::Finishes<std::int64_t>& days, std::int64_t day) {
  const odds::ReadyShare share = odds::ready_by(days, day);
  return {{"k", share.ready},
          {"n", share.years},
          {"wilson95", {share.interval.low, share.interval.high}}};
}

/// The whole number after a prefix of a key; nothing when the key is no such thing.
inline std::optional<std::int64_t> number_after(const std::string& key, const std::string& prefix) {
  const std::string digits = key.size() > prefix.size() ? key.substr(prefix.size()) : "";
  const bool all_digits = digits.find_first_not_of("0123456789") == std::string::npos;
  if (key.rfind(prefix, 0) != 0 || digits.empty() || digits.size() > 9 || !all_digits) {
    return std::nullopt;
  }
  return std::stoll(digits);
}

/// What a row expects under `P<percent>` and `by_day_<day>`, computed; other keys are left out.
inline json computed(const json& row) {
  const auto days = finishes(row);
  json result = json::object();
  for (const auto& [key, value] : row.at("expected").items()) {
    if (const auto percent = number_after(key, "P")) result[key] = quantile(days, *percent);
    if (const auto day = number_after(key, "by_day_")) result[key] = ready_by(days, *day);
  }
  return result;
}

/// Whether two values agree: numbers within `relative` of the expected one, all else exactly.
inline bool agree(const json& got, const json& expected, double relative) {
  if (got.is_number() && expected.is_number()) {
    const auto e = expected.get<double>();
    return std::abs(got.get<double>() - e) <= relative * std::abs(e);
  }
  if (!got.is_structured() || got.type() != expected.type()) return got == expected;
  if (got.size() != expected.size()) return false;
  auto g = got.begin();
  for (auto e = expected.begin(); e != expected.end(); ++e, ++g) {
    if (expected.is_object() && g.key() != e.key()) return false;
    if (!agree(*g, *e, relative)) return false;
  }
  return true;
}

}  // namespace odds_rows
