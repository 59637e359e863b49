// What the crew reads with, each with the rule for its count.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/materials.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Table;

class Lister {
 public:
  explicit Lister(const Subject& s) : s_(s) {
    table_.columns = {
        {"item", say::item}, {"count", say::count, Align::right}, {"rule", say::rule}};
  }

  Table list() {
    const auto painters = static_cast<std::int64_t>(std::lround(s_.job.crew.painters.value));
    add(say::thermometer_for_the_air, 1, say::one_a_job);
    add(say::surface_thermometer, 1, say::one_a_job);
    add(say::hygrometer, 1, say::one_a_job);
    add(say::wet_film_comb, painters, say::one_a_painter);
    if (s_.plan.quantities.etch)
      add(say::ph_meter_calibrated_beside_the_paper, 1, say::one_a_job_with_acid);
    if (has_caution("deep-shell"))
      add(say::gas_meter_for_oxygen_carbon_dioxide, 1, say::one_where_the_shell_is_deep_or_covered);
    return std::move(table_);
  }

 private:
  void add(const char* item, std::int64_t count, const char* rule) {
    table_.rows.push_back({{Cells::words(item), Cells::count(count), Cells::words(rule)}});
  }
  [[nodiscard]] bool has_caution(const char* code) const {
    return std::ranges::any_of(s_.plan.cautions,
                               [&](const job::Caution& c) { return c.code == code; });
  }

  const Subject& s_;
  Table table_;
};

}  // namespace

document::Section instruments_section(const Subject& s) {
  document::Section section{"instruments", say::instruments, {}, true};
  section.blocks.emplace_back(Lister(s).list());
  return section;
}

}  // namespace basinwright::report
