#include "regions.hpp"

#include <algorithm>

#include "basinwright/units/unit.hpp"

namespace basinwright::job {
namespace {

using units::Area;

std::size_t surface_for(const std::vector<Surface>& surfaces, std::string_view part) {
  const auto it = std::ranges::find_if(
      surfaces, [&](const Surface& s) { return s.where == part || s.where == "all"; });
  return static_cast<std::size_t>(it - surfaces.begin());
}

preparation::Region region_of(const Surface& surface,
                              std::string where,
                              Area area,
                              dates::Date start) {
  preparation::Region region;
  region.where = std::move(where);
  region.area = area;
  region.is_wall = region.where == "walls";
  region.substrate = surface.substrate;
  region.coating = surface.coating;
  region.acetone_test = surface.acetone_test;
  if (surface.laid_on) {
    const auto age = std::max((start - *surface.laid_on).count(), std::int64_t{0});
    region.age_of_cement = units::days(static_cast<double>(age));
  }
  region.painted_year = surface.painted_year;
  region.bare_share = surface.bare_share.value;
  region.loose_share = surface.loose_share.value;
  region.gloss = surface.gloss;
  return region;
}

chemistry::Substrate as_etched(preparation::Substrate substrate) {
  switch (substrate) {
    case preparation::Substrate::render:
      return chemistry::Substrate::render;
    case preparation::Substrate::concrete:
      return chemistry::Substrate::concrete;
    case preparation::Substrate::plaster_hard:
      return chemistry::Substrate::plaster_hard;
    case preparation::Substrate::plaster_soft:
      return chemistry::Substrate::plaster_soft;
    case preparation::Substrate::pebble:
      return chemistry::Substrate::pebble;
    case preparation::Substrate::fibreglass:
      return chemistry::Substrate::fibreglass;
  }
  return chemistry::Substrate::render;
}

chemistry::EtchPatch patch_of(const Part& part, const preparation::Question& q, bool strong) {
  chemistry::EtchPatch patch;
  patch.where = part.region.where;
  patch.flat.area = part.region.area;
  patch.part = part.region.is_wall ? chemistry::EtchPart::walls : chemistry::EtchPart::floor;
  patch.surface.substrate = as_etched(part.region.substrate);
  patch.surface.painted_with_epoxy = part.region.coating != preparation::ExistingCoating::none &&
                                     !preparation::is_stripped(part.region, q);
  patch.surface.strong_asked = strong;
  if (part.region.age_of_cement) {
    // Acid waits until the cement is old enough, so it meets it no younger than that.
    patch.surface.age = std::max(*part.region.age_of_cement, q.thresholds.cement_age.value);
  }
  return patch;
}

}  // namespace

std::vector<Part> parts_of(const Job& job, const TakeOffResult& take_off, dates::Date start) {
  std::vector<Surface> surfaces = job.surfaces;
  surfaces.emplace_back();
  const shell::TakeOff& total = take_off.total;
  const Area half_cove = total.cove_area_change / 2.0;
  const std::array<std::pair<const char*, Area>, 3> areas{
      {{"walls", total.wall_area + half_cove + take_off.adjusted},
       {"floor", total.floor_area + half_cove},
       {"steps", total.tread_area + total.riser_area}}};
  std::vector<Part> parts;
  for (const auto& [where, area] : areas) {
    if (!(area > Area())) continue;
    const std::size_t index = surface_for(surfaces, where);
    parts.push_back({region_of(surfaces[index], where, area, start), index});
  }
  return parts;
}

std::vector<chemistry::EtchPatch> etch_patches(const std::vector<Part>& parts,
                                               const preparation::Question& question,
                                               bool strong_asked) {
  std::vector<chemistry::EtchPatch> patches;
  const bool alike =
      std::ranges::all_of(parts, [&](const Part& p) { return p.surface == parts.front().surface; });
  if (alike && !parts.empty()) {
    chemistry::EtchPatch whole = patch_of(parts.front(), question, strong_asked);
    whole.where = "all";
    whole.part = chemistry::EtchPart::whole;
    whole.flat.area = Area();
    for (const Part& part : parts) whole.flat.area += part.region.area;
    patches.push_back(std::move(whole));
    return patches;
  }
  patches.reserve(parts.size());
  for (const Part& part : parts) patches.push_back(patch_of(part, question, strong_asked));
  return patches;
}

}  // namespace basinwright::job
