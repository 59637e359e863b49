// Rules that hold for whatever is found. The walk takes every combination of findings on one part,
// each with another part and a condition of the whole shell that move on by steps of their own, so
// that each value meets each other. The rules are common practice, written here a second time.
#include <array>
#include <functional>
#include <set>

#include "shell.hpp"

using namespace shell_of;

namespace {

// A number as digits of mixed size: each finding takes one.
class Digits {
 public:
  explicit Digits(unsigned number) : rest_(number) {}
  unsigned take(unsigned size) {
    const unsigned digit = rest_ % size;
    rest_ /= size;
    return digit;
  }
  template <class T, std::size_t N>
  T of(const std::array<T, N>& values) {
    return values[take(N)];
  }

 private:
  unsigned rest_;
};

constexpr unsigned parts = 6 * 4 * 3 * 4 * 4 * 3 * 2;
prep::Region part_of(unsigned number, std::string where) {
  Digits d(number);
  prep::Region r = part(std::move(where), 50);
  r.substrate = static_cast<prep::Substrate>(d.take(6));
  r.coating = static_cast<prep::ExistingCoating>(d.take(4));
  r.acetone_test = static_cast<prep::AcetoneTest>(d.take(3));
  r.loose_share = units::fraction(d.of(std::array{0.0, 0.25, 0.2500001, 1.0}));
  r.bare_share = units::fraction(d.of(std::array{0.0, 0.1, 0.1000001, 1.0}));
  const unsigned age = d.take(3);
  if (age > 0) r.age_of_cement = units::days(age == 1 ? 27.9 : 28);
  r.gloss = d.take(2) == 1;
  return r;
}

prep::Crack crack(unsigned kind) {
  constexpr std::array widths{0.99, 1.0, 5.0, 5.01, 0.5};
  return {units::millimetres(widths[kind]), units::metres(2), {}, kind == 4};
}

constexpr unsigned conditions = 3 * 2 * 3 * 6 * 3 * 3 * 2 * 4 * 3 * 2 * 2 * 2;
void set_condition(unsigned number, prep::Question& q) {
  Digits d(number);
  prep::Condition& c = q.condition;
  c.algae = static_cast<prep::Dirt>(d.take(3));
  c.oils = d.take(2) == 0 ? prep::Dirt::normal : prep::Dirt::heavy;
  c.lead_test = static_cast<prep::LeadTest>(d.take(3));
  if (const unsigned kind = d.take(6); kind > 0) c.cracks = {crack(kind - 1)};
  if (const unsigned kind = d.take(3); kind > 0)
    c.divots = {{units::millimetres(kind == 1 ? 9.9 : 10), units::square_metres(0.1), 3}};
  c.drummy_area = units::square_metres(d.of(std::array{0.0, 5.0, 5.01}));
  c.blisters = units::square_metres(d.of(std::array{0.0, 3.0}));
  c.ground = static_cast<prep::Ground>(d.take(4));
  c.leak_test = static_cast<prep::LeakTest>(d.take(3));
  c.rust = d.take(2) == 1;
  q.strip_untested = d.take(2) == 1;
  q.start_fixed = d.take(2) == 1;
}

class Walk {
 public:
  explicit Walk(const prep::Route& r) : r_(r), end_(static_cast<int>(r.steps.size())) {
    for (int i = 0; i < end_; ++i) at_.push_back(r.steps[static_cast<std::size_t>(i)].task);
  }
  // Past the end when it is not on the route.
  [[nodiscard]] int at(std::string_view task) const {
    return static_cast<int>(std::ranges::find(at_, task) - at_.begin());
  }
  [[nodiscard]] bool has(std::string_view task) const { return at(task) < end_; }
  [[nodiscard]] bool before(std::string_view first, std::string_view then) const {
    return !has(then) || at(first) < at(then);
  }
  [[nodiscard]] bool holds(std::string_view task, std::string_view hold) const {
    if (!has(task)) return false;
    const auto& points = r_.steps[static_cast<std::size_t>(at(task))].holds;
    return std::ranges::count(points, hold, &prep::HoldPoint::code) == 1;
  }

