// A small job that has begun.
#pragma once

#include "basinwright/sequence/posed.hpp"
#include "small_job.hpp"

namespace begun_job {

using namespace basinwright;
using sequence::Done;
using small_job::SmallJob;

inline dates::Moment moment(const std::string& text) {
  return dates::parse_moment("2027-05-" + text).value();
}
inline Done done(std::string task,
                 const std::string& start,
                 const std::string& end,
                 double share = 1.0) {
  Done d{std::move(task), "", moment(start), moment(end)};
  d.share = share;
  return d;
}
inline sequence::ProgrammeQuestion asked(const SmallJob& job,
                                         const std::string& now,
                                         std::vector<Done> all) {
  auto q = job.question();
  q.weather.record = nullptr;
  q.past = sequence::Past{moment(now), std::move(all)};
  q.past->look_ahead = true;
  q.rework.person_hours = {units::hours(2)};
  q.rework.clean_again = units::hours(1);
  return q;
}
// Etched on Monday the 10th; the first coat on Friday the 14th.
inline std::vector<Done> etched() {
  return {done("etch-walls", "10T08:00", "10T09:00"), done("dryness-test", "13T07:00", "13T23:00")};
}
inline std::vector<Done> coated(const std::string& start, const std::string& end) {
  auto all = etched();
  all.push_back(done("coat-1", start, end));
  return all;
}

}  // namespace begun_job
