#include "regions.hpp"

#include <algorithm>

#include "basinwright/job/sections.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::job {
namespace {

using units::Area;

preparation::Region region_of(const Surface& surface,
                              std::string where,
                              Area area,
                              dates::Date start) {
  preparation::Region region;
  region.where = std::move(where);
  region.area = area;
  region.substrate = surface.substrate;
  region.coating = surface.coating;
  region.acetone_test = surface.acetone_test;
  if (surface.laid_on) {
    const auto age = std::max((start - *surface.laid_on).count(), std::int64_t{0});
    region.age_of_cement = units::days(static_cast<double>(age));
  }
  region.painted_year = surface.painted_year;
  // Paint is no older than what it is on.
  if (!region.painted_year && surface.laid_on) region.painted_year = dates::year(*surface.laid_on);
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
  patch.flat = {part.region.area, part.key};
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

// A surface of the whole shell, or of one section.
struct Piece {
  std::string_view surface;
  std::string section;  ///< Empty: of all of them.
  Area area;
};

bool is_of_surface(std::string_view where) {
  return where == "all" || where == "walls" || where == "floor" || where == "steps";
}

std::vector<Piece> pieces_of(const Job& job, const TakeOffResult& take_off) {
  const bool by_section =
      std::ranges::any_of(job.surfaces, [](const Surface& s) { return !is_of_surface(s.where); });
  std::vector<Piece> pieces;
  if (by_section) {
    const std::vector<SectionPart> all = named_parts(job, take_off);
    const auto add = [&](std::string_view surface, auto area_of) {
      for (const SectionPart& p : all) pieces.push_back({surface, p.section, area_of(p)});
    };
    add("walls", [](const SectionPart& p) {
      return p.measured.walls + p.measured.cove_change / 2.0 + p.named.walls;
    });
    add("floor", [](const SectionPart& p) {
      return p.measured.floor + p.measured.cove_change / 2.0 + p.named.floor;
    });
    add("steps", [](const SectionPart& p) { return p.measured.steps + p.named.steps; });
    return pieces;
  }
  Named named;
  for (const Body& body : job.bodies) {
    const Named one = named_areas(body);
    named.walls += one.walls;
    named.floor += one.floor;
    named.steps += one.steps;
  }
  const shell::TakeOff& total = take_off.total;
  const Area half_cove = total.cove_area_change / 2.0;
  return {{"walls", "", total.wall_area + half_cove + named.walls},
          {"floor", "", total.floor_area + half_cove + named.floor},
          {"steps", "", total.tread_area + total.riser_area + named.steps}};
}

std::size_t surface_for(const std::vector<Surface>& surfaces, const Piece& piece) {
  const auto it = std::ranges::find_if(surfaces, [&](const Surface& s) {
    return s.where == "all" || s.where == piece.surface ||
           (!piece.section.empty() && s.where == piece.section);
  });
  return static_cast<std::size_t>(it - surfaces.begin());
}

// "walls", or "deep end walls" where the finding is that section's alone.
std::string name_of(const Piece& piece, const Surface& surface) {
  std::string name(piece.surface);
  return is_of_surface(surface.where) ? name : surface.where + " " + name;
}

}  // namespace

std::vector<Part> parts_of(const Job& job, const TakeOffResult& take_off, dates::Date start) {
  std::vector<Surface> surfaces = job.surfaces;
  surfaces.emplace_back();
  std::vector<Part> parts;
  for (const Piece& piece : pieces_of(job, take_off)) {
    if (!(piece.area > Area())) continue;
    const std::size_t index = surface_for(surfaces, piece);
    const std::string where = name_of(piece, surfaces[index]);
    const auto same = std::ranges::find_if(
        parts, [&](const Part& p) { return p.surface == index && p.region.where == where; });
    if (same != parts.end()) {
      same->region.area += piece.area;
      continue;
    }
    parts.push_back({region_of(surfaces[index], where, piece.area, start), index});
    parts.back().region.is_wall = piece.surface == "walls";
    parts.back().key = "takeoff.regions." + std::to_string(parts.size() - 1) + ".area_m2";
  }
  return parts;
}

void note_regions(const std::vector<Part>& parts, trace::Trace& trace) {
  constexpr sources::Source by_green{
      sources::Kind::published, "green-theorem", "surface with its share of cove and named areas"};
  for (const Part& part : parts) {
    trace.note(part.key,
               part.region.area,
               "area",
               {{"area", part.region.area, by_green}},
               part.region.where);
  }
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
    whole.flat = {};
    for (const Part& part : parts) whole.flat.area += part.region.area;
    patches.push_back(std::move(whole));
    return patches;
  }
  patches.reserve(parts.size());
  for (const Part& part : parts) patches.push_back(patch_of(part, question, strong_asked));
  return patches;
}

}  // namespace basinwright::job
