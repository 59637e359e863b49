#include "basinwright/sequence/memory.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <mutex>
#include <optional>
#include <unordered_map>
#include <utility>
#include <vector>

#include "bytes.hpp"
#include "instance.hpp"
#include "memory_key.hpp"
#include "pressed.hpp"
#include "recent.hpp"
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

/// The lengths of the drain for which an answer holds, in quarters, both included.
struct Drains {
  std::int64_t from = 0, until = 0;
};

/// An answer for some lengths of the drain.
struct Known {
  Drains drains;
  std::string answer;
};

// Who needs less time for the drain could do all that one who needs more can: the same programmes
// stand to choice and more. Nothing but the room for it before the next task depends on how long it
// takes (of equally good programmes the drain starts late, not ends late), so that the best
// programme stays the best until the drain needs more than that room.
Drains drains_of(const ProgrammeQuestion& q, const Programme& programme) {
  if (std::ranges::find(q.work, "drain", &Work::task) == q.work.end())
    return {0, std::numeric_limits<std::int64_t>::max()};
  const Drains only{drain_quarters(q), drain_quarters(q)};
  // A clock that is put on in between makes hours of the clock and hours of work differ.
  if (!programme.feasible || !q.calendar.clock_changes.empty()) return only;
  const auto drain = std::ranges::find(programme.bookings, "drain", &Booking::task);
  const auto next = std::find_if(
      drain + 1, programme.bookings.end(), [&](const Booking& b) { return b.start >= drain->end; });
  // Before a coat the shell is vacuumed, which the room would count twice.
  if (next == programme.bookings.end() || is_outside_chain(next->task)) return only;
  return {only.from, next->start.quarters() - drain->start.quarters()};
}

std::vector<Known> known_in(std::string_view bytes) {
  std::vector<Known> all;
  for (ByteReader in(bytes); !in.at_end();) {
    Known& known = all.emplace_back();
    known.drains = {in.number(), in.number()};
    known.answer = in.text();
  }
  return all;
}

std::string bytes_of(const std::vector<Known>& all) {
  ByteWriter out;
  for (const Known& known : all) {
    out.number(known.drains.from);
    out.number(known.drains.until);
    out.text(known.answer);
  }
  return out.take();
}

// What holds for a shorter and for a longer drain holds for all between: the longer it takes, the
// fewer programmes there are, so that each step of the search says yes up to one length and no from
// there on.
void learn(std::vector<Known>& all, Known found) {
  const auto same = std::ranges::find(all, found.answer, &Known::answer);
  if (same == all.end()) {
    constexpr std::size_t most = 8;
    if (all.size() == most) all.erase(all.begin());
    all.push_back(std::move(found));
    return;
  }
  same->drains.from = std::min(same->drains.from, found.drains.from);
  same->drains.until = std::max(same->drains.until, found.drains.until);
}

}  // namespace

struct Memory::Held {
  explicit Held(std::size_t room) : programmes(room) {}

  std::mutex lock;
  Recent programmes;
  std::unordered_map<std::string, std::uint32_t> numbers;  ///< Of what many jobs have in common.
  std::uint32_t last_number = 0;
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
  std::optional<std::string> recall(const std::string& key, int drain) {
    const std::scoped_lock hold(lock);
    for (ByteReader in(programmes.find(key)); !in.at_end();) {
      const std::int64_t from = in.number(), until = in.number();
      const std::string_view answer = in.text();
      if (from <= drain && drain <= until) return std::string(answer);
    }
    return {};
  }

  void remember(const std::string& key, Known found) {
    const std::scoped_lock hold(lock);
    std::vector<Known> all = known_in(programmes.find(key));
    learn(all, std::move(found));
    programmes.put(key, bytes_of(all));
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

Memory::Memory(std::size_t room) : held_(std::make_unique<Held>(room)) {}
Memory::~Memory() = default;

Programme Memory::programme(const ProgrammeQuestion& question, std::uint64_t weather) {
  if (question.past || question.weather.record == nullptr || question.weather.record->empty())
    return sequence::programme(question);
  const auto read = held_->reading(question.weather, weather);
  ProgrammeQuestion asked = question;
  asked.weather.read = read.get();
  return sequence::programme(asked);
}

Programme Memory::brief(const ProgrammeQuestion& question, std::uint64_t weather) {
  if (question.past || question.reasons) return programme(question, weather);
  const std::string key = own_key(question, held_->number(common_key(question, weather)));
  const int drain = drain_quarters(question);
  if (const auto known = held_->recall(key, drain)) return unpressed(question, *known);
  const ProgrammeQuestion asked = in_quarters(question);
  Programme found = programme(asked, weather);
  auto bytes = pressed(asked, found);
  if (!bytes) return found;
  Programme answer = unpressed(question, *bytes);
  held_->remember(key, {drains_of(asked, found), std::move(*bytes)});
  return answer;
}

}  // namespace basinwright::sequence
