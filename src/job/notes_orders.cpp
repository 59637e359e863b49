// Orders: kits by what area and cover may be, and the days of each supplier.
#include <fmt/format.h>

#include "basinwright/sources/pointer.hpp"
#include "basinwright/units/unit.hpp"
#include "notes.hpp"
#include "ordering.hpp"

namespace basinwright::job {
namespace {

class OrderNotes {
 public:
  OrderNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), t_(plan.trace), order_(plan.quantities.order) {}

  void record() {
    note_taken(
        t_, "orders.confidence", rates_.order_confidence.value, rates_.order_confidence.source);
    kits();
    for (std::size_t i = 0; i < order_.choices.size(); ++i) choice(i);
    if (t_.find("orders.short_chance") == nullptr) {
      note_taken(t_, "orders.short_chance", order_.short_chance, rectangle, chance_words);
    }
    for (std::size_t k = 0; k < plan_.orders.size(); ++k) supplier(k);
  }

 private:
  [[nodiscard]] double coats() const { return static_cast<double>(plan_.quantities.coats.size()); }
  [[nodiscard]] trace::Operand coats_operand() const {
    return {"coats", coats(), coats_source(job_, plan_)};
  }

  // Section by section where each is painted from kits of its own.
  void kits_at(const char* name,
               std::int64_t kits,
               double stretch,
               const Sourced<units::Area>& cover) {
    const coverage::Cut& cut = plan_.quantities.cut;
    const bool apart = !cut.names.empty();
    std::string formula;
    std::vector<std::string> names;
    std::vector<std::string> from;
    std::vector<units::Area> areas;
    for (std::size_t s = 0; s < (apart ? cut.sections.size() : 1); ++s) {
      names.push_back(apart ? fmt::format("section_{}", s + 1) : "area");
      from.push_back(apart ? fmt::format("quantities.sections.{}.area_m2", s)
                           : "takeoff.painted_area_m2");
      areas.push_back(apart ? cut.sections[s] : plan_.take_off.painted);
      formula += fmt::format(
          "{}ceil({} * stretch / cover - 0.000000001)", s == 0 ? "" : " + ", names.back());
    }
    std::vector<trace::Operand> operands{coats_operand(), {"cover", cover}};
    operands.emplace_back("stretch", stretch, trace::From{stretch_key(stretch)});
    for (std::size_t s = 0; s < names.size(); ++s)
      operands.emplace_back(names[s], areas[s], trace::From{from[s]});
    t_.note_all(std::string("orders.") + name,
                static_cast<double>(kits) * coats(),
                "coats * (" + formula + ")",
                operands);
  }

  [[nodiscard]] static std::string_view stretch_key(double stretch) {
    if (stretch == 1.0) return "orders.stretch";
    return stretch < 1.0 ? "orders.stretch_low" : "orders.stretch_high";
  }

  // How much of the measured area there may be.
  void kits() {
    const units::Area painted = plan_.take_off.painted;
    const units::Area spread = (plan_.take_off.range.high - plan_.take_off.range.low) / 2.0;
    units::Area sum = painted;
    if (!plan_.quantities.cut.names.empty()) {
      sum = units::Area();
      for (const units::Area one : plan_.quantities.cut.sections) sum += one;
    }
    const double stretch = spread / sum;
    t_.note("orders.stretch", 1.0, "1", {}, "as measured");
    const auto note = [&](const char* key, double value, const char* formula) {
      t_.note(key,
              value,
              formula,
              {{"spread", spread, trace::From{"orders.spread_m2"}},
               {"area", sum, trace::From{"takeoff.painted_area_m2"}}},
              "the tape's tolerance over the area");
    };
    note("orders.stretch_low", 1.0 - stretch, "1 - spread / area");
    note("orders.stretch_high", 1.0 + stretch, "1 + spread / area");
    kits_at("kits_best", order_.best, 1.0 - stretch, plan_.system.cover_high);
    kits_at("kits_expected", order_.expected, 1.0, plan_.system.expected_cover());
    kits_at("kits_worst", order_.worst, 1.0 + stretch, plan_.system.cover_low);
    t_.note("orders.kits_ordered",
            static_cast<double>(order_.ordered) * coats(),
            fmt::format("coats * {}", order_.ordered),
            {coats_operand()},
            "the fewest from the expected ones up that reach with the confidence wanted");
  }

  void choice(std::size_t i) {
    const coverage::KitChoice& one = order_.choices[i];
    const std::string here = fmt::format("orders.choices.{}.", i);
    t_.note(here + "kits_a_coat",
            static_cast<double>(one.kits),
            fmt::format("{}", one.kits),
            {},
            "a number of kits from the fewest that may do to the most");
    t_.note(here + "kits",
            static_cast<double>(one.kits) * coats(),
            "kits * coats",
            {{"kits", static_cast<double>(one.kits), trace::From{here + "kits_a_coat"}},
             coats_operand()});
    chance(here, one);
  }

