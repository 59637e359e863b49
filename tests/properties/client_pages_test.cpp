// The client's pages in every format: what the contractor pays, earns and tells the crew stays out,
// what a written quotation holds is in (consumer guidance of several countries, from memory).
#include <nlohmann/json.hpp>

#include "basinwright/job/offer.hpp"
#include "basinwright/render/csv.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/render/markdown.hpp"
#include "basinwright/render/text.hpp"
#include "basinwright/report/pages.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using nlohmann::json;

// Every price and name of the book made unmistakable.
json marked_book() {
  json book = json::parse(test::file_text("examples/l-shape-us.rates.json"));
  book["labour"]["hour"] = "77.31";
  book["overheads"] = {{"markup", "23.457 %"},
                       {"contingency", "6.789 %"},
                       {"call_out", "411.13"},
                       {"travel", "38.17"}};
  book["disposal"] = "93.19";
  for (auto& [item, packs] : book["packs"].items()) {
    for (json& pack : packs) pack["supplier"] = "Leaky Supplier";
  }
  book["suppliers"] = {{"Leaky Supplier", {{"lead", "4 d"}}}};
  book["options"] = json::parse(
      R"([{ "item": "slip-resistant treads", "per": "tread_area", "rate": 1, "price": "55.11" },
          { "item": "depth marks", "per": "job", "rate": 6, "price": "12.37" }])");
  return book;
}

std::vector<std::string> in_every_format(const document::Document& page) {
  return {render::text(page, {80, false, false}),
          render::text(page, {80, false, true}),
          render::markdown(page),
          render::csv(page),
          render::json(page)};
}

struct Pages {
  job::Job job;
  job::RateBook rates;
  job::Plan plan;
  job::Offer offer;
};

Pages pages_of(const std::string& example, const json& book) {
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  Pages p{test::job_of(test::file_text(example)), test::rates_of(book.dump()), {}, {}};
  p.plan = job::make_plan(p.job, p.rates, now);
  p.offer = job::offer_of(p.job, p.rates, now, p.plan);
  return p;
}

const std::vector<std::string> examples{"examples/l-shape-us.json",
                                        "examples/plain-pool.json",
                                        "examples/freeform-southern-summer.json",
                                        "examples/pool-and-spa.json"};

// What must not be found: costs, wages, margins, suppliers, productivity, the crew.
std::vector<std::string> secrets(const Pages& p) {
  std::vector<std::string> words{"77.31",
                                 "23.457",
                                 "6.789",
                                 "411.13",
                                 "38.17",
                                 "93.19",
                                 "Leaky",
                                 "mark-up",
                                 "contingency",
                                 "margin",
                                 "55.11",
                                 "12.37",
                                 "wages",
                                 "crew hours",
                                 "person-hour",
                                 "Person",
                                 "supplier",
                                 "overhead",
                                 "painters"};
  const auto amount = [&](money::Money m) {
    if (m > money::Money::of_minor(1000)) words.push_back(money::plain(m, p.rates.currency));
  };
  for (const quote::Line& line : p.plan.price->lines) amount(line.amount);
  for (const quote::LabourLine& line : p.plan.labour) amount(line.total);
  for (const quote::Purchase& purchase : p.plan.purchases) amount(purchase.total);
  return words;
}

std::string without_commas(std::string text) {
  std::erase(text, ',');
  return text;
}

void search(const std::string& page, const std::vector<std::string>& words) {
  const std::string plain = without_commas(page);
  for (const std::string& word : words) {
    INFO(word);
    CHECK(plain.find(word) == std::string::npos);
  }
}

}  // namespace

TEST_CASE("no cost, margin, wage or crew note stands in a quotation") {
  for (const std::string& example : examples) {
    INFO(example);
    const Pages p = pages_of(example, marked_book());
    REQUIRE(p.plan.price.has_value());
    const auto words = secrets(p);
    CHECK(words.size() > 25);
    for (const std::string& page :
         in_every_format(report::quotation({p.job, p.rates, p.plan}, p.offer)))
      search(page, words);
    // The same search finds them on the contractor's own sheet.
    const std::string sheet = without_commas(
        render::text(report::jobsheet({p.job, p.rates, p.plan}), {80, false, false}));
    CHECK(sheet.find("Leaky") != std::string::npos);
    CHECK(sheet.find("mark-up") != std::string::npos);
  }
}

