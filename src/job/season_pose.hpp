// A season's question as the general problem; private to the room.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/job/season.hpp"
#include "basinwright/sequence/posed.hpp"

namespace basinwright::job {

/// What is changed of one job to find out whether it would help.
struct SeasonChange {
  int painters = 0;  ///< More people who paint.
  bool saturdays = false, any_materials = false, any_start = false;
  bool make_good = false;  ///< Whatever of a begun job may be lost, not only what is.
};

/// A job on a crew with everything its question refers to.
class PosedJob {
 public:
  PosedJob(const SeasonQuestion& question,
           const RateBook& rates,
           const Circumstances& now,
           std::size_t job,
           std::size_t crew,
           const SeasonChange& change = {});
  PosedJob(const PosedJob&) = delete;  // the posed question refers to the plan
  PosedJob& operator=(const PosedJob&) = delete;

  /// Why there is nothing to book: "stopped", "no-dates", "filled"; else empty.
  [[nodiscard]] const std::string& why_not() const { return why_not_; }
  /// Posed anew, since many jobs posed at once take much memory.
  [[nodiscard]] sequence::Posed posed() const;
  /// The job under the season's weather.
  [[nodiscard]] const std::shared_ptr<const season::Candidate>& candidate() const { return made_; }
  /// The job under a weather; the crew is there from a moment on at the earliest.
  [[nodiscard]] std::shared_ptr<const season::Candidate> candidate(
      const sequence::Posed& posed) const;
  /// Posed anew under the weather of a year.
  [[nodiscard]] sequence::Posed under(const weather::Record& record) const;
  [[nodiscard]] const dates::WorkCalendar& calendar() const { return job_.calendar; }
  /// Until when work that is going on keeps the crew.
  [[nodiscard]] std::optional<dates::Moment> busy_until() const { return busy_until_; }
  [[nodiscard]] const Plan& plan() const { return plan_; }

 private:
  const SeasonJob& j_;
  Job job_;
  Plan plan_;
  std::optional<sequence::ProgrammeQuestion> question_;
  const weather::Record* weather_;
  std::shared_ptr<const season::Candidate> made_;
  std::optional<dates::Moment> busy_until_;
  std::string why_not_;
  sequence::Lost lost_;
  SeasonChange change_;
  int days_ = 0;
  std::int64_t hour_ = 0;
};

/// All jobs on all crews.
class PosedSeason {
 public:
  PosedSeason(const SeasonQuestion& question, const RateBook& rates, const Circumstances& now);

  [[nodiscard]] const season::Problem& problem() const { return problem_; }
  [[nodiscard]] const PosedJob& job(std::size_t job, std::size_t crew) const {
    return *posed_[job][crew];
  }
  [[nodiscard]] bool has(std::size_t job, std::size_t crew) const {
    return posed_[job][crew] != nullptr;
  }
  /// Offers a begun job to make good whatever of it may be lost. @return whether there is anything
  bool make_good(std::size_t job);
  [[nodiscard]] bool makes_good(std::size_t job) const { return made_good_[job] != 0; }
  /// The candidate of a job on a crew posed in another way.
  [[nodiscard]] std::shared_ptr<const season::Candidate> candidate(std::size_t crew,
                                                                   const PosedJob& posed) const;
  /// Likewise, under a weather.
  [[nodiscard]] std::shared_ptr<const season::Candidate> candidate(
      std::size_t crew, const PosedJob& posed, const sequence::Posed& under) const;

 private:
  void pose_all();
  void add_travel();
  [[nodiscard]] std::shared_ptr<const season::Candidate> from_when_free(
      std::size_t crew,
      std::shared_ptr<const season::Candidate> made,
      const sequence::Posed& under) const;

  const SeasonQuestion& q_;
  const RateBook& rates_;
  const Circumstances& now_;
  std::vector<std::vector<std::shared_ptr<const PosedJob>>> posed_;  ///< [job][crew]
  std::vector<std::optional<dates::Moment>> busy_;                   ///< By crew.
  std::vector<char> made_good_;                                      ///< By job.
  season::Problem problem_;
};

/// How many days from `start`, the season's first, are looked at; what a job has been in hand comes
/// on top.
[[nodiscard]] int season_days(const SeasonQuestion& question, dates::Date start);

}  // namespace basinwright::job
