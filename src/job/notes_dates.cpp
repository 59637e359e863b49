// The programme's dates and counts from its tasks, and how long the cure takes.
#include <fmt/format.h>

#include <set>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"
#include "notes.hpp"

namespace basinwright::job {
namespace {

using sequence::Booking;

class DateNotes {
 public:
  DateNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), p_(plan.programme), t_(plan.trace) {}

  void record() {
    counts();
    if (p_.feasible) facts();
  }

 private:
  void counts() {
    std::set<dates::Date> days;
    for (const Booking& booking : p_.bookings) {
      for (const sequence::Worked& day : booking.worked) days.insert(day.date);
    }
    note_days(t_, "programme.days_on_site", p_.days_on_site, days);
    const auto reworks =
        std::ranges::count(p_.bookings, std::string(sitelog::rework_task), &Booking::task);
    t_.note("programme.reworks",
            static_cast<double>(reworks),
            fmt::format("{}", reworks),
            {},
            "recoat windows that are missed and made good");
    t_.note("programme.split_coats",
            static_cast<double>(p_.split_coats),
            fmt::format("{}", p_.split_coats),
            {},
            "coats of a section that do not follow one another");
  }

  void facts() {
    const auto booked = [&](std::string_view task) {
      return std::ranges::find(p_.bookings, task, &Booking::task);
    };
    note_same(t_, "programme.start", at(p_.start), "programme.tasks.0.start");
    const auto fill = booked("fill");
    if (fill != p_.bookings.end()) {
      note_same(t_, "programme.fill_start", at(p_.fill_start), booking_key(p_, *fill, "start"));
      note_same(t_, "programme.refill_done", at(p_.refill_done), booking_key(p_, *fill, "end"));
    }
    const auto start_up = booked("start-up");
    if (start_up != p_.bookings.end()) {
      t_.note("programme.first_swim",
              at(p_.first_swim),
              "ceil(ready / 86400) * 86400",
              {{"ready", at(start_up->end), trace::From{booking_key(p_, *start_up, "end")}}},
              "a whole day, and by the readings");
    }
    cure_days();
  }

  // Every quarter counts 1/warm to 1/cold by the mean of its day; their mean counts for all.
  void cure_days() {
    const auto& warm = plan_.system.cure_warm;
    const auto& cold = plan_.system.cure_cold;
    t_.note("programme.cure_days",
            p_.cure,
            "ceil(1 / (1 / cold + (1 / warm - 1 / cold) * warmth) / 900 - 0.000001) * 900",
            {{"cold", cold}, {"warm", warm}, {"warmth", warmth(), warmth_source()}},
            "each day counts by its mean temperature, from cold or unknown, 0 %, to warm, 100 %: "
            "warmth is what the days of the cure come to on average");
  }

  [[nodiscard]] sources::Source warmth_source() const {
    return given_at(p_.cure_by_weather ? "the weather file" : "/site/mean_temperatures");
  }

  [[nodiscard]] units::Fraction warmth() const {
    const auto& warm = plan_.system.cure_warm.value;
    const auto& cold = plan_.system.cure_cold.value;
    // Of the weather only the outcome is at hand here.
    if (p_.cure_by_weather) return units::fraction((cold / p_.cure - 1.0) / (cold / warm - 1.0));
    const auto cured = std::ranges::find(p_.bookings, "cure", &Booking::task);
    const sequence::Waits& w = rates_.waits;
    double sum = 0.0;
    for (auto q = cured->start.quarters(); q < cured->end.quarters(); ++q) {
      const dates::Date day = dates::Moment::of_quarters(q).date();
      const auto& mean = job_.site.temperatures[dates::month(day) - 1];
      if (!mean) continue;
      const double degrees =
          (*mean - w.cure_cold_at.value) / (w.cure_warm_at.value - w.cure_cold_at.value);
      sum += std::clamp(degrees, 0.0, 1.0);
    }
    return units::fraction(sum /
                           static_cast<double>(cured->end.quarters() - cured->start.quarters()));
  }

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  const sequence::Programme& p_;
  trace::Trace& t_;
};

}  // namespace

void note_days(trace::Trace& trace,
               const std::string& key,
               std::int64_t count,
               const std::set<dates::Date>& days) {
  std::string sum;
  std::string words;
  for (const dates::Date day : days) {
    sum += sum.empty() ? "1" : " + 1";
    words += (words.empty() ? "" : ", ") + dates::short_day(day);
  }
  trace.note(key, static_cast<double>(count), sum.empty() ? "0" : sum, {}, words);
}

void note_dates(const Job& job, const RateBook& rates, Plan& plan) {
  DateNotes(job, rates, plan).record();
}

}  // namespace basinwright::job
