#include "basinwright/sequence/memory.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <mutex>
#include <optional>
#include <unordered_map>
#include <utility>
#include <vector>

#include "instance.hpp"
#include "known.hpp"
#include "memory_key.hpp"
#include "pressed.hpp"
#include "recent.hpp"
#include "repeats.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

constexpr units::Duration quarter = units::minutes(15);

// Only what the search can tell apart.
ProgrammeQuestion in_quarters(const ProgrammeQuestion& given) {
  ProgrammeQuestion q = given;
  const bool etched_at_once = etch_groups(q) == 1;
  for (Work& work : q.work) {
    // An etch in groups is divided before it is rounded; at the handover one person counts.
    if (is_etch(work.task) && !etched_at_once) continue;
    const int people = work.task == "handover" ? 1 : std::max(1, work.people);
    const int quarters = std::max(1, quarters_up(work.person_hours / people));
    work.person_hours = quarter * quarters * people;
  }
  for (units::Duration& hours : q.rework.person_hours) {
    const int people = std::max(1, q.rework.people);
    hours = quarter * std::max(1, quarters_up(hours / people)) * people;
  }
  const int drained = std::max(1, quarters_up(q.water / q.drain_pump));
  const int filled = std::max(1, quarters_up(q.water / q.tap));
  q.water = units::cubic_metres(1);
  q.drain_pump = q.water / (quarter * drained);
  q.tap = q.water / (quarter * filled);
  return q;
}

// The longest drain that leaves all else of a programme as it is.
std::int64_t longest_drain(const ProgrammeQuestion& q, const std::vector<Booking>& bookings) {
  const auto drain = std::ranges::find(bookings, "drain", &Booking::task);
  if (drain == bookings.end()) return std::numeric_limits<std::int64_t>::max();
  const auto next = std::find_if(
      drain + 1, bookings.end(), [&](const Booking& b) { return b.start >= drain->end; });
  // Before a coat the shell is vacuumed, which the room would count twice.
  if (next == bookings.end() || is_outside_chain(next->task)) return drain_quarters(q);
  return next->start.quarters() - drain->start.quarters();
}

// Where weeks that are alike have no room, other first days and drains find none either.
Region region_without_dates(const ProgrammeQuestion& q, const Blocked& blocked) {
  const std::int64_t drain = drain_quarters(q);
  std::optional<FirstDays> alike;
  if (blocked.weeks_told) alike = without_dates_alike(q, *blocked.weeks_told);
  if (!alike) return {q.start, q.start, drain, drain};
  return {alike->from, alike->to, drain - quarters_apart, drain + quarters_apart};
}

// Days off before the first, as long as all is over within the days looked at: who starts on them
// starts with the next working day.
dates::Date earliest_start(const ProgrammeQuestion& q, const Programme& programme) {
  dates::Date start = q.start;
  const dates::Date last = programme.fill_start.date() - std::chrono::days{q.most_days};
  for (dates::Date before = start; before + std::chrono::days{7} > q.start; start = before) {
    before -= std::chrono::days{1};
    if (q.calendar.works_on(before) || before <= last) break;
  }
  return start;
}

// Who begins earlier, or needs less time for the drain, could do all that one who begins later or
// needs more can: the same programmes stand to choice and more. Of equally good ones the pool
// stands empty least, the tasks up to the drain come last and the others first, whatever the start
// and the drain. So the best programme stays the best until a start forbids its first work, or a
// drain does not fit before the next task.
Region region_of(const ProgrammeQuestion& q, const Programme& programme) {
  const std::int64_t drain = drain_quarters(q);
  // A clock that is put on in between makes hours of the clock and hours of work differ; young
  // cement is counted from the start; and without the wait for the dryness test a first coat may
  // come so soon that it matters from when on rain is looked at.
  const bool rain_counts = q.weather.record != nullptr &&
                           std::ranges::find(q.work, "dryness-test", &Work::task) == q.work.end();
  const bool alone = !q.calendar.clock_changes.empty() || q.cement_wait > units::Duration();
  if (!alone && !programme.feasible) return region_without_dates(q, *programme.blocked_by);
  if (alone || rain_counts) return {q.start, q.start, drain, drain};
  return {earliest_start(q, programme),
          programme.start.date(),
          drain,
          longest_drain(q, programme.bookings)};
}

}  // namespace

struct Memory::Store {
  explicit Store(std::size_t room) : programmes(room) {}

  std::mutex lock;
  Recent programmes;
  std::unordered_map<std::string, std::uint32_t> numbers;  ///< Of what many jobs have in common.
  std::uint32_t last_number = 0;
  std::map<std::pair<std::uint32_t, dates::Date>, dates::Moment> fills;
  std::size_t looked_for = 0;
  /// By number and shell lag.
  std::map<std::pair<std::uint64_t, units::Duration>, std::shared_ptr<const ReadWeather>> read;

