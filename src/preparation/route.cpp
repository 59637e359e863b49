#include "basinwright/preparation/route.hpp"

#include <algorithm>
#include <cstddef>
#include <stdexcept>
#include <string>

#include "actions.hpp"
#include "repairs.hpp"
#include "stops.hpp"

namespace basinwright::preparation {
namespace {

using units::Area;

bool painted(const Region& r) {
  return r.coating != ExistingCoating::none;
}

class Builder {
 public:
  Builder(const Question& question, trace::Trace& trace) : q_(question), trace_(trace) {}

  Route build() {
    constexpr std::size_t usual_steps = 32;
    route_.steps.reserve(usual_steps);
    for (const Region& region : q_.regions) total_ += region.area;
    sum_regions();
    choose_primer();
    stops_ = reasons_to_stop(q_);
    find_what_is_missing();
    opening_steps();
    washes();
    old_coat_off();
    repairs();
    abrading();
    ask_for_lead();
    etch();
    drying();
    coats();
    closing_steps();
    for (Step& step : route_.steps) {
      if (q_.with_actions) step.actions = actions_of(step.task, q_);
    }
    end_at_stop();
    return std::move(route_);
  }

 private:
  void add(std::string task, std::string why, Area area, std::vector<HoldPoint> holds = {}) {
    route_.steps.push_back({std::move(task), std::move(why), area, std::move(holds), {}});
  }

  void sum_regions() {
    for (const Region& region : q_.regions) {
      const bool strip = is_stripped(region, q_);
      painted_ = painted_ || painted(region);
      route_.coating_untested = route_.coating_untested || is_untested(region);
      if (strip) {
        route_.stripped += region.area;
        strip_loose_ = strip_loose_ || loose_of(region, q_) > q_.thresholds.strip_share.value;
      } else if (painted(region)) {
        route_.abraded += region.area;
        gloss_ = gloss_ || region.gloss;
        loose_ += region.area * loose_of(region, q_).share();
      }
      route_.regions.push_back({region.where,
                                region.area,
                                region.substrate,
                                strip             ? Treatment::stripped
                                : painted(region) ? Treatment::abraded
                                                  : Treatment::bare});
      const bool bared = strip || !painted(region);
      bare_ += bared ? region.area : region.area * region.bare_share.share();
      if (region.substrate != Substrate::fibreglass) route_.etched += region.area;
    }
  }

  void choose_primer() {
    if (bare_ > total_ * q_.thresholds.prime_share.value.share()) {
      route_.primed = bare_;
    } else if (bare_ > Area()) {
      route_.thin_first_coat = true;
    }
    trace_.note(
        "route.bare_share",
        total_ > Area() ? bare_ / total_ : 0.0,
        "bare / painted",
        {{"bare", bare_, {sources::Kind::given, "", "/surfaces"}},
         {"painted", total_, trace::From{"takeoff.painted_area_m2"}}},
        "above the limit for minor patches a primer is used, below it a thinned first coat");
  }

  void find_what_is_missing() {
    if (route_.coating_untested) {
      route_.provisional.push_back({"coating-untested"});
    }
    if (q_.condition.lead_test != LeadTest::not_done) return;
    route_.lead_open = std::ranges::any_of(
        q_.regions, [&](const Region& r) { return may_hold_lead(r, q_.thresholds); });
    if (route_.lead_open) route_.provisional.push_back({"lead-untested"});
    const bool by_year =
        std::ranges::any_of(q_.regions, [](const Region& r) { return r.painted_year.has_value(); });
    if (painted_ && by_year) trace_.use("thresholds.lead_until", q_.thresholds.lead_until);
  }

  [[nodiscard]] bool stops_at(std::string_view task) const {
    return std::ranges::any_of(stops_, [&](const Stop& stop) { return stop.step == task; });
  }

  void opening_steps() {
    add("set-out", "set-out", total_);
    std::vector<HoldPoint> holds;
    if (q_.condition.leak_test != LeakTest::holds) {
      const bool leaks = q_.condition.leak_test == LeakTest::leaks;
      holds.push_back({leaks ? "leak-found" : "leak-test"});
    }
    if (q_.condition.ground != Ground::clear) holds.push_back({"groundwater"});
    add("drain", "empty-and-isolated", total_, std::move(holds));
    if (route_.coating_untested || stops_at("coating-test")) {
      add("coating-test", "coating-unknown", total_, {{"acetone-test"}});
    }
  }

  void washes() {
    if (q_.condition.algae != Dirt::none) {
      add("chlorine-wash", "algae", total_, {{"no-chlorine"}});
    }
    add("degrease",
        q_.condition.oils == Dirt::heavy ? "heavy-oils" : "oils",
        total_,
        {{"water-break"}});
  }

  // All that is loose comes off before anything is mended on it.
  void old_coat_off() {
    if (route_.stripped > Area()) {
      add("strip", strip_loose_ ? "too-loose" : "not-epoxy", route_.stripped);
    }
    if (loose_ > Area()) {
      std::vector<HoldPoint> holds;
      if (q_.condition.blisters > Area()) holds.push_back({"blisters"});
      add("loose-paint", "loose-paint", loose_, std::move(holds));
    }
  }

