#include "season_help.hpp"

#include <algorithm>
#include <functional>
#include <numeric>
#include <tuple>
#include <utility>

#include "season_extra_painter.hpp"

namespace basinwright::job {
namespace {

using How = SeasonHelp::How;
using Orders = std::vector<std::size_t>;

constexpr std::int32_t days_a_week = 7;

SeasonHelp by(How how, std::optional<std::size_t> other = {}) {
  SeasonHelp help;
  help.how = how;
  help.other = other;
  return help;
}

class Helper {
 public:
  Helper(const BookedSeason& booked, Season& out)
      : b_(booked), q_(booked.question), answer_(booked.answer), out_(out) {}

  void help_all() {
    constexpr std::size_t most_listed = 4;
    Orders late;
    for (std::size_t j = 0; j < q_.jobs.size(); ++j) {
      if (out_.lines[j].days_late > 0) late.push_back(j);
    }
    std::ranges::stable_sort(late, std::greater(), [&](std::size_t j) {
      return out_.lines[j].days_late * q_.jobs[j].priority;
    });
    if (late.size() > most_listed) late.resize(most_listed);
    if (late.empty()) return;
    again_ = season::book_in_order(b_.posed.problem(), all_in_order());
    for (const std::size_t j : late) {
      out_.lines[j].looked_at = true;
      help(j);
    }
  }

 private:
  void help(std::size_t j) {
    keep(j, by(How::first), season::book_in_order(b_.posed.problem(), all_in_order(j)));
    swap(j);
    try_change(j, by(How::painter), {.painters = 1});
    painter_for_a_week(j);
    constexpr std::size_t saturday = 5;
    if (!works_on(j, saturday)) try_change(j, by(How::saturdays), {.saturdays = true});
    if (q_.jobs[j].materials) try_change(j, by(How::materials), {.any_materials = true});
    const auto& held = q_.jobs[j].not_before;
    if (held && *held > std::max(out_.start, b_.now.today))
      try_change(j, by(How::not_before), {.any_start = true});
  }

  [[nodiscard]] std::size_t crew_of(std::size_t j) const { return answer_.jobs[j]->crew; }
  [[nodiscard]] const PosedJob& posed(std::size_t j) const { return b_.posed.job(j, crew_of(j)); }
  [[nodiscard]] bool works_on(std::size_t j, std::size_t weekday) const {
    return posed(j).calendar().working[weekday];
  }

  // The season's own order; what changes in it is what is asked.
  [[nodiscard]] Orders all_in_order(std::optional<std::size_t> first = {}) const {
    Orders order(q_.jobs.size());
    std::iota(order.begin(), order.end(), 0);
    std::ranges::stable_sort(order, {}, [&](std::size_t j) {
      const auto& booked = answer_.jobs[j];
      return std::tuple(first != j, !booked, booked ? booked->at.front().date : 0);
    });
    return order;
  }

  // A job on all crews with a change to it.
  [[nodiscard]] CandidatePtr changed(std::size_t j, std::size_t crew, SeasonChange change) const {
    if (!b_.posed.has(j, crew)) return nullptr;
    change.make_good = b_.posed.makes_good(j);
    const PosedJob again(q_, b_.rates, b_.now, j, crew, change);
    if (!again.why_not().empty()) return nullptr;
    return b_.posed.candidate(crew, again);
  }

  void try_change(std::size_t j, const SeasonHelp& help, const SeasonChange& change) {
    season::Problem problem = b_.posed.problem();
    problem.alike.clear();
    for (std::size_t c = 0; c < q_.crews.size(); ++c)
      problem.jobs[j].by_crew[c] = changed(j, c, change);
    const season::Answer answer = season::book_in_order(problem, all_in_order());
    // What booking again brings without the change is not its merit.
    const auto& plain = again_.jobs[j];
    if (!plain || (answer.jobs[j] && answer.jobs[j]->days_late < plain->days_late))
      keep(j, help, answer);
  }

  // What a season comes to for a job, and who pays for it; nothing where the job is no less late.
  [[nodiscard]] std::optional<SeasonHelp> weighed(std::size_t j,
                                                  SeasonHelp help,
                                                  const season::Answer& answer) const {
    const auto& booked = answer.jobs[j];
    if (!booked || booked->days_late >= out_.lines[j].days_late) return {};
    help.days_late = booked->days_late;
    for (std::size_t other = 0; other < q_.jobs.size(); ++other) {
      const auto& now = answer.jobs[other];
      const auto& before = answer_.jobs[other];
      const std::int64_t late = now ? now->days_late : 0;
      help.season_late += late * q_.jobs[other].priority;
      if (other != j && before && (!now || late > before->days_late)) help.pay.push_back(other);
    }
    if (help.how == How::painter || help.how == How::materials) add_days(j, *booked, help);
    return help;
  }

