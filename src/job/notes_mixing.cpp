// Chalk marks, painting mornings and the timetable of their kits.
#include <fmt/format.h>

#include "basinwright/units/unit.hpp"
#include "notes.hpp"

namespace basinwright::job {
namespace {

using units::Area;
using units::Duration;

constexpr sources::Source section_by_green{
    sources::Kind::published, "green-theorem", "surfaces clipped at the section's ends"};

/// Where the figures of a morning are recorded.
struct Keys {
  explicit Keys(std::string place) : here(std::move(place)) {}
  std::string here;
  std::string opening = here + "opening", area = here + "area_m2", painters = here + "painters",
              crew = here + "crew_rate", lost = here + "lost_to_mixing_m2",
              kit_time = here + "kit_time", lead = here + "lead", pot_life = here + "pot_life_min",
              usable = here + "usable", window = here + "window";
};

class MixingNotes {
 public:
  MixingNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), m_(plan.mixing), t_(plan.trace) {}

  void record() {
    note_taken(t_, "mixing.painters", static_cast<double>(m_.painters), job_.crew.painters.source);
    for (std::size_t i = 0; i < m_.marks.size(); ++i) mark(i);
    std::size_t row = 0;
    for (std::size_t i = 0; i < m_.mornings.size(); ++i) {
      morning(i);
      kits(i, row);
      row += m_.mornings[i].timetable.mixes.size();
    }
    painters_needed();
  }

 private:
  void mark(std::size_t i) {
    const KitMark& mark = m_.marks[i];
    const std::string here = fmt::format("mixing.marks.{}.", i);
    const auto cover = mark.primer ? plan_.system.primer.cover : plan_.system.expected_cover();
    const auto kit = static_cast<double>(mark.kit);
    if (mark.painted == cover.value * kit) {
      t_.note(here + "painted_area_m2",
              mark.painted,
              fmt::format("{} * cover", mark.kit),
              {{"cover", cover}},
              "so many whole kits from the section's deep end");
    } else {
      note_taken(t_, here + "painted_area_m2", mark.painted, section_by_green, "the section's end");
    }
    const char* words = "where the surface from the deep end on reaches the painted area";
    note_taken(t_, here + "along_m", mark.along, section_by_green, words);
    note_taken(
        t_, here + "face_share", mark.face_share, section_by_green, "of the face it falls on");
    note_taken(t_, here + "from_corner_m", mark.from_corner, section_by_green, words);
    note_taken(t_, here + "below_rim_m", mark.below_rim, section_by_green, words);
  }

  [[nodiscard]] const sequence::Booking* booking_of(const PaintingMorning& m) const {
    const auto& all = plan_.programme.bookings;
    const auto it = std::ranges::find_if(all, [&](const sequence::Booking& b) {
      return b.task == m.task && b.section == m.section && b.start == m.opening;
    });
    return it == all.end() ? nullptr : &*it;
  }

  // A part of the cut has a row of its own; else it is all that is painted.
  [[nodiscard]] std::string area_key(const PaintingMorning& m) const {
    const coverage::Cut& cut = plan_.quantities.cut;
    for (std::size_t i = 0; i < cut.sections.size() && cut.sections.size() > 1; ++i) {
      const std::string name = cut.names.empty() ? std::to_string(i + 1) : cut.names[i];
      if (name == m.section) return fmt::format("quantities.sections.{}.area_m2", i);
    }
    return "takeoff.painted_area_m2";
  }

  [[nodiscard]] Sourced<Area> cover_of(const PaintingMorning& m) const {
    return m.task == "prime" ? plan_.system.primer.cover : plan_.system.expected_cover();
  }
  [[nodiscard]] const Sourced<units::WorkRate>& rate_of(const PaintingMorning& m) const {
    return m.task == "prime" ? rates_.productivity.prime : rates_.productivity.coat;
  }

  void morning(std::size_t i) {
    const PaintingMorning& m = m_.mornings[i];
    const std::string here = fmt::format("mixing.mornings.{}.", i);
    if (const auto* booking = booking_of(m)) {
      note_same(
          t_, here + "opening", at(m.opening), booking_key(plan_.programme, *booking, "start"));
    }
    note_same(t_, here + "area_m2", m.session.area, area_key(m));
    t_.note(here + "kits",
            static_cast<double>(m.timetable.kits),
            "max(1, ceil(area / cover - 0.000000001))",
            {{"area", m.session.area, trace::From{here + "area_m2"}}, {"cover", cover_of(m)}},
            "whole kits");
    note_taken(
        t_, here + "painters", static_cast<double>(m.session.painters), job_.crew.painters.source);
    temperature(here, m);
    pot_life(here, m);
    const Keys keys(here);
    rate(keys, m);
    times(keys, m);
    painters(keys, m);
  }

