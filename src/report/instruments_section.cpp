// What the crew reads with, each with the rule for its count.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sections.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Table;

class Lister {
 public:
  explicit Lister(const Subject& s) : s_(s) {
    table_.columns = {{"item", "Item"}, {"count", "Count", Align::right}, {"rule", "Rule"}};
  }

  Table list() {
    const auto painters = static_cast<std::int64_t>(std::lround(s_.job.crew.painters.value));
    add("thermometer for the air", 1, "1 a job");
    add("surface thermometer", 1, "1 a job");
    add("hygrometer", 1, "1 a job");
    add("wet-film comb", painters, "1 a painter");
    if (s_.plan.quantities.etch)
      add("pH meter, calibrated, beside the paper", 1, "1 a job with acid");
    if (has_caution("deep-shell"))
      add("gas meter for oxygen, carbon dioxide and vapours",
          1,
          "1 where the shell is deep, tented or covered");
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
  document::Section section{"instruments", "Instruments", {}, true};
  section.blocks.emplace_back(Lister(s).list());
  return section;
}

}  // namespace basinwright::report
