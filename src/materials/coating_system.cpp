#include "basinwright/materials/coating_system.hpp"

namespace basinwright::materials {

Sourced<units::Area> CoatingSystem::expected_cover() const {
  return {(cover_low.value + cover_high.value) / 2.0, cover_low.source};
}

}  // namespace basinwright::materials
