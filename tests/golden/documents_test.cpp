// The crew's and the client's papers of a whole plan.
#include <fmt/format.h>

#include <algorithm>

#include "basinwright/render/json.hpp"
#include "basinwright/render/text.hpp"
#include "basinwright/report/pages.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

struct Made {
  job::Job job;
  job::RateBook rates;
  job::Plan plan;

  [[nodiscard]] report::Subject subject() const {
    report::Subject s{job, rates, plan};
    s.today = test::day("2027-01-04");
    return s;
  }
};

Made made(const std::string& text) {
  const job::RateBook rates = test::demonstration();
  return {test::job_of(text), rates, test::plan_of(text, rates)};
}

Made plain_pool_document() {
  return made(test::file_text("examples/plain-pool.json"));
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// The words of a page without its line breaks.
std::string words_of(const document::Document& page) {
  std::string text = render::text(page, {200, false, false});
  std::string out;
  for (const char ch : text) {
    const char c = ch == '\n' ? ' ' : ch;
    if (c != ' ' || !out.ends_with(' ')) out += c;
  }
  return out;
}

const document::Entry* entry_of(const document::Agenda& agenda, const std::string& uid) {
  const auto it = std::ranges::find(agenda.entries, uid, &document::Entry::uid);
  return it == agenda.entries.end() ? nullptr : &*it;
}

}  // namespace

TEST_CASE("the checklist holds every hold point with its limit, every day and every card") {
  const Made pool = plain_pool_document();
  const std::string words = words_of(report::checklist(pool.subject()));
  for (const char* part : {"No gloss left anywhere",
                           "Within 1 unit of the rinse water",
                           "No water under them, no dark patch",
                           "Emergency and first aid",
                           "Acid mix card",
                           "Coating mix card · Coat 1",
                           "Coating mix card · Coat 2",
                           "Morning card",
                           "Evening card",
                           "Batch A",
                           "licensed electrician",
                           "[ ]",
                           "________"}) {
    INFO(part);
    CHECK(has(words, part));
  }
  // Limits beside the readings: ISO 8502-4 (3 C, 85 %), MIL-HDBK-1110 7.4.1 (32 C), data sheet.
  CHECK(has(words, "10 °C to 30 °C"));
  CHECK(has(words, "10 °C to 32 °C"));
  CHECK(has(words, "at most 85 %"));
  CHECK(has(words, "at least 3.0 °C"));
}

TEST_CASE("instruments are listed, each with its rule") {
  // Common practice: surface and air thermometer, hygrometer, a comb for each painter, a gas meter
  // in a deep shell.
  const auto words = [](double depth) {
    const Made pool = made(fmt::format(
        R"({{"pool": {{"outline": {{"kind": "rectangle", "length": 8, "width": 4}},
            "floor": {{"kind": "constant", "depth": {}}}}}, "crew": {{"painters": 3, "people": 4}}}})",
        depth));
    return words_of(report::jobsheet(pool.subject()));
  };
  const std::string shallow = words(1.2);
  for (const char* part : {"thermometer for the air 1 1 a job",
                           "surface thermometer 1 1 a job",
                           "hygrometer 1 1 a job",
                           "wet-film comb 3 1 a painter"}) {
    INFO(part);
    CHECK(has(shallow, part));
  }
  CHECK_FALSE(has(shallow, "gas meter"));
  CHECK(has(words(2.6), "gas meter"));
}

TEST_CASE("a caution stands in the step it matters on, before anything is done") {
  const Made pool = plain_pool_document();
  const document::Document page = report::checklist(pool.subject());
  const auto step = std::ranges::find(page.sections, "Etch walls", &document::Section::title);
  REQUIRE(step != page.sections.end());
  std::size_t caution = step->blocks.size();
  std::size_t action = 0;
  for (std::size_t i = 0; i < step->blocks.size(); ++i) {
    const auto* said = std::get_if<document::Paragraph>(&step->blocks[i]);
    if (said != nullptr && has(said->text, "never water into acid")) caution = i;
    if (std::holds_alternative<document::List>(step->blocks[i])) action = i;
  }
  CHECK(caution < action);
}

// Bicarbonate on acid gives off carbon dioxide; painting gives off none.
TEST_CASE("gas of the acid is said where there is acid, not to the painters") {
  const Made pool = plain_pool_document();
  const document::Document page = report::checklist(pool.subject());
  const auto speaks_of_gas = [&](const char* title) {
    const auto step = std::ranges::find(page.sections, title, &document::Section::title);
    REQUIRE(step != page.sections.end());
    bool sinks = false;
    bool gas = false;
    for (const document::Block& block : step->blocks) {
      const auto* said = std::get_if<document::Paragraph>(&block);
      if (said == nullptr || !has(said->text, "sink to the deep end")) continue;
      sinks = true;
      gas = has(said->text, "Neutralising all the acid gives up to");
    }
    CHECK(sinks);
    return gas;
  };
  CHECK(speaks_of_gas("Neutralise, rinse"));
  CHECK_FALSE(speaks_of_gas("Coat 1"));
}

