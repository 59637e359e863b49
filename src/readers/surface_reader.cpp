#include "surface_reader.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <string_view>

namespace basinwright::readers {
namespace {

using preparation::AcetoneTest;
using preparation::ExistingCoating;

void check_clash(View& view, const job::Surface& surface) {
  const bool bare = surface.coating == ExistingCoating::none;
  if (bare && surface.acetone_test != AcetoneTest::not_done) {
    view.clash("acetone_test",
               "coating",
               "There is no coating here, yet an acetone test of it is given",
               "Say what the coating is, or leave the test out.");
  }
  if (surface.coating == ExistingCoating::epoxy && surface.acetone_test == AcetoneTest::softened) {
    view.clash("acetone_test",
               "coating",
               "Epoxy does not soften under acetone",
               "Write \"coating\": \"other\": what softened is not epoxy.");
  }
  if (bare && surface.loose_share.value > units::Fraction()) {
    view.clash("loose_share",
               "coating",
               "There is no coating here that could be loose",
               "Say what the coating is.");
  }
  if (surface.laid_on && surface.painted_year &&
      *surface.painted_year < dates::year(*surface.laid_on)) {
    view.clash("painted_on", "laid_on", "It was painted before it was laid");
  }
}

// What acetone softens is no epoxy, whatever one would assume.
ExistingCoating coating_of(View& view, AcetoneTest test) {
  const auto said = view.choice("coating");
  if (said) return static_cast<ExistingCoating>(*said);
  return test == AcetoneTest::softened ? ExistingCoating::other : ExistingCoating::epoxy;
}

job::Surface surface_of(View& view) {
  job::Surface s;
  s.where = view.text("where").value_or("all");
  s.substrate = static_cast<preparation::Substrate>(view.choice("substrate").value_or(0));
  s.laid_on = view.date("laid_on");
  s.painted_year = view.year("painted_on");
  s.acetone_test = static_cast<AcetoneTest>(
      view.choice("acetone_test").value_or(static_cast<std::size_t>(AcetoneTest::not_done)));
  s.coating = coating_of(view, s.acetone_test);
  s.tested_on = view.date("tested_on");
  s.places = view.text("places").value_or("");
  view.set("bare_share", s.bare_share);
  view.set("loose_share", s.loose_share);
  s.gloss = view.boolean("gloss").value_or(true);
  check_clash(view, s);
  view.finish();
  return s;
}

void read_cracks(View& view, preparation::Condition& condition) {
  for (View& crack : view.objects("cracks")) {
    const auto width = crack.measure<units::Length>("width");
    const auto length = crack.measure<units::Length>("length");
    const auto depth = crack.measure<units::Length>("depth");
    const bool moving = crack.boolean("moving").value_or(false);
    if (width && length) {
      condition.cracks.push_back({*width, *length, depth.value_or(units::Length()), moving});
    }
    crack.finish();
  }
}

void read_divots(View& view, preparation::Condition& condition) {
  for (View& divot : view.objects("divots")) {
    const auto depth = divot.measure<units::Length>("depth");
    const auto area = divot.measure<units::Area>("area");
    const int count = divot.whole("count").value_or(1);
    if (depth && area) condition.divots.push_back({*depth, *area, count});
    divot.finish();
  }
}

std::int64_t read_stages(View& view, job::Terms& terms) {
  std::int64_t sum = 0;
  for (View& stage : view.objects("stages")) {
    const auto event = stage.text("event");
    const auto share = stage.percentage("share");
    stage.finish();
    if (!event || !share) continue;
    terms.stages.push_back({*event, *share});
    sum += share->millionths;
  }
  return sum;
}

// A deposit is the first stage: either it stands among them, or the stages are what is left.
void read_payments(View& view, job::Terms& terms) {
  constexpr std::int64_t all = money::whole;
  const std::size_t before = view.context().problems.size();
  terms.deposit = view.percentage("deposit");
  const std::int64_t sum = read_stages(view, terms);
  if (terms.stages.empty() || view.context().problems.size() != before) return;
  const std::string said =
      fmt::format("They come to {:g} %.", static_cast<double>(sum) * 100.0 / money::whole);
  if (!terms.deposit && sum != all) {
    view.context().report(codes::facts_clash,
                          *view.node("stages"),
                          view.pointer("stages"),
                          "The stages' shares do not sum to all of the price",
                          said);
  } else if (terms.deposit && sum != all && sum + terms.deposit->millionths == all) {
    terms.stages.insert(terms.stages.begin(), {"on order", *terms.deposit});
  } else if (terms.deposit && terms.deposit->millionths > 0 &&
             (sum != all || terms.stages.front().share != *terms.deposit)) {
    view.clash("stages",
               "deposit",
               "The stages' shares and the deposit do not sum to all of the price",
               said);
  }
}

// A name that stands for two things leaves a surface in doubt.
void check_section_name(View& coating, View& section) {
  const Node& name = *section.node("name");
  constexpr std::array<std::string_view, 4> parts{"all", "walls", "floor", "steps"};
  if (std::ranges::find(parts, name.text) != parts.end()) {
    section.context().report(codes::not_a_choice,
                             name,
                             section.pointer("name"),
                             "\"" + name.text + "\" already names a part of the shell",
                             "Call the section something else.");
  }
  for (const Node& other : coating.node("sections")->items) {
    if (&other == &section.raw()) return;
    const Node* same = other.find("name");
    if (same == nullptr || same->kind != Node::Kind::text || same->text != name.text) continue;
    section.context().tell({.code = codes::facts_clash,
                            .at = name.span(),
                            .pointer = section.pointer("name"),
                            .message = "Two sections have this name",
                            .hint = "Give each its own.",
                            .other = same->span()});
    return;
  }
}

// The price holds for so long: said twice, it must be the same time.
void check_validity(View& top, View& terms, const job::Job& job) {
  const auto& days = job.heading.valid_days;
  const auto& validity = job.terms.validity;
  if (!days || !validity || validity->in(units::days) == *days) return;
  terms.context().tell({.code = codes::facts_clash,
                        .at = terms.node("validity")->span(),
                        .pointer = terms.pointer("validity"),
                        .message = "The price holds for another time in \"job\"",
                        .hint = "Keep one of the two.",
                        .other = top.node("job")->find("valid_days")->span()});
}

}  // namespace

void read_surfaces(View& top, job::Job& job) {
  job.surfaces_given = top.has("surfaces");
  for (View& view : top.objects("surfaces")) job.surfaces.push_back(surface_of(view));
}

void read_condition(View& top, job::Job& job) {
  auto view = top.object("condition");
  if (!view) return;
  preparation::Condition& c = job.condition;
  c.algae = static_cast<preparation::Dirt>(view->choice("algae").value_or(0));
  c.oils =
      view->choice("oils").value_or(0) == 1 ? preparation::Dirt::heavy : preparation::Dirt::normal;
  read_cracks(*view, c);
  read_divots(*view, c);
  c.drummy_area = view->measure<units::Area>("drummy_area").value_or(units::Area());
  c.blisters = view->measure<units::Area>("blisters").value_or(units::Area());
  c.rust = view->boolean("rust").value_or(false);
  c.efflorescence = view->boolean("efflorescence").value_or(false);
  c.lead_test = static_cast<preparation::LeadTest>(
      view->choice("lead_test")
          .value_or(static_cast<std::size_t>(preparation::LeadTest::not_done)));
  job.leak_test = view->choice("leak_test");
  c.leak_test = static_cast<preparation::LeakTest>(
      job.leak_test.value_or(static_cast<std::size_t>(preparation::LeakTest::not_done)));
  view->finish();
}

void read_coating(View& top, job::Job& job) {
  auto view = top.object("coating");
  if (!view) return;
  job::Coating& c = job.coating;
  c.system = view->text("system").value_or("");
  if (view->has("system")) c.system_pointer = view->pointer("system");
  c.coats = view->whole("coats");
  c.colour = view->text("colour").value_or("");
  c.colour_change = view->boolean("colour_change").value_or(false);
  c.slip_resistant = view->texts("slip_resistant");
  for (View& section : view->objects("sections")) {
    const auto name = section.text("name");
    const auto to = section.measure<units::Length>("to");
    if (name && to) c.sections.push_back({*name, *to});
    if (name) check_section_name(*view, section);
    section.finish();
  }
  view->finish();
}

void read_terms(View& top, job::Job& job) {
  auto view = top.object("terms");
  if (!view) return;
  job::Terms& t = job.terms;
  read_payments(*view, t);
  t.discount = view->percentage("discount");
  t.rounding = view->money("rounding");
  t.validity = view->measure<units::Duration>("validity");
  check_validity(top, *view, job);
  t.allowances = view->texts("allowances");
  t.exclusions = view->texts("exclusions");
  t.notes = view->texts("notes");
  t.warranty = view->text("warranty").value_or("");
  t.cancellation = view->text("cancellation").value_or("");
  view->finish();
}

}  // namespace basinwright::readers
