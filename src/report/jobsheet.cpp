#include <fmt/format.h>
#include <algorithm>

#include "agenda.hpp"
#include "basinwright/report/pages.hpp"
#include "drawing.hpp"
#include "sections.hpp"
#include "weather_words.hpp"
#include "wording/common.hpp"
#include "wording/jobsheet.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

Cell bottom_line(const Subject& s) {
  const job::Plan& plan = s.plan;
  if (plan.route.stop) {
    const auto& stop = *plan.route.stop;
    return {
        fmt::format(say::stop_at_of, task(stop.step), report::stop(stop.why).why), {}, Role::stop};
  }
  const Cells cells(s.units, s.rates.currency);
  std::string line =
      fmt::format(say::total_of, plan.price ? cells.price(plan.price->total) : "open");
  if (!plan.provisional.empty()) line += say::provisional_after;
  if (!plan.programme.feasible) {
    const sequence::Blocked& why = *plan.programme.blocked_by;
    line += say::no_dates_fit + blocked(why);
    if (!why.ways_out.empty()) line += say::but + way_out(why.ways_out.front()) + ".";
    return {line, {}, Role::stop};
  }
  line += fmt::format(say::kits_start_full,
                      plan.quantities.kits,
                      dates::short_day(plan.programme.start.date()),
                      dates::short_day(plan.programme.refill_done.date()));
  return {line, {}, Role::total};
}

// A stopped sheet keeps the members that scripts look for, empty.
void add_working_sections(const Subject& s, document::Document& d) {
  std::vector<document::Section> all;
  if (!s.plan.stopped())
    all = {quantities_section(s), mixes_section(s), coats_section(s), wash_water_section(s)};
  for (const auto& make : {purchases_section,
                           orders_section,
                           consumables_section,
                           protection_section,
                           hire_section,
                           instruments_section,
                           waste_section,
                           labour_section}) {
    all.push_back(make(s));
    all.back().shown = all.back().shown && !s.plan.stopped();
  }
  if (s.plan.stopped()) {
    document::Section none;
    none.shown = false;
    none.blocks.emplace_back(document::Facts{
        {{"quantities", "", Cells::nothing(""), false}, {"price", "", Cells::nothing(""), false}}});
    all.push_back(std::move(none));
  } else {
    all.push_back(price_section(s));
  }
  for (document::Section& section : all) d.sections.push_back(std::move(section));
}

// A programme that waits for weeks on purpose is right, but nobody should find that out by reading
// dates.
std::string long_wait(const job::Plan& plan) {
  constexpr int long_days = 10;
  const auto& bookings = plan.programme.bookings;
  for (std::size_t i = 1; i < bookings.size(); ++i) {
    const auto gap = bookings[i].start.date() - bookings[i - 1].end.date();
    const bool chosen = std::ranges::any_of(bookings[i].held_by, [](const sequence::Held& h) {
      return h.by == sequence::Held::By::fewer_days;
    });
    if (!chosen || gap.count() < long_days) continue;
    return fmt::format(say::the_programme_waits_days_before_crew,
                       gap.count(),
                       task(bookings[i].task),
                       plan.painters_for_one_morning);
  }
  return "";
}

// What an order gets wrong cannot be mended on the morning of a coat.
std::vector<std::string> order_notices(const Subject& s, Goods goods) {
  std::vector<std::string> out;
  for (const job::Order& order : s.plan.orders) {
    if (!order.late || goods == Goods::by_log) continue;
    out.push_back(fmt::format(
        say::late_was_to_be_ordered_from_by_or_the, order.supplier, dates::short_day(*order.by)));
  }
  const coverage::KitOrder& kits = s.plan.quantities.order;
  if (kits.short_chance > 0.0) {
    out.push_back(fmt::format(say::the_kits_ordered_run_short_with_a,
                              units::show(units::fraction(kits.short_chance), 1)));
  }
  return out;
}

// Days that are free before the work begins, left so on purpose.
std::string late_start(const Subject& s) {
  const auto& bookings = s.plan.programme.bookings;
  if (bookings.empty() || !s.job.heading.start) return "";
  const bool chosen = std::ranges::any_of(bookings.front().held_by, [](const sequence::Held& h) {
    return h.by == sequence::Held::By::less_empty;
  });
  const dates::Date begins = bookings.front().start.date();
  if (!chosen || begins <= *s.job.heading.start) return "";
  return fmt::format(say::the_work_begins_on_before_it_the_pool, dates::short_day(begins));
}

