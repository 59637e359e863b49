// Purchases: what is needed, the packs it takes, what is left over and when to order.
#include <fmt/format.h>

#include "basinwright/sources/pointer.hpp"
#include "basinwright/units/unit.hpp"
#include "notes.hpp"
#include "ordering.hpp"

namespace basinwright::job {
namespace {

using quote::Measure;
using quote::Purchase;

class GoodsNotes {
 public:
  GoodsNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), t_(plan.trace) {}

  void record() {
    for (std::size_t i = 0; i < plan_.purchases.size(); ++i) {
      const Purchase& p = plan_.purchases[i];
      const std::string here = fmt::format("purchases.{}.", i);
      need(here, p);
      for (std::size_t k = 0; k < p.packs.size(); ++k) pack(here, p, k);
      left_over(here, p);
      total(here, p);
      if (plan_.order_by[i]) order_by(here, p, *plan_.order_by[i]);
    }
  }

 private:
  // Litres and kilograms in SI; pieces as they are.
  template <class Note>
  void measured(const Purchase& p, std::int64_t n, Note note) {
    const auto count = static_cast<double>(n);
    if (p.measure == Measure::volume) return note(units::millilitres(count));
    if (p.measure == Measure::mass) return note(units::grams(count));
    note(count);
  }
  // Millilitres in a cubic metre, grams in a kilogram, pieces.
  [[nodiscard]] static double parts_in_si(const Purchase& p) {
    if (p.measure == Measure::volume) return 1e6;
    return p.measure == Measure::mass ? 1e3 : 1.0;
  }

  /// The step that says how much of an item is needed; empty: several.
  [[nodiscard]] std::string need_key(const Purchase& p) const {
    const std::string q = "quantities.";
    if (p.use == "sump") return q + "neutralise.sump_worst_kg";
    if (p.use == "chlorine-wash") return q + "wash_water.thiosulfate_kg";
    if (!p.use.empty()) return "";
    if (p.item == "hypochlorite")
      return q + (p.measure == Measure::volume ? "chlorine_wash.liquid_l"
                                               : "chlorine_wash.granules_kg");
    if (p.item == "degreaser") return q + "degrease.concentrate_l";
    if (p.item == "filler") return q + "filler.litres";
    if (p.item == "mortar") return q + "mortar_kg";
    if (p.item == "acid") return q + "etch.acid_l";
    if (p.item == "bicarbonate") return q + "neutralise.surface_kg";
    return p.item == "thinner" ? q + "coats.thinner_l" : "";
  }

  void need(const std::string& here, const Purchase& p) {
    const std::string key = here + "need";
    if (p.item == "coating" || p.item == "primer") return paint(key, p);
    const std::string from = need_key(p);
    const trace::Step* step = t_.find(from);
    if (step == nullptr) return new_water(key, p);
    measured(p, p.need, [&](auto value) {
      using Q = decltype(value);
      t_.note(key,
              value,
              fmt::format("ceil(amount * {0} - 0.000001) / {0}", parts_in_si(p)),
              {{"amount", of<Q>(step->value.si), trace::From{from}}},
              rounded_up);
    });
  }

  template <class Q>
  [[nodiscard]] static Q of(double si) {
    if constexpr (std::is_same_v<Q, double>) {
      return si;
    } else {
      return Q::from_si(si);
    }
  }

  // Whole kits of every coat, section by section.
  void paint(const std::string& key, const Purchase& p) {
    const Quantities& q = plan_.quantities;
    const bool primer = p.item == "primer";
    const auto& kit = primer ? plan_.system.primer.kit : plan_.system.kit;
    std::string formula;
    std::vector<Term<double>> kits;
    if (primer) {
      kits.push_back({"kits", static_cast<double>(q.primer->kits), "quantities.primer.kits"});
    } else if (q.cut.kits.size() > 1) {
      for (std::size_t s = 0; s < q.cut.kits.size(); ++s) {
        kits.push_back({fmt::format("kits_{}", s + 1),
                        static_cast<double>(q.cut.kits[s]),
                        fmt::format("quantities.sections.{}.kits", s)});
      }
    } else {
      kits.push_back({"kits", static_cast<double>(q.coats.front().kits), "quantities.coats.kits"});
    }
    std::vector<trace::Operand> operands{{"kit", kit}};
    for (const Term<double>& one : kits) {
      formula += (formula.empty() ? "" : " + ") +
                 fmt::format("ceil({} * kit * {} - 0.000001)", one.name, parts_in_si(p));
      operands.emplace_back(one.name, one.value, trace::From{one.from});
    }
    formula = fmt::format("({}) / {}", formula, parts_in_si(p));
    const double coats = primer ? 1.0 : static_cast<double>(q.coats.size());
    if (!primer) {
      formula = "coats * " + formula;
      operands.emplace_back("coats", coats, coats_source(job_, plan_));
    }
    measured(p, p.need, [&](auto value) { t_.note_all(key, value, formula, operands); });
  }

