#include "basinwright/sequence/work.hpp"

#include <string>
#include <string_view>

namespace basinwright::sequence {
namespace {

using units::Area;
using units::Duration;

class Estimator {
 public:
  Estimator(const WorkQuestion& q, const Productivity& p, trace::Trace& trace)
      : q_(q), p_(p), trace_(trace) {}

  std::vector<Work> estimate() {
    for (const preparation::Step& step : q_.route.steps) place(step);
    return std::move(work_);
  }

 private:
  void place(const preparation::Step& step) {
    const std::string_view t = step.task;
    if (t == "set-out") return fixed(t, p_.set_out, "productivity.set_out");
    if (t == "drain") return add({step.task, "", Duration(), 0, 1});
    if (t == "coating-test") return fixed(t, p_.coating_test, "productivity.coating_test");
    if (t == "chlorine-wash") return by_area(step, p_.chlorine_wash, "productivity.chlorine_wash");
    if (t == "degrease") return by_area(step, p_.degrease, "productivity.degrease");
    if (t == "loose-paint") return by_area(step, p_.loose_paint, "productivity.loose_paint");
    if (t == "repair") return by_area(step, p_.repair, "productivity.repair");
    if (t == "strip") return by_area(step, p_.strip, "productivity.strip");
    if (t == "abrade") return by_area(step, p_.abrade, "productivity.abrade");
    if (t == "dust-removal") return by_area(step, p_.dust_removal, "productivity.dust_removal");
    if (t == "pressure-clean")
      return by_area(step, p_.pressure_clean, "productivity.pressure_clean");
    if (t == "etch-walls" || t == "etch-floor") return by_area(step, p_.etch, "productivity.etch");
    if (t == "neutralise") return by_area(step, p_.neutralise, "productivity.neutralise");
    if (t == "dryness-test") return fixed(t, p_.dryness_test, "productivity.dryness_test");
    if (t == "mask") return mask();
    if (t == "prime") return paint("prime", p_.prime, "productivity.prime", step.area);
    if (t.starts_with("coat-")) return paint(t, p_.coat, "productivity.coat", step.area);
    if (t == "unmask") return by_area(step, p_.unmask, "productivity.unmask");
    if (t == "refit") return fixed(t, p_.refit, "productivity.refit");
    if (t == "fill") return fixed(t, p_.fill, "productivity.fill");
    if (t == "start-up") return fixed(t, p_.start_up, "productivity.start_up");
    if (t == "handover") return fixed(t, p_.handover, "productivity.handover");
  }

  void fixed(std::string_view task, const Sourced<Duration>& hours, std::string_view key) {
    add({std::string(task), "", trace_.use(key, hours), q_.crew.people, 1});
    trace_.note(labour_key(task), hours.value, "hours", {{"hours", hours}});
  }

  void by_area(const preparation::Step& step,
               const Sourced<units::WorkRate>& rate,
               std::string_view key) {
    const Duration hours = step.area * q_.pebble_factor / trace_.use(key, rate);
    trace_.note(labour_key(step.task),
                hours,
                "area * texture / rate",
                {area_of(step.area),
                 {"texture", q_.pebble_factor, {sources::Kind::given, "", "/surfaces"}},
                 {"rate", rate}});
    add({step.task, "", hours, q_.crew.people, 1});
  }

  // The whole painted area is a step of the take-off; a part of it was found on the surfaces.
  [[nodiscard]] trace::Operand area_of(Area area) const {
    if (area == q_.painted) return {"area", area, trace::From{"takeoff.painted_area_m2"}};
    return {"area", area, sources::Source{sources::Kind::given, "", "/surfaces"}};
  }

  void mask() {
    const Duration hours = q_.edge / trace_.use("productivity.mask", p_.mask);
    trace_.note("labour.mask",
                hours,
                "edge / rate",
                {{"edge", q_.edge, trace::From{"takeoff.perimeter_m"}}, {"rate", p_.mask}});
    add({"mask", "", hours, q_.crew.people, 1});
  }

  // A section's vacuuming stands before each of its coats, since it is done that day.
  void paint(std::string_view task,
             const Sourced<units::WorkRate>& rate,
             std::string_view key,
             Area area) {
    const int sections = static_cast<int>(q_.cut.sections.size());
    trace_.use(key, rate);
    trace_.use("productivity.vacuum", p_.vacuum);
    for (int s = 0; s < sections; ++s) {
      const double share =
          q_.painted > Area() ? q_.cut.sections[static_cast<std::size_t>(s)] / q_.painted : 1.0;
      const Area section = area * share;
      const std::string name = sections > 1 ? std::to_string(s + 1) : "";
      add({"vacuum", name, section * q_.pebble_factor / p_.vacuum.value, q_.crew.people, sections});
      add({std::string(task),
           name,
           section * q_.pebble_factor / rate.value,
           q_.crew.painters,
           sections});
    }
    trace_.note(labour_key(task),
                area * q_.pebble_factor / rate.value,
                "area * texture / rate",
                {area_of(area),
                 {"texture", q_.pebble_factor, {sources::Kind::given, "", "/surfaces"}},
                 {"rate", rate}});
  }

  // A text that nobody asks for is not made.
  [[nodiscard]] std::string labour_key(std::string_view task) const {
    return trace_.on() ? "labour." + std::string(task) : "";
  }

  void add(Work work) { work_.push_back(std::move(work)); }

  const WorkQuestion& q_;
  const Productivity& p_;
  trace::Trace& trace_;
  std::vector<Work> work_;
};

}  // namespace

std::vector<Work> work(const WorkQuestion& question,
                       const Productivity& productivity,
                       trace::Trace& trace) {
  return Estimator(question, productivity, trace).estimate();
}

}  // namespace basinwright::sequence
