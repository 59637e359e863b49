#include "basinwright/job/season.hpp"

#include <algorithm>
#include <stdexcept>

#include "basinwright/odds/years.hpp"
#include "basinwright/sitelog/progress.hpp"
#include "season_help.hpp"
#include "season_pose.hpp"

namespace basinwright::job {
namespace {

using schedule::Slot;
using Orders = std::vector<std::size_t>;

// So that a season of any size is over in minutes: so many times all jobs on all crews.
season::Effort effort_for(const SeasonQuestion& question) {
  constexpr std::size_t rounds = 24;
  constexpr std::size_t most = 4000;
  constexpr std::size_t most_proven = 200;
  constexpr std::size_t most_jobs = 30;  // of seasons that are searched for a proof
  const std::size_t all = question.jobs.size() * question.crews.size();
  return {std::min(most, rounds * all), question.jobs.size() > most_jobs ? 0 : most_proven};
}

dates::Moment at_time(dates::Date start, std::int32_t date, std::int32_t time) {
  return {start + std::chrono::days{date}, time};
}

/// A booked job in the trade's words.
class Teller {
 public:
  Teller(const SeasonJob& job,
         const PosedJob& posed,
         const season::Booked& booked,
         dates::Date start)
      : j_(job), plan_(posed.plan()), posed_(posed.posed()), b_(booked), start_(start) {}

  void tell(SeasonLine& line) {
    line.booked = true;
    line.crew = b_.crew;
    line.full = start_ + std::chrono::days{b_.full};
    line.days_late = b_.days_late;
    Slot last = 0;
    for (const schedule::Booking& b : b_.answer.bookings) {
      const auto [task, section] = posed_.named(b);
      const bool attended = b.what != schedule::Booking::What::task ||
                            posed_.problem().chain[b.index].kind != schedule::Kind::unattended;
      add(line, task, section, {b.start, b.end}, attended);
      if (b.what == schedule::Booking::What::unit) last = std::max(last, b.end);
    }
    if (b_.unmask_end > b_.unmask_start)
      add(line, "unmask", "", {b_.unmask_start, b_.unmask_end}, true);
    if (last > 0) {
      const auto cured = posed_.after_coats().cured[static_cast<std::size_t>(last)];
      if (cured) add(line, "cure", "", {last, *cured}, false);
    }
    if (b_.refit_end > b_.refit_start) add(line, "refit", "", {b_.refit_start, b_.refit_end}, true);
    line.tasks.push_back({"fill", "", posed_.moment(b_.finish), posed_.full(b_.finish), false});
    for (const season::Presence& at : b_.at) {
      line.stays.push_back({start_ + std::chrono::days{at.date},
                            at_time(start_, at.date, at.from),
                            at_time(start_, at.date, at.to)});
    }
    line.first_day = line.stays.front().date;
    if (j_.past) tell_past(line);
  }

 private:
  void tell_past(SeasonLine& line) const {
    for (const sequence::Done& done : j_.past->done) {
      const dates::Date day = done.start.date();
      line.begun = line.begun ? std::min(*line.begun, day) : day;
    }
    if (line.begun) line.first_day = *line.begun;
    for (const SeasonTask& task : line.tasks) {
      if (task.task == sitelog::rework_task) line.abraded.push_back(task.section);
      if (task.task == sitelog::clean_again_task) line.cleaned_again = true;
    }
    // Only a data sheet can give leave to miss a window.
    line.waits_for_advice = !line.abraded.empty() && !plan_.system.planned_rework && !j_.advised;
  }

  void add(SeasonLine& line,
           const std::string& task,
           const std::string& section,
           std::pair<Slot, Slot> slots,
           bool attended) const {
    line.tasks.push_back(
        {task, section, posed_.moment(slots.first), posed_.moment(slots.second), attended});
  }

  const SeasonJob& j_;
  const Plan& plan_;
  const sequence::Posed posed_;
  const season::Booked& b_;
  dates::Date start_;
};

class Maker {
 public:
  Maker(const SeasonQuestion& question, const RateBook& rates, const Circumstances& now)
      : q_(question),
        rates_(rates),
        now_(now),
        posed_(question, rates, now),
        effort_(question.effort.value_or(effort_for(question))) {}

