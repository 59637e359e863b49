// The price on random jobs at fixed dates. What must hold whatever the numbers: common practice for
// what more work, more coats and dearer goods do; for sums, that a column adds up as printed.
#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <random>
#include <regex>

#include "basinwright/render/csv.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/render/markdown.hpp"
#include "basinwright/render/text.hpp"
#include "basinwright/report/pages.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using nlohmann::json;

class Cases {
 public:
  explicit Cases(unsigned seed) : random_(seed) {}

  int number(int low, int high) {
    return low + static_cast<int>(random_() % static_cast<unsigned>(high - low + 1));
  }
  bool coin() { return number(0, 1) == 1; }

  /// A box in centimetres, dry and tested, so that nothing but its size is open.
  json job() {
    json j = json::parse(R"({"job": {"start": "2027-06-07"}, "condition": {"lead_test": "clear"},
      "site": {"mean_temperatures": {"6": "20 C", "7": "20 C", "8": "20 C"}},
      "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}]})");
    j["pool"]["outline"] = {{"kind", "rectangle"},
                            {"length", number(500, 1400) / 100.0},
                            {"width", number(300, 600) / 100.0}};
    j["pool"]["floor"] = {{"kind", "constant"}, {"depth", number(100, 220) / 100.0}};
    j["coating"]["coats"] = number(2, 4);
    if (coin()) j["surfaces"][0]["bare_share"] = fmt::format("{} %", number(0, 40));
    if (coin()) j["condition"]["algae"] = "normal";
    if (coin()) j["condition"]["oils"] = "heavy";
    j["crew"] = {{"people", number(3, 5)}, {"painters", number(2, 3)}};
    if (coin()) j["terms"]["discount"] = fmt::format("{} %", number(1, 20));
    if (coin()) {
      j["terms"]["stages"] = json::parse(R"([{"event": "on order", "share": "33.3 %"},
        {"event": "last coat on", "share": "33.3 %"}, {"event": "handover", "share": "33.4 %"}])");
    } else if (coin()) {
      j["terms"]["deposit"] = fmt::format("{} %", number(1, 50));
    }
    return j;
  }

  /// A rate book in a currency of so many decimals, prices of any last digit.
  json book(const std::string& code) {
    const money::Currency currency = money::currency(code).value();
    int scale = 1;
    for (int i = 0; i < currency.decimals; ++i) scale *= 10;
    const auto amount = [&](int low, int high) {
      return money::plain(money::Money::of_minor(number(low * scale, high * scale)), currency);
    };
    json b = {{"basinwright_rates", 1}, {"currency", code}};
    b["labour"] = {{"hour", amount(20, 60)}};
    b["tax"] = {{"name", "tax"}, {"rate", fmt::format("{}.{} %", number(0, 24), number(0, 999))}};
    b["disposal"] = amount(0, 100);
    b["overheads"] = {
        {coin() ? "markup" : "margin", fmt::format("{}.{} %", number(1, 40), number(0, 9))},
        {"contingency", fmt::format("{} %", number(0, 10))},
        {"travel", amount(0, 40)},
        {"call_out", amount(0, 4000)}};
    const auto packs = [&](const char* item, const std::vector<std::string>& sizes) {
      for (const std::string& size : sizes)
        b["packs"][item].push_back({{"size", size}, {"price", amount(5, 150)}});
    };
    packs("coating", {"3.5 L"});
    packs("primer", {"3.5 L"});
    packs("thinner", {"1 L", "250 mL"});
    packs("acid", {"5 L", "9 L", "25 L"});
    packs("hypochlorite", {"5 L", "20 L"});
    packs("degreaser", {"1 L", "250 mL"});
    packs("bicarbonate", {"1 kg", "5 kg", "25 kg"});
    b["hire"] = {{{"item", "pump"}, {"day", amount(5, 30)}}};
    b["consumables"] = {
        {{"item", "disc"}, {"per", "abraded_area"}, {"rate", 0.31}, {"price", amount(1, 5)}},
        {{"item", "roller"}, {"per", "coat_session"}, {"rate", 3}, {"price", amount(1, 9)}}};
    b["protection"] = {
        {{"item", "gloves"}, {"per", "person"}, {"rate", 4}, {"price", amount(1, 4)}}};
    return b;
  }

 private:
  std::mt19937 random_;
};

// Why a job has no dates is not asked here: that is dear.
job::Plan plan_of(const job::Job& job, const job::RateBook& rates) {
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  now.reasons = false;
  return job::make_plan(job, rates, now);
}
job::Plan plan_of(const json& job, const json& book) {
  return plan_of(test::job_of(job.dump()), test::rates_of(book.dump()));
}

// Paths of every amount that is paid for something.
std::vector<std::string> prices_in(const json& book) {
  std::vector<std::string> paths{
      "/labour/hour", "/disposal", "/overheads/travel", "/overheads/call_out"};
  for (const auto& [item, packs] : book["packs"].items()) {
    for (std::size_t i = 0; i < packs.size(); ++i)
      paths.push_back(fmt::format("/packs/{}/{}/price", item, i));
  }
  paths.insert(
      paths.end(),
      {"/hire/0/day", "/consumables/0/price", "/consumables/1/price", "/protection/0/price"});
  return paths;
}

// The amounts at the ends of the lines of a section, in order, in minor units.
std::vector<money::Money> amounts_in(const std::string& page,
                                     const std::string& from,
                                     const std::string& to,
                                     const money::Currency& currency) {
  const std::size_t start = page.find(from);
  REQUIRE(start != std::string::npos);
  std::string part = page.substr(start + from.size());
  part = part.substr(0, part.find(to)) + "\n";
  std::erase(part, ',');
  std::vector<money::Money> out;
  static const std::regex last(R"((-?[0-9]+(\.[0-9]+)?)[*| ]*\r?\n)");
  for (std::sregex_iterator it(part.begin(), part.end(), last), end; it != end; ++it)
    out.push_back(money::parse((*it)[1].str(), currency).value());
  return out;
}

