#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "basinwright/job/water_care.hpp"
#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"
#include "client_parts.hpp"
#include "client_words.hpp"
#include "handover_built.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/handover.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::List;
using document::Row;
using document::Section;
using document::Table;

// What ends the life of an epoxy coat early; common practice, the data sheet's own list goes first.
constexpr std::array<std::string_view, 8> voids{say::chlorine_tablets_or_granules_left,
                                                say::water_left_out_of_balance_acid_or_soft,
                                                say::acid_chlorine_or_any_other_chemical,
                                                say::chemicals_other_than_salt_or_chlorine,
                                                say::emptying_the_pool_without_asking_us_an,
                                                say::metal_brushes_wheeled_cleaners_with,
                                                say::metal_left_on_the_floor_it_stains,
                                                say::repairs_or_coats_with_other_paint_than};

constexpr std::array<std::string_view, 6> water_care{say::measure_free_chlorine_and_ph_twice_a,
                                                     say::ph_add_chemicals_with_the_pump_running,
                                                     say::solids_are_dissolved_first_acid_goes,
                                                     say::acid_and_chlorine_are_kept_apart_and,
                                                     say::alkalinity_hardness_and_stabiliser,
                                                     say::leaves_out_before_they_stain_brush};

List plain(const Subject& s, std::span<const std::string_view> lines) {
  List list;
  for (const std::string_view line : lines)
    list.items.push_back(
        Cells::words(fmt::format(fmt::runtime(line), fmt::arg("ph", ph_range(s.job)))));
  return list;
}

/// What the job asks for, else the usual range.
std::string swim_chlorine(const job::Job& job) {
  const auto& wanted = job.refill.targets.free_chlorine;
  const auto mg = [](units::Concentration c) {
    return units::fixed(c.in(units::milligrams_per_litre), 0);
  };
  const std::string range = wanted ? units::fixed(wanted->value, 1)
                                   : fmt::format(say::to_of,
                                                 mg(job::least_swim_chlorine.value),
                                                 mg(job::most_swim_chlorine.value));
  return range + say::mg_l_or_as_local_code_asks;
}

Cell finished_on(const Site* site) {
  const auto day = site == nullptr ? std::nullopt : painted_on(*site);
  return day ? Cells::date(*day) : Cells::blank();
}

