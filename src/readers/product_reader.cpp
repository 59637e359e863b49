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

// Warmer paint never lasts longer, and a table of one line says nothing between lines.
void read_pot_lives(View& pot, std::vector<materials::PotLifeLine>& lines) {
  for (View& line : pot.tuples("table")) {
    const auto at = line.measure<units::Temperature>("at");
    const auto time = line.measure<units::Duration>("time");
    if (!at || !time) continue;
    const bool in_order = lines.empty() || (*at > lines.back().at && !(*time > lines.back().time));
    if (!in_order) {
      line.context().report(codes::not_in_order,
                            line.raw(),
                            line.pointer(),
                            "Each line of a table of pot lives is warmer and no longer",
                            "Write the coldest line first.");
      continue;
    }
    lines.push_back({*at, *time});
  }
  if (lines.size() != 1) return;
  pot.context().report(codes::empty_list,
                       *pot.node("table"),
                       pot.pointer("table"),
                       "A table of pot lives needs two lines",
                       "Give time and at instead.");
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
  if (at->node("wind_max") != nullptr) {
    materials::Sourced<units::Speed> wind;
    at->set("wind_max", wind);
    limits.wind_max = wind;
  }
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

// A label that the chemistry cannot use is refused where it stands.
template <class T>
void refuse_unfit(const chemistry::Checked<T>& checked, View& view, std::string_view key) {
  const auto* unfit = std::get_if<chemistry::Unfit>(&checked);
  if (unfit == nullptr || !view.has(key)) return;
  std::string message = unfit->reason;
  if (!message.empty() && message[0] >= 'a' && message[0] <= 'z') {
    message[0] = static_cast<char>(message[0] - 'a' + 'A');
  }
  view.context().report(
      codes::out_of_range, *view.node(key), view.pointer(key), std::move(message));
}

// A label's strength in degrees Baume or mol/L stands for a share by mass.
void read_acid_label(View& acid,
                     std::string_view key,
                     chemistry::AcidLabel (*label)(double),
                     sources::Sourced<units::Fraction>& strength) {
  sources::Sourced<double> said;
  acid.set_number(key, said);
  if (!(said.value > 0.0)) return;
  if (acid.has("strength")) {
    acid.clash("strength", key, "The strength is given twice", "Keep one of the two.");
    return;
  }
  const auto made = chemistry::acid_from_label(label(said.value), said.source);
  refuse_unfit(made, acid, key);
  if (const auto* fit = std::get_if<chemistry::Acid>(&made)) {
    strength = {fit->strength, said.source};
  }
}

// Surface by surface: parts of water, and solution an area.
void read_etch_rules(View& acid, chemistry::EtchRules& rules) {
  auto ratios = acid.object("ratio");
  auto rates = acid.object("rates");
  for (std::size_t row = 0; row < rules.size(); ++row) {
    const std::string_view key = chemistry::name(static_cast<chemistry::EtchRow>(row));
    if (ratios && ratios->has(key)) {
      sources::Sourced<double> water{rules[row].parts.value.water, {}};
      ratios->set_number(key, water);
      rules[row].parts = {{1, water.value}, water.source};
    }
    if (rates && rates->has(key)) {
      sources::Sourced<units::ApplicationRate> rate;
      rates->set(key, rate);
      rules[row].solution = rate;
    }
  }
  if (ratios) ratios->finish();
  if (rates) rates->finish();
}

void read_acid(View& acid, job::Chemicals& c) {
  acid.set("strength", c.acid);
  read_acid_label(
      acid,
      "degrees_baume",
      [](double v) -> chemistry::AcidLabel { return chemistry::Baume{v}; },
      c.acid);
  read_acid_label(
      acid,
      "mol_per_litre",
      [](double v) -> chemistry::AcidLabel { return chemistry::moles_per_litre(v); },
      c.acid);
  if (acid.has("degrees_baume") && acid.has("mol_per_litre")) {
    acid.clash(
        "degrees_baume", "mol_per_litre", "The strength is given twice", "Keep one of the two.");
  }
  acid.set("rate", c.etch.solution);
  read_etch_rules(acid, c.etch.rules);
  acid.set("wall_share", c.etch.wall_share);
  acid.set_number("pebble_factor", c.etch.pebble_factor);
  acid.set_whole("rinses", c.rinses_of_acid);
  acid.set("bucket", c.bucket);
  acid.set("can", c.can);
}

// The label's percentage, which for bleach means grams in 100 mL unless its kind says otherwise.
void read_bleach(View& bleach, job::Chemicals& c) {
  c.chlorine_kind = static_cast<job::ChlorineKind>(bleach.choice("kind").value_or(0));
  const bool trade = c.chlorine_kind == job::ChlorineKind::trade;
  bleach.set_number("trade_percent", c.hypochlorite_trade_percent);
  bleach.set("density", c.hypochlorite_density);
  sources::Sourced<units::Fraction> strength;
  bleach.set("strength", strength);
  const bool said = strength.value > units::Fraction();
  if (bleach.has("trade_percent") && (said || !trade)) {
    bleach.clash(said ? "strength" : "kind",
                 "trade_percent",
                 "The strength is given twice",
                 "Keep one of the two.");
  }
  if (said && trade) c.hypochlorite_trade_percent = {strength.value.in_percent(), strength.source};
  if (said && !trade) c.hypochlorite_strength = strength;
  const bool by_weight = !trade && c.chlorine_kind != job::ChlorineKind::calcium_hypochlorite;
  if (by_weight && !bleach.has("strength")) {
    bleach.context().report(codes::missing_key,
                            *bleach.node("kind"),
                            bleach.pointer("kind"),
                            "A liquid said by weight needs the strength on its label",
                            "Write \"strength\": \"10.8 %\".");
  }
  refuse_unfit(job::chlorine_stock_of(c), bleach, "strength");
  bleach.set_whole("rinses", c.rinses_of_chlorine);
  bleach.set("wash_strength", c.chlorine_wash.strength);
  const auto stock = job::chlorine_stock_of(c);
  const auto* fit = std::get_if<chemistry::ChlorineStock>(&stock);
  if (fit != nullptr && fit->liquid && *fit->liquid < c.chlorine_wash.strength.value) {
    bleach.clash("wash_strength",
                 bleach.has("trade_percent") ? "trade_percent" : "strength",
                 "The wash is stronger than the liquid it is mixed from",
                 "Water makes it weaker only.");
  }
  bleach.set("rate", c.chlorine_wash.rate);
}

void read_soda(View& soda, job::Chemicals& c) {
  soda.set_whole("rinses", c.rinses_of_bicarbonate);
  soda.set("strength", c.neutralise.purity);
  sources::Sourced<units::Area> per_kilogram;
  soda.set("area_per_kg", per_kilogram);
  if (per_kilogram.value > units::Area()) {
    c.neutralise.bicarbonate = {units::kilograms(1) / per_kilogram.value, per_kilogram.source};
  }
  soda.set("mix", c.neutralise.mix);
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
    read_pot_lives(*pot, system.pot_lives);
    pot->finish();
  }
  view.set("mixing", system.mixing);
  view.set("tray_reserve", system.tray_reserve);
  view.set("parts_min", system.parts_min);
  read_limits(view, system.limits);
  system.hardeners = view.texts("hardeners");
  view.set("cool_hardener_to", system.cool_hardener_to);
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
    read_acid(*acid, c);
    read_own_packs(*acid, "acid", packs, book);
    acid->finish();
  }
  if (auto bleach = view.object("hypochlorite")) {
    read_bleach(*bleach, c);
    read_own_packs(*bleach, "hypochlorite", packs, book);
    bleach->finish();
  }
  if (auto degreaser = view.object("degreaser")) {
    degreaser->set_whole("rinses", c.rinses_of_degreaser);
    degreaser->set("concentrate", c.degrease.concentrate);
    degreaser->set("water", c.degrease.water);
    degreaser->set("cover", c.degrease.cover);
    read_own_packs(*degreaser, "degreaser", packs, book);
    degreaser->finish();
  }
  if (auto soda = view.object("bicarbonate")) {
    read_soda(*soda, c);
    read_own_packs(*soda, "bicarbonate", packs, book);
    soda->finish();
  }
  view.set("rinse", c.rinse);
  view.finish();
}

}  // namespace basinwright::readers