  // Numbers are never given twice, so that what is remembered under a forgotten one is not found.
  std::uint32_t number(std::string common) {
    constexpr std::size_t most = 256;
    const std::scoped_lock hold(lock);
    if (const auto it = numbers.find(common); it != numbers.end()) return it->second;
    if (numbers.size() == most) numbers.clear();
    return numbers[std::move(common)] = ++last_number;
  }

  // The answer to a question under a key, if it is known.
  /// @param likely set to what the answers were for other starts and drains, where there are any
  std::optional<std::string> recall(const std::string& key,
                                    dates::Date start,
                                    int drain,
                                    Likely& likely) {
    Like like(start, drain);
    const std::scoped_lock hold(lock);
    const std::string_view found = programmes.find(key, [&](std::string_view bytes) {
      const Known known = known_in(bytes);
      like.met(known);
      return known.region.holds(start, drain);
    });
    if (!found.empty()) return std::string(known_in(found).answer);
    ++looked_for;
    likely = like.likely();
    return {};
  }

  // What holds for a shorter and for a longer drain from one start holds for all between: the
  // longer it takes, the fewer programmes there are, so that each step of the search says yes up to
  // one length and no from there on. (A later start looks further ahead, and may find more.)
  /// @param number, start of the question
  void remember(const std::string& key, std::uint32_t number, dates::Date start, Known found) {
    const std::scoped_lock hold(lock);
    if (found.fill_start) {
      constexpr std::size_t most = 1024;
      if (fills.size() >= most) fills.clear();
      fills[{number, start}] = *found.fill_start;
    }
    const std::string_view like = programmes.find(key, [&](std::string_view bytes) {
      const Known known = known_in(bytes);
      return known.answer == found.answer && known.region.start == found.region.start &&
             known.region.last_start == found.region.last_start;
    });
    if (!like.empty()) {
      const Region& known = known_in(like).region;
      found.region.drain = std::min(found.region.drain, known.drain);
      found.region.longest_drain = std::max(found.region.longest_drain, known.longest_drain);
    }
    programmes.put(key, bytes_of(found));
  }

  // When the last job was filled that had as much in common and that start, or the next later one.
  std::optional<dates::Moment> last_fill(std::uint32_t number, dates::Date start) {
    const std::scoped_lock hold(lock);
    const auto it = fills.lower_bound({number, start});
    if (it == fills.end() || it->first.first != number) return {};
    return it->second;
  }

  std::shared_ptr<const ReadWeather> reading(const SiteWeather& weather, std::uint64_t number) {
    const std::pair place{number, weather.rules.shell_lag.value};
    const std::scoped_lock hold(lock);
    if (const auto it = read.find(place); it != read.end()) return it->second;
    constexpr std::size_t most = 8;  // a record for all jobs, a few rate books
    if (read.size() > most) read.clear();
    return read[place] =
               std::make_shared<const ReadWeather>(*weather.record, weather.rules.shell_lag);
  }
};

Memory::Memory(std::size_t room) : store_(std::make_unique<Store>(room)) {}
Memory::~Memory() = default;

Programme Memory::programme(const ProgrammeQuestion& question, std::uint64_t weather) {
  if (question.past || question.weather.record == nullptr || question.weather.record->empty())
    return sequence::programme(question);
  const auto read = store_->reading(question.weather, weather);
  ProgrammeQuestion asked = question;
  asked.weather.read = read.get();
  return sequence::programme(asked);
}

Programme Memory::brief(const ProgrammeQuestion& question, std::uint64_t weather) {
  if (question.past || question.reasons) return programme(question, weather);
  const std::uint32_t number = store_->number(common_key(question, weather));
  const std::string key = own_key(question, number);
  Likely likely;
  const int drain = drain_quarters(question);
  if (const auto known = store_->recall(key, question.start, drain, likely))
    return unpressed(question, *known);
  ProgrammeQuestion asked = in_quarters(question);
  asked.likely = likely;
  if (question.weather.record == nullptr) {
    asked.likely.fill_start.reset();  // The first look is far enough for most.
  } else if (!likely.fill_start) {
    asked.likely.fill_start = store_->last_fill(number, question.start);
  }
  Programme found = programme(asked, weather);
  const auto bytes = pressed(asked, found);
  if (!bytes) return found;
  Known known{region_of(asked, found), *bytes};
  if (found.feasible) known.fill_start = found.fill_start;
  store_->remember(key, number, question.start, known);
  return unpressed(question, *bytes);
}

std::size_t Memory::looked_for() const {
  const std::scoped_lock hold(store_->lock);
  return store_->looked_for;
}

}  // namespace basinwright::sequence