  Season make() {
    Season out;
    out.start = *now_.start;
    out.lines.resize(q_.jobs.size());
    solve();
    out.value = answer_.value;
    out.bound = answer_.bound;
    out.optimal = answer_.optimal;
    out.broken = season::verify(posed_.problem(), answer_);
    for (std::size_t j = 0; j < q_.jobs.size(); ++j) tell(j, out.lines[j]);
    if (q_.helps) add_helps({q_, rates_, now_, posed_, answer_}, out);
    if (q_.past != nullptr) replay(out);
    return out;
  }

 private:
  // A begun job whose windows cannot be kept beside the others' gets what makes them good.
  void solve() {
    answer_ = season::solve(posed_.problem(), effort_);
    bool again = false;
    for (std::size_t j = 0; j < q_.jobs.size(); ++j) {
      if (!answer_.jobs[j] && posed_.make_good(j)) again = true;
    }
    if (again) answer_ = season::solve(posed_.problem(), effort_);
  }

  void tell(std::size_t j, SeasonLine& line) const {
    if (const auto& booked = answer_.jobs[j]) {
      Teller(q_.jobs[j], posed_.job(j, booked->crew), *booked, *now_.start).tell(line);
      return;
    }
    line.why_not = "no-dates";
    for (std::size_t c = 0; c < q_.crews.size(); ++c) {
      if (posed_.has(j, c) && !posed_.job(j, c).why_not().empty())
        line.why_not = posed_.job(j, c).why_not();
    }
  }

  // The crews and the order of the season kept, each job as early as the weather of a year allows.
  void replay(Season& out) const {
    const int days = season_days(q_, out.start);
    const odds::Years years = odds::years_of(*q_.past, {out.start, days});
    out.left_out = years.left_out;
    if (years.years.empty()) return;
    Orders order, crews(q_.jobs.size(), q_.crews.size());
    for (std::size_t j = 0; j < q_.jobs.size(); ++j) {
      if (!answer_.jobs[j]) continue;
      order.push_back(j);
      crews[j] = answer_.jobs[j]->crew;
    }
    std::ranges::stable_sort(
        order, {}, [&](std::size_t j) { return answer_.jobs[j]->at.front().date; });
    std::vector<std::int64_t> kept(q_.jobs.size(), 0);
    for (const odds::WeatherYear& year : years.years) {
      const season::Answer answer = in_year(year.record, order, crews);
      for (const std::size_t j : order)
        kept[j] += answer.jobs[j] && answer.jobs[j]->days_late == 0 ? 1 : 0;
    }
    const auto all = static_cast<std::int64_t>(years.years.size());
    for (const std::size_t j : order) {
      if (q_.jobs[j].promised)
        out.lines[j].ready = {kept[j], all, odds::wilson_interval(kept[j], all)};
    }
  }

  [[nodiscard]] season::Answer in_year(const weather::Record& record,
                                       const Orders& order,
                                       const Orders& crews) const {
    season::Problem problem = posed_.problem();
    for (const std::size_t j : order) {
      auto& by_crew = problem.jobs[j].by_crew;
      std::ranges::fill(by_crew, nullptr);
      const PosedJob& posed = posed_.job(j, crews[j]);
      by_crew[crews[j]] = posed_.candidate(crews[j], posed, posed.under(record));
    }
    return season::book_in_order(problem, order, crews);
  }

  const SeasonQuestion& q_;
  const RateBook& rates_;
  const Circumstances& now_;
  PosedSeason posed_;
  season::Effort effort_;
  season::Answer answer_;
};

}  // namespace

Season season_of(const SeasonQuestion& question, const RateBook& rates, const Circumstances& now) {
  if (!now.start) throw std::invalid_argument("season: it has no first day");
  return Maker(question, rates, now).make();
}

}  // namespace basinwright::job
