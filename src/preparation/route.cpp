#include "basinwright/preparation/route.hpp"

#include <algorithm>
#include <string>

#include "repairs.hpp"
#include "stops.hpp"

namespace basinwright::preparation {
namespace {

using units::Area;

bool painted(const Region& r) {
  return r.coating != ExistingCoating::none;
}
bool untested(const Region& r) {
  return r.coating == ExistingCoating::unknown ||
         (painted(r) && r.acetone_test == AcetoneTest::not_done);
}

// What happens to each region; the route's areas are their sums.
struct Fate {
  bool strip = false;
  Area loose;
};

Fate fate_of(const Region& region, const Question& question) {
  Fate fate;
  if (!painted(region)) return fate;
  fate.strip = region.loose_share > question.thresholds.strip_share.value ||
               (question.strip_untested && untested(region));
  fate.loose = region.area * region.loose_share.share();
  return fate;
}

class Builder {
 public:
  Builder(const Question& question, trace::Trace& trace) : q_(question), trace_(trace) {}

  Route build() {
    for (const Region& region : q_.regions) total_ += region.area;
    sum_regions();
    route_.stop = reason_to_stop(q_);
    find_what_is_missing();
    opening_steps();
    washes();
    repairs();
    old_paint();
    etch();
    drying();
    coats();
    closing_steps();
    end_at_stop();
    return std::move(route_);
  }

 private:
  void add(std::string task, std::string why, Area area, std::vector<HoldPoint> holds = {}) {
    route_.steps.push_back({std::move(task), std::move(why), area, std::move(holds)});
  }

  void sum_regions() {
    Area bare;
    for (const Region& region : q_.regions) {
      const Fate fate = fate_of(region, q_);
      painted_ = painted_ || painted(region);
      route_.coating_untested = route_.coating_untested || untested(region);
      if (fate.strip) {
        route_.stripped += region.area;
      } else if (painted(region)) {
        route_.abraded += region.area;
        loose_ += fate.loose;
      }
      route_.regions.push_back({region.where,
                                region.area,
                                region.substrate,
                                fate.strip        ? Treatment::stripped
                                : painted(region) ? Treatment::abraded
                                                  : Treatment::bare});
      const bool bared = fate.strip || !painted(region);
      bare += bared ? region.area : region.area * region.bare_share.share();
      if (region.substrate != Substrate::fibreglass) route_.etched += region.area;
    }
    const auto& threshold = q_.thresholds.prime_share;
    if (bare > total_ * threshold.value.share()) {
      route_.primed = bare;
    } else if (bare > Area()) {
      route_.thin_first_coat = true;
    }
    trace_.note(
        "route.bare_share",
        total_ > Area() ? bare / total_ : 0.0,
        "bare / painted",
        {{"bare", bare, {sources::Kind::given, "", "/surfaces"}},
         {"painted", total_, trace::From{"takeoff.painted_area_m2"}}},
        "above the limit for minor patches a primer is used, below it a thinned first coat");
  }

  void find_what_is_missing() {
    if (route_.coating_untested) {
      route_.provisional.push_back({"coating-untested"});
    }
    if (painted_ && q_.condition.lead_test == LeadTest::not_done) {
      route_.provisional.push_back({"lead-untested"});
    }
  }

  void opening_steps() {
    add("set-out", "set-out", total_);
    std::vector<HoldPoint> holds;
    const bool doubtful =
        q_.condition.flotation == Flotation::hold || q_.condition.flotation == Flotation::stop;
    if (doubtful) holds.push_back({"groundwater"});
    add("drain", "empty-and-isolated", total_, std::move(holds));
    if (route_.coating_untested) {
      add("coating-test", "coating-unknown", total_, {{"acetone-test"}});
    }
  }

  void washes() {
    if (q_.condition.algae != Dirt::none) {
      add("chlorine-wash", "algae", total_, {{"no-chlorine"}});
    }
    add("degrease", "oils", total_, {{"water-break"}});
  }

  void repairs() {
    if (loose_ > Area()) {
      add("loose-paint", "loose-paint", loose_);
    }
    const Repairs found = repairs_of(q_);
    route_.filler = found.filler;
    route_.mortar = found.mortar;
    if (found.filler > units::Volume() || found.mortar > units::Volume()) {
      add("repair", "cracks-and-hollows", found.area);
    }
    route_.cement_wait = cement_wait(q_, found);
  }

  void old_paint() {
    if (route_.stripped > Area()) {
      const bool test_failed = q_.strip_untested && route_.coating_untested;
      add("strip", test_failed ? "not-epoxy" : "too-loose", route_.stripped);
    }
    if (route_.abraded > Area()) {
      add("abrade", "gloss", route_.abraded, {{"no-gloss"}});
      add("dust-removal", "dust", route_.abraded);
    }
    ask_for_lead();
  }

  // The question belongs to the first step that would raise the dust.
  void ask_for_lead() {
    if (q_.condition.lead_test != LeadTest::not_done) return;
    const auto raises_dust = [](const Step& s) {
      return s.task == "loose-paint" || s.task == "strip" || s.task == "abrade";
    };
    const auto first = std::ranges::find_if(route_.steps, raises_dust);
    if (first == route_.steps.end()) return;
    first->holds.insert(first->holds.begin(), {"lead-test"});
  }

  void etch() {
    if (route_.etched <= Area()) return;
    add("pressure-clean", "loosened-dirt", total_);
    Area walls;
    Area floor;
    for (const Region& region : q_.regions) {
      if (region.substrate == Substrate::fibreglass) continue;
      (region.is_wall ? walls : floor) += region.area;
    }
    const char* why = painted_ ? "etch-painted" : "etch-bare";
    if (walls > Area()) add("etch-walls", why, walls);
    if (floor > Area()) add("etch-floor", "etch-floor", floor);
    add("neutralise", "acid-left", route_.etched, {{"surface-ph"}});
  }

  void drying() {
    add("dry", "wet-shell", total_);
    add("dryness-test", "dry-face", total_, {{"plastic-sheet"}});
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
      add("coat-" + std::to_string(c), "next-coat", total_, {{"conditions"}});
    }
  }

  void closing_steps() {
    add("unmask", "soft-edge", total_);
    add("cure", "clouding", total_);
    add("refit", "refit", Area());
    add("fill", "one-fill", Area());
    add("start-up", "quiet-start", Area());
    add("handover", "as-built", Area());
  }

  void end_at_stop() {
    if (!route_.stop) return;
    const auto at = std::ranges::find(route_.steps, route_.stop->step, &Step::task);
    if (at != route_.steps.end()) route_.steps.erase(at + 1, route_.steps.end());
  }

  const Question& q_;
  trace::Trace& trace_;
  Route route_;
  Area total_;
  Area loose_;
  bool painted_ = false;
};

}  // namespace

bool Route::has(std::string_view task) const {
  return std::ranges::any_of(steps, [&](const Step& s) { return s.task == task; });
}

Route route(const Question& question, trace::Trace& trace) {
  return Builder(question, trace).build();
}

}  // namespace basinwright::preparation
