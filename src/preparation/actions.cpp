#include "actions.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

namespace basinwright::preparation {
namespace {

using Codes = std::span<const std::string_view>;

constexpr std::array<std::string_view, 5> set_out{
    "auto-fill-off", "equipment-locked", "fittings-bagged", "run-off-turned", "fence-and-ladder"};
constexpr std::array<std::string_view, 4> drain{
    "outfall-limits", "relief-valve-open", "lines-blown-out", "lines-plugged"};
constexpr std::array<std::string_view, 3> chlorine_wash{
    "pre-wet", "small-areas", "rinse-until-no-chlorine"};
constexpr std::array<std::string_view, 4> degrease{
    "sweep-and-rinse", "scrub-where-it-sits", "small-areas", "full-rinse"};
constexpr std::array<std::string_view, 2> strip{"strip-method", "dust-bagged"};
constexpr std::array<std::string_view, 2> loose{"scrape-or-blast", "dust-bagged"};
constexpr std::array<std::string_view, 2> abrade{"shrouded-tool", "glossy-corners"};
constexpr std::array<std::string_view, 4> etch_walls{
    "pre-wet", "acid-in-one-shift", "walls-first", "flush-when-quiet"};
constexpr std::array<std::string_view, 2> etch_floor{"floor-last", "flush-when-quiet"};
constexpr std::array<std::string_view, 3> etch_alone{
    "pre-wet", "acid-in-one-shift", "flush-when-quiet"};
constexpr std::array<std::string_view, 4> neutralise{
    "scrub-bicarbonate", "final-clean-rinse", "sump-by-reading", "pump-inside-limits"};
constexpr std::array<std::string_view, 2> dry{"relief-valve-dry", "plugs-tight"};
constexpr std::array<std::string_view, 3> cure{
    "rain-pools-off", "leaves-off", "groundwater-after-rain"};
constexpr std::array<std::string_view, 4> refit{
    "plugs-out", "fittings-back", "relief-valve-closed", "equipment-checked"};
constexpr std::array<std::string_view, 2> fill{"hose-on-pad", "heater-and-cleaner-off"};
constexpr std::array<std::string_view, 3> start_up{
    "quiet-days", "one-chemical-at-a-time", "auto-fill-on"};
constexpr std::array<std::string_view, 3> handover{
    "readings-and-batches", "care-and-what-voids", "left-over-kits"};

constexpr std::array<std::pair<std::string_view, Codes>, 15> usual{
    {{"set-out", set_out},
     {"drain", drain},
     {"chlorine-wash", chlorine_wash},
     {"degrease", degrease},
     {"strip", strip},
     {"loose-paint", loose},
     {"abrade", abrade},
     {"etch-walls", etch_walls},
     {"neutralise", neutralise},
     {"dry", dry},
     {"cure", cure},
     {"refit", refit},
     {"fill", fill},
     {"start-up", start_up},
     {"handover", handover}}};

// A shell whose floor alone is etched has no walls before it.
Codes etch_floor_of(const Question& q) {
  const bool walls = std::ranges::any_of(q.regions, &Region::is_wall);
  return walls ? Codes(etch_floor) : Codes(etch_alone);
}

std::vector<std::string_view> repair_actions(const Question& q) {
  std::vector<std::string_view> out;
  const auto opened = [&](const Crack& c) { return c.width >= q.thresholds.crack_hairline.value; };
  const auto shallow = [&](const Divot& d) { return d.depth < q.thresholds.divot_filler.value; };
  const bool cracks = std::ranges::any_of(q.condition.cracks, opened);
  const bool filled = std::ranges::any_of(q.condition.divots, shallow);
  const bool mortared =
      !std::ranges::all_of(q.condition.divots, shallow) || q.condition.drummy_area > units::Area();
  if (cracks) out.emplace_back("open-to-a-v");
  if (q.condition.drummy_area > units::Area()) out.emplace_back("cut-out-drummy");
  if (cracks || filled) out.insert(out.end(), {"mix-small", "sand-flush"});
  if (mortared) out.emplace_back("mortar-by-weight");
  return out;
}

}  // namespace

std::vector<std::string> actions_of(std::string_view task, const Question& question) {
  std::vector<std::string_view> out;
  const auto* at = std::ranges::find(usual, task, [](const auto& row) { return row.first; });
  Codes codes;
  if (at != usual.end()) codes = at->second;
  if (task == "etch-floor") codes = etch_floor_of(question);
  if (task == "repair") out = repair_actions(question);
  if (task == "pressure-clean") {
    if (question.condition.efflorescence) out.emplace_back("salts-brushed-off");
    if (question.condition.rust) out.emplace_back("rust-opened");
  }
  out.insert(out.end(), codes.begin(), codes.end());
  return {out.begin(), out.end()};
}

}  // namespace basinwright::preparation
