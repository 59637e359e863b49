#include <fmt/format.h>

#include <algorithm>

#include "basinwright/units/unit.hpp"
#include "checklist_parts.hpp"
#include "checklist_words.hpp"
#include "mixing_words.hpp"
#include "wording/checklist.hpp"
#include "wording/common.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::List;
using document::Section;
using document::Table;

Section card(std::string title) {
  Section section{"", std::move(title), {}, true};
  section.own_page = true;
  return section;
}

template <class Lines>
List ticks(const Lines& lines) {
  List list;
  for (const auto& line : lines) list.items.push_back(Cells::tick(std::string(line)));
  return list;
}

Section acid_card(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const chemistry::Etch& etch = *s.plan.quantities.etch;
  Section section = card(say::acid_mix_card);
  for (const char* code :
       {"acid-into-water", "neat-acid", "acid-and-chlorine", "acid-and-granules"}) {
    for (const job::Caution& caution : s.plan.cautions) {
      if (caution.code == code) section.blocks.emplace_back(caution_paragraph(s, caution.code));
    }
  }
  Facts facts;
  for (const chemistry::EtchMix& mix : etch.mixes) {
    const chemistry::Parts parts = mix.ratio.parts;
    const std::string ratio = parts.water <= 0.0
                                  ? say::neat_acid
                                  : fmt::format(say::of_acid_to_of_water, parts.acid, parts.water);
    facts.facts.push_back({"",
                           mix.where == "all" ? say::parts : say::parts_before + mix.where,
                           Cells::words(ratio),
                           true});
  }
  facts.facts.push_back({"", say::acid_in_all, c.litres(etch.acid), true});
  facts.facts.push_back({"", say::water_in_all_first, c.litres(etch.water), true});
  section.blocks.emplace_back(std::move(facts));
  Table table = mix_table(s, "etch");
  table.caption = say::into_each_bucket_or_can_water_first;
  section.blocks.emplace_back(std::move(table));
  section.blocks.emplace_back(ticks(acid_steps()));
  return section;
}

std::string usual(units::Duration from, units::Duration to) {
  const std::string least = units::fixed(from.in(units::minutes), 0);
  const std::string most = units::fixed(to.in(units::minutes), 0);
  return least == most ? most + say::min : least + say::to_after + most + say::min;
}

Table timetable(const Subject& s, const job::PaintingMorning& morning, std::size_t index) {
  const Cells c(s.units, s.rates.currency);
  Table table;
  table.key = fmt::format("mixing.{}", index);
  table.caption = fmt::format(say::paint_at_of,
                              task(morning.task),
                              morning.section.empty() ? "" : say::section_after + morning.section,
                              Cells::moment(morning.opening).text,
                              units::show(morning.session.temperature, s.units, 0),
                              morning.rests_on == job::PaintTemperature::sheet ? say::assumed : "");
  table.columns = {{"kit", say::kit},
                   {"start", say::mix_at},
                   {"stirred", say::stands_from},
                   {"ready", say::on_the_wall},
                   {"use_by", say::use_by},
                   {"area_m2", say::covers, Align::right},
                   {"", say::batch_a},
                   {"", say::batch_b},
                   {"", say::done}};
  const auto time = [&](units::Duration at) {
    return Cells::words(minute_of(morning.opening, at));
  };
  for (const coverage::Mix& mix : morning.timetable.mixes) {
    Cell use_by = mix.use_by ? time(*mix.use_by) : Cells::nothing(say::not_known);
    if (mix.use_by) use_by.role = Role::total;
    table.rows.push_back({{Cells::count(mix.number),
                           time(mix.start),
                           time(mix.stirred),
                           time(mix.ready),
                           std::move(use_by),
                           c.area(mix.area),
                           Cells::blank(),
                           Cells::blank(),
                           Cells::tick()}});
  }
  return table;
}

List marks_list(const Subject& s) {
  List list;
  for (const job::KitMark& mark : s.plan.mixing.marks) {
    list.items.push_back(Cells::tick(fmt::format(say::chalk_mark_section_after_kit,
                                                 mark.primer ? say::primer_before : "",
                                                 mark.section,
                                                 mark.kit,
                                                 mark_words(mark, s.plan, s.units))));
  }
  return list;
}

Section coating_card(const Subject& s,
                     const std::vector<job::PaintingMorning>& mornings,
                     std::size_t index) {
  const Cells c(s.units, s.rates.currency);
  const materials::CoatingSystem& system = s.plan.system;
  Section section = card(say::coating_mix_card);
  section.key = "checklist";
  section.blocks.emplace_back(caution_paragraph(s, "epoxy-on-skin"));
  section.blocks.emplace_back(caution_paragraph(s, "no-flame"));
  const std::string stands = usual(system.induction_min.value, system.induction_max.value);
  const std::string lasts = usual(system.pot_life.value, system.pot_life.value);
  const std::string name = system.name.empty() ? say::none_named_usual_values : system.name;
  const std::string at = units::show(system.pot_life_at.value, s.units, 0);
  section.blocks.emplace_back(
      Facts{{{"", say::system, Cells::words(name), true},
             {"", say::kit_a_and_b_together, c.litres(system.kit.value), true},
             {"",
              say::stands_pot_life,
              Cells::words(stands + ", " + lasts + say::at_after + at),
              true}}});
  section.blocks.emplace_back(ticks(kit_steps(stands, lasts)));
  if (!s.plan.mixing.marks.empty() && index == 0) section.blocks.emplace_back(marks_list(s));
  if (index >= mornings.size()) return section;
  section.title += fmt::format(" · {}", task(mornings[index].task));
  section.blocks.emplace_back(timetable(s, mornings[index], index + 1));
  std::vector<std::string> notes = hindrances(mornings[index], s.units);
  const std::string evening = evening_before(mornings[index], s.plan, s.units);
  if (!evening.empty()) notes.push_back(evening);
  for (const std::string& note : notes) {
    section.blocks.emplace_back(document::Paragraph{"", note, {}, Role::caution, true});
  }
  return section;
}

template <class Lines>
Section round(const Subject& s, std::string title, const Lines& lines) {
  Section section = card(std::move(title));
  section.blocks.emplace_back(Facts{{{"", say::date, Cells::blank(), true},
                                     {"", say::coat_and_section, Cells::blank(), true},
                                     {"", say::filled_in_and_signed_by, Cells::blank(), true}}});
  section.blocks.emplace_back(readings_table(s, {say::read, say::read_again}));
  section.blocks.emplace_back(ticks(lines));
  return section;
}

}  // namespace

std::vector<Section> day_cards(const Subject& s,
                               const std::vector<job::PaintingMorning>& mornings) {
  std::vector<Section> cards;
  if (s.plan.quantities.etch) cards.push_back(acid_card(s));
  for (std::size_t i = 0; i < std::max<std::size_t>(mornings.size(), 1); ++i)
    cards.push_back(coating_card(s, mornings, i));
  cards.push_back(round(s, say::morning_card, morning_rounds()));
  cards.push_back(round(s, say::evening_card, evening_rounds()));
  return cards;
}

}  // namespace basinwright::report
