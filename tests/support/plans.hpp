// Plans made from job texts, for tests of the whole thread.
#pragma once

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "basinwright/dates/date.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/readers/read.hpp"
#include "support/places.hpp"

namespace basinwright::test {

inline std::string file_text(const std::string& path) {
  std::ifstream file(places::source() + "/" + path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  return {std::istreambuf_iterator<char>(file), {}};
}

inline std::string all_messages(const diagnostics::Problems& problems) {
  std::string out;
  for (const auto& d : problems.all()) out += d.code + " " + d.pointer + ": " + d.message + "\n";
  return out;
}

inline job::Job job_of(const std::string& text) {
  diagnostics::Problems problems;
  auto job = readers::read_job({"job.json", text}, problems);
  if (!job) throw std::runtime_error(all_messages(problems));
  return *job;
}

inline job::RateBook rates_of(const std::string& text) {
  diagnostics::Problems problems;
  auto rates = readers::read_rate_book({"rates.json", text}, problems);
  if (!rates) throw std::runtime_error(all_messages(problems));
  return *rates;
}

inline job::RateBook demonstration() {
  return rates_of(readers::demonstration_rates().bytes);
}

inline dates::Date day(const std::string& text) {
  return dates::parse_date(text).value();
}

/// The plan of a job text at a fixed day.
inline job::Plan plan_of(const std::string& text,
                         const job::RateBook& rates,
                         bool explain = false) {
  job::Circumstances now;
  now.today = day("2027-01-04");
  now.explain = explain;
  return job::make_plan(job_of(text), rates, now);
}

}  // namespace basinwright::test
