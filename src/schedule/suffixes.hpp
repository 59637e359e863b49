// The best ways to end a programme, by backward label setting over slots.
#pragma once

#include <cstdint>
#include <vector>

#include "painting.hpp"
#include "unit_starts.hpp"

namespace basinwright::schedule {

/// For problems in which coats may be reworked: a label a start. `ZoneSuffixes` does the others.
class Suffixes {
 public:
  Suffixes(const Setting& setting,
           const UnitStarts& starts,
           const ChainReach& reach,
           Question question);

  /// Sets all labels from the last end in question back to the first start; false when it stopped
  /// because there were more than `effort`.
  bool run(std::size_t effort = static_cast<std::size_t>(-1));
  [[nodiscard]] std::size_t labels() const { return labels_.size(); }
  /// Every way not bettered by another.
  [[nodiscard]] const std::vector<Painting>& paintings() const { return paintings_; }
  /// Can a prefix be ended for exactly `rest`? Only for `rest` that is not above the optimum.
  [[nodiscard]] bool ends_for(const Prefix& prefix, const Tally& rest);

 private:
  // What a section's next coat asks of the coat before: a start in [from, until], or a rework that
  // ends in [rework_from, rework_until].
  struct Side {
    Slot from = never;
    Slot until = no_slot;
    Slot rework_from = never;
    Slot rework_until = no_slot;
  };
  static constexpr Side free_side{no_slot, never, no_slot, never};  // asks nothing
  struct Label {
    std::size_t stage = 0;  // coats done before it
    std::size_t sides = 0;
    Slot start = 0;       // of its first work
    Slot died = no_slot;  // at this slot and below another is as good
    Slot wet_until = never;
    Slot anchor_from = 0;
    std::uint64_t open_coats = 0;  // whose section before must come on the start's date, or split
    Tally tally;
    int next = -1;  // with the same start
  };

  [[nodiscard]] static std::size_t index(int label) { return static_cast<std::size_t>(label); }
  [[nodiscard]] Side* sides(int label) { return &sides_[labels_[index(label)].sides]; }
  int copy(int parent);
  [[nodiscard]] bool asked(Slot end) const { return schedule::asked(setting_, question_, end); }
  void root(Slot end);
  void visit(Slot end);
  void try_units(int label, Slot end);
  void try_reworks(int label, Slot end);
  void work(int child, int parent, const Stretch& stretch);
  void place(int child, std::size_t section, Slot start);
  void ask_fact(Side& side, std::size_t section) const;
  [[nodiscard]] Side ask(std::size_t coat, std::size_t section, Slot start) const;
  void count_splits(int child, std::size_t coat, std::size_t section, Slot start);
  [[nodiscard]] std::size_t elder(int parent, std::size_t section, Booking::What what);
  void give_birth(int label, std::size_t elder);
  void drop_last();
  [[nodiscard]] bool settle(int label);
  void settle_rework(Side& side, std::size_t section, std::size_t coat, Slot start) const;
  [[nodiscard]] bool complete(int label);
  [[nodiscard]] Tally tally_at(const Label& label, Slot end) const;
  [[nodiscard]] bool cheaper(const Label& better, const Label& worse, Slot end) const;
  [[nodiscard]] bool wider(const Label& older, const Label& fresh) const;
  [[nodiscard]] bool wider_by(const Label& fresh, const Label& older, Slot end) const;
  [[nodiscard]] bool bettered(int elder, const Label& fresh) const;
  [[nodiscard]] bool dead(int label, Slot end) const;
  void admit(int label, Slot end);
  [[nodiscard]] bool meets(const Label& label, const Prefix& prefix) const;
  [[nodiscard]] Tally joined(const Label& label, const Prefix& prefix) const;

  const Setting& setting_;
  const UnitStarts& starts_;
  Slot earliest_anchor_;
  Question question_;
  Stages stages_;
  std::vector<Label> labels_;
  std::vector<Side> sides_;
  std::vector<int> elders_;                // by side and kind of work
  std::vector<int> births_;                // by start, the last of a list
  std::vector<std::vector<int>> waiting_;  // by stage
  std::vector<std::vector<int>> kept_;     // by stage, all that ever waited, starts descending
  std::vector<Painting> paintings_;
};

}  // namespace basinwright::schedule