Section done_section(const Subject& s, const Site* site) {
  const Cells c(s.units, s.rates.currency);
  const materials::CoatingSystem& system = s.plan.system;
  Section section{"handover", say::what_was_painted, {}, true};
  const bool firm = !system.name.empty();
  section.blocks.emplace_back(
      Facts{{{"client", say::for_word, Cells::words(s.job.heading.client.name)},
             {"address", say::at, Cells::words(s.job.heading.client.address)},
             {"contractor", say::by, Cells::words(s.job.heading.contractor.name)},
             {"painted_area_m2", say::painted_area, c.area(s.plan.take_off.painted)},
             {"water_volume_m3", say::water, c.bulk(s.plan.take_off.total.water_volume)},
             {"system", say::coating, firm ? Cells::words(system.name) : Cells::blank()},
             {"sheet",
              say::data_sheet,
              system.sheet.empty() ? Cells::blank() : Cells::words(system.sheet)},
             {"coats",
              say::coats,
              Cells::count(static_cast<std::int64_t>(s.plan.quantities.coats.size()))},
             {"colour",
              say::colour,
              s.job.coating.colour.empty() ? Cells::blank() : Cells::words(s.job.coating.colour)},
             {"finished", say::finished_on, finished_on(site)}}});
  Table table;
  table.key = "areas";
  table.caption = say::by_surface;
  table.columns = {
      {"surface", say::surface}, {"area_m2", say::area, Align::right}, {"prepared", say::prepared}};
  for (const preparation::TreatedRegion& region : s.plan.route.regions) {
    table.rows.push_back({{Cells::words(surface_words(region.where)),
                           c.area(region.area),
                           Cells::words(std::string(treatment_words(region.treatment)))}});
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

Section dates_section(const Subject& s) {
  const sequence::Programme& p = s.plan.programme;
  Section section{"handover", say::the_first_weeks, {}, p.feasible};
  if (!p.feasible) return section;
  Facts facts;
  const bool full = std::ranges::any_of(p.bookings, [](const sequence::Booking& b) {
    return b.task == "fill" && b.done && !b.going_on;
  });
  facts.facts = {{"refill_done",
                  full ? say::full_again : say::full_again_as_planned,
                  Cells::date(p.refill_done.date())}};
  if (s.plan.water.quiet_until) {
    facts.facts.push_back({"quiet_until",
                           say::nothing_but_salt_or_chlorine_until,
                           Cells::date(*s.plan.water.quiet_until)});
  }
  facts.facts.push_back({"first_swim", say::first_swim_not_before, Cells::date(p.first_swim)});
  section.blocks.emplace_back(std::move(facts));
  return section;
}

/// Figures of the water with the targets the plan works to.
Section swim_section(const Subject& s, const Site* site) {
  Section section{"", say::first_swim_test, {}, true};
  Table table;
  table.caption = say::nobody_swims_until_each_of_these_holds;
  table.columns = {{"", say::what}, {"", say::holds_when}, {"", say::read}, {"", say::holds}};
  const auto row = [&](std::string what, std::string limit, Cell read = Cells::blank()) {
    table.rows.push_back(
        {{Cells::words(what), Cells::words(limit), std::move(read), Cells::tick()}});
  };
  row("pH", ph_range(s.job), pool_ph(site));
  row(say::free_chlorine, swim_chlorine(s.job), pool_chlorine(site));
  row(say::water, say::clear_the_deepest_point_is_seen);
  row(say::pump_and_filter, say::running_day_and_night_since_the_fill);
  row(say::relief_valve_grates_lights, say::in_place_and_tight);
  section.blocks.emplace_back(std::move(table));
  return section;
}

Section leftovers_section(const Site* site) {
  Section section{"handover", say::left_over_for_touch_up, {}, true};
  section.blocks.emplace_back(Facts{{{"", say::unopened_kits_handed_over, kits_left(site), true},
                                     {"", say::batch_a_and_b, batches_left(site), true},
                                     {"", say::to_be_used_by, Cells::blank(), true}}});
  List list;
  list.items = {Cells::words(say::kept_closed_upright_cool_and_dry_out),
                Cells::words(say::mixed_paint_cannot_be_kept_a_touch_up),
                Cells::words(say::what_is_left_when_it_is_too_old_goes)};
  section.blocks.emplace_back(std::move(list));
  return section;
}

document::Document page(const Subject& s, const Site* site) {
  document::Document d;
  d.title = say::handover;
  d.subtitle = subtitle_of(s.job);
  d.sections = {version_section(), done_section(s, site)};
  if (s.plan.stopped()) {
    d.sections.erase(d.sections.begin() + 1, d.sections.end());
    d.sections.push_back(
        {"",
         say::nothing_to_hand_over,
         {document::Paragraph{
             "", std::string(stop(s.plan.route.stop->why).why), {}, Role::stop, true}},
         true});
    d.bottom_line = {say::the_job_has_stopped_nothing_was, {}, Role::stop};
    return d;
  }
  d.sections.push_back(built_section(s, site));
  d.sections.push_back(dates_section(s));
  d.sections.push_back(swim_section(s, site));
  d.sections.push_back({"", say::care_of_the_water, {plain(s, water_care)}, true});
  Section coat{"", say::care_of_the_coat, {}, true};
  List cares;
  for (const std::string& line : care(s)) cares.items.push_back(Cells::words(line));
  coat.blocks.emplace_back(std::move(cares));
  d.sections.push_back(std::move(coat));
  d.sections.push_back({"", say::what_voids_it, {plain(s, voids)}, true});
  d.sections.push_back(leftovers_section(site));
  d.sections.push_back(terms_section(s));
  Section sign{"", say::handed_over, {}, true};
  sign.blocks.emplace_back(Facts{{{"", say::for_the_contractor, Cells::blank(), true},
                                  {"", say::for_the_client, Cells::blank(), true},
                                  {"", say::date, Cells::blank(), true}}});
  d.sections.push_back(std::move(sign));
  const sequence::Programme& p = s.plan.programme;
  d.bottom_line = {p.feasible
                       ? say::first_swim_by_readings_not_before + Cells::date(p.first_swim).text
                       : say::first_swim_by_readings_not_by_the,
                   {},
                   Role::total};
  return d;
}

}  // namespace

document::Document handover(const Subject& s) {
  return page(s, nullptr);
}

document::Document handover(const Site& site) {
  return page(site.subject, &site);
}

}  // namespace basinwright::report
