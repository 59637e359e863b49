#include "basinwright/cli/run.hpp"

#include <chrono>
#include <csignal>
#include <exception>
#include <set>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/job/offer.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/job/weather_strip.hpp"
#include "basinwright/readers/schema.hpp"
#include "basinwright/report/pages.hpp"
#include "batch.hpp"
#include "command_line.hpp"
#include "files.hpp"
#include "inputs.hpp"
#include "output.hpp"
#include "record.hpp"
#include "site.hpp"
#include "starter.hpp"

namespace basinwright::cli {
namespace {

// Where each given value of the plan stands.
std::vector<report::GivenPlace> places_of(const job::Plan& plan, const Inputs& inputs) {
  std::set<std::string> pointers;
  for (const trace::Step& step : plan.trace.steps()) {
    for (const trace::Input& input : step.inputs) {
      if (input.kind == sources::Kind::given && input.from.empty())
        pointers.insert(input.source_place);
    }
  }
  std::vector<report::GivenPlace> places;
  for (const std::string& pointer : pointers) {
    std::string place = place_of(inputs, pointer);
    if (!place.empty()) places.push_back({pointer, std::move(place)});
  }
  return places;
}

Status explain(const Request& r, const report::Subject& subject, const Inputs& inputs) {
  const auto page = report::explain(subject, r.quantity, places_of(subject.plan, inputs));
  if (page) return put(r, *page);
  const std::vector<std::string> keys = report::explainable(subject);
  const std::vector<std::string_view> known(keys.begin(), keys.end());
  const std::string_view near = diagnostics::nearest(r.quantity, known);
  complain("basinwright: nothing called \"" + r.quantity + "\" was computed" +
           (near.empty() ? std::string() : "; did you mean \"" + std::string(near) + "\"?") + "\n");
  return Status::misuse;
}

// Carries out one request whose files are sound.
class Errand {
 public:
  Errand(const Request& r, const Inputs& inputs) : r_(r), inputs_(inputs) {
    now_.today =
        r.today.value_or(std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now()));
    now_.start = r.start;
    // A page that can be opened says how its numbers were reached.
    now_.explain = r.command == Command::explain ||
                   (r.command == Command::jobsheet && r.format == Format::html);
    now_.take_off_only =
        r.command == Command::takeoff || (now_.explain && r.quantity.starts_with("takeoff."));
    const dates::Date near = r.start.value_or(job().heading.start.value_or(now_.today));
    weather_ = weather_record(inputs, job(), near);
    if (!inputs.hours.empty()) now_.weather = &weather_;
  }

  Status run() {
    const job::Plan plan = job::make_plan(job(), *inputs_.rates, now_);
    report::Subject subject = subject_of(job(), plan);
    const std::optional<job::Odds> odds = odds_of(plan);
    if (odds) subject.odds = &*odds;
    const std::vector<job::StripDay> strip =
        draws_programme() ? job::weather_strip(job(), *inputs_.rates, plan, now_)
                          : std::vector<job::StripDay>();
    subject.strip = &strip;
    switch (r_.command) {
      case Command::explain:
        return explain(r_, subject, inputs_);
      case Command::takeoff:
        return take_off(subject);
      case Command::quote:
        return r_.other ? vary(subject) : quote(subject);
      case Command::compare:
        return compare(subject);
      case Command::odds:
        return chances(subject);
      case Command::checklist:
        return dated(put(r_, report::checklist(subject)), plan);
      case Command::handover:
        return dated(put(r_, report::handover(subject)), plan);
      case Command::jobsheet:
      case Command::starter:
      case Command::schema:
      case Command::completions:
      case Command::manual_page:
      case Command::check:
      case Command::batch:
      case Command::record:
      case Command::replan:
      case Command::today:
      case Command::coating_record:
        break;
    }
    return dated(put(r_, sheet(subject)), plan);
  }

 private:
  [[nodiscard]] const job::Job& job() const { return *inputs_.jobs.front().job; }

  [[nodiscard]] report::Subject subject_of(const job::Job& job, const job::Plan& plan) const {
    return {job,
            *inputs_.rates,
            plan,
            r_.units.value_or(job.units),
            r_.paper,
            r_.both_units,
            now_.today};
  }

  [[nodiscard]] bool draws_programme() const {
    return r_.command == Command::jobsheet &&
           (r_.format == Format::html || r_.format == Format::svg);
  }

  [[nodiscard]] document::Document sheet(const report::Subject& subject) const {
    if (r_.format == Format::svg) return report::programme_chart(subject);
    if (r_.format == Format::html)
      return report::job_pack(subject, places_of(subject.plan, inputs_));
    return report::jobsheet(subject);
  }

