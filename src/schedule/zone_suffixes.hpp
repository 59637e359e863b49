// The best ways to end a programme without reworks, by backward label setting over dates.
#pragma once

#include <cstdint>
#include <deque>
#include <vector>

#include "painting.hpp"
#include "unit_starts.hpp"
#include "zone.hpp"

namespace basinwright::schedule {

/// A label is not one start but all starts of its units inside stretches of the same price: what
/// they ask of the work before is a zone over the starts of the last coats done, the clock, the
/// chain's wet end and the anchor's end. The labels are as many as orders and dates, not as slots.
class ZoneSuffixes {
 public:
  ZoneSuffixes(const Setting& setting,
               const UnitStarts& starts,
               const ChainReach& reach,
               Question question);

  /// Sets all labels from the last date in question back to the first; false when it stopped
  /// because there were more than `effort`.
  bool run(std::size_t effort);
  [[nodiscard]] std::size_t labels() const { return count_; }
  /// Every way not bettered by another.
  [[nodiscard]] const std::vector<Painting>& paintings() const { return paintings_; }
  /// Can a prefix be ended for exactly `rest`? Only for `rest` that is not above the optimum.
  [[nodiscard]] bool ends_for(const Prefix& prefix, const Tally& rest);

 private:
  // Starts of one unit in a row on one date, all at the same price, [from, until].
  struct Piece {
    Slot from = 0;
    Slot until = 0;
    std::int64_t labour = 0;
  };
  // The slots of a date, [from, to).
  struct Day {
    Slot from = 0;
    Slot to = 0;
  };
  struct Label {
    std::size_t stage = 0;         // coats done before it
    Zone zone;                     // the starts of these last coats, the clock, wet end and anchor
    std::int32_t date = no_date;   // of its first work
    std::uint64_t open_coats = 0;  // whose section before must come on that date, or split
    Tally tally;
  };
  using Labels = std::vector<Label>;

  [[nodiscard]] static std::size_t unit(std::size_t section) { return section + 1; }
  [[nodiscard]] bool moving(const Stages::Coats& done, std::size_t section) const {
    return done[section] > setting_.standing.sections[section].done;
  }
  [[nodiscard]] bool complete(std::size_t stage) const;
  [[nodiscard]] std::vector<Day> days() const;
  [[nodiscard]] bool open(Day day);
  void clean();
  void clean(Labels& labels);
  void roots(Day day);
  void root(Reach ends);
  void expand(const Label& label);
  void try_unit(const Label& after, std::size_t section, const Piece& piece);
  void price(Label& label, const Label& after, const Piece& piece) const;
  void count_splits(Label& label, std::size_t coat, std::size_t section) const;
  [[nodiscard]] bool ask_chain(Zone& zone, std::size_t section) const;
  [[nodiscard]] bool ask_coat(Zone& zone, std::size_t coat, std::size_t section) const;
  [[nodiscard]] bool settle(Label& label) const;
  [[nodiscard]] bool settle_order(Zone& zone, const Stages::Coats& done) const;
  [[nodiscard]] bool settle_starts(Zone& zone, const Stages::Coats& done) const;
  [[nodiscard]] bool settle_chain(Zone& zone, const Stages::Coats& done) const;
  [[nodiscard]] bool settle_clock(Zone& zone, std::size_t stage) const;
  void read_off(const Label& label, std::size_t section);
  [[nodiscard]] bool cheaper(const Label& better, const Label& worse) const;
  [[nodiscard]] bool bettered(const Label& worse, const Label& better) const {
    return cheaper(better, worse) && better.zone.holds(worse.zone);
  }
  void admit(Label label);
  [[nodiscard]] bool meets(const Label& label, const Prefix& prefix) const;
  [[nodiscard]] Tally joined(const Label& label, const Prefix& prefix) const;

  const Setting& setting_;
  const UnitStarts& starts_;
  const ChainReach& reach_;
  bool wet_chain_;  // first coats wait for something to dry
  Question question_;
  Stages stages_;
  std::size_t clock_, wet_, anchor_, spare_;        // variables after those of the sections
  std::int32_t today_ = no_date;                    // the date being looked at
  Slot last_end_ = 0;                               // of all work on it
  std::vector<std::vector<Piece>> pieces_;          // of it, by coat and section
  std::vector<std::vector<std::size_t>> by_level_;  // stages by units done
  std::deque<Labels> waiting_;                      // by stage
  std::deque<Labels> kept_;                         // by stage, all that ever waited
  std::size_t count_ = 0;
  std::vector<Painting> paintings_;
};

}  // namespace basinwright::schedule
