#include "basinwright/chemistry/dust.hpp"

#include "contract.hpp"

namespace basinwright::chemistry {

units::Flow dust_extraction(units::Length disc) {
  require_some(disc, "the disc has no diameter");
  return extraction_an_inch.value * (disc / units::inches(1.0));
}

}  // namespace basinwright::chemistry
