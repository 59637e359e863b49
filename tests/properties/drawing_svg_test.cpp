// Drawings of every reference shell as SVG, read back from the bytes by other means: xmllint, and
// path data by the grammar of SVG 2, section 9.3, with the arcs' area by plane geometry.
#include <regex>

#include "basinwright/render/svg.hpp"
#include "render/outside.hpp"
#include "report/drawing_rows.hpp"

namespace {

using namespace drawn;

std::string svg_of(const document::Drawing& drawing) {
  document::Document page;
  page.title = "Take-off";
  page.sections.push_back({"", "Drawing", {drawing}, true});
  return render::svg(page);
}

struct Point {
  double x = 0.0, y = 0.0;
};

/// Area inside path data of M, L, A and Z. Each arc's centre is found as the recommendation's
/// appendix on elliptical arcs does (SVG 2, B.2.4), and the arc is summed by Green's theorem in
/// small steps, which shares nothing with closed forms: 2000 steps leave 1e-6 of a third of a turn.
class PathArea {
 public:
  explicit PathArea(const std::string& data) {
    static const std::regex command("([MLAZ])([^MLAZ]*)");
    for (std::sregex_iterator i(data.begin(), data.end(), command), end; i != end; ++i) {
      take((*i)[1].str()[0], numbers((*i)[2]));
    }
  }
  [[nodiscard]] double area() const { return std::abs(twice_ / 2.0); }
  [[nodiscard]] int arcs() const { return arcs_; }

 private:
  static std::vector<double> numbers(const std::string& text) {
    static const std::regex number("-?[0-9]+(\\.[0-9]+)?");
    std::vector<double> found;
    for (std::sregex_iterator i(text.begin(), text.end(), number), end; i != end; ++i) {
      found.push_back(std::stod(i->str()));
    }
    return found;
  }

  void take(char command, const std::vector<double>& n) {
    if (command == 'M') {
      here_ = start_ = {n.at(0), n.at(1)};
    } else if (command == 'L') {
      line({n.at(0), n.at(1)});
    } else if (command == 'A') {
      arc(n);
    } else {
      line(start_);
    }
  }

  void line(Point to) {
    twice_ += here_.x * to.y - to.x * here_.y;
    here_ = to;
  }

  void arc(const std::vector<double>& n) {
    ++arcs_;
    const double phi = n.at(2) * std::acos(-1.0) / 180.0;
    const bool large = n.at(3) != 0.0;
    const bool sweep = n.at(4) != 0.0;
    const Point to{n.at(5), n.at(6)};
    const double hx = (here_.x - to.x) / 2.0;
    const double hy = (here_.y - to.y) / 2.0;
    const double x1 = std::cos(phi) * hx + std::sin(phi) * hy;
    const double y1 = -std::sin(phi) * hx + std::cos(phi) * hy;
    double rx = n.at(0);
    double ry = n.at(1);
    const double lambda = x1 * x1 / (rx * rx) + y1 * y1 / (ry * ry);
    if (lambda > 1.0) {
      rx *= std::sqrt(lambda);
      ry *= std::sqrt(lambda);
    }
    const double under = rx * rx * ry * ry - rx * rx * y1 * y1 - ry * ry * x1 * x1;
    const double root = std::sqrt(std::max(0.0, under / (rx * rx * y1 * y1 + ry * ry * x1 * x1)));
    const double sign = large == sweep ? -1.0 : 1.0;
    const double cx = sign * root * rx * y1 / ry;
    const double cy = -sign * root * ry * x1 / rx;
    const double from = std::atan2((y1 - cy) / ry, (x1 - cx) / rx);
    double turn = std::atan2((-y1 - cy) / ry, (-x1 - cx) / rx) - from;
    const double full = 2.0 * std::acos(-1.0);
    if (sweep && turn < 0.0) turn += full;
    if (!sweep && turn > 0.0) turn -= full;
    const Point middle{(here_.x + to.x) / 2.0, (here_.y + to.y) / 2.0};
    constexpr int steps = 2000;
    for (int i = 1; i < steps; ++i) {
      const double t = from + turn * i / steps;
      const double u = cx + rx * std::cos(t);
      const double v = cy + ry * std::sin(t);
      line({middle.x + std::cos(phi) * u - std::sin(phi) * v,
            middle.y + std::sin(phi) * u + std::cos(phi) * v});
    }
    line(to);
  }