 private:
  const prep::Route& r_;
  int end_;
  std::vector<std::string> at_;
};

// Too loose to stay, or taken as failed; a tenth of a millionth over a quarter is over.
bool comes_off(const prep::Region& r, const prep::Question& q, double painted) {
  if (r.coating == prep::ExistingCoating::none) return false;
  const double blisters = q.condition.blisters.in(units::square_metres) / painted;
  const bool doubtful =
      r.coating == prep::ExistingCoating::unknown || r.acetone_test == prep::AcetoneTest::not_done;
  return r.loose_share.share() + blisters > 0.25 || (q.strip_untested && doubtful);
}

// The name of the first rule that does not hold; empty when all do.
std::string broken_order(const Walk& w) {
  for (const char* dusty : {"abrade", "strip", "loose-paint"}) {
    if (!w.before("degrease", dusty)) return "degrease first";
  }
  for (const char* later : {"degrease", "strip", "abrade", "etch-walls", "etch-floor"}) {
    if (w.has("chlorine-wash") && w.at("chlorine-wash") > w.at(later)) return "chlorine first";
  }
  for (const char* off : {"strip", "loose-paint"}) {
    if (w.has("repair") && w.has(off) && w.at(off) > w.at("repair")) return "loose before repair";
  }
  for (const char* coat : {"prime", "coat-1"}) {
    for (const char* earlier : {"neutralise", "dry", "dryness-test", "mask", "vacuum"}) {
      if (!w.before(earlier, coat)) return std::string(earlier) + " before coats";
    }
  }
  for (const char* acid : {"etch-walls", "etch-floor"}) {
    if (w.has("neutralise") && w.has(acid) && w.at(acid) > w.at("neutralise")) return "acid late";
    if (w.has(acid) && w.has("coat-1") && !w.has("neutralise")) return "acid left";
  }
  if (!w.before("neutralise", "dry") || !w.before("dry", "dryness-test")) return "dry in order";
  return "";
}

std::string broken_holds(const Walk& w, const prep::Question& q) {
  const bool algae = q.condition.algae != prep::Dirt::none;
  if (w.has("degrease") && w.has("chlorine-wash") != algae) return "chlorine for algae alone";
  if (w.has("chlorine-wash") && !w.holds("chlorine-wash", "no-chlorine")) return "strip shows none";
  const char* first = w.has("etch-walls") ? "etch-walls" : "etch-floor";
  if (algae && w.has(first) && !w.holds(first, "no-chlorine")) return "no chlorine before acid";
  if (w.has("neutralise") && !w.holds("neutralise", "surface-ph")) return "surface pH";
  if (w.has("dryness-test") && !w.holds("dryness-test", "plastic-sheet")) return "sheets";
  if (w.has("abrade") && !w.holds("abrade", "no-gloss")) return "no gloss";
  int asked = 0;
  for (const char* dusty : {"strip", "loose-paint", "abrade"}) asked += w.holds(dusty, "lead-test");
  const bool dust = w.has("strip") || w.has("loose-paint") || w.has("abrade");
  const bool open = q.condition.lead_test == prep::LeadTest::not_done;
  if (asked != (dust && open ? 1 : 0)) return "lead asked once";
  return "";
}

std::string broken_coat(const Walk& w, const prep::Route& r, const prep::Question& q) {
  double painted = 0;
  for (const auto& region : q.regions) {
    if (region.coating != prep::ExistingCoating::none) painted += metres2(region.area);
  }
  double off = 0;
  for (const auto& region : q.regions) {
    const bool strip = comes_off(region, q, painted);
    if (strip) off += metres2(region.area);
    const bool bad = region.coating == prep::ExistingCoating::other ||
                     (region.coating != prep::ExistingCoating::none &&
                      region.acetone_test == prep::AcetoneTest::softened);
    if (bad && !strip && w.has("degrease")) return "epoxy on what it does not hold on";
    const bool doubt = region.coating == prep::ExistingCoating::unknown ||
                       (region.coating == prep::ExistingCoating::epoxy &&
                        region.acetone_test == prep::AcetoneTest::not_done);
    if (doubt && w.has("coat-1") && !w.holds("coating-test", "acetone-test")) return "test first";
    const bool glass = region.substrate == prep::Substrate::fibreglass;
    if (glass && (!r.stop || w.has("degrease"))) return "fibreglass";
    const bool young = region.coating == prep::ExistingCoating::none && region.age_of_cement &&
                       region.age_of_cement->in(units::days) < 28;
    if (young && q.start_fixed && w.has("neutralise")) return "acid on young cement";
    if (young && !r.stop && !r.cement_wait) return "young cement waits";
  }
  if (std::abs(metres2(r.stripped) - off) > 1e-9) return "area stripped";
  if (std::abs(metres2(r.abraded) + off - painted) > 1e-9) return "area abraded";
  if (r.primed > units::Area() && r.thin_first_coat) return "primer and thinner";
  return "";
}

std::string broken_stop(const Walk& w, const prep::Route& r, const prep::Question& q) {
  std::set<std::string> seen;
  for (const auto& step : r.steps) {
    if (!seen.insert(step.task).second) return "a step twice";
  }
  if (r.stop && r.steps.back().task != r.stop->step) return "ends with its step";
  if (!r.stop && r.steps.back().task != "handover") return "goes the whole way";
  for (const auto& later : r.also) {
    if (w.has(later.step) && later.step != r.stop->step) return "the first stop stops";
  }
  if (q.condition.lead_test == prep::LeadTest::found && metres2(r.abraded + r.stripped) > 0 &&
      w.has("pressure-clean")) {
    return "lead dust";
  }
  for (const auto& c : q.condition.cracks) {
    if ((c.moving || c.width > units::millimetres(5)) && w.has("dust-removal")) return "crack";
  }
  if (q.condition.ground == prep::Ground::floats && w.has("degrease")) return "floats";
  if (q.condition.drummy_area > units::square_metres(5) && w.has("pressure-clean")) return "drummy";
  return "";
}

std::string broken_rule(const prep::Question& q) {
  const prep::Route r = route(q);
  const Walk w(r);
  for (const std::string& broken :
       {broken_order(w), broken_holds(w, q), broken_coat(w, r, q), broken_stop(w, r, q)}) {
    if (!broken.empty()) return broken;
  }
  return "";
}

}  // namespace

