#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "basinwright/readers/read.hpp"
#include "pack_reader.hpp"
#include "product_reader.hpp"

namespace basinwright::readers {
namespace {

using job::RateBook;

void read_productivity(View& top, sequence::Productivity& p) {
  auto view = top.object("productivity");
  if (!view) return;
  using Rate = sources::Sourced<units::WorkRate>;
  const std::array<std::pair<std::string_view, Rate*>, 14> rates{
      {{"chlorine_wash", &p.chlorine_wash},
       {"degrease", &p.degrease},
       {"loose_paint", &p.loose_paint},
       {"repair", &p.repair},
       {"strip", &p.strip},
       {"abrade", &p.abrade},
       {"dust_removal", &p.dust_removal},
       {"pressure_clean", &p.pressure_clean},
       {"etch", &p.etch},
       {"neutralise", &p.neutralise},
       {"vacuum", &p.vacuum},
       {"prime", &p.prime},
       {"coat", &p.coat},
       {"unmask", &p.unmask}}};
  for (const auto& [key, rate] : rates) view->set(key, *rate);
  view->set("mask", p.mask);
  using Hours = sources::Sourced<units::Duration>;
  const std::array<std::pair<std::string_view, Hours*>, 8> hours{
      {{"set_out", &p.set_out},
       {"coating_test", &p.coating_test},
       {"dryness_test", &p.dryness_test},
       {"refit", &p.refit},
       {"fill", &p.fill},
       {"start_up", &p.start_up},
       {"handover", &p.handover},
       {"daily_set_up", &p.daily_set_up}}};
  for (const auto& [key, value] : hours) view->set(key, *value);
  view->set("drain_pump", p.drain_pump);
  view->finish();
}

void read_labour(View& top, RateBook& book) {
  book.labour.weekday.fill(money::Percentage{money::whole});
  auto view = top.object("labour");
  if (!view) return;
  book.labour.hour = read_money(*view, "hour", book.currency).value_or(money::Money());
  if (const auto share = view->percentage("outside_hours")) book.labour.outside_hours = *share;
  if (auto days = view->object("weekday")) {
    constexpr std::array names{
        "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"};
    for (std::size_t d = 0; d < names.size(); ++d) {
      if (const auto share = days->percentage(names[d])) book.labour.weekday[d] = *share;
    }
    days->finish();
  }
  view->finish();
}

// A rate counts for each unit of area or length of its own file: pieces a square foot where the
// file is in feet.
double per_metric(quote::Per per, units::System system) {
  if (system == units::System::metric) return 1.0;
  switch (per) {
    case quote::Per::painted_area:
    case quote::Per::abraded_area:
    case quote::Per::etched_area:
    case quote::Per::tread_area:
      return 1.0 / units::square_feet.factor;
    case quote::Per::edge:
    case quote::Per::step_edge:
      return 1.0 / units::feet.factor;
    default:
      return 1.0;
  }
}

std::vector<quote::Rule> read_rules(View& top,
                                    std::string_view key,
                                    const money::Currency& currency) {
  std::vector<quote::Rule> rules;
  for (View& view : top.objects(key)) {
    quote::Rule rule;
    const auto item = view.text("item");
    const auto per = view.choice("per");
    rule.rate = view.number("rate").value_or(1.0);
    rule.price = read_money(view, "price", currency).value_or(money::Money());
    view.finish();
    if (!item || !per) continue;
    rule.item = *item;
    rule.per = static_cast<quote::Per>(*per);
    rule.rate *= per_metric(rule.per, view.context().system);
    rules.push_back(std::move(rule));
  }
  return rules;
}

std::vector<quote::Hire> read_hire(View& top, const money::Currency& currency) {
  std::vector<quote::Hire> all;
  for (View& view : top.objects("hire")) {
    const auto item = view.text("item");
    const auto day = read_money(view, "day", currency);
    const std::string task = view.choice("task") ? view.node("task")->text : "";
    view.finish();
    if (item && day) all.push_back({*item, task, *day});
  }
  return all;
}

void read_overheads(View& top, RateBook& book) {
  book.overheads.disposal = read_money(top, "disposal", book.currency).value_or(money::Money());
  auto view = top.object("overheads");
  if (!view) return;
  quote::Overheads& o = book.overheads;
  o.markup = view->percentage("markup");
  o.margin = view->percentage("margin");
  o.contingency = view->percentage("contingency").value_or(money::Percentage());
  o.call_out = read_money(*view, "call_out", book.currency).value_or(money::Money());
  o.travel_a_day = read_money(*view, "travel", book.currency).value_or(money::Money());
  if (o.markup && o.margin) {
    view->clash("margin",
                "markup",
                "Both a mark-up and a margin are given: they are two ways to one price",
                "Keep one of the two.");
  }
  if (o.margin && o.margin->millionths >= money::whole) {
    view->context().report(codes::out_of_range,
                           *view->node("margin"),
                           view->pointer("margin"),
                           "A margin is less than 100 %");
  }
  view->finish();
}

void read_waits(View& top, sequence::Waits& w) {
  auto view = top.object("waits");
  if (!view) return;
  view->set("recoat_reserve", w.recoat_reserve);
  view->set("dry", w.dry);
  view->set("dryness_test", w.dryness_test);
  view->set("coat_within", w.coat_within);
  view->set("after_chlorine", w.after_chlorine);
  view->set("filler_cure", w.filler_cure);
  view->set("start_up", w.start_up);
  view->set("rework_dry", w.rework_dry);
  view->set("rework_coat_within", w.rework_coat_within);
  view->set("delivered_before", w.delivered_before);
  view->finish();
}

void read_weather_rules(View& top, sequence::WeatherRules& w) {
  auto view = top.object("weather");
  if (!view) return;
  view->set("least_rain", w.least_rain);
  view->set("shell_lag", w.shell_lag);
  view->set("frost", w.frost);
  view->set("heavy_rain", w.heavy_rain);
  view->set("heavy_rain_within", w.heavy_rain_within);
  view->finish();
}

void read_thresholds(View& top, preparation::Thresholds& t) {
  auto view = top.object("thresholds");
  if (!view) return;
  view->set_whole("lead_until", t.lead_until);
  view->set("crack_hairline", t.crack_hairline);
  view->set("crack_widest", t.crack_widest);
  view->set("divot_filler", t.divot_filler);
  view->set("strip_share", t.strip_share);
  view->set("prime_share", t.prime_share);
  view->set("cement_age", t.cement_age);
  view->set("drummy_share", t.drummy_share);
  view->set("crack_opening", t.crack_opening);
  view->set("crack_worked", t.crack_worked);
  view->set("render_thickness", t.render_thickness);
  view->set("filler_work", t.filler_work);
  view->set("filler_batch", t.filler_batch);
  view->set("mortar_density", t.mortar_density);
  view->set("old_film", t.old_film);
  view->set("abraded_film", t.abraded_film);
  view->set("film_density", t.film_density);
  const bool given = view->has("crack_hairline") || view->has("crack_widest");
  if (given && t.crack_hairline.value > t.crack_widest.value) {
    view->clash("crack_hairline", "crack_widest", "A hairline is wider than the widest crack");
  }
  view->finish();
}

void read_suppliers(View& top, RateBook& book) {
  for (auto& [name, view] : top.members("suppliers")) {
    book.suppliers.push_back({name, view.measure<units::Duration>("lead")});
    view.finish();
  }
}

void read_currency(View& top, RateBook& book) {
  const auto code = top.text("currency");
  if (!code) return;
  if (const auto currency = money::currency(*code)) {
    book.currency = *currency;
  } else {
    top.context().report(codes::not_a_choice,
                         *top.node("currency"),
                         top.pointer("currency"),
                         "\"" + *code + "\" is no currency code",
                         "Three capitals of ISO 4217, such as EUR.");
  }
}

// Costs by the names of their lines, in the order of the key's choices.
constexpr std::array costs{
    "materials", "consumables", "protection", "labour", "hire", "disposal", "travel", "fill water"};

std::vector<quote::OtherRate> read_other_rates(View& tax, const std::string& general) {
  std::vector<quote::OtherRate> all;
  std::set<std::size_t> taken;
  for (View& view : tax.objects("other_rates")) {
    quote::OtherRate other{view.text("name").value_or(general), {}, {}};
    const auto rate = view.percentage("rate");
    for (const std::size_t cost : view.choices("on")) {
      other.on.emplace_back(costs.at(cost));
      if (taken.insert(cost).second) continue;
      view.context().report(codes::facts_clash,
                            *view.node("on"),
                            view.pointer("on"),
                            fmt::format("{} stands under two rates of tax", costs.at(cost)),
                            "Name each cost once.");
    }
    view.finish();
    if (!rate) continue;
    other.rate = *rate;
    all.push_back(std::move(other));
  }
  return all;
}

void read_tax(View& top, RateBook& book) {
  auto view = top.object("tax");
  if (!view) return;
  const std::string name = view->text("name").value_or("tax");
  std::vector<quote::OtherRate> others = read_other_rates(*view, name);
  if (const auto rate = view->percentage("rate"))
    book.tax = quote::Tax{name, *rate, std::move(others)};
  view->finish();
}

// Granules are sold by weight, which the packs must know before the chemicals are read.
void peek_at_bleach(View& top, RateBook& book) {
  const Node* at = top.node("chemicals");
  for (const char* key : {"hypochlorite", "kind"}) at = at == nullptr ? at : at->find(key);
  if (at != nullptr && at->text == "calcium_hypochlorite") {
    book.chemicals.chlorine_kind = job::ChlorineKind::calcium_hypochlorite;
  }
}

RateBook read_book_object(View& top) {
  RateBook book;
  static_cast<void>(top.whole("basinwright_rates"));
  book.name = top.text("name").value_or("");
  book.demonstration = top.boolean("demonstration").value_or(false);
  if (top.choice("units").value_or(0) == 1) top.context().system = units::System::us;
  read_currency(top, book);
  if (top.choice("rounding").value_or(0) == 1) book.rounding = money::Rounding::half_even;
  read_tax(top, book);
  for (auto& [name, view] : top.members("coating_systems"))
    book.systems[name] = read_system(name, view);
  peek_at_bleach(top, book);
  read_packs(top, book);
  if (auto chemicals = top.object("chemicals")) {
    read_chemicals(*chemicals, top.node("packs"), book);
  }
  read_suppliers(top, book);
  read_productivity(top, book.productivity);
  read_labour(top, book);
  book.hire = read_hire(top, book.currency);
  book.consumables = read_rules(top, "consumables", book.currency);
  book.protection = read_rules(top, "protection", book.currency);
  book.options = read_rules(top, "options", book.currency);
  read_overheads(top, book);
  read_waits(top, book.waits);
  read_weather_rules(top, book.weather);
  read_thresholds(top, book.thresholds);
  top.set("order_confidence", book.order_confidence);
  top.finish();
  return book;
}

}  // namespace

std::optional<RateBook> read_rate_book(const Input& input, diagnostics::Problems& problems) {
  const SourceText source(input.name, input.bytes);
  diagnostics::Problems found;
  Node root;
  std::optional<RateBook> book;
  if (parse_json(source, root, found)) {
    Context context{source, found};
    if (root.kind == Node::Kind::object) {
      View top(root, rate_book_fields(), "", context);
      book = read_book_object(top);
      book->places = context.places;
    } else {
      context.report(codes::wrong_type, root, "", "A rate book is a JSON object");
    }
  }
  if (found.has_errors()) book.reset();
  problems.append(found);
  return book;
}

}  // namespace basinwright::readers