  // All parts of the doses of the new water.
  void new_water(const std::string& key, const Purchase& p) {
    std::string formula;
    std::vector<std::string> names;
    std::vector<std::string> from;
    std::vector<double> amounts;
    for (std::size_t i = 0; i < plan_.water.additions.size(); ++i) {
      const Addition& a = plan_.water.additions[i];
      if (item_of(a.what) != p.item) continue;
      names.push_back(fmt::format("part_{}", names.size() + 1));
      from.push_back(fmt::format("refill.additions.{}.amount", i));
      amounts.push_back(a.mass > units::Mass() ? a.mass.si() : a.volume.si());
      formula += (formula.empty() ? "" : " + ") + names.back();
    }
    measured(p, p.need, [&](auto value) {
      using Q = decltype(value);
      std::vector<trace::Operand> operands;
      for (std::size_t i = 0; i < names.size(); ++i)
        operands.emplace_back(names[i], of<Q>(amounts[i]), trace::From{from[i]});
      t_.note_all(
          key,
          value,
          fmt::format("ceil(({}) * {} - 0.000001) / {}", formula, parts_in_si(p), parts_in_si(p)),
          operands);
    });
  }

  [[nodiscard]] static std::string_view item_of(std::string_view what) {
    if (what == "chlorine-liquid") return "liquid chlorine";
    if (what == "chlorine-granules") return "chlorine granules";
    if (what == "alkalinity-acid" || what == "ph-acid") return "acid";
    if (what == "ph-soda-ash") return "soda ash";
    return what == "calcium-chloride" ? "calcium chloride" : what;
  }

  // Where the rate book has the pack: under the system's own name first.
  [[nodiscard]] std::string pack_pointer(const Purchase& p, const quote::Bought& b) const {
    const std::string& system = plan_.system.name;
    const std::string own = p.item == "coating" ? system : system + " " + p.item;
    for (const std::string& name : {own, p.item, std::string("hypochlorite")}) {
      const auto item = rates_.items.find(name);
      if (item == rates_.items.end()) continue;
      const auto& packs = item->second.packs;
      const auto pack = std::ranges::find_if(packs, [&](const purchase::Pack& one) {
        return one.size == b.size && one.price == b.unit_price && one.supplier == b.supplier;
      });
      if (pack != packs.end())
        return fmt::format("/packs/{}/{}", sources::pointer_part(name), pack - packs.begin());
    }
    return "/packs/" + sources::pointer_part(p.item);
  }

  void pack(const std::string& here, const Purchase& p, std::size_t k) {
    const quote::Bought& b = p.packs[k];
    const std::string at = fmt::format("{}packs.{}.", here, k);
    const std::string book = pack_pointer(p, b);
    measured(
        p, b.size, [&](auto size) { note_taken(t_, at + "size", size, given_at(book + "/size")); });
    const auto count = static_cast<double>(b.count);
    const double by_need = std::ceil(static_cast<double>(p.need) / static_cast<double>(b.size));
    if (p.packs.size() == 1 && by_need == count) {
      measured(p, p.need, [&](auto need) {
        measured(p, b.size, [&](auto size) {
          t_.note(at + "count",
                  count,
                  "ceil(need / size - 0.000000001)",
                  {{"need", need, trace::From{here + "need"}},
                   {"size", size, trace::From{at + "size"}}},
                  cheapest);
        });
      });
    } else {
      t_.note(at + "count", count, fmt::format("{}", b.count), {}, cheapest);
    }
    const Price price = in_units(b.unit_price, rates_.currency);
    note_taken(t_, at + "unit_price", price, given_at(book + "/price"));
    t_.note(at + "total",
            in_units(b.total, rates_.currency),
            "count * price",
            {{"count", count, trace::From{at + "count"}},
             {"price", price, trace::From{at + "unit_price"}}});
  }

