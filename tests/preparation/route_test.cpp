// What is done to a shell and in which order, against common practice unless a source is named.
#include "shell.hpp"

using namespace shell_of;
using Names = std::vector<std::string>;

// Common practice: washes are never merged nor swapped; clean, abrade, etch, neutralise, dry, coat.
TEST_CASE("a sound painted shell goes the whole way") {
  CHECK(tasks(route(sound())) ==
        Names{"set-out",    "drain",      "degrease",   "abrade", "dust-removal", "pressure-clean",
              "etch-walls", "etch-floor", "neutralise", "dry",    "dryness-test", "mask",
              "vacuum",     "coat-1",     "coat-2",     "unmask", "cure",         "refit",
              "fill",       "start-up",   "handover"});
}

// Common practice: the chlorine wash only where there is algae, and first.
TEST_CASE("algae brings the chlorine wash before everything else on the shell") {
  for (const auto algae : {prep::Dirt::normal, prep::Dirt::heavy}) {
    auto q = sound();
    q.condition.algae = algae;
    const auto r = route(q);
    CHECK(r.steps[2].task == "chlorine-wash");
    CHECK(r.steps[3].task == "degrease");
    CHECK(holds(r, "chlorine-wash") == Names{"no-chlorine"});
    CHECK(holds(r, "etch-walls") == Names{"no-chlorine"});
    CHECK(holds(r, "etch-floor").empty());
  }
  CHECK_FALSE(route(sound()).has("chlorine-wash"));
}

// Common practice: loose on more than about a quarter of the area, strip all of it.
TEST_CASE("paint loose over a quarter is stripped, up to a quarter it is scraped off") {
  auto q = sound();
  q.regions[0].loose_share = units::percent(25);
  auto r = route(q);
  CHECK_FALSE(r.has("strip"));
  CHECK(metres2(step(r, "loose-paint").area) == Approx(15));
  CHECK(metres2(r.abraded) == Approx(100));
  q.regions[0].loose_share = units::percent(26);
  r = route(q);
  CHECK(metres2(step(r, "strip").area) == Approx(60));
  CHECK(step(r, "strip").why == "too-loose");
  CHECK_FALSE(r.has("loose-paint"));
  CHECK(metres2(r.abraded) == Approx(40));
  CHECK(metres2(step(r, "dust-removal").area) == Approx(100));
}

// Blistered paint is loose paint: 20 m2 of 100 with a tenth loose makes three tenths.
TEST_CASE("blisters count as loose paint, shared out over what is painted") {
  auto q = sound();
  q.condition.blisters = units::square_metres(20);
  auto r = route(q);
  CHECK(metres2(step(r, "loose-paint").area) == Approx(20));
  CHECK(holds(r, "loose-paint") == Names{"blisters"});
  q.regions[0].loose_share = units::percent(10);
  r = route(q);
  CHECK(metres2(r.stripped) == Approx(60));
  CHECK(metres2(step(r, "loose-paint").area) == Approx(8));
}

// Common practice: loose paint comes off before repairs.
TEST_CASE("nothing is mended on paint that still comes off") {
  auto q = sound();
  q.regions[0].loose_share = units::percent(60);
  q.regions[1].loose_share = units::percent(10);
  q.condition.divots = {{units::millimetres(5), units::square_metres(0.1), 1}};
  const auto all = tasks(route(q));
  const auto at = [&](std::string_view task) { return std::ranges::find(all, task); };
  CHECK(at("degrease") < at("strip"));
  CHECK(at("strip") < at("repair"));
  CHECK(at("loose-paint") < at("repair"));
  CHECK(at("repair") < at("abrade"));
}

// Common practice: no bare patches, neither primer nor thinner; minor ones (assumed: a tenth), a
// thinned first coat; more, a primer.
TEST_CASE("the bare share chooses between nothing, a thinned coat and a primer") {
  auto q = sound();
  CHECK_FALSE(route(q).has("prime"));
  CHECK_FALSE(route(q).thin_first_coat);
  for (auto& region : q.regions) region.bare_share = units::percent(10);
  auto r = route(q);
  CHECK_FALSE(r.has("prime"));
  CHECK(r.thin_first_coat);
  CHECK(step(r, "coat-1").why == "first-coat-thinned");
  for (auto& region : q.regions) region.bare_share = units::percent(11);
  r = route(q);
  CHECK(metres2(step(r, "prime").area) == Approx(11));
  CHECK_FALSE(r.thin_first_coat);
}

TEST_CASE("a bare shell is primed whole and not abraded") {
  auto q = sound();
  for (auto& region : q.regions) region.coating = prep::ExistingCoating::none;
  const auto r = route(q);
  CHECK(metres2(r.primed) == Approx(100));
  CHECK_FALSE(r.has("abrade"));
  CHECK_FALSE(r.has("dust-removal"));
  CHECK(step(r, "etch-walls").why == "etch-bare");
}

// Common practice: no gloss left anywhere is a hold point, and a dull coat is roughened too.
TEST_CASE("a dull coat is abraded as a glossy one is") {
  auto q = sound();
  CHECK(step(route(q), "abrade").why == "gloss");
  for (auto& region : q.regions) region.gloss = false;
  CHECK(step(route(q), "abrade").why == "dull-already");
  CHECK(holds(route(q), "abrade") == Names{"no-gloss"});
}

