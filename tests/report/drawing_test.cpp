// The take-off's drawing against the reference shells (tests/reference/shells.json).
#include <regex>
#include <set>

#include "drawing_rows.hpp"
#include "drawing_shapes.hpp"

using namespace drawn;

namespace {

int denominator(const Drawing& drawing) {
  static const std::regex scale("Scale 1 : ([0-9]+)");
  for (const std::string& text : texts(drawing, "scale")) {
    std::smatch found;
    if (std::regex_search(text, found, scale)) return std::stoi(found[1]);
  }
  FAIL("no scale");
  return 0;
}

/// Square metres of the first shape of that name.
double real_area(const Drawing& drawing, const std::string& name) {
  const double metres = denominator(drawing) / 1000.0;
  return area_of(all<Shape>(drawing, name).at(0).trails.at(0)) * metres * metres;
}

// Thousands are set apart, as on every page that people read.
std::string with_decimals(double value, int decimals, const std::string& unit) {
  char digits[64];
  std::snprintf(digits, sizeof digits, "%.*f", decimals, value);
  std::string text = digits;
  for (auto at = text.find('.'); at > 3; at -= 3) text.insert(at - 3, ",");
  return text + unit;
}

}  // namespace

TEST_CASE("the outline on the sheet has the plan area of the reference") {
  const auto file = rows::shells();
  REQUIRE(file.at("rows").size() > 20);
  for (const auto& row : file.at("rows")) {
    INFO(row.at("name"));
    const Sketchbook book({rows::pool(row.at("pool"))});
    const auto& expected = row.at("expected");
    const double area = expected.contains("plan_area_m2")
                            ? expected.at("plan_area_m2").get<double>()
                            : book.plan.take_off.bodies[0].take_off.plan_area.si();
    CHECK(real_area(book.drawing(), "outline") == Approx(area).epsilon(1e-9));
  }
}

TEST_CASE("the figures under the plan are those of the reference") {
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    INFO(row.at("name"));
    const auto drawing = Sketchbook({rows::pool(row.at("pool"))}).drawing();
    const auto values = texts(drawing, "value");
    const auto& e = row.at("expected");
    const auto check = [&](const char* key, int decimals, const std::string& unit) {
      if (!e.contains(key)) return;
      const std::string wanted = with_decimals(e.at(key).get<double>(), decimals, unit);
      INFO(key << " " << wanted);
      CHECK(contains(values, wanted));
    };
    check("plan_area_m2", 1, " m\u00B2");
    check("perimeter_m", 2, " m");
    check("floor_area_m2", 1, " m\u00B2");
    check("painted_area_m2", 1, " m\u00B2");
    check("water_volume_m3", 1, " m\u00B3");
  }
}

// The measurements of the rows themselves.
TEST_CASE("walls, breaks and treads carry their measures") {
  const auto l = of_row("L_breaks").drawing();
  const auto lengths = texts(l, "wall-length");
  CHECK(std::multiset<std::string>(lengths.begin(), lengths.end()) ==
        std::multiset<std::string>{"11.00 m", "4.00 m", "4.00 m", "2.50 m", "7.00 m", "6.50 m"});
  const auto numbers = texts(l, "wall-number");
  CHECK(std::set<std::string>(numbers.begin(), numbers.end()) ==
        std::set<std::string>{"0", "1", "2", "3", "4", "5"});
  CHECK(contains(texts(l, "dimension"), "11.00 m"));
  CHECK(contains(texts(l, "dimension"), "6.50 m"));
  const auto breaks = of_row("rect_breaks_cove").drawing();
  CHECK(all<Shape>(breaks, "break-line").size() == 2);
  for (const char* depth : {"1.10 m", "2.30 m"}) CHECK(contains(texts(breaks, "depth"), depth));
  for (const char* part : {"3.00 m", "5.00 m", "4.00 m"}) {
    CHECK(contains(texts(breaks, "dimension"), part));
  }
  CHECK(contains(texts(of_row("drop_off").drawing(), "depth"), "1.20 m / 1.70 m"));
  const auto steps = of_row("rect_flight_bench").drawing();
  CHECK(all<Shape>(steps, "feature").size() == 4);
  for (const char* depth : {"0.30 m", "0.60 m", "0.90 m", "0.55 m"}) {
    CHECK(contains(texts(steps, "tread-depth"), depth));
  }
}

