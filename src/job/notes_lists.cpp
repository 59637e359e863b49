// What is counted by a rule, hired by the day, thrown away, worked and paid.
#include <fmt/format.h>

#include <set>

#include "basinwright/units/unit.hpp"
#include "notes.hpp"
#include "pricing.hpp"

namespace basinwright::job {
namespace {

using units::Duration;

class ListNotes {
 public:
  ListNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), t_(plan.trace) {}

  void record() {
    counted("consumables", plan_.consumables, rates_.consumables);
    counted("protection", plan_.protection, rates_.protection);
    hire();
    waste();
    labour();
    price();
  }

 private:
  [[nodiscard]] Price of(const money::Money& money) const {
    return in_units(money, rates_.currency);
  }

  /// What a rule counts by, and where that stands.
  [[nodiscard]] trace::Operand basis(quote::Per per, std::string_view place) const {
    const auto step = [&](std::string_view key) {
      trace::Operand operand{"basis", 0.0, trace::From{key}};
      if (const trace::Step* found = t_.find(key)) operand.value = found->value;
      return operand;
    };
    const auto given = [&](double value, const sources::Source& source) {
      return trace::Operand{"basis", value, source};
    };
    const quote::Basis all = basis_of(job_, plan_);
    switch (per) {
      case quote::Per::job:
        return given(1.0, given_at(place));
      case quote::Per::day:
        return step("programme.days_on_site");
      case quote::Per::person:
        return given(all.of(per), job_.crew.people.source);
      case quote::Per::painter:
        return given(all.of(per), job_.crew.painters.source);
      case quote::Per::painted_area:
        return step("takeoff.painted_area_m2");
      case quote::Per::abraded_area:
      case quote::Per::etched_area:
        return given(all.of(per), given_at("/surfaces"));
      case quote::Per::edge:
        return step("takeoff.perimeter_m");
      case quote::Per::coat_session:
        return given(all.of(per), given_at("/coating"));
      case quote::Per::kit:
        return step("quantities.kits");
      case quote::Per::tread_area:
        return step("takeoff.tread_area_m2");
      case quote::Per::step_edge:
        return step("takeoff.step_edge_m");
    }
    return given(all.of(per), given_at("/"));
  }

  void counted(const char* list,
               const std::vector<quote::Counted>& all,
               const std::vector<quote::Rule>& rules) {
    for (std::size_t i = 0; i < all.size(); ++i) {
      const quote::Counted& one = all[i];
      const std::string here = fmt::format("{}.{}.", list, i);
      const auto rule = std::ranges::find_if(rules, [&](const quote::Rule& r) {
        return r.item == one.rule.item && r.rate == one.rule.rate && r.price == one.rule.price;
      });
      const std::string book = fmt::format("/{}/{}", list, rule - rules.begin());
      const std::string per = book + "/per";
      const auto count = static_cast<double>(one.count);
      t_.note(here + "count",
              count,
              "ceil(rate * basis - 0.000000001)",
              {{"rate", one.rule.rate, given_at(book + "/rate")}, basis(one.rule.per, per)},
              "whole pieces");
      t_.note(here + "total",
              of(one.total),
              "count * price",
              {{"count", count, trace::From{here + "count"}},
               {"price", of(one.rule.price), given_at(book + "/price")}});
    }
  }

  void hire() {
    std::size_t row = 0;
    for (std::size_t i = 0; i < rates_.hire.size(); ++i) {
      const quote::Hire& hire = rates_.hire[i];
      const std::vector<dates::Date> days = hired_days(plan_.programme, hire.task);
      if (days.empty()) continue;
      const quote::Hired& hired = plan_.hire[row];
      const std::string here = fmt::format("hire.{}.", row++);
      note_days(t_, here + "days", hired.days, {days.begin(), days.end()});
      t_.note(here + "total",
              of(hired.total),
              "days * price",
              {{"days", static_cast<double>(hired.days), trace::From{here + "days"}},
               {"price", of(hire.day), given_at(fmt::format("/hire/{}/day", i))}});
    }
  }