  void keep(std::size_t j, SeasonHelp help, const season::Answer& answer) {
    if (auto found = weighed(j, std::move(help), answer))
      out_.lines[j].helps.push_back(std::move(*found));
  }

  [[nodiscard]] dates::Date day(std::int32_t date) const {
    return out_.start + std::chrono::days{date};
  }

  // From the first day of the job, or the first coat's, to the last coat's.
  void add_days(std::size_t j, const season::Booked& booked, SeasonHelp& help) const {
    const schedule::Problem& problem = b_.posed.problem().jobs[j].by_crew[booked.crew]->problem;
    const auto date = [&](schedule::Slot slot) {
      return problem.date_of[static_cast<std::size_t>(slot)];
    };
    std::optional<std::int32_t> first, last;
    for (const schedule::Booking& b : booked.answer.bookings) {
      if (b.what != schedule::Booking::What::unit) continue;
      if (!first) first = date(b.start);
      last = date(b.end - 1);
    }
    if (!first) return;
    help.from = day(*first);
    help.to = day(*last);
    if (help.how != How::painter) return;
    help.from = day(booked.at.front().date);
    std::int64_t share = 0;
    for (const season::Presence& at : booked.at) {
      if (at.date <= *last) share += pay_share(at.date, at.to - at.from);
    }
    help.cost = wages(share);
  }

  // Quarters times the weekday's share of the wage.
  [[nodiscard]] std::int64_t pay_share(std::int32_t date, std::int64_t quarters) const {
    return quarters * b_.rates.labour.weekday[dates::weekday(day(date))].millionths;
  }
  [[nodiscard]] money::Money wages(std::int64_t share) const {
    constexpr std::int64_t quarters_in_hour = 4;
    return money::scaled(
        b_.rates.labour.hour, share, quarters_in_hour * money::whole, money::Rounding::half_away);
  }

  /// Some jobs on the crews they have, to be booked again by themselves: the others stay.
  struct Part {
    Orders jobs;  ///< Of the season, in its order.
    season::Problem problem;
    Orders crews;
  };

  [[nodiscard]] Part part_of(const std::vector<std::size_t>& crews) const {
    Part part;
    for (const std::size_t j : all_in_order()) {
      if (answer_.jobs[j] && std::ranges::find(crews, crew_of(j)) != crews.end())
        part.jobs.push_back(j);
    }
    const season::Problem& all = b_.posed.problem();
    part.problem.crews = all.crews;
    for (const std::size_t j : part.jobs) {
      part.problem.jobs.push_back(all.jobs[j]);
      part.crews.push_back(crew_of(j));
      auto& row = part.problem.travel.emplace_back();
      for (const std::size_t other : part.jobs) row.push_back(all.travel[j][other]);
    }
    return part;
  }

  // The season with a part of it booked in an order of its own.
  [[nodiscard]] season::Answer rebooked(const Part& part, const Orders& order) const {
    season::Answer answer = answer_;
    season::Answer again = season::book_in_order(part.problem, order, part.crews);
    for (std::size_t i = 0; i < part.jobs.size(); ++i)
      answer.jobs[part.jobs[i]] = std::move(again.jobs[i]);
    return answer;
  }

  static bool better(const SeasonHelp& a, const std::optional<SeasonHelp>& b) {
    return !b || std::tuple(a.season_late, a.days_late, a.pay.size()) <
                     std::tuple(b->season_late, b->days_late, b->pay.size());
  }

  // The best of the jobs next to it: in its place in the order, and on its crew.
  void swap(std::size_t j) {
    constexpr std::size_t most_tried = 12;
    Orders others = all_in_order();
    std::erase_if(others, [&](std::size_t k) { return k == j || !answer_.jobs[k]; });
    const auto first = [&](std::size_t k) { return answer_.jobs[k]->at.front().date; };
    std::ranges::stable_sort(
        others, {}, [&](std::size_t k) { return std::abs(first(k) - first(j)); });
    if (others.size() > most_tried) others.resize(most_tried);
    std::optional<SeasonHelp> best;
    for (const std::size_t k : others) {
      auto found = swapped(j, k);
      if (found && better(*found, best)) best = std::move(found);
    }
    if (best) out_.lines[j].helps.push_back(std::move(*best));
  }

