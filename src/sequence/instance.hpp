#pragma once

#include <string>
#include <vector>

#include "basinwright/schedule/problem.hpp"
#include "basinwright/sequence/programme.hpp"
#include "cure.hpp"
#include "outdoors.hpp"
#include "quarters.hpp"
#include "setting.hpp"

namespace basinwright::sequence {

/// The work after the last coat for one end of it.
struct Tail {
  std::int32_t unmask_start = 0, unmask_end = 0;
  std::int32_t cure_end = 0;
  std::int32_t refit_start = 0, refit_end = 0;
  std::int32_t fill_start = 0;
};

/// What a chain task of the problem stands for.
struct ChainEntry {
  std::string task;
  std::string section;
  int people = 0;
  units::Duration wait;  ///< The lag before it.
  bool cement = false;   ///< Held by young cement.
};

/// Walls to last rinse go in one shift; a shell too large for that is etched in so many groups.
[[nodiscard]] int etch_groups(const ProgrammeQuestion& question);

/// Quarters that the drain takes.
[[nodiscard]] std::int32_t drain_quarters(const ProgrammeQuestion& question);

/// The job as the general problem, and what is needed to read the answer back.
class Instance {
 public:
  Instance(const ProgrammeQuestion& question, const Setting& setting);

  [[nodiscard]] const schedule::Problem& problem() const { return problem_; }
  [[nodiscard]] const dates::Timeline& timeline() const { return timeline_; }
  [[nodiscard]] const std::vector<ChainEntry>& chain() const { return chain_; }
  [[nodiscard]] const OpenSlots& open_work() const { return open_work_; }
  [[nodiscard]] const Cure& cure() const { return cure_; }
  /// Slots in which the crew works.
  [[nodiscard]] const schedule::Calendar& work_calendar() const { return work_slots_; }
  [[nodiscard]] const Outdoors& outdoors() const { return outdoors_; }
  /// Slots in which the calendar alone would allow painting.
  [[nodiscard]] const schedule::Calendar& painting_calendar() const { return painting_; }
  /// The tail after a last coat that ends at a slot; nothing when it leaves the horizon.
  [[nodiscard]] std::optional<Tail> tail(std::int32_t end) const;
  /// The same where it is known when the coat has cured.
  [[nodiscard]] std::optional<Tail> tail(std::int32_t end, std::int32_t cure_end) const;
  /// Quarters to vacuum a section before each coat.
  [[nodiscard]] std::int32_t vacuum_quarters(std::size_t section) const;
  /// People on site who do not paint.
  [[nodiscard]] int spare_hands() const;
  /// Quarters the spare hands take to vacuum a section while another is painted; 0 without any.
  [[nodiscard]] std::int32_t vacuum_beside(std::size_t section) const;
  /// Quarters of vacuuming before the first section of a morning.
  [[nodiscard]] std::int32_t ready() const { return ready_; }
  [[nodiscard]] int unmask_people() const { return unmask_people_; }
  /// Task and section of a booking, as the programme calls them.
  [[nodiscard]] std::pair<std::string, std::string> named(const schedule::Booking& b) const;
  /// What is done of a task of the tail; nothing when it is still to come.
  [[nodiscard]] const Done* done(std::string_view task) const;
  [[nodiscard]] std::int32_t now() const { return now_; }
  /// When something done ended; of work going on, when it will as planned, but not before now.
  [[nodiscard]] std::int32_t expected_end(const Done& done, std::int32_t start) const;
  /// Person-hours of a task's first entry; none when the route has no such task.
  [[nodiscard]] const Work* find(std::string_view task) const;

 private:
  void build_calendars();
  [[nodiscard]] std::size_t calendar_of(std::string_view task) const;
  void build_chain();
  void add_etch();
  void add_task(const Work& work, schedule::Task task);
  void build_units();
  void build_finish();
  void weigh();
  void build_past();
  void offer_rework();
  void offer_again();
  [[nodiscard]] std::size_t dry_work() const;  ///< The calendar of work that needs a dry shell.
  void take_fact(const Done& done);
  void forgive_waits();

  // What the tail is made of, looked up once.
  struct TailWork {
    const Work* unmask = nullptr;
    const Work* refit = nullptr;
    const Done* unmask_done = nullptr;
    const Done* refit_done = nullptr;
    const Done* fill_done = nullptr;
    std::int32_t unmask_quarters = 0;
    std::int32_t refit_quarters = 0;
  };
  [[nodiscard]] TailWork tail_work() const;

  const ProgrammeQuestion& q_;
  TailWork tail_work_;
  Setting setting_;
  dates::Timeline timeline_;
  std::vector<char> work_slots_;
  OpenSlots open_work_;
  Outdoors outdoors_;
  Cure cure_;
  schedule::Calendar painting_;
  std::int32_t ready_ = 0;  ///< Quarters of vacuuming before the first section of a morning.
  schedule::Problem problem_;
  std::vector<ChainEntry> chain_;
  std::int32_t lag_ = 0;  ///< Before the next task of the chain.
  int unmask_people_ = 0;
  std::int32_t now_ = 0;
  std::int32_t painted_until_ = 0;  ///< End of the last unit that is done.
};

}  // namespace basinwright::sequence
