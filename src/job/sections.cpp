#include "basinwright/job/sections.hpp"

#include <algorithm>
#include <cmath>

namespace basinwright::job {
namespace {

using units::Area;

// A share smaller than this part of a body is a rounding of its area.
constexpr double hair_of_share = 1e-9;

// Surfaces without an area of their own share by the painted area.
Area share_of(Area named, Area here, Area whole, double painted_share) {
  return named * (whole > Area() ? here / whole : painted_share);
}

SectionPart named_part(std::string section,
                       std::size_t body,
                       const shell::Part& part,
                       const Named& named,
                       const shell::TakeOff& whole) {
  SectionPart out{std::move(section), body, part, {}};
  const double painted = part.painted / whole.painted_area;
  out.named.walls = share_of(named.walls, part.walls, whole.wall_area, painted);
  out.named.floor = share_of(named.floor, part.floor, whole.floor_area, painted);
  out.named.steps = share_of(named.steps, part.steps, whole.tread_area + whole.riser_area, painted);
  return out;
}

// Where in its body each section of the cut ends, by measured area.
struct BodyCut {
  std::vector<std::size_t> sections;  ///< One more than ends.
  std::vector<Area> ends;
};

BodyCut cut_of(const coverage::Cut& cut, const BodyResult& body, Area before) {
  BodyCut out;
  const Area painted = body.painted();
  Area end;
  for (std::size_t i = 0; i < cut.sections.size(); ++i) {
    end += cut.sections[i];
    const double share = (end - before) / painted;
    if (share <= hair_of_share) continue;
    out.sections.push_back(i);
    if (share >= 1.0 - hair_of_share || i + 1 == cut.sections.size()) break;
    out.ends.push_back(body.take_off.painted_area * share);
  }
  if (out.sections.empty())
    out.sections.push_back(std::max<std::size_t>(1, cut.sections.size()) - 1);
  return out;
}

}  // namespace

Named named_areas(const Body& body) {
  Named out;
  for (const Adjustment& a : body.adjust) {
    (a.where == "floor" ? out.floor : a.where == "steps" ? out.steps : out.walls) += a.area;
  }
  return out;
}

std::vector<std::string> section_names(const Job& job) {
  std::vector<std::string> names;
  if (job.coating.sections.empty()) return names;
  for (const auto& section : job.coating.sections) names.push_back(section.name);
  for (std::size_t b = 1; b < job.bodies.size(); ++b) {
    const std::string& given = job.bodies[b].pool.name;
    std::string name = given;
    for (int n = 2; std::ranges::find(names, name) != names.end(); ++n) {
      name = given + " " + std::to_string(n);
    }
    names.push_back(std::move(name));
  }
  return names;
}

std::vector<SectionPart> named_parts(const Job& job, const TakeOffResult& take_off) {
  const std::vector<std::string> names = section_names(job);
  std::vector<SectionPart> out;
  if (names.empty()) return out;
  std::vector<units::Length> cuts;
  for (const auto& section : job.coating.sections) cuts.push_back(section.to);
  cuts.pop_back();
  for (std::size_t b = 0; b < job.bodies.size(); ++b) {
    const Named named = named_areas(job.bodies[b]);
    for (const shell::Part& part : shell::parts(job.bodies[b].pool, cuts)) {
      out.push_back(named_part(names[out.size()], b, part, named, take_off.bodies[b].take_off));
    }
    cuts.clear();
  }
  return out;
}

std::vector<SectionPart> planned_parts(const Job& job,
                                       const TakeOffResult& take_off,
                                       const coverage::Cut& cut) {
  std::vector<SectionPart> out;
  Area before;
  for (std::size_t b = 0; b < job.bodies.size(); ++b) {
    const BodyResult& body = take_off.bodies[b];
    const BodyCut own = cut_of(cut, body, before);
    before += body.painted();
    const Named named = named_areas(job.bodies[b]);
    const auto parts = shell::parts_by_area(job.bodies[b].pool, own.ends);
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const double share = parts[i].painted / body.take_off.painted_area;
      out.push_back({std::to_string(own.sections[i] + 1),
                     b,
                     parts[i],
                     {named.walls * share, named.floor * share, named.steps * share}});
    }
  }
  return out;
}

}  // namespace basinwright::job
