// The contractor's own book: data sheets, packs and prices, productivity, wages, overheads.
#pragma once

#include <array>
#include <cstdint>
#include <deque>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/job/chemicals.hpp"
#include "basinwright/materials/coating_system.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/preparation/route.hpp"
#include "basinwright/purchase/packs.hpp"
#include "basinwright/quote/labour.hpp"
#include "basinwright/quote/price.hpp"
#include "basinwright/quote/rules.hpp"
#include "basinwright/sequence/productivity.hpp"
#include "basinwright/sequence/site_weather.hpp"
#include "basinwright/sequence/waits.hpp"
#include "basinwright/sources/source.hpp"

namespace basinwright::job {

/// How an item is sold. `unit` says what pack sizes count: mL, g or pieces.
struct Item {
  std::string name;
  std::vector<purchase::Pack> packs;
};

struct Supplier {
  std::string name;
  std::optional<units::Duration> lead;
};

struct RateBook {
  std::string name;
  bool demonstration = false;
  money::Currency currency;
  money::Rounding rounding = money::Rounding::half_away;
  std::optional<quote::Tax> tax;
  std::map<std::string, materials::CoatingSystem> systems;
  Chemicals chemicals;
  std::map<std::string, Item> items;  ///< acid, bicarbonate, coating, primer, filler ...
  std::vector<Supplier> suppliers;
  sequence::Productivity productivity;
  quote::Labour labour;
  std::vector<quote::Hire> hire;
  std::vector<quote::Rule> consumables;
  std::vector<quote::Rule> protection;
  std::vector<quote::Rule> options;  ///< What a client may add, each with the rule for its count.
  quote::Overheads overheads;
  sequence::Waits waits;
  sequence::WeatherRules weather;
  preparation::Thresholds thresholds;
  Sourced<units::Fraction> order_confidence{
      units::percent(50), {sources::Kind::assumed, "order-confidence", "expected cover"}};
  /// Owns the texts that sources of given values point to.
  std::shared_ptr<const std::deque<std::string>> places;
};

}  // namespace basinwright::job