  void repairs() {
    const Repairs found = repairs_of(q_, trace_);
    route_.filler = found.filler;
    route_.filler_area = found.filler_area;
    route_.mortar = found.mortar;
    const bool any = found.filler > units::Volume() || found.mortar > units::Volume();
    if (any || stops_at("repair")) {
      std::vector<HoldPoint> holds;
      if (found.filler > units::Volume()) holds.push_back({"filler-hard"});
      if (found.mortar > units::Volume()) holds.push_back({"mortar-age"});
      add("repair", "cracks-and-hollows", found.area, std::move(holds));
    }
    route_.cement_wait = cement_wait(q_, found);
  }

  void abrading() {
    if (route_.abraded > Area()) {
      add("abrade", gloss_ ? "gloss" : "dull-already", route_.abraded, {{"no-gloss"}});
    }
    const Area dusty = route_.abraded + route_.stripped;
    if (dusty > Area()) add("dust-removal", "dust", dusty);
  }

  // The question belongs to the first step that would raise the dust.
  void ask_for_lead() {
    if (!route_.lead_open) return;
    const auto raises_dust = [](const Step& s) {
      return s.task == "loose-paint" || s.task == "strip" || s.task == "abrade";
    };
    const auto first = std::ranges::find_if(route_.steps, raises_dust);
    if (first == route_.steps.end()) return;
    first->holds.insert(first->holds.begin(), {"lead-test"});
  }

  void etch() {
    if (route_.etched <= Area()) return;
    std::vector<HoldPoint> before;
    if (q_.condition.rust) before.push_back({"rust"});
    add("pressure-clean", "loosened-dirt", total_, std::move(before));
    Area walls;
    Area floor;
    for (const Region& region : q_.regions) {
      if (region.substrate == Substrate::fibreglass) continue;
      (region.is_wall ? walls : floor) += region.area;
    }
    const char* why = painted_ ? "etch-painted" : "etch-bare";
    std::vector<HoldPoint> holds;
    if (q_.condition.algae != Dirt::none) holds.push_back({"no-chlorine"});
    if (walls > Area()) add("etch-walls", why, walls, holds);
    if (walls > Area()) holds.clear();
    if (floor > Area()) add("etch-floor", walls > Area() ? "etch-floor" : why, floor, holds);
    add("neutralise", "acid-left", route_.etched, {{"surface-ph"}});
  }

  void drying() {
    add("dry", "wet-shell", total_);
    std::vector<HoldPoint> holds{{"plastic-sheet"}};
    if (q_.condition.efflorescence) holds.push_back({"no-salts"});
    add("dryness-test", "dry-face", total_, std::move(holds));
  }

  void coats() {
    add("mask", "edges", total_);
    add("vacuum", "wind", total_);
    if (route_.primed > Area()) {
      add("prime", "bare-cement", route_.primed);
    }
    add("coat-1",
        route_.thin_first_coat ? "first-coat-thinned" : "first-coat",
        total_,
        {{"conditions"}});
    for (int c = 2; c <= q_.coats; ++c) {
      add("coat-" + std::to_string(c), "next-coat", total_, {{"touch-dry"}, {"conditions"}});
    }
  }

  void closing_steps() {
    add("unmask", "soft-edge", total_);
    add("cure", "clouding", total_);
    add("refit", "refit", Area());
    add("fill", "one-fill", Area(), {{"cured"}});
    add("start-up", "quiet-start", Area(), {{"water-readings"}});
    add("handover", "as-built", Area());
  }

  [[nodiscard]] std::ptrdiff_t place_of(const Stop& stop) const {
    return std::ranges::find(route_.steps, stop.step, &Step::task) - route_.steps.begin();
  }

  // The first stop in the order of the work ends the route; what else stops it is told with it.
  void end_at_stop() {
    if (stops_.empty()) return;
    std::ranges::stable_sort(stops_, {}, [&](const Stop& stop) { return place_of(stop); });
    const auto at = static_cast<std::size_t>(place_of(stops_.front()));
    if (at >= route_.steps.size()) {
      throw std::logic_error("a stop at a step that is not on the route");
    }
    route_.steps.resize(at + 1);
    route_.stop = stops_.front();
    route_.also.assign(stops_.begin() + 1, stops_.end());
  }

  const Question& q_;
  trace::Trace& trace_;
  Route route_;
  std::vector<Stop> stops_;
  Area total_;
  Area loose_;
  Area bare_;
  bool painted_ = false;
  bool gloss_ = false;
  bool strip_loose_ = false;
};

}  // namespace

bool Route::has(std::string_view task) const {
  return std::ranges::any_of(steps, [&](const Step& s) { return s.task == task; });
}

Route route(const Question& question, trace::Trace& trace) {
  return Builder(question, trace).build();
}

}  // namespace basinwright::preparation