  [[nodiscard]] std::optional<job::Odds> odds_of(const job::Plan& plan) const {
    if (inputs_.past.empty()) return {};
    const weather::Record past = past_record(inputs_);
    return job::odds_of(job(), *inputs_.rates, now_, plan, {past, r_.by, r_.weeks});
  }

  // A page about a job that must stop, or fits no dates, was printed; the status says so.
  static Status dated(Status printed, const job::Plan& plan) {
    if (printed != Status::done) return printed;
    return plan.stopped() || !plan.programme.feasible ? Status::stop : Status::done;
  }

  Status chances(const report::Subject& subject) {
    const Status printed = put(r_, report::odds(subject));
    if (printed != Status::done) return printed;
    return subject.odds == nullptr || subject.odds->years.empty() ? Status::stop : Status::done;
  }

  Status take_off(const report::Subject& subject) {
    const Status printed = put(r_, report::takeoff(subject));
    if (printed != Status::done) return printed;
    return report::floats(subject.plan) ? Status::stop : Status::done;
  }

  Status quote(const report::Subject& subject) {
    const job::Offer offer = job::offer_of(job(), *inputs_.rates, now_, subject.plan);
    return dated(put(r_, report::quotation(subject, offer)), subject.plan);
  }

  // What was quoted stands first in time, second on the command line.
  Status vary(const report::Subject& subject) {
    const job::Job& quoted = *inputs_.jobs.back().job;
    const job::Plan before = job::make_plan(quoted, *inputs_.rates, now_);
    return dated(put(r_, report::variation(subject_of(quoted, before), subject)), subject.plan);
  }

  Status compare(const report::Subject& subject) {
    const job::Job& other = *inputs_.jobs.back().job;
    const job::Plan plan = job::make_plan(other, *inputs_.rates, now_);
    return put(
        r_,
        report::comparison(subject,
                           subject_of(other, plan),
                           {inputs_.jobs.front().input.name, inputs_.jobs.back().input.name}));
  }

  const Request& r_;
  const Inputs& inputs_;
  job::Circumstances now_;
  weather::Record weather_;
};

Status carry_out(const Request& r) {
  auto read = read_inputs(r);
  if (const auto* status = std::get_if<Status>(&read)) return *status;
  const Inputs& inputs = std::get<Inputs>(read);
  if (r.command == Command::check) {
    const Status printed = put(r, worded_problems(r, inputs));
    if (printed != Status::done) return printed;
    return refused(r, inputs) ? Status::problems : Status::done;
  }
  complain(worded_problems(r, inputs));
  if (refused(r, inputs)) return Status::problems;
  if (r.command == Command::record) return record(r, inputs);
  const bool running =
      r.command == Command::replan || r.command == Command::today ||
      r.command == Command::coating_record ||
      ((r.command == Command::handover || r.command == Command::checklist) && !r.log.empty());
  if (running) return running_job(r, inputs);
  return Errand(r, inputs).run();
}

// What the program says about itself: for editors, shells and man.
std::string about_itself(const Request& r) {
  if (r.command == Command::completions) return completions(r.topic, command_tree());
  if (r.command == Command::manual_page) return manual_page(command_tree());
  const auto subject = r.topic == "rates"   ? readers::Subject::rate_book
                       : r.topic == "log"   ? readers::Subject::site_log
                       : r.topic == "crews" ? readers::Subject::crews_file
                                            : readers::Subject::job_file;
  return readers::schema(
      subject, r.draft == "07" ? readers::Draft::draft_07 : readers::Draft::draft_2020_12);
}

Status leave(const Leave& leave) {
  if (leave.status == Status::done) {
    return print_out(leave.text) == Printed::failed ? Status::file : Status::done;
  }
  complain(leave.text);
  return leave.status;
}

}  // namespace

int run(const std::vector<std::string>& arguments) {
  // A reader that leaves early is no fault; the write says so by itself.
  std::signal(SIGPIPE, SIG_IGN);
  try {
    const auto parsed = parse_arguments(arguments);
    if (const auto* words = std::get_if<Leave>(&parsed)) return static_cast<int>(leave(*words));
    const Request& request = std::get<Request>(parsed);
    switch (request.command) {
      case Command::batch:
        return static_cast<int>(batch(request));
      case Command::starter:
        return static_cast<int>(make_starter(request));
      case Command::schema:
      case Command::completions:
      case Command::manual_page:
        return static_cast<int>(put(request, about_itself(request)));
      default:
        return static_cast<int>(carry_out(request));
    }
  } catch (const std::exception& fault) {
    complain(std::string("basinwright: this is our fault, not yours: ") + fault.what() + "\n");
  } catch (...) {
    complain("basinwright: this is our fault, not yours\n");
  }
  return static_cast<int>(Status::ours);
}

}  // namespace basinwright::cli
