// How many coats are done on every section, by number.
#pragma once

#include <cstddef>
#include <vector>

#include "setting.hpp"

namespace basinwright::schedule {

/// Numbers the stages as they turn up, so that labels can be kept by stage.
class Stages {
 public:
  using Coats = std::vector<std::size_t>;

  explicit Stages(const Setting& setting) : setting_(setting) {
    const std::size_t usual = setting.coats() * setting.sections() + 1;
    coats_.reserve(usual);
    left_.reserve(usual);
    without_.reserve(usual * setting.sections());
  }

  [[nodiscard]] std::size_t number(Coats done);
  [[nodiscard]] std::size_t count() const { return coats_.size(); }
  [[nodiscard]] const Coats& done(std::size_t stage) const { return coats_[stage]; }
  /// The stage with one coat less on a section.
  [[nodiscard]] std::size_t without(std::size_t stage, std::size_t section);
  /// May the last coat of `section` be the latest unit of this stage?
  [[nodiscard]] bool may_remove(std::size_t stage, std::size_t section) const;
  /// Painting slots left from a stage on.
  [[nodiscard]] Slot left(std::size_t stage) const { return left_[stage]; }

 private:
  const Setting& setting_;
  std::vector<Coats> coats_;
  std::vector<Slot> left_;
  std::vector<std::size_t> without_;  // by stage and section; 0 is unknown, else one more
};

}  // namespace basinwright::schedule