  void temperature(const std::string& here, const PaintingMorning& m) {
    const std::string month =
        fmt::format("/site/mean_temperatures/{}", dates::month(m.opening.date()));
    const sources::Source source =
        m.rests_on == PaintTemperature::weather      ? given_at("the weather file")
        : m.rests_on == PaintTemperature::month_mean ? given_at(month)
                                                     : plan_.system.pot_life_at.source;
    note_taken(t_, here + "temperature_c", m.session.temperature, source);
  }

  // Half for each step of warmth above the sheet's temperature, or by the sheet's own table.
  void pot_life(const std::string& here, const PaintingMorning& m) {
    if (!m.timetable.pot_life) return;
    const coverage::PotLife& paint = m.session.pot_life;
    const std::string key = here + "pot_life_min";
    if (paint.table.empty()) {
      t_.note(key,
              *m.timetable.pot_life,
              "life * 0.5^max(0, (paint - sheet) / step)",
              {{"life", paint.life},
               {"paint", m.session.temperature, trace::From{here + "temperature_c"}},
               {"sheet", paint.at},
               {"step", paint.halved_by}},
              "half of it for each such step warmer");
    } else {
      note_taken(t_,
                 key,
                 *m.timetable.pot_life,
                 plan_.system.pot_life.source,
                 "between the lines of the sheet's table, by the logarithm");
    }
  }

  // What the crew paints in an hour, and what a painter who mixes leaves undone.
  void rate(const Keys& k, const PaintingMorning& m) {
    const double texture = rate_of(m).value / m.session.rate;
    const trace::Operand one{"rate", rate_of(m)};
    const trace::Operand rough{"texture", texture, given_at("/surfaces")};
    t_.note(k.crew,
            crew_rate(m),
            "rate / texture * painters",
            {one,
             rough,
             {"painters", static_cast<double>(m.session.painters), trace::From{k.painters}}});
    if (m.session.mixer == coverage::Mixer::painter) {
      t_.note(k.lost,
              lost(m),
              "rate / texture * mixing",
              {one, rough, {"mixing", plan_.system.mixing}},
              "a painter mixes and paints nothing meanwhile");
    } else {
      t_.note(k.lost, lost(m), "0", {}, "somebody else mixes");
    }
    t_.note(k.kit_time,
            m.timetable.kit_time,
            "(cover + lost) / rate",
            {{"cover", cover_of(m)}, lost_operand(k, m), crew_operand(k, m)},
            "a kit lasts so long while the next is mixed");
    const auto& system = plan_.system;
    t_.note(k.lead,
            m.timetable.lead,
            "mixing + induction",
            {{"mixing", system.mixing},
             {"induction", m.shortest_induction ? system.induction_min : system.induction_max}},
            "from the start of a mix to its use");
  }

  [[nodiscard]] static units::WorkRate crew_rate(const PaintingMorning& m) {
    return m.session.rate * static_cast<double>(m.session.painters);
  }
  [[nodiscard]] static Area lost(const PaintingMorning& m) {
    const bool painter = m.session.mixer == coverage::Mixer::painter;
    return painter ? m.session.rate * m.session.mixing : Area();
  }
  [[nodiscard]] static trace::Operand lost_operand(const Keys& k, const PaintingMorning& m) {
    return {"lost", lost(m), trace::From{k.lost}};
  }
  [[nodiscard]] static trace::Operand crew_operand(const Keys& k, const PaintingMorning& m) {
    return {"rate", crew_rate(m), trace::From{k.crew}};
  }
  [[nodiscard]] static trace::Operand area_operand(const Keys& k, const PaintingMorning& m) {
    return {"area", m.session.area, trace::From{k.area}};
  }

  void times(const Keys& k, const PaintingMorning& m) {
    const bool lone = m.timetable.kits == 1;
    const trace::Operand lead{"lead", m.timetable.lead, trace::From{k.lead}};
    if (lone) {
      t_.note(k.here + "oldest_min",
              m.timetable.worst_age,
              "lead + area / rate",
              {lead, area_operand(k, m), crew_operand(k, m)},
              "paint of the only kit, when it is rolled out");
    } else {
      t_.note(k.here + "oldest_min",
              m.timetable.worst_age,
              "lead + kit_time",
              {lead, {"kit_time", m.timetable.kit_time, trace::From{k.kit_time}}},
              "the last of a whole kit, from the start of its mix");
    }
    t_.note(k.here + "finish",
            after(m, m.timetable.finish),
            fmt::format("opening + (area + {} * lost) / rate", m.timetable.kits - 1),
            {{"opening", at(m.opening), trace::From{k.opening}},
             area_operand(k, m),
             lost_operand(k, m),
             crew_operand(k, m)});
  }

  [[nodiscard]] static At after(const PaintingMorning& m, Duration time) {
    return {at(m.opening).seconds + time.si()};
  }

