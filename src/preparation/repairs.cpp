#include "repairs.hpp"

#include <algorithm>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace basinwright::preparation {
namespace {

using units::Area;
using units::Length;
using units::Volume;

// Adds up the volumes of one material, a recorded step for each place.
class Ledger {
 public:
  Ledger(trace::Trace& trace, std::string key) : trace_(trace), key_(std::move(key)) {}

  void add(const std::string& place,
           Volume volume,
           std::string_view formula,
           std::initializer_list<trace::Operand> operands) {
    sum_ += volume;
    if (!trace_.on()) return;
    names_.push_back(place);
    volumes_.push_back(volume);
    trace_.note(step_of(place), volume, formula, operands);
  }

  // One step under the material's own key.
  [[nodiscard]] Volume total() const {
    if (names_.empty()) return sum_;
    std::vector<std::string> origins;
    std::vector<trace::Operand> operands;
    std::string formula;
    origins.reserve(names_.size());
    operands.reserve(names_.size());
    for (std::size_t i = 0; i < names_.size(); ++i) {
      origins.push_back(step_of(names_[i]));
      operands.emplace_back(names_[i], volumes_[i], trace::From{origins.back()});
      formula += (formula.empty() ? "" : " + ") + names_[i];
    }
    return trace_.note_all(key_, sum_, formula, operands);
  }

 private:
  [[nodiscard]] std::string step_of(const std::string& place) const { return key_ + "." + place; }

  trace::Trace& trace_;
  std::string key_;
  Volume sum_;
  std::vector<std::string> names_;
  std::vector<Volume> volumes_;
};

sources::Source given(std::string_view place) {
  return {sources::Kind::given, "", place};
}

void add_cracks(const Question& q, Ledger& filler, Repairs& found) {
  for (std::size_t i = 0; i < q.condition.cracks.size(); ++i) {
    const Crack& crack = q.condition.cracks[i];
    if (crack.width < q.thresholds.crack_hairline.value) continue;
    const std::string at = "/condition/cracks/" + std::to_string(i);
    const bool measured = crack.depth > Length();
    const Sourced<Length> depth =
        measured ? Sourced<Length>{crack.depth, given(at)} : q.thresholds.crack_opening;
    // A V with its root at that depth and sides at 45 degrees holds depth^2 a metre.
    filler.add("crack_" + std::to_string(i + 1),
               depth.value * depth.value * crack.length,
               "depth ^ 2 * run",
               {{"depth", depth}, {"run", crack.length, given(at)}});
    const Area worked = q.thresholds.crack_worked.value * crack.length;
    found.area += worked;
    found.filler_area += worked;
  }
}

void add_divots(const Question& q, Ledger& filler, Ledger& mortar, Repairs& found) {
  for (std::size_t i = 0; i < q.condition.divots.size(); ++i) {
    const Divot& divot = q.condition.divots[i];
    const std::string at = "/condition/divots/" + std::to_string(i);
    const auto count = static_cast<double>(divot.count);
    const bool shallow = divot.depth < q.thresholds.divot_filler.value;
    (shallow ? filler : mortar)
        .add("divot_" + std::to_string(i + 1),
             divot.area * divot.depth * count,
             "area * depth * count",
             {{"area", divot.area, given(at)},
              {"depth", divot.depth, given(at)},
              {"count", count, given(at)}});
    const Area worked = divot.area * count;
    found.area += worked;
    if (shallow) found.filler_area += worked;
  }
}

void add_drummy(const Question& q, Ledger& mortar, Repairs& found) {
  const Area area = q.condition.drummy_area;
  if (area <= Area()) return;
  mortar.add("drummy",
             area * q.thresholds.render_thickness.value,
             "area * thickness",
             {{"area", area, given("/condition/drummy_area")},
              {"thickness", q.thresholds.render_thickness}});
  found.area += area;
}

}  // namespace

Repairs repairs_of(const Question& q, trace::Trace& trace) {
  Repairs found;
  Ledger filler(trace, "quantities.filler.litres");
  Ledger mortar(trace, "quantities.mortar_l");
  add_cracks(q, filler, found);
  add_divots(q, filler, mortar, found);
  add_drummy(q, mortar, found);
  found.filler = filler.total();
  found.mortar = mortar.total();
  return found;
}

std::optional<units::Duration> cement_wait(const Question& q, const Repairs& repairs) {
  const units::Duration full = q.thresholds.cement_age.value;
  if (repairs.mortar > Volume()) return full;
  std::optional<units::Duration> wait;
  for (const Region& region : q.regions) {
    if (region.coating != ExistingCoating::none || !region.age_of_cement) continue;
    if (*region.age_of_cement >= full) continue;
    wait = std::max(wait.value_or(units::Duration()), full - *region.age_of_cement);
  }
  return wait;
}

}  // namespace basinwright::preparation
