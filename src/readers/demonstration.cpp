#include "basinwright/readers/read.hpp"
#include "demonstration_rates.hpp"

namespace basinwright::readers {

Input demonstration_rates() {
  return {"demonstration rates", demonstration_rates_text};
}

}  // namespace basinwright::readers
