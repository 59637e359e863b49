// The earliest finish, by forward label setting over slots; costs and splits do not matter here.
#pragma once

#include <optional>
#include <vector>

#include "chain_reach.hpp"
#include "stages.hpp"
#include "unit_starts.hpp"

namespace basinwright::schedule {

class EarliestFinish {
 public:
  EarliestFinish(const Setting& setting, const ChainReach& reach, const UnitStarts& starts);

  /// The smallest finish that any programme has, if it is no later than `latest`.
  [[nodiscard]] std::optional<Slot> find(Slot latest);

 private:
  // Where the next coat of a section may start, and where a rework before it.
  struct Side {
    Slot from = never;
    Slot until = no_slot;
    Slot rework_from = never;
  };
  struct Label {
    std::size_t stage = 0;
    std::size_t sides = 0;  // first of its sides
    int next = -1;          // with the same birth
  };

  [[nodiscard]] Side* sides(int label) { return &sides_[labels_[index(label)].sides]; }
  [[nodiscard]] static std::size_t index(int label) { return static_cast<std::size_t>(label); }
  void plant();
  void paint_bare(Slot start);
  int copy(int parent, std::size_t stage);
  int blank(std::size_t stage);
  void try_units(int label, Slot slot);
  void try_reworks(int label, Slot slot);
  void place(int child, std::size_t section, Slot start);
  void give_birth(int label, Slot slot);
  [[nodiscard]] bool settle(int label, Slot slot);
  [[nodiscard]] bool hopeless(int label, Slot slot) const;
  [[nodiscard]] bool dead(int label, Slot slot) const;
  [[nodiscard]] bool covers(int better, int worse, Slot slot) const;
  void admit(int label, Slot slot);
  void visit(Slot slot);
  [[nodiscard]] Slot rework_open(Slot from) const;

  const Setting& setting_;
  const ChainReach& reach_;
  const UnitStarts& starts_;
  Stages stages_;
  std::vector<Label> labels_;
  std::vector<Side> sides_;
  std::vector<int> births_;                // by slot, the last of a list
  std::vector<std::vector<int>> waiting_;  // by stage
  std::vector<Slot> tail_;  // by unit: from its start to the end of everything, at least
  Slot best_ = never;  // only better finishes count
};

}  // namespace basinwright::schedule
