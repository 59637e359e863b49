#include "fuzz/targets.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>
#include <vector>

#include "basinwright/cli/request.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/job/site_past.hpp"
#include "basinwright/job/site_rules.hpp"
#include "basinwright/readers/read.hpp"
#include "basinwright/readers/site_log.hpp"
#include "basinwright/readers/weather_file.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/render/text.hpp"
#include "basinwright/report/pages.hpp"
#include "basinwright/report/site.hpp"
#include "basinwright/units/parse.hpp"
#include "support/plans.hpp"

namespace basinwright::fuzz {
namespace {

using diagnostics::Problems;

void promise(bool kept, const std::string& what) {
  if (kept) return;
  std::fprintf(stderr, "broken promise: %s\n", what.c_str());
  std::abort();
}

// Refused with a place and a reason; a file as a whole has no line.
void refused_well(const Problems& problems, std::string_view bytes) {
  promise(problems.has_errors(), "nothing was read and nothing is said to be wrong");
  const auto lines = static_cast<std::size_t>(std::ranges::count(bytes, '\n')) + 1;
  for (const diagnostics::Diagnostic& d : problems.all()) {
    promise(!d.code.empty() && !d.message.empty(), "a problem without a code or a reason");
    promise(d.at.line <= lines, d.code + " stands below the file");
    promise((d.at.line == 0) == (d.at.column == 0), d.code + " has half a place");
  }
}

void place_known(const Problems& problems) {
  for (const diagnostics::Diagnostic& d : problems.all())
    promise(d.at.line > 0, d.code + " has no place");
}

// Numbers that are no numbers are written as null: what is printed must hold none but what a name
// given holds.
void page_is_whole(const document::Document& page, std::string_view bytes) {
  const std::string text = render::text(page);
  promise(!text.empty(), "an empty page");
  const auto parsed = nlohmann::json::parse(render::json(page), nullptr, false);
  promise(!parsed.is_discarded(), "JSON that does not parse");
  for (const std::string_view wrong : {" nan", " inf", "-nan", "-inf"}) {
    const bool is_given = bytes.find(wrong.substr(1)) != std::string_view::npos;
    promise(is_given || text.find(wrong) == std::string::npos, "prints" + std::string(wrong));
  }
}

void plans(const job::Job& job,
           const job::RateBook& rates,
           const job::Circumstances& now,
           std::string_view bytes) {
  if (!job::mismatches(job, rates).empty()) return;
  const job::Plan plan = job::make_plan(job, rates, now);
  page_is_whole(report::jobsheet({job, rates, plan, job.units}), bytes);
}

job::Circumstances quiet_day() {
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  now.reasons = false;
  return now;
}

const job::RateBook& usual_rates() {
  static const job::RateBook rates = test::demonstration();
  return rates;
}

const job::Job& usual_job() {
  static const job::Job job = test::job_of(test::file_text("examples/plain-pool.json"));
  return job;
}

void job_file(std::string_view bytes) {
  Problems problems;
  const auto job = readers::read_job({"job.json", std::string(bytes)}, problems);
  place_known(problems);
  if (!job) return refused_well(problems, bytes);
  promise(!problems.has_errors(), "a job was read in spite of an error");
  plans(*job, usual_rates(), quiet_day(), bytes);
}

void rate_book(std::string_view bytes) {
  Problems problems;
  const auto rates = readers::read_rate_book({"rates.json", std::string(bytes)}, problems);
  place_known(problems);
  if (!rates) return refused_well(problems, bytes);
  promise(!problems.has_errors(), "a rate book was read in spite of an error");
  plans(usual_job(), *rates, quiet_day(), bytes);
}

void weather(std::string_view bytes) {
  Problems problems;
  const auto file = readers::read_weather({"weather", std::string(bytes)}, problems);
  if (!file) return refused_well(problems, bytes);
  promise(!problems.has_errors(), "weather was read in spite of an error");
  for (std::size_t i = 0; i + 1 < file->hours.size(); ++i)
    promise(file->hours[i].at < file->hours[i + 1].at, "hours out of order");
  const auto from = weather::hour_of(dates::Moment(test::day("2027-04-01"), 0));
  constexpr weather::HourNumber hours = 24 * 60;
  const weather::Record record = readers::merge({*file}, from, from + hours);
  job::Circumstances now = quiet_day();
  now.weather = &record;
  if (!file->hours.empty()) plans(usual_job(), usual_rates(), now, bytes);
}

void site_log(std::string_view bytes) {
  Problems problems;
  const std::string text(bytes);
  promise(readers::whole_bytes(text) <= text.size(), "a log longer than its file");
  const auto log = readers::read_site_log({"site.log", text}, problems);
  place_known(problems);
  if (!log) return refused_well(problems, bytes);
  promise(!problems.has_errors(), "a log was read in spite of an error");
  if (log->entries.empty()) return;
  job::Circumstances now = quiet_day();
  const dates::Minute last = log->entries.back().at;
  now.past = job::past_of(*log, last);
  const job::Plan plan = job::make_plan(usual_job(), usual_rates(), now);
  const report::Subject subject{usual_job(), usual_rates(), plan, units::System::metric};
  report::Site site{.subject = subject, .log = *log, .now = last};
  site.rules = job::site_rules(usual_job(), usual_rates(), plan);
  site.breaches = sitelog::breaches(*log, site.rules);
  site.deadlines = job::deadlines(plan, usual_rates(), *log);
  site.remedies = job::remedies(plan, usual_rates());
  page_is_whole(report::replanned(site), bytes);
  page_is_whole(report::coating_record(site), bytes);
}

// Arguments end with a line each. Only read, never carried out: they may name any file.
void command_line(std::string_view bytes) {
  std::vector<std::string> arguments;
  std::string now;
  for (const char c : bytes) {
    if (c == '\0') continue;  // No argument can hold one.
    if (c != '\n') {
      now += c;
      continue;
    }
    arguments.push_back(std::move(now));
    now.clear();
  }
  if (!now.empty()) arguments.push_back(std::move(now));
  const auto read = cli::parse_arguments(arguments);
  const auto* leave = std::get_if<cli::Leave>(&read);
  promise(leave == nullptr || !leave->text.empty(), "leaves without a word");
}

template <class Q>
void finite(const units::Parsed<Q>& parsed) {
  if (const auto* value = std::get_if<Q>(&parsed)) {
    if constexpr (requires { value->si(); }) promise(std::isfinite(value->si()), "not finite");
  }
}

void amounts(std::string_view text) {
  for (const char* code : {"JPY", "EUR", "KWD", "CLF"}) {
    const money::Currency currency = money::currency(code).value();
    const auto read = money::parse(text, currency);
    if (read)
      promise(money::parse(money::plain(*read, currency), currency) == read, "money changes");
  }
}

void days(std::string_view text) {
  if (const auto day = dates::parse_date(text))
    promise(dates::parse_date(dates::iso(*day)) == day, "a day changes");
  if (const auto at = dates::parse_moment(text))
    promise(dates::parse_moment(dates::iso(*at)) == at, "a moment changes");
  static_cast<void>(dates::parse_clock(text));
}

void measures(std::string_view text) {
  finite(units::parse_length(text));
  finite(units::parse_area(text));
  finite(units::parse_volume(text));
  finite(units::parse_mass(text));
  finite(units::parse_duration(text));
  finite(units::parse_flow(text));
  finite(units::parse_speed(text));
  finite(units::parse_spreading_rate(text));
  finite(units::parse_application_rate(text));
  finite(units::parse_work_rate(text));
  finite(units::parse_edge_rate(text));
  finite(units::parse_concentration(text));
  static_cast<void>(units::parse_temperature(text));
  static_cast<void>(units::parse_temperature_difference(text));
  static_cast<void>(units::parse_fraction(text));
  static_cast<void>(units::parse_number(text));
  amounts(text);
  days(text);
}

constexpr std::array all{Target{"job", job_file},
                         Target{"rates", rate_book},
                         Target{"weather-json", weather},
                         Target{"weather-csv", weather},
                         Target{"weather-epw", weather},
                         Target{"weather-tmy3", weather},
                         Target{"site-log", site_log},
                         Target{"command-line", command_line},
                         Target{"measures", measures}};

}  // namespace

std::span<const Target> targets() {
  return all;
}

const Target& target_named(std::string_view name) {
  for (const Target& target : all) {
    if (target.name == name) return target;
  }
  throw std::invalid_argument("no fuzz target " + std::string(name));
}

}  // namespace basinwright::fuzz