  void left_over(const std::string& here, const Purchase& p) {
    std::int64_t bought = 0;
    std::string formula;
    std::vector<std::string> names;
    std::vector<std::string> from;
    for (std::size_t k = 0; k < p.packs.size(); ++k) {
      bought += p.packs[k].size * p.packs[k].count;
      for (const char* what : {"count", "size"}) {
        names.push_back(fmt::format("{}_{}", what, k + 1));
        from.push_back(fmt::format("{}packs.{}.{}", here, k, what));
      }
      formula += fmt::format(
          "{}{} * {}", k == 0 ? "" : " + ", names[names.size() - 2], names[names.size() - 1]);
    }
    const std::string key = here + "left_over";
    measured(p, p.left_over, [&](auto left) {
      using Q = decltype(left);
      if (p.packs.empty() || bought - p.need != p.left_over)
        return t_.note(key, left, "0", {}, "sizes rounded up to whole units leave nothing"), void();
      std::vector<trace::Operand> operands;
      for (std::size_t k = 0; k < p.packs.size(); ++k) {
        operands.emplace_back(
            names[2 * k], static_cast<double>(p.packs[k].count), trace::From{from[2 * k]});
        measured(p, p.packs[k].size, [&](auto size) {
          operands.emplace_back(names[2 * k + 1], size, trace::From{from[2 * k + 1]});
        });
      }
      const std::string need = here + "need";
      measured(p, p.need, [&](auto amount) {
        operands.emplace_back("need", amount, trace::From{need});
        t_.note_all(key, of<Q>(left_si(left)), formula + " - need", operands);
      });
    });
    value_left(here, p, bought);
  }
  static double left_si(double pieces) { return pieces; }
  template <class Q>
  static double left_si(Q quantity) {
    return quantity.si();
  }

  void value_left(const std::string& here, const Purchase& p, std::int64_t bought) {
    const double decimals = std::pow(10.0, rates_.currency.decimals);
    const Price worth = in_units(p.left_over_value, rates_.currency);
    if (bought == 0) return t_.note(here + "left_over_value", worth, "0", {}), void();
    measured(p, bought, [&](auto all) {
      measured(p, p.left_over, [&](auto left) {
        t_.note(here + "left_over_value",
                worth,
                fmt::format("round(total * left / bought * {0}) / {0}", decimals),
                {{"total", in_units(p.total, rates_.currency), trace::From{here + "total"}},
                 {"left", left, trace::From{here + "left_over"}},
                 {"bought", all, given_at("/packs/" + sources::pointer_part(p.item))}},
                "its share of the price paid, to the smallest coin");
      });
    });
  }

  void total(const std::string& here, const Purchase& p) {
    std::vector<Term<Price>> terms;
    for (std::size_t k = 0; k < p.packs.size(); ++k) {
      terms.push_back({fmt::format("packs_{}", k + 1),
                       in_units(p.packs[k].total, rates_.currency),
                       fmt::format("{}packs.{}.total", here, k)});
    }
    note_terms(t_, here + "total", in_units(p.total, rates_.currency), terms);
  }

  // A day before its first use on the yard, its supplier's lead before that, each back to a
  // working day.
  void order_by(const std::string& here, const Purchase& p, dates::Date day) {
    const auto& bookings = plan_.programme.bookings;
    const auto use = std::ranges::find(bookings, first_use(p), &sequence::Booking::task);
    if (use == bookings.end()) return;
    const auto& reserve = rates_.waits.delivered_before;
    const Supplier* last = nullptr;
    for (const quote::Bought& b : p.packs) {
      const auto it = std::ranges::find(rates_.suppliers, b.supplier, &Supplier::name);
      if (it == rates_.suppliers.end() || !it->lead) continue;
      if (last == nullptr || *it->lead > *last->lead) last = &*it;
    }
    if (last == nullptr) return;
    const auto whole = [](units::Duration time) {
      constexpr double hair = 1e-9;
      return units::days(std::ceil(time.in(units::days)-hair));
    };
    const double days = at(use->start.date()).seconds - at(day).seconds;
    const units::Duration closed =
        units::Duration::from_si(days) - whole(reserve.value) - whole(*last->lead);
    t_.note(here + "order_by",
            at(day),
            "floor(use / 86400) * 86400 - ceil(reserve / 86400 - 0.000000001) * 86400 - ceil(lead "
            "/ 86400 - 0.000000001) * 86400 - closed",
            {{"use", at(use->start), trace::From{booking_key(plan_.programme, *use, "start")}},
             {"reserve", reserve},
             {"lead",
              *last->lead,
              given_at("/suppliers/" + sources::pointer_part(last->name) + "/lead")},
             {"closed", closed, days_source(job_)}},
            "before its first use, each step back to a working day");
  }

  static constexpr std::string_view rounded_up = "rounded up to a millilitre, gram or piece";
  static constexpr std::string_view cheapest =
      "the cheapest whole packs that reach; among equals the least waste, then the fewest";

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  trace::Trace& t_;
};

}  // namespace

void note_goods(const Job& job, const RateBook& rates, Plan& plan) {
  if (!plan.stopped() && plan.price) GoodsNotes(job, rates, plan).record();
}

}  // namespace basinwright::job