// An etch larger than a shift is done by sections, each to its last rinse.
std::string etch_by_sections(const Subject& s) {
  const int people = s.plan.people_for_one_etch;
  if (s.plan.stopped() || people <= s.job.crew.people.value) return "";
  return fmt::format(say::the_etch_is_larger_than_a_shift_of, people);
}

// Where the weather ends, the dates rest on less.
std::string past_the_forecast(const job::Plan& plan) {
  const sequence::Programme& p = plan.programme;
  const auto first =
      std::ranges::find(p.bookings, weather::Quality::missing, &sequence::Booking::rests_on);
  if (p.weather == sequence::WeatherBasis::none || first == p.bookings.end()) return "";
  return fmt::format(say::from_on_the_dates_follow_the_calendar,
                     task(first->task),
                     dates::short_day(first->start.date()));
}

}  // namespace

std::string subtitle_of(const job::Job& job) {
  std::string line;
  const auto add = [&](const std::string& part) {
    if (!part.empty()) line += (line.empty() ? "" : " · ") + part;
  };
  add(job.heading.number);
  add(job.heading.client.name);
  add(job.heading.client.address);
  return line;
}

bool floats(const job::Plan& plan) {
  return plan.route.stop && plan.route.stop->why == "flotation";
}

std::string_view version() {
  return BASINWRIGHT_VERSION;
}

std::vector<std::string> notices(const Subject& s, Goods goods) {
  std::vector<std::string> out;
  if (s.rates.demonstration) {
    out.emplace_back(say::demonstration_rates_give_your_own);
  }
  for (const std::string& code : s.plan.provisional) {
    out.push_back(say::provisional + std::string(provisional(code)) + ".");
  }
  for (const std::string& item : s.plan.unpriced) {
    out.push_back(fmt::format(say::not_in_the_price_the_rate_book_has_no, item));
  }
  for (const std::string& line : order_notices(s, goods)) out.push_back(line);
  if (const std::string wait = long_wait(s.plan); !wait.empty()) out.push_back(wait);
  if (const std::string late = late_start(s); !late.empty()) out.push_back(late);
  if (const std::string etch = etch_by_sections(s); !etch.empty()) out.push_back(etch);
  if (const std::string past = past_the_forecast(s.plan); !past.empty()) out.push_back(past);
  if (!s.plan.stopped() && !s.job.coating.sections.empty() && s.plan.quantities.cut.names.empty()) {
    out.emplace_back(note("sections-too-large"));
  }
  if (!s.plan.stopped() && s.plan.programme.weather == sequence::WeatherBasis::none) {
    out.emplace_back(say::no_weather_has_been_read_the_dates);
  }
  return out;
}

document::Document jobsheet(const Subject& s) {
  document::Document d;
  d.title = say::job_sheet;
  d.subtitle = subtitle_of(s.job);
  d.notices = notices(s);
  d.sections = {
      version_section(), heading_section(s), take_off_section(s, false), route_section(s)};
  add_working_sections(s, d);
  d.sections.push_back(programme_section(s));
  d.sections.push_back(mixing_section(s));
  if (!s.plan.stopped()) d.sections.push_back(refill_section(s));
  d.sections.push_back(cautions_section(s));
  d.sections.push_back(defaults_section(s));
  d.bottom_line = bottom_line(s);
  d.agenda = agenda_of(s);
  return d;
}

document::Document takeoff(const Subject& s) {
  document::Document d;
  d.title = say::take_off;
  d.subtitle = subtitle_of(s.job);
  d.sections = {version_section(), heading_section(s), take_off_section(s, true)};
  document::Section sheets{"", say::drawing, {}, true};
  for (std::size_t body = 0; body < s.job.bodies.size(); ++body) {
    sheets.blocks.emplace_back(take_off_drawing(s, body));
  }
  d.sections.push_back(std::move(sheets));
  const Cells cells(s.units, s.rates.currency);
  d.bottom_line = {fmt::format(say::painted_area_water,
                               cells.area(s.plan.take_off.painted).text,
                               cells.bulk(s.plan.take_off.total.water_volume).text),
                   {},
                   Role::total};
  if (floats(s.plan)) d.bottom_line = bottom_line(s);
  return d;
}

}  // namespace basinwright::report