  [[nodiscard]] std::optional<SeasonHelp> swapped(std::size_t j, std::size_t k) const {
    const auto& by_crew = b_.posed.problem().jobs;
    if (!by_crew[j].by_crew[crew_of(k)] || !by_crew[k].by_crew[crew_of(j)]) return {};
    Part part = part_of({crew_of(j), crew_of(k)});
    const auto place = [&](std::size_t job) {
      return std::ranges::find(part.jobs, job) - part.jobs.begin();
    };
    Orders order(part.jobs.size());
    std::iota(order.begin(), order.end(), 0);
    const auto a = static_cast<std::size_t>(place(j));
    const auto b = static_cast<std::size_t>(place(k));
    std::swap(order[a], order[b]);
    std::swap(part.crews[a], part.crews[b]);
    return weighed(j, by(How::swap, k), rebooked(part, order));
  }

  // The best week for one more painter on the job's crew, of the last weeks before its last coat.
  void painter_for_a_week(std::size_t j) {
    constexpr std::int32_t most_weeks = 6;
    const Part part = part_of({crew_of(j)});
    std::vector<CandidatePtr> more;
    for (const std::size_t job : part.jobs)
      more.push_back(q_.jobs[job].past ? nullptr : changed(job, crew_of(j), {.painters = 1}));
    const std::int32_t last = answer_.jobs[j]->at.back().date;
    const auto weekday = static_cast<std::int32_t>(dates::weekday(day(last)));
    std::optional<SeasonHelp> best;
    for (std::int32_t back = 0; back < most_weeks; ++back) {
      const std::int32_t monday = last - weekday - back * days_a_week;
      const Week week{monday, monday + days_a_week - 1};
      if (week.to < 0) break;
      auto found = in_week(j, part, more, week);
      if (found && better(*found, best)) best = std::move(found);
    }
    if (best) out_.lines[j].helps.push_back(std::move(*best));
  }

  // Jobs painted in the week now are painted by one more; the late job is prepared or painted so.
  [[nodiscard]] std::optional<SeasonHelp> in_week(std::size_t j,
                                                  const Part& usual,
                                                  const std::vector<CandidatePtr>& more,
                                                  const Week& week) const {
    const std::size_t crew = crew_of(j);
    Part part = usual;
    part.problem.alike.clear();
    std::size_t own = 0;
    for (std::size_t i = 0; i < part.jobs.size(); ++i) {
      if (part.jobs[i] == j) own = i;
      auto& candidate = part.problem.jobs[i].by_crew[crew];
      if (!more[i] || !painted_within(part.jobs[i], week)) continue;
      if (auto quick = painted_in(*candidate, *more[i], week)) candidate = std::move(quick);
    }
    Orders order(part.jobs.size());
    std::iota(order.begin(), order.end(), 0);
    const auto now = part.problem.jobs[own].by_crew[crew];
    std::vector<CandidatePtr> ways{now};
    const auto& plain = usual.problem.jobs[own].by_crew[crew];
    if (more[own]) {
      ways.push_back(painted_in(*plain, *more[own], week));
      ways.push_back(prepared_in(*plain, *more[own], week));
    }
    std::optional<SeasonHelp> best;
    for (const CandidatePtr& way : ways) {
      if (!way) continue;
      part.problem.jobs[own].by_crew[crew] = way;
      auto found = weighed(j, week_of(j, week), rebooked(part, order));
      if (found && better(*found, best)) best = std::move(found);
    }
    return best;
  }

  [[nodiscard]] bool painted_within(std::size_t j, const Week& week) const {
    const season::Booked& booked = *answer_.jobs[j];
    const schedule::Problem& problem = b_.posed.problem().jobs[j].by_crew[booked.crew]->problem;
    bool any = false;
    for (const schedule::Booking& b : booked.answer.bookings) {
      if (b.what != schedule::Booking::What::unit) continue;
      const std::int32_t date = problem.date_of[static_cast<std::size_t>(b.start)];
      if (date < week.from || date > week.to) return false;
      any = true;
    }
    return any;
  }

  // Its working days, each paid from the crew's first hour to its last.
  [[nodiscard]] SeasonHelp week_of(std::size_t j, const Week& week) const {
    SeasonHelp help = by(How::painter_week);
    const dates::WorkCalendar& calendar = posed(j).calendar();
    std::int64_t share = 0;
    bool any = false;
    for (std::int32_t date = std::max(0, week.from); date <= week.to; ++date) {
      if (!calendar.works_on(day(date))) continue;
      if (!std::exchange(any, true)) help.from = day(date);
      help.to = day(date);
      share += pay_share(date, calendar.hours.to - calendar.hours.from);
    }
    help.cost = wages(share);
    return help;
  }

  const BookedSeason& b_;
  const SeasonQuestion& q_;
  const season::Answer& answer_;
  Season& out_;
  season::Answer again_;  ///< The season booked in its own order without any change.
};

}  // namespace

void add_helps(const BookedSeason& booked, Season& out) {
  Helper(booked, out).help_all();
}

}  // namespace basinwright::job