// ANSI/ISEA Z358.1: 15 minutes; the rest common practice.
TEST_CASE("figures in sentences for the crew come from their sources") {
  const Made pool = plain_pool_document();
  const std::string words = words_of(report::checklist(pool.subject()));
  for (const char* part : {"for at least 15 minutes, eyelids held open",
                           "300 turns with a flat metal stirrer",
                           "after 4 to 6 hours nothing is tacky",
                           "Tacky after 4 to 6 hours: undermixed"})
    CHECK(has(words, part));
  const Made asked = made(R"({"pool": {"outline": {"kind": "rectangle", "length": 8, "width": 4},
                        "floor": {"kind": "constant", "depth": 1.5}},
               "refill": {"targets": {"ph": 7.3, "free_chlorine": 2}}})");
  const std::string kept = words_of(report::handover(asked.subject()));
  CHECK(has(kept, "pH 7.1 to 7.5"));
  CHECK(has(kept, "2.0 mg/L or as local code asks"));
  CHECK_FALSE(has(kept, "7.4"));
}

TEST_CASE("a stopped job has a checklist that says so and no steps") {
  const Made stopped = made(R"({"pool": {"outline": {"kind": "rectangle", "length": 8, "width": 4},
                        "floor": {"kind": "constant", "depth": 1.5}},
               "surfaces": [{"substrate": "fibreglass"}]})");
  REQUIRE(stopped.plan.stopped());
  const std::string list = words_of(report::checklist(stopped.subject()));
  CHECK(has(list, "Nobody starts"));
  CHECK_FALSE(has(list, "Acid mix card"));
  CHECK(has(words_of(report::handover(stopped.subject())), "nothing was painted"));
}

TEST_CASE("the handover shows no cost, and what the client has to know") {
  const Made pool = plain_pool_document();
  const document::Document page = report::handover(pool.subject());
  const std::string words = words_of(page) + render::json(page);
  const std::string total = money::plain(pool.plan.price->total, pool.rates.currency);
  for (const std::string never :
       {total.c_str(), "margin", "wage", "Wages", "mark-up", "Person-hours"})
    CHECK_FALSE(has(words, never));
  for (const char* part :
       {"First-swim test", "What voids it", "7.4 to 7.8", "pale blue", "Batch A"})
    CHECK(has(words, part));
}

TEST_CASE("an order lists each item once, also where one name is part of another") {
  Made pool = plain_pool_document();
  job::Order order;
  order.supplier = "Any";
  order.by = test::day("2027-05-01");
  for (const char* item : {"liquid chlorine", "chlorine", "chlorine", "acid"})
    order.packs.push_back({item, quote::Measure::volume, {}});
  pool.plan.orders = {order};
  const document::Agenda agenda = report::jobsheet(pool.subject()).agenda;
  const auto* entry = entry_of(agenda, "BW%2D0001-order-Any@basinwright.invalid");
  REQUIRE(entry != nullptr);
  CHECK(entry->description == "liquid chlorine, chlorine, acid");
}

TEST_CASE("the agenda has work, orders, hold points and the close of the recoat window") {
  const Made pool = plain_pool_document();
  const document::Agenda agenda = report::jobsheet(pool.subject()).agenda;
  CHECK(agenda.stamp == "2027-01-04");
  const auto& bookings = pool.plan.programme.bookings;
  const auto coat = std::ranges::find(bookings, "coat-1", &sequence::Booking::task);
  REQUIRE(coat != bookings.end());
  const auto* work = entry_of(agenda, "BW%2D0001-task-coat%2D1%2F1@basinwright.invalid");
  if (work == nullptr) work = entry_of(agenda, "BW%2D0001-task-coat%2D1@basinwright.invalid");
  REQUIRE(work != nullptr);
  CHECK(work->start == dates::iso(coat->start));
  CHECK(work->end == dates::iso(coat->end));
  // The usual data sheet's window ends 24 h after the coat below was begun.
  const auto window =
      std::ranges::find(agenda.entries, document::EntryKind::deadline, &document::Entry::kind);
  REQUIRE(window != agenda.entries.end());
  CHECK(window->start == dates::iso(dates::Moment::of_quarters(coat->start.quarters() + 96)));
  std::vector<std::string> uids;
  for (const document::Entry& one : agenda.entries) uids.push_back(one.uid);
  std::ranges::sort(uids);
  CHECK(std::ranges::adjacent_find(uids) == uids.end());
  const auto holds = std::ranges::count_if(agenda.entries, [](const document::Entry& one) {
    return one.kind == document::EntryKind::to_do && has(one.uid, "-hold-");
  });
  std::size_t wanted = 0;
  for (const auto& step : pool.plan.route.steps) wanted += step.holds.size();
  CHECK(static_cast<std::size_t>(holds) >= wanted);
}

TEST_CASE("the chart of the programme has a bar for each task, and says why there are no dates") {
  const Made pool = plain_pool_document();
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  const auto strip = job::weather_strip(pool.job, pool.rates, pool.plan, now);
  report::Subject subject = pool.subject();
  subject.strip = &strip;
  const document::Document page = report::programme_chart(subject);
  const auto& drawing = std::get<document::Drawing>(page.sections.front().blocks.front());
  std::size_t bars = 0;
  for (const document::Mark& mark : drawing.marks) {
    const auto* shape = std::get_if<document::Shape>(&mark);
    if (shape != nullptr && shape->name == "bar" && shape->fill != document::Fill::none) ++bars;
  }
  CHECK(bars == pool.plan.programme.bookings.size());
  for (const document::Mark& mark : drawing.marks) {
    const auto* label = std::get_if<document::Label>(&mark);
    if (label == nullptr) continue;
    INFO(label->text);
    CHECK(label->at.x >= 0.0);
    CHECK(label->at.x <= drawing.width);
    CHECK(label->at.y <= drawing.height);
  }
  const document::Document none = report::programme_chart(pool.subject());
  CHECK(has(std::get<document::Drawing>(none.sections.front().blocks.front()).description,
            "No dates"));
}
