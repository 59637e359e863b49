#include "surface_reader.hpp"

#include <array>
#include <string_view>
#include <utility>

#include "basinwright/chemistry/chlorine.hpp"

namespace basinwright::readers {
namespace {

using Figure = job::WaterFigures::Figure;

void read_water(View& refill, std::string_view key, job::WaterFigures& water) {
  auto view = refill.object(key);
  if (!view) return;
  const auto read = [&](std::string_view name, Figure& figure) {
    sources::Sourced<double> said;
    view->set_number(name, said);
    if (said.source.kind == sources::Kind::given) figure = said;
  };
  const std::array<std::pair<std::string_view, Figure*>, 5> levels{
      {{"ph", &water.ph},
       {"alkalinity", &water.alkalinity},
       {"hardness", &water.hardness},
       {"stabiliser", &water.stabiliser},
       {"salt", &water.salt}}};
  for (const auto& [name, figure] : levels) read(name, *figure);
  if (key == "targets") read("free_chlorine", water.free_chlorine);
  sources::Sourced<units::Temperature> temperature;
  view->set("temperature", temperature);
  if (temperature.source.kind == sources::Kind::given) water.temperature = temperature;
  view->finish();
}

void read_chlorine(View& refill, job::Refill& out) {
  auto view = refill.object("chlorine");
  if (!view) return;
  if (view->choice("kind")) out.chlorine_kind = view->node("kind")->text;
  sources::Sourced<units::Fraction> strength;
  view->set("strength", strength);
  view->finish();
  if (strength.source.kind != sources::Kind::given) return;
  const chemistry::ChlorineLabel label =
      out.chlorine_kind == "calcium_hypochlorite"
          ? chemistry::ChlorineLabel(chemistry::CalciumHypochlorite{strength.value})
          : chemistry::ChlorineLabel(chemistry::TradePercent{strength.value.in_percent()});
  const auto stock = chemistry::chlorine_stock(label, strength.source);
  if (const auto* unfit = std::get_if<chemistry::Unfit>(&stock)) {
    std::string message = unfit->reason;
    message[0] = static_cast<char>(message[0] - 'a' + 'A');
    view->context().report(codes::out_of_range,
                           *view->node("strength"),
                           view->pointer("strength"),
                           std::move(message));
    return;
  }
  out.chlorine_strength = strength;
}

}  // namespace

void read_refill(View& top, job::Job& job) {
  auto view = top.object("refill");
  if (!view) return;
  job::Refill& r = job.refill;
  r.flow = view->measure<units::Flow>("flow");
  r.water_price = view->money("water_price");
  r.water_unit = static_cast<job::WaterUnit>(view->choice("water_unit").value_or(0));
  r.analysed = view->has("analysis");
  read_water(*view, "analysis", r.analysis);
  read_water(*view, "targets", r.targets);
  read_chlorine(*view, r);
  view->set("first_share", r.first_share);
  r.salt_pool = view->boolean("salt_pool").value_or(false);
  view->finish();
}

}  // namespace basinwright::readers
