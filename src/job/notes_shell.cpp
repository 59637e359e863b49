// Take-off, route and quantities: what was not recorded while it was worked out.
#include <fmt/format.h>

#include "basinwright/chemistry/checks.hpp"
#include "basinwright/job/sections.hpp"
#include "basinwright/shell/parts.hpp"
#include "basinwright/units/unit.hpp"
#include "coats.hpp"
#include "notes.hpp"
#include "take_off_notes.hpp"

namespace basinwright::job {
namespace {

using units::Area;

constexpr sources::Source by_green{
    sources::Kind::published, "green-theorem", "surfaces clipped at the section's ends"};
constexpr std::string_view painted_key = "takeoff.painted_area_m2";

class ShellNotes {
 public:
  ShellNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), t_(plan.trace) {}

  void record() {
    bodies();
    parts();
    tolerance();
    flotation();
    route();
    cement();
    if (plan_.stopped()) return;
    coats();
    readings();
    repairs();
  }

 private:
  void bodies() {
    for (std::size_t b = 0; b < plan_.take_off.bodies.size(); ++b) {
      const BodyResult& body = plan_.take_off.bodies[b];
      const std::string here = fmt::format("takeoff.bodies.{}.", b);
      const std::string from = keys_of_body(job_, b);
      if (from != here) {
        note_same(t_, here + "floor_area_m2", body.take_off.floor_area, from + "floor_area_m2");
        note_same(t_, here + "wall_area_m2", body.take_off.wall_area, from + "wall_area_m2");
        note_same(t_, here + "painted_area_m2", body.painted(), from + "painted_area_m2");
        note_same(
            t_, here + "water_volume_m3", body.take_off.water_volume, from + "water_volume_m3");
      }
      sections(b, here + "sections.");
    }
    if (plan_.take_off.bodies.size() == 1) sections(0, "takeoff.sections.");
  }

  // Sections of one body, deep end first, and where its kits run out.
  void sections(std::size_t body, const std::string& here) {
    const shell::Pool& pool = job_.bodies[body].pool;
    const bool deep_last = shell::section_axis(pool).deep_end_last;
    std::size_t count = 0;
    for (std::size_t i = 0; i < plan_.take_off.parts.size(); ++i) {
      const SectionPart& part = plan_.take_off.parts[i];
      if (part.body != body) continue;
      const std::string from = fmt::format("takeoff.parts.{}.", i);
      note_same(t_,
                fmt::format("{}areas_deep_to_shallow_m2.{}", here, count),
                part.painted(),
                from + "painted_area_m2");
      if (count > 0) {
        note_same(t_,
                  fmt::format("{}cuts_m.{}", here, count - 1),
                  deep_last ? part.measured.to : part.measured.from,
                  from + (deep_last ? "to_m" : "from_m"));
      }
      ++count;
    }
    const Area cover = plan_.system.expected_cover().value;
    constexpr double most_listed = 1000.0;  // A longer list the page does not print.
    if (plan_.take_off.bodies[body].take_off.painted_area / cover > most_listed) return;
    const auto boundaries = shell::kit_boundaries(pool, cover);
    for (std::size_t k = 0; k < boundaries.size(); ++k) {
      note_taken(t_,
                 fmt::format("{}kit_boundaries_m.{}", here, k),
                 boundaries[k],
                 by_green,
                 "where the measured surface from the deep end reaches so many covers of a kit");
    }
  }

  void parts() {
    for (std::size_t i = 0; i < plan_.take_off.parts.size(); ++i) {
      const SectionPart& part = plan_.take_off.parts[i];
      const shell::Part& m = part.measured;
      const std::string here = fmt::format("takeoff.parts.{}.", i);
      const auto clipped = [&](const char* name, auto value) {
        note_taken(t_, here + name, value, by_green);
      };
      clipped("wall_area_m2", m.walls);
      clipped("floor_area_m2", m.floor);
      clipped("tread_area_m2", m.treads);
      clipped("riser_area_m2", m.risers);
      clipped("cove_area_change_m2", m.cove_change);
      clipped("from_m", m.from);
      clipped("to_m", m.to);
      note_taken(t_,
                 here + "named_area_m2",
                 part.named.sum(),
                 given_at("/pool"),
                 "in proportion to what the section has of their surface");
    }
  }

