#include "basinwright/report/batch_line.hpp"

#include <utility>

#include "basinwright/dates/date.hpp"
#include "basinwright/money/money.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Object;
using document::Value;

std::string_view outcome_word(int status, const Subject* subject) {
  switch (status) {
    case 0:
      return subject != nullptr && !subject->plan.provisional.empty() ? "provisional" : "planned";
    case 1:
      return "problems";
    case 3:
      return subject != nullptr && subject->plan.stopped() ? "stop" : "no-dates";
    case 4:
      return "file";
    default:
      return "fault";
  }
}

Value text_or_nothing(std::string_view text) {
  return text.empty() ? Value() : Value(text);
}

void add_plan(Object& line, const Subject* s) {
  const bool priced = s != nullptr && s->plan.price.has_value();
  const bool dated = s != nullptr && !s->plan.stopped() && s->plan.programme.feasible;
  const auto& currency = s != nullptr ? s->rates.currency : money::Currency{};
  line.emplace_back("number", s != nullptr ? text_or_nothing(s->job.heading.number) : Value());
  line.emplace_back("currency", priced ? Value(currency.name()) : Value());
  line.emplace_back("total",
                    priced ? Value(money::plain(s->plan.price->total, currency)) : Value());
  line.emplace_back("kits",
                    s != nullptr && !s->plan.stopped() ? Value(s->plan.quantities.kits) : Value());
  line.emplace_back("start", dated ? Value(dates::iso(s->plan.programme.start)) : Value());
  line.emplace_back("refill_done",
                    dated ? Value(dates::iso(s->plan.programme.refill_done)) : Value());
}

std::string why_not(const job::Plan& plan) {
  if (plan.route.stop)
    return task(plan.route.stop->step) + ": " + std::string(stop(plan.route.stop->why).why);
  if (plan.programme.blocked_by) return blocked(*plan.programme.blocked_by);
  return "";
}

// The first error; without one, what stands in the way; without that, the first warning.
void add_problem(Object& line, const Outcome& outcome, const Subject* subject) {
  std::string words = outcome.fault;
  if (words.empty() && !outcome.problem_is_error && subject != nullptr)
    words = why_not(subject->plan);
  const bool placed = words.empty() && outcome.problems > 0;
  line.emplace_back("problems", outcome.problems);
  // A job of a stream stands on one line, which is the stream's.
  line.emplace_back(
      "problem_line",
      placed ? Value(outcome.line > 0 ? outcome.line : outcome.problem_line) : Value());
  line.emplace_back("problem_column", placed ? Value(outcome.problem_column) : Value());
  line.emplace_back("problem", text_or_nothing(placed ? outcome.problem : words));
}

}  // namespace

Object batch_line(const Outcome& outcome, const Subject* subject) {
  constexpr std::size_t members = 14;
  Object line;
  line.reserve(members);
  line.emplace_back("status", outcome.status);
  line.emplace_back("outcome", outcome_word(outcome.status, subject));
  line.emplace_back("job", outcome.job);
  add_plan(line, subject);
  add_problem(line, outcome, subject);
  line.emplace_back("digest", outcome.digest);
  return line;
}

document::Document batch_row(const Object& line) {
  document::Table table;
  document::Row row;
  for (const auto& [key, value] : line) {
    table.columns.push_back({key, key});
    row.cells.push_back({"", value});
  }
  table.key = "jobs";
  table.rows.push_back(std::move(row));
  document::Document page;
  page.sections.emplace_back().blocks.emplace_back(std::move(table));
  return page;
}

}  // namespace basinwright::report
