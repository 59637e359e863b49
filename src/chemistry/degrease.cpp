#include "basinwright/chemistry/degrease.hpp"

#include "contract.hpp"

namespace basinwright::chemistry {

Degrease degrease(const WorkedArea& area, const DegreaseRates& rates, trace::Trace& trace) {
  require_amount(area.area, "area to degrease is negative or not finite");
  require_some(rates.cover.value, "degreaser covers no area");
  require_some(rates.concentrate.value + rates.water.value, "degreaser recipe is empty");
  const units::Volume mix =
      trace.note("quantities.degrease.mixed_l",
                 area.area / rates.cover.value,
                 "area / cover",
                 {{"area", area.area, trace::From{area.key}}, {"cover", rates.cover}});
  const double share = rates.concentrate.value / (rates.concentrate.value + rates.water.value);
  const units::Volume concentrate =
      trace.note("quantities.degrease.concentrate_l",
                 mix * share,
                 "mixed * concentrate / (concentrate + water)",
                 {{"mixed", mix, trace::From{"quantities.degrease.mixed_l"}},
                  {"concentrate", rates.concentrate},
                  {"water", rates.water}});
  const units::Volume water =
      trace.note("quantities.degrease.water_l",
                 mix - concentrate,
                 "mixed - concentrate",
                 {{"mixed", mix, trace::From{"quantities.degrease.mixed_l"}},
                  {"concentrate", concentrate, trace::From{"quantities.degrease.concentrate_l"}}});
  return {mix, concentrate, water};
}

}  // namespace basinwright::chemistry