  void tolerance() {
    units::Fraction most;
    sources::Source source = job_.tape_tolerance.source;
    std::string place;
    for (const Body& body : job_.bodies) {
      if (body.pool.tape_tolerance < most) continue;
      most = body.pool.tape_tolerance;
      place = body.pointer + "/tape_tolerance";
      source = body.tape_tolerance_given ? given_at(place) : job_.tape_tolerance.source;
    }
    note_taken(t_, "takeoff.tape_tolerance", most, source, "the largest of the bodies");
  }

  // The rest of a row was recorded while it was worked out.
  void flotation() {
    std::size_t row = 0;
    for (const BodyResult& body : plan_.take_off.bodies) {
      if (!body.flotation) continue;
      note_taken(t_,
                 fmt::format("takeoff.flotation.{}.groundwater_below_rim_m", row++),
                 job_.site.groundwater->below_rim,
                 given_at("/site/groundwater/below_rim"));
    }
  }

  void route() {
    for (std::size_t i = 0; i < plan_.route.steps.size(); ++i) {
      const preparation::Step& step = plan_.route.steps[i];
      if (step.area > Area()) area_of_step(fmt::format("route.steps.{}.area_m2", i), step.area);
    }
  }

  // Cement older than that may be etched.
  void cement() {
    if (!plan_.route.cement_wait) return;
    const units::Duration wait = *plan_.route.cement_wait;
    const auto& least = rates_.thresholds.cement_age;
    t_.note("route.cement_wait_days",
            wait,
            "least - age",
            {{"least", least}, {"age", least.value - wait, given_at("/surfaces")}},
            "until the youngest cement is old enough for acid, mortar counting from its day");
  }

  [[nodiscard]] static bool is_same(Area a, Area b) {
    constexpr double hair = 1e-9;
    return std::abs(a / b - 1.0) < hair;
  }

  // The whole painted area, the regions it is found on, or a share of them that somebody measured.
  void area_of_step(const std::string& key, Area area) {
    if (is_same(area, plan_.take_off.painted)) return note_same(t_, key, area, painted_key);
    std::vector<Term<Area>> regions;
    for (std::size_t r = 0;; ++r) {
      const std::string from = fmt::format("takeoff.regions.{}.area_m2", r);
      const trace::Step* region = t_.find(from);
      if (region == nullptr) break;
      regions.push_back({"region", Area::from_si(region->value.si), from});
    }
    constexpr std::size_t most_parts = 10;
    const std::size_t sets = regions.size() > most_parts ? 0 : std::size_t{1} << regions.size();
    for (std::size_t set = 1; set < sets; ++set) {
      std::vector<Term<Area>> chosen;
      Area sum;
      for (std::size_t r = 0; r < regions.size(); ++r) {
        if ((set >> r & 1U) == 0) continue;
        chosen.push_back(regions[r]);
        sum += regions[r].value;
      }
      if (is_same(area, sum)) return note_terms(t_, key, area, chosen);
    }
    note_taken(t_,
               key,
               area,
               given_at("/surfaces"),
               "by the shares of the surfaces and the areas of the condition");
  }

  void coats() {
    const Quantities& q = plan_.quantities;
    for (std::size_t i = 0; i < q.coats.size(); ++i) {
      const coverage::Coat& coat = q.coats[i];
      const std::string here = fmt::format("quantities.coats.{}.", i);
      note_same(t_, here + "area_m2", coat.area, painted_key);
      note_same(t_, here + "litres", coat.paint, "quantities.coats.litres");
      note_same(t_, here + "kits", static_cast<double>(coat.kits), "quantities.coats.kits");
      if (coat.thinner > units::Volume()) {
        note_same(t_, here + "thinner_l", coat.thinner, "quantities.coats.thinner_l");
      } else {
        t_.note(here + "thinner_l", coat.thinner, "0", {}, "no thinned coat");
      }
    }
    for (std::size_t i = 0; i < q.cut.sections.size(); ++i) section_of_coat(i);
  }

