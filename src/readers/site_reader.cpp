#include "site_reader.hpp"

#include <fmt/format.h>
#include <algorithm>

namespace basinwright::readers {
namespace {

job::Party party(View& parent, std::string_view key) {
  job::Party out;
  auto view = parent.object(key);
  if (!view) return out;
  out.name = view->text("name").value_or("");
  out.address = view->text("address").value_or("");
  if (key == "contractor") {
    out.registration = view->text("registration").value_or("");
    out.insurance = view->text("insurance").value_or("");
  }
  view->finish();
  return out;
}

void read_access(View& site, job::Site& out) {
  auto view = site.object("access");
  if (!view) return;
  out.access_width = view->measure<units::Length>("width");
  out.access_carry = view->measure<units::Length>("carry");
  out.parking = view->text("parking").value_or("");
  view->finish();
}

void read_sewer(View& site, job::Site& out) {
  auto view = site.object("sewer");
  if (!view) return;
  out.gully = view->text("gully").value_or("");
  out.gully_flow = view->measure<units::Flow>("flow");
  out.ph_min = view->number("ph_min");
  out.ph_max = view->number("ph_max");
  out.sump_ph = view->number("sump_ph");
  out.sump_volume = view->measure<units::Volume>("sump_volume");
  if (out.ph_min && out.ph_max && *out.ph_min > *out.ph_max) {
    view->clash("ph_min", "ph_max", "The lowest pH is above the highest");
  }
  view->finish();
}

void read_clock_changes(View& site, job::Site& out) {
  for (View& view : site.objects("utc_offset_changes")) {
    const auto at = view.moment("at");
    const auto minutes = view.whole("minutes");
    if (minutes && (*minutes == 0 || *minutes % 15 != 0)) {
      view.context().report(codes::out_of_range,
                            *view.node("minutes"),
                            view.pointer("minutes"),
                            "The clock jumps by whole quarter hours, and not by nothing");
    } else if (at && minutes && at->quarter() > 0 && at->quarter() * 15 + *minutes < 0) {
      // Days would come twice; where clocks do go back at the end of a day it is still 00:00 of the
      // next.
      view.clash("minutes",
                 "at",
                 "The clock would go back into the day before",
                 "A clock that goes back at the end of a day does so at 00:00.");
    } else if (at && minutes) {
      out.clock_changes.push_back({*at, *minutes});
    }
    view.finish();
  }
}

void read_ground(View& site, job::Site& out) {
  if (auto view = site.object("groundwater")) {
    const auto depth = view->measure<units::Length>("below_rim");
    const auto day = view->date("measured_on");
    if (depth) out.groundwater = job::Groundwater{*depth, day};
    view->finish();
  }
  for (View& view : site.objects("permits")) {
    const auto what = view.text("what");
    const auto lead = view.measure<units::Duration>("lead");
    if (what) out.permits.push_back({*what, lead});
    view.finish();
  }
}

void read_power(View& site, job::Site& out) {
  auto view = site.object("power");
  if (!view) return;
  out.residual_current_device = view->boolean("residual_current_device");
  view->finish();
}

// Days of the week by their full names are added to those worked.
void read_days(View& view, std::string_view key, std::array<bool, 7>& days) {
  for (const std::size_t d : view.choices(key)) days[d] = true;
}

void read_working_days(View& crew, job::Job& job) {
  job.crew.days_given = crew.has("working_days");
  if (job.crew.days_given) job.calendar.working.fill(false);
  read_days(crew, "working_days", job.calendar.working);
  if (auto overtime = crew.object("overtime")) {
    read_days(*overtime, "days", job.calendar.working);
    overtime->finish();
  }
  const Node* at = crew.node("working_days");
  const bool none = std::ranges::find(job.calendar.working, true) == job.calendar.working.end();
  if (none && at->kind == Node::Kind::list && at->items.empty()) {
    crew.context().report(
        codes::empty_list, *at, crew.pointer("working_days"), "No day of the week is worked");
  }
}

void read_people(View& crew, job::CrewTerms& out) {
  crew.set_whole("people", out.people);
  crew.set_whole("painters", out.painters);
  if (out.painters.value <= out.people.value) return;
  if (crew.has("painters")) {
    crew.clash("painters",
               "people",
               fmt::format("There are more painters than people ({:g})", out.people.value),
               "Painters are part of the crew.");
  } else {
    out.painters.value = out.people.value;
  }
}

}  // namespace

void read_heading(View& top, job::Job& job) {
  auto view = top.object("job");
  if (!view) return;
  job::Heading& h = job.heading;
  h.number = view->text("number").value_or("");
  h.revision = view->text("revision").value_or("");
  h.client = party(*view, "client");
  h.contractor = party(*view, "contractor");
  h.quoted_on = view->date("quoted_on");
  h.valid_days = view->whole("valid_days");
  h.start = view->date("start");
  view->finish();
}

void read_site(View& top, job::Job& job) {
  auto view = top.object("site");
  if (!view) return;
  job::Site& s = job.site;
  s.latitude = view->number("latitude");
  s.longitude = view->number("longitude");
  s.elevation = view->measure<units::Length>("elevation");
  s.utc_offset = view->number("utc_offset");
  read_clock_changes(*view, s);
  read_access(*view, s);
  read_power(*view, s);
  s.tap_flow = view->measure<units::Flow>("tap_flow");
  read_sewer(*view, s);
  read_ground(*view, s);
  s.hours = view->text("hours").value_or("");
  s.emergency = view->text("emergency").value_or("");
  for (View::Month& month : view->months("mean_temperatures")) {
    s.temperatures[month.number - 1] = month.view.measure<units::Temperature>(month.key);
  }
  view->finish();
}

void read_crew(View& top, job::Job& job) {
  auto view = top.object("crew");
  if (!view) return;
  read_people(*view, job.crew);
  if (const auto hours = view->hours("hours")) {
    job.calendar.hours = {hours->first, hours->second};
    job.crew.hours_given = true;
  }
  read_working_days(*view, job);
  view->finish();
}

void read_calendar(View& top, job::Job& job) {
  job.calendar.clock_changes = job.site.clock_changes;
  auto view = top.object("calendar");
  if (!view) return;
  job.calendar.closed = view->dates("closed");
  for (View::Month& month : view->months("painting_hours")) {
    if (const auto hours = month.view.hours(month.key)) {
      job.calendar.painting_by_month[month.number - 1] = dates::Hours{hours->first, hours->second};
    }
  }
  for (const std::size_t month : view->choices("first_light")) {
    job.calendar.from_first_light[month] = true;
  }
  view->finish();
}

}  // namespace basinwright::readers