TEST_CASE("no route breaks a rule, whatever is found") {
  // Steps without a common factor with the sizes visit every number before one comes again.
  constexpr unsigned step = 7919;
  constexpr unsigned stride = 12289;
  static_assert(conditions % step != 0 && parts % stride != 0);
  constexpr unsigned rounds = parts;
  int whole = 0;
  for (unsigned i = 0; i < rounds; ++i) {
    prep::Question q;
    q.regions = {part_of(i % parts, "walls"), part_of((i * stride + 5) % parts, "floor")};
    set_condition((i * step) % conditions, q);
    const std::string broken = broken_rule(q);
    if (!broken.empty()) FAIL(broken << " at " << i);
    whole += route(q).stop ? 0 : 1;
  }
  CHECK(whole > 100);
}

// One sound part and one other, so that stops do not hide what comes after them.
TEST_CASE("no route breaks a rule with each condition on parts that can be coated") {
  constexpr std::array good{prep::Substrate::render, prep::Substrate::pebble};
  int whole = 0;
  for (unsigned i = 0; i < conditions; i += 61) {
    prep::Question q;
    prep::Region walls = part_of(i % parts, "walls");
    walls.substrate = good[i % 2];
    if (walls.coating == prep::ExistingCoating::other) walls.coating = prep::ExistingCoating::epoxy;
    walls.acetone_test = i % 3 == 0 ? prep::AcetoneTest::not_done : prep::AcetoneTest::untouched;
    q.regions = {walls, part("floor", 50)};
    set_condition(i, q);
    const std::string broken = broken_rule(q);
    if (!broken.empty()) FAIL(broken << " at " << i);
    whole += route(q).stop ? 0 : 1;
  }
  CHECK(whole > 100);
}
