#include <fmt/format.h>
#include <algorithm>

#include "basinwright/report/pages.hpp"
#include "client_parts.hpp"
#include "client_words.hpp"
#include "sections.hpp"
#include "wording/client.hpp"
#include "wording/common.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::Section;
using document::Table;

bool is_firm(const job::Plan& plan) {
  return plan.provisional.empty() && plan.price && plan.programme.feasible && plan.unpriced.empty();
}

Section quotation_heading(const Subject& s, const job::Offer& offer) {
  const job::Heading& h = s.job.heading;
  Section section{"quotation", "", {}, true};
  Facts facts;
  const auto add = [&](const char* key, const char* label, const std::string& text) {
    facts.facts.push_back(
        {key, label, text.empty() ? Cells::nothing("") : Cells::words(text), !text.empty()});
  };
  facts.facts.push_back({"firm", "", {"", Value(is_firm(s.plan)), Role::plain}, false});
  add("number", say::number, h.number);
  add("revision", say::revision, h.revision);
  facts.facts.push_back({"date", say::date, Cells::date(offer.date)});
  facts.facts.push_back({"valid_until", say::valid_until, Cells::date(offer.valid_until)});
  add("client.name", say::for_word, h.client.name);
  add("client.address", say::at, h.client.address);
  add("contractor.name", say::from, h.contractor.name);
  add("contractor.address", say::address, h.contractor.address);
  add("contractor.registration", say::registration, h.contractor.registration);
  add("contractor.insurance", say::insurance, h.contractor.insurance);
  section.blocks.emplace_back(std::move(facts));
  return section;
}

// Each body of water by its name, so that nobody asks whether the spa is in the price.
Table pools(const Subject& s, const Cells& c) {
  Table table;
  table.key = "pools";
  table.columns = {{"name", say::pool},
                   {"painted_area_m2", say::painted, Align::right},
                   {"water_volume_m3", say::water, Align::right}};
  for (const job::BodyResult& body : s.plan.take_off.bodies) {
    table.rows.push_back({{Cells::words(surface_words(body.name)),
                           c.area(body.painted()),
                           c.bulk(body.take_off.water_volume)}});
  }
  return table;
}

Section scope(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  Section section{"quotation", say::what_we_paint, {}, true};
  Table table;
  table.key = "scope";
  table.columns = {{"surface", say::surface},
                   {"area_m2", say::area, Align::right},
                   {"made_of", say::made_of},
                   {"preparation", say::prepared}};
  for (const preparation::TreatedRegion& region : s.plan.route.regions) {
    table.rows.push_back({{Cells::words(surface_words(region.where)),
                           c.area(region.area),
                           Cells::words(std::string(substrate_words(region.substrate))),
                           Cells::words(std::string(treatment_words(region.treatment)))}});
  }
  section.blocks.emplace_back(std::move(table));
  if (s.plan.take_off.bodies.size() > 1) section.blocks.emplace_back(pools(s, c));
  const materials::CoatingSystem& system = s.plan.system;
  Facts facts;
  facts.facts = {{"painted_area_m2", say::painted_in_all, c.area(s.plan.take_off.painted)},
                 {"water_volume_m3", say::water, c.bulk(s.plan.take_off.total.water_volume)},
                 {"coating.system",
                  say::coating,
                  Cells::words(system.name.empty() ? say::two_part_epoxy_to_be_chosen
                                                   : system.name + say::two_part_epoxy)},
                 {"coating.data_sheet",
                  say::data_sheet,
                  system.sheet.empty() ? Cells::nothing("") : Cells::words(system.sheet),
                  !system.sheet.empty()},
                 {"coating.coats",
                  say::coats,
                  Cells::count(static_cast<std::int64_t>(s.plan.quantities.coats.size()))},
                 {"coating.colour",
                  say::colour,
                  s.job.coating.colour.empty() ? Cells::nothing(say::to_be_chosen_before_we_order)
                                               : Cells::words(s.job.coating.colour)}};
  std::string rough;
  for (const std::string& where : s.job.coating.slip_resistant)
    rough += (rough.empty() ? "" : ", ") + where;
  if (!rough.empty())
    facts.facts.push_back({"coating.slip_resistant", say::slip_resistant, Cells::words(rough)});
  section.blocks.emplace_back(std::move(facts));
  return section;
}

Section stop_section(const Subject& s) {
  const StopWords words = report::stop(s.plan.route.stop->why);
  Section section{"quotation", say::why_there_is_no_price_yet, {}, true};
  section.blocks.emplace_back(Facts{
      {{"stop.why", say::found, {std::string(words.why), Value(words.why), Role::stop}, true},
       {"stop.clear_by", say::needed_first, Cells::words(std::string(words.clear_by)), true}}});
  return section;
}

