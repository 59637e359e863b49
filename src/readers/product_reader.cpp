#include "product_reader.hpp"

#include <string_view>

#include "basinwright/units/unit.hpp"
#include "pack_reader.hpp"

namespace basinwright::readers {
namespace {

using materials::CoatingSystem;

// A [least, most] tuple into two constants; they must not cross.
template <class Q>
void read_range(View& view,
                std::string_view key,
                sources::Sourced<Q>& least,
                sources::Sourced<Q>& most) {
  const std::size_t before = view.context().problems.size();
  auto range = view.tuple(key);
  if (!range) return;
  range->set("least", least);
  range->set("most", most);
  if (view.context().problems.size() == before && least.value > most.value) {
    range->clash("most", "least", "The least is more than the most", "Write the smaller first.");
  }
}

struct Edge {
  std::string_view key;
  units::Temperature value;
};

// Two limits, each of which may rest on its default.
void check_order(View& view, const Edge& low, const Edge& high) {
  const bool given = view.has(low.key) || view.has(high.key);
  if (given && low.value > high.value) {
    view.clash(low.key, high.key, "The lowest is above the highest");
  }
}

void read_limits(View& view, materials::Limits& limits) {
  auto at = view.object("limits");
  if (!at) return;
  at->set("air_min", limits.air_min);
  at->set("air_max", limits.air_max);
  at->set("air_after", limits.air_after);
  at->set("shell_min", limits.shell_min);
  at->set("shell_max", limits.shell_max);
  at->set("dew_margin", limits.dew_margin);
  at->set("humidity_max", limits.humidity_max);
  at->set("rain_free_after", limits.rain_free_after);
  at->set("dry_before", limits.dry_before);
  check_order(*at, {"air_min", limits.air_min.value}, {"air_max", limits.air_max.value});
  check_order(*at, {"shell_min", limits.shell_min.value}, {"shell_max", limits.shell_max.value});
  at->finish();
}

void read_primer(View& view, materials::Primer& primer) {
  auto at = view.object("primer");
  if (!at) return;
  at->set("kit", primer.kit);
  at->set("cover", primer.cover);
  read_range(*at, "window", primer.window_min, primer.window_max);
  at->finish();
}

// The label's percentage, which for bleach means grams in 100 mL.
void read_strength(View& bleach, sources::Sourced<double>& trade_percent) {
  sources::Sourced<units::Fraction> strength;
  bleach.set("strength", strength);
  if (strength.value == units::Fraction()) return;
  if (bleach.has("trade_percent")) {
    bleach.clash(
        "strength", "trade_percent", "The strength is given twice", "Keep one of the two.");
  }
  trade_percent = {strength.value.in_percent(), strength.source};
}

}  // namespace

std::optional<money::Money> read_money(View& view,
                                       std::string_view key,
                                       const money::Currency& currency) {
  const auto text = view.money(key);
  if (!text) return {};
  auto amount = money::parse(*text, currency);
  if (!amount) {
    view.context().report(codes::not_an_amount,
                          *view.node(key),
                          view.pointer(key),
                          "\"" + *text + "\" is no amount in " + std::string(currency.name()),
                          "Write at most " + std::to_string(currency.decimals) + " decimals.");
  }
  return amount;
}

CoatingSystem read_system(const std::string& name, View& view) {
  CoatingSystem system;
  system.name = name;
  system.sheet = view.text("source").value_or("");
  view.set("kit", system.kit);
  read_range(view, "cover", system.cover_low, system.cover_high);
  read_range(view, "recoat", system.recoat_min, system.recoat_max);
  read_range(view, "induction", system.induction_min, system.induction_max);
  if (auto pot = view.object("pot_life")) {
    pot->set("time", system.pot_life);
    pot->set("at", system.pot_life_at);
    pot->finish();
  }
  read_limits(view, system.limits);
  system.hardeners = view.texts("hardeners");
  read_primer(view, system.primer);
  view.set("thinner", system.thinner_per_kit);
  if (auto cure = view.object("cure")) {
    cure->set("warm", system.cure_warm);
    cure->set("cold", system.cure_cold);
    cure->finish();
  }
  view.set("quiet_start", system.quiet_start);
  view.set_whole("coats", system.least_coats);
  system.strong_etch = view.boolean("strong_etch").value_or(false);
  system.planned_rework = view.boolean("planned_rework").value_or(false);
  view.finish();
  return system;
}

void read_chemicals(View& view, const Node* packs, job::RateBook& book) {
  job::Chemicals& c = book.chemicals;
  if (auto acid = view.object("acid")) {
    acid->set("strength", c.acid);
    acid->set("rate", c.etch.solution);
    acid->set("wall_share", c.etch.wall_share);
    acid->set_number("pebble_factor", c.etch.pebble_factor);
    read_own_packs(*acid, "acid", packs, book);
    acid->finish();
  }
  if (auto bleach = view.object("hypochlorite")) {
    bleach->set_number("trade_percent", c.hypochlorite_trade_percent);
    read_strength(*bleach, c.hypochlorite_trade_percent);
    bleach->set("wash_strength", c.chlorine_wash.strength);
    bleach->set("rate", c.chlorine_wash.rate);
    read_own_packs(*bleach, "hypochlorite", packs, book);
    bleach->finish();
  }
  if (auto degreaser = view.object("degreaser")) {
    degreaser->set("concentrate", c.degrease.concentrate);
    degreaser->set("water", c.degrease.water);
    degreaser->set("cover", c.degrease.cover);
    read_own_packs(*degreaser, "degreaser", packs, book);
    degreaser->finish();
  }
  if (auto soda = view.object("bicarbonate")) {
    sources::Sourced<units::Area> per_kilogram;
    soda->set("area_per_kg", per_kilogram);
    if (per_kilogram.value > units::Area()) {
      c.neutralise.bicarbonate = {units::kilograms(1) / per_kilogram.value, per_kilogram.source};
    }
    soda->set("mix", c.neutralise.mix);
    read_own_packs(*soda, "bicarbonate", packs, book);
    soda->finish();
  }
  view.finish();
}

}  // namespace basinwright::readers
