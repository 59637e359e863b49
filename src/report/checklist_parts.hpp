// Parts that the crew's sheets share.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/job/mixing_plan.hpp"
#include "sections.hpp"

namespace basinwright::report {

/// A step of the route on one day.
struct StepOnDay {
  const preparation::Step* step = nullptr;
  const sequence::Booking* booking = nullptr;  ///< Nothing without dates.
  bool first = true;                           ///< Its first day,
  bool last = true;                            ///< its last.
};

/// What is done, what is at hand, what is read, who signs; the cautions first.
[[nodiscard]] document::Section step_section(const Subject& s,
                                             const StepOnDay& at,
                                             const std::vector<std::string>& cautions,
                                             const std::vector<job::PaintingMorning>& mornings);

/// The cautions of the plan that matter at these tasks, each once.
[[nodiscard]] std::vector<std::string> caution_codes(const Subject& s,
                                                     const std::vector<std::string>& tasks);
/// A caution as a block of its own, said for a task.
[[nodiscard]] document::Paragraph caution_paragraph(const Subject& s,
                                                    const std::string& code,
                                                    std::string_view task = {});

/// Air, shell, humidity, dew point and margin with their limits, and columns to write in.
[[nodiscard]] document::Table readings_table(const Subject& s,
                                             const std::vector<std::string>& columns);
/// Who did it, who saw it, when.
[[nodiscard]] document::Table signatures();

/// One page each: acid, coating, morning, evening.
[[nodiscard]] std::vector<document::Section> day_cards(
    const Subject& s, const std::vector<job::PaintingMorning>& mornings);

}  // namespace basinwright::report
