#include "basinwright/materials/coating_system.hpp"

namespace basinwright::materials {

Sourced<units::Area> CoatingSystem::expected_cover() const {
  sources::Source source = cover_low.source;
  if (source.kind == sources::Kind::assumed) source.place = "cover of a kit, middle of its range";
  return {(cover_low.value + cover_high.value) / 2.0, source};
}

std::optional<Life> expected_life(std::size_t coats) {
  if (coats < 2) return {};
  return coats == 2 ? life_of_two_coats.value : life_of_three_coats.value;
}

}  // namespace basinwright::materials