  // As for the kits ordered, with the numbers of this choice.
  void chance(const std::string& here, const coverage::KitChoice& one) {
    const trace::Step* ordered = t_.find("orders.short_chance");
    if (ordered == nullptr || ordered->inputs.size() < 2) {
      return note_taken(t_, here + "short_chance", one.short_chance, rectangle, chance_words);
    }
    const std::string formula = ordered->formula;
    t_.note(here + "short_chance",
            one.short_chance,
            formula,
            {{"area", plan_.take_off.painted, trace::From{"takeoff.painted_area_m2"}},
             {"spread",
              (plan_.take_off.range.high - plan_.take_off.range.low) / 2.0,
              trace::From{"orders.spread_m2"}},
             {"kits", static_cast<double>(one.kits), trace::From{here + "kits_a_coat"}},
             {"least", plan_.system.cover_low},
             {"most", plan_.system.cover_high}},
            chance_words);
  }

  void supplier(std::size_t k) {
    const Order& order = plan_.orders[k];
    const std::string here = fmt::format("orders.suppliers.{}.", k);
    const std::string book = "/suppliers/" + sources::pointer_part(order.supplier) + "/lead";
    if (order.lead) note_taken(t_, here + "lead_days", *order.lead, given_at(book));
    if (order.needed) needed(here, order);
    if (order.by && order.needed && order.lead) {
      t_.note(here + "order_by",
              at(*order.by),
              "needed - ceil(lead / 86400 - 0.000000001) * 86400 - closed",
              {{"needed", at(*order.needed), trace::From{here + "needed"}},
               {"lead", *order.lead, trace::From{here + "lead_days"}},
               {"closed", back_from(*order.needed, *order.lead, *order.by), days_source(job_)}},
              "back to a working day");
    }
    packs(here, order);
  }

  [[nodiscard]] static units::Duration back_from(dates::Date day,
                                                 units::Duration time,
                                                 dates::Date found) {
    constexpr double hair = 1e-9;
    const double whole = std::ceil(time.in(units::days)-hair);
    return units::days(static_cast<double>((day - found).count()) - whole);
  }
  // The first task that uses any of it begins that much later.
  void needed(const std::string& here, const Order& order) {
    const sequence::Booking* first = nullptr;
    const auto& reserve = rates_.waits.delivered_before;
    for (const sequence::Booking& b : plan_.programme.bookings) {
      const units::Duration closed = back_from(b.start.date(), reserve.value, *order.needed);
      constexpr double week = 7.0;
      if (closed.in(units::days) < 0.0 || closed.in(units::days) > week || b.done) continue;
      if (first == nullptr && is_first_use(b.task, order)) first = &b;
    }
    if (first == nullptr)
      return note_taken(
          t_, here + "needed", at(*order.needed), days_source(job_), "before first use");
    t_.note(here + "needed",
            at(*order.needed),
            "floor(use / 86400) * 86400 - ceil(reserve / 86400 - 0.000000001) * 86400 - closed",
            {{"use", at(first->start), trace::From{booking_key(plan_.programme, *first, "start")}},
             {"reserve", reserve},
             {"closed",
              back_from(first->start.date(), reserve.value, *order.needed),
              days_source(job_)}},
            "before the first task that uses any of it, back to a working day");
  }

  [[nodiscard]] bool is_first_use(const std::string& task, const Order& order) const {
    return std::ranges::any_of(plan_.purchases, [&](const quote::Purchase& p) {
      const bool his = std::ranges::any_of(
          p.packs, [&](const quote::Bought& b) { return b.supplier == order.supplier; });
      return his && first_use(p) == task;
    });
  }

  // The packs of an order are those of the purchases, in their order.
  void packs(const std::string& here, const Order& order) {
    std::size_t row = 0;
    std::vector<Term<Price>> totals;
    for (std::size_t i = 0; i < plan_.purchases.size(); ++i) {
      const auto& bought = plan_.purchases[i].packs;
      for (std::size_t k = 0; k < bought.size(); ++k) {
        if (bought[k].supplier != order.supplier) continue;
        const std::string from = fmt::format("purchases.{}.packs.{}.", i, k);
        const std::string to = fmt::format("{}packs.{}.", here, row++);
        for (const char* what : {"size", "count", "total"}) same(to + what, from + what);
        totals.push_back({"packs", in_units(bought[k].total, rates_.currency), to + "total"});
      }
    }
    note_terms(t_, here + "total", in_units(order.total, rates_.currency), totals);
  }

  void same(const std::string& key, const std::string& from) {
    const trace::Step* step = t_.find(from);
    if (step != nullptr) note_same(t_, key, trace::Amount(step->value), from);
  }

  static constexpr sources::Source rectangle{
      sources::Kind::from_memory, "jcgm-100", "4.3.7, every value as likely as another"};
  static constexpr std::string_view chance_words =
      "the part of the rectangle of areas and covers in which the kits do not reach";

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  trace::Trace& t_;
  const coverage::KitOrder& order_;
};

}  // namespace

void note_orders(const Job& job, const RateBook& rates, Plan& plan) {
  if (!plan.stopped() && plan.price) OrderNotes(job, rates, plan).record();
}

}  // namespace basinwright::job
