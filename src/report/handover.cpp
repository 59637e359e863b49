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
constexpr std::array<std::string_view, 8> voids{
    "Chlorine tablets or granules left lying on the floor, the steps or a ledge",
    "Water left out of balance: acid, or soft enough to dissolve lime, or scaling",
    "Acid, chlorine or any other chemical poured in beside a wall or onto the paint",
    "Chemicals other than salt or chlorine in the first days",
    "Emptying the pool without asking us: an empty shell can float, and sun and heat harm the coat",
    "Metal brushes, wheeled cleaners with bare metal, high pressure held close",
    "Metal left on the floor: it stains",
    "Repairs or coats with other paint than this system"};

constexpr std::array<std::string_view, 6> water_care{
    "Measure free chlorine and pH twice a week, daily in hot weather and after a party or rain",
    "pH {ph}; add chemicals with the pump running, one at a time, hours apart",
    "Solids are dissolved first; acid goes into a bucket of pool water, acid last",
    "Acid and chlorine are kept apart, and never meet in a bucket",
    "Alkalinity, hardness and stabiliser once a month, and after topping up a lot",
    "Leaves out before they stain; brush with nylon, once the first month is over"};

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
                                   : fmt::format("{} to {}",
                                                 mg(job::least_swim_chlorine.value),
                                                 mg(job::most_swim_chlorine.value));
  return range + " mg/L or as local code asks";
}

Cell finished_on(const Site* site) {
  const auto day = site == nullptr ? std::nullopt : painted_on(*site);
  return day ? Cells::date(*day) : Cells::blank();
}

Section done_section(const Subject& s, const Site* site) {
  const Cells c(s.units, s.rates.currency);
  const materials::CoatingSystem& system = s.plan.system;
  Section section{"handover", "What was painted", {}, true};
  const bool firm = !system.name.empty();
  section.blocks.emplace_back(Facts{
      {{"client", "For", Cells::words(s.job.heading.client.name)},
       {"address", "At", Cells::words(s.job.heading.client.address)},
       {"contractor", "By", Cells::words(s.job.heading.contractor.name)},
       {"painted_area_m2", "Painted area", c.area(s.plan.take_off.painted)},
       {"water_volume_m3", "Water", c.bulk(s.plan.take_off.total.water_volume)},
       {"system", "Coating", firm ? Cells::words(system.name) : Cells::blank()},
       {"sheet", "Data sheet", system.sheet.empty() ? Cells::blank() : Cells::words(system.sheet)},
       {"coats", "Coats", Cells::count(static_cast<std::int64_t>(s.plan.quantities.coats.size()))},
       {"colour",
        "Colour",
        s.job.coating.colour.empty() ? Cells::blank() : Cells::words(s.job.coating.colour)},
       {"finished", "Finished on", finished_on(site)}}});
  Table table;
  table.key = "areas";
  table.caption = "By surface";
  table.columns = {
      {"surface", "Surface"}, {"area_m2", "Area", Align::right}, {"prepared", "Prepared"}};
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
  Section section{"handover", "The first weeks", {}, p.feasible};
  if (!p.feasible) return section;
  Facts facts;
  const bool full = std::ranges::any_of(p.bookings, [](const sequence::Booking& b) {
    return b.task == "fill" && b.done && !b.going_on;
  });
  facts.facts = {{"refill_done",
                  full ? "Full again" : "Full again, as planned",
                  Cells::date(p.refill_done.date())}};
  if (s.plan.water.quiet_until) {
    facts.facts.push_back({"quiet_until",
                           "Nothing but salt or chlorine until",
                           Cells::date(*s.plan.water.quiet_until)});
  }
  facts.facts.push_back(
      {"first_swim", "First swim, by readings, not before", Cells::date(p.first_swim)});
  section.blocks.emplace_back(std::move(facts));
  return section;
}

/// Figures of the water with the targets the plan works to.
Section swim_section(const Subject& s, const Site* site) {
  Section section{"", "First-swim test", {}, true};
  Table table;
  table.caption = "Nobody swims until each of these holds";
  table.columns = {{"", "What"}, {"", "Holds when"}, {"", "Read"}, {"", "Holds"}};
  const auto row = [&](std::string what, std::string limit, Cell read = Cells::blank()) {
    table.rows.push_back(
        {{Cells::words(what), Cells::words(limit), std::move(read), Cells::tick()}});
  };
  row("pH", ph_range(s.job), pool_ph(site));
  row("Free chlorine", swim_chlorine(s.job), pool_chlorine(site));
  row("Water", "clear: the deepest point is seen");
  row("Pump and filter", "running, day and night, since the fill");
  row("Relief valve, grates, lights", "in place and tight");
  section.blocks.emplace_back(std::move(table));
  return section;
}

Section leftovers_section(const Site* site) {
  Section section{"handover", "Left over, for touch-up", {}, true};
  section.blocks.emplace_back(Facts{{{"", "Unopened kits handed over", kits_left(site), true},
                                     {"", "Batch A and B", batches_left(site), true},
                                     {"", "To be used by", Cells::blank(), true}}});
  List list;
  list.items = {
      Cells::words("Kept closed, upright, cool and dry, out of reach of children"),
      Cells::words("Mixed paint cannot be kept: a touch-up takes a whole kit, or a small one"),
      Cells::words("What is left when it is too old goes cured or to the hazardous-waste "
                   "point, as local code asks")};
  section.blocks.emplace_back(std::move(list));
  return section;
}

document::Document page(const Subject& s, const Site* site) {
  document::Document d;
  d.title = "Handover";
  d.subtitle = subtitle_of(s.job);
  d.sections = {version_section(), done_section(s, site)};
  if (s.plan.stopped()) {
    d.sections.erase(d.sections.begin() + 1, d.sections.end());
    d.sections.push_back(
        {"",
         "Nothing to hand over",
         {document::Paragraph{
             "", std::string(stop(s.plan.route.stop->why).why), {}, Role::stop, true}},
         true});
    d.bottom_line = {"The job has stopped; nothing was painted", {}, Role::stop};
    return d;
  }
  d.sections.push_back(built_section(s, site));
  d.sections.push_back(dates_section(s));
  d.sections.push_back(swim_section(s, site));
  d.sections.push_back({"", "Care of the water", {plain(s, water_care)}, true});
  Section coat{"", "Care of the coat", {}, true};
  List cares;
  for (const std::string& line : care(s)) cares.items.push_back(Cells::words(line));
  coat.blocks.emplace_back(std::move(cares));
  d.sections.push_back(std::move(coat));
  d.sections.push_back({"", "What voids it", {plain(s, voids)}, true});
  d.sections.push_back(leftovers_section(site));
  d.sections.push_back(terms_section(s));
  Section sign{"", "Handed over", {}, true};
  sign.blocks.emplace_back(Facts{{{"", "For the contractor", Cells::blank(), true},
                                  {"", "For the client", Cells::blank(), true},
                                  {"", "Date", Cells::blank(), true}}});
  d.sections.push_back(std::move(sign));
  const sequence::Programme& p = s.plan.programme;
  d.bottom_line = {p.feasible
                       ? "First swim by readings, not before " + Cells::date(p.first_swim).text
                       : "First swim by readings, not by the calendar",
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