// Untested is provisional, not a stop; its other branch strips.
TEST_CASE("an untested coat is tested first, and may have to come off") {
  auto q = sound();
  q.regions[1].acetone_test = prep::AcetoneTest::not_done;
  auto r = route(q);
  CHECK_FALSE(r.stop);
  CHECK(r.coating_untested);
  CHECK(r.provisional == Names{"coating-untested"});
  CHECK(r.steps[2].task == "coating-test");
  CHECK(holds(r, "coating-test") == Names{"acetone-test"});
  q.strip_untested = true;
  r = route(q);
  CHECK(metres2(r.stripped) == Approx(40));
  CHECK(metres2(r.primed) == Approx(40));
  CHECK(step(r, "strip").why == "not-epoxy");
}

// Common practice: a coat that was called unknown is untested whatever acetone did to one spot.
TEST_CASE("an unknown coat stays in doubt") {
  auto q = sound();
  q.regions[0].coating = prep::ExistingCoating::unknown;
  CHECK(route(q).coating_untested);
}

// MIL-HDBK-1110 6.3.2: no abrading before the test.
// 16 CFR 1303.4: paint made after 27 February 1978. Paint of unknown age may hold lead (common
// practice): one part of it is enough.
TEST_CASE("paint of a year after the lead ban lifts the lead question") {
  auto q = sound();
  q.condition.lead_test = prep::LeadTest::not_done;
  const auto years = [&](std::optional<int> walls, std::optional<int> floor) {
    q.regions[0].painted_year = walls;
    q.regions[1].painted_year = floor;
    return route(q);
  };
  REQUIRE(q.regions.size() == 2);
  auto r = years(1979, 2015);
  CHECK_FALSE(r.lead_open);
  CHECK(r.provisional.empty());
  CHECK(holds(r, "abrade") == Names{"no-gloss"});
  for (const auto& [walls, floor] : std::vector<std::pair<std::optional<int>, std::optional<int>>>{
           {1978, 2015}, {2015, {}}, {{}, {}}, {2015, 1960}}) {
    r = years(walls, floor);
    CHECK(r.lead_open);
    CHECK(r.provisional == Names{"lead-untested"});
    CHECK(holds(r, "abrade") == Names{"lead-test", "no-gloss"});
  }
  q.thresholds.lead_until.value = 2016;
  CHECK(years(2015, 2015).lead_open);
  // What was found goes before any year.
  q.condition.lead_test = prep::LeadTest::found;
  CHECK(years(2020, 2020).stop.has_value());
}

TEST_CASE("the lead question stands at the first step that raises dust") {
  auto q = sound();
  q.condition.lead_test = prep::LeadTest::not_done;
  auto r = route(q);
  CHECK(holds(r, "abrade") == Names{"lead-test", "no-gloss"});
  CHECK(r.provisional == Names{"lead-untested"});
  q.regions[0].loose_share = units::percent(5);
  r = route(q);
  CHECK(holds(r, "loose-paint") == Names{"lead-test"});
  CHECK(holds(r, "abrade") == Names{"no-gloss"});
  q.regions[0].loose_share = units::percent(50);
  CHECK(holds(route(q), "strip") == Names{"lead-test"});
  for (auto& region : q.regions) region = part(region.where, 50);
  for (auto& region : q.regions) region.coating = prep::ExistingCoating::none;
  CHECK(route(q).provisional.empty());
}

// ASTM D4262 and D4263 at the shell; common practice for the rest.
TEST_CASE("hold points stand where somebody has to read something") {
  const auto r = route(sound());
  CHECK(holds(r, "drain").empty());
  CHECK(holds(r, "degrease") == Names{"water-break"});
  CHECK(holds(r, "neutralise") == Names{"surface-ph"});
  CHECK(holds(r, "dryness-test") == Names{"plastic-sheet"});
  CHECK(holds(r, "coat-1") == Names{"conditions"});
  CHECK(holds(r, "coat-2") == Names{"touch-dry", "conditions"});
  CHECK(holds(r, "fill") == Names{"cured"});
  CHECK(holds(r, "start-up") == Names{"water-readings"});
  auto q = sound();
  q.condition.leak_test = prep::LeakTest::not_done;
  q.condition.ground = prep::Ground::unknown;
  q.condition.rust = true;
  q.condition.efflorescence = true;
  const auto doubts = route(q);
  CHECK(holds(doubts, "drain") == Names{"leak-test", "groundwater"});
  CHECK(holds(doubts, "pressure-clean") == Names{"rust"});
  CHECK(holds(doubts, "dryness-test") == Names{"plastic-sheet", "no-salts"});
  CHECK(step(doubts, "pressure-clean").actions == Names{"salts-brushed-off", "rust-opened"});
  q.condition.leak_test = prep::LeakTest::leaks;
  CHECK(holds(route(q), "drain").front() == "leak-found");
}

// Common practice: valve, lines and auto-fill are work like any other.
TEST_CASE("valve, lines and auto-fill are named where they are done") {
  const auto r = route(sound());
  const auto names = [&](std::string_view task, std::string_view action) {
    return std::ranges::count(step(r, task).actions, action) == 1;
  };
  CHECK(names("set-out", "auto-fill-off"));
  CHECK(names("drain", "relief-valve-open"));
  CHECK(names("drain", "lines-plugged"));
  CHECK(names("dry", "relief-valve-dry"));
  CHECK(names("refit", "plugs-out"));
  CHECK(names("refit", "relief-valve-closed"));
  CHECK(names("start-up", "auto-fill-on"));
  CHECK(names("handover", "readings-and-batches"));
}

TEST_CASE("coats run to the number asked for") {
  auto q = sound();
  q.coats = 4;
  const auto r = route(q);
  CHECK(r.has("coat-4"));
  CHECK_FALSE(r.has("coat-5"));
}
