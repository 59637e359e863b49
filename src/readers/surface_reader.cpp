#include "surface_reader.hpp"

#include <cmath>

namespace basinwright::readers {
namespace {

using preparation::AcetoneTest;
using preparation::ExistingCoating;

// A year, or `unknown`, which is the same as not saying.
void read_painted_on(View& view, job::Surface& surface) {
  const auto text = view.text("painted_on");
  if (!text || *text == "unknown") return;
  const auto year = units::parse_number(text->substr(0, 4));
  const double* value = std::get_if<double>(&year);
  const bool dated = text->size() == 4 || dates::parse_date(*text).has_value();
  if (value == nullptr || !dated || *value < 1900 || *value > 2200) {
    view.context().report("not-a-date",
                          *view.node("painted_on"),
                          view.pointer("painted_on"),
                          "\"" + *text + "\" is no year",
                          "Write \"2019\", \"2019-06-01\" or \"unknown\".");
    return;
  }
  surface.painted_year = static_cast<int>(*value);
}

void check_clash(View& view, const job::Surface& surface) {
  Context& context = view.context();
  const auto clash = [&](std::string_view key, std::string message, std::string hint) {
    const Node& at = *view.node(key);
    const Node* other = view.node("coating");
    context.problems.add({"facts-clash",
                          diagnostics::Severity::error,
                          context.source.at(at.begin, at.end),
                          view.pointer(key),
                          std::move(message),
                          std::move(hint),
                          {context.source.at(other->begin, other->end)}});
  };
  if (surface.coating == ExistingCoating::none && view.has("acetone_test") &&
      surface.acetone_test != AcetoneTest::not_done) {
    clash("acetone_test",
          "There is no coating here, yet an acetone test of it is given",
          "Say what the coating is, or leave the test out.");
  }
  if (surface.coating == ExistingCoating::epoxy && surface.acetone_test == AcetoneTest::softened) {
    clash("acetone_test",
          "Epoxy does not soften under acetone",
          "Write \"coating\": \"other\": what softened is not epoxy.");
  }
  if (surface.coating == ExistingCoating::none && view.has("loose_share") &&
      surface.loose_share.value > units::Fraction()) {
    clash(
        "loose_share", "There is no coating here that could be loose", "Say what the coating is.");
  }
}

job::Surface surface_of(View& view) {
  job::Surface s;
  s.where = view.text("where").value_or("all");
  s.substrate = static_cast<preparation::Substrate>(view.choice("substrate").value_or(0));
  s.laid_on = view.date("laid_on");
  read_painted_on(view, s);
  s.coating = static_cast<ExistingCoating>(
      view.choice("coating").value_or(static_cast<std::size_t>(ExistingCoating::epoxy)));
  s.acetone_test = static_cast<AcetoneTest>(
      view.choice("acetone_test").value_or(static_cast<std::size_t>(AcetoneTest::not_done)));
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

std::optional<money::BasisPoints> basis_points(View& view, std::string_view key) {
  const auto share = view.measure<units::Fraction>(key);
  if (!share) return {};
  return money::BasisPoints{std::llround(share->share() * 10'000.0)};
}

void read_stages(View& view, job::Terms& terms) {
  std::int64_t sum = 0;
  for (View& stage : view.objects("stages")) {
    const auto event = stage.text("event");
    const auto share = basis_points(stage, "share");
    stage.finish();
    if (!event || !share) continue;
    terms.stages.push_back({*event, *share});
    sum += share->count;
  }
  if (!terms.stages.empty() && sum != 10'000) {
    view.context().report(
        "facts-clash",
        *view.node("stages"),
        view.pointer("stages"),
        "The stages' shares do not sum to all of the price",
        "They come to " + std::to_string(static_cast<double>(sum) / 100.0).substr(0, 6) + " %.");
  }
}

// Water analysis and targets are read for their errors here; the start-up plan takes them from the
// job when it is asked for.
void check_water(View& refill, std::string_view key) {
  auto view = refill.object(key);
  if (!view) return;
  for (const std::string_view level : {"ph", "alkalinity", "hardness", "stabiliser", "salt"}) {
    static_cast<void>(view->number(level));
  }
  static_cast<void>(view->measure<units::Temperature>("temperature"));
  view->finish();
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
    section.finish();
  }
  view->finish();
}

void read_refill(View& top, job::Job& job) {
  auto view = top.object("refill");
  if (!view) return;
  job.refill.flow = view->measure<units::Flow>("flow");
  job.refill.water_price = view->money("water_price");
  check_water(*view, "analysis");
  check_water(*view, "targets");
  if (auto chlorine = view->object("chlorine")) {
    static_cast<void>(chlorine->choice("kind"));
    static_cast<void>(chlorine->measure<units::Fraction>("strength"));
    chlorine->finish();
  }
  job.refill.salt_pool = view->boolean("salt_pool").value_or(false);
  view->finish();
}

void read_terms(View& top, job::Job& job) {
  auto view = top.object("terms");
  if (!view) return;
  job::Terms& t = job.terms;
  t.deposit = basis_points(*view, "deposit");
  read_stages(*view, t);
  t.discount = basis_points(*view, "discount");
  t.rounding = view->money("rounding");
  t.validity = view->measure<units::Duration>("validity");
  t.allowances = view->texts("allowances");
  t.exclusions = view->texts("exclusions");
  t.notes = view->texts("notes");
  view->finish();
}

}  // namespace basinwright::readers
