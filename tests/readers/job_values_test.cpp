// The file with every key, value by value in the job that is read from it: what is expected is what
// the file says, by the exact factors of its units.
#include "basinwright/units/unit.hpp"
#include "reading.hpp"

using namespace reading;
namespace dates = basinwright::dates;
namespace preparation = basinwright::preparation;
namespace shell = basinwright::shell;
using namespace basinwright::units;

namespace {

const basinwright::job::Job& full() {
  static const auto read = [] {
    Problems problems;
    return job(contents("tests/readers/full-job.json"), problems);
  }();
  REQUIRE(read);
  return *read;
}

template <class Shape>
const Shape& shape(std::size_t body) {
  return std::get<Shape>(full().bodies.at(body).pool.outline.shape);
}

template <class Floor>
const Floor& floor_at(std::size_t body) {
  return std::get<Floor>(full().bodies.at(body).pool.floor);
}

}  // namespace

TEST_CASE("job values, heading and site") {
  const auto& h = full().heading;
  CHECK(h.number == "J-17");
  CHECK(h.revision == "B");
  CHECK(h.client.name == "A Client");
  CHECK(h.client.address == "1 Any Street");
  CHECK(h.contractor.name == "A Contractor");
  CHECK(h.contractor.address == "2 Any Street");
  CHECK(h.contractor.registration == "R-1");
  CHECK(h.contractor.insurance == "P-1");
  CHECK(dates::iso(*h.quoted_on) == "2027-04-20");
  CHECK(dates::iso(*h.start) == "2027-05-03");
  CHECK(h.valid_days == 30);
  const auto& s = full().site;
  CHECK(s.latitude == 48.5);
  CHECK(s.utc_offset == 2.0);
  CHECK(s.longitude == -3.25);
  CHECK(s.elevation->in(metres) == 120.0);
  CHECK(dates::iso(s.clock_changes.at(0).at) == "2027-10-31T03:00");
  CHECK(s.clock_changes[0].minutes == -60);
  CHECK(s.access_width->in(metres) == 0.9);
  CHECK(s.access_carry->in(metres) == 25.0);
  CHECK(s.parking == "on the drive");
  CHECK(s.residual_current_device == true);
  CHECK(s.tap_flow->in(litres_per_minute) == Approx(22));
  CHECK(s.gully == "by the gate");
  CHECK(s.gully_flow->in(litres_per_minute) == Approx(60));
  CHECK(s.ph_min == 6.5);
  CHECK(s.sump_ph == 1.5);
  CHECK(s.sump_volume->in(units::litres) == Approx(400));
  CHECK(s.ph_max == 8.5);
  CHECK(s.permits.at(0).what == "discharge to the sewer");
  CHECK(s.permits[0].lead->in(days) == 10.0);
  CHECK(s.hours == "08:00 to 18:00");
  CHECK(s.emergency == "112; hospital in town");
  CHECK(s.groundwater->below_rim.in(metres) == 2.5);
  CHECK(dates::iso(*s.groundwater->measured_on) == "2027-04-01");
  CHECK(s.temperatures[4]->in(celsius) == Approx(16));
  CHECK(s.temperatures[5]->in(celsius) == Approx(19));
  CHECK_FALSE(s.temperatures[6]);
}

TEST_CASE("job values, outlines") {
  REQUIRE(full().bodies.size() == 10);
  CHECK(full().bodies[3].pointer == "/pool/3");
  CHECK(full().bodies[3].pool.name == "circle");
  CHECK(shape<shell::Rectangle>(0).width.in(metres) == 4.0);
  CHECK(full().bodies[0].pool.outline.place->rotation_deg == 0.0);
  CHECK(shape<shell::RoundedRectangle>(1).corner_radius.in(metres) == 0.8);
  CHECK(shape<shell::LShape>(2).notch_length.in(metres) == 4.0);
  CHECK(shape<shell::LShape>(2).notch_width.in(metres) == 3.0);
  CHECK(shape<shell::Circle>(3).diameter.in(metres) == 5.0);
  CHECK(shape<shell::Stadium>(4).length.in(metres) == 9.0);
  CHECK(shape<shell::Ellipse>(5).width.in(metres) == 5.0);
  const auto& kidney = shape<shell::Kidney>(6);
  CHECK(kidney.shallow_radius.in(metres) == 2.0);
  CHECK(kidney.deep_radius.in(metres) == 2.4);
  CHECK(kidney.centres.in(metres) == 4.5);
  CHECK(kidney.outer_radius.in(metres) == 7.0);
  CHECK(kidney.inner_radius.in(metres) == 3.0);
  const auto& offsets = shape<shell::Offsets>(7);
  CHECK(offsets.curve == shell::Curve::straight);
  CHECK(offsets.stations.at(1).distance.in(metres) == 2.0);
  CHECK(offsets.stations[1].near.in(metres) == 0.0);
  CHECK(offsets.stations[1].far.in(metres) == 3.5);
  const auto& tapes = shape<shell::TwoTape>(8);
  CHECK(tapes.baseline.in(metres) == 6.0);
  CHECK(tapes.points.at(1).from_a.in(metres) == 7.0);
  CHECK(tapes.points[1].from_b.in(metres) == 4.0);
  CHECK(tapes.points[1].side == -1);
  CHECK(tapes.points[2].side == 1);
  CHECK(shape<shell::Path>(9).points.at(1).bulge == 0.2);
  CHECK(shape<shell::Path>(9).points[2].y.in(metres) == 4.0);
}