  void waste() {
    for (std::size_t i = 0; i < plan_.waste.size(); ++i) {
      const Waste& w = plan_.waste[i];
      const std::string key = fmt::format("waste.{}.amount", i);
      const auto volume = [&](const char* from) {
        const double size = w.unit == "m3" ? 1.0 : units::litres(1).si();
        note_same(t_, key, units::Volume::from_si(w.amount * size), from);
      };
      if (w.what == "pool-water") volume("takeoff.water_volume_m3");
      if (w.what == "chlorine-wash") volume("quantities.chlorine_wash.solution_l");
      if (w.what == "degreasing-wash") volume("quantities.degrease.mixed_l");
      if (w.what == "etch-wash") volume("quantities.etch.solution_l");
      if (w.what == "neutralising-wash") volume("quantities.neutralise.water_l");
      if (w.what == "dust") note_same(t_, key, units::kilograms(w.amount), "quantities.dust_kg");
      if (w.what == "rags") t_.note(key, 0.0, "0", {}, "nobody can say how much");
      if (w.what != "kit-cans") continue;
      t_.note(
          key,
          w.amount,
          "2 * kits",
          {{"kits", static_cast<double>(plan_.quantities.kits), trace::From{"quantities.kits"}}},
          "a can of Part A and one of Part B a kit");
    }
  }

  // Work of one task, its sections together.
  [[nodiscard]] std::vector<Term<Duration>> hours_of(const std::string& task) {
    std::vector<Term<Duration>> terms;
    for (const sequence::Work& w : plan_.work) {
      if (w.task != task || w.person_hours <= Duration()) continue;
      const std::string key = fmt::format("labour.{}.part_{}", task, terms.size() + 1);
      note_taken(t_,
                 key,
                 w.person_hours,
                 w.task == "vacuum" ? rates_.productivity.vacuum.source
                                    : given_at("/productivity/" + formula_name(task)),
                 "area, with its texture, over the rate of work");
      terms.push_back({"section", w.person_hours, key});
    }
    return terms;
  }

  void labour() {
    for (std::size_t i = 0; i < plan_.labour.size(); ++i) {
      const quote::LabourLine& line = plan_.labour[i];
      const std::string here = fmt::format("labour.{}.", i);
      const bool premium = line.person_hours == Duration();
      if (premium) {
        t_.note(here + "person_hours", Duration(), "0", {}, "on hours counted above");
        t_.note(here + "crew_hours", Duration(), "0", {}, "on hours counted above");
        t_.note(here + "total",
                of(line.total),
                fmt::format("{}", of(line.total).units),
                {},
                "the share over the wage for each quarter hour on dearer days or outside the "
                "crew's hours, rounded once");
        continue;
      }
      hours(here, line);
      wages(here, line);
    }
  }

  void hours(const std::string& here, const quote::LabourLine& line) {
    const std::string person = here + "person_hours";
    const bool set_up = line.task == "set-up and clean-up";
    if (set_up) return set_up_hours(here, line);
    const std::string known = "labour." + line.task;
    if (t_.find(known) != nullptr) {
      note_same(t_, person, line.person_hours, known);
    } else {
      note_terms(t_, person, line.person_hours, hours_of(line.task));
    }
    const double people = line.person_hours / line.crew_hours;
    const bool paint = line.task == "prime" || line.task.starts_with("coat-");
    t_.note(here + "crew_hours",
            line.crew_hours,
            "hours / people",
            {{"hours", line.person_hours, trace::From{person}},
             {"people", people, (paint ? job_.crew.painters : job_.crew.people).source}},
            "by those who work on it at once");
  }

