#pragma once

#include <string>
#include <vector>

#include "basinwright/chemistry/etch.hpp"
#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// A part of the shell with the surface that holds for it.
struct Part {
  preparation::Region region;
  std::size_t surface = 0;  ///< Index into the job's surfaces; parts of one surface etch as one.
  std::string key;          ///< Where its area is recorded; lives as long as its etch patch.
};

/// Walls, floor and steps with their findings: the first surface that matches each. Where a surface
/// names a section, the section's walls, floor and steps stand as regions of their own. The cove's
/// change of area is shared evenly between walls and floor; named areas go with their surface.
[[nodiscard]] std::vector<Part> parts_of(const Job& job,
                                         const TakeOffResult& take_off,
                                         dates::Date start);

/// Records the area of each part.
void note_regions(const std::vector<Part>& parts, trace::Trace& trace);

/// The surfaces to etch: one patch a surface, the whole shell as one when all is alike.
[[nodiscard]] std::vector<chemistry::EtchPatch> etch_patches(const std::vector<Part>& parts,
                                                             const preparation::Question& question,
                                                             bool strong_asked);

}  // namespace basinwright::job
