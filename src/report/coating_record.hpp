// The coating record in the making: what the log proves, and what is missing from it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/sitelog/progress.hpp"
#include "site_parts.hpp"

namespace basinwright::report {

/// A cell that says that nobody recorded it.
[[nodiscard]] inline Cell missing(const std::string& what = "MISSING") {
  return {what, Value(nullptr), Role::caution};
}

/// One coat of one section as it was painted.
struct CoatingUnit {
  std::string task, section;
  const sitelog::Progress* done = nullptr;
  units::Area area;
  /// None of a primer coat by sections: its kits are reckoned for the whole shell.
  std::optional<std::int64_t> planned_kits;
  std::int64_t kits = 0;
  double planned_hours = 0.0, hours = 0.0;
  bool conditions = false, wet_film = false;
};

class CoatingRecord {
 public:
  explicit CoatingRecord(const Site& site);
  document::Document page();

 private:
  using Section = document::Section;
  void add_kits(document::Table& t, bool of_primer) const;
  struct Hours {
    std::string task;
    double used = 0.0, planned = 0.0;
  };
  void gather();
  [[nodiscard]] std::optional<std::int64_t> planned_kits(const std::string& task,
                                                         std::size_t section) const;
  [[nodiscard]] double planned_hours(const std::string& task, std::size_t section) const;
  void use(CoatingUnit& unit) const;
  Section coats();
  Section holds();
  Section used();
  [[nodiscard]] std::vector<Hours> hours_by_task() const;
  [[nodiscard]] double worked(const std::string& name, int planned_people) const;
  Section missing_section();
  Section conditions();
  Section deliveries();
  Section mixes();
  Section films();
  Section waters();
  Section notes();
  Section listed(Section section, document::Table table, const std::string& none);
  [[nodiscard]] static std::int64_t minutes_before() {
    return static_cast<std::int64_t>(sitelog::readings_hold_for.value.in(units::minutes));
  }
  [[nodiscard]] int painters() const {
    return static_cast<int>(site_.subject.job.crew.painters.value);
  }
  void lack(const std::string& what) { missing_.push_back(what); }

  const Site& site_;
  Cells cells_;
  std::vector<sitelog::Entry> entries_;
  std::vector<sitelog::Progress> done_;
  std::vector<CoatingUnit> units_;
  std::vector<std::string> missing_;
};

}  // namespace basinwright::report