  Point here_, start_;
  double twice_ = 0.0;
  int arcs_ = 0;
};

std::string attribute(const std::string& svg, const std::string& element, const std::string& name) {
  std::smatch found;
  const std::regex wanted("<" + element + "[^>]* " + name + "=\"([^\"]*)\"");
  REQUIRE(std::regex_search(svg, found, wanted));
  return found[1];
}

double scale_of(const std::string& svg) {
  std::smatch found;
  REQUIRE(std::regex_search(svg, found, std::regex("Scale 1 : ([0-9]+)")));
  return std::stod(found[1]) / 1000.0;
}

}  // namespace

TEST_CASE("the outline read back from the bytes has the plan area") {
  const auto file = rows::shells();
  REQUIRE(file.at("rows").size() > 20);
  for (const auto& row : file.at("rows")) {
    const std::string name = row.at("name");
    INFO(name);
    const Sketchbook book({rows::pool(row.at("pool"))});
    const std::string svg = svg_of(book.drawing());
    const PathArea path(attribute(svg, "path class=\"outline\"", "d"));
    const auto& expected = row.at("expected");
    const double area = expected.contains("plan_area_m2")
                            ? expected.at("plan_area_m2").get<double>()
                            : book.plan.take_off.bodies[0].take_off.plan_area.si();
    CHECK(path.area() * scale_of(svg) * scale_of(svg) == Approx(area).epsilon(1e-4));
    const bool round = name.find("rect") == std::string::npos || name.find("rounded") == 0;
    const bool straight = name == "L_breaks" || name == "offsets_polyline" || name == "drop_off" ||
                          name == "hopper_four_sides" || name == "competition_50m" ||
                          name == "round_cake_mid_wall";
    if (round && !straight) CHECK(path.arcs() > 1);
  }
}

TEST_CASE("every drawing is well-formed and the same twice") {
  const auto file = rows::shells();
  const bool there = outside::has("xmllint", "the drawings' SVG");
  for (const auto& row : file.at("rows")) {
    INFO(row.at("name"));
    Sketchbook book({rows::pool(row.at("pool"))});
    const double half = book.plan.take_off.painted.si() / 2.0;
    book.cut({half, half});
    const std::string svg = svg_of(book.drawing());
    CHECK(svg == svg_of(book.drawing()));
    for (const char* no : {"<script", "href", "<image", "@import", "nan", "inf", "-0.000"}) {
      INFO(no);
      CHECK(svg.find(no) == std::string::npos);
    }
    if (!there) continue;
    const outside::Folder folder;
    const auto result = outside::run("/usr/bin/xmllint --nonet --noout '" +
                                     folder.write("drawing.svg", svg) + "' 2>&1");
    INFO(result.output);
    CHECK(result.status == 0);
  }
}

TEST_CASE("the name of a client that means harm is only a name") {
  Sketchbook book = of_row("rect_constant");
  book.job.heading.client.name = "<script>alert('x')</script> & \"Sons\" \x01";
  book.job.heading.contractor.name = "]]><a href='x'>";
  const std::string svg = svg_of(book.drawing());
  CHECK(svg.find("<script") == std::string::npos);
  CHECK(svg.find("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &amp; &quot;Sons&quot; \\x01") !=
        std::string::npos);
  CHECK(svg.find("]]&gt;&lt;a href=&#39;x&#39;&gt;") != std::string::npos);
  if (!outside::has("xmllint", "hostile names")) return;
  const outside::Folder folder;
  const auto result = outside::run("/usr/bin/xmllint --nonet --noout '" +
                                   folder.write("drawing.svg", svg) + "' 2>&1");
  CHECK(result.status == 0);
}