  void set_up_hours(const std::string& here, const quote::LabourLine& line) {
    const auto& daily = rates_.productivity.daily_set_up;
    t_.note(here + "crew_hours",
            line.crew_hours,
            "daily * days",
            {{"daily", daily},
             {"days",
              static_cast<double>(plan_.programme.days_on_site),
              trace::From{"programme.days_on_site"}}});
    t_.note(here + "person_hours",
            line.person_hours,
            "crew * people",
            {{"crew", line.crew_hours, trace::From{here + "crew_hours"}},
             {"people", line.person_hours / line.crew_hours, job_.crew.people.source}});
  }

  void wages(const std::string& here, const quote::LabourLine& line) {
    const double coins = std::pow(10.0, rates_.currency.decimals);
    t_.note(here + "total",
            of(line.total),
            fmt::format("round(hours / 3600 * wage * {0}) / {0}", coins),
            {{"hours", line.person_hours, trace::From{here + "person_hours"}},
             {"wage", of(rates_.labour.hour), given_at("/labour/hour")}},
            "seconds into hours at the wage, to the smallest coin");
  }

  void price() {
    for (std::size_t i = 0; i < plan_.price->taxes.size(); ++i) {
      const quote::Taxed& tax = plan_.price->taxes[i];
      const std::string here = fmt::format("price.taxes.{}.", i);
      const double coins = std::pow(10.0, rates_.currency.decimals);
      const double rate =
          static_cast<double>(tax.rate.millionths) / static_cast<double>(money::whole);
      note_taken(t_, here + "rate_percent", units::fraction(rate), given_at("/tax/rate"));
      if (plan_.price->taxes.size() == 1) {
        note_same(t_, here + "net", of(tax.net), "price.net");
      } else {
        note_taken(t_,
                   here + "net",
                   of(tax.net),
                   given_at("/tax/other_rates"),
                   "the costs under this rate, with their share of what is laid on all");
      }
      t_.note(here + "amount",
              of(tax.amount),
              fmt::format("round(net * rate * {0}) / {0}", coins),
              {{"net", of(tax.net), trace::From{here + "net"}},
               {"rate", units::fraction(rate), trace::From{here + "rate_percent"}}},
              "to the smallest coin");
    }
    stages();
    branches();
  }

  void stages() {
    const auto& stages = plan_.price->stages;
    for (std::size_t i = 0; i < stages.size(); ++i) {
      const std::string key = fmt::format("price.stages.{}.amount", i);
      const Price total = of(plan_.price->total);
      if (stages.size() == 1) {
        note_same(t_, key, total, "price.total");
        continue;
      }
      t_.note(key,
              of(stages[i].amount),
              "total * share",
              {{"total", total, trace::From{"price.total"}},
               {"share", of(stages[i].amount) / total, given_at("/terms")}},
              "as agreed, coins shared out so that the stages are the total");
    }
  }

  // Until the coating is tested there are two ways; the one priced is a step of its own.
  void branches() {
    for (std::size_t i = 0; i < plan_.either.size(); ++i) {
      const Branch& branch = plan_.either[i];
      const std::string here = fmt::format("price.either.{}.", i);
      const bool priced = branch.code == "test-passes";
      const char* words = "the whole job planned and priced once more with the other outcome";
      const sources::Source other = given_at("/surfaces");
      if (branch.total && priced) {
        note_same(t_, here + "total", of(*branch.total), "price.total");
      } else if (branch.total) {
        note_taken(t_, here + "total", of(*branch.total), other, words);
      }
      if (branch.refill_done && priced) {
        note_same(t_, here + "refill_done", at(*branch.refill_done), "programme.refill_done");
      } else if (branch.refill_done) {
        note_taken(t_, here + "refill_done", at(*branch.refill_done), other, words);
      }
    }
  }

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  trace::Trace& t_;
};

}  // namespace

void note_lists(const Job& job, const RateBook& rates, Plan& plan) {
  if (!plan.stopped() && plan.price) ListNotes(job, rates, plan).record();
}

}  // namespace basinwright::job
