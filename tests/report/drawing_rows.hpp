// Drawings of the reference shells, without a whole plan behind them.
#pragma once

#include <deque>
#include <string>
#include <vector>

#include "basinwright/shell/take_off.hpp"
#include "report/drawing.hpp"
#include "shell/rows.hpp"
#include "support/catch.hpp"

namespace drawn {

using namespace basinwright;

/// A job with its take-off and nothing else planned.
struct Sketchbook {
  job::Job job;
  job::RateBook rates;
  job::Plan plan;
  units::System system = units::System::metric;
  document::Paper paper = document::Paper::a4;

  explicit Sketchbook(const std::vector<shell::Pool>& pools) {
    job.heading.number = "BW-0001";
    job.heading.client.name = "Household Nine";
    for (const shell::Pool& pool : pools) {
      trace::Trace off;
      const auto measured = shell::take_off(pool, off);
      const auto& taken = std::get<shell::Measured>(measured).take_off;
      job.bodies.push_back({pool, {}, ""});
      plan.take_off.bodies.push_back({pool.name, taken, {}});
      plan.take_off.painted += taken.painted_area;
    }
  }

  /// Cuts the coat into sections of so many square metres, the last taking the rest.
  void cut(const std::vector<double>& areas) {
    for (const double a : areas) {
      plan.quantities.cut.sections.push_back(units::square_metres(a));
      plan.quantities.cut.kits.push_back(1);
    }
  }

  [[nodiscard]] report::Subject subject() const { return {job, rates, plan, system, paper}; }
  [[nodiscard]] document::Drawing drawing(std::size_t body = 0) const {
    return report::take_off_drawing(subject(), body);
  }
};

inline Sketchbook of_row(const std::string& name) {
  return Sketchbook({rows::pool(rows::row(name).at("pool"))});
}

template <class Kind>
std::vector<Kind> all(const document::Drawing& drawing, const std::string& name) {
  std::vector<Kind> found;
  for (const auto& mark : drawing.marks) {
    const auto* kind = std::get_if<Kind>(&mark);
    if (kind != nullptr && kind->name == name) found.push_back(*kind);
  }
  return found;
}

inline std::vector<std::string> texts(const document::Drawing& drawing, const std::string& name) {
  std::vector<std::string> found;
  for (const auto& label : all<document::Label>(drawing, name)) found.push_back(label.text);
  return found;
}

inline bool contains(const std::vector<std::string>& texts, const std::string& wanted) {
  return std::ranges::find(texts, wanted) != texts.end();
}

}  // namespace drawn
