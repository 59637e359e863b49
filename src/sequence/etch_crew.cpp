#include <algorithm>

#include "basinwright/sequence/work.hpp"
#include "quarters.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {

int people_for_one_etch(const std::vector<Work>& work,
                        const dates::Hours& hours,
                        units::Duration clean_up) {
  const int shift = hours.to - hours.from - quarters_up(clean_up);
  constexpr int most_people = 200;
  for (int people = 1; people <= most_people; ++people) {
    int needed = 0;
    for (const Work& part : work) {
      if (is_etch(part.task)) needed += std::max(1, quarters_up(part.person_hours / people));
    }
    if (needed == 0) return 0;
    if (needed <= shift) return people;
  }
  return 0;
}

}  // namespace basinwright::sequence