  void section_of_coat(std::size_t i) {
    const coverage::Cut& cut = plan_.quantities.cut;
    const std::string here = fmt::format("quantities.sections.{}.", i);
    const auto cover = plan_.system.expected_cover();
    const auto kits = static_cast<double>(cut.kits[i]);
    if (!cut.names.empty() || cut.sections.size() == 1) {
      const std::string from = cut.names.empty()
                                   ? std::string(painted_key)
                                   : fmt::format("takeoff.parts.{}.painted_area_m2", i);
      note_same(t_, here + "area_m2", cut.sections[i], from);
      t_.note(here + "kits",
              kits,
              "ceil(area / cover - 0.000000001)",
              {{"area", cut.sections[i], trace::From{here + "area_m2"}}, {"cover", cover}},
              "whole kits: mixed paint cannot be kept");
      return;
    }
    t_.note(here + "kits",
            kits,
            fmt::format("ceil((all - {}) / {})", i, cut.sections.size()),
            {{"all",
              static_cast<double>(plan_.quantities.coats.front().kits),
              trace::From{"quantities.coats.kits"}}},
            "shared out evenly over the fewest mornings that do");
    std::string formula = "min(painted";
    std::vector<std::string> names;
    std::vector<std::string> from;
    for (std::size_t j = 0; j < i; ++j) {
      names.push_back(fmt::format("section_{}", j + 1));
      from.push_back(fmt::format("quantities.sections.{}.area_m2", j));
      formula += " - " + names.back();
    }
    const std::string kits_key = here + "kits";
    std::vector<trace::Operand> operands{
        {"painted", plan_.take_off.painted, trace::From{painted_key}},
        {"kits", kits, trace::From{kits_key}},
        {"cover", cover}};
    for (std::size_t j = 0; j < i; ++j)
      operands.emplace_back(names[j], cut.sections[j], trace::From{from[j]});
    t_.note_all(here + "area_m2", cut.sections[i], formula + ", kits * cover)", operands);
  }

  void readings() {
    const Readings& r = plan_.quantities.readings;
    const std::string here = "quantities.readings.";
    if (r.surface_ph > 0) {
      t_.note(here + "surface_ph",
              static_cast<double>(r.surface_ph),
              "2 * ceil(area / each - 0.000000001)",
              {{"area", plan_.route.etched, given_at("/surfaces")},
               {"each", chemistry::ph_reading_area}},
              "two readings for each such area");
    } else {
      t_.note(here + "surface_ph", 0.0, "0", {}, "nothing is etched");
    }
    t_.note(here + "dryness_sheets",
            static_cast<double>(r.dryness_sheets),
            "ceil(area / each - 0.000000001)",
            {{"area", plan_.take_off.painted, trace::From{painted_key}},
             {"each", chemistry::dryness_sheet_area}});
  }

  void repairs() {
    const Quantities& q = plan_.quantities;
    if (q.primer) {
      note_taken(t_,
                 "quantities.primer.area_m2",
                 q.primer->area,
                 given_at("/surfaces"),
                 "the bare part of the surfaces");
      t_.note("quantities.primer.litres",
              q.primer->litres,
              "kit * area / cover",
              {{"kit", plan_.system.primer.kit},
               {"area", q.primer->area, trace::From{"quantities.primer.area_m2"}},
               {"cover", plan_.system.primer.cover}});
    }
    if (q.filler.batches > 0) {
      note_taken(t_,
                 "quantities.filler.cure_h",
                 rates_.waits.filler_cure.value,
                 rates_.waits.filler_cure.source);
    }
    if (q.mortar > units::Mass()) {
      note_taken(t_,
                 "quantities.mortar_wait_days",
                 rates_.thresholds.cement_age.value,
                 rates_.thresholds.cement_age.source);
    }
  }

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  trace::Trace& t_;
};

}  // namespace

void note_shell(const Job& job, const RateBook& rates, Plan& plan) {
  ShellNotes(job, rates, plan).record();
}

}  // namespace basinwright::job