// A rectangle's section is its trapezia less (1 - pi / 4) r2 in each of its two corners.
TEST_CASE("the long section is to the same scale and rounded by the cove") {
  const auto drawing = of_row("rect_breaks_cove").drawing();
  const double plain = 3.0 * 1.1 + 5.0 * (1.1 + 2.3) / 2.0 + 4.0 * 2.3;
  const double corner = (1.0 - std::numbers::pi / 4.0) * 0.15 * 0.15;
  CHECK(real_area(drawing, "long-section") == Approx(plain - 2.0 * corner).epsilon(1e-9));
  // 2.4 m2 frustum: 5 m at the rim, 1.3 m deep, 0.15 in for each metre.
  CHECK(real_area(of_row("batter_circle_constant").drawing(), "long-section") ==
        Approx(1.3 * (5.0 - 1.3 * 0.15)).epsilon(1e-9));
}

TEST_CASE("the long section stands below the plan, whichever way the axis runs") {
  auto pool = rows::pool(rows::row("rect_breaks_cove").at("pool"));
  auto& floor = std::get<shell::BreaksFloor>(pool.floor);
  const auto left_ends = [](const Drawing& d) {
    Extent plan;
    Extent section;
    reach(plan, all<Shape>(d, "outline").at(0).trails.at(0));
    reach(section, all<Shape>(d, "long-section").at(0).trails.at(0));
    CHECK(section.left == Approx(plan.left));
    CHECK(section.right == Approx(plan.right));
    return plan;
  };
  left_ends(Sketchbook({pool}).drawing());
  floor.axis_deg = 180.0;
  floor.origin_x = units::metres(12);
  const auto back = Sketchbook({pool}).drawing();
  const Extent plan = left_ends(back);
  // The deep end now lies to the left: position 0 is at the right wall.
  const Trail section = all<Shape>(back, "long-section").at(0).trails.at(0);
  CHECK(section.from.x == Approx(plan.right));
  floor.axis_deg = 90.0;
  floor.origin_x = units::metres(0);
  floor.points = {{units::metres(1), units::metres(1.1)}, {units::metres(5), units::metres(2.3)}};
  const auto turned = Sketchbook({pool}).drawing();
  left_ends(turned);
  CHECK(
      contains(texts(turned, "note"), "The plan lies turned so that the floor's axis runs level."));
}

TEST_CASE("scales are round") {
  const std::set<int> round{10, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 250, 300, 400, 500};
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    INFO(row.at("name"));
    CHECK(round.contains(denominator(Sketchbook({rows::pool(row.at("pool"))}).drawing())));
  }
  shell::Pool canal;
  canal.outline.shape = shell::Rectangle{units::metres(950), units::metres(9)};
  canal.floor = shell::ConstantFloor{units::metres(2)};
  CHECK(denominator(Sketchbook({canal}).drawing()) == 7500);
}