money::Money sum_of(const std::vector<money::Money>& amounts) {
  money::Money sum;
  for (const money::Money amount : amounts) sum += amount;
  return sum;
}

// Lines, then net, tax and total at the end; then what is paid when.
void check_column(std::vector<money::Money> column, const std::vector<money::Money>& stages) {
  REQUIRE(column.size() > 3);
  const money::Money total = column.back();
  const money::Money tax = column[column.size() - 2];
  const money::Money net = column[column.size() - 3];
  column.resize(column.size() - 3);
  CHECK(sum_of(column) == net);
  CHECK(net + tax == total);
  CHECK(sum_of(stages) == total);
}

std::vector<money::Money> amounts_of(const json& rows, const money::Currency& currency) {
  std::vector<money::Money> out;
  for (const json& row : rows)
    out.push_back(money::parse(row["amount"].get<std::string>(), currency).value());
  return out;
}

void check_formats(const job::Job& job, const job::RateBook& rates, const job::Plan& plan) {
  const auto page = report::jobsheet({job, rates, plan});
  const money::Currency& c = rates.currency;
  const std::string title = "Price, " + std::string(c.name());
  const std::string text = render::text(page, {80, false, false});
  check_column(amounts_in(text, title, "Payments", c),
               amounts_in(text, "Payments\n", "\nProgramme", c));
  const std::string md = render::markdown(page);
  check_column(amounts_in(md, title, "Payments", c), amounts_in(md, "Payments\n", "\n## ", c));
  const json price = json::parse(render::json(page))["price"];
  auto column = amounts_of(price["lines"], c);
  for (const char* key : {"net", "tax", "total"})
    column.push_back(money::parse(price[key].get<std::string>(), c).value());
  check_column(column, amounts_of(price["stages"], c));
  const std::string csv = render::csv(page);
  CHECK(sum_of(amounts_in(csv, "what,amount\r\n", "\r\n\r\n", c)) == plan.price->net);
  CHECK(sum_of(amounts_in(csv, "event,amount\r\n", "\r\n\r\n", c)) == plan.price->total);
}

}  // namespace

TEST_CASE("lines sum to the subtotal and stages to the total in every format") {
  Cases cases(20270601);
  for (const char* code : {"JPY", "EUR", "KWD", "CLF"}) {
    for (int i = 0; i < places::some_of(5); ++i) {
      const json j = cases.job();
      const json b = cases.book(code);
      INFO(j.dump() << b.dump());
      const job::Job job = test::job_of(j.dump());
      const job::RateBook rates = test::rates_of(b.dump());
      const job::Plan plan = plan_of(job, rates);
      REQUIRE(plan.price.has_value());
      CHECK(plan.price->net > money::Money());
      check_formats(job, rates, plan);
    }
  }
}

// The calendar is left out: a larger pool may be finished on fewer days of the week, so what is
// paid by the day is priced at nothing here.
TEST_CASE("more area never costs less") {
  Cases cases(20270602);
  for (int i = 0; i < places::some_of(10); ++i) {
    json j = cases.job();
    json b = cases.book("EUR");
    b["overheads"]["travel"] = "0.00";
    b["hire"] = json::array();
    b["productivity"] = {{"daily_set_up", "0 min"}};
    money::Money before;
    std::int64_t kits = 0;
    for (int step = 0; step < 4; ++step) {
      INFO(j.dump() << b.dump());
      const job::Plan plan = plan_of(j, b);
      REQUIRE(plan.price.has_value());
      CHECK(plan.price->total >= before);
      CHECK(plan.quantities.kits >= kits);
      before = plan.price->total;
      kits = plan.quantities.kits;
      double& length = *j["pool"]["outline"]["length"].get_ptr<double*>();
      length += cases.number(1, 80) / 100.0;
    }
  }
}

TEST_CASE("more coats never need fewer kits nor cost less") {
  Cases cases(20270603);
  for (int i = 0; i < places::some_of(10); ++i) {
    json j = cases.job();
    const json b = cases.book("EUR");
    std::int64_t kits = 0;
    money::Money materials;
    for (int coats = 2; coats <= 5; ++coats) {
      j["coating"]["coats"] = coats;
      INFO(j.dump());
      const job::Plan plan = plan_of(j, b);
      CHECK(plan.quantities.kits > kits);
      money::Money sum;
      for (const quote::Purchase& p : plan.purchases) sum += p.total;
      CHECK(sum > materials);
      kits = plan.quantities.kits;
      materials = sum;
    }
  }
}

TEST_CASE("a price rise never lowers the total") {
  Cases cases(20270604);
  for (int i = 0; i < places::some_of(4); ++i) {
    json j = cases.job();
    if (cases.coin()) j["terms"]["rounding"] = cases.coin() ? "5.00" : "10.00";
    const json b = cases.book("EUR");
    const money::Money before = plan_of(j, b).price->total;
    for (const std::string& path : prices_in(b)) {
      json dearer = b;
      json& at = dearer.at(json::json_pointer(path));
      const money::Currency euro = money::currency("EUR").value();
      const money::Money was = money::parse(at.get<std::string>(), euro).value();
      at = money::plain(was + money::Money::of_minor(cases.number(1, 3000)), euro);
      INFO(path << " from " << money::plain(was, euro) << " to " << at << " " << j.dump()
                << b.dump());
      CHECK(plan_of(j, dearer).price->total >= before);
    }
  }
}
