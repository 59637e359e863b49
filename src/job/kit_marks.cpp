// Where each kit runs out: the painted area cut at whole kits, and what that is on the wall.
#include <algorithm>
#include <cmath>

#include "basinwright/job/sections.hpp"
#include "basinwright/shell/long_section.hpp"
#include "basinwright/units/unit.hpp"
#include "mixing_plan.hpp"

namespace basinwright::job {
namespace {

using units::Area;
using units::Length;

// A face across the pool is told from a slice of that thickness by its area.
constexpr Length thin = units::metres(1) / 1e6;
constexpr Length hairline = thin / 1e3;
constexpr Area least_face = units::square_metres(1) / 1e3;
// A kit that runs out within a hair of the section's end ends with it.
constexpr double hair_of_kit = 1e-9;

/// One body of water with the ends of its kits on it; a body is surveyed as seldom as can be, since
/// an outline may have thousands of walls.
class Chalk {
 public:
  Chalk(const Body& body, const BodyResult& result)
      : pool_(body.pool), axis_(shell::section_axis(pool_)), whole_(result.take_off.painted_area) {}

  // A mark after so much of the measured area; ends do not fall.
  void add(Area end, KitMark& mark) {
    ends_.push_back(std::clamp(end, Area(), whole_));
    marks_.push_back(&mark);
  }

  void put() {
    if (ends_.empty()) return;
    const auto shares = shell::parts_by_area(pool_, ends_);
    std::vector<Length> cuts;
    for (std::size_t i = 0; i < ends_.size(); ++i) {
      at_.push_back(axis_.deep_end_last ? shares[i].from : shares[i].to);
      for (const Length beside : {thin, -thin}) {
        if (is_inside(at_[i] + beside)) cuts.push_back(at_[i] + beside);
      }
    }
    slices_ = shell::parts(pool_, cuts);
    for (std::size_t i = 0; i < ends_.size(); ++i) tell(i);
  }

 private:
  [[nodiscard]] bool is_inside(Length x) const { return x > axis_.first && x < axis_.last; }

  // Painted from the deep end to a position so much deeper than another.
  [[nodiscard]] Area painted_to(Length at, Length deeper) const {
    const Length cut = axis_.deep_end_last ? at + deeper : at - deeper;
    Area sum;
    for (const shell::Part& slice : slices_) {
      const bool behind =
          axis_.deep_end_last ? slice.from + hairline >= cut : slice.to <= cut + hairline;
      if (behind) sum += slice.painted;
    }
    return sum;
  }

  void tell(std::size_t i) const {
    KitMark& mark = *marks_[i];
    mark.along = axis_.deep_end_last ? axis_.last - at_[i] : at_[i] - axis_.first;
    const Area before = painted_to(at_[i], thin);
    const Area face = painted_to(at_[i], -thin) - before;
    if (face < least_face) return;
    mark.face_share = std::clamp((ends_[i] - before) / face, 0.0, 1.0);
    mark.place = KitMark::Place::inner_face;
    if (mark.along < thin * 2.0) end_wall(true, face, mark);
    if (axis_.last - axis_.first - mark.along < thin * 2.0) end_wall(false, face, mark);
  }

  void end_wall(bool deep, Area face, KitMark& mark) const {
    mark.place = deep ? KitMark::Place::deep_wall : KitMark::Place::shallow_wall;
    const auto profile = shell::long_section(pool_).profile;
    const bool last = deep == axis_.deep_end_last;
    const Length height = (last ? profile.back() : profile.front()).depth - pool_.rim_to_paint;
    if (!(height > Length())) return;
    mark.from_corner = face / height * mark.face_share;
    mark.below_rim = pool_.rim_to_paint + height * mark.face_share;
  }

  const shell::Pool& pool_;
  shell::SectionAxis axis_;
  Area whole_;
  std::vector<Area> ends_;
  std::vector<KitMark*> marks_;
  std::vector<Length> at_;
  std::vector<shell::Part> slices_;
};

/// The kits of one paint over all sections.
class Marker {
 public:
  Marker(const Job& job, const Plan& plan, bool primer)
      : job_(job),
        plan_(plan),
        cover_(primer ? plan.system.primer.cover.value : plan.system.expected_cover().value),
        primer_(primer) {
    const coverage::Cut& cut = plan.quantities.cut;
    parts_ = cut.names.empty() ? planned_parts(job, plan.take_off, cut) : plan.take_off.parts;
  }

  std::vector<KitMark> mark() {
    std::size_t i = 0;
    while (i < parts_.size()) {
      std::size_t end = i;
      Area section;
      for (; end < parts_.size() && parts_[end].section == parts_[i].section; ++end)
        section += parts_[end].painted();
      mark_section(i, end, section);
      i = end;
    }
    for (std::size_t b = 0; b < job_.bodies.size(); ++b) chalk(b);
    return std::move(marks_);
  }

 private:
  void mark_section(std::size_t from, std::size_t to, Area section) {
    const auto kits = coverage::whole_kits(section, cover_);
    for (std::int64_t k = 1; k <= kits; ++k) {
      const bool ends = k == kits;
      if (ends && to == parts_.size()) break;
      const Area end = ends ? section : cover_ * static_cast<double>(k);
      KitMark mark;
      mark.primer = primer_;
      mark.section = parts_[from].section;
      mark.kit = static_cast<int>(k);
      mark.painted = end;
      place(from, to, mark);
      marks_.push_back(mark);
    }
  }

  // Which part of the section the boundary falls into, and how much of its body is behind it.
  void place(std::size_t from, std::size_t to, KitMark& mark) {
    Area before;
    for (std::size_t i = from; i < to; ++i) {
      const SectionPart& part = parts_[i];
      const double share = (mark.painted - before) / part.painted();
      before += part.painted();
      if (share > 1.0 + hair_of_kit && i + 1 < to) continue;
      mark.body = part.body;
      Area behind;
      for (std::size_t j = 0; j < i; ++j) {
        if (parts_[j].body == part.body) behind += parts_[j].measured.painted;
      }
      ends_.push_back(behind + part.measured.painted * std::min(1.0, share));
      return;
    }
  }

  void chalk(std::size_t body) {
    Chalk chalk(job_.bodies[body], plan_.take_off.bodies[body]);
    for (std::size_t i = 0; i < marks_.size(); ++i) {
      if (marks_[i].body == body) chalk.add(ends_[i], marks_[i]);
    }
    chalk.put();
  }

  const Job& job_;
  const Plan& plan_;
  Area cover_;
  bool primer_;
  std::vector<SectionPart> parts_;
  std::vector<KitMark> marks_;
  std::vector<Area> ends_;  ///< One a mark: measured area of its body up to it.
};

}  // namespace

std::vector<KitMark> kit_marks(const Job& job, const Plan& plan) {
  std::vector<KitMark> marks;
  if (plan.quantities.cut.sections.empty()) return marks;
  // Where a primer's kit covers as much as a coat's, one row of marks serves both.
  const bool own_marks = plan.system.primer.cover.value != plan.system.expected_cover().value;
  if (own_marks && plan.quantities.primer && plan.quantities.primer->kits > 0) {
    marks = Marker(job, plan, true).mark();
  }
  const auto coats = Marker(job, plan, false).mark();
  marks.insert(marks.end(), coats.begin(), coats.end());
  return marks;
}

}  // namespace basinwright::job