// Kit boundaries of the row, 30 m2 a kit: the lengths between them, deep end first.
TEST_CASE("the coat is cut where the reference puts the kit boundaries") {
  const auto row = rows::row("rect_breaks_cove");
  REQUIRE(row.at("sections").at("kit_coverage_m2") == 30.0);
  const auto boundaries = row.at("sections").at("kit_boundaries_x").get<std::vector<double>>();
  Sketchbook book({rows::pool(row.at("pool"))});
  book.cut({30, 30, 30, 30, 2.134});
  const auto drawing = book.drawing();
  double from = 12.0;
  for (std::size_t i = 0; i + 1 < boundaries.size(); ++i) {
    const std::string length = with_decimals(from - boundaries[i], 2, " m");
    INFO(length);
    CHECK(contains(texts(drawing, "dimension"), length));
    from = boundaries[i];
  }
  std::set<document::Fill> fills;
  const auto sections = all<Shape>(drawing, "coat-section");
  for (const Shape& s : sections) fills.insert(s.fill);
  CHECK(sections.size() == 4);  // the fifth is what is left of the end wall
  CHECK(fills.size() == 4);
  CHECK(contains(texts(drawing, "key"), "Section 5: rest of the end wall, 2.1 m\u00B2"));
}

TEST_CASE("sections run on from one body of water to the next") {
  shell::Pool pool = rows::pool(rows::row("rect_constant").at("pool"));  // 64.3 m2 or so
  pool.name = "pool";
  shell::Pool spa;
  spa.name = "spa";
  spa.outline.shape = shell::Circle{units::metres(2)};
  spa.floor = shell::ConstantFloor{units::metres(1)};
  Sketchbook book({pool, spa});
  const double first = book.plan.take_off.bodies[0].take_off.painted_area.si();
  book.cut({first - 20.0, 22.0, 100.0});
  CHECK(texts(book.drawing(0), "title").at(0) == "Take-off drawing: pool");
  CHECK(contains(texts(book.drawing(1), "title"), "Sheet 2 of 2"));
  CHECK(contains(texts(book.drawing(0), "coat-section"), "Section 1"));
  CHECK(contains(texts(book.drawing(0), "coat-section"), "Section 2"));
  const auto spa_key = texts(book.drawing(1), "key");
  CHECK(std::ranges::any_of(spa_key, [](const auto& k) { return k.find("Section 3: ") == 0; }));
  CHECK(std::ranges::none_of(spa_key, [](const auto& k) { return k.find("Section 1") == 0; }));
}

// A round spa of even depth is halved through its middle.
TEST_CASE("the second body is cut by its own area") {
  shell::Pool pool = rows::pool(rows::row("rect_constant").at("pool"));
  pool.name = "pool";
  shell::Pool spa;
  spa.name = "spa";
  spa.outline.shape = shell::Circle{units::metres(2)};
  spa.floor = shell::ConstantFloor{units::metres(1)};
  Sketchbook book({pool, spa});
  const auto painted = [&book](std::size_t body) {
    return book.plan.take_off.bodies[body].take_off.painted_area.si();
  };
  book.cut({painted(0), painted(1) / 2.0, painted(1) / 2.0});
  const auto chain = texts(book.drawing(1), "dimension");
  CHECK(std::ranges::count(chain, "1.00 m") == 2);
  CHECK(all<Shape>(book.drawing(0), "coat-section").empty());
}

TEST_CASE("sections that the job names are drawn under their names") {
  Sketchbook book = of_row("rect_breaks_cove");
  book.cut({60, 62.134});
  book.job.coating.sections = {{"deep", units::metres(8)}, {"shallow", units::metres(0)}};
  const auto drawing = book.drawing();
  CHECK(texts(drawing, "coat-section") == std::vector<std::string>{"deep", "shallow"});
  CHECK(contains(texts(drawing, "dimension"), "8.00 m"));
}

TEST_CASE("feet and inches on letter paper") {
  Sketchbook book = of_row("rect_constant");  // 8 m x 4 m: 26 ft 3 in x 13 ft 1 in (0.3048 m)
  book.system = units::System::us;
  book.paper = document::Paper::letter;
  const auto drawing = book.drawing();
  CHECK(drawing.width == 215.9);
  CHECK(drawing.height == 279.4);
  CHECK(contains(texts(drawing, "wall-length"), "26 ft 3 in"));
  CHECK(contains(texts(drawing, "wall-length"), "13 ft 1 in"));
  CHECK(drawing.description.find("on Letter paper") != std::string::npos);
}
