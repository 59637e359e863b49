#include "pressed.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "after_fill.hpp"
#include "bytes.hpp"
#include "instance.hpp"

namespace basinwright::sequence {
namespace {

// What a programme has beside the tasks of its work.
constexpr std::array<std::string_view, 4> beside_the_work{"cure", "fill", "rework", "clean-again"};

// A task's number: its place in the work, or after that among the rest.
std::optional<std::size_t> number_of(const ProgrammeQuestion& q, std::string_view task) {
  const auto work = std::ranges::find(q.work, task, &Work::task);
  if (work != q.work.end()) return static_cast<std::size_t>(work - q.work.begin());
  const auto other = std::ranges::find(beside_the_work, task);
  if (other == beside_the_work.end()) return {};
  return q.work.size() + static_cast<std::size_t>(other - beside_the_work.begin());
}

std::string task_of(const ProgrammeQuestion& q, std::size_t number) {
  if (number < q.work.size()) return q.work[number].task;
  return std::string(beside_the_work.at(number - q.work.size()));
}

// Its end is the question's, where no clock is put on or back in between.
bool ends_by_itself(const ProgrammeQuestion& q, std::string_view task) {
  return task == "drain" && q.calendar.clock_changes.empty();
}

bool follows_the_fill(std::string_view task) {
  return task == "start-up" || task == "handover";
}

bool press(const ProgrammeQuestion& q, const std::vector<Booking>& bookings, ByteWriter& out) {
  std::int64_t before = 0;
  out.number(
      std::ranges::count_if(bookings, [](const Booking& b) { return !follows_the_fill(b.task); }));
  for (const Booking& b : bookings) {
    if (follows_the_fill(b.task)) continue;
    const auto task = number_of(q, b.task);
    if (!task || b.done) return false;
    out.number(static_cast<std::int64_t>(*task));
    out.text(b.section);
    out.number(b.start.quarters() - before);
    before = b.start.quarters();
    const bool told = b.task != "fill" && !ends_by_itself(q, b.task);
    out.number(told ? b.end.quarters() - before : 0);
    out.number(b.people);
    out.number(static_cast<std::int64_t>(b.worked.size()));
    for (const Worked& worked : b.worked) {
      out.number((worked.date - b.start.date()).count());
      out.number(worked.quarters);
    }
  }
  return true;
}

std::vector<Booking> bookings_in(ByteReader& in, const ProgrammeQuestion& q) {
  const auto count = static_cast<std::size_t>(in.number());
  std::vector<Booking> bookings;
  bookings.reserve(count + 2);
  std::int64_t before = 0;
  for (std::size_t i = 0; i < count; ++i) {
    Booking& b = bookings.emplace_back();
    b.task = task_of(q, static_cast<std::size_t>(in.number()));
    b.section = in.text();
    before += in.number();
    b.start = dates::Moment::of_quarters(before);
    b.end = dates::Moment::of_quarters(before + in.number());
    if (ends_by_itself(q, b.task)) b.end = dates::Moment::of_quarters(before + drain_quarters(q));
    b.people = in.small();
    b.worked.resize(static_cast<std::size_t>(in.number()));
    for (Worked& worked : b.worked) {
      worked.date = b.start.date() + std::chrono::days{in.number()};
      worked.quarters = in.small();
    }
  }
  return bookings;
}

void press(const Programme& programme, ByteWriter& out) {
  out.number(programme.split_coats);
  out.real(programme.cure.si());
  out.number(programme.cure_by_temperature ? 1 : 0);
  out.number(programme.cure_by_weather ? 1 : 0);
  out.number(programme.hardener ? 1 + static_cast<int>(programme.hardener->kind) : 0);
  if (programme.hardener) {
    out.real(programme.hardener->low.si());
    out.real(programme.hardener->high.si());
  }
  out.number(programme.rain_before_drain ? 1 : 0);
  if (programme.rain_before_drain) out.real(programme.rain_before_drain->si());
  out.number(programme.rain_after_test ? 1 : 0);
  if (programme.rain_after_test) out.number(programme.rain_after_test->quarters());
}

void read_facts(ByteReader& in, Programme& programme) {
  programme.split_coats = in.small();
  programme.cure = units::Duration::from_si(in.real());
  programme.cure_by_temperature = in.number() != 0;
  programme.cure_by_weather = in.number() != 0;
  if (const int kind = in.small(); kind > 0) {
    const auto low = units::Temperature::from_si(in.real());
    const auto high = units::Temperature::from_si(in.real());
    programme.hardener = Hardener{static_cast<Hardener::Kind>(kind - 1), low, high};
  }
  if (in.number() != 0) programme.rain_before_drain = units::Length::from_si(in.real());
  if (in.number() != 0) programme.rain_after_test = dates::Moment::of_quarters(in.number());
}

void press(const Blocked& blocked, ByteWriter& out) {
  out.text(blocked.task);
  out.text(blocked.section);
  out.number(static_cast<int>(blocked.why));
  out.number(static_cast<std::int64_t>(blocked.together.size()));
  for (const Constraint c : blocked.together) out.number(static_cast<int>(c));
}

Blocked blocked_in(ByteReader& in) {
  Blocked blocked;
  blocked.task = in.text();
  blocked.section = in.text();
  blocked.why = static_cast<Blocked::Why>(in.small());
  blocked.together.resize(static_cast<std::size_t>(in.number()));
  for (Constraint& c : blocked.together) c = static_cast<Constraint>(in.small());
  return blocked;
}

}  // namespace

std::optional<std::string> pressed(const ProgrammeQuestion& question, const Programme& programme) {
  ByteWriter out;
  out.number(programme.feasible ? 1 : 0);
  out.number(static_cast<int>(programme.weather));
  out.number(programme.weather_until.quarters());
  out.number(programme.climatology_beyond ? 1 : 0);
  if (programme.feasible) {
    press(programme, out);
    if (!press(question, programme.bookings, out)) return {};
  } else {
    const Blocked& blocked = *programme.blocked_by;
    if (!blocked.alone.empty() || !blocked.nearest.empty() || !blocked.ways_out.empty()) return {};
    press(blocked, out);
  }
  return out.take();
}

Programme unpressed(const ProgrammeQuestion& question, std::string_view bytes) {
  ByteReader in(bytes);
  Programme programme;
  programme.feasible = in.number() != 0;
  programme.weather = static_cast<WeatherBasis>(in.small());
  programme.weather_until = dates::Moment::of_quarters(in.number());
  programme.climatology_beyond = in.number() != 0;
  if (!programme.feasible) {
    programme.blocked_by = blocked_in(in);
    return programme;
  }
  read_facts(in, programme);
  programme.bookings = bookings_in(in, question);
  add_after_fill(question, programme);
  for (Booking& b : programme.bookings) b.held_by.clear();
  put_in_order(programme);
  return programme;
}

}  // namespace basinwright::sequence