  // The most painters that pot life and painting hours ask for, each rounded up.
  void painters(const Keys& k, const PaintingMorning& m) {
    if (!m.painters_needed || !m.timetable.usable) return;
    const bool lone = m.timetable.kits == 1;
    const double texture = rate_of(m).value / m.session.rate;
    const Area oldest = lone ? m.session.area : cover_of(m).value + lost(m);
    t_.note(k.here + "usable",
            *m.timetable.usable,
            "pot_life - lead - reserve",
            {{"pot_life", *m.timetable.pot_life, trace::From{k.pot_life}},
             {"lead", m.timetable.lead, trace::From{k.lead}},
             {"reserve", plan_.system.tray_reserve}},
            "for rolling a kit out");
    t_.note(k.here + "window",
            m.session.window,
            "close - opening",
            {{"close", at(m.close), given_at("/calendar/painting_hours")},
             {"opening", at(m.opening), trace::From{k.opening}}},
            "until painting hours end or the next section begins");
    t_.note(k.here + "painters_needed",
            static_cast<double>(*m.painters_needed),
            fmt::format("max(1, ceil(oldest / (rate / texture * usable) - 0.000000001), ceil((area "
                        "+ {} * lost) / (rate / texture * window) - 0.000000001))",
                        m.timetable.kits - 1),
            {{"oldest", oldest, cover_of(m).source},
             {"rate", rate_of(m)},
             {"texture", texture, given_at("/surfaces")},
             {"usable", *m.timetable.usable, trace::From{k.usable}},
             area_operand(k, m),
             lost_operand(k, m),
             {"window", m.session.window, trace::From{k.window}}},
            "enough for the oldest kit within its usable time, and for the area within the hours");
  }

  void painters_needed() {
    const auto most = m_.painters_needed();
    if (!most || m_.mornings.empty()) return;
    std::string formula;
    std::vector<std::string> names;
    std::vector<std::string> from;
    for (std::size_t i = 0; i < m_.mornings.size(); ++i) {
      names.push_back(fmt::format("morning_{}", i + 1));
      from.push_back(fmt::format("mixing.mornings.{}.painters_needed", i));
      formula += ", " + names.back();
    }
    std::vector<trace::Operand> operands;
    for (std::size_t i = 0; i < m_.mornings.size(); ++i) {
      operands.emplace_back(names[i],
                            static_cast<double>(m_.mornings[i].painters_needed.value_or(1)),
                            trace::From{from[i]});
    }
    t_.note_all(
        "mixing.painters_needed", static_cast<double>(*most), "max(1" + formula + ")", operands);
  }

  // Each kit in its turn; times count from the opening.
  void kits(std::size_t morning, std::size_t row) {
    const PaintingMorning& m = m_.mornings[morning];
    const Keys k(fmt::format("mixing.mornings.{}.", morning));
    const trace::Operand opening{"opening", at(m.opening), trace::From{k.opening}};
    const trace::Operand kit_time{"kit_time", m.timetable.kit_time, trace::From{k.kit_time}};
    const trace::Operand lead{"lead", m.timetable.lead, trace::From{k.lead}};
    for (const coverage::Mix& mix : m.timetable.mixes) {
      const std::string here = fmt::format("mixing.timetable.{}.", row++);
      const bool last = static_cast<std::int64_t>(mix.number) == m.timetable.kits;
      const std::string before = fmt::format("opening + {} * kit_time", mix.number - 1);
      t_.note(here + "start",
              after(m, mix.start),
              before + " - lead",
              {opening, kit_time, lead},
              "so that it is ready when the one before it runs out");
      t_.note(here + "induction_end", after(m, mix.ready), before, {opening, kit_time});
      if (mix.use_by) {
        t_.note(here + "use_by",
                after(m, *mix.use_by),
                "start + pot_life",
                {{"start", after(m, mix.start), trace::From{here + "start"}},
                 {"pot_life", *m.timetable.pot_life, trace::From{k.pot_life}}});
      }
      if (last) {
        const std::string done = k.here + "finish";
        note_same(t_, here + "empty", after(m, mix.empty), done);
        t_.note(here + "area_m2",
                mix.area,
                fmt::format("area - {} * cover", mix.number - 1),
                {area_operand(k, m), {"cover", cover_of(m)}},
                "what the kits before it leave");
      } else {
        t_.note(here + "empty",
                after(m, mix.empty),
                fmt::format("opening + {} * kit_time", mix.number),
                {opening, kit_time});
        t_.note(here + "area_m2", mix.area, "cover", {{"cover", cover_of(m)}});
      }
    }
  }

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  const MixingPlan& m_;
  trace::Trace& t_;
};

}  // namespace

void note_mixing(const Job& job, const RateBook& rates, Plan& plan) {
  if (plan.stopped()) {
    plan.trace.note("mixing.painters", 0.0, "0", {}, "the job stops before anybody paints");
  } else if (plan.price) {
    MixingNotes(job, rates, plan).record();
  }
}

}  // namespace basinwright::job