TEST_CASE("job values, floors and what stands on them") {
  CHECK(floor_at<shell::ConstantFloor>(0).depth.in(metres) == 1.5);
  CHECK(floor_at<shell::BreaksFloor>(1).points.at(2).depth.in(metres) == 1.8);
  const auto& hopper = floor_at<shell::HopperFloor>(7);
  CHECK(hopper.base_depth.in(metres) == 1.3);
  CHECK(hopper.depth.in(metres) == 1.5);
  CHECK(hopper.outer[2].in(metres) == 6.0);
  CHECK(hopper.inner[1].in(metres) == 1.2);
  CHECK(floor_at<shell::SpotDepthsFloor>(9).points.at(1).x.in(metres) == 9.0);
  CHECK(floor_at<shell::SpotDepthsFloor>(9).triangles.at(1) == std::array{0, 2, 3});
  const auto& pool = full().bodies[0].pool;
  REQUIRE(pool.features.size() == 6);
  CHECK(std::get<shell::StraightSteps>(pool.features[0]).treads.at(1).in(metres) == 0.3);
  CHECK(std::get<shell::StraightSteps>(pool.features[0]).depths.at(1).in(metres) == 0.8);
  CHECK(std::get<shell::Bench>(pool.features[1]).from.in(metres) == 2.0);
  CHECK(std::get<shell::CornerSteps>(pool.features[2]).corner == 1);
  CHECK(std::get<shell::RoundSteps>(pool.features[3]).at.in(metres) == 2.5);
  CHECK(std::get<shell::Block>(pool.features[4]).path.at(2).y.in(metres) == 2.5);
  CHECK(std::get<shell::Pit>(pool.features[5]).depth.in(metres) == 1.8);
  CHECK(pool.rim_to_paint.in(metres) == 0.15);
  CHECK(pool.rim_to_water.in(metres) == 0.12);
  CHECK(full().bodies[1].pool.rim_to_water.in(metres) == 0.1);
  CHECK(full().bodies[1].pool.cove_radius.in(metres) == 0.1);
  CHECK(full().bodies[3].pool.wall_lean == 0.05);
  CHECK(pool.tape_tolerance.in_percent() == Approx(2));
  CHECK(pool.checks.at(0).to == 2);
  CHECK(pool.checks[0].measured.in(metres) == 8.944);
  CHECK(pool.wall_thickness->in(metres) == 0.2);
  CHECK(pool.slab_thickness->in(metres) == 0.15);
  CHECK(full().bodies[0].adjust.at(0).area.in(square_metres) == -0.2);
}

TEST_CASE("job values, surfaces and condition") {
  const auto& s = full().surfaces.at(0);
  CHECK(full().surfaces_given);
  CHECK(s.where == "deep end");
  CHECK(s.substrate == preparation::Substrate::concrete);
  CHECK(dates::iso(*s.laid_on) == "2004-06-01");
  CHECK(s.painted_year == 2015);
  CHECK(s.coating == preparation::ExistingCoating::epoxy);
  CHECK(s.acetone_test == preparation::AcetoneTest::untouched);
  CHECK(dates::iso(*s.tested_on) == "2027-04-12");
  CHECK(s.places == "floor, wall, step");
  CHECK(s.bare_share.value.in_percent() == Approx(3));
  CHECK(s.loose_share.value.in_percent() == Approx(4));
  CHECK_FALSE(s.gloss);
  const auto& c = full().condition;
  CHECK(c.algae == preparation::Dirt::normal);
  CHECK(c.oils == preparation::Dirt::heavy);
  CHECK(c.cracks.at(0).width.in(millimetres) == Approx(2));
  CHECK(c.cracks[0].length.in(metres) == 1.5);
  CHECK(c.cracks[0].depth.in(millimetres) == Approx(8));
  CHECK_FALSE(c.cracks[0].moving);
  CHECK(c.divots.at(0).depth.in(millimetres) == Approx(6));
  CHECK(c.divots[0].area.in(square_metres) == 0.02);
  CHECK(c.divots[0].count == 3);
  CHECK(c.drummy_area.in(square_metres) == 0.4);
  CHECK(c.blisters.in(square_metres) == 0.3);
  CHECK(c.rust);
  CHECK(c.efflorescence);
  CHECK(c.lead_test == preparation::LeadTest::clear);
  CHECK(full().leak_test == 0U);
}

