#include "client_parts.hpp"

#include <fmt/format.h>

#include "odds_parts.hpp"
#include "sections.hpp"
#include "wording/client.hpp"
#include "wording/common.hpp"
#include "words.hpp"

namespace basinwright::report {

using document::Align;
using document::Facts;
using document::Section;
using document::Table;

Section list_section(const std::string& key,
                     const std::string& title,
                     const std::vector<std::string>& lines) {
  Section section{"quotation", title, {}, !lines.empty()};
  document::List list;
  document::Array values;
  for (const std::string& line : lines) {
    list.items.push_back(Cells::words(line));
    values.emplace_back(line);
  }
  section.blocks.emplace_back(std::move(list));
  section.blocks.emplace_back(
      Facts{{{key, "", {"", Value(std::move(values)), Role::plain}, false}}});
  return section;
}

void add_either(const Subject& s, Section& section) {
  if (s.plan.either.empty()) return;
  const Cells c(s.units, s.rates.currency);
  Table table;
  table.key = "either";
  table.caption = say::the_price_either_way;
  table.columns = {
      {"if", say::if_word}, {"total", say::total, Align::right}, {"refill_done", say::full_again}};
  for (const job::Branch& b : s.plan.either) {
    table.rows.push_back(
        {{Cells::coded(std::string(branch(b.code)), b.code),
          b.total ? c.money(*b.total) : Cells::nothing(say::to_be_given),
          b.refill_done ? Cells::date(b.refill_done->date()) : Cells::nothing(say::to_be_agreed)}});
  }
  section.blocks.emplace_back(std::move(table));
}

double per_cent(money::Percentage rate) {
  constexpr double of_a_percent = static_cast<double>(money::whole) / 100;
  return static_cast<double>(rate.millionths) / of_a_percent;
}

std::string tax_words(const Cells& c, const quote::Price& price, const quote::Taxed& tax) {
  const std::string name = tax.name.empty() ? say::tax : tax.name;
  std::string text = name + " " + percent_text(tax.rate);
  if (price.taxes.size() > 1) text += say::on_after + c.money(tax.net).text;
  return text;
}

Table taxes_table(const Cells& c, const quote::Price& price, std::string key) {
  Table table;
  table.key = std::move(key);
  table.columns = {{"name", say::tax},
                   {"rate_percent", say::rate},
                   {"net", say::on, Align::right},
                   {"amount", say::amount, Align::right}};
  for (const quote::Taxed& one : price.taxes) {
    table.rows.push_back({{Cells::words(one.name),
                           {percent_text(one.rate), Value(per_cent(one.rate)), Role::plain},
                           c.money(one.net),
                           c.money(one.amount)}});
  }
  table.shown = false;  // People read it among the lines.
  return table;
}

Section client_price(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  Section section{"quotation", say::price_before + std::string(s.rates.currency.name()), {}, true};
  Facts facts;
  facts.facts.push_back(
      {"price.currency", "", Cells::words(std::string(s.rates.currency.name())), false});
  if (!s.plan.price) {
    facts.facts.push_back({"price.total", say::price, Cells::nothing(say::to_be_given)});
    section.blocks.emplace_back(std::move(facts));
    return section;
  }
  const quote::Price& price = *s.plan.price;
  Cell total = c.money(price.total);
  total.role = Role::total;
  facts.facts.push_back({"price.net", say::without_tax, c.money(price.net)});
  facts.facts.push_back({"price.tax", say::tax_none, c.money(price.tax), price.taxes.empty()});
  for (const quote::Taxed& one : price.taxes)
    facts.facts.push_back({"", tax_words(c, price, one), c.money(one.amount)});
  facts.facts.push_back({"price.total", say::total, std::move(total)});
  section.blocks.emplace_back(std::move(facts));
  section.blocks.emplace_back(taxes_table(c, price, "price.taxes"));
  Table stages;
  stages.key = "price.stages";
  stages.caption = say::to_be_paid;
  stages.columns = {{"event", say::when}, {"amount", say::amount, Align::right}};
  for (const quote::Due& due : price.stages)
    stages.rows.push_back({{Cells::words(due.event), c.money(due.amount)}});
  section.blocks.emplace_back(std::move(stages));
  return section;
}

Section client_dates(const Subject& s) {
  const sequence::Programme& p = s.plan.programme;
  Section section{"quotation", say::dates, {}, true};
  if (!p.feasible) {
    section.blocks.emplace_back(Facts{{{"dates", say::dates, Cells::nothing(say::to_be_agreed)}}});
    return section;
  }
  section.blocks.emplace_back(
      Facts{{{"dates.start", say::we_start, Cells::date(p.start.date())},
             {"dates.fill_start", say::the_pool_is_filled_from, Cells::date(p.fill_start.date())},
             {"dates.refill_done", say::full_again, Cells::date(p.refill_done.date())},
             {"dates.handover", say::we_hand_over, Cells::date(p.bookings.back().end.date())},
             {"dates.first_swim", say::first_swim_not_before, Cells::date(p.first_swim)},
             {"dates.weather", say::these_dates_rest_on, weather_basis(s)}}});
  if (auto facts = aim_and_allow(s)) {
    for (document::Fact& fact : facts->facts) fact.key = "dates." + fact.key;
    section.blocks.emplace_back(std::move(*facts));
  }
  return section;
}

Section terms_section(const Subject& s) {
  Section section{"quotation", say::terms, {}, true};
  Facts facts;
  const auto add = [&](const char* key, const char* label, const std::string& text) {
    facts.facts.push_back(
        {key, label, text.empty() ? Cells::nothing("") : Cells::words(text), !text.empty()});
  };
  add("warranty", say::warranty, s.job.terms.warranty);
  add("cancellation", say::cancellation, s.job.terms.cancellation);
  for (const std::string& note : s.job.terms.notes)
    facts.facts.push_back({"", say::note, Cells::words(note)});
  section.shown =
      facts.facts.size() > 2 || !s.job.terms.warranty.empty() || !s.job.terms.cancellation.empty();
  section.blocks.emplace_back(std::move(facts));
  return section;
}

Section acceptance(const std::string& key, const std::string& page) {
  Section section{key, say::acceptance, {}, true};
  section.blocks.emplace_back(document::Paragraph{
      "", fmt::format(say::i_accept_this_and_its_terms, page), {}, Role::plain, true});
  section.blocks.emplace_back(Facts{{{"", say::name, Cells::blank()},
                                     {"", say::signature, Cells::blank()},
                                     {"", say::date, Cells::blank()}}});
  return section;
}

}  // namespace basinwright::report
