// Many jobs on shared crews over a season: who does what when, what is late and what would help.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/job/plan.hpp"
#include "basinwright/odds/quantiles.hpp"
#include "basinwright/odds/years.hpp"
#include "basinwright/season/solve.hpp"

namespace basinwright::job {

/// A crew; what it does not say stands in each job file.
struct SeasonCrew {
  std::string name;
  std::optional<int> people, painters;
  std::optional<dates::Hours> hours;
  std::optional<std::array<bool, 7>> working;  ///< Monday first.
  std::vector<dates::Date> closed;
  std::optional<dates::Date> from, until;  ///< Its first and last working day.
  std::optional<money::Money> hour;        ///< Of the whole crew; else people x the book's wage.
};

/// A job of the season.
struct SeasonJob {
  std::string name;
  const Job* job = nullptr;
  std::optional<dates::Date> promised;    ///< Full on this day at the latest.
  std::int64_t priority = 1;              ///< What a day late counts, 1 to 9.
  std::optional<dates::Date> not_before;  ///< Nothing is done before.
  std::optional<dates::Date> materials;   ///< Nothing is coated before: kits on the yard.
  std::optional<std::size_t> crew;        ///< The crew it is bound to.
  std::optional<sequence::Past> past;     ///< What is done of it.
  bool advised = false;                   ///< The maker's advice on a lost recoat window is there.
};

/// The usual way from one place to another.
inline constexpr sources::Sourced<units::Duration> usual_travel{
    units::minutes(30), {sources::Kind::assumed, "season-travel", "between two sites"}};

struct SeasonTravel {
  std::size_t from = 0, to = 0;  ///< Jobs; holds both ways.
  units::Duration time;
};

struct SeasonQuestion {
  std::vector<SeasonCrew> crews;
  std::vector<SeasonJob> jobs;
  sources::Sourced<units::Duration> travel = usual_travel;
  std::vector<SeasonTravel> between;
  std::optional<season::Effort> effort;   ///< Else what fits the size of the season.
  bool helps = true;                      ///< Find out what would help late jobs.
  const weather::Record* past = nullptr;  ///< Hours of past years, if any.
};

/// One task of a booked job.
struct SeasonTask {
  std::string task, section;
  dates::Moment start, end;
  bool attended = true;  ///< Somebody of the crew works on it.
};

/// When the crew is at the job on a day.
struct SeasonStay {
  dates::Date date;
  dates::Moment from, to;
};

/// Something that would bring a late job forward; found by booking the season again with it.
struct SeasonHelp {
  enum class How {
    painter,       ///< One more painter on this job.
    painter_week,  ///< One more painter for its crew in one week, on whatever is painted then.
    saturdays,     ///< Saturdays worked on this job.
    first,         ///< This job before the others, at whoever's cost.
    swap,          ///< Another job's place in the order, and its crew, for this one's.
    materials,     ///< Kits ordered so early that they are never waited for.
    not_before     ///< Allowed to begin at any time.
  };
  How how = How::painter;
  std::int64_t days_late = 0;        ///< Of the job, with it.
  std::int64_t season_late = 0;      ///< Weighted days of all jobs, with it.
  dates::Date from, to;              ///< The days on which the painter or the kits are needed.
  std::vector<std::size_t> pay;      ///< Jobs that are later for it.
  std::optional<money::Money> cost;  ///< Of the painter: wages of the days from first to last.
  std::optional<std::size_t> other;  ///< The job that it is swapped with.
};

struct SeasonLine {
  bool booked = false;
  std::string why_not;  ///< A code: "stopped", "no-dates", "filled".
  std::size_t crew = 0;
  std::optional<dates::Date> begun;  ///< When its first work was, by its log.
  std::vector<std::string> abraded;  ///< Sections whose lost recoat window is made good.
  bool cleaned_again = false;        ///< The etch had run out: the bare shell is cleaned again.
  bool waits_for_advice = false;     ///< What is abraded waits for the maker's advice in writing.
  std::vector<SeasonTask> tasks;
  std::vector<SeasonStay> stays;
  dates::Date first_day, full;
  std::int64_t days_late = 0;
  std::vector<SeasonHelp> helps;
  bool looked_at = false;                 ///< It was asked what would help.
  std::optional<odds::ReadyShare> ready;  ///< Years in which the promise holds.
};

struct Season {
  dates::Date start;
  std::vector<SeasonLine> lines;  ///< As the question's jobs.
  season::Value value, bound;     ///< The refill dates as days after `start`, summed.
  bool optimal = false;
  std::vector<std::string> broken;  ///< What the check found; empty.
  std::vector<odds::LeftOut> left_out;
};

/// The best season found, with its bound; every one is checked before it is given out.
[[nodiscard]] Season season_of(const SeasonQuestion& question,
                               const RateBook& rates,
                               const Circumstances& now);

}  // namespace basinwright::job