TEST_CASE("job values, coating, crew and calendar") {
  const auto& c = full().coating;
  CHECK(c.system == "Two Part");
  CHECK(c.system_pointer == "/coating/system");
  CHECK(c.coats == 2);
  CHECK(c.colour == "pale blue");
  CHECK(c.colour_change);
  CHECK(c.slip_resistant == Found{"steps", "deep end"});
  CHECK(c.sections.at(0).name == "deep end");
  CHECK(c.sections[0].to.in(metres) == 5.0);
  CHECK(full().crew.people.value == 4.0);
  CHECK(full().crew.painters.value == 3.0);
  CHECK(full().calendar.hours == dates::Hours{30, 66});
  CHECK(full().calendar.working == std::array{true, true, true, true, true, true, false});
  CHECK(dates::iso(full().calendar.closed.at(0)) == "2027-05-17");
  CHECK(full().calendar.painting_by_month[4] == dates::Hours{32, 46});
  CHECK(full().calendar.from_first_light[6]);
  CHECK(full().calendar.from_first_light[7]);
  CHECK_FALSE(full().calendar.from_first_light[5]);
  CHECK(full().calendar.clock_changes.size() == 1);
}

TEST_CASE("job values, refill and terms") {
  CHECK(full().refill.flow->in(litres_per_minute) == Approx(25));
  CHECK(full().refill.water_price == "2.35");
  CHECK(full().refill.chlorine_kind == "liquid");
  CHECK(full().refill.salt_pool);
  CHECK(full().refill.water_unit == basinwright::job::WaterUnit::kilolitres);
  CHECK(full().refill.first_share.value.in_percent() == Approx(60));
  CHECK(full().refill.chlorine_strength->value.in_percent() == Approx(12.5));
  const auto& water = full().refill.analysis;
  CHECK(full().refill.analysed);
  CHECK(water.ph->value == 7.4);
  CHECK(water.alkalinity->value == 90);
  CHECK(water.hardness->value == 210);
  CHECK(water.stabiliser->value == 0);
  CHECK(water.salt->value == 120);
  CHECK(water.temperature->value.in(celsius) == Approx(14));
  const auto& wanted = full().refill.targets;
  CHECK(wanted.ph->value == 7.3);
  CHECK(wanted.alkalinity->value == 100);
  CHECK(wanted.hardness->value == 250);
  CHECK(wanted.stabiliser->value == 40);
  CHECK(wanted.salt->value == 3200);
  CHECK(wanted.free_chlorine->value == 2);
  CHECK(wanted.temperature->value.in(celsius) == Approx(26));
  CHECK(wanted.hardness->source.place == "/refill/targets/hardness");
  const auto& t = full().terms;
  CHECK(t.deposit->millionths == 200000);
  CHECK(t.stages.at(0).event == "on order");
  CHECK(t.stages[1].share.millionths == 800000);
  CHECK(t.validity->in(days) == 30.0);
  CHECK(t.discount->millionths == 20000);
  CHECK(t.rounding == "1.00");
  CHECK(t.allowances == Found{"repairs to 200.00"});
  CHECK(t.exclusions == Found{"tiles"});
  CHECK(t.notes == Found{"gate code by telephone"});
}

TEST_CASE("job values, what holds when nothing is said") {
  Problems problems;
  const auto plain = job(plain_job().dump(), problems);
  REQUIRE(plain);
  // Defaults as the contract states them.
  CHECK_FALSE(plain->surfaces_given);
  CHECK(plain->crew.people.value == 3.0);
  CHECK(plain->crew.painters.value == 2.0);
  CHECK(plain->calendar.hours == dates::Hours{28, 64});
  CHECK(plain->calendar.working == std::array{true, true, true, true, true, false, false});
  CHECK(plain->bodies.at(0).pool.rim_to_paint.in(metres) == 0.0);
  CHECK(plain->bodies[0].pool.rim_to_water.in(metres) == 0.1);
  CHECK(plain->bodies[0].pool.tape_tolerance.in_percent() == Approx(1));
  CHECK(plain->condition.lead_test == preparation::LeadTest::not_done);
  CHECK(plain->condition.oils == preparation::Dirt::normal);
  CHECK(plain->condition.algae == preparation::Dirt::none);
}
