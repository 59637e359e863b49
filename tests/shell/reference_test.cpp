// Every row of tests/reference/shells.json: 30-digit quadrature that shares nothing with clipping.
#include <algorithm>
#include <map>

#include "basinwright/shell/outline.hpp"
#include "make.hpp"
#include "rows.hpp"
#include "support/catch.hpp"

namespace {

namespace shell = basinwright::shell;
// 1e-9 of the larger of 1 and the value is the file's own tolerance too.
using make::near;
using nlohmann::json;

std::map<std::string, double> keyed(const shell::TakeOff& t) {
  return {{"plan_area_m2", t.plan_area.si()},
          {"perimeter_m", t.perimeter.si()},
          {"floor_area_m2", t.floor_area.si()},
          {"wall_area_m2", t.wall_area.si()},
          {"tread_area_m2", t.tread_area.si()},
          {"riser_area_m2", t.riser_area.si()},
          {"cove_length_m", t.cove_length.si()},
          {"cove_area_change_m2", t.cove_area_change.si()},
          {"cove_true_angle_area_change_m2", t.cove_true_angle_area_change.si()},
          {"cove_true_angle_volume_change_m3", t.cove_true_angle_volume_change.si()},
          {"floor_plan_at_toe_m2", t.floor_plan_at_toe.si()},
          {"painted_area_m2", t.painted_area.si()},
          {"water_volume_before_cove_m3", t.water_volume_before_cove.si()},
          {"water_volume_m3", t.water_volume.si()}};
}

shell::TakeOff measured(const shell::Pool& pool) {
  basinwright::trace::Trace off;
  const auto result = shell::take_off(pool, off);
  if (const auto* faults = std::get_if<std::vector<shell::Fault>>(&result)) {
    for (const auto& f : *faults) UNSCOPED_INFO(f.code << " at " << f.where << ": " << f.message);
    FAIL("refused");
  }
  return std::get<shell::Measured>(result).take_off;
}

}  // namespace

TEST_CASE("every reference row is met in every key") {
  const json file = rows::shells();
  REQUIRE(file.at("rows").size() == 27);
  for (const json& row : file.at("rows")) {
    const std::string name = row.at("name");
    INFO(name);
    const auto got = keyed(measured(rows::pool(row.at("pool"))));
    for (const auto& [key, value] : row.at("expected").items()) {
      INFO(key << " got " << json(got.at(key)).dump() << " expected " << value.dump());
      CHECK(near(got.at(key), value.get<double>()));
    }
  }
}

TEST_CASE("every outline path of the reference is met vertex by vertex") {
  const json file = rows::shells();
  int seen = 0;
  for (const json& row : file.at("rows")) {
    if (!row.contains("outline_path")) continue;
    INFO(row.at("name"));
    ++seen;
    const auto made = shell::outline_path(rows::pool(row.at("pool")).outline);
    REQUIRE(std::holds_alternative<shell::OutlinePath>(made));
    const auto& outline = std::get<shell::OutlinePath>(made);
    const json& expected = row.at("outline_path");
    if (expected.is_object()) {
      const auto& e = std::get<shell::EllipsePath>(outline);
      const json& v = expected.at("ellipse");
      CHECK(near(e.centre_x.si(), v[0].get<double>()));
      CHECK(near(e.centre_y.si(), v[1].get<double>()));
      CHECK(near(e.semi_length.si(), v[2].get<double>()));
      CHECK(near(e.semi_width.si(), v[3].get<double>()));
      continue;
    }
    const auto& path = std::get<shell::VertexPath>(outline);
    REQUIRE(path.size() == expected.size());
    for (std::size_t i = 0; i < path.size(); ++i) {
      CHECK(near(path[i].x.si(), expected[i][0].get<double>()));
      CHECK(near(path[i].y.si(), expected[i][1].get<double>()));
      CHECK(near(path[i].bulge, expected[i][2].get<double>()));
    }
  }
  CHECK(seen == 24);
}

TEST_CASE("section areas and kit boundaries of the reference are met") {
  const json file = rows::shells();
  int seen = 0;
  for (const json& row : file.at("rows")) {
    if (!row.contains("sections")) continue;
    INFO(row.at("name"));
    ++seen;
    const json& s = row.at("sections");
    const shell::Pool pool = rows::pool(row.at("pool"));
    const auto areas = shell::section_areas(pool, rows::lengths(s.at("cuts_x"))).deep_to_shallow;
    REQUIRE(areas.size() == s.at("areas_deep_to_shallow").size());
    for (std::size_t i = 0; i < areas.size(); ++i) {
      CHECK(near(areas[i].si(), s.at("areas_deep_to_shallow")[i].get<double>()));
    }
    const double cover = s.at("kit_coverage_m2");
    const auto kits = shell::kit_boundaries(pool, basinwright::units::square_metres(cover));
    REQUIRE(kits.size() == s.at("kit_boundaries_x").size());
    CHECK(kits.size() + 1 == s.at("kits").get<std::size_t>());
    for (std::size_t i = 0; i < kits.size(); ++i) {
      INFO("boundary " << i << " got " << json(kits[i].si()).dump());
      CHECK(near(kits[i].si(), s.at("kit_boundaries_x")[i].get<double>()));
    }
  }
  CHECK(seen == 4);
}

TEST_CASE("every refused pool of the reference is refused for the reason given") {
  const std::map<std::string, std::string> codes{{"tin_does_not_cover", "spot-depths-do-not-cover"},
                                                 {"batter_too_large", "lean-too-large"}};
  const json file = rows::shells();
  REQUIRE(file.at("refused").size() == 18);
  for (const json& row : file.at("refused")) {
    std::string code = row.at("refused_because");
    if (codes.contains(code)) code = codes.at(code);
    std::ranges::replace(code, '_', '-');
    INFO(code << ' ' << row.at("note"));
    basinwright::trace::Trace off;
    const auto result = shell::take_off(rows::pool(row.at("pool")), off);
    REQUIRE(std::holds_alternative<std::vector<shell::Fault>>(result));
    const auto& faults = std::get<std::vector<shell::Fault>>(result);
    CHECK(std::ranges::any_of(faults,
                              [&](const shell::Fault& f) { return f.code == code && !f.warning; }));
  }
}