TEST_CASE("no cost, margin, wage or crew note stands in a variation") {
  for (const std::string& example : examples) {
    INFO(example);
    const Pages before = pages_of(example, marked_book());
    Pages after = before;
    after.job.coating.coats = static_cast<int>(before.plan.quantities.coats.size()) + 1;
    job::Circumstances now;
    now.today = test::day("2027-01-04");
    after.plan = job::make_plan(after.job, after.rates, now);
    auto words = secrets(before);
    const auto more = secrets(after);
    words.insert(words.end(), more.begin(), more.end());
    const auto page = report::variation({before.job, before.rates, before.plan},
                                        {after.job, after.rates, after.plan});
    for (const std::string& text : in_every_format(page)) search(text, words);
    const json tree = json::parse(render::json(page));
    CHECK(tree["variation"]["price"].size() == 2 + before.plan.price->taxes.size());
    CHECK(tree["variation"]["price"].back()["other"] ==
          money::plain(after.plan.price->total, after.rates.currency));
  }
}

TEST_CASE("a quotation holds what a written one should") {
  const Pages p = pages_of("examples/l-shape-us.json", marked_book());
  const json page = json::parse(render::json(report::quotation({p.job, p.rates, p.plan}, p.offer)));
  const json& q = page["quotation"];
  for (const char* key : {"number",
                          "revision",
                          "date",
                          "valid_until",
                          "client",
                          "contractor",
                          "scope",
                          "coating",
                          "included",
                          "excluded",
                          "assumptions",
                          "allowances",
                          "price",
                          "dates",
                          "options",
                          "care"}) {
    INFO(key);
    CHECK(q.contains(key));
  }
  CHECK(q["contractor"]["registration"] == "EX-000");
  CHECK(q["price"]["total"] == money::plain(p.plan.price->total, p.rates.currency));
  // One coat more and the depth marks; this pool has no treads.
  REQUIRE(q["options"].size() == 2);
  CHECK(q["options"][0]["code"] == "one-more-coat");
  // Six marks at 12.37, contingency 6.789 %, mark-up 23.457 %, tax 6.25 %, by hand: 74.22 x
  // 1.06789 = 79.2588; x 1.23457 = 97.8505; x 1.0625 = 103.9662. Each line of the whole price is
  // rounded once, so a cent either way.
  const auto marks = money::parse(q["options"][1]["adds"].get<std::string>(), p.rates.currency);
  CHECK(std::abs(marks->minor() - 10397) <= 2);
}

TEST_CASE("an untested coating is an estimate with both prices") {
  json job = json::parse(test::file_text("examples/plain-pool.json"));
  job.erase("surfaces");
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  const job::Job read = test::job_of(job.dump());
  const job::RateBook rates = test::demonstration();
  const job::Plan plan = job::make_plan(read, rates, now);
  const job::Offer offer = job::offer_of(read, rates, now, plan);
  const json page = json::parse(render::json(report::quotation({read, rates, plan}, offer)));
  CHECK(page["quotation"]["firm"] == false);
  REQUIRE(page["quotation"]["either"].size() == 2);
  CHECK(page["quotation"]["either"][0]["if"] == "test-passes");
  CHECK(page["quotation"]["either"][1]["if"] == "strip");
}

TEST_CASE("the changes of a comparison sum to the difference") {
  const Pages one = pages_of("examples/plain-pool.json", marked_book());
  const Pages other = pages_of("examples/l-shape-us.json", marked_book());
  const auto page = report::comparison(
      {one.job, one.rates, one.plan}, {other.job, other.rates, other.plan}, {"a", "b"});
  const json tree = json::parse(render::json(page))["comparison"];
  money::Money sum;
  for (const json& line : tree["bridge"])
    sum += *money::parse(line["change"].get<std::string>(), one.rates.currency);
  CHECK(sum == other.plan.price->total - one.plan.price->total);
  CHECK(tree["total_change"] == money::plain(sum, one.rates.currency));
}
