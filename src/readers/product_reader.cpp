#include "product_reader.hpp"

#include <cmath>

#include "basinwright/units/unit.hpp"

namespace basinwright::readers {
namespace {

using materials::CoatingSystem;

// A [least, most] tuple into two constants; they must not cross.
template <class Q>
void read_range(View& view,
                std::string_view key,
                sources::Sourced<Q>& least,
                sources::Sourced<Q>& most) {
  auto range = view.tuple(key);
  if (!range) return;
  range->set("least", least);
  range->set("most", most);
  if (least.value > most.value) {
    view.context().report("facts-clash",
                          *view.node(key),
                          view.pointer(key),
                          "The least is more than the most",
                          "Write the smaller value first.");
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

// Millilitres, grams or pieces, whole: what the pack choice counts in.
std::optional<std::int64_t> pack_size(View& view) {
  const Node* at = view.node("size");
  if (at == nullptr) return {};
  const auto whole = [&](double count) -> std::optional<std::int64_t> {
    if (count < 1.0 || count > 1e9 || std::abs(count - std::round(count)) > 1e-3) {
      view.context().report("out-of-range",
                            *at,
                            view.pointer("size"),
                            "A pack holds a whole number of millilitres, grams or pieces");
      return {};
    }
    return static_cast<std::int64_t>(std::llround(count));
  };
  if (at->kind == Node::Kind::number) {
    const auto number = units::parse_number(at->text);
    if (const double* pieces = std::get_if<double>(&number)) return whole(*pieces);
  }
  const auto volume = units::parse_volume(at->text);
  if (const auto* v = std::get_if<units::Volume>(&volume)) return whole(v->in(units::millilitres));
  const auto mass = units::parse_mass(at->text);
  if (const auto* m = std::get_if<units::Mass>(&mass)) return whole(m->in(units::grams));
  view.context().report("not-a-measure",
                        *at,
                        view.pointer("size"),
                        "\"" + at->text + "\" is no volume, mass or number of pieces",
                        "Write \"20 L\", \"25 kg\" or a bare number of pieces.");
  return {};
}

}  // namespace

std::optional<money::Money> read_money(View& view,
                                       std::string_view key,
                                       const money::Currency& currency) {
  const auto text = view.money(key);
  if (!text) return {};
  auto amount = money::parse(*text, currency);
  if (!amount) {
    view.context().report("not-an-amount",
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

void read_chemicals(View& view, job::Chemicals& c) {
  if (auto acid = view.object("acid")) {
    acid->set("strength", c.acid);
    acid->set("rate", c.etch.solution);
    acid->set("wall_share", c.etch.wall_share);
    acid->set_number("pebble_factor", c.etch.pebble_factor);
    acid->finish();
  }
  if (auto bleach = view.object("hypochlorite")) {
    bleach->set_number("trade_percent", c.hypochlorite_trade_percent);
    bleach->set("wash_strength", c.chlorine_wash.strength);
    bleach->set("rate", c.chlorine_wash.rate);
    bleach->finish();
  }
  if (auto degreaser = view.object("degreaser")) {
    degreaser->set("concentrate", c.degrease.concentrate);
    degreaser->set("water", c.degrease.water);
    degreaser->set("cover", c.degrease.cover);
    degreaser->finish();
  }
  if (auto soda = view.object("bicarbonate")) {
    sources::Sourced<units::Area> per_kilogram;
    soda->set("area_per_kg", per_kilogram);
    if (per_kilogram.value > units::Area()) {
      c.neutralise.bicarbonate = {units::kilograms(1) / per_kilogram.value, per_kilogram.source};
    }
    soda->set("mix", c.neutralise.mix);
    soda->finish();
  }
  view.finish();
}

job::Item read_item(const std::string& name,
                    std::vector<View>& packs,
                    const money::Currency& currency) {
  job::Item item{name, {}};
  for (View& view : packs) {
    purchase::Pack pack;
    const auto size = pack_size(view);
    const auto price = read_money(view, "price", currency);
    if (const auto stock = view.whole("stock")) pack.stock = *stock;
    pack.supplier = view.text("supplier").value_or("");
    pack.batch = view.text("batch").value_or("");
    view.finish();
    if (!size || !price) continue;
    pack.size = *size;
    pack.price = *price;
    pack.id = std::to_string(*size);
    item.packs.push_back(std::move(pack));
  }
  return item;
}

}  // namespace basinwright::readers
