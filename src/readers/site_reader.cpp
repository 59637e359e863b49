#include "site_reader.hpp"

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
  if (out.ph_min && out.ph_max && *out.ph_min > *out.ph_max) {
    view->context().report("facts-clash",
                           *view->node("ph_min"),
                           view->pointer("ph_min"),
                           "The lowest pH is above the highest");
  }
  view->finish();
}

void read_clock_changes(View& site, job::Site& out) {
  for (View& view : site.objects("utc_offset_changes")) {
    const auto at = view.moment("at");
    const auto minutes = view.whole("minutes");
    if (minutes && (*minutes == 0 || *minutes % 15 != 0)) {
      view.context().report("out-of-range",
                            *view.node("minutes"),
                            view.pointer("minutes"),
                            "The clock jumps by whole quarter hours, and not by nothing");
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

// Days of the week by their full names, as a set; reports names that are none.
void read_days(View& view, std::string_view key, std::array<bool, 7>& days, bool replace) {
  if (!view.has(key)) return;
  const auto chosen = view.choices(key);
  if (replace) days.fill(false);
  for (const std::size_t d : chosen) days[d] = true;
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
  read_clock_changes(*view, s);
  read_access(*view, s);
  read_power(*view, s);
  s.tap_flow = view->measure<units::Flow>("tap_flow");
  read_sewer(*view, s);
  read_ground(*view, s);
  s.hours = view->text("hours").value_or("");
  s.emergency = view->text("emergency").value_or("");
  for (auto& [month, value] : view->months("mean_temperatures")) {
    s.temperatures[month - 1] = value.measure<units::Temperature>("value");
  }
  view->finish();
}

void read_crew(View& top, job::Job& job) {
  auto view = top.object("crew");
  if (!view) return;
  view->set_whole("people", job.crew.people);
  view->set_whole("painters", job.crew.painters);
  if (job.crew.painters.value > job.crew.people.value) {
    const Node& at = view->has("painters") ? *view->node("painters") : *view->node("people");
    view->context().report("facts-clash",
                           at,
                           view->pointer("painters"),
                           "There are more painters than people",
                           "Painters are part of the crew.");
  }
  if (const auto hours = view->hours("hours")) {
    job.calendar.hours = {hours->first, hours->second};
    job.crew.hours_given = true;
  }
  job.crew.days_given = view->has("working_days");
  read_days(*view, "working_days", job.calendar.working, true);
  if (std::ranges::find(job.calendar.working, true) == job.calendar.working.end()) {
    view->context().report("facts-clash",
                           *view->node("working_days"),
                           view->pointer("working_days"),
                           "No day of the week is worked");
  }
  if (auto overtime = view->object("overtime")) {
    read_days(*overtime, "days", job.calendar.working, false);
    overtime->finish();
  }
  view->finish();
}

void read_calendar(View& top, job::Job& job) {
  job.calendar.clock_changes = job.site.clock_changes;
  auto view = top.object("calendar");
  if (!view) return;
  job.calendar.closed = view->dates("closed");
  for (auto& [month, value] : view->months("painting_hours")) {
    if (const auto hours = value.hours("value")) {
      job.calendar.painting_by_month[month - 1] = dates::Hours{hours->first, hours->second};
    }
  }
  view->finish();
}

}  // namespace basinwright::readers