Section questions_left(const Subject& s) {
  Section section{"quotation", say::still_open, {}, true};
  Table table;
  table.key = "open";
  table.columns = {{"code", "", Align::left, false}, {"text", say::what_we_do_not_know_yet}};
  for (const std::string& code : s.plan.provisional) {
    const std::string words(open_question(code));
    if (!words.empty()) table.rows.push_back({{Cells::words(code), Cells::words(words)}});
  }
  if (!s.plan.unpriced.empty()) {
    table.rows.push_back(
        {{Cells::words(say::unpriced), Cells::words(say::part_of_the_material_has_no_price_yet)}});
  }
  section.shown = !table.rows.empty();
  section.blocks.emplace_back(std::move(table));
  add_either(s, section);
  return section;
}

Section options(const Subject& s, const job::Offer& offer) {
  const Cells c(s.units, s.rates.currency);
  Section section{"quotation", say::what_you_may_add, {}, true};
  Table table;
  table.key = "options";
  table.columns = {{"code", "", Align::left, false},
                   {"what", say::option},
                   {"adds", say::adds_to_the_total, Align::right},
                   {"refill_done", say::full_again}};
  for (const job::Option& option : offer.options) {
    const bool coat = option.code == "one-more-coat";
    const std::size_t coats = s.plan.quantities.coats.size() + 1;
    std::string name = surface_words(option.name);
    if (coat) {
      name = say::one_coat_more;
      const auto life = materials::expected_life(coats);
      const auto without = materials::expected_life(coats - 1);
      // Beyond three coats the trade names no longer life.
      if (life && (!without || without->to != life->to))
        name += fmt::format(say::in_all_may_last_to_years, coats, life->from, life->to);
    }
    table.rows.push_back({{coat ? Cells::words(option.code) : Cells::nothing(""),
                           Cells::words(name),
                           c.money(option.adds),
                           option.refill_done ? Cells::date(option.refill_done->date())
                                              : Cells::nothing(say::to_be_agreed)}});
  }
  section.shown = !table.rows.empty();
  section.blocks.emplace_back(std::move(table));
  return section;
}

std::vector<std::string> rests_on(const Subject& s) {
  std::vector<std::string> lines = assumptions(s.plan);
  std::string permits;
  for (const job::Permit& permit : s.job.site.permits)
    permits += (permits.empty() ? "" : ", ") + permit.what;
  if (!permits.empty())
    lines.insert(lines.begin(), say::permits_in_hand_before_we_start + permits + ".");
  return lines;
}

}  // namespace

document::Document quotation(const Subject& s, const job::Offer& offer) {
  const bool with_water = s.job.refill.water_price.has_value();
  document::Document d;
  d.title = is_firm(s.plan) ? say::quotation : say::estimate;
  const std::string& contractor = s.job.heading.contractor.name;
  d.subtitle = (contractor.empty() ? "" : contractor + " · ") + say::repainting_of_a_swimming_pool;
  if (s.rates.demonstration) d.notices.emplace_back(say::demonstration_rates_every_price_and);
  if (!s.plan.provisional.empty() && !s.plan.stopped())
    d.notices.emplace_back(say::this_is_an_estimate_what_is_still_open);
  d.sections = {version_section(), quotation_heading(s, offer), scope(s)};
  if (s.plan.stopped()) {
    d.sections.push_back(stop_section(s));
    d.bottom_line = {say::no_price_can_be_given_yet, {}, Role::stop};
    return d;
  }
  d.sections.push_back(list_section("included", say::included, included(s.plan, with_water)));
  std::vector<std::string> left_out = never_included(with_water);
  left_out.insert(left_out.end(), s.job.terms.exclusions.begin(), s.job.terms.exclusions.end());
  d.sections.push_back(list_section("excluded", say::not_included, left_out));
  d.sections.push_back(list_section("allowances", say::sums_allowed_for, s.job.terms.allowances));
  d.sections.push_back(questions_left(s));
  d.sections.push_back(client_price(s));
  d.sections.push_back(options(s, offer));
  d.sections.push_back(client_dates(s));
  d.sections.push_back(list_section("assumptions", say::what_this_rests_on, rests_on(s)));
  d.sections.push_back(list_section("care", say::care_and_what_to_expect, care(s)));
  d.sections.push_back(terms_section(s));
  d.sections.push_back(acceptance("quotation", is_firm(s.plan) ? "quotation" : "estimate"));
  const Cells c(s.units, s.rates.currency);
  d.bottom_line = {fmt::format(say::total_valid_until,
                               s.plan.price ? c.price(s.plan.price->total) : say::to_be_given,
                               is_firm(s.plan) ? "" : say::estimate_after,
                               Cells::date(offer.valid_until).text),
                   {},
                   Role::total};
  return d;
}

}  // namespace basinwright::report
